"""An event and its parts as they stand, for services that change them: read under the lock that the save holds."""

from typing import Any

from django.utils.translation import gettext as _

from cookout.core.planning.event import Event
from cookout.core.planning.parts import Part, read_part
from cookout.services.errors import NoSuchThingError
from cookout.store.mapping import event_of
from cookout.store.models import Event as Row


def read_stored(event_id: int) -> Event:
    """The event as it stands, locked until the caller's transaction ends; `NoSuchThingError` where it is gone."""
    row = Row.objects.select_for_update().filter(pk=event_id, deleted_at=None).first()
    if row is None:
        raise NoSuchThingError(_("This event is gone. Go back to the list of events."))
    return event_of(row)


def stored_part(event: Event, part: Part) -> Any:
    """The value of a part that must be there; `NoSuchThingError` where it is not."""
    value = read_part(event, part)
    if value is None:
        raise NoSuchThingError(_("It is not there any more; somebody may have taken it out. Look at the page anew."))
    return value
