"""A rule that a plan does not keep, and sums over time that several rules need."""

from collections.abc import Iterable
from dataclasses import dataclass

from cookout.core.planning.problem import TaskId


@dataclass(frozen=True, slots=True)
class Breach:
    """A broken `rule`, the `tasks` concerned, in plain words, and the `minute` it shows (None: at no one minute)."""

    rule: str
    tasks: tuple[TaskId, ...]
    text: str
    minute: int | None = None

    def __str__(self) -> str:
        return self.text


@dataclass(frozen=True, slots=True)
class Use:
    """`amount` of something taken by `task` from minute `start` until minute `end`."""

    task: TaskId
    start: int
    end: int
    amount: int = 1


def overfull(uses: Iterable[Use], room: int) -> tuple[int, int, tuple[TaskId, ...]] | None:
    """The first minute at which more than `room` is taken, how much then, and by which tasks; None: never.

    What is given back at a minute can be taken again at that minute; uses of no length take nothing.
    """
    lasting = [use for use in uses if use.end > use.start]
    for minute in sorted({use.start for use in lasting}):
        here = [use for use in lasting if use.start <= minute < use.end]
        taken = sum(use.amount for use in here)
        if taken > room:
            return minute, taken, tuple(use.task for use in here)
    return None


def overlong_stretches(uses: Iterable[Use], stretch_minutes: int, break_minutes: int) -> list[list[Use]]:
    """The stretches of hot work that last longer than `stretch_minutes`.

    A stretch goes on with every task that starts less than `break_minutes` after the latest end so far; it lasts from
    its first start to its latest end.
    """
    stretches: list[list[Use]] = []
    for use in sorted(uses, key=lambda use: (use.start, use.end)):
        if stretches and use.start - max(earlier.end for earlier in stretches[-1]) < break_minutes:
            stretches[-1].append(use)
        else:
            stretches.append([use])
    return [found for found in stretches if max(use.end for use in found) - found[0].start > stretch_minutes]
