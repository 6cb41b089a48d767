"""Cooling until a layer is fit to be iced. The times are common practice, no source."""

from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from cookout.core.fire.conduction import lumped_seconds
from cookout.core.fire.cooling import (
    COOL,
    COOL_STEPS,
    CoolCase,
    cooling_times,
    cooling_times_many,
    holds_minutes,
    in_cooler,
    run_cooling,
)
from tests.core.fire.plain_bodies import HEAT

LAYER = CoolCase(food="cake", diameter_m=9 * 0.0254, depth_m=1.25 * 0.0254, air_c=22.0)
HOT_AFTERNOON = 35.0


def usual(case: CoolCase) -> float:
    minutes = cooling_times(case).usual
    assert minutes is not None
    return minutes


def test_a_layer_on_a_rack_is_fit_to_ice_after_an_hour_or_so() -> None:
    times = cooling_times(LAYER)
    assert times.least is not None
    assert times.most is not None
    assert 40 < times.least < usual(LAYER) < times.most < 110


def test_on_a_day_warmer_than_the_icing_bears_it_never_is_and_a_cooler_helps() -> None:
    times = cooling_times(replace(LAYER, air_c=HOT_AFTERNOON))
    assert times.too_warm
    assert times.never
    assert (times.least, times.most) == (None, None)
    assert times.in_cooler is not None
    assert times.in_cooler.usual is not None
    assert times.in_cooler.usual < usual(LAYER)


def test_air_a_little_cooler_than_the_icing_bears_takes_long_and_may_take_for_ever() -> None:
    times = cooling_times(replace(LAYER, air_c=27.0))
    assert not times.too_warm
    assert times.least is not None
    assert times.least > 60
    assert times.most is None
    assert times.in_cooler is not None


def test_wind_cools_a_layer_and_a_pan_and_a_board_keep_it_warm() -> None:
    assert usual(replace(LAYER, wind_mps=7.0)) < usual(LAYER)
    assert usual(replace(LAYER, turned_out=False)) > usual(LAYER)
    assert usual(replace(LAYER, on_rack=False)) > usual(LAYER)


def test_the_minutes_in_the_pan_count() -> None:
    at_once = usual(replace(LAYER, pan_minutes=0.0))
    assert usual(replace(LAYER, pan_minutes=20.0)) > at_once
    assert usual(replace(LAYER, pan_minutes=120.0)) == pytest.approx(120.0)


def test_what_is_cool_already_needs_no_time_beyond_its_pan() -> None:
    assert usual(replace(LAYER, start_c=20.0, pan_minutes=0.0)) == 0.0


def test_no_layer_cools_faster_than_one_that_conducts_without_end() -> None:
    """A lumped body with the same films, glow taken at its strongest (edge of Bi = 0) and vapour as much as films."""
    air, start, height = 22.0, 96.0, LAYER.depth_m
    film = 25.0
    heat = 300 * 2800
    tau = heat / (2 * film / height + 2 * film / (LAYER.diameter_m / 2))
    assert heat < HEAT
    assert usual(replace(LAYER, pan_minutes=0.0)) > lumped_seconds(tau, start, air, LAYER.bears_c) / 60


def test_an_iced_cake_out_of_the_cooler_holds_for_a_while_on_a_hot_afternoon() -> None:
    cold = replace(LAYER, air_c=HOT_AFTERNOON, start_c=8.0)
    minutes = holds_minutes(cold)
    assert minutes is not None
    assert 10 < minutes < 60
    hotter = holds_minutes(replace(cold, air_c=40.0))
    assert hotter is not None
    assert hotter < minutes


def test_an_iced_cake_in_air_that_it_bears_holds_for_good() -> None:
    assert holds_minutes(replace(LAYER, start_c=8.0)) is None


def test_a_cooler_keeps_wind_and_warm_air_out() -> None:
    inside = in_cooler(replace(LAYER, air_c=HOT_AFTERNOON, wind_mps=9.0))
    assert inside.air_c == COOL.cooler_c
    assert inside.wind_mps < 1


def test_many_foods_at_once_are_the_same_as_one_by_one() -> None:
    cases = [LAYER, replace(LAYER, air_c=HOT_AFTERNOON), replace(LAYER, food="lean bread", depth_m=0.08, bears_c=40.0)]
    for case, together in zip(cases, cooling_times_many(cases), strict=True):
        alone = cooling_times(case)
        assert together.too_warm == alone.too_warm
        if alone.usual is not None:
            assert together.usual == pytest.approx(alone.usual, rel=0.003)
    assert cooling_times_many([]) == ()


@settings(max_examples=25, deadline=None)
@given(st.floats(-5, 40), st.floats(0, 12), st.floats(0.015, 0.1), st.floats(10, 35), st.booleans(), st.booleans())
def test_times_rise_from_least_to_most_and_none_is_below_the_air(
    air: float, wind: float, depth: float, bears: float, turned_out: bool, on_rack: bool
) -> None:
    case = replace(
        LAYER, air_c=air, wind_mps=wind, depth_m=depth, bears_c=bears, turned_out=turned_out, on_rack=on_rack
    )
    times = cooling_times(case)
    known = [minutes for minutes in (times.least, times.usual, times.most) if minutes is not None]
    assert known == sorted(known)
    assert times.too_warm == (air >= bears)
    if times.too_warm:
        assert known == []
    assert (times.in_cooler is not None) == (
        len(known) < 3 and not (times.usual is not None and times.most is not None)
    )


def test_halving_the_step_moves_the_time_by_less_than_one_part_in_a_hundred() -> None:
    whole = run_cooling([LAYER], COOL, COOL_STEPS).seconds
    halved = run_cooling([LAYER], COOL, replace(COOL_STEPS, share=COOL_STEPS.share / 2)).seconds
    assert halved == pytest.approx(whole, rel=0.01)


@pytest.mark.parametrize(
    ("changed", "words"),
    [
        ({"food": "brick"}, "no food"),
        ({"air_c": 80.0}, "air"),
        ({"wind_mps": -1.0}, "wind"),
        ({"depth_m": 2.0}, "depth"),
    ],
)
def test_a_food_that_cannot_be_is_refused_in_words(changed: dict[str, object], words: str) -> None:
    with pytest.raises(ValueError, match=words):
        replace(LAYER, **changed)  # type: ignore[arg-type]
