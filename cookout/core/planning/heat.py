"""The fire's models asked for an event's own gear, place and weather: coals, minutes over them, top-ups.

Where the organiser leaves the models out, counts are those of the chart's own conditions and minutes the recipe's.
"""

from dataclasses import dataclass
from functools import lru_cache
from math import ceil, floor, isinf

from cookout.core.fire.advice import about_heat, about_one_side, about_wet_centre
from cookout.core.fire.baking import BakeCase, Band, bake_times
from cookout.core.fire.chart import CoalCount, coal_count
from cookout.core.fire.coals import TopUp, top_ups
from cookout.core.fire.cooling import CoolCase, CoolTimes, cooling_times, in_cooler
from cookout.core.fire.counts import day_of
from cookout.core.fire.iron import OvenBuild, Surface
from cookout.core.fire.oven import Batch, OvenCase, Stand, oven_heat, simulate
from cookout.core.fire.weather import Weather
from cookout.core.kitchen.recipe import Bake, BakeMethod, Cool, CoolPlace, Load, Minutes
from cookout.core.planning.event import Event, GearKind

_MILD = Weather()

Levels = tuple[float, float, float]


@dataclass(frozen=True, slots=True)
class HeatParams:
    """How the models are asked. Our own choices, no source.

    start_c          food as it goes in where the recipe does not say, degrees Celsius; 15 to 25
    warming_minutes  cold iron under coals is followed for so long, then taken as steady; 25 to 45
    warming_step     between the points of that, minutes; 1 to 5
    coldest_c, warmest_c, windiest_mps  weather in which cooling is reckoned is held to these; the model's own range
    longest_band     most minutes are no more than so many times the usual ones, however windy; 2 to 4
    """

    start_c: float = 21.0
    warming_minutes: int = 30
    warming_step: int = 3
    longest_band: float = 3.0
    coldest_c: float = -20.0
    warmest_c: float = 45.0
    windiest_mps: float = 20.0


HEAT = HeatParams()


@dataclass(frozen=True, slots=True)
class Baking:
    """Minutes over the coals, and from when to look in; `modelled` where they are the model's and not the recipe's.

    `never` is told where the oven is too cool to bring the food there at all; the minutes are then the recipe's.
    """

    minutes: Minutes
    look_in_from: int
    modelled: bool = False
    never: bool = False


def oven_build(event: Event, inches: int) -> OvenBuild:
    """The event's oven of that diameter, or a usual one."""
    for gear in event.gear:
        if gear.kind is GearKind.OVEN and gear.inches == inches:
            return OvenBuild(inches, gear.deep, gear.iron_kg)
    return OvenBuild(inches)


def surface(event: Event) -> Surface:
    """What ovens stand on: the first cooking table's, or the ground."""
    return next((gear.surface for gear in event.gear if gear.kind is GearKind.TABLE), Surface.GROUND)


def stand_of(event: Event, bake: Bake, weather: Weather) -> Stand:
    """Where the oven of a bake stands."""
    heights = [gear.height_m for gear in event.gear if gear.kind is GearKind.TRIVET and gear.height_m is not None]
    height = max(heights) if bake.stand and heights else None
    return Stand(oven_build(event, bake.oven_inches), weather, surface(event), event.place.elevation_m, height)


def coals_for(event: Event, bake: Bake, weather: Weather) -> CoalCount:
    """Coals for a bake in that weather."""
    if not event.switches.use_models:
        return coal_count(bake.oven_inches, bake.temperature_c, bake.method.value, _MILD)
    stand = stand_of(event, bake, weather)
    return coal_count(
        bake.oven_inches,
        bake.temperature_c,
        bake.method.value,
        weather,
        oven=stand.oven,
        surface=stand.surface,
        elevation_m=stand.elevation_m,
        fuel=event.fuel.kind,
        stand_m=stand.stand_m,
    )


def baking_for(event: Event, bake: Bake, recipes: Minutes, weather: Weather, count: CoalCount) -> Baking:
    """How long a bake takes: by the model where the recipe says what stands in the oven, else as the recipe has it."""
    plain = Baking(recipes, bake.look_in_from)
    if bake.load is None or not event.switches.use_models:
        return plain
    stand = stand_of(event, bake, weather)
    return _modelled(stand, event.fuel.kind, bake, bake.load, count.lid, count.under) or Baking(
        recipes, bake.look_in_from, never=True
    )


@lru_cache(maxsize=1024)
def _modelled(stand: Stand, fuel: str, bake: Bake, load: Load, lid: int, under: int) -> Baking | None:
    above, below = _oven_bands(stand, fuel, lid, under, heated=bake.preheat_minutes > 0)
    case = BakeCase(
        load.food.value,
        load.pan_m,
        load.depth_m,
        above,
        below,
        start_c=HEAT.start_c if load.start_c is None else load.start_c,
        done_c=load.done_c,
        elevation_m=stand.elevation_m,
        in_pan=bake.trivet,
    )
    times = bake_times(case)
    if isinf(times.usual):
        return None
    usual = ceil(times.usual)
    least = max(2, floor(times.least))
    most = max(usual, ceil(min(times.most, times.usual * HEAT.longest_band)))
    look_in = max(1, min(floor(times.look_in), least - 1))
    return Baking(Minutes(least, usual, most), look_in, modelled=True)


def _oven_bands(stand: Stand, fuel: str, lid: int, under: int, *, heated: bool) -> tuple[Band, Band]:
    """What food meets above and below: steady in a hot oven; from cold iron, warming up to that."""
    steady = oven_heat(stand, lid, under, fuel)
    above = (steady.above.least, steady.above.usual, steady.above.most)
    below = (steady.below.least, steady.below.usual, steady.below.most)
    if heated:
        return above, below
    course = simulate(OvenCase(stand, (Batch(lid, under),), fuel), HEAT.warming_minutes)
    heats = [(float(minute), course.heat_at(minute)) for minute in range(0, HEAT.warming_minutes, HEAT.warming_step)]
    return (
        _curves([(at, (heat.above.least, heat.above.usual, heat.above.most)) for at, heat in heats], above),
        _curves([(at, (heat.below.least, heat.below.usual, heat.below.most)) for at, heat in heats], below),
    )


def _curves(points: list[tuple[float, Levels]], steady: Levels) -> Band:
    """Least, usual and most as curves that rise to the steady heat and stay there."""
    last = float(HEAT.warming_minutes)
    low, mid, high = (
        (*((at, min(levels[column], steady[column])) for at, levels in points), (last, steady[column]))
        for column in range(3)
    )
    return low, mid, high


@lru_cache(maxsize=512)
def troubles(stand: Stand, fuel: str, bake: Bake, lid: int, under: int) -> tuple[str, ...]:
    """What to do where a look-in shows the known troubles: too hot or too cool, a wet centre, one side browning."""
    heat = about_heat(stand, lid, under, bake.temperature_c, fuel)
    found = [] if heat is None else [heat.words]
    if bake.method is BakeMethod.BAKE:
        found += [about_wet_centre(stand, fuel).words, about_one_side(stand.weather).words]
    return tuple(found)


@dataclass(frozen=True, slots=True)
class Cooling:
    """Minutes until baked food is cool enough, in the air and (told where the air does not do it) `on_ice`.

    None where it never is, or not within hours.
    """

    in_air: Minutes | None
    on_ice: Minutes | None = None


def cooling_for(event: Event, cool: Cool, load: Load, weather: Weather) -> Cooling:
    """How long what was baked cools in that weather, by the model."""
    return _cooled(cool, load, weather.air_c, weather.wind_mps, event.place.elevation_m)


@lru_cache(maxsize=1024)
def _cooled(cool: Cool, load: Load, air_c: float, wind_mps: float, elevation_m: float) -> Cooling:
    case = CoolCase(
        load.food.value,
        load.pan_m,
        load.depth_m if cool.depth_m is None else cool.depth_m,
        min(max(air_c, HEAT.coldest_c), HEAT.warmest_c),
        min(wind_mps, HEAT.windiest_mps),
        bears_c=cool.to_c,
        start_c=load.done_c,
        turned_out=cool.where is not CoolPlace.PAN,
        on_rack=cool.where is not CoolPlace.PAN,
        elevation_m=elevation_m,
    )
    if cool.where is CoolPlace.COOLER:
        return Cooling(None, _cool_minutes(cooling_times(in_cooler(case))))
    times = cooling_times(case)
    in_air = _cool_minutes(times)
    return Cooling(in_air, None if in_air or times.in_cooler is None else _cool_minutes(times.in_cooler))


def _cool_minutes(times: CoolTimes) -> Minutes | None:
    if times.usual is None or times.least is None:
        return None
    usual = ceil(times.usual)
    most = usual * 2 if times.most is None else ceil(times.most)
    return Minutes(max(1, min(usual, floor(times.least))), usual, max(usual, most))


def top_ups_for(event: Event, bake: Bake, weather: Weather, count: CoalCount, minutes: int) -> tuple[TopUp, ...]:
    """Fresh coals on the way, by minutes from laying the first ones, for `minutes` over the coals."""
    rate = 1.0
    if event.switches.use_models:
        rate = float(day_of(stand_of(event, bake, weather), event.fuel.kind).rate[0])
    return top_ups(count.lid, count.under, event.fuel.kind, minutes, rate)
