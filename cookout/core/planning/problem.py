"""A scheduling problem with whole helpers, counted gear and generalised waits.

It knows nothing of food or fire; `expand` makes one from an event, `tests.bench` from published instances.
All times are whole minutes from an origin that the problem does not name.
"""

from dataclasses import dataclass, field
from enum import StrEnum
from functools import cached_property
from typing import NewType

from cookout.core.errors import ProblemError

TaskId = NewType("TaskId", str)
ResourceId = NewType("ResourceId", str)


class LinkKind(StrEnum):
    """Which ends of two tasks a wait is measured between."""

    START_TO_START = "start_to_start"
    FINISH_TO_START = "finish_to_start"
    START_TO_FINISH = "start_to_finish"
    FINISH_TO_FINISH = "finish_to_finish"


@dataclass(frozen=True, slots=True)
class Need:
    """`picks` different resources out of `options`, `amount` of each, for the whole task.

    Counted gear is a need with one option; "someone with the fire skill" has each shift that could do it as an option.
    Needs of several tasks that are alike and bear the same `kept_as` pick the same resources: the oven that a bake
    keeps from cold iron to empty iron.
    """

    options: tuple[ResourceId, ...]
    amount: int = 1
    picks: int = 1
    kept_as: str = ""


@dataclass(frozen=True, slots=True)
class Task:
    """`minutes` of work or waiting that start no earlier than `earliest` and end no later than `latest`."""

    id: TaskId
    minutes: int
    needs: tuple[Need, ...] = ()
    earliest: int | None = None
    latest: int | None = None
    hot: bool = False


@dataclass(frozen=True, slots=True)
class Link:
    """Between the named ends of `before` and `after` lie at least `least` and at most `most` minutes (None: any).

    `least` may be negative, as in the published instances with time lags.
    """

    before: TaskId
    after: TaskId
    kind: LinkKind = LinkKind.FINISH_TO_START
    least: int | None = 0
    most: int | None = None
    why: str = ""


@dataclass(frozen=True, slots=True)
class Resource:
    """`capacity` alike pieces of gear, or one shift of a helper (`helper` names whose).

    A shift is a whole person for one unbroken window: its capacity is 1 and it works within `opens` and `closes`.
    """

    id: ResourceId
    capacity: int = 1
    helper: str | None = None
    opens: int | None = None
    closes: int | None = None


@dataclass(frozen=True, slots=True)
class Due:
    """The end of `task` is wanted by minute `at`; each minute after counts as late. The task's `latest` is final."""

    task: TaskId
    at: int


@dataclass(frozen=True, slots=True)
class Freshness:
    """Minutes from the end of `made` to the start of `used` (None: to minute `by`) beyond `free` cost freshness."""

    made: TaskId
    used: TaskId | None = None
    by: int | None = None
    free: int = 0


@dataclass(frozen=True, slots=True)
class BreakRule:
    """A helper's hot tasks with gaps under `break_minutes` form a stretch, no longer than `stretch_minutes`."""

    helper: str
    stretch_minutes: int
    break_minutes: int


@dataclass(frozen=True, slots=True)
class Stood:
    """Where a task stood in an earlier plan: its start, and which helpers did it."""

    task: TaskId
    start: int
    helpers: frozenset[str] = frozenset()


class Aim(StrEnum):
    """What a plan is judged by, one level each; less is better for all of them, in minutes but for `CHANGES`.

    `MAKESPAN`: from the horizon's start to the last end. `LATENESS`: ends after their due time, summed. `FRESHNESS`:
    waits of finished food beyond what is free, summed. `CREW_DAY`: from the earliest start of any helper's task to the
    horizon's end, and for each shift the presence (first start to last end) beyond twice its work. `FAIR_SHARES`: each
    helper's work beyond the even share (all work by the number of helpers, rounded up), summed. `CHANGES`: for each
    task that stood in the earlier plan 1 where it starts at another minute and `HANDED_OVER` where others do it.
    """

    MAKESPAN = "makespan"
    LATENESS = "lateness"
    FRESHNESS = "freshness"
    CREW_DAY = "crew_day"
    FAIR_SHARES = "fair_shares"
    CHANGES = "changes"


HANDED_OVER = 2
"""What a task in other hands counts beside one at another minute: two people have to be told and not one."""

EVENT_AIMS = (Aim.LATENESS, Aim.FRESHNESS, Aim.CREW_DAY, Aim.FAIR_SHARES)


@dataclass(frozen=True)
class Problem:
    """Tasks, links and resources within the minutes `opens` to `closes`; `aims` from first to last importance.

    `before` is where tasks stood in an earlier plan, of which a new one should keep what it can.
    """

    tasks: tuple[Task, ...]
    links: tuple[Link, ...] = ()
    resources: tuple[Resource, ...] = ()
    opens: int = 0
    closes: int = 1440
    aims: tuple[Aim, ...] = (Aim.MAKESPAN,)
    dues: tuple[Due, ...] = ()
    freshness: tuple[Freshness, ...] = ()
    breaks: tuple[BreakRule, ...] = field(default=())
    before: tuple[Stood, ...] = ()

    def __post_init__(self) -> None:
        if len(self.task_by_id) != len(self.tasks):
            raise ProblemError("two tasks have the same id; give each its own")
        if len(self.resource_by_id) != len(self.resources):
            raise ProblemError("two resources have the same id; give each its own")
        self._check_references()

    def _check_references(self) -> None:
        ends = [(link.before, link.after) for link in self.links]
        named = {task for pair in ends for task in pair} | {due.task for due in self.dues}
        named |= {stood.task for stood in self.before}
        named |= {f.made for f in self.freshness} | {f.used for f in self.freshness if f.used is not None}
        missing: list[str] = sorted(named - self.task_by_id.keys())
        options = {option for task in self.tasks for need in task.needs for option in need.options}
        missing += sorted(options - self.resource_by_id.keys())
        if missing:
            raise ProblemError(f"no such task or resource: {', '.join(missing)}; add it or mend the reference")
        for name, uses in self.kept.items():
            if len({self.task_by_id[task].needs[number] for task, number in uses}) > 1:
                raise ProblemError(f"needs kept as {name} are not alike; give them the same options and numbers")

    @cached_property
    def task_by_id(self) -> dict[TaskId, Task]:
        """Tasks by their id."""
        return {task.id: task for task in self.tasks}

    @cached_property
    def resource_by_id(self) -> dict[ResourceId, Resource]:
        """Resources by their id."""
        return {resource.id: resource for resource in self.resources}

    @cached_property
    def kept(self) -> dict[str, tuple[tuple[TaskId, int], ...]]:
        """For each name that needs are kept as, the tasks with such a need and its number among theirs."""
        uses: dict[str, list[tuple[TaskId, int]]] = {}
        for task in self.tasks:
            for number, need in enumerate(task.needs):
                if need.kept_as:
                    uses.setdefault(need.kept_as, []).append((task.id, number))
        return {name: tuple(found) for name, found in uses.items()}

    def can_meet(self, need: Need) -> bool:
        """Whether there is enough for a need when nothing else asks for anything."""
        able = sum(self.resource_by_id[option].capacity >= need.amount for option in need.options)
        return able >= need.picks

    @cached_property
    def shifts_by_helper(self) -> dict[str, tuple[ResourceId, ...]]:
        """The shifts of each helper."""
        shifts: dict[str, list[ResourceId]] = {}
        for resource in self.resources:
            if resource.helper is not None:
                shifts.setdefault(resource.helper, []).append(resource.id)
        return {helper: tuple(ids) for helper, ids in shifts.items()}
