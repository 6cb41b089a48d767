"""Curves of temperature: crossings against Newton's law worked by hand, stretches, and what only touches a level."""

from math import exp, log

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.integrate import solve_ivp

from cookout.core.safety.curve import (
    between,
    first_at_most,
    last_at_least,
    longest_at_least,
    minutes_where,
    newton,
    sampled,
)


def test_cooling_follows_newtons_law_as_an_integrator_solves_it() -> None:
    # dT/dt = (27 - T) / 60 from 74: scipy's own integrator is the outside check.
    piece = newton(0, 90, 74, 27, 60)
    outside = solve_ivp(lambda _, food: (27 - food) / 60, (0, 90), [74], t_eval=[30, 90], rtol=1e-10, atol=1e-10)
    assert np.allclose([piece.at(30), piece.last_c], outside.y[0], atol=1e-6)


def test_the_minute_of_passing_a_level_is_exact() -> None:
    # By hand: 60 ln((74 - 27) / (57.2 - 27)) = 26.54 min.
    piece = newton(10, 90, 74, 27, 60)
    assert piece.crossing(57.2) == pytest.approx(10 + 60 * log(47 / 30.2))
    assert piece.crossing(80) is None


def test_two_known_ends_give_the_time_constant_or_a_straight_line() -> None:
    bent, straight = between(0, 60, 90, 40, 20), between(0, 60, 20, 80, 20)
    # By hand: tau = 60 / ln(70 / 20); half way in time, 20 + 70 exp(-30 / tau).
    assert bent.at(30) == pytest.approx(20 + 70 * exp(-30 / (60 / log(70 / 20))))
    assert straight.at(30) == 50


def test_minutes_between_two_levels_are_counted_exactly() -> None:
    # Straight from 0 to 100 in 100 minutes: a degree a minute.
    curve = sampled(0, [(0, 0), (100, 100)])
    assert minutes_where(curve, (5, 60), lambda food: 5 < food < 60) == pytest.approx(55)


def test_a_food_that_only_touches_a_level_has_it_for_no_time() -> None:
    curve = sampled(0, [(0, 20), (10, 74), (20, 20)])
    assert longest_at_least(curve, 74) == (0, 10)
    assert longest_at_least(curve, 75) is None


def test_the_longest_unbroken_stretch_counts_not_the_sum() -> None:
    curve = sampled(0, [(0, 70), (5, 80), (10, 70), (12, 72), (40, 100)])
    assert longest_at_least(curve, 75) == pytest.approx((25, 15), abs=0.01)


def test_last_hot_and_first_cold_minute_are_found() -> None:
    curve = sampled(0, [(0, 80), (60, 50), (180, 10), (200, 10)])
    assert last_at_least(curve, 50) == 60
    assert first_at_most(curve, 10) == 180
    assert first_at_most(curve, 10, since=190) == 190
    assert first_at_most(curve, 9) is None


@given(
    start=st.floats(-5, 100),
    towards=st.floats(-5, 100),
    tau=st.floats(1, 500),
    minutes=st.floats(1, 500),
    level=st.floats(-5, 100),
)
def test_above_and_below_a_level_are_together_all_the_time(
    start: float, towards: float, tau: float, minutes: float, level: float
) -> None:
    curve = (newton(0, minutes, start, towards, tau),)
    above = minutes_where(curve, (level,), lambda food: food >= level)
    below = minutes_where(curve, (level,), lambda food: food < level)
    assert above + below == pytest.approx(minutes)
