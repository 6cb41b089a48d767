"""The heat of coals against the time since they were lit, and what follows from it: windows, top-ups.

Sources:
[1] One log of one chimney (weak): half black at 15 min from lighting, ashed at 25, near full heat to 45, falling by 55,
    weak by 65, nearly out by 105.
[2] Briquettes weigh about 25 g and hold 16 to 21 MJ/kg (weak); wood charcoal holds 28.5 to 33 MJ/kg gross.
Lump charcoal burns hotter and faster and less evenly by most accounts (common practice, no source; one kitchen test
found the contrary), hence its wide spread.
"""

from dataclasses import dataclass
from functools import lru_cache
from math import ceil, sqrt
from typing import Any

import numpy as np

from cookout.core.air import SEA_LEVEL_PA
from cookout.core.fire.charcoal import BRIQUETTES, LUMP, TENDING, firing_times
from cookout.core.fire.heat import combined, film, nusselt_cylinder, nusselt_free_vertical, rayleigh, reynolds

# Share of full heat at minutes since lighting; the marks of [1], and between them on straight lines.
_MARKS = (0.0, 5.0, 15.0, 25.0, 30.0, 45.0, 55.0, 65.0, 85.0, 105.0, 130.0)
_SHARES = (0.0, 0.1, 0.5, 0.9, 1.0, 0.95, 0.72, 0.42, 0.2, 0.06, 0.0)
_LOG_ASH_OVER = 25.0


@dataclass(frozen=True, slots=True)
class CoalParams:
    """One kind of fuel; a piece of lump is one of a briquette's size.

    kg_each        mass of a piece, kg; 0.024 to 0.026 [2], lump 0.010 to 0.020 (our own choice: wood char is light)
    joules_per_kg  gross heat, J/kg; 16e6 to 21e6 [2], lump 28.5e6 to 33e6 [2]
    pace           times of [1] are divided by this; 1, lump 1.2 to 1.6 (common practice, no source)
    fewer, more    the heat of a lot of coals may be less or more by these shares; our own choice, a little inside of
                   the spread of joules_per_kg; lump's is wider
    """

    kg_each: float = 0.025
    joules_per_kg: float = 18.5e6
    pace: float = 1.0
    fewer: float = 0.1
    more: float = 0.1

    @property
    def full_w(self) -> float:
        """Gross heat of a piece at its best, in watts: all its heat spread over the curve."""
        return self.kg_each * self.joules_per_kg / (float(np.trapezoid(_SHARES, _MARKS)) * 60 / self.pace)


COALS = {
    BRIQUETTES: CoalParams(),
    LUMP: CoalParams(kg_each=0.0155, joules_per_kg=30.5e6, pace=25 / 18, fewer=0.2, more=0.5),
}


def coal_params(fuel: str) -> CoalParams:
    """The numbers of ``briquettes`` or ``lump``; other fuel counts as briquettes."""
    return COALS.get(fuel, COALS[BRIQUETTES])


def share_of_full(minutes_since_lit: Any, fuel: str = BRIQUETTES) -> Any:
    """Heat of a coal as a share of its best, `minutes_since_lit` (number or array) after lighting in calm air.

    Worked example: briquettes at 25 min 0.9, at 45 min 0.95, at 65 min 0.42. Source: [1].
    """
    return np.interp(np.asarray(minutes_since_lit) * coal_params(fuel).pace, _MARKS, _SHARES)


def heat_w(minutes_since_lit: Any, fuel: str = BRIQUETTES) -> Any:
    """Gross heat of one coal in calm air, in watts. Worked example: briquettes at 35 min, 142 W. Sources: [1, 2]."""
    return share_of_full(minutes_since_lit, fuel) * coal_params(fuel).full_w


@dataclass(frozen=True, slots=True)
class FeedParams:
    """How wind feeds coals. Burning is held back by the air that reaches the coal, as heat leaving it would be.

    coal_m              width of a coal, m; 0.04 to 0.05
    film_k              the air next to it, K; 600 to 750
    hotter_k            coal above air, K; 600 to 800
    least, usual, most  share of the bare coal's gain that is left under ash and behind iron; 0 to 0.8; our own choice,
                        no source
    """

    coal_m: float = 0.045
    film_k: float = 650.0
    hotter_k: float = 700.0
    least: float = 0.1
    usual: float = 0.25
    most: float = 0.7


FEED = FeedParams()


def bare_gain(wind_mps: Any, pressure: float = SEA_LEVEL_PA, params: FeedParams = FEED) -> Any:
    """How many times as fast a bare coal burns in `wind_mps` at the coal as in still air; 1 in still air.

    By the likeness of heat and mass transfer. Worked example: 4 m/s, about 2.65. Source: the correlations of `heat`.
    """
    air = film(params.film_k, pressure)
    free = nusselt_free_vertical(air.prandtl, rayleigh(air, params.hotter_k, params.coal_m))
    forced = nusselt_cylinder(air.prandtl, reynolds(air, np.asarray(wind_mps, dtype=float), params.coal_m))
    return combined(forced, free) / combined(nusselt_cylinder(air.prandtl, 0.0), free)


def burn_rate(wind_mps: Any, exposed: Any = FEED.usual, pressure: float = SEA_LEVEL_PA) -> Any:
    """How many times as fast and as hot as in still air at the sea coals burn where `exposed` of the gain is left.

    Thin air feeds them less, by the square root of the pressure. Worked example: still air at 1,524 m, 0.912.
    """
    return (1 + exposed * (bare_gain(wind_mps, pressure) - 1)) * sqrt(pressure / SEA_LEVEL_PA)


def usable_window(fuel: str = BRIQUETTES, rate: float = 1.0, least_share: float = 0.7) -> tuple[float, float]:
    """From when to when, in minutes since lighting, coals give `least_share` of their best or more.

    They are not laid before they are ashed over; after that they burn `rate` times as fast as in still air.
    Worked example: briquettes 25.0 to 55.7 min. Source: [1].
    """
    ash_over = float(firing_times(fuel).ash_over_minutes)
    spent = float(np.interp(-least_share, [-share for share in _SHARES[4:]], _MARKS[4:])) / coal_params(fuel).pace
    return ash_over, ash_over + max(0.0, spent - ash_over) / rate


def mean_share(fuel: str, from_minute: float, to_minute: float, rate: Any = 1.0) -> Any:
    """Mean share of full heat between two times after coals were laid ashed over, burning `rate` times as fast.

    Fed coals are hotter and sooner spent; `rate` may be an array. Worked example: briquettes, 0 to 30 min: 0.92.
    """
    minutes = np.linspace(from_minute, to_minute, 61)
    pace = np.asarray(rate, dtype=float)[..., None]
    ages = firing_times(fuel).ash_over_minutes + minutes * pace
    return np.trapezoid(share_of_full(ages, fuel) * pace, minutes, axis=-1) / (to_minute - from_minute)


@dataclass(frozen=True, slots=True)
class TopUp:
    """Fresh coals: lit at `lit_minute`, laid at `at_minute` (both from laying the first coals), `lid` and `under`."""

    lit_minute: int
    at_minute: int
    lid: int
    under: int

    @property
    def total(self) -> int:
        """All of its coals."""
        return self.lid + self.under


@dataclass(frozen=True, slots=True)
class TopUpParams:
    """When coals are topped up. Our own choices, meeting the practice of half the count after 30 min (no source).

    spent_below  fresh coals come when those laid give less than this share of their best; 0.65 to 0.8
    least_left   none when the food is out within so many minutes; 5 to 15
    """

    spent_below: float = 0.72
    least_left: int = TENDING.top_up_least_left


TOP_UPS = TopUpParams()


@lru_cache(maxsize=1024)
def top_ups(
    lid: int, under: int, fuel: str, minutes: int, rate: float = 1.0, params: TopUpParams = TOP_UPS
) -> tuple[TopUp, ...]:
    """The fresh coals that keep an oven of `lid` and `under` coals hot for `minutes` from laying them.

    Each lot makes up what those laid before will lack until the next, so that the mean heat stays that of the first
    span. Worked example: 17 and 8 briquettes for 60 min: one, at 30 min, lit at 5, of 10 and 5 coals.
    """
    first, last = usable_window(fuel, rate, params.spent_below)
    span = max(8, round(last - first))
    lots = [1.0]
    found = []
    for number, at in enumerate(range(span, minutes - params.least_left, span), start=1):
        left = sum(
            part * float(mean_share(fuel, span * (number - lot), span * (number - lot + 1), rate))
            for lot, part in enumerate(lots)
        )
        fresh = float(mean_share(fuel, 0, span, rate))
        lots.append(max(0.0, 1 - left / fresh))
        counts = (ceil(round(lid * lots[-1], 2)), ceil(round(under * lots[-1], 2)))
        found.append(TopUp(at - firing_times(fuel).ash_over_minutes, at, *counts))
    return tuple(found)
