"""What the day brings that nobody knows beforehand, each told apart so that its part in a band can be seen."""

from dataclasses import dataclass
from functools import cached_property

import numpy as np
import numpy.typing as npt

from cookout.core.air import pressure_pa
from cookout.core.fire.coals import FEED, burn_rate, coal_params
from cookout.core.fire.weather import Weather

Array = npt.NDArray[np.float64]


@dataclass(frozen=True, slots=True)
class Spread:
    """How far single influences reach. Our own choices, no source; the coals' spread is that of their fuel.

    loss       heat lost differs by this share from oven to oven and place to place; 0.05 to 0.15
    catch      share of the coals' heat that reaches the iron differs by this: ash, how they lie; 0.05 to 0.15
    shelter    in an open place the oven feels the forecast wind times 1 plus this; 0.3 to 0.6
    lull       in a sheltered place, or between gusts, the share of it that is felt; 0.3 to 0.7
    food       a usual load of food takes more or less by this share; 0.1 to 0.3
    """

    loss: float = 0.07
    catch: float = 0.07
    shelter: float = 0.4
    lull: float = 0.5
    food: float = 0.15


SPREAD = Spread()


@dataclass(frozen=True)
class Columns:
    """One column for each influence at its lower and upper end, the first for the usual; all arrays (columns,).

    coal          heat of the coals beside the usual
    loss          heat lost beside the usual
    pot_wind_mps  wind at the oven
    exposed       share of a bare coal's gain from wind that is left
    food          heat that food takes beside the usual
    rate          how fast coals burn beside still air at the sea
    """

    coal: Array
    loss: Array
    pot_wind_mps: Array
    exposed: Array
    food: Array
    pressure: float

    @cached_property
    def rate(self) -> Array:
        """How fast the coals burn."""
        rates: Array = np.asarray(burn_rate(self.pot_wind_mps, self.exposed, self.pressure))
        return rates


COLUMNS = 13


def columns_of(
    weather: Weather, fuel: str, elevation_m: float, pot_wind: float, metal_spread: float = 0.0, spread: Spread = SPREAD
) -> Columns:
    """The columns for that weather and fuel.

    Pairs after the usual: coals, what of their heat is caught, losses, the feeding of coals by wind, wind itself, food.
    """
    fuel_spread = coal_params(fuel)
    usual = weather.wind_mps * pot_wind
    gusty = max((weather.wind_mps + weather.gust_mps) / 2, weather.wind_mps * (1 + spread.shelter)) * pot_wind
    catch = float(np.hypot(spread.catch, metal_spread))
    one = np.ones(COLUMNS)
    coal, loss, wind, exposed, food = one.copy(), one.copy(), one * usual, one * FEED.usual, one.copy()
    coal[1:5] = 1 - fuel_spread.fewer, 1 + fuel_spread.more, 1 - catch, 1 + catch
    loss[5:7] = 1 - spread.loss, 1 + spread.loss
    exposed[7:9] = FEED.least, FEED.most
    wind[9:11] = usual * spread.lull, gusty
    food[11:13] = 1 - spread.food, 1 + spread.food
    return Columns(coal, loss, wind, exposed, food, pressure_pa(elevation_m))


def band(values: Array) -> tuple[Array, Array, Array]:
    """Least, usual and most of values whose last axis are the columns.

    Influences are independent, so their departures from the usual are squared, summed and rooted, each way by itself.
    """
    usual = values[..., 0]
    departures = values[..., 1:] - usual[..., None]
    fewer = np.sqrt((np.minimum(departures, 0) ** 2).sum(axis=-1))
    more = np.sqrt((np.maximum(departures, 0) ** 2).sum(axis=-1))
    return usual - fewer, usual, usual + more
