"""Where coals lie on a lid and under an oven, as points and as a picture.

The pattern is common practice with no source: under the oven a ring just inside its edge; on the lid a ring at the rim
and about one in five at the centre. Coals that find no room in a ring make a smaller one inside it.
"""

from dataclasses import dataclass
from math import cos, floor, pi, sin

from cookout.drawing.markup import letters, tag
from cookout.drawing.palette import PALETTES, Palette, Scheme
from cookout.drawing.shapes import words

COAL_INCHES = 1.6  # a coal with air around it
CENTRE_SHARE = 0.2  # of the coals on a lid, common practice
LEAST_FOR_CENTRE = 5
PICTURE = 210.0  # pixels across one oven in the picture
FACE = "Libertinus Serif"


@dataclass(frozen=True, slots=True)
class Ring:
    """`count` coals evenly on a circle of `radius` inches; radius 0 is one coal at the centre."""

    radius: float
    count: int

    def points(self) -> list[tuple[float, float]]:
        """Their middles in inches from the centre, the first one at the top."""
        angles = (2 * pi * place / self.count for place in range(self.count))
        return [(self.radius * sin(angle), -self.radius * cos(angle)) for angle in angles]


def rings_under(count: int, inches: int) -> list[Ring]:
    """The rings of `count` coals under an oven of that diameter."""
    return _rings(count, inches / 2 - 1.3)


def rings_on_lid(count: int, inches: int) -> list[Ring]:
    """The rings of `count` coals on a lid: at the rim, and about a fifth at the centre."""
    rim = inches / 2 - 1.0
    share = round(count * CENTRE_SHARE) if count >= LEAST_FOR_CENTRE else 0
    centre = max(share, count - _room(rim))
    return _rings(count - centre, rim) + _centre(centre)


def _centre(count: int) -> list[Ring]:
    if count == 0:
        return []
    return [Ring(0.0, 1)] if count == 1 else [Ring(COAL_INCHES / (2 * sin(pi / count)), count)]


def _room(radius: float) -> int:
    return max(1, floor(2 * pi * radius / COAL_INCHES))


def _rings(count: int, radius: float) -> list[Ring]:
    """Rings from `radius` inward until all coals lie; the last ring takes what is left, however tight."""
    found: list[Ring] = []
    while count > 0:
        last = radius - COAL_INCHES < COAL_INCHES / 2
        found.append(Ring(radius, count if last else min(_room(radius), count)))
        count -= found[-1].count
        radius -= COAL_INCHES
    return found


def oven_picture(lid: int, under: int, inches: int, scheme: Scheme = Scheme.GREY) -> str:
    """The lid and the ground under one oven, seen from above side by side, with their coals and counts, as SVG."""
    colours = PALETTES[scheme]
    name = f"{lid} coals on the lid, {under} under"
    pictures = [
        _disc(rings_on_lid(lid, inches), inches, f"{lid} on the lid", 0.0, colours, lid=True),
        _disc(rings_under(under, inches), inches, f"{under} under", PICTURE + 20, colours, lid=False),
    ]
    width, height = 2 * PICTURE + 20, PICTURE + 34
    return tag(
        "svg", tag("title", letters(name)), *pictures, xmlns="http://www.w3.org/2000/svg",
        viewBox=f"0 0 {width:.0f} {height:.0f}", width=width, height=height, role="img", aria_label=name,
        font_family=FACE,
    )  # fmt: skip


def _disc(rings: list[Ring], inches: int, text: str, left: float, colours: Palette, *, lid: bool) -> str:
    """One circle: solid with a handle for a lid, dashed for the oven's place on the ground."""
    middle, scale = PICTURE / 2, (PICTURE - 8) / inches
    dashes = None if lid else "7 5"
    rim = tag(
        "circle", cx=left + middle, cy=middle, r=middle - 3, fill=colours.smoke if lid else colours.paper,
        stroke=colours.ink, stroke_width=3, stroke_dasharray=dashes,
    )  # fmt: skip
    coals = (
        tag("circle", cx=left + middle + x * scale, cy=middle + y * scale, r=0.68 * scale, fill=colours.ink)
        for ring in rings
        for x, y in ring.points()
    )
    label = words(
        text, left + middle, PICTURE + 26, size=24, fill=colours.ink, text_anchor="middle", font_weight="bold"
    )  # fmt: skip
    return tag("g", rim, *coals, label, class_="lid" if lid else "under")
