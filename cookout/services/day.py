"""The day of an event: when it is, with all of its times moving along."""

from collections.abc import Sequence
from dataclasses import replace
from datetime import date
from typing import Any
from zoneinfo import ZoneInfo

from django.db import transaction
from django.utils.translation import gettext as _

from cookout.core.eventfile.clock import Clock
from cookout.core.planning.event import Event
from cookout.core.planning.moving import moved_to
from cookout.core.planning.parts import changed_parts, fingerprint, read_part
from cookout.services.editing import Changed, save_parts
from cookout.services.stored import read_stored
from cookout.store.models import Edit


@transaction.atomic
def save_heading(
    *, event_id: int, user_id: int | None, day: date, fields: dict[str, Any], was: str | None
) -> Edit | None:
    """Save name, zone, units and minutes, and move the event to that day, all of its times as the clock showed them.

    Raises as `save_parts` does.
    """
    before = read_stored(event_id)
    moved = moved_to(_in_zone(before, fields["timezone"]), day, id=before.id, name=fields["name"])
    after = replace(moved, **fields)
    words = _("When it is, and what it is called, changed")
    return save_parts(event_id=event_id, user_id=user_id, changes=_changes(before, after, was), words=words)


def _in_zone(event: Event, timezone: str) -> Event:
    """The same times by the clock of another zone."""
    if timezone == event.timezone:
        return event
    old, new = ZoneInfo(event.timezone), ZoneInfo(timezone)
    origin = Clock(new, event.origin.astimezone(old).date()).origin
    return replace(event, timezone=timezone, origin=origin)


def _changes(before: Event, after: Event, was: str | None) -> Sequence[Changed]:
    parts = dict.fromkeys([("heading", ""), *changed_parts(before, after)])
    return [
        Changed(part, read_part(after, part), was=was if part[0] == "heading" else fingerprint(before, part))
        for part in parts
    ]
