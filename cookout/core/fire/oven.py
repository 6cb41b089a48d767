"""A lidded iron oven in time: the temperatures that food meets from above and from below, each with a band.

The network (`network`) is carried through time by the classical Runge-Kutta method of fourth order with equal steps;
whatever happens at a moment (coals laid, coals taken off, food put in) begins a new stretch of steps, so that no step
runs across it.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from functools import lru_cache
from itertools import pairwise
from math import ceil

import numpy as np

from cookout.core.air import ZERO_C_IN_K
from cookout.core.fire.charcoal import BRIQUETTES, firing_times
from cookout.core.fire.coals import coal_params, share_of_full
from cookout.core.fire.counts import caught_each, day_of
from cookout.core.fire.influences import Columns, band
from cookout.core.fire.iron import OvenBuild, Surface
from cookout.core.fire.network import FOOD, OVEN, USUAL_WIDE_M, Array, FoodLoad, Network, OvenParams, Stand
from cookout.core.fire.steady import settle

__all__ = [
    "Band", "Batch", "FoodLoad", "OvenBuild", "OvenCase", "OvenCourse", "OvenHeat", "OvenParams", "Stand", "Surface",
    "oven_heat", "simulate", "usual_load",
]  # fmt: skip

STEP_S = 30.0


@dataclass(frozen=True, slots=True)
class Batch:
    """Coals laid together at minute `laid_at`, `minutes_lit` after they were lit (None: just ashed over).

    At minute `off_at` they are taken off again (None: never). Counts need not be whole.
    """

    lid: float
    under: float
    laid_at: float = 0.0
    minutes_lit: float | None = None
    off_at: float | None = None


@dataclass(frozen=True, slots=True)
class OvenCase:
    """An oven with its coals. Food goes in at minute `food_at`; iron starts at `start_c` (None: the air's)."""

    stand: Stand
    batches: tuple[Batch, ...]
    fuel: str = BRIQUETTES
    food: FoodLoad | None = None
    food_at: float = 0.0
    start_c: float | None = None


@dataclass(frozen=True, slots=True)
class Band:
    """A temperature in degrees Celsius: least, usual and most."""

    least: float
    usual: float
    most: float


@dataclass(frozen=True, slots=True)
class OvenHeat:
    """What food meets from `above` and from `below`."""

    above: Band
    below: Band

    @property
    def mean(self) -> Band:
        """The mean of above and below, which is what a recipe calls the oven's temperature."""
        pairs = ((getattr(self.above, end), getattr(self.below, end)) for end in ("least", "usual", "most"))
        return Band(*((above + below) / 2 for above, below in pairs))


@dataclass(frozen=True, slots=True)
class OvenCourse:
    """An oven over time; `minutes` (moments,), all else (moments, columns) with a column for each influence.

    Temperatures in degrees Celsius, heat in joules since the beginning: `came_in` from the coals, `lost` outside,
    `used` as steam, `stored` in iron and food.
    """

    minutes: Array
    above_c: Array
    below_c: Array
    food_c: Array
    came_in: Array
    lost: Array
    used: Array
    stored: Array

    @property
    def mean_c(self) -> Array:
        """The mean of above and below, which is what a recipe calls the oven's temperature."""
        return (self.above_c + self.below_c) / 2

    def heat_at(self, minute: float) -> OvenHeat:
        """What food meets at a minute, between the moments on straight lines."""
        return OvenHeat(*(self._band_at(values, minute) for values in (self.above_c, self.below_c)))

    def heat_between(self, start: float, end: float) -> OvenHeat:
        """What food meets on the mean from one minute to another."""
        minutes = np.linspace(start, end, 61)
        sampled = (
            np.stack([self._all_at(values, each) for each in minutes]) for values in (self.above_c, self.below_c)
        )
        return OvenHeat(*(_band_of(values.mean(axis=0)) for values in sampled))

    def minutes_to(self, celsius: float) -> float | None:
        """When the mean of above and below first is that hot as usual; None: it never is."""
        usual = self.mean_c[:, 0]
        hot = np.flatnonzero(usual >= celsius)
        if not hot.size:
            return None
        at = int(hot[0])
        if at == 0:
            return float(self.minutes[0])
        part = (celsius - usual[at - 1]) / (usual[at] - usual[at - 1])
        return float(self.minutes[at - 1] + part * (self.minutes[at] - self.minutes[at - 1]))

    def _all_at(self, values: Array, minute: float) -> Array:
        return np.array([np.interp(minute, self.minutes, column) for column in values.T])

    def _band_at(self, values: Array, minute: float) -> Band:
        return _band_of(self._all_at(values, minute))


def _band_of(columns: Array) -> Band:
    least, usual, most = band(columns)
    return Band(float(least), float(usual), float(most))


@lru_cache(maxsize=2048)
def oven_heat(stand: Stand, lid: float, under: float, fuel: str = BRIQUETTES, params: OvenParams = OVEN) -> OvenHeat:
    """What food meets in a hot oven of so many coals with a usual load, on the mean of one lot of coals.

    Worked example: 12 inches, 17 on the lid, 8 under, calm: about 172 degrees above and below, 140 to 202 by the day.
    """
    columns = day_of(stand, fuel, params)
    network = Network(stand, columns, params)
    on_lid, beneath = caught_each(stand, columns, fuel, params)
    heat = _by_nodes(on_lid * lid, beneath * under, params)
    kelvin = settle(network, heat, network.usual_food() * columns.food)
    above, below = network.felt(kelvin, loaded=False)
    return OvenHeat(_band_of(above), _band_of(below))


def simulate(case: OvenCase, minutes: float, step_s: float = STEP_S, params: OvenParams = OVEN) -> OvenCourse:
    """The oven from minute 0 to `minutes` in steps of at most `step_s` seconds (5 to 60).

    Worked example: 12 inches with 17 and 8 coals, calm, empty: 150 degrees Celsius after about 10 min.
    """
    columns = day_of(case.stand, case.fuel, params)
    network = Network(case.stand, columns, params, case.food)
    course = _Course(network, case, columns)
    for start, end in pairwise(_moments(case, minutes)):
        course.carry_on(start, end, max(1, ceil((end - start) * 60 / step_s)))
    return course.done()


def usual_load(oven: OvenBuild, *, trivet: bool = False) -> FoodLoad:
    """A usual load: wet food as wide as nine tenths of the oven, in proportion to its floor, 2.2 kg in 12 inches.

    It takes about as much heat as the counts allow for (`OvenParams.usual_food_w_m2`). Common practice, no source.
    """
    wide = 0.9 * oven.wide_m
    return FoodLoad(kg=2.2 * (oven.wide_m / USUAL_WIDE_M) ** 2, wide_m=wide, trivet=trivet, wet=1.8)


def _moments(case: OvenCase, minutes: float) -> list[float]:
    """The beginning, the end, and whatever happens between."""
    happens = [batch.laid_at for batch in case.batches] + [b.off_at for b in case.batches if b.off_at is not None]
    inside = {moment for moment in (*happens, case.food_at) if 0 < moment < minutes}
    return sorted({0.0, float(minutes)} | inside)


def _by_nodes(on_lid: Array, beneath: Array, params: OvenParams) -> Array:
    """Heat from above and from below shared out to lid, wall and base on a new first-but-last axis."""
    return np.stack([on_lid, params.wall_share * beneath, (1 - params.wall_share) * beneath], axis=-2)


class _Course:
    """Carries the temperatures on, and keeps what happened."""

    def __init__(self, network: Network, case: OvenCase, columns: Columns) -> None:
        self._network, self._case, self._columns = network, case, columns
        start = case.stand.weather.air_c if case.start_c is None else case.start_c
        self._kelvin = np.full((FOOD + 1, len(columns.loss)), start + ZERO_C_IN_K)
        if case.food:
            self._kelvin[FOOD] = case.food.start_c + ZERO_C_IN_K
        self._first = self._kelvin.copy()
        self._sums = np.zeros((3, len(columns.loss)))  # came in, lost, used
        self._rows: list[tuple[float, Array, Array, bool]] = []

    def carry_on(self, start: float, end: float, steps: int) -> None:
        """From one minute to another in so many equal steps, between which nothing begins or ends."""
        loaded = self._case.food is not None and self._case.food_at <= start
        if not self._rows:
            self._keep(start, loaded=loaded)
        halves = np.linspace(start, end, 2 * steps + 1)
        heat = self._heat(halves, (start + end) / 2)
        seconds = (end - start) * 60 / steps
        for step in range(steps):
            self._step(heat[2 * step : 2 * step + 3], seconds, loaded=loaded)
            self._keep(halves[2 * step + 2], loaded=loaded)

    def _heat(self, minutes: Array, middle: float) -> Array:
        """Heat from all coals that lie at the `middle` of the stretch, (moments, 3, columns)."""
        case, rate = self._case, self._columns.rate
        ash_over = firing_times(case.fuel).ash_over_minutes
        gross = coal_params(case.fuel).full_w * rate * self._columns.coal
        lid = np.zeros((len(minutes), len(rate)))
        under = lid.copy()
        for batch in _lying(case.batches, middle):
            lit = ash_over if batch.minutes_lit is None else batch.minutes_lit
            each = gross * share_of_full(lit + (minutes[:, None] - batch.laid_at) * rate, case.fuel)
            lid += batch.lid * each
            under += batch.under * each
        params = self._network.params
        on_lid, beneath = params.catches(case.stand, self._columns.pot_wind_mps)
        return _by_nodes(lid * on_lid, under * beneath, params)

    def _step(self, heat: Array, seconds: float, *, loaded: bool) -> None:
        """One step of the classical Runge-Kutta method; sums of heat go along by the same weights."""
        kelvin = self._kelvin
        slopes: list[Array] = []
        total = np.zeros_like(self._sums)
        for which, reach, weight in ((0, 0.0, 1.0), (1, 0.5, 2.0), (1, 0.5, 2.0), (2, 1.0, 1.0)):
            at = kelvin + reach * seconds * slopes[-1] if slopes else kelvin
            flows = self._network.flows(at, heat[which], loaded=loaded)
            slopes.append(flows.net / self._network.stores)
            total += weight * np.stack([heat[which].sum(axis=0), flows.lost, flows.used])
        self._kelvin = kelvin + seconds / 6 * (slopes[0] + 2 * slopes[1] + 2 * slopes[2] + slopes[3])
        if not loaded:
            self._kelvin[FOOD] = kelvin[FOOD]
        self._sums = self._sums + seconds / 6 * total

    def _keep(self, minute: float, *, loaded: bool) -> None:
        self._rows.append((minute, self._kelvin, self._sums, loaded))

    def done(self) -> OvenCourse:
        """All that was kept."""
        felt = [self._network.felt(kelvin, loaded=loaded) for _, kelvin, _, loaded in self._rows]
        kelvin = np.stack([row[1] for row in self._rows])
        sums = np.stack([row[2] for row in self._rows])
        stored = (self._network.stores * (kelvin - self._first)).sum(axis=1)
        return OvenCourse(
            np.array([row[0] for row in self._rows]),
            np.stack([above for above, _ in felt]),
            np.stack([below for _, below in felt]),
            kelvin[:, FOOD] - ZERO_C_IN_K,
            came_in=sums[:, 0],
            lost=sums[:, 1],
            used=sums[:, 2],
            stored=stored,
        )


def _lying(batches: tuple[Batch, ...], minute: float) -> Iterator[Batch]:
    for batch in batches:
        if batch.laid_at <= minute and (batch.off_at is None or minute < batch.off_at):
            yield batch
