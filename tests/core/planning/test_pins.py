"""Pins by hand: kept to the letter in every plan, left out with a warning where what they name is gone."""

from dataclasses import replace
from itertools import pairwise

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from cookout.core.planning.changes import ChangeError
from cookout.core.planning.check import check, check_event
from cookout.core.planning.event import Event, Gear, GearId, GearKind, HelperId, Pin
from cookout.core.planning.expand import expand
from cookout.core.planning.pieces import pieces_named
from cookout.core.planning.pins import without_helper
from cookout.core.planning.pipeline import plan_event
from cookout.core.planning.quick import quick_plan
from cookout.core.planning.record import PlannedTask, PlanRecord
from cookout.core.planning.result import Limits, Status
from cookout.core.planning.trying import first_plan
from cookout.core.planning.ways_out import apply_change
from tests.core.planning.build import bake_step, event, gear, recipe
from tests.sample_event import LIV, MARET, OSKAR, PIP, sample_event

LIMITS = Limits(seconds=4.0, workers=2, seed=1)
CAKE_BAKE, TWIN_BAKE = "cake.b1.p1.bake", "twin.b1.p1.bake"


def pinned(*pins: Pin, to: Event | None = None) -> Event:
    return replace(to or sample_event(), pins=pins)


def planned(*pins: Pin, to: Event | None = None) -> PlanRecord:
    record = plan_event(pinned(*pins, to=to), LIMITS).record
    assert record.tasks, record.obstacles
    return record


def task(record: PlanRecord, task_id: str) -> PlannedTask:
    return next(each for each in record.tasks if each.id == task_id)


def minute(record: PlanRecord, task_id: str) -> int:
    """The start of a task in minutes from the sample event's origin."""
    return round((task(record, task_id).starts_at - sample_event().origin).total_seconds() / 60)


@pytest.fixture(scope="module")
def plain() -> PlanRecord:
    return planned()


def test_a_pinned_start_is_kept_and_said_to_be_pinned_by_hand(plain: PlanRecord) -> None:
    sooner = minute(plain, "cake.ice") - 5
    record = planned(Pin("cake.ice", at=sooner))
    ice = task(record, "cake.ice")
    assert minute(record, "cake.ice") == sooner
    assert ice.pinned == ("time",)
    assert all("pinned by hand" in held.text for held in ice.held_by)
    assert ice.slack_minutes == 0
    assert [each.id for each in record.tasks if each.pinned] == ["cake.ice"]


def test_a_task_is_done_by_whom_it_is_pinned_to_and_others_make_up_its_hands() -> None:
    record = planned(Pin("cake.ice", helpers=(PIP,)), Pin("set_up", helpers=(MARET, OSKAR)))
    assert PIP in task(record, "cake.ice").helpers
    assert len(set(task(record, "cake.ice").helpers)) == 2
    assert set(task(record, "set_up").helpers) == {MARET, OSKAR}
    assert task(record, "set_up").pinned == ("helpers",)


def test_a_presenter_pinned_to_a_live_step_presents_it() -> None:
    assert task(planned(Pin("cake.mix", helpers=(LIV,))), "cake.mix").helpers == (LIV,)


@pytest.mark.parametrize("unit", ["10-inch oven A", "10-inch oven B"])
def test_a_bake_keeps_the_very_oven_it_is_pinned_to_and_nothing_else_is_in_it_then(unit: str) -> None:
    record = planned(Pin(f"{CAKE_BAKE}.load", units=(unit,)), Pin(f"{TWIN_BAKE}", units=(unit,)))
    for bake in (CAKE_BAKE, TWIN_BAKE):
        for part in ("lay", "preheat", "load", "out"):
            assert unit in task(record, f"{bake}.{part}").units
    spans = [(each.starts_at, each.ends_at) for each in record.tasks if unit in each.units]
    spans.sort()
    assert all(end <= start for (_, end), (start, _) in pairwise(spans))
    assert task(record, TWIN_BAKE).pinned == ("units",)
    assert task(record, CAKE_BAKE).pinned == ()


def test_an_oven_between_two_pinned_times_is_given_to_nothing_longer_than_that() -> None:
    # Two ovens, A pinned at either end of the day: a count of two alone would let a long bake start in A and lack it.
    kinds = [recipe(name, (bake_step(30, after=()),)) for name in ("one", "two", "six")]
    made = event(
        tuple(kinds), kit=(gear("oven12", GearKind.OVEN, 2, inches=12), gear("chimney", GearKind.CHIMNEY, 3, coals=80))
    )
    made = replace(made, servings=(replace(made.servings[0], early=240),))
    pins = (Pin("one.b1.bake", at=180, units=("oven12 A",)), Pin("two.b1.bake", at=250, units=("oven12 A",)))
    record = planned(*pins, to=made)
    assert {each.unit for each in record.bakes if each.task != "six.b1.bake"} == {"oven12 A"}


def test_chimneys_are_pinned_one_by_one(plain: PlanRecord) -> None:
    several = tuple(replace(g, count=3) if g.kind is GearKind.CHIMNEY else g for g in sample_event().gear)
    light = next(each.id for each in plain.tasks if each.kind == "light")
    record = planned(Pin(light, units=("chimney 3",)), to=replace(sample_event(), gear=several))
    assert task(record, light).units == ("chimney 3",)
    assert task(record, light.replace(".light", ".ash")).units == ("chimney 3",)


def test_a_pin_to_a_piece_of_another_entry_takes_that_entry() -> None:
    third = Gear(GearId("third"), GearKind.OVEN, "Borrowed oven", 1, inches=10, deep=True)
    event = replace(sample_event(), gear=(*sample_event().gear, third))
    assert "Borrowed oven" in task(planned(Pin(CAKE_BAKE, units=("Borrowed oven",)), to=event), CAKE_BAKE).units


def test_what_is_gone_is_left_out_with_a_warning_and_the_rest_of_the_pin_stays(plain: PlanRecord) -> None:
    at = minute(plain, "cake.ice")
    record = planned(Pin("cake.ice", at=at, helpers=(HelperId("nobody"),)), Pin("gone.step", at=1))
    said = {warning.about: warning.text for warning in record.warnings}
    assert said["cake.ice"] == "The pin of “Ice” to “nobody” is left out: nobody in the crew is called that any more."
    assert said["gone.step"] == "A pin is left out: the plan has no task “gone.step” any more."
    assert task(record, "cake.ice").pinned == ("time",)
    unit = planned(Pin(CAKE_BAKE, units=("Lost oven",)))
    assert any("no piece of gear is called that" in warning.text for warning in unit.warnings)
    assert task(unit, CAKE_BAKE).pinned == ()


def test_the_only_oven_of_a_name_is_still_known_when_there_are_more_and_the_first_when_it_is_alone() -> None:
    one = Gear(GearId("o"), GearKind.OVEN, "Pot", 1, inches=12)
    assert [label for _, label in pieces_named((replace(one, count=2),), "Pot")] == ["Pot A"]
    assert [label for _, label in pieces_named((one,), "Pot A")] == ["Pot"]
    assert pieces_named((one,), "Pot B") == ()


def test_pins_change_nothing_of_an_event_that_has_none(plain: PlanRecord) -> None:
    outcome = plan_event(sample_event(), LIMITS)
    assert outcome.expanded.pinned == {}
    assert all("#" not in resource for resource in outcome.expanded.gear_of)
    assert not any(each.pinned for each in plain.tasks)


@st.composite
def pins_of_a_plan(draw: st.DrawFn) -> Event:
    """The sample event with pins to what one of its plans has anyway, so that there is a plan that keeps them all."""
    found = expand(sample_event())
    plan = quick_plan(found.problem, seed=draw(st.integers(1, 6)), tries=1)
    assert plan is not None
    record_pins = []
    for each in draw(st.lists(st.sampled_from(found.problem.tasks), max_size=6, unique_by=lambda task: task.id)):
        groups = plan.placed[each.id].picks
        owners = [found.problem.resource_by_id[one].helper for group in groups for one in group]
        helpers = tuple(HelperId(owner) for owner in owners if owner is not None)
        at = plan.start(each.id) if draw(st.booleans()) or not helpers else None
        record_pins.append(Pin(each.id, at, helpers if draw(st.booleans()) or at is None else ()))
    return replace(sample_event(), pins=tuple(record_pins))


@settings(max_examples=20, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(pins_of_a_plan())
def test_pins_taken_from_a_plan_can_be_kept_and_are(event: Event) -> None:
    found = expand(event)
    plan = first_plan(found, LIMITS)
    assert plan is not None
    assert check(found.problem, plan) == ()
    assert check_event(found, plan) == ()
    for pin in event.pins:
        assert pin.at is None or plan.placed[found.problem.task_by_id[pin.task].id].start == pin.at  # type: ignore[index]


UNITS = ("10-inch oven A", "10-inch oven B", "12-inch oven", "chimney", "cooking table, spot 2", "no such thing")
TASKS = (
    CAKE_BAKE,
    f"{TWIN_BAKE}.out",
    "cake.ice",
    "cake.sift",
    "set_up",
    "drown",
    "stew.b1.simmer",
    "stew.supper.serve",
)


@settings(max_examples=20, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(
    st.lists(
        st.builds(
            Pin,
            st.sampled_from(TASKS),
            st.none() | st.integers(150, 620),
            st.lists(st.sampled_from([LIV, MARET, OSKAR, PIP]), max_size=2, unique=True).map(tuple),
            st.lists(st.sampled_from(UNITS), max_size=1).map(tuple),
        ),
        min_size=1,
        max_size=3,
        unique_by=lambda pin: pin.task,
    ).map(tuple)
)
def test_any_pins_are_kept_or_the_plan_is_refused(pins: tuple[Pin, ...]) -> None:
    found = expand(pinned(*pins))
    plan = first_plan(found, replace(LIMITS, seconds=2.0))
    if plan is not None:
        assert found.pin_faults == ()
        assert check(found.problem, plan) == ()
        assert check_event(found, plan) == ()


def test_a_pin_is_put_in_and_taken_out_by_changes() -> None:
    change: dict[str, str | int] = {"kind": "pin", "task": "cake.ice", "at": 500, "helpers": "liv, pip", "units": "a|b"}
    event = apply_change(sample_event(), change)
    assert event.pins == (Pin("cake.ice", 500, (LIV, PIP), ("a", "b")),)
    again = apply_change(event, {"kind": "pin", "task": "cake.ice", "at": 0})
    assert again.pins == (Pin("cake.ice", 0),)
    assert apply_change(again, {"kind": "unpin", "task": "cake.ice"}).pins == ()


@pytest.mark.parametrize(
    "change",
    [
        {"kind": "pin", "task": "cake.ice"},
        {"kind": "pin", "task": "cake.ice", "helpers": "nobody"},
        {"kind": "pin", "task": "cake.ice", "at": "noon"},
        {"kind": "unpin", "task": "cake.ice"},
    ],
)
def test_a_pin_that_fits_nothing_is_refused(change: dict[str, str | int]) -> None:
    with pytest.raises(ChangeError):
        apply_change(sample_event(), change)


def test_a_helper_who_leaves_takes_the_pins_along() -> None:
    event = pinned(Pin("cake.ice", 500, (LIV, PIP)), Pin("set_up", helpers=(LIV,)))
    assert without_helper(event, LIV).pins == (Pin("cake.ice", 500, (PIP,)),)


def test_a_helper_of_a_pin_may_be_left_out_as_a_what_if() -> None:
    event = apply_change(pinned(Pin("set_up", helpers=(OSKAR,))), {"kind": "remove_helper", "helper": OSKAR})
    assert event.pins == ()
    assert plan_event(event, LIMITS).record.status is not Status.IMPOSSIBLE
