"""Events, with the event file's text as their truth."""

import uuid
from typing import ClassVar

from django.conf import settings
from django.db import models

from cookout.store.models.members import Role


class Event(models.Model):
    """An event that its owner plans.

    `key` is the id inside the event file, `document` the file's TOML text. `name`, `timezone` and `servings`
    (a list of {"name", "at"}, `at` in ISO 8601 with offset, in order of time) are read out of the document at each
    save, so that lists need not parse it. `version` counts saves: a save names the version it was typed from.
    `current` is the revision that everything shows, or None where nothing was planned yet. `deleted_at` set: thrown
    away, and gone for good some days later.
    """

    owner = models.ForeignKey(settings.AUTH_USER_MODEL, on_delete=models.CASCADE, related_name="events")
    public_id = models.UUIDField(unique=True, default=uuid.uuid4, editable=False)
    key = models.CharField(max_length=100)
    name = models.CharField(max_length=200)
    document = models.TextField()
    timezone = models.CharField(max_length=64)
    servings = models.JSONField(default=list)
    version = models.PositiveIntegerField(default=1)
    is_example = models.BooleanField(default=False)
    current = models.ForeignKey(
        "store.Revision", on_delete=models.SET_NULL, related_name="+", null=True, blank=True, default=None
    )
    created_at = models.DateTimeField(auto_now_add=True)
    changed_at = models.DateTimeField(auto_now_add=True)
    deleted_at = models.DateTimeField(null=True, default=None)

    class Meta:
        constraints: ClassVar = [models.UniqueConstraint(fields=["owner", "key"], name="one_event_a_key")]
        ordering: ClassVar = ["name", "pk"]

    role: Role | None = None
    """What whoever asked for it may do; selectors that know the reader set it."""

    def __str__(self) -> str:
        return self.name

    @property
    def may_edit(self) -> bool:
        """Whether the reader may change it."""
        return self.role in (Role.OWNER, Role.PLANNER)

    @property
    def is_own(self) -> bool:
        """Whether it is the reader's own, to share and to delete."""
        return self.role == Role.OWNER

    @property
    def file_name(self) -> str:
        """The name under which the event file is told of and downloaded."""
        return f"{self.key}.toml"
