"""How many coals hold an oven at a temperature, by its heat balance.

The share of the coals' heat that reaches the iron, and what a usual load of food takes, are set so that the chart of
common practice is met at its own conditions (briquettes, calm, about 21 degrees Celsius, on the ground); everything
else (wind, cold, sun, height, what the oven stands on) follows from the balance and is no more certain than its band.
"""

from dataclasses import dataclass
from functools import lru_cache

import numpy as np

from cookout.core.fire.coals import coal_params, mean_share, usable_window
from cookout.core.fire.influences import SPREAD, Columns, band, columns_of
from cookout.core.fire.iron import Surface
from cookout.core.fire.network import OVEN, Array, Network, OvenParams, Stand
from cookout.core.fire.steady import heat_for

CHART_LID_PART = 2 / 3  # coals on the lid of all, when baking; common practice, no source
METAL_SPREAD = 0.15  # the heat that a metal table gives back differs so much from table to table; our own choice
LONGEST_SPAN = 30.0  # minutes for which one lot of coals is meant to hold; common practice, no source
HOTTEST_C = 350.0


@dataclass(frozen=True, slots=True)
class Wanted:
    """Coals, not yet whole: `lid` and `under` as usual, and the least and most in all."""

    lid: float
    under: float
    least: float
    most: float


@lru_cache(maxsize=4096)
def wanted(stand: Stand, target_c: float, lid_part: float, fuel: str, params: OvenParams = OVEN) -> Wanted:
    """The coals that hold `target_c` degrees Celsius, `lid_part` of them on the lid where none comes back from below.

    A surface that gives heat back takes coals from under the oven. Worked example: 12 inches, 177 degrees, two thirds
    on the lid: about 17 and 8.5. Valid from 15 degrees above the air to 350 degrees Celsius, held there.
    """
    columns = day_of(stand, fuel, params)
    network = Network(stand, columns, params)
    target = min(max(target_c, stand.weather.air_c + 15.0), HOTTEST_C)
    lid_heat = CHART_LID_PART / (CHART_LID_PART + (1 - CHART_LID_PART) * params.under_catch)
    food = network.usual_food() * columns.food
    heat, _ = heat_for(network, target, np.full(len(columns.loss), lid_heat), food)
    each = caught_each(stand, columns, fuel, params)[0]
    total = heat / (each * (CHART_LID_PART + (1 - CHART_LID_PART) * params.under_catch))
    below = params.from_below(stand)
    counts = total * (lid_part + (1 - lid_part) / below)
    least, usual, most = band(counts)
    lid = float(total[0]) * lid_part
    return Wanted(lid, float(usual) - lid, float(least), float(most))


def day_of(stand: Stand, fuel: str, params: OvenParams = OVEN) -> Columns:
    """The columns of influences on an oven there."""
    metal = METAL_SPREAD if stand.surface is Surface.METAL else 0.0
    return columns_of(stand.weather, fuel, stand.elevation_m, params.pot_wind, metal, SPREAD)


def caught_each(stand: Stand, columns: Columns, fuel: str, params: OvenParams = OVEN) -> tuple[Array, Array]:
    """Heat, in watts (columns,), that the iron gets from one coal on the lid and one under the oven, on the mean.

    The mean runs from laying the coals ashed over to the top-up, 30 min in calm air and less where wind feeds them.
    """
    first, last = usable_window(fuel, float(columns.rate[0]))
    span = min(LONGEST_SPAN, last - first)
    gross = coal_params(fuel).full_w * mean_share(fuel, 0.0, span, columns.rate) * columns.coal
    lid, under = params.catches(stand, columns.pot_wind_mps)
    return gross * lid, gross * under
