"""Links that let people without an account read."""

from typing import ClassVar

from django.db import models
from django.db.models import Q


class Link(models.Model):
    """An unguessable address. Only its hash is stored, so it can be shown once, when it is made.

    With a `helper` it opens that helper's call sheet and calendar; without, the calendar of the whole event.
    """

    event = models.ForeignKey("store.Event", on_delete=models.CASCADE, related_name="links")
    helper = models.CharField(max_length=100, blank=True, default="")
    token_hash = models.CharField(max_length=64, unique=True)
    created_at = models.DateTimeField()
    revoked_at = models.DateTimeField(null=True, default=None)

    class Meta:
        constraints: ClassVar = [
            models.UniqueConstraint(
                fields=["event", "helper"], condition=Q(revoked_at__isnull=True), name="one_open_link_a_reader"
            )
        ]
        ordering: ClassVar = ["helper", "-pk"]

    def __str__(self) -> str:
        return f"link for {self.helper or 'the event'}"
