"""Ticks on lists."""

from typing import ClassVar

from django.conf import settings
from django.db import models


class Tick(models.Model):
    """How one line of one list stands. A line without a row is open.

    One row a line, set to a state rather than switched, so that two people ticking at once lose nothing. `told` is the
    amount that stood on the line then, so that one that has grown since is not taken for done.
    """

    class State(models.TextChoices):
        """How a line stands."""

        OPEN = "open", "open"
        ON_HAND = "on_hand", "on hand"
        DONE = "done", "done"

    event = models.ForeignKey("store.Event", on_delete=models.CASCADE, related_name="ticks")
    list_name = models.CharField(max_length=20)
    key = models.CharField(max_length=200)
    state = models.CharField(max_length=10, choices=State.choices)
    told = models.CharField(max_length=100, blank=True, default="")
    by = models.ForeignKey(settings.AUTH_USER_MODEL, on_delete=models.SET_NULL, null=True, related_name="+")
    at = models.DateTimeField()

    class Meta:
        constraints: ClassVar = [models.UniqueConstraint(fields=["event", "list_name", "key"], name="one_tick_a_line")]

    def __str__(self) -> str:
        return f"{self.list_name}: {self.key} {self.state}"
