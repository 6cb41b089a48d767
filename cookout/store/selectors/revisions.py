"""Revisions as pages and feeds read them."""

from django.db.models import QuerySet

from cookout.store.mapping import record_of
from cookout.store.models import Event, Revision

__all__ = ["Revision", "get_current", "get_revision", "list_revisions", "record_of"]


def list_revisions(*, event_id: int) -> QuerySet[Revision]:
    """The heads of an event's revisions, newest first."""
    return (
        Revision.objects.filter(event_id=event_id)
        .select_related("made_by")
        .defer("payload", "document", "stamps", "texts")
    )


def get_revision(*, event_id: int, number: int) -> Revision | None:
    """One revision of an event; None where there is none."""
    return Revision.objects.filter(event_id=event_id, number=number).first()


def get_current(*, event_id: int) -> Revision | None:
    """The event's current revision with its payload; None where nothing was planned yet."""
    event = Event.objects.select_related("current").filter(pk=event_id).first()
    return None if event is None else event.current
