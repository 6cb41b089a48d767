"""What solving gives: a status, a plan, and for each level its value beside a true bound."""

from collections.abc import Callable
from dataclasses import dataclass
from enum import StrEnum

from cookout.core.planning.outline import OutlineRow
from cookout.core.planning.problem import Aim, ResourceId, Task, TaskId


class Status(StrEnum):
    """How an attempt ended."""

    PROVED_BEST = "proved_best"
    BEST_FOUND = "best_found"
    NONE_FOUND = "none_found"
    IMPOSSIBLE = "impossible"


@dataclass(frozen=True, slots=True)
class Placed:
    """A task's start, and for each of its needs (in their order) which resources were picked."""

    task: TaskId
    start: int
    picks: tuple[tuple[ResourceId, ...], ...] = ()


@dataclass(frozen=True, slots=True)
class Plan:
    """Where every task stands."""

    placed: dict[TaskId, Placed]

    def start(self, task: TaskId) -> int:
        """The minute at which the task starts."""
        return self.placed[task].start

    def end(self, task: Task) -> int:
        """The minute at which the task ends."""
        return self.placed[task.id].start + task.minutes


@dataclass(frozen=True, slots=True)
class Level:
    """One aim: the plan's `value`, and `bound`, which no plan can beat while the levels before keep their values."""

    aim: Aim
    value: int
    bound: int

    @property
    def proved(self) -> bool:
        """Whether value and bound meet."""
        return self.value <= self.bound


@dataclass(frozen=True, slots=True)
class Limits:
    """What solving may use: wall-clock seconds, worker threads, and the seed of all its chance."""

    seconds: float = 10.0
    workers: int = 2
    seed: int = 1


@dataclass(frozen=True, slots=True)
class Result:
    """The outcome. `levels` holds one entry an aim, in their order; empty without a plan."""

    status: Status
    plan: Plan | None
    levels: tuple[Level, ...]
    seconds: float


@dataclass(frozen=True, slots=True)
class Progress:
    """A better plan, told while solving goes on; `outline` is filled by whoever knows the event that it is for."""

    seconds: float
    stage: str
    plan: Plan
    values: tuple[tuple[Aim, int], ...]
    outline: tuple[OutlineRow, ...] = ()


def ignore(progress: Progress) -> None:
    """Tell nobody."""


def never() -> bool:
    """Never stop before the limits do."""
    return False


@dataclass(frozen=True, slots=True)
class Watch:
    """How a caller follows and ends a solve: `tell` gets each better plan, `stop` is asked often.

    A solve that is stopped returns the best plan so far, as it does at its limit of seconds.
    """

    tell: Callable[[Progress], None] = ignore
    stop: Callable[[], bool] = never
