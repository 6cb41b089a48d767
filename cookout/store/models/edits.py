"""What was changed in an event, so that it can be taken back."""

from typing import ClassVar

from django.conf import settings
from django.db import models


class Edit(models.Model):
    """One save of an event: `before` and `after` are its texts, `words` say what was done, for the log and the undo.

    `version` is the event's after it. `parts` are the parts that it touched, as [kind, id]; empty: the whole text.
    """

    event = models.ForeignKey("store.Event", on_delete=models.CASCADE, related_name="edits")
    by = models.ForeignKey(settings.AUTH_USER_MODEL, on_delete=models.SET_NULL, null=True, related_name="+")
    at = models.DateTimeField()
    version = models.PositiveIntegerField()
    words = models.CharField(max_length=300)
    parts = models.JSONField(default=list)
    before = models.TextField()
    after = models.TextField()
    undone_at = models.DateTimeField(null=True, default=None)

    class Meta:
        ordering: ClassVar = ["-pk"]

    def __str__(self) -> str:
        return self.words
