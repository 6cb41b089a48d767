"""The fire's models asked for an event's own gear, place and weather."""

from dataclasses import replace

import pytest

from cookout.core.fire.chart import coal_count
from cookout.core.fire.cooling import CoolCase, cooling_times
from cookout.core.fire.foods import FOODS
from cookout.core.fire.iron import Surface
from cookout.core.fire.weather import Weather
from cookout.core.kitchen.recipe import Bake, BakeMethod, Cool, CoolPlace, IcingKind, Load, LoadKind, Minutes
from cookout.core.planning.event import Event, Gear, GearId, GearKind, Place, Switches
from cookout.core.planning.expand import expand
from cookout.core.planning.heat import baking_for, coals_for, cooling_for, oven_build, stand_of, top_ups_for, troubles
from cookout.core.safety.icing import Icing
from tests.core.planning.build import F350, bake_step, event, recipe, usual_gear

LAYER = Load(LoadKind.CARROT_CAKE, pan_m=0.2286, depth_m=0.03)
IRON = Bake(12, BakeMethod.BAKE, F350, look_in_from=20, preheat_minutes=10, trivet=True, load=LAYER)
RECIPE = Minutes(24, 28, 34)
MILD, WINDY = Weather(), Weather(air_c=27, wind_mps=7, gust_mps=10)


def without_models(made: Event) -> Event:
    """The same event, by the chart and the recipes alone."""
    return replace(made, switches=Switches(use_models=False))


def minutes(made: Event, iron: Bake, weather: Weather) -> Minutes:
    """Minutes over the coals."""
    return baking_for(made, iron, RECIPE, weather, coals_for(made, iron, weather)).minutes


def test_loads_and_icings_of_recipes_are_those_that_the_models_know() -> None:
    assert {kind.value for kind in LoadKind} == set(FOODS)
    assert {kind.value for kind in IcingKind} == {kind.value for kind in Icing}


def test_the_ovens_own_iron_and_what_it_stands_on_are_used() -> None:
    heavy = Gear(GearId("o"), GearKind.OVEN, "o", inches=12, deep=True, iron_kg=14.0)
    table = Gear(GearId("t"), GearKind.TABLE, "t", spots=2, surface=Surface.GRATE)
    made = event(kit=(heavy, table))
    assert (oven_build(made, 12).deep, oven_build(made, 12).iron_kg) == (True, 14.0)
    assert oven_build(made, 10).iron_kg is None
    assert stand_of(made, IRON, MILD).surface is Surface.GRATE
    assert stand_of(event(kit=(heavy,)), IRON, MILD).surface is Surface.GROUND


def test_an_oven_on_a_tall_trivet_stands_as_high_as_that() -> None:
    tall = Gear(GearId("tall"), GearKind.TRIVET, "tall", height_m=0.127)
    made = event(kit=(*usual_gear(), tall))
    assert stand_of(made, replace(IRON, stand=True), MILD).stand_m == 0.127
    assert stand_of(made, IRON, MILD).stand_m is None


def test_cold_and_a_metal_table_change_the_count_and_without_models_it_is_the_charts() -> None:
    made = event()
    cold, mild = (coals_for(made, IRON, Weather(air_c=air)).total for air in (-5.0, 21.0))
    assert cold > mild
    on_ground = event(kit=usual_gear()[:2])
    assert coals_for(made, IRON, MILD).under < coals_for(on_ground, IRON, MILD).under
    chart = coal_count(12, F350, "bake", Weather())
    assert coals_for(without_models(made), IRON, Weather(air_c=-5)) == chart


def test_a_layer_in_still_air_takes_as_long_as_practice_has_it() -> None:
    # 9-inch layers at 350 °F: 25 to 36 min; common practice, no source.
    assert 25 <= minutes(event(), IRON, MILD).usual <= 36


def test_cold_iron_takes_longer_and_a_wind_widens_the_band_downward() -> None:
    made = event()
    assert minutes(made, replace(IRON, preheat_minutes=0), MILD).usual > minutes(made, IRON, MILD).usual
    assert minutes(made, IRON, WINDY).least < minutes(made, IRON, MILD).least


def test_the_look_in_stands_before_the_least_time_whatever_the_weather() -> None:
    for weather in (MILD, WINDY, Weather(air_c=-10, wind_mps=12)):
        baking = baking_for(event(), IRON, RECIPE, weather, coals_for(event(), IRON, weather))
        assert baking.modelled
        assert 0 < baking.look_in_from < baking.minutes.least


def test_without_a_load_or_without_models_the_recipe_has_its_own_minutes() -> None:
    assert minutes(event(), replace(IRON, load=None), WINDY) == RECIPE
    assert minutes(without_models(event()), IRON, WINDY) == RECIPE


def test_a_centre_that_the_oven_never_reaches_leaves_the_recipes_minutes_and_is_told() -> None:
    lukewarm = replace(IRON, temperature_c=60.0, load=replace(LAYER, food=LoadKind.STEW))
    baking = baking_for(event(), lukewarm, RECIPE, MILD, coals_for(event(), lukewarm, MILD))
    assert (baking.never, baking.minutes) == (True, RECIPE)
    made = expand(event((recipe(steps=(bake_step(oven=lukewarm, after=()),)),), kit=with_trivet()))
    assert any("would not bring it to its centre" in warning.text for warning in made.warnings)


def with_trivet() -> tuple[Gear, ...]:
    return (*usual_gear(), Gear(GearId("trivet"), GearKind.TRIVET, "trivet"))


def test_the_bake_of_a_plan_lasts_as_the_model_has_it() -> None:
    made = expand(event((recipe(steps=(bake_step(28, least=24, oven=IRON, after=()),)),), kit=with_trivet()))
    run = made.bake_runs[0]
    assert run.modelled
    assert made.problem.task_by_id[run.bakes].minutes == run.minutes.usual
    assert "reckoned for this weather" in made.info[run.bakes].detail


def test_wind_feeds_the_coals_so_the_first_top_up_comes_sooner() -> None:
    made = event()
    calm, windy = (top_ups_for(made, IRON, weather, coals_for(made, IRON, weather), 60) for weather in (MILD, WINDY))
    assert windy[0].at_minute < calm[0].at_minute


@pytest.mark.parametrize(("method", "told"), [(BakeMethod.BAKE, True), (BakeMethod.SIMMER, False)])
def test_what_may_go_amiss_with_a_cake_is_told_and_a_stew_has_no_wet_centre(method: BakeMethod, *, told: bool) -> None:
    iron = replace(IRON, method=method)
    words = " ".join(troubles(stand_of(event(), iron, WINDY), "briquettes", iron, 17, 8))
    assert ("The edges are set" in words) is told
    assert ("One side browns more" in words) is told


def test_layers_cool_as_the_model_says_and_not_below_the_air() -> None:
    cool = Cool(to_c=30.0)
    mild = cooling_for(event(), cool, LAYER, MILD)
    case = CoolCase("carrot cake", 0.2286, 0.03, 21.0, bears_c=30.0)
    usual = cooling_times(case).usual
    assert mild.in_air is not None
    assert usual is not None
    assert usual <= mild.in_air.usual < usual + 1
    assert mild.on_ice is None
    hot = cooling_for(event(), cool, LAYER, Weather(air_c=35))
    assert hot.in_air is None
    assert hot.on_ice is not None


def test_a_deeper_layer_cools_longer_and_a_cooler_is_quicker() -> None:
    thin, thick = (cooling_for(event(), Cool(30.0, depth_m=depth), LAYER, MILD).in_air for depth in (0.03, 0.045))
    assert thin is not None
    assert thick is not None
    assert thick.usual > thin.usual
    cold = cooling_for(event(), Cool(30.0, CoolPlace.COOLER), LAYER, MILD)
    assert cold.in_air is None
    assert cold.on_ice is not None
    assert cold.on_ice.usual < thin.usual


def test_at_height_the_centre_is_asked_for_less_than_the_boiling_point() -> None:
    high = replace(event(), place=Place("Col", elevation_m=3000))
    asked = replace(IRON, load=replace(LAYER, done_c=96.0))
    assert not baking_for(high, asked, RECIPE, MILD, coals_for(high, asked, MILD)).never
