"""What a planner keeps for the next event: kits of gear, people, and templates."""

import uuid
from typing import ClassVar

from django.conf import settings
from django.db import models


class Kit(models.Model):
    """A set of gear saved once. `document` is TOML with the tables [[gear]] and [fuel] of an event file."""

    owner = models.ForeignKey(settings.AUTH_USER_MODEL, on_delete=models.CASCADE, related_name="kits")
    public_id = models.UUIDField(unique=True, default=uuid.uuid4, editable=False)
    name = models.CharField(max_length=120)
    document = models.TextField()
    changed_at = models.DateTimeField(auto_now=True)

    class Meta:
        constraints: ClassVar = [models.UniqueConstraint(fields=["owner", "name"], name="one_kit_a_name")]
        ordering: ClassVar = ["name", "pk"]

    def __str__(self) -> str:
        return self.name


class Person(models.Model):
    """Somebody in a planner's address book; `skills` is a list of words. They need no account."""

    owner = models.ForeignKey(settings.AUTH_USER_MODEL, on_delete=models.CASCADE, related_name="people")
    public_id = models.UUIDField(unique=True, default=uuid.uuid4, editable=False)
    name = models.CharField(max_length=120)
    contact = models.CharField(max_length=254, blank=True, default="")
    skills = models.JSONField(default=list)
    adult = models.BooleanField(default=True)
    fire_allowed = models.BooleanField(default=False)
    hot_stretch_minutes = models.PositiveSmallIntegerField(default=60)
    note = models.CharField(max_length=300, blank=True, default="")

    class Meta:
        ordering: ClassVar = ["name", "pk"]

    def __str__(self) -> str:
        return self.name


class Template(models.Model):
    """An event to begin others from: `document` is an event file whose date is set anew each time."""

    owner = models.ForeignKey(settings.AUTH_USER_MODEL, on_delete=models.CASCADE, related_name="templates")
    public_id = models.UUIDField(unique=True, default=uuid.uuid4, editable=False)
    name = models.CharField(max_length=200)
    document = models.TextField()
    made_at = models.DateTimeField(auto_now_add=True)

    class Meta:
        constraints: ClassVar = [models.UniqueConstraint(fields=["owner", "name"], name="one_template_a_name")]
        ordering: ClassVar = ["name", "pk"]

    def __str__(self) -> str:
        return self.name
