"""A problem packed for fast schedule generation, in its own direction of time or mirrored.

In a mirrored frame minute m stands for `closes - m`, and a task's start for its end; to schedule "as early as possible"
there is to schedule as late as possible in the day. Tasks and resources are numbered here, and only here, for speed.
"""

from dataclasses import dataclass

from cookout.core.planning.network import StartWindow, all_arcs, start_windows
from cookout.core.planning.problem import Problem, ResourceId, Task, TaskId
from cookout.core.planning.result import Placed, Plan


@dataclass(frozen=True, slots=True)
class FrameNeed:
    """A need by resource numbers; `kept` is the number of what it is kept as, -1 where it is for its task alone."""

    options: tuple[int, ...]
    amount: int
    picks: int
    kept: int = -1


@dataclass(frozen=True, slots=True)
class Frame:
    """`leaving[i]` are arcs (j, w): start j >= start i + w; `arriving[j]` the same by head. Times: 0 to `length`.

    `kept_minutes` are, for each number that needs are kept as, the minutes of all tasks that keep it.
    """

    tasks: tuple[TaskId, ...]
    minutes: tuple[int, ...]
    hot: tuple[bool, ...]
    needs: tuple[tuple[FrameNeed, ...], ...]
    earliest: tuple[int, ...]
    latest: tuple[int, ...]
    leaving: tuple[tuple[tuple[int, int], ...], ...]
    arriving: tuple[tuple[tuple[int, int], ...], ...]
    resources: tuple[ResourceId, ...]
    capacity: tuple[int, ...]
    shift_of: tuple[int, ...]
    closed: tuple[int, ...]
    stretch: tuple[tuple[int, int] | None, ...]
    length: int
    opens: int
    mirrored: bool
    kept_minutes: tuple[int, ...] = ()

    def to_problem_start(self, task: int, start: int) -> int:
        """A start in this frame as a minute of the problem."""
        if self.mirrored:
            return self.opens + self.length - start - self.minutes[task]
        return self.opens + start

    def to_frame_start(self, task: int, start: int) -> int:
        """A minute of the problem as a start in this frame."""
        if self.mirrored:
            return self.opens + self.length - start - self.minutes[task]
        return start - self.opens

    def plan(self, starts: list[int], picks: list[tuple[tuple[int, ...], ...]]) -> Plan:
        """Starts and picks by number as a plan."""
        return Plan(
            {
                name: Placed(
                    name,
                    self.to_problem_start(i, starts[i]),
                    tuple(tuple(self.resources[r] for r in group) for group in picks[i]),
                )
                for i, name in enumerate(self.tasks)
            }
        )


def frame(problem: Problem, *, mirrored: bool, windows: dict[TaskId, StartWindow] | None = None) -> Frame | None:
    """Pack a problem; None where its waits and windows alone contradict. `windows` where they are known already."""
    windows = windows or start_windows(problem)
    if windows is None:
        return None
    length = problem.closes - problem.opens
    number = {task.id: i for i, task in enumerate(problem.tasks)}
    leaving = arcs_by_number(problem, number, mirrored=mirrored)
    helpers = sorted(problem.shifts_by_helper)
    rules = {rule.helper: (rule.stretch_minutes, rule.break_minutes) for rule in problem.breaks}
    return Frame(
        tasks=tuple(number),
        minutes=tuple(task.minutes for task in problem.tasks),
        hot=tuple(task.hot for task in problem.tasks),
        needs=needs_by_number(problem),
        earliest=tuple(first_start(windows[t.id], t, problem, mirrored=mirrored) for t in problem.tasks),
        latest=tuple(last_start(windows[t.id], t, problem, mirrored=mirrored) for t in problem.tasks),
        leaving=tuple(tuple(arcs) for arcs in leaving),
        arriving=turned(leaving),
        resources=tuple(r.id for r in problem.resources),
        capacity=tuple(r.capacity for r in problem.resources),
        shift_of=tuple(-1 if r.helper is None else helpers.index(r.helper) for r in problem.resources),
        closed=tuple(closed_minutes(problem, r.id, mirrored=mirrored) for r in problem.resources),
        stretch=tuple(rules.get(helper) for helper in helpers),
        length=length,
        opens=problem.opens,
        mirrored=mirrored,
        kept_minutes=tuple(sum(problem.task_by_id[task].minutes for task, _ in uses) for uses in problem.kept.values()),
    )


def arcs_by_number(problem: Problem, number: dict[TaskId, int], *, mirrored: bool) -> list[list[tuple[int, int]]]:
    """Arcs by tail; a mirrored arc runs the other way and measures between the other ends."""
    leaving: list[list[tuple[int, int]]] = [[] for _ in number]
    for arc in all_arcs(problem):
        tail, head, wait = number[arc.tail], number[arc.head], arc.minutes
        if mirrored:
            wait += problem.task_by_id[arc.head].minutes - problem.task_by_id[arc.tail].minutes
            tail, head = head, tail
        leaving[tail].append((head, wait))
    return leaving


def turned(leaving: list[list[tuple[int, int]]]) -> tuple[tuple[tuple[int, int], ...], ...]:
    """The same arcs by head."""
    arriving: list[list[tuple[int, int]]] = [[] for _ in leaving]
    for tail, arcs in enumerate(leaving):
        for head, wait in arcs:
            arriving[head].append((tail, wait))
    return tuple(tuple(arcs) for arcs in arriving)


def needs_by_number(problem: Problem) -> tuple[tuple[FrameNeed, ...], ...]:
    """Each task's needs with resources by number."""
    number = {resource.id: i for i, resource in enumerate(problem.resources)}
    kept = {name: i for i, name in enumerate(problem.kept)}
    return tuple(
        tuple(
            FrameNeed(tuple(number[o] for o in need.options), need.amount, need.picks, kept.get(need.kept_as, -1))
            for need in task.needs
        )
        for task in problem.tasks
    )


def first_start(window: StartWindow, task: Task, problem: Problem, *, mirrored: bool) -> int:
    """The first start in the frame."""
    return problem.closes - window.latest - task.minutes if mirrored else window.earliest - problem.opens


def last_start(window: StartWindow, task: Task, problem: Problem, *, mirrored: bool) -> int:
    """The last start in the frame."""
    return problem.closes - window.earliest - task.minutes if mirrored else window.latest - problem.opens


def closed_minutes(problem: Problem, resource_id: ResourceId, *, mirrored: bool) -> int:
    """A bit for each minute of the frame in which the resource is not there (bit m is minute m)."""
    resource = problem.resource_by_id[resource_id]
    length = problem.closes - problem.opens
    first = 0 if resource.opens is None else max(0, resource.opens - problem.opens)
    end = length if resource.closes is None else min(length, resource.closes - problem.opens)
    if mirrored:
        first, end = length - end, length - first
    everything = (1 << length) - 1
    return everything & ~bits(first, end)


def bits(first: int, end: int) -> int:
    """Bits from `first` up to but without `end`."""
    return ((1 << end) - 1) & ~((1 << first) - 1) if end > first else 0
