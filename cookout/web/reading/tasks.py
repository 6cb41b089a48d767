"""Tasks in order of time, with the names that people know."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from datetime import datetime
from itertools import groupby

from cookout.core.planning.record import HeldBy, PlannedHelper, PlannedTask, PlanRecord


@dataclass(frozen=True, slots=True)
class Row:
    """A task for reading: its dish, who does it, where and with what; `slot` where it is shown live.

    `held` is the first reason either way, `also` the rest. `caution` is the task's caution where it first stands in the
    list, afterwards a pointer back to there: a caution repeated in every line is read in none.
    """

    task: PlannedTask
    dish: str
    people: tuple[str, ...]
    gear: tuple[str, ...]
    slot: str
    caution: str
    held: tuple[HeldBy, ...]
    also: tuple[HeldBy, ...]

    @property
    def minutes(self) -> int:
        """How long it takes."""
        return int((self.task.ends_at - self.task.starts_at).total_seconds()) // 60


@dataclass(frozen=True, slots=True)
class Hour:
    """The rows that start within one hour of one day; `new_day` on the first of its day."""

    starts_at: datetime
    new_day: bool
    rows: tuple[Row, ...]


@dataclass(frozen=True, slots=True)
class CallSheet:
    """One helper's part: what to do now or next, and everything in order. `upcoming` None when all is done."""

    helper: PlannedHelper
    rows: tuple[Row, ...]
    upcoming: Row | None
    under_way: bool
    done: int


def rows(record: PlanRecord) -> tuple[Row, ...]:
    """All tasks by start; those that end sooner first."""
    return _rows(record, record.tasks)


def hours(record: PlanRecord) -> Iterator[Hour]:
    """All tasks, hour by hour."""
    seen = None
    for start, group in groupby(rows(record), key=lambda row: row.task.starts_at.replace(minute=0)):
        yield Hour(start, start.date() != seen, tuple(group))
        seen = start.date()


def helper_of(record: PlanRecord, helper_id: str) -> PlannedHelper | None:
    """The helper of that id; None where the plan knows none."""
    return next((helper for helper in record.helpers if helper.id == helper_id), None)


def call_sheet(record: PlanRecord, helper: PlannedHelper, *, now: datetime) -> CallSheet:
    """The helper's own tasks, and which of them is on, or comes next, at `now`."""
    own = _rows(record, (task for task in record.tasks if helper.id in task.helpers))
    ahead = [row for row in own if row.task.ends_at > now]
    upcoming = ahead[0] if ahead else None
    under_way = upcoming is not None and upcoming.task.starts_at <= now
    return CallSheet(helper, own, upcoming, under_way, len(own) - len(ahead))


def row_of(record: PlanRecord, task: PlannedTask) -> Row:
    """One task, with its caution in full."""
    return _rows(record, (task,))[0]


def _rows(record: PlanRecord, tasks: Iterable[PlannedTask]) -> tuple[Row, ...]:
    people = {helper.id: helper.name for helper in record.helpers}
    gear = {each.id: each.name for each in record.gear}
    slots = {slot.id: slot.name for slot in record.slots}
    ordered = sorted(tasks, key=lambda task: (task.starts_at, task.ends_at, task.id))
    first = {task.caution: task for task in reversed(ordered)}
    return tuple(
        Row(
            task=task,
            dish=record.dishes.get(task.dish, ""),
            people=tuple(people.get(helper, helper) for helper in task.helpers),
            gear=task.units or tuple(_piece(gear.get(each, each), count) for each, count in task.gear.items()),
            slot=slots.get(task.live_in, ""),
            caution=_caution(task, first),
            held=tuple(_first_either_way(task.held_by)),
            also=tuple(held for held in task.held_by if held not in _first_either_way(task.held_by)),
        )
        for task in ordered
    )


def _first_either_way(reasons: tuple[HeldBy, ...]) -> list[HeldBy]:
    first = {reason.direction: reason for reason in reversed(reasons)}
    return [reason for reason in reasons if first[reason.direction] is reason]


def _caution(task: PlannedTask, first: dict[str, PlannedTask]) -> str:
    if not task.caution or first[task.caution] is task:
        return task.caution
    return f"as at {first[task.caution].starts_at:%H:%M}"


def _piece(name: str, count: int) -> str:
    return name if count == 1 else f"{count} × {name}"
