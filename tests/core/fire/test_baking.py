"""Bakes: the facts of the trade they must meet (common practice, no source), and what holds for every bake."""

from dataclasses import replace

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from cookout.core.air import boiling_c
from cookout.core.fire.baking import (
    BAKE,
    BakeCase,
    bake_slopes,
    bake_times,
    bake_times_many,
    run_bakes,
    steps_for,
)
from cookout.core.fire.foods import FOODS
from tests.core.fire.plain_bodies import HOUSE, WINDY, layer

PANNED = ("cake", "carrot cake", "quick bread", "enriched dough", "lean bread", "cornbread")


@st.composite
def bakes(draw: st.DrawFn) -> BakeCase:
    """Bakes that a cook would try."""
    food = draw(st.sampled_from(sorted(FOODS)))
    middle = draw(st.floats(150, 240))
    below = middle + draw(st.floats(-20, 30))
    return BakeCase(
        food=food,
        pan_diameter_m=draw(st.floats(0.12, 0.36)),
        depth_m=draw(st.floats(0.015, 0.09)),
        above_c=(middle - 15, middle, middle + 15),
        below_c=(below - 15, below, below + 15),
        start_c=draw(st.floats(4, 30)),
        elevation_m=draw(st.floats(0, 3000)),
        in_pan=food in PANNED or draw(st.booleans()),
        covered=draw(st.booleans()),
    )


def test_nine_inch_layers_in_a_house_oven_at_350_take_about_half_an_hour() -> None:
    """Common practice, no source: 25 to 35 minutes; asked for: 27 to 36."""
    times = bake_times(layer(HOUSE))
    assert 27 <= times.usual <= 36
    assert times.least > 20
    assert times.most < 45


def test_layers_on_a_windy_table_may_be_done_in_thirteen_minutes_and_are_looked_at_by_ten() -> None:
    """Common practice, no source: running hot in wind, looked into at 10 minutes, done at 12 to 13."""
    times = bake_times(layer(WINDY))
    assert times.least <= 13
    assert times.look_in <= 10
    assert times.usual < 16


def test_a_layer_loses_about_a_tenth_of_its_mass() -> None:
    """8 to 12 % (from memory)."""
    assert 0.07 < bake_times(layer(HOUSE)).loss_share < 0.12


@pytest.mark.parametrize(
    ("food", "diameter", "depth", "least", "most"),
    [
        ("quick bread", 0.20, 0.050, 40, 65),
        ("lean bread", 0.20, 0.070, 30, 60),
        ("enriched dough", 0.23, 0.035, 12, 25),
        ("cornbread", 0.25, 0.030, 20, 40),
    ],
)
def test_other_bakes_at_350_take_what_they_commonly_take(
    food: str, diameter: float, depth: float, least: float, most: float
) -> None:
    """Common practice, no source."""
    case = replace(layer(HOUSE, depth), food=food, pan_diameter_m=diameter)
    assert least <= bake_times(case).usual <= most


def test_a_stew_comes_to_its_simmer_and_stays_there() -> None:
    """Common practice, no source: a full oven wants about two to three hours, the better part of it at a simmer."""
    case = BakeCase(food="stew", pan_diameter_m=0.28, depth_m=0.09, above_c=HOUSE, below_c=HOUSE, in_pan=False)
    times = bake_times(case)
    assert times.usual - times.heated == FOODS["stew"].simmer_minutes[1]
    assert 90 < times.usual < 200


def test_a_deeper_roast_takes_longer_than_its_mass_alone_would_say() -> None:
    small = BakeCase(food="roast", pan_diameter_m=0.1, depth_m=0.1, above_c=HOUSE, below_c=HOUSE, start_c=8)
    large = replace(small, pan_diameter_m=0.126, depth_m=0.126)
    assert bake_times(large).usual > 1.25 * bake_times(small).usual


def test_high_up_the_centre_is_asked_for_less_than_water_boils_at() -> None:
    high = replace(layer(), elevation_m=2134.0)
    assert bake_times(high).done_c == pytest.approx(boiling_c(2134.0) - BAKE.below_boiling_k)
    assert not bake_times(high).never


def test_the_core_never_passes_the_local_boiling_point_before_it_is_done() -> None:
    case = replace(layer(WINDY), elevation_m=1524.0)
    times = bake_times(case)
    assert max(moment.centre_c for moment in times.course[:-1]) < boiling_c(1524.0)
    assert times.course[-1].minute >= times.heated > times.course[-2].minute


def test_an_oven_cooler_than_done_never_bakes_it() -> None:
    times = bake_times(layer((80.0, 85.0, 90.0)))
    assert times.never
    assert times.most == np.inf


def test_a_curve_that_stays_is_the_same_as_a_number() -> None:
    flat = tuple(((0.0, celsius), (30.0, celsius)) for celsius in HOUSE)
    curved = replace(layer(), above_c=(flat[0], flat[1], flat[2]))
    assert bake_times(curved).usual == pytest.approx(bake_times(layer()).usual, rel=1e-9)


def test_an_oven_that_warms_up_with_the_food_takes_longer() -> None:
    rising = tuple(((0.0, 20.0), (15.0, celsius)) for celsius in HOUSE)
    slow = replace(layer(), above_c=(rising[0], rising[1], rising[2]))
    assert bake_times(slow).usual > bake_times(layer()).usual + 2


def test_heat_from_above_and_from_below_both_shorten_a_bake() -> None:
    slopes = bake_slopes(layer())
    by_hand = [bake_times(replace(layer(), above_c=(168.0, 177.0 + k, 186.0))).usual for k in (-10, 10)]
    assert slopes.above == pytest.approx((by_hand[1] - by_hand[0]) / 20, rel=1e-3)
    assert slopes.above < 0
    assert slopes.below < 0


def test_a_cover_keeps_the_top_moist_and_the_water_in() -> None:
    covered = bake_times(replace(layer(), covered=True))
    assert covered.loss_share < bake_times(layer()).loss_share / 2


def test_many_bakes_at_once_are_the_same_as_one_by_one_in_their_order() -> None:
    cases = [layer(), replace(layer(), food="stew", in_pan=False, depth_m=0.08), layer(WINDY), layer(HOUSE, 0.06)]
    together = bake_times_many(cases)
    for case, times in zip(cases, together, strict=True):
        alone = bake_times(case)
        assert (times.least, times.usual, times.most) == pytest.approx(
            (alone.least, alone.usual, alone.most), rel=0.003
        )


def test_no_bakes_take_no_time() -> None:
    assert bake_times_many([]) == ()


@settings(max_examples=40, deadline=None)
@given(bakes())
def test_the_first_look_in_stands_before_the_least_and_the_least_before_the_most(case: BakeCase) -> None:
    times = bake_times(case)
    assert 0 < times.look_in < times.least <= times.usual <= times.most
    assert 0 <= times.loss_share < FOODS[case.food].water_share
    assert times.done_c < boiling_c(case.elevation_m)


@settings(max_examples=25, deadline=None)
@given(bakes())
def test_hotter_is_never_slower_and_deeper_is_never_faster(case: BakeCase) -> None:
    low, middle, high = (float(heat) if not isinstance(heat, tuple) else 0.0 for heat in case.above_c)
    hotter = replace(case, above_c=(low + 15, middle + 15, high + 15))
    deeper = replace(case, depth_m=case.depth_m * 1.15)
    usual, hot, deep = (bake_times_many([each], steps=steps_for(case))[0].usual for each in (case, hotter, deeper))
    assert hot < usual * 1.002
    assert deep > usual * 0.998


@settings(max_examples=25, deadline=None)
@given(bakes())
def test_halving_the_step_moves_the_time_by_less_than_one_part_in_a_hundred(case: BakeCase) -> None:
    steps = steps_for(case)
    whole = run_bakes([case], BAKE, steps).seconds
    halved = run_bakes([case], BAKE, replace(steps, share=steps.share / 2)).seconds
    assert halved[0] == pytest.approx(whole[0], rel=0.01)


@settings(max_examples=12, deadline=None)
@given(bakes())
def test_twice_as_many_nodes_move_the_time_by_far_less_than_the_band(case: BakeCase) -> None:
    steps = steps_for(case)
    coarse = run_bakes([case], BAKE, steps).seconds[0]
    fine = run_bakes([case], BAKE, replace(steps, heights=2 * steps.heights - 1, radii=2 * steps.radii - 1)).seconds[0]
    assert fine == pytest.approx(coarse, rel=0.06)


@pytest.mark.parametrize(
    ("changed", "words"),
    [
        ({"food": "brick"}, "no food"),
        ({"depth_m": 0.0}, "depth"),
        ({"pan_diameter_m": float("nan")}, "diameter"),
        ({"start_c": 150.0}, "start"),
        ({"above_c": (100.0, 200.0, 900.0)}, "oven"),
        ({"above_c": (100.0, 200.0, ((5.0, 20.0), (5.0, 30.0)))}, "rise"),
    ],
)
def test_a_bake_that_cannot_be_is_refused_in_words(changed: dict[str, object], words: str) -> None:
    with pytest.raises(ValueError, match=words):
        replace(layer(), **changed)  # type: ignore[arg-type]


def test_depth_follows_from_mass_and_width() -> None:
    assert FOODS["stew"].depth_m(3.0, 0.28) == pytest.approx(3.0 / (1030 * np.pi * 0.14**2))


def test_every_food_is_done_below_boiling_and_tells_where_its_numbers_are_from() -> None:
    assert all(food.done_c < 100 and food.standing for food in FOODS.values())
    assert all(name == food.name for name, food in FOODS.items())
