"""Who shares an event, and who was asked to."""

from typing import ClassVar

from django.conf import settings
from django.db import models
from django.db.models import Q


class Role(models.TextChoices):
    """What somebody may do with an event; the owner alone shares and deletes it."""

    OWNER = "owner", "owner"
    PLANNER = "planner", "co-planner"
    VIEWER = "viewer", "viewer"


class Membership(models.Model):
    """Somebody's part in an event. The owner has none: `Event.owner` says it."""

    event = models.ForeignKey("store.Event", on_delete=models.CASCADE, related_name="memberships")
    user = models.ForeignKey(settings.AUTH_USER_MODEL, on_delete=models.CASCADE, related_name="memberships")
    role = models.CharField(max_length=10, choices=[(r.value, r.label) for r in (Role.PLANNER, Role.VIEWER)])
    joined_at = models.DateTimeField(auto_now_add=True)

    class Meta:
        constraints: ClassVar = [models.UniqueConstraint(fields=["event", "user"], name="one_part_a_person")]
        ordering: ClassVar = ["role", "user__email"]

    def __str__(self) -> str:
        return f"{self.user} as {self.role}"


class Invitation(models.Model):
    """An address that makes whoever opens it, signed in, a member. Only its hash is stored; it serves once.

    With an `email` it was sent there, and only an account of that address may take it; without, whoever has the link.
    """

    event = models.ForeignKey("store.Event", on_delete=models.CASCADE, related_name="invitations")
    role = models.CharField(max_length=10, choices=[(r.value, r.label) for r in (Role.PLANNER, Role.VIEWER)])
    email = models.EmailField(blank=True, default="")
    token_hash = models.CharField(max_length=64, unique=True)
    made_by = models.ForeignKey(settings.AUTH_USER_MODEL, on_delete=models.CASCADE, related_name="+")
    made_at = models.DateTimeField()
    expires_at = models.DateTimeField()
    taken_at = models.DateTimeField(null=True, default=None)
    revoked_at = models.DateTimeField(null=True, default=None)

    class Meta:
        indexes: ClassVar = [
            models.Index(fields=["event"], condition=Q(taken_at=None, revoked_at=None), name="open_invitations")
        ]
        ordering: ClassVar = ["-pk"]

    def __str__(self) -> str:
        return f"invitation of {self.email or 'whoever has the link'} as {self.role}"
