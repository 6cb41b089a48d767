"""A firing as a hill of heat, and the tasks that light it on its rising side."""

from collections.abc import Sequence
from dataclasses import dataclass

from cookout.core.planning.record import PlannedFiring
from cookout.drawing.geometry import Point, Slab, Span, TimeScale
from cookout.drawing.shapes import Brush
from cookout.drawing.zoom import tail_of


@dataclass(frozen=True, slots=True)
class Heat:
    """Where along the axis a firing is lit, ashed over, fading, and drawn no more."""

    lit: float
    ready: float
    fading: float
    gone: float

    def within(self, room: Span) -> Span:
        """What of it is shown."""
        return Span(self.lit, self.gone).within(room)


def heat_of(firing: PlannedFiring, scale: TimeScale) -> Heat:
    """A firing on the scale, parts of it perhaps beyond."""
    times = (firing.lit_at, firing.ready_from, firing.ready_until, tail_of(firing))
    return Heat(*(scale.at(moment) for moment in times))


def draw_firing(heat: Heat, across: Span, room: Span, brush: Brush) -> str:
    """A hill of heat: coals heaped while they light, a table while they serve, a dashed slope after.

    What of it lies outside the room along the axis is cut off.
    """
    base, top = across.ends, across.begins
    rising = _cut([(heat.lit, base), (heat.ready, top), (heat.ready, base)], room)
    steady = _cut([(heat.ready, base), (heat.ready, top), (heat.fading, top), (heat.fading, base)], room)
    falling = _cut_line((heat.fading, top), (heat.gone, base), room)
    whole, table = heat.within(room), Span(heat.ready, heat.fading).within(room)
    parts = (
        brush.filled(rising, "coals", "rise") if rising else "",
        brush.filled(steady, "flecks") if steady else "",
        brush.line("glow", (table.begins, top), (table.ends, top)) if table.length else "",
        brush.line("fade", *falling) if falling else "",
        brush.line("base", (whole.begins, base), (whole.ends, base)) if whole.length else "",
    )
    return "".join(parts)


def draw_kindling(slab: Slab, heat: Heat, brush: Brush, *, hands_on: bool) -> str:
    """The part of a hill's rising side that a task takes: iron where someone lights, clear where coals ash over."""
    rise = (slab.across.begins - slab.across.ends) / max(1.0, heat.ready - heat.lit)
    low, high = slab.across.begins, slab.across.ends
    heights = [max(low, min(high, high + rise * (at - heat.lit))) for at in (slab.along.begins, slab.along.ends)]
    a, base = slab.along, slab.across.ends
    side = [(a.begins, base), (a.begins, heights[0]), (a.ends, heights[1]), (a.ends, base)]
    return brush.shape(side, "iron" if hands_on else "kindle")


def _cut(points: Sequence[Point], room: Span) -> list[Point]:
    """A closed outline without what lies before or after the room; empty where nothing is left."""
    return _cut_at(_cut_at(list(points), room.begins, keep_later=True), room.ends, keep_later=False)


def _cut_at(points: list[Point], along: float, *, keep_later: bool) -> list[Point]:
    """A closed outline cut off at a line across; a corner on the line stays."""
    kept: list[Point] = []
    for first, second in zip(points, [*points[1:], *points[:1]], strict=True):
        if _is_kept(first, along, keep_later=keep_later):
            kept.append(first)
        if _is_kept(first, along, keep_later=keep_later) is not _is_kept(second, along, keep_later=keep_later):
            kept.append(_between(first, second, along))
    return kept


def _is_kept(point: Point, along: float, *, keep_later: bool) -> bool:
    return point[0] >= along if keep_later else point[0] <= along


def _cut_line(first: Point, second: Point, room: Span) -> tuple[Point, ...]:
    """What of a line lies in the room; nothing where none of it does."""
    kept = Span(first[0], second[0]).within(room)
    return (_between(first, second, kept.begins), _between(first, second, kept.ends)) if kept.length else ()


def _between(first: Point, second: Point, along: float) -> Point:
    """Where the line through both points passes a place along the axis."""
    (a, c), (next_a, next_c) = first, second
    return along, c + (next_c - c) * (along - a) / (next_a - a)
