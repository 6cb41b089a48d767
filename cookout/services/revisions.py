"""Storing plans."""

from django.db import transaction
from django.utils import timezone

from cookout.core.planning.record import PlanRecord
from cookout.core.planning.recordjson import to_json
from cookout.services.errors import NoSuchThingError
from cookout.services.stamps import stamps_for
from cookout.store.models import Event, Revision


@transaction.atomic
def save_revision(*, event_id: int, record: PlanRecord, document: str) -> Revision:
    """Store a plan as the event's newest revision. Only plans that passed the check may come here."""
    event = Event.objects.select_for_update(of=("self",)).select_related("current").filter(pk=event_id).first()
    if event is None:
        raise NoSuchThingError("The event was deleted while it was being planned, so its plan was thrown away.")
    now = timezone.now()
    before = event.current
    number = 1 if before is None else before.number + 1
    revision = Revision(
        event=event,
        number=number,
        status=record.status.value,
        payload=to_json(record),
        document=document,
        stamps=stamps_for(record, before, number=number, at=now),
        made_at=now,
    )
    revision.save()
    Event.objects.filter(pk=event_id).update(current=revision)
    return revision
