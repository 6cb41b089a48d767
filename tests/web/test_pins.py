"""Pinning a task by hand: tried first, shown as before and after, and kept or dropped."""

from datetime import timedelta

import pytest
from django.test import Client
from django.urls import reverse

from cookout.core.planning.record import PlannedTask, PlanRecord
from cookout.core.planning.result import Limits
from cookout.services import plan
from cookout.store.models import Event, PlanRun
from cookout.store.selectors.events import event_of
from cookout.store.selectors.revisions import record_of
from tests.store.cast import OWNER, a_user, an_event


@pytest.fixture
def event(db: None) -> Event:
    """The supper with a real plan."""
    event = an_event(a_user(OWNER))
    run = plan.queue_planning(event_id=event.pk, limits=Limits(seconds=5, workers=2), announce=False)
    plan.run_planning(run_id=run.pk)
    event.refresh_from_db()
    return event


@pytest.fixture
def planner(event: Event) -> Client:
    """The browser of its owner."""
    client = Client()
    client.force_login(event.owner)
    return client


def record(event: Event) -> PlanRecord:
    """The plan of the event."""
    event.refresh_from_db()
    assert event.current is not None
    return record_of(event.current)


def cutting(event: Event) -> PlannedTask:
    """A task with hands and no fire."""
    return next(task for task in record(event).tasks if task.kind == "prepare")


def as_it_stands(task: PlannedTask) -> dict[str, object]:
    """What the form holds before anybody touches it."""
    return {
        "at_0": f"{task.starts_at:%Y-%m-%d}",
        "at_1": f"{task.starts_at:%H:%M}",
        "helpers": list(task.helpers),
        "unit": next((unit for unit in task.units if "oven" in unit), ""),
    }


def pinned(client: Client, event: Event, task: PlannedTask, **fields: object) -> object:
    """The form sent off."""
    place = reverse("task-pin", args=[event.public_id, task.id])
    return client.post(place, {**as_it_stands(task), **fields})


def test_a_ticked_time_is_tried_as_a_pin_and_what_was_tried_can_be_kept(planner: Client, event: Event) -> None:
    task = cutting(event)
    answer = pinned(planner, event, task, pin_time="on")
    run = PlanRun.objects.latest("pk")
    assert answer.headers["Location"] == reverse("trial", args=[event.public_id, run.pk])  # type: ignore[attr-defined]
    assert run.change == {"kind": "pin", "task": task.id, "at": run.change["at"]}
    plan.run_planning(run_id=run.pk)
    planner.post(reverse("trial-keep", args=[event.public_id, run.pk]))
    kept = next(each for each in record(event).tasks if each.id == task.id)
    assert (kept.starts_at, kept.pinned) == (task.starts_at, ("time",))
    page = planner.get(reverse("task", args=[event.public_id, task.id])).content.decode()
    assert "pinned by hand" in page
    assert "Try it without the pin" in page


def test_a_time_that_was_changed_is_pinned_without_a_tick(planner: Client, event: Event) -> None:
    task = cutting(event)
    earlier = task.starts_at - timedelta(minutes=10)
    pinned(planner, event, task, at_1=f"{earlier:%H:%M}")
    change = PlanRun.objects.latest("pk").change
    assert set(change) == {"kind", "task", "at"}
    assert change["at"] == (earlier - event_of(event).origin).total_seconds() // 60


def test_a_helper_who_was_chosen_is_pinned(planner: Client, event: Event) -> None:
    task = cutting(event)
    other = next(helper.id for helper in event_of(event).crew if helper.id not in task.helpers)
    pinned(planner, event, task, helpers=[other])
    assert PlanRun.objects.latest("pk").change == {"kind": "pin", "task": task.id, "helpers": other}


def test_an_oven_that_was_chosen_is_pinned(planner: Client, event: Event) -> None:
    bake = next(task for task in record(event).tasks if task.kind == "bake")
    form = planner.get(reverse("task", args=[event.public_id, bake.id])).content.decode()
    assert 'id="pin-helpers_0"' not in form, "nobody stands at a bake, so nobody can be pinned to it"
    pinned(planner, event, bake, pin_unit="on")
    change = PlanRun.objects.latest("pk").change
    assert change == {"kind": "pin", "task": bake.id, "units": change["units"]}
    assert change["units"] in bake.units


@pytest.mark.parametrize(
    ("fields", "words"),
    [
        ({}, "Nothing is pinned yet"),
        ({"pin_time": "on", "at_1": ""}, "Say at what time"),
        ({"pin_helpers": "on", "helpers": []}, "Tick who does it"),
        ({"at_1": "half past four"}, "Enter a valid time"),
        ({"helpers": ["nobody-of-that-name"]}, "Select a valid choice"),
    ],
)
def test_a_pin_that_says_nothing_or_nonsense_is_shown_again_with_why(
    planner: Client, event: Event, fields: dict[str, object], words: str
) -> None:
    before = PlanRun.objects.count()
    answer = pinned(planner, event, cutting(event), **fields)
    text = answer.content.decode()  # type: ignore[attr-defined]
    assert answer.status_code == 422  # type: ignore[attr-defined]
    assert words in text
    assert PlanRun.objects.count() == before
    if "at_1" in fields:
        assert f'value="{fields["at_1"]}"' in text or not fields["at_1"]


def test_more_helpers_than_hands_are_refused(planner: Client, event: Event) -> None:
    task = cutting(event)
    everybody = [helper.id for helper in event_of(event).crew]
    text = pinned(planner, event, task, helpers=everybody).content.decode()  # type: ignore[attr-defined]
    assert "tick no more than that" in text


def test_a_pin_can_be_tried_away(planner: Client, event: Event) -> None:
    task = cutting(event)
    pinned(planner, event, task, pin_time="on")
    run = PlanRun.objects.latest("pk")
    plan.run_planning(run_id=run.pk)
    planner.post(reverse("trial-keep", args=[event.public_id, run.pk]))
    planner.post(reverse("task-unpin", args=[event.public_id, task.id]))
    assert PlanRun.objects.latest("pk").change == {"kind": "unpin", "task": task.id}


def test_a_task_that_is_not_pinned_cannot_be_unpinned_and_says_so(planner: Client, event: Event) -> None:
    answer = planner.post(reverse("task-unpin", args=[event.public_id, cutting(event).id]))
    assert answer.status_code == 409
    assert 'class="told warning"' in answer.content.decode()
