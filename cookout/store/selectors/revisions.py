"""Revisions as pages and feeds read them."""

from django.db.models import QuerySet

from cookout.store.mapping import record_of
from cookout.store.models import Revision

__all__ = ["Revision", "get_current", "get_revision", "list_revisions", "record_of"]


def list_revisions(*, event_id: int) -> QuerySet[Revision]:
    """The heads of an event's revisions, newest first."""
    return Revision.objects.filter(event_id=event_id).defer("payload", "document", "stamps")


def get_revision(*, event_id: int, number: int) -> Revision | None:
    """One revision of an event; None where there is none."""
    return Revision.objects.filter(event_id=event_id, number=number).first()


def get_current(*, event_id: int) -> Revision | None:
    """The event's current revision with its payload; None where nothing was planned yet."""
    return Revision.objects.filter(event_id=event_id).order_by("-number").first()
