"""Whole coals as a pattern that a person can lay: rings under the oven, a ring and a centre on the lid.

The pattern is common practice, no source: under the oven a ring just inside its edge, never at the centre (it burns the
middle); on the lid a ring at the rim and about one in five at the centre. Coals that find no room in a ring make a
smaller one inside it. A place is in parts of the oven's radius: (0, 0) the centre, (0, -1) the rim at the top.
"""

from dataclasses import dataclass
from math import cos, floor, pi, sin

COAL_INCHES = 1.6  # a coal with air around it; briquettes are 2 by 1.5 inches, from memory
CENTRE_SHARE = 0.2  # of the coals on a lid; common practice, no source
LEAST_FOR_CENTRE = 5
RIM_INCHES = 1.0  # from the lid's rim to the middle of a coal
EDGE_INCHES = 1.3  # the same from the edge of the base


@dataclass(frozen=True, slots=True)
class Ring:
    """`count` coals evenly on a circle of `radius`, in parts of the oven's; radius 0 is one coal at the centre."""

    radius: float
    count: int

    @property
    def places(self) -> tuple[tuple[float, float], ...]:
        """Where they lie, the first at the top, then clockwise."""
        angles = (2 * pi * place / self.count for place in range(self.count))
        return tuple((self.radius * sin(angle), -self.radius * cos(angle)) for angle in angles)


@dataclass(frozen=True, slots=True)
class Pattern:
    """Rings on the `lid` and `under` the oven, from the rim inward."""

    lid: tuple[Ring, ...]
    under: tuple[Ring, ...]

    @property
    def lid_places(self) -> tuple[tuple[float, float], ...]:
        """Where the coals on the lid lie."""
        return tuple(place for ring in self.lid for place in ring.places)

    @property
    def under_places(self) -> tuple[tuple[float, float], ...]:
        """Where the coals under the oven lie."""
        return tuple(place for ring in self.under for place in ring.places)

    @property
    def words(self) -> str:
        """How to lay it, in a sentence. Worked example: "On the lid 14 at the rim and 3 at the centre; under ..."."""
        lid = _told(self.lid, "at the rim", "at the centre")
        under = _told(self.under, "in a ring just inside the edge", "in a smaller ring")
        return f"On the lid {lid}; under the oven {under}."


def lay(lid: int, under: int, inches: float) -> Pattern:
    """The pattern of so many coals for an oven of `inches`; `ValueError` for fewer than none.

    Worked example: 17 and 8 on 12 inches: 14 at the rim and 3 at the centre of the lid, 8 in a ring under it.
    """
    if min(lid, under) < 0:
        raise ValueError("coals cannot be fewer than none")
    return Pattern(_on_lid(lid, inches / 2), _rings(under, 1 - EDGE_INCHES / (inches / 2), inches / 2))


def _on_lid(count: int, radius_in: float) -> tuple[Ring, ...]:
    rim = 1 - RIM_INCHES / radius_in
    share = round(count * CENTRE_SHARE) if count >= LEAST_FOR_CENTRE else 0
    centre = max(share, count - _room(rim, radius_in))
    if _tight(centre) / radius_in > rim:  # more than a rim and a centre hold: rings all the way in
        return _rings(count, rim, radius_in)
    inner = (Ring(_tight(centre) / radius_in, centre),) if centre else ()
    return (*_rings(count - centre, rim, radius_in), *inner)


def _tight(count: int) -> float:
    """Radius, in inches, of the smallest circle on which so many coals lie side by side."""
    return 0.0 if count < 2 else COAL_INCHES / (2 * sin(pi / count))


def _room(radius: float, radius_in: float) -> int:
    return max(1, floor(2 * pi * radius * radius_in / COAL_INCHES))


def _rings(count: int, radius: float, radius_in: float) -> tuple[Ring, ...]:
    """Rings from `radius` inward until all coals lie; the last one takes what is left, however tight."""
    found: list[Ring] = []
    step = COAL_INCHES / radius_in
    while count > 0:
        last = radius - step < step / 2
        found.append(Ring(radius, count if last else min(_room(radius, radius_in), count)))
        count -= found[-1].count
        radius -= step
    return tuple(found)


def _told(rings: tuple[Ring, ...], outer: str, inner: str) -> str:
    if not rings:
        return "none"
    rest = sum(ring.count for ring in rings[1:])
    return f"{rings[0].count} {outer}" + (f" and {rest} {inner}" if rest else "")
