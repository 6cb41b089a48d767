"""Plan revisions: once made, never changed."""

from typing import Any, ClassVar

from django.conf import settings
from django.db import models


class RevisionFixedError(Exception):
    """Somebody tried to change a revision; make a new one instead."""


class Revision(models.Model):
    """One plan of an event, numbered from 1 within it.

    `payload` is the plan record as JSON, `document` the event file it was planned from, `stamps` the calendar
    sequence and time of change of each task, carried over from the revision before where nothing moved. `texts` are
    those of the record in the other system of units, by JSON pointer. `name` is what people call it and `words` how it
    came about; the name alone may be changed later.
    """

    event = models.ForeignKey("store.Event", on_delete=models.CASCADE, related_name="revisions")
    number = models.PositiveIntegerField()
    status = models.CharField(max_length=20)
    payload = models.JSONField()
    document = models.TextField()
    stamps = models.JSONField(default=dict)
    texts = models.JSONField(default=dict)
    name = models.CharField(max_length=120, blank=True, default="")
    words = models.CharField(max_length=300, blank=True, default="")
    made_by = models.ForeignKey(settings.AUTH_USER_MODEL, on_delete=models.SET_NULL, null=True, related_name="+")
    made_at = models.DateTimeField()

    class Meta:
        constraints: ClassVar = [models.UniqueConstraint(fields=["event", "number"], name="one_revision_a_number")]
        ordering: ClassVar = ["-number"]

    def __str__(self) -> str:
        return f"revision {self.number}"

    def save(self, *args: Any, **kwargs: Any) -> None:
        """Store a new revision; `RevisionFixedError` for one that is stored already."""
        if not self._state.adding:
            raise RevisionFixedError("a stored revision never changes; make a new one")
        super().save(*args, **kwargs)
