"""Ticking, alone and two at once."""

import json
import os
import subprocess
import sys
from pathlib import Path

import pytest

from cookout.services.lists import set_tick
from cookout.store.models import Event, Tick, User
from cookout.store.selectors.lists import list_ticks, stamp_of
from tests.services.ticking_at_once import LINES, tick_many
from tests.store.cast import OWNER, STRANGER, a_user, an_event

ROOT = Path(__file__).resolve().parents[2]


def expected(line: int) -> str:
    """The state that a line was set to by whoever ticked it."""
    return "done" if line % 2 else "on_hand"


def assert_nothing_was_lost(states: dict[str, str]) -> None:
    """Each line once, as it was set; the one that both set is as either of them set it."""
    assert states.pop("line-0") in {"done", "on_hand"}
    assert states == {f"line-{line}": expected(line) for line in range(1, LINES)}


@pytest.fixture
def event(db: None) -> Event:
    return an_event(a_user(OWNER))


@pytest.fixture
def user(event: Event) -> User:
    return event.owner


def ticked(event: Event, user: User, key: str, state: str, told: str = "") -> None:
    set_tick(event_id=event.pk, user_id=user.pk, list_name="shopping", key=key, state=state, told=told)


def test_a_line_has_one_row_which_the_last_press_sets(event: Event, user: User) -> None:
    other = a_user(STRANGER)
    ticked(event, user, "onion", "on_hand", "piece=2")
    ticked(event, other, "onion", "done", "piece=5")
    (row,) = list_ticks(event_id=event.pk, list_name="shopping")
    assert (row.state, row.told, row.by) == ("done", "piece=5", other)


def test_pressing_the_same_twice_is_as_pressing_once(event: Event, user: User) -> None:
    ticked(event, user, "onion", "done")
    ticked(event, user, "onion", "done")
    assert Tick.objects.get().state == "done"


def test_lists_and_events_do_not_mix(event: Event, user: User) -> None:
    ticked(event, user, "salt", "done")
    set_tick(event_id=event.pk, user_id=user.pk, list_name="packing", key="salt", state="open")
    assert [tick.state for tick in list_ticks(event_id=event.pk, list_name="shopping")] == ["done"]


def test_a_state_that_there_is_not_is_refused(event: Event, user: User) -> None:
    with pytest.raises(ValueError, match="gone"):
        ticked(event, user, "salt", "gone")


def test_the_stamp_changes_with_every_tick_and_with_nothing_else(event: Event, user: User) -> None:
    stamps = [stamp_of(event_id=event.pk, list_name="shopping")]
    for state in ("done", "open", "done"):
        ticked(event, user, "salt", state)
        stamps.append(stamp_of(event_id=event.pk, list_name="shopping"))
    set_tick(event_id=event.pk, user_id=user.pk, list_name="packing", key="salt", state="done")
    assert len(set(stamps)) == 4
    assert stamp_of(event_id=event.pk, list_name="shopping") == stamps[-1]


@pytest.mark.django_db(transaction=True)
def test_two_people_who_tick_at_once_lose_nothing() -> None:
    owner, other = a_user(OWNER), a_user(STRANGER)
    event = an_event(owner)
    tick_many(event.pk, owner.pk, other.pk)
    assert_nothing_was_lost(dict(Tick.objects.values_list("key", "state")))


@pytest.mark.postgres
def test_two_people_who_tick_at_once_lose_nothing_on_postgresql(postgres_url: str, tmp_path: Path) -> None:
    variables = os.environ | {"COOKOUT_VAR_DIR": str(tmp_path), "COOKOUT_DATABASE_URL": postgres_url}

    def run(*arguments: str) -> str:
        done = subprocess.run(
            [sys.executable, *arguments], cwd=ROOT, env=variables, capture_output=True, text=True, check=False
        )
        assert done.returncode == 0, done.stderr
        return done.stdout

    run("manage.py", "migrate")
    assert_nothing_was_lost(json.loads(run("-m", "tests.services.ticking_at_once")))
