"""Scales and lanes: where on the paper an instant lies, and which lane a bar may take.

"Along" is the way time runs, "across" the other way; a `Turned` function makes page coordinates of the two, so that
the same shapes serve time running across the page and down it. All lengths are pixels.
"""

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from datetime import UTC, datetime, timedelta, tzinfo

Point = tuple[float, float]
Turned = Callable[[float, float], Point]


def across_page(along: float, across: float) -> Point:
    """Time runs to the right."""
    return along, across


def down_page(along: float, across: float) -> Point:
    """Time runs downward."""
    return across, along


def minutes_between(first: datetime, second: datetime) -> float:
    """Minutes that pass from first to second by the sun, not by the wall clock (they differ when clocks change)."""
    return (second.astimezone(UTC) - first.astimezone(UTC)).total_seconds() / 60


@dataclass(frozen=True, slots=True)
class Span:
    """A stretch along one axis."""

    begins: float
    ends: float

    @property
    def length(self) -> float:
        """How long it is."""
        return self.ends - self.begins

    def overlaps(self, other: "Span") -> bool:
        """Whether they share more than an edge."""
        return self.begins < other.ends and other.begins < self.ends


@dataclass(frozen=True, slots=True)
class Slab:
    """A rectangle by its stretch of time and its stretch across."""

    along: Span
    across: Span

    def inset(self, by: float) -> "Slab":
        """The same slab, smaller by that much on every side (never turned inside out)."""
        return Slab(_shrunk(self.along, by), _shrunk(self.across, by))


def _shrunk(span: Span, by: float) -> Span:
    take = min(by, span.length / 2)
    return Span(span.begins + take, span.ends - take)


@dataclass(frozen=True, slots=True)
class Fold:
    """Empty time folded away: from and until in minutes after the scale's first, and the pixels left of it."""

    begins: float
    ends: float
    shown: float

    def hides(self, minute: float, per_minute: float) -> float:
        """Pixels that the fold takes from the place of a minute."""
        within = min(max(minute - self.begins, 0.0), self.ends - self.begins)
        return within * (per_minute - self.shown / (self.ends - self.begins))


def folds_between(busy: Sequence[Span], *, least: float, margin: float, shown: float) -> tuple[Fold, ...]:
    """Folds for the gaps of at least `least` minutes between busy stretches, leaving `margin` minutes either side."""
    found: list[Fold] = []
    free_from: float | None = None
    for span in sorted(busy, key=lambda span: span.begins):
        if free_from is not None and span.begins - free_from >= least:
            found.append(Fold(free_from + margin, span.begins - margin, shown))
        free_from = span.ends if free_from is None else max(free_from, span.ends)
    return tuple(found)


@dataclass(frozen=True, slots=True)
class TimeScale:
    """`first` lies at `offset` pixels and every minute after it takes `per_minute` more, up to `last`; but `folds`."""

    first: datetime
    last: datetime
    offset: float
    per_minute: float
    folds: tuple[Fold, ...] = ()

    @classmethod
    def fitted(cls, first: datetime, last: datetime, room: Span) -> "TimeScale":
        """The scale on which first to last fill the room."""
        return cls(first, last, room.begins, room.length / max(1.0, minutes_between(first, last)))

    @property
    def room(self) -> Span:
        """All of the axis, in pixels."""
        return Span(self.offset, self.at(self.last))

    def at(self, moment: datetime) -> float:
        """Where an instant lies."""
        minute = minutes_between(self.first, moment)
        hidden = sum(fold.hides(minute, self.per_minute) for fold in self.folds)
        return self.offset + minute * self.per_minute - hidden

    def span(self, begins: datetime, ends: datetime, least: float = 0.0) -> Span:
        """Where a stretch of time lies, drawn at least `least` long but not past the end of the axis."""
        start, end = self.at(begins), self.at(ends)
        if end - start >= least:
            return Span(start, end)
        start = max(self.room.begins, min(start, self.room.ends - least))
        return Span(start, start + least)

    def clipped(self, span: Span) -> Span:
        """What of a span lies on the axis."""
        low, high = self.room.begins, self.room.ends
        return Span(min(max(span.begins, low), high), min(max(span.ends, low), high))

    def holds(self, moment: datetime) -> bool:
        """Whether the instant lies on the axis."""
        return self.first <= moment <= self.last

    def is_folded(self, moment: datetime) -> bool:
        """Whether the instant lies in a fold."""
        minute = minutes_between(self.first, moment)
        return any(fold.begins < minute < fold.ends for fold in self.folds)


@dataclass(frozen=True, slots=True)
class Tick:
    """A line on the axis; `text` is the hour for whole hours and empty for the quarters between."""

    at: datetime
    text: str

    @property
    def is_hour(self) -> bool:
        """Whether it is a whole hour on the wall clock."""
        return bool(self.text)


def quarter_before(moment: datetime, zone: tzinfo) -> datetime:
    """The last quarter of an hour on the local clock that is not after `moment`."""
    local = moment.astimezone(zone)
    past = timedelta(minutes=local.minute % 15, seconds=local.second, microseconds=local.microsecond)
    return (local.astimezone(UTC) - past).astimezone(zone)


def quarter_after(moment: datetime, zone: tzinfo) -> datetime:
    """The first quarter of an hour on the local clock that is not before `moment`."""
    before = quarter_before(moment, zone)
    return before if before == moment else (before.astimezone(UTC) + timedelta(minutes=15)).astimezone(zone)


def ticks(first: datetime, last: datetime, zone: tzinfo, every: int = 15) -> Iterator[Tick]:
    """Lines each `every` minutes (15, 30 or 60) from the first quarter on, with the hours named in local time."""
    moment = quarter_after(first, zone).astimezone(UTC)
    while moment <= last.astimezone(UTC):
        local = moment.astimezone(zone)
        if local.minute % every == 0:
            yield Tick(local, f"{local:%H:%M}" if local.minute == 0 else "")
        moment += timedelta(minutes=15)


def pack(spans: Sequence[Span], gap: float = 0.0) -> tuple[int, ...]:
    """The lane of each span: the first lane in which it touches nothing, taken in order of their beginnings.

    Spans in one lane never overlap and stand at least `gap` apart. Lanes are as few as can be when `gap` is 0.
    """
    free_from: list[float] = []
    lanes = [0] * len(spans)
    for index in sorted(range(len(spans)), key=lambda i: (spans[i].begins, spans[i].ends)):
        span = spans[index]
        lane = next((n for n, free in enumerate(free_from) if free <= span.begins), len(free_from))
        if lane == len(free_from):
            free_from.append(0.0)
        free_from[lane] = max(span.ends, span.begins) + gap
        lanes[index] = lane
    return tuple(lanes)
