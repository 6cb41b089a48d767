"""The made-up events that the planner is measured on are repeatable, of the size asked for, and can be planned."""

import pytest

from cookout.core.planning.check import check, check_event
from cookout.core.planning.event import Event, GearKind
from cookout.core.planning.expand import expand
from cookout.core.planning.pipeline import solve_either_way
from cookout.core.planning.result import Limits, Watch
from tests.bench.made_up import event_of, event_with_tasks


def tasks_of(event: Event) -> int:
    return len(expand(event).problem.tasks)


def test_the_same_seed_gives_the_same_event_and_another_seed_another() -> None:
    assert event_of(6, seed=4) == event_of(6, seed=4)
    assert event_of(6, seed=4).recipes != event_of(6, seed=5).recipes


@pytest.mark.parametrize("tasks", [50, 150, 500, 1500])
def test_events_come_within_a_fifth_of_the_tasks_asked_for(tasks: int) -> None:
    assert tasks_of(event_with_tasks(tasks, tasks_of)) == pytest.approx(tasks, rel=0.2)


def test_servings_crew_and_ovens_grow_with_the_dishes() -> None:
    small, large = event_of(3), event_of(90)
    assert (len(small.servings), len(large.servings)) == (1, 8)
    assert len(small.crew) < len(large.crew)
    assert ovens_of(small) < ovens_of(large)


def ovens_of(event: Event) -> int:
    return sum(gear.count for gear in event.gear if gear.kind is GearKind.OVEN)


@pytest.mark.parametrize("tasks", [50, 500])
def test_a_made_up_event_has_a_plan_that_keeps_every_rule(tasks: int) -> None:
    event = event_with_tasks(tasks, tasks_of)
    expanded, result = solve_either_way(event, Limits(seconds=3, workers=1), Watch())
    assert result.plan is not None
    assert (*check(expanded.problem, result.plan), *check_event(expanded, result.plan)) == ()
