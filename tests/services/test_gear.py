"""Gear changed by two people at the same moment, each with a connection of their own."""

from collections.abc import Callable

import pytest

from cookout.services.gear import count_gear
from cookout.store.mapping import event_of
from cookout.store.models import Event
from tests.services.ticking_at_once import at_once
from tests.store.cast import OWNER, STRANGER, a_user, an_event

TIMES = 6


def pieces(event: Event, gear_id: str) -> int:
    event.refresh_from_db()
    return next(gear.count for gear in event_of(event).gear if gear.id == gear_id)


@pytest.mark.django_db(transaction=True)
def test_two_people_who_count_the_same_gear_up_at_once_both_count() -> None:
    owner, other = a_user(OWNER), a_user(STRANGER)
    event = an_event(owner)
    gear_id = event_of(event).gear[0].id
    before = pieces(event, gear_id)

    def counting(user_id: int) -> Callable[[], None]:
        def count() -> None:
            for _ in range(TIMES):
                count_gear(event_id=event.pk, user_id=user_id, gear_id=gear_id, by=1)

        return count

    at_once(counting(owner.pk), counting(other.pk))
    assert pieces(event, gear_id) == before + 2 * TIMES
