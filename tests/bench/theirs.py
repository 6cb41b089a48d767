"""The general-purpose scheduling library `pyjobshop`, as an engine to be measured against."""

import time
from collections.abc import Mapping

import pyjobshop  # type: ignore[import-untyped]

from cookout.core.errors import ProblemError
from cookout.core.planning.problem import Link, LinkKind, Problem, Task, TaskId
from cookout.core.planning.result import Limits, Status
from tests.bench.outcome import Outcome

THEIR_STATUS = {
    pyjobshop.SolveStatus.OPTIMAL: Status.PROVED_BEST,
    pyjobshop.SolveStatus.FEASIBLE: Status.BEST_FOUND,
    pyjobshop.SolveStatus.INFEASIBLE: Status.IMPOSSIBLE,
    pyjobshop.SolveStatus.TIME_LIMIT: Status.NONE_FOUND,
    pyjobshop.SolveStatus.UNKNOWN: Status.NONE_FOUND,
}


def theirs(problem: Problem, limits: Limits) -> Outcome:
    """The general-purpose library `pyjobshop` with its OR-Tools solver, given the same horizon as we are."""
    began = time.perf_counter()
    model = pyjobshop.Model()
    _put_into(model, problem)
    result = model.solve(
        solver="ortools",
        time_limit=limits.seconds,
        num_workers=limits.workers,
        display=False,
        random_seed=limits.seed,
    )
    seconds = time.perf_counter() - began
    status = THEIR_STATUS[result.status]
    if status not in (Status.PROVED_BEST, Status.BEST_FOUND):
        return Outcome(status, seconds)
    starts = {task.id: placed.start for task, placed in zip(problem.tasks, result.best.tasks, strict=True)}
    return Outcome(status, seconds, round(result.objective), round(result.lower_bound), starts)


def _put_into(model: pyjobshop.Model, problem: Problem) -> None:
    resources = {r.id: model.add_renewable(capacity=r.capacity) for r in problem.resources}
    tasks: dict[TaskId, pyjobshop.Task] = {}
    for task in problem.tasks:
        tasks[task.id] = model.add_task(
            earliest_start=max(problem.opens, task.earliest or 0), latest_end=_latest(task, problem)
        )
        if any(len(need.options) > 1 for need in task.needs):
            raise ProblemError("only problems without a choice of resources are compared")
        model.add_mode(
            tasks[task.id],
            [resources[need.options[0]] for need in task.needs],
            duration=task.minutes,
            demands=[need.amount for need in task.needs],
        )
    for link in problem.links:
        _put_link(model, link, tasks)


def _put_link(model: pyjobshop.Model, link: Link, tasks: Mapping[TaskId, pyjobshop.Task]) -> None:
    """The least wait; published instances express a most-wait as a negative least wait the other way."""
    if link.least is None or link.most is not None:
        raise ProblemError("only links with a least wait alone are compared")
    add = {
        LinkKind.START_TO_START: model.add_start_before_start,
        LinkKind.FINISH_TO_START: model.add_end_before_start,
        LinkKind.START_TO_FINISH: model.add_start_before_end,
        LinkKind.FINISH_TO_FINISH: model.add_end_before_end,
    }[link.kind]
    add(tasks[link.before], tasks[link.after], link.least)


def _latest(task: Task, problem: Problem) -> int:
    return problem.closes if task.latest is None else min(task.latest, problem.closes)
