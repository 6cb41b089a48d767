"""How many coals an oven wants.

The counts come from the oven's heat balance (`counts`), which meets the chart of common practice (no source:
briquettes, calm, about 21 degrees Celsius, on the ground) within 2 coals everywhere from 8 to 16 inches and 325 to 450
degrees Fahrenheit. No published correction for wind, cold, sun or ground was found, so what the balance says of them
stands inside a band (damp is not reckoned at all), and the cook's own log comes before it.
"""

from dataclasses import dataclass
from math import ceil, floor

from cookout.core.fire.charcoal import BRIQUETTES
from cookout.core.fire.counts import CHART_LID_PART, wanted
from cookout.core.fire.iron import LEAST_INCHES, MOST_INCHES, OvenBuild, Surface
from cookout.core.fire.network import Stand
from cookout.core.fire.weather import Weather

# Share of all coals that lies on the lid. Common practice, no source (some bake with 3:1).
LID_SHARE: dict[str, float] = {"bake": CHART_LID_PART, "roast": 1 / 2, "simmer": 1 / 3, "fry": 0.0}

_HALF_DOWN = 1e-6
LEAST_COALS = 4  # a few coals alone go out; common practice, no source


@dataclass(frozen=True, slots=True)
class CoalCount:
    """Coals to lay on the `lid` and `under` the oven; total counts from `least` to `most` are defensible."""

    lid: int
    under: int
    least: int
    most: int

    @property
    def total(self) -> int:
        """All coals of the oven."""
        return self.lid + self.under


def coal_count(
    inches: float,
    temperature_c: float,
    method: str,
    weather: Weather,
    *,
    oven: OvenBuild | None = None,
    surface: Surface | str = Surface.GROUND,
    elevation_m: float = 0.0,
    fuel: str = BRIQUETTES,
    stand_m: float | None = None,
) -> CoalCount:
    """Coals for an oven of `inches` at `temperature_c` degrees Celsius; `method` is bake, roast, simmer or fry.

    `oven` says more of the iron than its width does; `stand_m` is its height above the `surface` where it does not
    stand on its own legs. Widths are held to 5 to 24 inches, heats to between 15 degrees above the air and 350 degrees
    Celsius. Worked example: 12 inches, 350 degrees Fahrenheit, bake: 17 on the lid and 8 under. `KeyError` for a method
    that has no split, `ValueError` for a surface that is not known.
    """
    build = oven or OvenBuild(min(max(float(inches), LEAST_INCHES), MOST_INCHES))
    stand = Stand(build, weather, Surface(surface), elevation_m, stand_m)
    coals = wanted(stand, temperature_c, LID_SHARE[method], fuel)
    total = max(LEAST_COALS, round(coals.lid + coals.under))
    share = coals.lid / (coals.lid + coals.under)
    lid = round(total * share - _HALF_DOWN)  # an odd coal goes under, where it does more
    return CoalCount(lid, total - lid, max(1, min(floor(coals.least), total)), max(ceil(coals.most), total))
