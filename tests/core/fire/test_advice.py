"""Advice for the known troubles; the remedies are common practice, no source."""

import pytest

from cookout.core.fire.advice import Trouble, about_heat, about_one_side, about_wet_centre
from cookout.core.fire.iron import OvenBuild, Surface
from cookout.core.fire.network import Stand
from cookout.core.fire.oven import oven_heat
from cookout.core.fire.weather import Weather

STAND = Stand(OvenBuild(12))
WINDY = Weather(air_c=24, wind_mps=7.8, gust_mps=10)


def test_an_oven_that_is_right_is_left_alone() -> None:
    assert about_heat(STAND, 17, 8, 177) is None


def test_an_oven_found_too_hot_gives_coals_until_the_balance_is_down_there() -> None:
    advice = about_heat(STAND, 17, 8, 177, is_c=205)
    assert advice is not None
    assert advice.trouble is Trouble.TOO_HOT
    assert min(advice.lid, advice.under) < 0
    fallen = oven_heat(STAND, 17, 8).mean.usual - oven_heat(STAND, 17 + advice.lid, 8 + advice.under).mean.usual
    assert 28 <= fallen <= 45
    assert "off the lid" in advice.words
    # (205 - 60 + 20) / (177 - 60 + 20), worked by hand.
    assert advice.time_share == pytest.approx(1.204, abs=0.001)


def test_lump_on_a_metal_table_in_wind_wants_coals_taken_off() -> None:
    advice = about_heat(Stand(OvenBuild(12), WINDY, Surface.METAL), 12, 7, 177, "lump")
    assert advice is not None
    assert advice.trouble is Trouble.TOO_HOT
    assert advice.under < 0
    assert "Take " in advice.words
    assert advice.time_share > 1.1


def test_an_oven_found_too_cool_gets_coals_and_needs_less_time_with_them() -> None:
    advice = about_heat(STAND, 12, 6, 177)
    assert advice is not None
    assert advice.trouble is Trouble.TOO_COLD
    assert advice.lid + advice.under > 0
    assert advice.time_share < 1
    raised = oven_heat(STAND, 12 + advice.lid, 6 + advice.under).mean.usual
    assert raised >= 170


def test_however_hot_a_few_coals_stay() -> None:
    advice = about_heat(STAND, 5, 4, 60, is_c=330)
    assert advice is not None
    assert (5 + advice.lid, 4 + advice.under) == (2, 2)


def test_a_wet_centre_wants_one_coal_under_it_and_two_above() -> None:
    advice = about_wet_centre(STAND)
    assert (advice.lid, advice.under) == (2, 1)
    assert 0.5 < advice.time_share < 0.95


def test_turns_come_oftener_the_more_the_wind_blows() -> None:
    every = [about_one_side(Weather(wind_mps=wind)).turn_every for wind in (0.0, 4.0, 8.0, 14.0)]
    assert every[0] == 12
    assert every == sorted(every, key=lambda minutes: -(minutes or 0))
    assert every[2] is not None
    assert 5 <= every[2] <= 8
