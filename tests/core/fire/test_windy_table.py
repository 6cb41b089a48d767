"""Oven and food together, against what a cook met on a windy day (common practice, no source; one day, one table)."""

import pytest

from cookout.core.fire.advice import Trouble, about_heat
from cookout.core.fire.baking import BakeCase, bake_times
from cookout.core.fire.iron import OvenBuild, Surface
from cookout.core.fire.oven import Stand, oven_heat
from cookout.core.fire.weather import Weather

MPH = 0.44704
INCH = 0.0254
LAID = (17, 8)


def on_the_table(mph: float) -> Stand:
    """A 12-inch oven on a tall trivet of 5 in, on a metal table, in that wind with gusts half as strong again."""
    weather = Weather(air_c=24.0, wind_mps=mph * MPH, gust_mps=1.5 * mph * MPH)
    return Stand(OvenBuild(12), weather, Surface.METAL, stand_m=5 * INCH)


@pytest.mark.parametrize("mph", [15, 20])
def test_a_cake_layer_over_lump_in_wind_may_be_done_in_13_min_and_is_looked_at_by_10(mph: float) -> None:
    heat = oven_heat(on_the_table(mph), *LAID, "lump")
    above, below = ((band.least, band.usual, band.most) for band in (heat.above, heat.below))
    times = bake_times(BakeCase("cake", 9 * INCH, 1.25 * INCH, above_c=above, below_c=below))
    assert times.least <= 13.0
    assert times.look_in <= 10.0
    assert times.look_in < times.least < times.usual


@pytest.mark.parametrize("mph", [15, 20])
def test_an_oven_that_runs_as_hot_as_that_calls_for_taking_coals_off(mph: float) -> None:
    stand = on_the_table(mph)
    hot = oven_heat(stand, *LAID, "lump").mean.most
    advice = about_heat(stand, *LAID, 177.0, "lump", is_c=hot)
    assert advice is not None
    assert advice.trouble is Trouble.TOO_HOT
    assert advice.lid < 0
    assert advice.under <= 0
    assert advice.words.startswith("It runs hot. Take ")
