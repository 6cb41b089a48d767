"""Making, saving and deleting events."""

from datetime import datetime, timedelta
from uuid import UUID

from django.conf import settings
from django.db import IntegrityError, transaction
from django.db.models import F
from django.utils import timezone
from django.utils.translation import gettext as _

from cookout.core.errors import EventFileError, Fault
from cookout.core.eventfile import read_event
from cookout.services.editing import log_edit
from cookout.services.errors import EventChangedError, NoSuchThingError
from cookout.services.readout import read_out
from cookout.store.models import Event


def create_event(*, owner_id: int, document: str, file_name: str = "event.toml", is_example: bool = False) -> Event:
    """A new event from the text of an event file.

    Raises `EventFileError` with every fault found, also where the owner has an event with the same id already.
    """
    read = read_event(document, file_name)
    row = Event(owner_id=owner_id, document=document, is_example=is_example, **read_out(read))
    _save_with_own_key(row, file_name)
    return row


def load_example(*, owner_id: int, document: str, file_name: str) -> tuple[Event, bool]:
    """The owner's event with the file's id, and whether it was made just now; one that is there stays as it is.

    One that was thrown away is had back.
    """
    key = read_event(document, file_name).id
    found = Event.objects.filter(owner_id=owner_id, key=key).first()
    if found is not None and found.deleted_at is not None:
        found = bring_back_event(owner_id=owner_id, public_id=found.public_id)
    if found is not None:
        return found, False
    return create_event(owner_id=owner_id, document=document, file_name=file_name, is_example=True), True


@transaction.atomic
def save_document(*, event_id: int, document: str, version: int, user_id: int | None = None, words: str = "") -> Event:
    """Store a new text of the event, typed from `version`; `words` say what was done, where that is known.

    Raises `EventFileError` with every fault found, and `EventChangedError` where another save came first.
    """
    row = _get(event_id)
    read = read_event(document, row.file_name)
    fields = {"document": document, "changed_at": timezone.now(), "version": F("version") + 1, **read_out(read)}
    try:
        with transaction.atomic():
            saved = Event.objects.filter(pk=event_id, version=version).update(**fields)
    except IntegrityError as error:
        raise _key_taken(read.id, row.file_name) from error
    if saved and document != row.document:
        log_edit(row, document, user_id=user_id, words=words or _("Event file saved"))
    row.refresh_from_db()
    if not saved:
        raise EventChangedError(row.document, row.version)
    return row


@transaction.atomic
def delete_event(*, event_id: int) -> None:
    """Throw the event away: its pages, calendars and call sheets end, and come back with it if it does.

    What was thrown away too long ago goes for good on that occasion, where no queue sees to it.
    """
    now = timezone.now()
    Event.objects.filter(pk=_get(event_id).pk).update(deleted_at=now)
    purge_deleted(now=now)


def bring_back_event(*, owner_id: int, public_id: UUID) -> Event:
    """Have an event back that was thrown away, with all that hangs on it; `NoSuchThingError` where it is gone."""
    found = _thrown_away(owner_id, public_id)
    Event.objects.filter(pk=found.pk).update(deleted_at=None)
    return found


def erase_event(*, owner_id: int, public_id: UUID) -> str:
    """Remove an event that was thrown away for good, with its revisions, runs and links; its name."""
    found = _thrown_away(owner_id, public_id)
    name = found.name
    found.delete()
    return name


def purge_deleted(*, now: datetime) -> int:
    """Remove for good what was thrown away longer ago than the days that it is kept; how many events they were."""
    old = Event.objects.filter(deleted_at__lt=now - timedelta(days=settings.COOKOUT_KEEP_DELETED_DAYS))
    found = list(old)
    for event in found:
        event.delete()
    return len(found)


def _thrown_away(owner_id: int, public_id: UUID) -> Event:
    found = Event.objects.filter(owner_id=owner_id, public_id=public_id, deleted_at__isnull=False).first()
    if found is None:
        raise NoSuchThingError(_("This event is not among those thrown away. It may be back, or gone for good."))
    return found


def _get(event_id: int) -> Event:
    try:
        return Event.objects.select_for_update().get(pk=event_id, deleted_at=None)
    except Event.DoesNotExist as error:
        raise NoSuchThingError(_("This event is gone. Go back to the list of events.")) from error


def _save_with_own_key(row: Event, file_name: str) -> None:
    try:
        with transaction.atomic():
            row.save()
    except IntegrityError as error:
        raise _key_taken(row.key, file_name) from error


def _key_taken(key: str, file_name: str) -> EventFileError:
    fault = Fault(
        f"{file_name}: id",
        f"you have another event with the id {key!r}.",
        "Give this one an id of its own; one thrown away still has its id.",
    )
    return EventFileError((fault,))
