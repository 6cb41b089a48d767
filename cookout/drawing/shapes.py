"""The shapes of the drawing: cut iron bars, lidded ovens, hatched waits, plates, and the heat of a firing.

Every shape takes its slab and a `Turned` function, so it serves time running across or down the page.
"""

from dataclasses import dataclass

from cookout.drawing.geometry import Point, Slab, Span, Turned
from cookout.drawing.looks import Look, TickLook
from cookout.drawing.markup import letters, number, path, tag
from cookout.drawing.palette import Palette

CUT = 4.0  # the corner cut off an iron bar
TOOTH = 4.0  # pitch and height of the ember teeth under fire work
FLANGE = 2.5  # how far a lid stands out over its oven
TICK_ROOM = 10.0  # room above a lid for the signs on it


@dataclass(frozen=True, slots=True)
class Brush:
    """What shapes are drawn with: colours, the way time runs, and the prefix of pattern ids in this drawing."""

    colours: Palette
    turned: Turned
    prefix: str

    def pattern(self, name: str) -> str:
        """The paint that refers to one of `patterns`."""
        return f"url(#{self.prefix}-{name})"

    def outline(self, points: list[Point], *, closed: bool = True) -> str:
        """Path data through points given as (along, across)."""
        return path([self.turned(*point) for point in points], closed=closed)

    def line(self, first: Point, second: Point, **attributes: str | float | None) -> str:
        """A straight line between points given as (along, across)."""
        return tag("path", d=self.outline([first, second], closed=False), fill="none", **attributes)


def patterns(brush: Brush) -> str:
    """The hatchings, as definitions that a drawing needs once."""
    ink, ash = brush.colours.soot, brush.colours.ash
    hatch = tag("path", d="M0 6 L6 0", stroke=ash, stroke_width=0.9, fill="none")
    coals = tag("circle", cx=2.5, cy=2.5, r=1.5, fill=ink) + tag("circle", cx=6.5, cy=6.5, r=1.5, fill=ink)
    flecks = tag("circle", cx=2, cy=2, r=0.7, fill=ink) + tag("circle", cx=5, cy=5, r=0.7, fill=ink)
    made = (("hatch", 6, hatch), ("coals", 8, coals), ("flecks", 6, flecks))
    return tag("defs", *(_pattern(f"{brush.prefix}-{name}", size, inside) for name, size, inside in made))


def _pattern(name: str, size: float, inside: str) -> str:
    return tag("pattern", inside, id=name, width=size, height=size, patternUnits="userSpaceOnUse")


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


def _corners(slab: Slab) -> list[Point]:
    a, c = slab.along, slab.across
    return [(a.begins, c.begins), (a.ends, c.begins), (a.ends, c.ends), (a.begins, c.ends)]


def _cut_bar(slab: Slab) -> list[Point]:
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
    return tag("path", d=brush.outline(_cut_bar(slab)), fill=brush.colours.iron, class_="hands")


def _fire_bar(slab: Slab, brush: Brush) -> str:
    a, c = slab.along, slab.across
    body = Slab(a, Span(c.begins, c.ends - TOOTH))
    teeth = max(1, round(a.length / TOOTH))
    pitch = a.length / teeth
    low, high = c.ends - TOOTH, c.ends
    edge = [(a.begins + pitch * (n + half), high if half else low) for n in range(teeth) for half in (0, 0.5)]
    embers = brush.outline([*edge, (a.ends, low)])
    return tag("path", d=brush.outline(_cut_bar(body)), fill=brush.colours.iron, class_="hands fire") + tag(
        "path", d=embers, fill=brush.colours.ember, class_="embers"
    )


def _wait(slab: Slab, brush: Brush) -> str:
    inner = slab.inset(0.5)
    outline = brush.outline(_corners(inner))
    ground = tag("path", d=outline, fill=brush.colours.paper)
    return ground + tag(
        "path", d=outline, fill=brush.pattern("hatch"), stroke=brush.colours.soot, stroke_dasharray="4 2", class_="wait"
    )


def _oven(slab: Slab, brush: Brush) -> str:
    """An oven seen from the side: a lid wider than its pot, the pot, and coals in a row beneath."""
    a, c = slab.along, slab.across
    lean = min(3.0, a.length / 4)
    pot = [(a.begins, c.begins), (a.ends, c.begins), (a.ends - lean, c.ends - 3), (a.begins + lean, c.ends - 3)]
    ink = brush.colours.ink
    body = tag("path", d=brush.outline(pot), fill=brush.colours.smoke, stroke=ink, stroke_width=1.4, class_="oven")
    lid = brush.line(
        (a.begins - FLANGE, c.begins), (a.ends + FLANGE, c.begins), stroke=ink, stroke_width=3, class_="lid"
    )
    coals = brush.line(
        (a.begins + lean + 1, c.ends), (a.ends - lean, c.ends), stroke=brush.colours.ember, stroke_width=4,
        stroke_linecap="round", stroke_dasharray="0 6", class_="embers",
    )  # fmt: skip
    return body + coals + lid


def _plate(slab: Slab, brush: Brush) -> str:
    colours = brush.colours
    return tag(
        "path", d=brush.outline(_lozenge(slab.inset(0.8))), fill=colours.paper, stroke=colours.ink, stroke_width=1.6,
        class_="plate",
    ) + tag(
        "path", d=brush.outline(_lozenge(slab.inset(3))), fill="none", stroke=colours.ink, stroke_width=0.7,
    )  # fmt: skip


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
    ink = brush.colours.ink
    if look is TickLook.LOOK_IN:
        lifted = [(along - 5, lid - 2), (along + 5, lid - 8.5), (along + 5, lid - 2)]
        return tag("path", d=brush.outline(lifted), fill=brush.colours.paper, stroke=ink, stroke_width=1.2)
    if look is TickLook.TOP_UP:
        x, y = brush.turned(along, lid - 5)
        return tag("circle", cx=x, cy=y, r=3.8, fill=brush.colours.ember, stroke=ink, stroke_width=0.8)
    hook = [(along - 4, lid - 1.5), (along - 4, lid - 7.5), (along + 3.5, lid - 7.5), (along + 3.5, lid - 3.5)]
    return tag("path", d=brush.outline(hook, closed=False), fill="none", stroke=ink, stroke_width=2)


def draw_lamp(slab: Slab, brush: Brush) -> str:
    """The lamp over a task that is done before the audience."""
    a, c = slab.along.begins, slab.across.begins
    lamp = [(a, c - 5), (a + 8, c - 5), (a + 4, c - 0.5)]
    return tag("path", d=brush.outline(lamp), fill=brush.colours.ink, class_="lamp")


@dataclass(frozen=True, slots=True)
class Heat:
    """Where along the axis a firing is lit, ashed over, fading, and drawn no more."""

    lit: float
    ready: float
    fading: float
    gone: float


def draw_firing(heat: Heat, across: Span, brush: Brush) -> str:
    """A firing as a hill of heat: coals heaped while they light, a table while they serve, a dashed slope after."""
    colours, base, top = brush.colours, across.ends, across.begins
    rising = [(heat.lit, base), (heat.ready, top), (heat.ready, base)]
    steady = [(heat.ready, base), (heat.ready, top), (heat.fading, top), (heat.fading, base)]
    falling = [(heat.fading, top), (heat.gone, base)]
    return "".join(
        (
            tag("path", d=brush.outline(rising), fill=brush.pattern("coals"), stroke=colours.ink, class_="lighting"),
            tag("path", d=brush.outline(steady), fill=colours.paper),
            tag("path", d=brush.outline(steady), fill=brush.pattern("flecks"), class_="ashed-over"),
            brush.line((heat.ready, top), (heat.fading, top), stroke=colours.ember, stroke_width=3),
            brush.line(*falling, stroke=colours.ink, stroke_dasharray="3 3", class_="fading"),
            brush.line((heat.lit, base), (heat.gone, base), stroke=colours.ink, stroke_width=1),
        )
    )


def draw_kindling(slab: Slab, heat: Heat, brush: Brush, *, hands_on: bool) -> str:
    """The part of a hill's rising side that a task takes: iron where someone lights, clear where coals ash over."""
    rise = (slab.across.begins - slab.across.ends) / max(1.0, heat.ready - heat.lit)
    heights = [slab.across.ends + rise * (along - heat.lit) for along in (slab.along.begins, slab.along.ends)]
    a, base = slab.along, slab.across.ends
    side = [(a.begins, base), (a.begins, heights[0]), (a.ends, heights[1]), (a.ends, base)]
    fill = brush.colours.iron if hands_on else "transparent"
    return tag("path", d=brush.outline(side), fill=fill, stroke=brush.colours.ink)


def charred_edge(along: float, across: Span, brush: Brush) -> str:
    """The edge to which the day has burnt away: a torn line, so that it is no grid line."""
    steps = max(2, round(across.length / 7))
    pitch = across.length / steps
    points = [(along + (1.8 if n % 2 else -1.8), across.begins + n * pitch) for n in range(steps + 1)]
    return tag(
        "path", d=brush.outline(points, closed=False), fill="none", stroke=brush.colours.ink, stroke_width=2,
        stroke_linejoin="round", class_="now",
    )  # fmt: skip


def rectangle(slab: Slab, brush: Brush, **attributes: str | float | None) -> str:
    """A plain rectangle."""
    (x0, y0), (x1, y1) = (
        brush.turned(slab.along.begins, slab.across.begins),
        brush.turned(slab.along.ends, slab.across.ends),
    )
    return tag("rect", x=x0, y=y0, width=x1 - x0, height=y1 - y0, **attributes)


def words(
    text: str, x: float, y: float, *, size: float, fill: str, halo: str | None = None, **attributes: str | float | None
) -> str:
    """One line of text whose baseline starts at (x, y); a halo keeps it readable over lines."""
    around: dict[str, str | float] = {}
    if halo:
        around = {"paint_order": "stroke", "stroke": halo, "stroke_width": 3, "stroke_linejoin": "round"}
    return tag("text", letters(text), x=x, y=y, font_size=number(size), fill=fill, **around, **attributes)
