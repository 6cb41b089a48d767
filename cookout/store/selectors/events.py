"""Events as pages read them."""

from datetime import datetime
from uuid import UUID

from django.db.models import Case, CharField, Exists, OuterRef, Q, QuerySet, Subquery, Value, When

from cookout.store.mapping import event_of
from cookout.store.models import Event, Membership, PlanRun, Role

__all__ = [
    "Event",
    "Role",
    "event_of",
    "get_deleted_event",
    "get_event",
    "get_event_for",
    "get_event_head_for",
    "list_deleted_events",
    "list_events",
    "next_serving",
]


def get_event(*, event_id: int) -> Event:
    """The event, with its current revision; `Event.DoesNotExist` where there is none."""
    return Event.objects.select_related("current").get(pk=event_id)


def get_event_for(*, user_id: int, public_id: UUID) -> Event | None:
    """The event with its current revision and the reader's `role`; None where there is none, or none for them."""
    found = _shared_with(user_id).select_related("current").filter(public_id=public_id).first()
    return None if found is None else _with_role(found, user_id)


def get_event_head_for(*, user_id: int, public_id: UUID) -> Event | None:
    """The same without the documents and the plan, for what is asked for again and again."""
    heads = _shared_with(user_id).defer("document")
    found = heads.filter(public_id=public_id).first()
    return None if found is None else _with_role(found, user_id)


def get_deleted_event(*, owner_id: int, public_id: UUID) -> Event | None:
    """The owner's event that was thrown away and can still be had back."""
    return Event.objects.filter(owner_id=owner_id, public_id=public_id, deleted_at__isnull=False).first()


def list_deleted_events(*, owner_id: int) -> QuerySet[Event]:
    """The owner's events that were thrown away, the newest first; documents stay unread."""
    thrown = Event.objects.filter(owner_id=owner_id, deleted_at__isnull=False)
    return thrown.order_by("-deleted_at").defer("document")


def list_events(*, user_id: int) -> QuerySet[Event]:
    """The events that somebody owns or shares, with the heads of their current revisions and their owners.

    Each has `is_planning` and `part`, the role; documents stay unread.
    """
    active = PlanRun.objects.filter(event=OuterRef("pk"), state__in=PlanRun.ACTIVE)
    return (
        _shared_with(user_id)
        .select_related("current", "owner")
        .defer("document", "current__payload", "current__document", "current__stamps", "current__texts")
        .annotate(is_planning=Exists(active))
    )


def next_serving(event: Event, *, now: datetime) -> tuple[str, datetime] | None:
    """Name and time of the first serving not yet past, else of the last one; None without servings."""
    times = [(str(each["name"]), datetime.fromisoformat(each["at"])) for each in event.servings]
    ahead = [each for each in times if each[1] >= now]
    return ahead[0] if ahead else (times[-1] if times else None)


def _shared_with(user_id: int) -> QuerySet[Event]:
    part = Membership.objects.filter(event=OuterRef("pk"), user_id=user_id)
    role = Case(
        When(owner_id=user_id, then=Value(Role.OWNER.value)),
        default=Subquery(part.values("role")[:1]),
        output_field=CharField(null=True),
    )
    mine = Q(owner_id=user_id) | Exists(part)
    return Event.objects.filter(mine, deleted_at__isnull=True).annotate(part=role)


def _with_role(event: Event, user_id: int) -> Event:
    event.role = Role.OWNER if event.owner_id == user_id else Role(event.part)  # type: ignore[attr-defined]
    return event
