"""A plan made again stays near to the one before: nothing that matters gets worse for it, and little moves."""

from dataclasses import replace
from datetime import timedelta
from itertools import pairwise
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from cookout.core.eventfile import read_event
from cookout.core.planning.changes import Change
from cookout.core.planning.check import check, check_event, measure
from cookout.core.planning.compare import compare
from cookout.core.planning.earlier import course_of
from cookout.core.planning.event import Event
from cookout.core.planning.expand import expand
from cookout.core.planning.moving import moved_to
from cookout.core.planning.pieces import deal
from cookout.core.planning.pipeline import Outcome, plan_event
from cookout.core.planning.problem import EVENT_AIMS, Aim, Problem, Stood, TaskId
from cookout.core.planning.quick import near_plan, quick_plan
from cookout.core.planning.record import PlanRecord
from cookout.core.planning.result import Limits, Plan, Status
from cookout.core.planning.values import helpers_of, values
from cookout.core.planning.ways_out import apply_change
from tests.sample_event import sample_event
from tests.strategies import problems_with_plans

EVENTS = Path(__file__).parents[3] / "fixtures" / "events"
LIMITS = Limits(seconds=8.0, workers=2, seed=1)
# One worker may find another of the plans that are as good than two do, and so may another seed.
OTHERWISE = Limits(seconds=8.0, workers=1, seed=5)


def fixture_event(name: str) -> Event:
    return read_event((EVENTS / f"{name}.toml").read_text(encoding="utf-8"), name)


def upper(outcome: Outcome) -> list[int]:
    """The values of all levels but the last aim, that of few changes."""
    return [level.value for level in outcome.result.levels if level.aim is not Aim.CHANGES]


def assert_sound(outcome: Outcome) -> None:
    assert outcome.result.plan is not None
    assert check(outcome.expanded.problem, outcome.result.plan) == ()
    assert check_event(outcome.expanded, outcome.result.plan) == ()


@pytest.fixture(scope="module")
def demonstration() -> tuple[Event, PlanRecord]:
    event = fixture_event("demonstration")
    return event, plan_event(event, LIMITS).record


def test_without_an_earlier_plan_there_is_no_such_aim(demonstration: tuple[Event, PlanRecord]) -> None:
    _, record = demonstration
    assert [level.name for level in record.levels] == [aim.value for aim in EVENT_AIMS]


def test_an_event_that_did_not_change_keeps_its_plan_to_the_minute(demonstration: tuple[Event, PlanRecord]) -> None:
    event, record = demonstration
    again = plan_event(event, OTHERWISE, near=record)
    assert again.record.status is Status.PROVED_BEST
    assert again.result.levels[-1].aim is Aim.CHANGES
    assert (again.result.levels[-1].value, again.result.levels[-1].bound) == (0, 0)
    assert compare(record, again.record).sentences[0] == "Nothing changes."
    assert [task.units for task in again.record.tasks] == [task.units for task in record.tasks]


CHANGES: list[Change] = [
    {"kind": "move_serving", "serving": "tasting", "minutes": 30},
    {"kind": "move_serving", "serving": "tasting", "minutes": -10},
    {"kind": "add_gear", "gear": "oven-12", "count": 1},
    {"kind": "helper_hours", "helper": "pell", "start": 750, "end": 930},
    {"kind": "remove_helper", "helper": "sunniva"},
    {"kind": "pin", "task": "slaw.tasting.serve", "helpers": "ivo"},
    {"kind": "pin", "task": "show-cake.b1.p1.bake", "units": "12-inch oven D"},
]


@pytest.mark.parametrize("change", CHANGES, ids=lambda change: "-".join(map(str, change.values())))
def test_a_change_costs_no_level_and_moves_no_more_than_a_plan_made_without_the_earlier_one(
    demonstration: tuple[Event, PlanRecord], change: Change
) -> None:
    event, before = demonstration
    changed = apply_change(event, change)
    free, near = plan_event(changed, OTHERWISE), plan_event(changed, LIMITS, near=before)
    assert_sound(near)
    assert upper(near) == upper(free)
    assert near.record.status is Status.PROVED_BEST
    found = compare(before, near.record)
    assert len(found.tasks) <= len(compare(before, free.record).tasks)
    # Proved: each task counts 1 where it moves and 2 where it changes hands, and no plan as good has fewer.
    counted = sum(("moved" in each.kind) + 2 * ("handed_over" in each.kind) for each in found.tasks)
    assert near.result.levels[-1].value == near.result.levels[-1].bound == counted


def test_one_more_oven_and_shorter_hours_beyond_the_work_change_nothing(
    demonstration: tuple[Event, PlanRecord],
) -> None:
    event, before = demonstration
    after = plan_event(apply_change(event, CHANGES[2]), LIMITS, near=before).record
    assert compare(before, after).unchanged


def test_the_large_event_keeps_most_of_its_plan_when_one_helper_comes_later() -> None:
    event, limits = fixture_event("festival"), Limits(seconds=4.0, workers=2, seed=1)
    before = plan_event(event, limits).record
    sorrel = next(helper for helper in event.crew if helper.id == "sorrel")
    hours = sorrel.windows[0]
    change: Change = {"kind": "helper_hours", "helper": "sorrel", "start": hours.start + 120, "end": hours.end}
    after = plan_event(apply_change(event, change), limits, near=before)
    assert_sound(after)
    assert upper(after)[:2] == [0, 0]
    # Without the earlier plan about 300 of 400 tasks differ, with it 40 to 100.
    assert len(compare(before, after.record).tasks) < 200


def test_a_plan_of_another_week_says_nothing_of_this_one(demonstration: tuple[Event, PlanRecord]) -> None:
    event, record = demonstration
    weeks = timedelta(days=21)
    moved = tuple(replace(t, starts_at=t.starts_at + weeks, ends_at=t.ends_at + weeks) for t in record.tasks)
    assert course_of(event, replace(record, tasks=moved)).starts == {}
    set_up = next(task for task in record.tasks if task.id == "set_up").starts_at
    # The event's minutes count from midnight.
    assert course_of(event, record).starts[TaskId("set_up")] == set_up.hour * 60 + set_up.minute


def test_tasks_that_the_earlier_plan_did_not_have_are_no_changes(demonstration: tuple[Event, PlanRecord]) -> None:
    event, record = demonstration
    fewer = replace(record, tasks=tuple(task for task in record.tasks if not task.id.startswith("chili")))
    after = plan_event(event, LIMITS, near=fewer)
    assert after.result.levels[-1].value == 0


def as_before(problem: Problem, plan: Plan) -> Problem:
    """The problem in which everything stood before as it does in a plan."""
    stood = (Stood(task.id, plan.start(task.id), helpers_of(problem, plan, task.id)) for task in problem.tasks)
    return replace(problem, aims=(*EVENT_AIMS, Aim.CHANGES), before=tuple(stood))


def test_the_quick_plan_near_to_a_plan_of_the_same_event_is_that_plan() -> None:
    problem = expand(sample_event()).problem
    plan = quick_plan(problem, seed=3, tries=2)
    assert plan is not None
    near = near_plan(as_before(problem, plan))
    assert near is not None
    assert values(as_before(problem, plan), near)[-1] == 0


@settings(max_examples=60, deadline=None)
@given(problems_with_plans())
def test_any_quick_plan_near_to_an_earlier_one_keeps_every_rule(both: tuple[Problem, Plan]) -> None:
    problem, plan = both
    problem = as_before(problem, plan)
    near = near_plan(problem)
    assert near is None or check(problem, near) == ()
    assert near is None or values(problem, near)[-1] == measure(problem, near)[Aim.CHANGES]


ROWS = {"a": (0, 10), "b": (5, 15), "c": (12, 20), "d": (16, 30)}
SPANS = [(start, end, 1, (TaskId(name),)) for name, (start, end) in ROWS.items()]


def dealt(*, before: dict[str, str] | None = None) -> dict[str, str]:
    """Which of two ovens each gets."""
    kept = {TaskId(name): (label,) for name, label in (before or {}).items()}
    return {tasks[0]: labels[0] for tasks, labels in deal(SPANS, ("A", "B"), kept)}


def test_pieces_are_dealt_by_start_and_name_and_stay_with_their_tasks_where_that_leaves_enough() -> None:
    assert dealt() == {"a": "A", "b": "B", "c": "A", "d": "B"}
    assert dealt(before={"a": "B"}) == {"a": "B", "b": "A", "c": "B", "d": "A"}
    assert dealt(before=dealt(before={"a": "B"})) == dealt(before={"a": "B"})
    # Two that meet cannot both have kept A, so the later one gives way.
    assert dealt(before={"a": "A", "b": "A"}) == {"a": "A", "b": "B", "c": "A", "d": "B"}


def test_a_claim_that_leaves_nothing_for_another_is_given_up() -> None:
    # Two ovens. x has one from 4 to 16, so a, y and d share the other: d cannot keep what x has then.
    spans = [(0, 8, "a"), (4, 16, "x"), (8, 12, "y"), (12, 20, "d"), (16, 30, "z")]
    kept = {TaskId("a"): ("A",), TaskId("d"): ("B",)}
    found = deal([(start, end, 1, (TaskId(name),)) for start, end, name in spans], ("A", "B"), kept)
    assert {tasks[0]: labels for tasks, labels in found} == {
        "a": ("A",),
        "x": ("B",),
        "y": ("A",),
        "d": ("A",),
        "z": ("B",),
    }


@given(
    st.lists(st.tuples(st.integers(0, 40), st.integers(1, 15)), min_size=1, max_size=9),
    st.dictionaries(st.integers(0, 8), st.sampled_from("ABCDEFGHI"), max_size=9),
)
def test_whatever_was_claimed_every_occupation_gets_its_pieces_and_none_is_shared(
    drawn: list[tuple[int, int]], claimed: dict[int, str]
) -> None:
    spans = [(start, start + length, 1, (TaskId(str(number)),)) for number, (start, length) in enumerate(drawn)]
    busiest = max(sum(s <= start < e for s, e, _, _ in spans) for start, _, _, _ in spans)
    labels = tuple("ABCDEFGHI"[:busiest])
    kept = {TaskId(str(number)): (label,) for number, label in claimed.items()}
    where = {span[3][0]: span for span in spans}
    by_label: dict[str, list[tuple[int, int]]] = {}
    for tasks, got in deal(spans, labels, kept):
        assert len(got) == 1
        by_label.setdefault(got[0], []).append(where[tasks[0]][:2])
    for times in by_label.values():
        assert all(end <= start for (_, end), (start, _) in pairwise(sorted(times)))


@pytest.mark.parametrize("days", [-3, -1, 1, 40])
def test_a_plan_of_an_event_that_was_moved_to_another_day_moves_along(days: int) -> None:
    event, limits = fixture_event("supper"), Limits(seconds=10, workers=1, seed=1)
    before = plan_event(event, limits).record
    day = event.origin.date() + timedelta(days=days)
    moved = moved_to(event, day, id=event.id, name=event.name)
    course = course_of(moved, before)
    same = course_of(event, before)
    assert dict(course.starts) == dict(same.starts)
    after = plan_event(moved, limits, None, before).record
    changes = {level.name: level.value for level in after.levels}["changes"]
    assert changes == 0
