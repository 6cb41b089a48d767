"""Ticking lines of lists off."""

from django.utils import timezone

from cookout.store.models import Tick


def set_tick(*, event_id: int, user_id: int, list_name: str, key: str, state: str, told: str = "") -> None:
    """Set how one line stands, whatever it stood at before; `told` is the amount that its reader saw.

    One statement for one row: two people who tick at once both get what they wanted, and of two who set the same line
    the later one counts.
    """
    tick = Tick(
        event_id=event_id,
        list_name=list_name,
        key=key,
        state=Tick.State(state),
        told=told,
        by_id=user_id,
        at=timezone.now(),
    )
    Tick.objects.bulk_create(
        [tick],
        update_conflicts=True,
        unique_fields=["event", "list_name", "key"],
        update_fields=["state", "told", "by", "at"],
    )
