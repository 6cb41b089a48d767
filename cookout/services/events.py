"""Making, saving and deleting events."""

from django.db import IntegrityError, transaction
from django.db.models import F
from django.utils import timezone

from cookout.core.errors import EventFileError, Fault
from cookout.core.eventfile import read_event
from cookout.core.planning.event import Event as CoreEvent
from cookout.core.planning.wording import moment
from cookout.services.errors import EventChangedError, NoSuchThingError
from cookout.store.models import Event


def create_event(*, owner_id: int, document: str, file_name: str = "event.toml", is_example: bool = False) -> Event:
    """A new event from the text of an event file.

    Raises `EventFileError` with every fault found, also where the owner has an event with the same id already.
    """
    read = read_event(document, file_name)
    row = Event(owner_id=owner_id, document=document, is_example=is_example, **_read_out(read))
    _save_with_own_key(row, file_name)
    return row


def load_example(*, owner_id: int, document: str, file_name: str) -> tuple[Event, bool]:
    """The owner's event with the file's id, and whether it was made just now; one that is there stays as it is."""
    key = read_event(document, file_name).id
    found = Event.objects.filter(owner_id=owner_id, key=key).first()
    if found is not None:
        return found, False
    return create_event(owner_id=owner_id, document=document, file_name=file_name, is_example=True), True


@transaction.atomic
def save_document(*, event_id: int, document: str, version: int) -> Event:
    """Store a new text of the event, typed from `version`.

    Raises `EventFileError` with every fault found, and `EventChangedError` where another save came first.
    """
    row = _get(event_id)
    read = read_event(document, row.file_name)
    fields = {"document": document, "changed_at": timezone.now(), "version": F("version") + 1, **_read_out(read)}
    try:
        with transaction.atomic():
            saved = Event.objects.filter(pk=event_id, version=version).update(**fields)
    except IntegrityError as error:
        raise _key_taken(read.id, row.file_name) from error
    row.refresh_from_db()
    if not saved:
        raise EventChangedError(row.document, row.version)
    return row


@transaction.atomic
def delete_event(*, event_id: int) -> None:
    """Remove the event with its revisions, runs and links; its calendars and call sheets end."""
    _get(event_id).delete()


def _get(event_id: int) -> Event:
    try:
        return Event.objects.select_for_update().get(pk=event_id)
    except Event.DoesNotExist as error:
        raise NoSuchThingError("This event is gone. Go back to the list of events.") from error


def _read_out(read: CoreEvent) -> dict[str, object]:
    ahead = sorted(read.servings, key=lambda serving: serving.at)
    servings = [{"name": each.name, "at": moment(read, each.at).isoformat()} for each in ahead]
    return {"key": read.id, "name": read.name, "timezone": read.timezone, "servings": servings}


def _save_with_own_key(row: Event, file_name: str) -> None:
    try:
        with transaction.atomic():
            row.save()
    except IntegrityError as error:
        raise _key_taken(row.key, file_name) from error


def _key_taken(key: str, file_name: str) -> EventFileError:
    fault = Fault(f"{file_name}: id", f"you have another event with the id {key!r}.", "Give this one an id of its own.")
    return EventFileError((fault,))
