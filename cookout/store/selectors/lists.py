"""Ticks on lists as pages read them, and the event that a plan was made from."""

from datetime import datetime
from hashlib import sha256

from cookout.core.planning.event import Event as CoreEvent
from cookout.store.mapping import read_document
from cookout.store.models import Event, Revision, Tick

__all__ = ["Tick", "list_all_ticks", "list_ticks", "planned_event", "stamp_of"]


def planned_event(event: Event, revision: Revision) -> CoreEvent:
    """The event that the revision was planned from; `EventFileError` where the file format has moved on since."""
    return read_document(revision.document, event.file_name)


def list_ticks(*, event_id: int, list_name: str, since: datetime | None = None) -> list[Tick]:
    """The ticks of one list with whoever set them, in the order of their keys; those set at or after `since`."""
    ticks = Tick.objects.filter(event_id=event_id, list_name=list_name).select_related("by").order_by("key")
    return list(ticks if since is None else ticks.filter(at__gte=since))


def list_all_ticks(*, event_id: int) -> dict[str, list[Tick]]:
    """The ticks of all lists of an event, by the name of the list."""
    found: dict[str, list[Tick]] = {}
    for tick in Tick.objects.filter(event_id=event_id):
        found.setdefault(tick.list_name, []).append(tick)
    return found


def stamp_of(*, event_id: int, list_name: str) -> str:
    """A short word that changes whenever any tick of the list does."""
    rows = Tick.objects.filter(event_id=event_id, list_name=list_name).order_by("key").values_list("key", "state", "at")
    return sha256(repr(list(rows)).encode()).hexdigest()[:16]
