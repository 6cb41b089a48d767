"""How far the fire stands from what, and who says so. Lengths in metres; every figure was read in a copy."""

from dataclasses import dataclass

from cookout.core.quantities import METRES_IN_FOOT


@dataclass(frozen=True, slots=True)
class Distance:
    """A least distance in metres, and the source that names it."""

    metres: float
    source: str


def _feet(feet: float, source: str) -> Distance:
    return Distance(feet * METRES_IN_FOOT, source)


BURNABLE = _feet(10, "a state fire code: from anything that burns")
ADVISED = _feet(15, "an insurer: from anything that burns")
OPEN_FIRE = _feet(25, "a fire code's figure for open fires")
CLEARED = _feet(10, "forest-service tips: a circle cleared to bare ground")
CHILD_RING = _feet(3, "fire-service advice: a clear ring for children")
