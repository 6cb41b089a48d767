"""How long a baked food cools until it is fit to be iced, or to be handled, as least, usual and most.

It stands in its pan for some minutes, is turned out onto a rack (or stays in), and loses heat by free and forced
convection, glow, and a little vapour from the top (`fire.heat`, `fire.march`). It is cool when the warmest part of its
core is at or below the temperature that the icing bears. It never comes below the air: on a day warmer than that it
never is cool, and the answer says what a cooler with ice does instead.

Range: as for baking, with air from -20 to 45 degrees Celsius and wind to 20 m/s. Not reckoned: sun on the food (keep it
in the shade), and stacking. Worked example: a 9-inch layer, 1.25 inches high as baked, 22 degrees and still: about 70
min to 28 degrees; common practice (no source) waits an hour or so.
"""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from math import isinf

import numpy as np

from cookout.core.air import ZERO_C_IN_K, boiling_c, pressure_pa, vapour_pressure_pa
from cookout.core.fire.bodies import Around, Array, Bodies
from cookout.core.fire.foods import FOODS, Food
from cookout.core.fire.heat import base_coefficient, lid_coefficient, wall_coefficient
from cookout.core.fire.limits import DEPTHS_M, DIAMETERS_M, spread_of, within
from cookout.core.fire.march import LATENT_J_KG
from cookout.core.fire.until import Ended, Goal, StepParams, after, until


@dataclass(frozen=True, slots=True)
class CoolParams:
    """What a cooling food stands in, and how unsure we are. Our own estimates where no source is named.

    wind_share       of the forecast's wind (10 m up) that reaches a table; 0.2 to 0.7
    stirred_mps      air is never quite still where people work; 0.1 to 0.4
    glow_food        emissivity of crumb; 0.85 to 0.95 (textbook, from memory)
    glow_pan         emissivity of a pan; 0.2 (bright) to 0.9 (black)
    board_w_m2k      bottom on a board or table with no rack; 1 to 4
    surface_share    the surface taken for the films is so far from the air toward the start; 0.3 to 0.5
    mass_per_film    as in baking
    crust_m2_s       as in baking
    vapour_share     of what vapour carries in a batter, over the height as baked; 0.1 to 0.5
    crust_kg_m2      water that baking took from the top; 0.5 to 1.5
    film_spread      films are known to this share; 0.15 to 0.4
    air_spread_k     the air at the table is known so well; 1 to 3 K
    depth_spread     depth is level to this share; 0.04 to 0.15
    cooler_c         air in a cooler with ice: usual, 4 to 10 degrees Celsius; common practice, no source
    cooler_mps       air stirred in it by its own cold; 0.0 to 0.1
    longest_minutes  what takes longer is never cool; 180 to 720
    """

    wind_share: float = 0.4
    stirred_mps: float = 0.2
    glow_food: float = 0.9
    glow_pan: float = 0.4
    board_w_m2k: float = 2.0
    surface_share: float = 0.4
    mass_per_film: float = 0.00116
    crust_m2_s: float = 5.0e-6
    vapour_share: float = 0.25
    crust_kg_m2: float = 1.0
    film_spread: float = 0.25
    air_spread_k: float = 1.5
    depth_spread: float = 0.08
    cooler_c: float = 6.0
    cooler_mps: float = 0.05
    longest_minutes: float = 360.0


COOL = CoolParams()

# Cooling is smoother than baking, and slow: longer steps serve.
COOL_STEPS = StepParams(stages=9)


@dataclass(frozen=True, slots=True)
class CoolCase:
    """One food that cools.

    `depth_m` as baked; `start_c` of the whole food (none: as it is done); `bears_c` the temperature that the icing
    bears, or any other to be met; `pan_minutes` in its pan at first, and for good where not `turned_out`; `on_rack`
    with air under it. `ValueError` outside the ranges above.
    """

    food: str
    diameter_m: float
    depth_m: float
    air_c: float
    wind_mps: float = 0.0
    bears_c: float = 28.0
    start_c: float | None = None
    pan_minutes: float = 10.0
    turned_out: bool = True
    on_rack: bool = True
    elevation_m: float = 0.0

    def __post_init__(self) -> None:
        if self.food not in FOODS:
            raise ValueError(f'no food "{self.food}"; it is one of {", ".join(FOODS)}')
        within("diameter", self.diameter_m, DIAMETERS_M, "m")
        within("depth", self.depth_m, DEPTHS_M, "m")
        within("air", self.air_c, (-20.0, 45.0), "°C")
        within("wind", self.wind_mps, (0.0, 20.0), "m/s")
        within("minutes in the pan", self.pan_minutes, (0.0, 240.0), "min")

    @property
    def properties(self) -> Food:
        """The food's properties."""
        return FOODS[self.food]

    @property
    def from_c(self) -> float:
        """Temperature [C] of the whole food at the start."""
        done = self.properties.done_c if self.start_c is None else self.start_c
        return min(done, boiling_c(self.elevation_m))


@dataclass(frozen=True, slots=True)
class CoolTimes:
    """Minutes from out of the oven to fit to ice; none where it never comes to that, or not within hours.

    `too_warm`: the air itself is warmer than the icing bears, and no waiting helps. `in_cooler`: the same food in a
    cooler with ice from when it is turned out, told wherever the usual or the most is none.
    """

    least: float | None
    usual: float | None
    most: float | None
    too_warm: bool = False
    in_cooler: "CoolTimes | None" = None

    @property
    def never(self) -> bool:
        """Whether it usually never is cool enough where it stands."""
        return self.usual is None


def cooling_times(case: CoolCase, params: CoolParams = COOL, steps: StepParams = COOL_STEPS) -> CoolTimes:
    """The times of one food; see `cooling_times_many`."""
    return cooling_times_many((case,), params, steps)[0]


def cooling_times_many(
    cases: Sequence[CoolCase], params: CoolParams = COOL, steps: StepParams = COOL_STEPS
) -> tuple[CoolTimes, ...]:
    """The times of many foods, in the order given; with what a cooler does where the air does not."""
    outside = _times_of(cases, params, steps)
    wanting = [place for place, times in enumerate(outside) if times.usual is None or times.most is None]
    cooled = _times_of([in_cooler(cases[place], params) for place in wanting], params, steps)
    found = dict(zip(wanting, cooled, strict=True))
    return tuple(replace(times, in_cooler=found.get(place)) for place, times in enumerate(outside))


def in_cooler(case: CoolCase, params: CoolParams = COOL) -> CoolCase:
    """The same food turned out into a cooler with ice, its air unmoved by wind."""
    return replace(case, air_c=params.cooler_c, wind_mps=params.cooler_mps / params.wind_share)


def holds_minutes(case: CoolCase, params: CoolParams = COOL, steps: StepParams = COOL_STEPS) -> float | None:
    """Minutes that a cold iced food stands in the air before its top passes what the icing bears; none: for good.

    `start_c` of the case is its temperature out of the cooler, and it stands out of its pan. Example: a layer at 8
    degrees in air of 35, an icing that bears 28: some 28 min.
    """
    if case.air_c <= case.bears_c:
        return None
    bodies, around = _cooling_bodies([case], params, in_pan=False), _around([case], 0.0)
    goal = Goal(np.array([case.bears_c]), params.longest_minutes * 60, warming=True, watched=slice(0, 1))
    minutes = float(until(bodies.changed(mass_film=np.zeros(1)), around, goal, steps).seconds[0]) / 60
    return None if isinf(minutes) else minutes


def run_cooling(cases: Sequence[CoolCase], params: CoolParams, steps: StepParams) -> Ended:
    """The marches behind the times: all cases as usual, then in livelier and slacker air, then quicker and slower."""
    spread = np.array([case.properties.spread for case in cases])
    ways = [(1.0, 0.0), (1 + params.film_spread, -1.0), (1 - params.film_spread, 1.0), (1.0, 0.0), (1.0, 0.0)]
    food = [0.0, 0.0, 0.0, 1.0, -1.0]
    around = Around.joined([_around(cases, warmer * params.air_spread_k) for _, warmer in ways])
    stages = []
    for in_pan in (True, False):
        bodies = _cooling_bodies(cases, params, in_pan=in_pan)
        parts = [
            _altered(bodies, film, side * spread, side * params.depth_spread)
            for (film, _), side in zip(ways, food, strict=True)
        ]
        stages.append(Bodies.joined(parts))
    in_pan_s = np.tile([case.pan_minutes * 60 for case in cases], len(ways))
    state = after(stages[0], around, in_pan_s, steps)
    goal = Goal(np.tile([case.bears_c for case in cases], len(ways)), params.longest_minutes * 60, warming=False)
    ended = until(stages[1], around, goal, steps, state)
    return replace(ended, seconds=ended.seconds + in_pan_s)


def _times_of(cases: Sequence[CoolCase], params: CoolParams, steps: StepParams) -> list[CoolTimes]:
    if not cases:
        return []
    minutes = run_cooling(cases, params, steps).seconds.reshape(5, len(cases)) / 60
    return [_times(case, *(float(each) for each in minutes[:, place])) for place, case in enumerate(cases)]


def _times(case: CoolCase, usual: float, lively: float, slack: float, quick: float, slow: float) -> CoolTimes:
    least, most = spread_of(usual, (lively, quick), -1), spread_of(usual, (slack, slow), 1)
    if case.air_c >= case.bears_c:
        return CoolTimes(None, None, None, too_warm=True)
    return CoolTimes(_met(least), _met(usual), _met(most))


def _met(minutes: float) -> float | None:
    return None if isinf(minutes) else minutes


def _around(cases: Sequence[CoolCase], warmer_k: float) -> Around:
    air = np.array([[case.air_c + warmer_k] for case in cases])
    return Around(air, air, air)


def _cooling_bodies(cases: Sequence[CoolCase], params: CoolParams, *, in_pan: bool) -> Bodies:
    """The cases as bodies to march: in their pans, or as they stand after `pan_minutes`."""
    foods = [case.properties for case in cases]
    top, bottom, side = np.array([_films(case, params) for case in cases]).T
    panned = np.array([in_pan or not case.turned_out for case in cases])
    glow = np.where(panned, params.glow_pan, params.glow_food)
    racked = np.array([case.on_rack for case in cases])
    heat = np.array([food.crumb_density_kg_m3 * food.crumb_heat_j_kgk for food in foods])
    water = np.array([food.water_share * food.crumb_density_kg_m3 for food in foods])
    breathes = np.array([float(food.loses_water) for food in foods])
    return Bodies(
        height_m=np.array([case.depth_m for case in cases]),
        radius_m=np.array([case.diameter_m / 2 for case in cases]),
        heat_j_m3k=heat,
        moist=np.array([food.crumb_w_mk for food in foods]),
        vapour=params.vapour_share * np.array([food.vapour_w_mk for food in foods]),
        dry=np.array([food.dry_w_mk for food in foods]),
        vapour_from_c=np.full(len(cases), 40.0),
        boil_c=np.array([boiling_c(case.elevation_m) for case in cases]),
        plateau_k=water * LATENT_J_KG / heat,
        pressure_pa=np.array([pressure_pa(case.elevation_m) for case in cases]),
        film_top=top,
        film_bottom=np.where(racked, bottom, params.board_w_m2k),
        film_side=side,
        glow_top=np.full(len(cases), params.glow_food),
        glow_bottom=np.where(racked, glow, 0.0),
        glow_side=glow,
        mass_film=breathes * top * params.mass_per_film,
        dried=water * params.crust_m2_s,
        # A dry crust is no wet bulb: vapour stops where the top has come down to the air.
        vapour_pa=np.array([vapour_pressure_pa(max(case.air_c, 0.0)) for case in cases]),
        crust_kg_m2=np.full(len(cases), params.crust_kg_m2),
        start_c=np.array([case.from_c for case in cases]),
    )


def _films(case: CoolCase, params: CoolParams) -> tuple[float, float, float]:
    """Convection [W/m2 K] of top, bottom and side, at a surface temperature typical of the way down."""
    air = case.air_c + ZERO_C_IN_K
    surface = air + max(2.0, params.surface_share * abs(case.from_c - case.air_c))
    wind = max(params.stirred_mps, case.wind_mps * params.wind_share)
    pressure = pressure_pa(case.elevation_m)
    return (
        float(lid_coefficient(surface, air, case.diameter_m, wind, pressure)),
        float(base_coefficient(surface, air, case.diameter_m, wind, pressure)),
        float(wall_coefficient(surface, air, case.diameter_m, wind, pressure, case.depth_m)),
    )


def _altered(bodies: Bodies, film: float, spread: Array, depth: float) -> Bodies:
    """Films by a share; food that conducts better, holds less heat and is flatter (minus signs: the other way)."""
    return bodies.changed(
        film_top=bodies.film_top * film,
        film_bottom=bodies.film_bottom * film,
        film_side=bodies.film_side * film,
        height_m=bodies.height_m * (1 - depth),
        heat_j_m3k=bodies.heat_j_m3k * (1 - spread / 3),
        plateau_k=bodies.plateau_k / (1 - spread / 3),
        moist=bodies.moist * (1 + spread),
        vapour=bodies.vapour * (1 + spread),
    )
