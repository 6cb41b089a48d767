"""Cookout's own engine, forward and mirrored in time, as engines to be measured."""

import time

from cookout.core.planning.problem import Problem, TaskId
from cookout.core.planning.result import Limits, Plan, Result
from cookout.core.planning.solver.solve import solve
from cookout.core.planning.values import makespan
from tests.bench.outcome import Outcome
from tests.outside.instances import mirrored, plan_turned_back


def forward(problem: Problem, limits: Limits) -> Outcome:
    """The problem as it stands."""
    result, seconds = _timed(problem, limits)
    if result.plan is None:
        return Outcome(result.status, seconds)
    (level,) = result.levels
    return Outcome(result.status, seconds, level.value, level.bound, _starts(result.plan))


def backward(problem: Problem, limits: Limits) -> Outcome:
    """The problem with time reversed; starts and makespan are those of the problem as it was.

    Its makespan is less than the level's value where the plan found does not begin with its horizon.
    """
    result, seconds = _timed(mirrored(problem), limits)
    if result.plan is None:
        return Outcome(result.status, seconds)
    plan = plan_turned_back(result.plan, problem)
    (level,) = result.levels
    return Outcome(result.status, seconds, makespan(problem, plan), level.bound, _starts(plan))


def _timed(problem: Problem, limits: Limits) -> tuple[Result, float]:
    began = time.perf_counter()
    result = solve(problem, limits)
    return result, time.perf_counter() - began


def _starts(plan: Plan) -> dict[TaskId, int]:
    return {task: placed.start for task, placed in plan.placed.items()}
