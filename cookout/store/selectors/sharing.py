"""Members and invitations as pages read them."""

from datetime import datetime

from django.db.models import QuerySet

from cookout.store.models import Invitation, Membership, Role

__all__ = ["Invitation", "Membership", "Role", "get_open_invitation", "list_members", "list_open_invitations"]


def list_members(*, event_id: int) -> QuerySet[Membership]:
    """The members of an event other than its owner, with their accounts."""
    return Membership.objects.filter(event_id=event_id).select_related("user")


def list_open_invitations(*, event_id: int, now: datetime) -> QuerySet[Invitation]:
    """The invitations that can still be taken."""
    return Invitation.objects.filter(event_id=event_id, taken_at=None, revoked_at=None, expires_at__gt=now)


def get_open_invitation(*, token_hash: str, now: datetime) -> Invitation | None:
    """The invitation of that hash, if it can still be taken, with its event and who made it."""
    return (
        Invitation.objects.select_related("event", "made_by")
        .filter(token_hash=token_hash, taken_at=None, revoked_at=None, expires_at__gt=now)
        .filter(event__deleted_at=None)
        .first()
    )
