"""Scales and lanes: where on the paper an instant lies, and which lane a bar may take.

"Along" is the way time runs, to the right; "across" is down the page. All lengths are pixels.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from datetime import UTC, datetime, timedelta, tzinfo

Point = tuple[float, float]


def minutes_between(first: datetime, second: datetime) -> float:
    """Minutes that pass from first to second by the sun, not by the wall clock (they differ when clocks change)."""
    return (second.timestamp() - first.timestamp()) / 60


@dataclass(frozen=True, slots=True)
class Span:
    """A stretch along one axis."""

    begins: float
    ends: float

    @property
    def length(self) -> float:
        """How long it is."""
        return self.ends - self.begins

    def within(self, other: "Span") -> "Span":
        """What of it lies in the other; a point at the nearer end where nothing does."""
        low, high = other.begins, other.ends
        return Span(min(max(self.begins, low), high), min(max(self.ends, low), high))

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
    def fitted(cls, first: datetime, last: datetime, room: Span, folds: tuple[Fold, ...] = ()) -> "TimeScale":
        """The scale on which first to last fill the room, but for the folds, which keep what they show."""
        folded, shown = sum(fold.ends - fold.begins for fold in folds), sum(fold.shown for fold in folds)
        minutes = max(1.0, minutes_between(first, last) - folded)
        return cls(first, last, room.begins, (room.length - shown) / minutes, folds)

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
        """Where what the axis holds of a stretch of time lies, drawn at least `least` long but not past its end."""
        start, end = self.at(max(begins, self.first)), self.at(min(ends, self.last))
        if end - start >= least:
            return Span(start, end)
        start = max(self.room.begins, min(start, self.room.ends - least))
        return Span(start, start + least)

    def clipped(self, span: Span) -> Span:
        """What of a span lies on the axis."""
        return span.within(self.room)

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
    return _full_before(moment, zone, 15)


def quarter_after(moment: datetime, zone: tzinfo) -> datetime:
    """The first quarter of an hour on the local clock that is not before `moment`."""
    return _full_after(moment, zone, 15)


def _full_before(moment: datetime, zone: tzinfo, every: int) -> datetime:
    local = moment.astimezone(zone)
    past = timedelta(minutes=local.minute % every, seconds=local.second, microseconds=local.microsecond)
    return (local.astimezone(UTC) - past).astimezone(zone)


def _full_after(moment: datetime, zone: tzinfo, every: int) -> datetime:
    before = _full_before(moment, zone, every)
    return before if before == moment else (before.astimezone(UTC) + timedelta(minutes=every)).astimezone(zone)


def ticks(first: datetime, last: datetime, zone: tzinfo, every: int = 15) -> Iterator[Tick]:
    """Lines each `every` minutes (a divisor of 60) of the local clock, with the hours named in local time."""
    step = min(every, 15)
    moment = _full_after(first, zone, step).astimezone(UTC)
    while moment <= last.astimezone(UTC):
        local = moment.astimezone(zone)
        if local.minute % every == 0:
            yield Tick(local, f"{local:%H:%M}" if local.minute == 0 else "")
        moment += timedelta(minutes=step)


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


def pack_in_order(spans: Sequence[Span], gap: float = 0.0) -> tuple[int, ...]:
    """The lane of each span, taken as they come: the first lane in which it keeps the gap to all that are there.

    More lanes than `pack` may need, but what comes first stands first.
    """
    taken: list[list[Span]] = []
    lanes = []
    for span in spans:
        wide = Span(span.begins - gap, span.ends + gap)
        lane = next((n for n, own in enumerate(taken) if not any(wide.overlaps(other) for other in own)), len(taken))
        if lane == len(taken):
            taken.append([])
        taken[lane].append(span)
        lanes.append(lane)
    return tuple(lanes)
