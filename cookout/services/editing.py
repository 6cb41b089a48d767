"""Changing an event part by part, and taking a change back.

Every save locks the event, puts the changed parts into what stands there now, and keeps the text before and after. So
two people who change different parts both keep their work; who changes a part that another changed meanwhile is told.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

from django.db import transaction
from django.db.models import F
from django.utils import timezone
from django.utils.translation import gettext as _

from cookout.core.eventfile import read_event, write_event
from cookout.core.planning.event import Event as CoreEvent
from cookout.core.planning.parts import Part, changed_parts, fingerprint, read_part, restore_part, write_part
from cookout.services.errors import NoSuchThingError, PartChangedError, UndoTooLateError
from cookout.services.readout import read_out
from cookout.store.mapping import event_of
from cookout.store.models import Edit, Event

EDITS_KEPT = 200
"""Changes of an event that can be looked up and taken back; older ones are forgotten."""


@dataclass(frozen=True, slots=True)
class Changed:
    """A part with its new value (None takes it away), and its `fingerprint` when it was opened (None: whatever)."""

    part: Part
    value: Any
    was: str | None = None


@transaction.atomic
def save_parts(*, event_id: int, user_id: int | None, changes: Sequence[Changed], words: str) -> Edit | None:
    """Save some parts of an event; None where nothing differs from what stands there.

    Raises `PartChangedError` where a part is no longer as it was when it was opened, `EventFileError` where the event
    would have faults, and `NoSuchThingError` where it is gone. Then nothing is saved.
    """
    row = _locked(event_id)
    event = before = event_of(row)
    for each in changes:
        if each.was is not None and fingerprint(event, each.part) != each.was:
            raise PartChangedError(each.part, read_part(event, each.part), fingerprint(event, each.part))
        event = write_part(event, each.part, each.value)
    if event == before:
        return None
    return store_event(row, event, user_id=user_id, words=words, parts=[each.part for each in changes])


@transaction.atomic
def undo_edit(*, event_id: int, user_id: int | None, edit_id: int, words: str) -> Edit:
    """Take a change back, whatever else was changed since.

    Raises `UndoTooLateError` where the same part was changed again, and `NoSuchThingError` where there is none.
    """
    row = _locked(event_id)
    edit = Edit.objects.filter(event_id=event_id, pk=edit_id, undone_at=None).first()
    if edit is None:
        raise NoSuchThingError(_("There is no such change to take back; it may have been taken back already."))
    event = event_of(row)
    before, after = read_event(edit.before, row.file_name), read_event(edit.after, row.file_name)
    parts = [(str(kind), str(name)) for kind, name in edit.parts] or list(changed_parts(before, after))
    for part in parts:
        if fingerprint(event, part) != fingerprint(after, part):
            raise UndoTooLateError(edit.words)
        event = restore_part(event, part, before)
    Edit.objects.filter(pk=edit.pk).update(undone_at=timezone.now())
    return store_event(row, event, user_id=user_id, words=words, parts=parts)


def store_event(row: Event, event: CoreEvent, *, user_id: int | None, words: str, parts: Sequence[Part] = ()) -> Edit:
    """Store the event as text, and the change that led to it. The row must be locked."""
    text = write_event(event)
    read = read_event(text, row.file_name)
    now = timezone.now()
    Event.objects.filter(pk=row.pk).update(document=text, changed_at=now, version=F("version") + 1, **read_out(read))
    return log_edit(row, text, user_id=user_id, words=words, parts=parts)


def log_edit(row: Event, text: str, *, user_id: int | None, words: str, parts: Sequence[Part] = ()) -> Edit:
    """Put down that the text of the row, read before it was changed, became another; the oldest are forgotten."""
    edit = Edit.objects.create(
        event_id=row.pk,
        by_id=user_id,
        at=timezone.now(),
        version=row.version + 1,
        words=words[:300],
        parts=[list(part) for part in parts],
        before=row.document,
        after=text,
    )
    old = (
        Edit.objects.filter(event_id=row.pk).order_by("-pk").values_list("pk", flat=True)[EDITS_KEPT : EDITS_KEPT + 50]
    )
    Edit.objects.filter(pk__in=list(old)).delete()
    return edit


def _locked(event_id: int) -> Event:
    row = Event.objects.select_for_update().filter(pk=event_id, deleted_at=None).first()
    if row is None:
        raise NoSuchThingError(_("This event is gone. Go back to the list of events."))
    return row
