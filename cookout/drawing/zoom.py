"""How near a timeline is looked at: the whole day, some hours, some minutes; and the stretch of time that is shown."""

from dataclasses import dataclass, replace
from datetime import UTC, datetime, timedelta
from typing import Literal
from zoneinfo import ZoneInfo

from cookout.core.planning.record import PlannedFiring, PlanRecord
from cookout.drawing.geometry import quarter_after, quarter_before

Zoom = Literal["day", "hour", "minute"]

# How far the dashed slope after a firing is drawn. It shows that heat goes on falling and promises no time:
# coals were weak after 65 and nearly out after 105 minutes from lighting in the one log at hand (weak source).
FADING_TAIL = timedelta(minutes=30)
# How much time a closer look shows: on a narrow page, on a wide one.
SHOWN: dict[Zoom, tuple[timedelta, timedelta]] = {
    "hour": (timedelta(minutes=90), timedelta(hours=3)),
    "minute": (timedelta(minutes=30), timedelta(minutes=45)),
}


LEAST_WIDTH = 260
ROOMY = 560
"""Pixels that a drawing needs, and those from which it has the names of its rows at their left, not above them."""


def has_gutter(width: float) -> bool:
    """Whether the page is wide enough for names at the left of the rows."""
    return width >= ROOMY


@dataclass(frozen=True, slots=True)
class Window:
    """A stretch of time that is looked at; both ends aware."""

    begins: datetime
    ends: datetime

    def __post_init__(self) -> None:
        if self.ends <= self.begins:
            raise ValueError("a window must end after it begins")

    @property
    def length(self) -> timedelta:
        """How long it is, by the sun."""
        return self.ends.astimezone(UTC) - self.begins.astimezone(UTC)

    def touches(self, begins: datetime, ends: datetime) -> bool:
        """Whether something lies in it, if only in part."""
        return begins < self.ends and self.begins < ends

    def moved(self, by: timedelta) -> "Window":
        """The same length, later or earlier."""
        return Window(_later(self.begins, by), _later(self.ends, by))


def whole(record: PlanRecord) -> Window:
    """From the quarter of an hour before all of a plan to the one after. `ValueError` where it has no tasks."""
    moments = moments_of(record)
    if not moments:
        raise ValueError("a record without tasks has no stretch of time")
    zone = ZoneInfo(record.timezone)
    return Window(quarter_before(min(moments), zone), quarter_after(max(moments), zone))


def window_at(record: PlanRecord, zoom: Zoom, width: int, at: datetime | None = None) -> Window:
    """The stretch that a look of that nearness and width shows from `at` on, moved into the plan where it leaves it.

    None and what lies before the plan is its beginning; the whole plan where it is no longer than the look shows.
    """
    day = whole(record)
    shown = SHOWN[zoom][has_gutter(width)] if zoom in SHOWN else day.length
    if shown >= day.length:
        return day
    last = _later(day.ends, -shown)
    begins = day.begins if at is None else max(day.begins, min(at, last))
    return Window(begins, _later(begins, shown))


def around(record: PlanRecord, window: Window) -> tuple[datetime | None, datetime | None]:
    """From where to look for what is earlier and what is later than the window; None where the plan has no more."""
    day, step = whole(record), window.length * 2 / 3
    earlier = max(day.begins, _later(window.begins, -step)) if window.begins > day.begins else None
    later = _later(window.begins, step) if window.ends < day.ends else None
    return earlier, later


def part_of(record: PlanRecord, window: Window) -> PlanRecord:
    """The record with those tasks, firings, servings and slots alone that lie in the window, if only in part."""
    tasks = tuple(task for task in record.tasks if window.touches(task.starts_at, task.ends_at))
    ids = {task.id for task in tasks}
    return replace(
        record,
        tasks=tasks,
        links=tuple(link for link in record.links if link.before in ids and link.after in ids),
        firings=tuple(f for f in record.firings if window.touches(f.lit_at, tail_of(f))),
        slots=tuple(slot for slot in record.slots if window.touches(slot.starts_at, slot.ends_at)),
        bakes=tuple(bake for bake in record.bakes if bake.task in ids),
    )


def moments_of(record: PlanRecord) -> list[datetime]:
    """All that the time axis of the whole event must hold."""
    found = [moment for task in record.tasks for moment in (task.starts_at, task.ends_at)]
    found += [moment for firing in record.firings for moment in (firing.lit_at, tail_of(firing))]
    found += [moment for slot in record.slots for moment in (slot.starts_at, slot.ends_at)]
    return found + [moment for serving in record.servings for moment in (serving.earliest_at, serving.latest_at)]


def tail_of(firing: PlannedFiring) -> datetime:
    """Where the drawing of a firing ends."""
    return _later(firing.ready_until, FADING_TAIL)


def _later(moment: datetime, by: timedelta) -> datetime:
    return (moment.astimezone(UTC) + by).astimezone(moment.tzinfo)
