"""Events as pages read them."""

from datetime import datetime
from uuid import UUID

from django.db.models import Exists, OuterRef, QuerySet

from cookout.store.models import Event, PlanRun

__all__ = ["Event", "get_event", "get_owned_event", "list_events", "next_serving"]


def get_event(*, event_id: int) -> Event:
    """The event, with its current revision; `Event.DoesNotExist` where there is none."""
    return Event.objects.select_related("current").get(pk=event_id)


def get_owned_event(*, owner_id: int, public_id: UUID) -> Event | None:
    """The owner's event with its current revision; None where there is none or it is another's."""
    return Event.objects.select_related("current").filter(owner_id=owner_id, public_id=public_id).first()


def list_events(*, owner_id: int) -> QuerySet[Event]:
    """The owner's events with the heads of their current revisions, and `is_planning`; documents stay unread."""
    active = PlanRun.objects.filter(event=OuterRef("pk"), state__in=PlanRun.ACTIVE)
    return (
        Event.objects.filter(owner_id=owner_id)
        .select_related("current")
        .defer("document", "current__payload", "current__document", "current__stamps")
        .annotate(is_planning=Exists(active))
    )


def next_serving(event: Event, *, now: datetime) -> tuple[str, datetime] | None:
    """Name and time of the first serving not yet past, else of the last one; None without servings."""
    times = [(str(each["name"]), datetime.fromisoformat(each["at"])) for each in event.servings]
    ahead = [each for each in times if each[1] >= now]
    return ahead[0] if ahead else (times[-1] if times else None)
