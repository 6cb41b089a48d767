"""Storing plans."""

from collections.abc import Mapping

from django.db import transaction
from django.utils import timezone
from django.utils.translation import gettext as _

from cookout.core.eventfile import read_event
from cookout.core.planning.record import PlanRecord
from cookout.core.planning.recordjson import to_json
from cookout.services.editing import store_event
from cookout.services.errors import NoSuchThingError
from cookout.services.stamps import stamps_for
from cookout.store.mapping import record_of
from cookout.store.models import Event, Revision


@transaction.atomic
def save_revision(
    *,
    event_id: int,
    record: PlanRecord,
    document: str,
    texts: Mapping[str, str] | None = None,
    words: str = "",
    user_id: int | None = None,
) -> Revision:
    """Store a plan as the event's newest revision and make it the current one.

    Only plans that passed the check may come here. `texts` are the record's in the other system of units, `words` how
    it came about.
    """
    event = Event.objects.select_for_update(of=("self",)).select_related("current").filter(pk=event_id).first()
    if event is None:
        raise NoSuchThingError(_("The event was deleted while it was being planned, so its plan was thrown away."))
    now = timezone.now()
    before = event.current
    newest = Revision.objects.filter(event_id=event_id).order_by("-number").values_list("number", flat=True).first()
    number = (newest or 0) + 1
    revision = Revision(
        event=event,
        number=number,
        status=record.status.value,
        payload=to_json(record),
        document=document,
        stamps=stamps_for(record, before, number=number, at=now),
        texts=dict(texts or {}),
        words=words[:300],
        made_by_id=user_id,
        made_at=now,
    )
    revision.save()
    Event.objects.filter(pk=event_id).update(current=revision)
    return revision


@transaction.atomic
def bring_back(*, event_id: int, number: int, user_id: int | None, words: str) -> Revision:
    """Make an earlier plan the current one again, as a new revision, together with the event as it was planned then.

    Raises `NoSuchThingError` where there is no such revision.
    """
    event = Event.objects.select_for_update(of=("self",)).filter(pk=event_id, deleted_at=None).first()
    old = Revision.objects.filter(event_id=event_id, number=number).first()
    if event is None or old is None:
        raise NoSuchThingError(_("There is no such revision. Go back to the list of revisions."))
    if event.document != old.document:
        store_event(event, read_event(old.document, event.file_name), user_id=user_id, words=words)
    return save_revision(
        event_id=event_id,
        record=record_of(old),
        document=Event.objects.values_list("document", flat=True).get(pk=event_id),
        texts=old.texts,
        words=words,
        user_id=user_id,
    )


def name_revision(*, event_id: int, number: int, name: str) -> None:
    """Call a revision something; its plan stays as it is. `NoSuchThingError` where there is none."""
    if not Revision.objects.filter(event_id=event_id, number=number).update(name=name.strip()[:120]):
        raise NoSuchThingError(_("There is no such revision. Go back to the list of revisions."))
