"""Events as the start page lists them."""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import datetime

from cookout.core.planning.result import Status
from cookout.store.selectors.events import Event, next_serving
from cookout.web.reading.status import HEADLINES


@dataclass(frozen=True, slots=True)
class EventRow:
    """An event with the name and time of its next (or last) serving, and the state of its plan in words."""

    event: Event
    serving: str
    serving_at: datetime | None
    is_past: bool
    standing: str


def event_rows(events: Iterable[Event], *, now: datetime) -> list[EventRow]:
    """Rows by next serving; those whose last serving is past come last."""
    rows = [_row(event, now) for event in events]
    return sorted(rows, key=lambda row: (row.is_past, row.serving_at or now, row.event.name))


def _row(event: Event, now: datetime) -> EventRow:
    upcoming = next_serving(event, now=now)
    name, moment = upcoming or ("", None)
    return EventRow(event, name, moment, moment is not None and moment < now, _standing(event))


def _standing(event: Event) -> str:
    if getattr(event, "is_planning", False):
        return "being planned"
    if event.current is None:
        return "not planned yet"
    return f"{HEADLINES[Status(event.current.status)].lower()} · revision {event.current.number}"
