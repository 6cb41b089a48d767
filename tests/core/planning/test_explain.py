"""Slack and reasons against moving each task in turn and asking the independent check."""

from dataclasses import replace
from pathlib import Path

import pytest

from cookout.core.eventfile import read_event
from cookout.core.planning.check import check
from cookout.core.planning.expand import expand
from cookout.core.planning.expanded import Expanded
from cookout.core.planning.explain import Explainer, Reasons
from cookout.core.planning.problem import Problem, TaskId
from cookout.core.planning.result import Limits, Plan
from cookout.core.planning.solver import solve

EVENTS = Path(__file__).parents[3] / "fixtures" / "events"


def planned(name: str) -> tuple[Expanded, Plan, dict[TaskId, Reasons]]:
    event = read_event((EVENTS / f"{name}.toml").read_text(encoding="utf-8"), name)
    expanded = expand(event)
    plan = solve(expanded.problem, Limits(seconds=3.0, workers=2, seed=1)).plan
    assert plan is not None
    return expanded, plan, Explainer(expanded, plan).explain()


def moved(plan: Plan, task: TaskId, minutes: int) -> Plan:
    placed = plan.placed[task]
    return Plan({**plan.placed, task: replace(placed, start=placed.start + minutes)})


def on_time(problem: Problem) -> Problem:
    """The problem in which lateness is a breach, for slack is what may be lost before a serving is late."""
    due = {d.task: d.at for d in problem.dues}
    tasks = tuple(replace(t, latest=min(due[t.id], t.latest or due[t.id])) if t.id in due else t for t in problem.tasks)
    return replace(problem, tasks=tasks)


@pytest.mark.parametrize("name", ["supper", "demonstration"])
def test_every_task_may_move_just_as_far_as_its_slack_says_and_no_minute_farther(name: str) -> None:
    expanded, plan, reasons = planned(name)
    problem = on_time(expanded.problem)
    for task, why in reasons.items():
        for minutes in range(1, why.later.room + 1):
            assert check(problem, moved(plan, task, minutes)) == (), (task, minutes, why.later)
        assert check(problem, moved(plan, task, why.later.room + 1)), (task, why.later)
        for minutes in range(1, why.earlier.room + 1):
            assert check(problem, moved(plan, task, -minutes)) == (), (task, minutes, why.earlier)
        assert check(problem, moved(plan, task, -why.earlier.room - 1)), (task, why.earlier)


def test_reasons_say_which_way_how_far_and_what_stands_behind() -> None:
    _, plan, reasons = planned("supper")
    for why in reasons.values():
        assert why.later.text.startswith("can start no later: " if why.later.room == 0 else "could start ")
        assert why.earlier.text.startswith("can start no earlier: " if why.earlier.room == 0 else "could start ")
    last = max((t for t in reasons if t.endswith(".serve")), key=plan.start)
    assert "it is due at 18:00" in reasons[last].later.text
    assert any("behind that" in why.later.text for why in reasons.values())
