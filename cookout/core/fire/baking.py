"""How long a food bakes between an oven's heat above and below, as least, usual and most.

The food is a short cylinder heated by film and glow from above, below and the side; water boils where the local
boiling point is met, and leaves by the top before that; steam in the pores carries heat to the cold centre
(`fire.march`). It is done when the coldest part of its core (the middle half of its axis) has come to the food's centre
temperature, which is held below the local boiling point. Foods that want a simmer are kept there for the minutes of
`Food.simmer_minutes`.

Range: depth 0.008 to 0.2 m, diameter 0.08 to 0.5 m, oven from `done_c` to 350 degrees Celsius. A square pan is taken as
the round one of the same area. Not reckoned: rising (conduction is over the depth as poured), a pan's own heat, setting
and browning. Worked example: cake, 9 inches, 1.25 inches deep, 177 degrees above and below: 30 min, and 8 % of its
mass lost; common practice (no source) has 25 to 35 min, and 8 to 12 % (from memory).
"""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from itertools import pairwise
from math import inf, isfinite, isinf

import numpy as np

from cookout.core.air import boiling_c, pressure_pa
from cookout.core.fire.bodies import Around, Array, Bodies
from cookout.core.fire.foods import FOODS, Food
from cookout.core.fire.limits import DEPTHS_M, DIAMETERS_M, spread_of, within
from cookout.core.fire.march import LATENT_J_KG
from cookout.core.fire.until import STEPS, THICK_STEPS, Ended, Goal, StepParams, until

# One temperature that stays, or (minute, degrees Celsius) points that rise in time, the last one kept.
Heat = float | tuple[tuple[float, float], ...]
Band = tuple[Heat, Heat, Heat]

OVEN_C = (-40.0, 500.0)
THICK_FROM_M = 0.05


@dataclass(frozen=True, slots=True)
class BakeParams:
    """Films, and how unsure we are. Our own fit to common practice (no source) unless another source is named.

    film_w_m2k        convection in a closed oven, free and fed by leaks; 5 to 15
    glow_top          emissivity of food toward a lid or oven roof; 0.85 to 0.95 (textbook, from memory)
    glow_pan          emissivity of a used, darkened pan; 0.4 (bright) to 0.95 (black)
    contact_w_m2k     food on an iron floor, a thin film between; 60 to 300
    wall_w_m2k        food against an iron wall; 30 to 150
    covered_share     of the film and glow that passes a cover over the food; 0.4 to 0.9
    mass_per_film     mass film [m/s] for each W/m2 K of film, by the analogy of heat and mass: 1 / (0.95 x 1010 x 0.9)
    crust_m2_s        diffusivity of vapour through the dried top; 2e-6 to 1e-5
    steam_share       vapour's share of the pressure in the oven; 0.05 (vented) to 0.3 (lidded)
    filled_share      the same where food lies on the iron and fills the lidded oven with its steam; 0.4 to 0.9
    vapour_from_c     vapour carries heat within from here on; 30 to 50 degrees Celsius
    below_boiling_k   a centre is never asked to come nearer the boiling point; 1 to 3 K
    film_spread       films are known to this share; 0.1 to 0.3
    depth_spread      depth is level to this share; 0.04 to 0.15
    done_spread_k     a probe, a tester or an eye calls it done so much early or late; 0.5 to 2 K
    look_in_share     first look-in at this share of the least time; 0.7 to 0.9
    longest_minutes   a food not done by then is not done at all; 240 to 720
    """

    film_w_m2k: float = 8.0
    glow_top: float = 0.9
    glow_pan: float = 0.85
    contact_w_m2k: float = 150.0
    wall_w_m2k: float = 60.0
    covered_share: float = 0.7
    mass_per_film: float = 0.00116
    crust_m2_s: float = 5.0e-6
    steam_share: float = 0.1
    filled_share: float = 0.7
    vapour_from_c: float = 40.0
    below_boiling_k: float = 1.5
    film_spread: float = 0.12
    depth_spread: float = 0.08
    done_spread_k: float = 1.0
    look_in_share: float = 0.8
    longest_minutes: float = 480.0


BAKE = BakeParams()


@dataclass(frozen=True, slots=True)
class BakeCase:
    """One food in one oven.

    `depth_m` as poured or laid in; `start_c` of the food, in degrees Celsius; `done_c` where the recipe knows better
    than `FOODS`. `above_c` and `below_c` are the oven's temperatures as (low, mid, high), each one number or a curve
    of (minute, degrees Celsius) points. `in_pan`: in a pan of its own on a trivet or rack; else on the oven's own iron,
    and `below_c` is that iron's temperature. `covered`: foil or a lid of its own. `ValueError` outside the ranges.
    """

    food: str
    pan_diameter_m: float
    depth_m: float
    above_c: Band
    below_c: Band
    start_c: float = 21.0
    done_c: float | None = None
    elevation_m: float = 0.0
    in_pan: bool = True
    covered: bool = False

    def __post_init__(self) -> None:
        if self.food not in FOODS:
            raise ValueError(f'no food "{self.food}"; it is one of {", ".join(FOODS)}')
        within("pan diameter", self.pan_diameter_m, DIAMETERS_M, "m")
        within("depth", self.depth_m, DEPTHS_M, "m")
        within("start", self.start_c, (-1.0, 80.0), "°C")
        for heat in (*self.above_c, *self.below_c):
            _check_heat(heat)

    @property
    def properties(self) -> Food:
        """The food's properties."""
        return FOODS[self.food]

    def target_c(self, params: BakeParams = BAKE) -> float:
        """Centre temperature [C] asked for, never nearer to the local boiling point than the parameters allow."""
        wanted = self.properties.done_c if self.done_c is None else self.done_c
        return min(wanted, boiling_c(self.elevation_m) - params.below_boiling_k)


@dataclass(frozen=True, slots=True)
class Moment:
    """Temperatures [C] at a minute of the usual bake: the core, the middle of top and bottom."""

    minute: float
    centre_c: float
    top_c: float
    bottom_c: float


@dataclass(frozen=True, slots=True)
class BakeTimes:
    """Minutes from in to done; `inf` (math.inf) where the oven is too cool to bring the food there at all.

    For `least` and `most` the oven with its films, and the food with its depth and the eye, each go to one end of their
    spread, and the two effects add as independent ones do: a likely span, not the widest that can be. `look_in` is the
    first look, before `least`. `heated` is when the centre came to `done_c`, before any simmer. `loss_share` of the
    mass goes as vapour.
    """

    least: float
    usual: float
    most: float
    look_in: float
    heated: float
    done_c: float
    loss_share: float
    course: tuple[Moment, ...] = ()

    @property
    def never(self) -> bool:
        """Whether the usual oven never brings the food to its centre temperature."""
        return isinf(self.usual)


@dataclass(frozen=True, slots=True)
class BakeSlopes:
    """Minutes by which the usual time moves for each kelvin more `above` and `below`: below 0 where heat helps."""

    above: float
    below: float


def bake_times(case: BakeCase, params: BakeParams = BAKE, steps: StepParams | None = None) -> BakeTimes:
    """The times of one bake; see `bake_times_many`."""
    return bake_times_many((case,), params, steps)[0]


def bake_times_many(
    cases: Sequence[BakeCase], params: BakeParams = BAKE, steps: StepParams | None = None
) -> tuple[BakeTimes, ...]:
    """The times of many bakes, in the order given; five marches each: usual, oven up and down, food up and down.

    Without `steps`, thick food and food on iron is marched on a finer grid.
    """
    found: dict[int, BakeTimes] = {}
    for own, places in _by_steps(cases, steps).items():
        lot = [cases[place] for place in places]
        found |= zip(places, _times_of(lot, params, own), strict=True)
    return tuple(found[place] for place in range(len(cases)))


def steps_for(case: BakeCase) -> StepParams:
    """How finely a case is marched."""
    return STEPS if case.in_pan and case.depth_m < THICK_FROM_M else THICK_STEPS


def _by_steps(cases: Sequence[BakeCase], steps: StepParams | None) -> dict[StepParams, list[int]]:
    lots: dict[StepParams, list[int]] = {}
    for place, case in enumerate(cases):
        lots.setdefault(steps or steps_for(case), []).append(place)
    return lots


def _times_of(cases: Sequence[BakeCase], params: BakeParams, steps: StepParams) -> list[BakeTimes]:
    ended = run_bakes(cases, params, steps)
    minutes = ended.seconds.reshape(5, len(cases)) / 60
    courses = _courses(ended, len(cases))
    return [
        _times(case, minutes[:, place], float(ended.loss_kg_m3[place]), tuple(courses[place]), params)
        for place, case in enumerate(cases)
    ]


def run_bakes(cases: Sequence[BakeCase], params: BakeParams, steps: StepParams) -> Ended:
    """The marches behind `bake_times_many`: all cases as usual, then hotter, cooler, quicker food, slower food."""
    bodies, target = baked_bodies(cases, params), np.array([case.target_c(params) for case in cases])
    spread = np.array([case.properties.spread for case in cases])
    ways = [(1, 0), (2, 1), (0, -1), (1, 0), (1, 0)]
    parts = [_filmed(bodies, 1 + params.film_spread * film) for _, film in ways[:3]]
    parts += [_quicker(bodies, spread, params), _quicker(bodies, -spread, _turned(params))]
    targets = [target, target, target, target - params.done_spread_k]
    targets.append(np.minimum(target + params.done_spread_k, bodies.boil_c - params.below_boiling_k / 2))
    around = [around_bakes(cases, which) for which, _ in ways]
    goal = Goal(np.concatenate(targets), params.longest_minutes * 60, warming=True)
    return until(Bodies.joined(parts), Around.joined(around), goal, steps)


def bake_slopes(case: BakeCase, params: BakeParams = BAKE, by_k: float = 10.0) -> BakeSlopes:
    """How the usual time answers to heat above and below, from central differences over `by_k` kelvin each way.

    Minus `inf` where the food is never done with less heat. Example: a layer as above, about -0.3 min for each kelvin
    more above, and -0.1 below.
    """
    moves = [(by_k, 0.0), (-by_k, 0.0), (0.0, by_k), (0.0, -by_k)]
    cases = [_warmer(case, above, below) for above, below in moves]
    goal = Goal(np.array([case.target_c(params)] * 4), params.longest_minutes * 60, warming=True)
    ended = until(baked_bodies(cases, params), around_bakes(cases, 1), goal, steps_for(case))
    up_above, down_above, up_below, down_below = (float(each) / 60 for each in ended.seconds)
    return BakeSlopes(_slope(up_above, down_above, by_k), _slope(up_below, down_below, by_k))


def baked_bodies(cases: Sequence[BakeCase], params: BakeParams = BAKE) -> Bodies:
    """The cases as bodies to march."""
    foods = [case.properties for case in cases]
    water = np.array([food.water_share * food.density_kg_m3 for food in foods])
    heat = np.array([food.density_kg_m3 * food.heat_j_kgk for food in foods])
    open_top = np.array([0.0 if case.covered or not case.properties.loses_water else 1.0 for case in cases])
    passes = np.array([params.covered_share if case.covered else 1.0 for case in cases])
    panned = np.array([case.in_pan for case in cases])
    pressure = np.array([pressure_pa(case.elevation_m) for case in cases])
    return Bodies(
        height_m=np.array([case.depth_m for case in cases]),
        radius_m=np.array([case.pan_diameter_m / 2 for case in cases]),
        heat_j_m3k=heat,
        moist=np.array([food.moist_w_mk for food in foods]),
        vapour=np.array([food.vapour_w_mk for food in foods]),
        dry=np.array([food.dry_w_mk for food in foods]),
        vapour_from_c=np.full(len(cases), params.vapour_from_c),
        boil_c=np.array([boiling_c(case.elevation_m) for case in cases]),
        plateau_k=water * LATENT_J_KG / heat,
        pressure_pa=pressure,
        film_top=passes * params.film_w_m2k,
        film_bottom=np.where(panned, params.film_w_m2k, params.contact_w_m2k),
        film_side=np.where(panned, params.film_w_m2k, params.wall_w_m2k),
        glow_top=passes * params.glow_top,
        glow_bottom=np.where(panned, params.glow_pan, 0.0),
        glow_side=np.where(panned, params.glow_pan, 0.0),
        mass_film=open_top * params.film_w_m2k * params.mass_per_film,
        dried=water * params.crust_m2_s,
        vapour_pa=np.where(panned, params.steam_share, params.filled_share) * pressure,
        crust_kg_m2=np.zeros(len(cases)),
        start_c=np.array([case.start_c for case in cases]),
    )


def around_bakes(cases: Sequence[BakeCase], which: int) -> Around:
    """The ovens of the cases at the low (0), mid (1) or high (2) end of their bands; the side is between."""
    above, below = ([case.above_c[which] for case in cases], [case.below_c[which] for case in cases])
    points = [heat for heat in (*above, *below) if isinstance(heat, tuple)]
    last = max((curve[-1][0] for curve in points), default=0.0)
    minutes = np.arange(0.0, np.ceil(last) + 1.0)
    top, bottom = (np.array([_sampled(heat, minutes) for heat in side]) for side in (above, below))
    return Around(top, bottom, (top + bottom) / 2)


def _sampled(heat: Heat, minutes: Array) -> Array:
    if isinstance(heat, tuple):
        return np.interp(minutes, [point[0] for point in heat], [point[1] for point in heat])
    return np.full(minutes.size, float(heat))


def _filmed(bodies: Bodies, share: float) -> Bodies:
    return bodies.changed(
        film_top=bodies.film_top * share, film_bottom=bodies.film_bottom * share, film_side=bodies.film_side * share
    )


def _quicker(bodies: Bodies, spread: Array, params: BakeParams) -> Bodies:
    """Food that conducts better, holds less heat and lies flatter (or, with minus signs, the other way)."""
    heat = 1 - spread / 3
    return bodies.changed(
        height_m=bodies.height_m * (1 - params.depth_spread),
        heat_j_m3k=bodies.heat_j_m3k * heat,
        plateau_k=bodies.plateau_k / heat,
        moist=bodies.moist * (1 + spread),
        vapour=bodies.vapour * (1 + spread),
    )


def _turned(params: BakeParams) -> BakeParams:
    return replace(params, depth_spread=-params.depth_spread)


def _warmer(case: BakeCase, above_k: float, below_k: float) -> BakeCase:
    low, mid, high = case.above_c
    above = (low, _raised(mid, above_k), high)
    low, mid, high = case.below_c
    return replace(case, above_c=above, below_c=(low, _raised(mid, below_k), high))


def _raised(heat: Heat, by_k: float) -> Heat:
    if isinstance(heat, tuple):
        return tuple((minute, celsius + by_k) for minute, celsius in heat)
    return heat + by_k


def _slope(up: float, down: float, by_k: float) -> float:
    return (up - down) / (2 * by_k) if isfinite(up) and isfinite(down) else -inf


def _times(case: BakeCase, minutes: Array, loss: float, course: tuple[Moment, ...], params: BakeParams) -> BakeTimes:
    usual, hotter, cooler, quicker, slower = (float(each) for each in minutes)
    least = spread_of(usual, (hotter, quicker), -1)
    most = spread_of(usual, (cooler, slower), 1)
    simmer = case.properties.simmer_minutes
    first = least + simmer[0]
    return BakeTimes(
        least=first,
        usual=usual + simmer[1],
        most=most + simmer[2],
        look_in=first * params.look_in_share,
        heated=usual,
        done_c=case.target_c(params),
        loss_share=loss / case.properties.density_kg_m3,
        course=course,
    )


def _courses(ended: Ended, count: int) -> list[list[Moment]]:
    """The courses of the usual bakes, which come first among the bodies."""
    courses: list[list[Moment]] = [[] for _ in range(count)]
    for each in ended.courses:
        minutes = each.seconds / 60
        rows = zip(each.which, minutes, each.centre_c, each.top_c, each.bottom_c, strict=True)
        for place, *values in rows:
            if place < count and (not courses[place] or courses[place][-1].minute * 60 < ended.seconds[place]):
                courses[place].append(Moment(*(round(float(value), 2) for value in values)))
    return courses


def _check_heat(heat: Heat) -> None:
    if not isinstance(heat, tuple):
        within("oven", heat, OVEN_C, "°C")
        return
    if not heat or any(later[0] <= earlier[0] for earlier, later in pairwise(heat)):
        raise ValueError("a curve needs points whose minutes rise")
    for _, celsius in heat:
        within("oven", celsius, OVEN_C, "°C")
