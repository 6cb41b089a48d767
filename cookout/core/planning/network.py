"""The waits of a problem as a network: arcs between starts, and the windows that follow from them.

Durations are fixed, so every link is one or two arcs "start of b is at least w minutes after start of a".
"""

from collections import deque
from dataclasses import dataclass

from cookout.core.planning.problem import Link, LinkKind, Problem, Task, TaskId


@dataclass(frozen=True, slots=True)
class Arc:
    """The start of `head` is at least `minutes` (which may be negative) after the start of `tail`."""

    tail: TaskId
    head: TaskId
    minutes: int


@dataclass(frozen=True, slots=True)
class StartWindow:
    """The earliest and latest start that waits and windows leave to a task."""

    earliest: int
    latest: int


def arcs_of(link: Link, before: Task, after: Task) -> tuple[Arc, ...]:
    """The one or two arcs that say the same as a link."""
    from_end = link.kind in (LinkKind.FINISH_TO_START, LinkKind.FINISH_TO_FINISH)
    to_end = link.kind in (LinkKind.START_TO_FINISH, LinkKind.FINISH_TO_FINISH)
    shift = (before.minutes if from_end else 0) - (after.minutes if to_end else 0)
    arcs = []
    if link.least is not None:
        arcs.append(Arc(before.id, after.id, link.least + shift))
    if link.most is not None:
        arcs.append(Arc(after.id, before.id, -(link.most + shift)))
    return tuple(arcs)


def all_arcs(problem: Problem) -> tuple[Arc, ...]:
    """Every arc of a problem, the tightest where several join the same two tasks the same way."""
    tightest: dict[tuple[TaskId, TaskId], int] = {}
    for link in problem.links:
        for arc in arcs_of(link, problem.task_by_id[link.before], problem.task_by_id[link.after]):
            key = (arc.tail, arc.head)
            tightest[key] = max(arc.minutes, tightest.get(key, arc.minutes))
    return tuple(Arc(tail, head, minutes) for (tail, head), minutes in tightest.items())


def own_window(problem: Problem, task: Task) -> StartWindow:
    """The starts that the task's own times, the horizon and the shifts of its possible helpers leave."""
    earliest = problem.opens if task.earliest is None else max(problem.opens, task.earliest)
    latest = problem.closes if task.latest is None else min(problem.closes, task.latest)
    for need in task.needs:
        options = [problem.resource_by_id[option] for option in need.options]
        if options:
            earliest = max(earliest, min(problem.opens if r.opens is None else r.opens for r in options))
            latest = min(latest, max(problem.closes if r.closes is None else r.closes for r in options))
    return StartWindow(earliest, latest - task.minutes)


def start_windows(problem: Problem) -> dict[TaskId, StartWindow] | None:
    """Windows tightened along the waits until nothing changes; None where waits and windows contradict."""
    arcs = all_arcs(problem)
    own = {task.id: own_window(problem, task) for task in problem.tasks}
    earliest = longest_paths({t: w.earliest for t, w in own.items()}, arcs)
    if earliest is None:
        return None
    reversed_arcs = tuple(Arc(arc.head, arc.tail, arc.minutes) for arc in arcs)
    negated = longest_paths({t: -w.latest for t, w in own.items()}, reversed_arcs)
    if negated is None or any(earliest[t] > -negated[t] for t in earliest):
        return None
    return {t: StartWindow(earliest[t], -negated[t]) for t in earliest}


def chain_start(problem: Problem, end: TaskId, earliest: dict[TaskId, int]) -> TaskId:
    """The task at whose own earliest start the longest chain to `end` begins."""
    own = {task.id: own_window(problem, task).earliest for task in problem.tasks}
    return _chain_root(end, earliest, own, all_arcs(problem))


def chain_end(problem: Problem, start: TaskId, latest: dict[TaskId, int]) -> TaskId:
    """The task at whose own latest start the longest chain from `start` ends."""
    own = {task.id: -own_window(problem, task).latest for task in problem.tasks}
    arcs = tuple(Arc(arc.head, arc.tail, arc.minutes) for arc in all_arcs(problem))
    return _chain_root(start, {task: -minute for task, minute in latest.items()}, own, arcs)


def _chain_root(end: TaskId, earliest: dict[TaskId, int], own: dict[TaskId, int], arcs: tuple[Arc, ...]) -> TaskId:
    arriving: dict[TaskId, list[Arc]] = {task: [] for task in own}
    for arc in arcs:
        arriving[arc.head].append(arc)
    queue, seen = [end], {end}
    for at in queue:
        if own[at] == earliest[at]:
            return at
        tight = [a.tail for a in arriving[at] if earliest[a.tail] + a.minutes == earliest[at] and a.tail not in seen]
        seen.update(tight)
        queue.extend(dict.fromkeys(tight))
    return end


def longest_paths(at_least: dict[TaskId, int], arcs: tuple[Arc, ...]) -> dict[TaskId, int] | None:
    """Raise every value until all arcs hold; None where they never do (a cycle of positive length)."""
    value = dict(at_least)
    leaving: dict[TaskId, list[Arc]] = {task: [] for task in value}
    for arc in arcs:
        leaving[arc.tail].append(arc)
    waiting, queued, raises = deque(value), set(value), dict.fromkeys(value, 0)
    while waiting:
        tail = waiting.popleft()
        queued.discard(tail)
        for arc in leaving[tail]:
            if value[tail] + arc.minutes > value[arc.head]:
                value[arc.head] = value[tail] + arc.minutes
                raises[arc.head] += 1
                if raises[arc.head] > len(value):
                    return None
                if arc.head not in queued:
                    queued.add(arc.head)
                    waiting.append(arc.head)
    return value
