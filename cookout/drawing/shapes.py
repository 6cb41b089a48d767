"""The shapes of the drawing: cut iron bars, lidded ovens, hatched waits, plates, and the heat of a firing.

Looks are classes of `style`; only what points to a pattern of the same drawing is said at the part itself.
"""

from collections.abc import Iterable
from dataclasses import dataclass

from cookout.drawing.geometry import Point, Slab, Span
from cookout.drawing.looks import Look, TickLook
from cookout.drawing.markup import letters, number, path, tag

CUT = 4.0  # the corner cut off an iron bar
TOOTH = 4.0  # height of the ember teeth under fire work
FLANGE = 2.5  # how far a lid stands out over its oven
TICK_ROOM = 10.0  # room above a lid for the signs on it


@dataclass(frozen=True, slots=True)
class Brush:
    """What shapes are drawn with: it knows the prefix of pattern ids in this drawing."""

    prefix: str

    def pattern(self, name: str) -> str:
        """The paint that refers to one of `patterns`."""
        return f"url(#{self.prefix}-{name})"

    def outline(self, points: Iterable[Point], *, closed: bool = True) -> str:
        """Path data through points given as (along, across)."""
        return path(list(points), closed=closed)

    def shape(self, points: Iterable[Point], look: str) -> str:
        """A closed outline of a look."""
        return f'<path class="{look}" d="{self.outline(points)}"/>'

    def filled(self, points: Iterable[Point], pattern: str, look: str | None = None) -> str:
        """A closed outline filled with a pattern."""
        return tag("path", class_=look, d=self.outline(points), fill=self.pattern(pattern))

    def line(self, look: str, *points: Point) -> str:
        """A line through points given as (along, across)."""
        return f'<path class="{look}" d="{self.outline(points, closed=False)}"/>'

    def lines(self, look: str, pairs: Iterable[tuple[Point, Point]]) -> str:
        """Many straight lines of one look as one part."""
        data = "".join(self.outline(pair, closed=False) for pair in pairs)
        return f'<path class="{look}" d="{data}"/>' if data else ""


def patterns(brush: Brush) -> str:
    """The hatchings, each on paper, as definitions that a drawing needs once."""
    hatch = tag("path", class_="hatching", d="M0 6 6 0")
    coals = _specks((2.5, 1.5), (6.5, 1.5))
    flecks = _specks((2, 0.7), (5, 0.7))
    made = (("hatch", 6, hatch), ("coals", 8, coals), ("flecks", 6, flecks))
    return tag("defs", *(_pattern(f"{brush.prefix}-{name}", size, inside) for name, size, inside in made))


def _specks(*specks: tuple[float, float]) -> str:
    return "".join(tag("circle", class_="speck", cx=place, cy=place, r=radius) for place, radius in specks)


def _pattern(name: str, size: float, inside: str) -> str:
    paper = tag("rect", class_="paper", width=size, height=size)
    return tag("pattern", paper, inside, id=name, width=size, height=size, patternUnits="userSpaceOnUse")


def draw(look: Look, slab: Slab, brush: Brush) -> str:
    """A task's shape in its slab."""
    makers = {
        Look.HANDS: _bar,
        Look.FIRE: _fire_bar,
        Look.WAIT: _wait,
        Look.OVEN: _oven,
        Look.PLATE: _plate,
    }
    return makers[look](slab, brush)


def corners(slab: Slab) -> list[Point]:
    """The four corners of a slab."""
    a, c = slab.along, slab.across
    return [(a.begins, c.begins), (a.ends, c.begins), (a.ends, c.ends), (a.begins, c.ends)]


def cut_corners(slab: Slab) -> list[Point]:
    """The outline of an iron bar: a corner is cut off where it ends."""
    a, c = slab.along, slab.across
    cut = min(CUT, a.length / 2, c.length / 2)
    return [
        (a.begins, c.begins),
        (a.ends - cut, c.begins),
        (a.ends, c.begins + cut),
        (a.ends, c.ends),
        (a.begins, c.ends),
    ]


def _bar(slab: Slab, brush: Brush) -> str:
    return brush.shape(cut_corners(slab), "iron")


def _fire_bar(slab: Slab, brush: Brush) -> str:
    return draw_work(slab, [slab.along], brush)


def draw_work(slab: Slab, hot: Iterable[Span], brush: Brush) -> str:
    """A bar of hands-on work, with ember teeth under those stretches of it that are work at the fire."""
    spans = list(hot)
    if not spans:
        return _bar(slab, brush)
    c = slab.across
    body = Slab(slab.along, Span(c.begins, c.ends - TOOTH))
    middle = c.ends - TOOTH / 2
    teeth = brush.lines("teeth", (((span.begins, middle), (span.ends, middle)) for span in spans))
    return brush.shape(cut_corners(body), "iron") + teeth


def _wait(slab: Slab, brush: Brush) -> str:
    return brush.filled(corners(slab.inset(0.5)), "hatch", "wait")


def _oven(slab: Slab, brush: Brush) -> str:
    """An oven seen from the side: a lid wider than its pot, the pot, and coals in a row beneath."""
    a, c = slab.along, slab.across
    lean = min(3.0, a.length / 4)
    pot = [(a.begins, c.begins), (a.ends, c.begins), (a.ends - lean, c.ends - 3), (a.begins + lean, c.ends - 3)]
    return (
        brush.shape(pot, "pot")
        + brush.line("coals", (a.begins + lean + 1, c.ends), (a.ends - lean, c.ends))
        + brush.line("lid", (a.begins - FLANGE, c.begins), (a.ends + FLANGE, c.begins))
    )


def _plate(slab: Slab, brush: Brush) -> str:
    outer, inner = _lozenge(slab.inset(0.8)), _lozenge(slab.inset(3))
    return brush.shape(outer, "plate") + brush.shape(inner, "rim")


def _lozenge(slab: Slab) -> list[Point]:
    a, c = slab.along, slab.across
    cut = min(a.length, c.length) / 3
    return [
        (a.begins + cut, c.begins),
        (a.ends - cut, c.begins),
        (a.ends, c.begins + cut),
        (a.ends, c.ends - cut),
        (a.ends - cut, c.ends),
        (a.begins + cut, c.ends),
        (a.begins, c.ends - cut),
        (a.begins, c.begins + cut),
    ]


def draw_tick(look: TickLook, along: float, lid: float, brush: Brush) -> str:
    """A sign on a lid that lies at `lid` across: a bent arrow turns, a lifted lid looks in, a coal tops up."""
    if look is TickLook.LOOK_IN:
        return brush.shape([(along - 5, lid - 2), (along + 5, lid - 8.5), (along + 5, lid - 2)], "lifted")
    if look is TickLook.TOP_UP:
        return tag("circle", class_="coal", cx=along, cy=lid - 5, r=3.8)
    hook = [(along - 4, lid - 1.5), (along - 4, lid - 7.5), (along + 3.5, lid - 7.5), (along + 3.5, lid - 3.5)]
    return brush.line("hook", *hook)


def draw_nicks(places: Iterable[float], lid: float, brush: Brush) -> str:
    """Short strokes on a lid, one for each time that somebody sees to what bakes: for looks from afar."""
    return brush.lines("nick", (((along, lid - 6), (along, lid)) for along in places))


def draw_lamp(slab: Slab, brush: Brush) -> str:
    """The lamp over a task that is done before the audience."""
    a, c = slab.along.begins, slab.across.begins
    return brush.shape([(a, c - 5), (a + 8, c - 5), (a + 4, c - 0.5)], "dark")


def draw_pin(slab: Slab, brush: Brush) -> str:
    """A nail through the upper corner of a task that was pinned: its head, and its point going in."""
    a, c = slab.along.begins + min(4.0, slab.along.length / 2), slab.across.begins
    point = brush.line("onward", (a, c), (a, c + 5))
    return point + tag("circle", class_="pin", cx=a, cy=c - 3, r=3.4)


def draw_onward(along: float, across: Span, brush: Brush, *, later: bool) -> str:
    """A white arrowhead with a dark edge where a task goes on beyond what is shown."""
    way, middle, reach = (1 if later else -1), (across.begins + across.ends) / 2, across.length / 4
    tip, foot = along - way, along - way * (1 + 1.5 * reach)
    return brush.shape([(tip, middle), (foot, middle - reach), (foot, middle + reach)], "lifted")


def charred_edge(along: float, across: Span, brush: Brush) -> str:
    """The edge to which the day has burnt away: a torn line, so that it is no grid line."""
    steps = max(2, round(across.length / 7))
    pitch = across.length / steps
    points = [(along + (1.8 if n % 2 else -1.8), across.begins + n * pitch) for n in range(steps + 1)]
    return brush.line("charred", *points)


def rectangle(slab: Slab, look: str) -> str:
    """A plain rectangle."""
    a, c = slab.along, slab.across
    return tag("rect", class_=look, x=a.begins, y=c.begins, width=a.length, height=c.length)


def words(text: str, x: float, y: float, look: str = "t") -> str:
    """One line of text of a look; its baseline starts at (x, y), or has its middle or end there, as the look says."""
    return f'<text class="{look}" x="{number(x)}" y="{number(y)}">{letters(text)}</text>'
