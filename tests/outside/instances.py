"""Readers for published scheduling instances, into problems of our own.

`.sm` is the single-mode format of the project scheduling library of Kolisch and Sprecher (1996); `.sch` the format of
its generator with minimal and maximal time lags (Schwindt, 1998; Kolisch, Schwindt and Sprecher, 1999). Both hold one
project: activities with durations and demands on renewable resources, to be ended as early as possible.
"""

from collections.abc import Sequence
from dataclasses import replace
from itertools import islice
from pathlib import Path

from cookout.core.errors import ProblemError
from cookout.core.planning.problem import Aim, Link, LinkKind, Need, Problem, Resource, ResourceId, Task, TaskId
from cookout.core.planning.result import Placed, Plan

MIRRORED_KINDS = {
    LinkKind.START_TO_START: LinkKind.FINISH_TO_FINISH,
    LinkKind.FINISH_TO_FINISH: LinkKind.START_TO_START,
    LinkKind.FINISH_TO_START: LinkKind.FINISH_TO_START,
    LinkKind.START_TO_FINISH: LinkKind.START_TO_FINISH,
}


def read_instance(path: Path) -> Problem:
    """The problem in a published file, told by its suffix; `ProblemError` where it is neither `.sm` nor `.sch`."""
    readers = {".sm": read_sm, ".sch": read_sch}
    if path.suffix not in readers:
        raise ProblemError(f"{path.name}: give a .sm or a .sch file")
    return readers[path.suffix](path)


def read_sm(path: Path) -> Problem:
    """A single-mode project with plain precedence.

    It closes at the sum of all durations: one after another always fits. Raises `ProblemError` for several modes or
    resources that are used up, which are other problems than ours.
    """
    lines = path.read_text(encoding="ascii").splitlines()
    successors = {row[0]: row[3:] for row in _numbers_below(lines, "PRECEDENCE RELATIONS", skip=1)}
    requests = _numbers_below(lines, "REQUESTS/DURATIONS", skip=2)
    (capacities,) = _numbers_below(lines, "RESOURCEAVAILABILITIES", skip=1)
    if len(requests) != len(successors) or any(row[1] != 1 for row in requests):
        raise ProblemError(f"{path.name}: an activity has several modes; give a single-mode file")
    if any(line.lstrip(" -").startswith("nonrenewable") and ":  0 " not in line for line in lines):
        raise ProblemError(f"{path.name}: a resource is used up; give a file with renewable resources only")
    return Problem(
        tasks=tuple(_task(row[0], row[2], row[3:]) for row in requests),
        links=tuple(Link(_task_id(before), _task_id(after)) for before in successors for after in successors[before]),
        resources=_resources(capacities),
        closes=sum(row[2] for row in requests),
    )


def read_sch(path: Path) -> Problem:
    """A project with lags from start to start; a negative lag from a to b is a most-wait from b to a.

    It closes at the sum, over activities, of the longest of duration and outgoing lags: a problem that has a plan at
    all has one within that (Neumann, Schwindt and Zimmermann, 2003, section 2; from memory).
    """
    rows = [line.split() for line in path.read_text(encoding="ascii").splitlines() if line.strip()]
    count = int(rows[0][0]) + 2
    arcs = [_arcs(row) for row in rows[1 : count + 1]]
    requests = [[int(word) for word in row] for row in rows[count + 1 : 2 * count + 1]]
    links = tuple(
        Link(_task_id(before), _task_id(after), LinkKind.START_TO_START, least=lag)
        for before, outgoing in enumerate(arcs)
        for after, lag in outgoing
    )
    problem = Problem(
        tasks=tuple(_task(row[0], row[2], row[3:]) for row in requests),
        links=links,
        resources=_resources([int(word) for word in rows[2 * count + 1]]),
        closes=sum(max([row[2], *(lag for _, lag in outgoing)]) for row, outgoing in zip(requests, arcs, strict=True)),
    )
    _refuse_starts_before_the_first(problem, path)
    return problem


def mirrored(problem: Problem) -> Problem:
    """The same problem with time running the other way, so that a plan from its end is one from the other's start.

    Raises `ProblemError` where the problem is judged by more than its makespan.
    """
    if problem.aims != (Aim.MAKESPAN,) or problem.breaks:
        raise ProblemError("only a problem judged by its makespan alone can be mirrored")
    both = problem.opens + problem.closes
    tasks = tuple(
        replace(task, earliest=_reflected(task.latest, both), latest=_reflected(task.earliest, both))
        for task in problem.tasks
    )
    resources = tuple(
        replace(resource, opens=_reflected(resource.closes, both), closes=_reflected(resource.opens, both))
        for resource in problem.resources
    )
    links = tuple(
        replace(link, before=link.after, after=link.before, kind=MIRRORED_KINDS[link.kind]) for link in problem.links
    )
    return replace(problem, tasks=tasks, resources=resources, links=links)


def plan_turned_back(plan: Plan, problem: Problem) -> Plan:
    """A plan of the mirrored `problem`, which has no windows, as one of `problem` itself that begins when it opens."""
    both = problem.opens + max(plan.end(task) for task in problem.tasks)
    return Plan({t.id: Placed(t.id, both - plan.end(t), plan.placed[t.id].picks) for t in problem.tasks})


def _numbers_below(lines: Sequence[str], heading: str, skip: int) -> list[list[int]]:
    """The rows of whole numbers `skip` lines after a heading, up to the next line of stars."""
    at = next(number for number, line in enumerate(lines) if line.startswith(heading))
    rows = []
    for line in islice(lines, at + 1 + skip, None):
        if line.startswith("*"):
            break
        rows.append([int(word) for word in line.split()])
    return rows


def _arcs(row: Sequence[str]) -> list[tuple[int, int]]:
    """Successors with their lags, from ``number, modes, count, successors..., [lags]...``."""
    count = int(row[2])
    ends, lags = row[3 : 3 + count], row[3 + count : 3 + 2 * count]
    return [(int(end), int(lag.strip("[]"))) for end, lag in zip(ends, lags, strict=True)]


def _refuse_starts_before_the_first(problem: Problem, path: Path) -> None:
    """The makespan counts from the first activity, so every other must be tied to start no sooner than that."""
    reach = {problem.tasks[0].id: 0}
    for _ in problem.tasks:
        for link in problem.links:
            if link.before in reach:
                lag = reach[link.before] + (link.least or 0)
                reach[link.after] = max(reach.get(link.after, lag), lag)
    loose = [task.id for task in problem.tasks if reach.get(task.id, -1) < 0]
    if loose:
        raise ProblemError(f"{path.name}: tie {', '.join(loose)} to start no sooner than the first activity")


def _task(number: int, minutes: int, demands: Sequence[int]) -> Task:
    """An activity; resources are numbered from 1 in the order of its demands."""
    needs = (Need((_resource_id(place),), amount) for place, amount in enumerate(demands, start=1) if amount)
    return Task(_task_id(number), minutes, tuple(needs))


def _resources(capacities: Sequence[int]) -> tuple[Resource, ...]:
    return tuple(Resource(_resource_id(place), capacity) for place, capacity in enumerate(capacities, start=1))


def _task_id(number: int) -> TaskId:
    return TaskId(f"activity-{number}")


def _resource_id(place: int) -> ResourceId:
    return ResourceId(f"resource-{place}")


def _reflected(minute: int | None, both: int) -> int | None:
    return None if minute is None else both - minute
