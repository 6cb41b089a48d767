"""Limits against USDA-FSIS guidance (read in mirrors) and the FDA Food Code as adopted by states."""

import pytest

from cookout.core.kitchen.recipe import FoodKind
from cookout.core.safety.limits import (
    CONTROLLED_FOODS,
    FDA_FOOD_CODE,
    LEAST_CENTRE_F,
    STABLE_FOODS,
    USDA_FSIS,
    is_warm_air,
    longest_wait,
)


def test_every_food_kind_of_a_recipe_is_either_stable_or_controlled() -> None:
    kinds = {kind.value for kind in FoodKind}
    assert kinds == STABLE_FOODS | CONTROLLED_FOODS
    assert not STABLE_FOODS & CONTROLLED_FOODS
    assert LEAST_CENTRE_F.keys() <= CONTROLLED_FOODS


@pytest.mark.parametrize(("air_c", "minutes"), [(21.0, 120), (32.2, 120), (32.3, 60), (40.0, 60)])
def test_food_stands_out_two_hours_and_one_above_90_fahrenheit(air_c: float, minutes: int) -> None:
    # USDA-FSIS, read in mirrors.
    wait = longest_wait("poultry", "air", air_c)
    assert wait is not None
    assert wait.minutes == minutes
    assert "USDA-FSIS" in wait.reason


def test_the_food_code_gives_four_hours_with_time_alone_and_knows_no_warm_air() -> None:
    # FDA Food Code 3-501.19, as adopted by states.
    wait = longest_wait("poultry", "air", 40.0, FDA_FOOD_CODE)
    assert wait is not None
    assert wait.minutes == 240
    assert "3-501.19" in wait.reason


def test_plain_bread_and_food_held_hot_or_cold_have_no_limit() -> None:
    assert longest_wait("bread_and_cake", "air", 35.0) is None
    assert longest_wait("poultry", "hot", 35.0) is None
    assert longest_wait("dairy", "cold", 35.0) is None


def test_a_food_that_no_table_knows_is_treated_with_care() -> None:
    wait = longest_wait("something new", "air", 21.0)
    assert wait is not None
    assert wait.minutes == 120


def test_the_two_sets_of_holding_temperatures_are_kept_apart() -> None:
    # USDA-FSIS 140 and 40 degrees Fahrenheit for homes; FDA Food Code 3-501.16 135 and 41.
    assert [round(c * 1.8 + 32) for c in (USDA_FSIS.hot_c, USDA_FSIS.cold_c)] == [140, 40]
    assert [round(c * 1.8 + 32) for c in (FDA_FOOD_CODE.hot_c, FDA_FOOD_CODE.cold_c)] == [135, 41]


def test_centres_are_as_hot_as_the_published_minimum() -> None:
    # USDA-FSIS safe minimum internal temperatures, degrees Fahrenheit, read in mirrors.
    published = {"poultry": 165, "ground_meat": 160, "whole_meat": 145, "eggs": 160, "fish": 145}
    assert {food: LEAST_CENTRE_F[food] for food in published} == published


def test_warm_air_is_what_shortens_the_limit() -> None:
    assert is_warm_air(33.0)
    assert not is_warm_air(32.0)
    assert not is_warm_air(40.0, FDA_FOOD_CODE)
