"""How many coals an oven wants, from the chart that is common practice.

Standing of the chart: common practice, no source. Briquettes, calm, about 21 degrees Celsius, an open shelter.
No published correction for wind, cold, sun or ground was found, so weather widens the band and leaves the count alone.
"""

from bisect import bisect_right
from dataclasses import dataclass
from math import ceil, floor

from cookout.core.fire.weather import Weather

INCHES = (8, 10, 12, 14, 16)
FAHRENHEIT = (325, 350, 375, 400, 425, 450)

# (lid, under) by oven inches, one pair for each of FAHRENHEIT; common practice, no source.
LID_AND_UNDER: dict[int, tuple[tuple[int, int], ...]] = {
    8: ((10, 5), (11, 5), (11, 6), (12, 6), (13, 6), (14, 6)),
    10: ((13, 6), (14, 7), (16, 7), (17, 8), (18, 9), (19, 10)),
    12: ((16, 7), (17, 8), (18, 9), (19, 10), (21, 10), (22, 11)),
    14: ((20, 10), (21, 11), (22, 12), (24, 12), (25, 13), (26, 14)),
    16: ((22, 12), (24, 12), (24, 14), (27, 13), (28, 14), (30, 14)),
}

# Share of all coals that lies on the lid; None is the chart's own split (about 2:1). Common practice, no source.
LID_SHARE: dict[str, float | None] = {"bake": None, "roast": 1 / 2, "simmer": 1 / 3, "fry": 0.0}


@dataclass(frozen=True, slots=True)
class ChartParams:
    """How far the chart is trusted and how weather widens the band. Common practice or our own choice, no source.

    beyond_inches     the chart's edge slope is followed so many inches past its edge, then held; 2 to 4
    beyond_f          the same in degrees Fahrenheit; 50 to 125
    least_coals       no oven does with fewer; 2 to 6
    calm_mps          wind, in m/s, up to which the band is that of calm air; 1 to 3
    wind_share        the band widens by this share of the count both ways for each further m/s; 0.01 to 0.03
    mild_c            air, in degrees Celsius, for which the chart stands; 18 to 24
    air_share         more coals when colder (fewer when warmer) by this share for each degree Celsius; 0.003 to 0.01
    sun_share         fewer coals in full sun, more in shade, by this share; 0.02 to 0.08
    most_widening     no single influence moves a limit by more than this share; 0.2 to 0.4
    """

    beyond_inches: int = 4
    beyond_f: int = 100
    least_coals: int = 4
    calm_mps: float = 2.0
    wind_share: float = 0.02
    mild_c: float = 21.0
    air_share: float = 0.005
    sun_share: float = 0.04
    most_widening: float = 0.3


CHART = ChartParams()


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
    inches: float, temperature_c: float, method: str, weather: Weather, params: ChartParams = CHART
) -> CoalCount:
    """Coals for an oven of `inches` at `temperature_c` degrees Celsius; `method` is bake, roast, simmer or fry.

    Bilinear between the chart's 8 to 16 inches and 325 to 450 degrees Fahrenheit; a little past it along the edge's
    slope, further out held. Worked example: 12 inches, 350 degrees Fahrenheit, bake: 17 on the lid and 8 under.
    Source: common practice, no source. `KeyError` for a method that has no split.
    """
    fahrenheit = temperature_c * 9 / 5 + 32
    lid, under = (_between(inches, fahrenheit, part, params) for part in (0, 1))
    total = max(params.least_coals, round(lid + under))
    share = LID_SHARE[method]
    on_lid = min(total, round(lid)) if share is None else round(total * share)
    least, most = _band(inches, fahrenheit, total, weather, params)
    return CoalCount(on_lid, total - on_lid, least, most)


def _between(inches: float, fahrenheit: float, part: int, params: ChartParams) -> float:
    """The chart's lid (part 0) or under (part 1) count, interpolated over both its sides."""
    wide = _held(inches, INCHES, params.beyond_inches)
    hot = _held(fahrenheit, FAHRENHEIT, params.beyond_f)
    column = [_along(hot, FAHRENHEIT, [pair[part] for pair in LID_AND_UNDER[size]]) for size in INCHES]
    return max(0.0, _along(wide, INCHES, column))


def _held(value: float, marks: tuple[int, ...], beyond: float) -> float:
    return min(max(value, marks[0] - beyond), marks[-1] + beyond)


def _along(value: float, marks: tuple[int, ...], heights: list[int] | list[float]) -> float:
    """Linear between marks; outside, on along the slope from first to last mark, smoother than the edge."""
    if not marks[0] <= value <= marks[-1]:
        edge = 0 if value < marks[0] else -1
        slope = (heights[-1] - heights[0]) / (marks[-1] - marks[0])
        return heights[edge] + slope * (value - marks[edge])
    right = min(bisect_right(marks, value), len(marks) - 1)
    part = (value - marks[right - 1]) / (marks[right] - marks[right - 1])
    return heights[right - 1] + part * (heights[right] - heights[right - 1])


def _rules_of_thumb(inches: float, fahrenheit: float) -> list[float]:
    """Totals by the rules that compete with the chart; common practice, no source.

    Twice the diameter is about 350 degrees Fahrenheit; three more on the lid and three fewer under (again twice the
    diameter) is about 325. A coal is worth 10 to 15 degrees, on the smallest ovens 25.
    """
    worth = (10.0, 15.0) if inches >= INCHES[1] else (25.0,)
    return [2 * inches + (fahrenheit - known) / each for known in (325, 350) for each in worth]


def _band(inches: float, fahrenheit: float, total: int, weather: Weather, params: ChartParams) -> tuple[int, int]:
    wide = _held(inches, INCHES, params.beyond_inches)
    hot = _held(fahrenheit, FAHRENHEIT, params.beyond_f)
    rules = _rules_of_thumb(wide, hot)
    fewer, more = _weather_shares(weather, params)
    least = floor(min(total, *rules) - total * fewer)
    most = ceil(max(total, *rules) + total * more)
    return max(1, least), most


def _weather_shares(weather: Weather, params: ChartParams) -> tuple[float, float]:
    """How far below and above the calm band a count may lie: (fewer, more), both as shares of the count.

    Wind feeds the coals and strips heat, so it widens both ways; cold and shade ask for more, warmth and sun for fewer.
    """
    wind = _capped((weather.wind_mps - params.calm_mps) * params.wind_share, params)
    cold = _capped((params.mild_c - weather.air_c) * params.air_share, params)
    warm = _capped((weather.air_c - params.mild_c) * params.air_share, params)
    sun, shade = (params.sun_share, 0.0) if weather.sunny else (0.0, params.sun_share)
    return wind + warm + sun, wind + cold + shade


def _capped(share: float, params: ChartParams) -> float:
    return min(max(share, 0.0), params.most_widening)
