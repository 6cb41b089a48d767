"""Events as the start page lists them."""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import datetime

from django.utils.translation import gettext as _

from cookout.core.planning.result import Status
from cookout.store.selectors.events import Event, Role, next_serving
from cookout.web.reading.status import HEADLINES


@dataclass(frozen=True, slots=True)
class EventRow:
    """An event with the name and time of its next (or last) serving, and the state of its plan in words.

    `role` is the reader's; `owner` the address of whoever has it, where that is somebody else.
    """

    event: Event
    serving: str
    serving_at: datetime | None
    is_past: bool
    standing: str
    role: str
    owner: str


def event_rows(events: Iterable[Event], *, now: datetime) -> list[EventRow]:
    """Rows by next serving; those whose last serving is past come last."""
    rows = [_row(event, now) for event in events]
    return sorted(rows, key=lambda row: (row.is_past, row.serving_at or now, row.event.name))


def _row(event: Event, now: datetime) -> EventRow:
    upcoming = next_serving(event, now=now)
    name, moment = upcoming or ("", None)
    role = str(getattr(event, "part", "") or "")
    owner = "" if role == Role.OWNER else event.owner.email
    return EventRow(event, name, moment, moment is not None and moment < now, _standing(event), role, owner)


def _standing(event: Event) -> str:
    if getattr(event, "is_planning", False):
        return _("being planned")
    if event.current is None:
        return _("not planned yet")
    headline = str(HEADLINES[Status(event.current.status)]).lower()
    return _("%(headline)s · revision %(number)d") % {"headline": headline, "number": event.current.number}
