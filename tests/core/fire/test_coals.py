"""Heat of coals against time, windows and top-ups; one log of one chimney (weak), else common practice, no source."""

import numpy as np
import pytest

from cookout.core.fire.charcoal import BRIQUETTES, LUMP, firing_times
from cookout.core.fire.coals import (
    COALS,
    bare_gain,
    burn_rate,
    coal_params,
    heat_w,
    mean_share,
    share_of_full,
    top_ups,
    usable_window,
)


@pytest.mark.parametrize(
    ("minute", "least", "most"),
    [
        (0, 0, 0),
        (15, 0.4, 0.6),
        (25, 0.85, 1),
        (35, 0.95, 1),
        (45, 0.9, 1),
        (55, 0.6, 0.8),
        (65, 0.3, 0.5),
        (105, 0, 0.1),
    ],
)
def test_briquettes_follow_the_log_of_one_chimney(minute: float, least: float, most: float) -> None:
    assert least <= float(share_of_full(minute)) <= most


@pytest.mark.parametrize("fuel", [BRIQUETTES, LUMP])
def test_all_of_a_coals_heat_comes_out_and_no_more(fuel: str) -> None:
    # Mass times gross heat: a briquette of 25 g at 18.5 MJ/kg holds 462.5 kJ.
    minutes = np.linspace(0, 140, 14_001)
    joules = float(np.trapezoid(heat_w(minutes, fuel), minutes * 60))
    assert joules == pytest.approx(COALS[fuel].kg_each * COALS[fuel].joules_per_kg, rel=1e-3)


def test_a_briquette_gives_about_130_watts_over_its_best_half_hour() -> None:
    # Derived from the mass and heat of briquettes: about 130 W over an hour.
    assert coal_params(BRIQUETTES).full_w * float(mean_share(BRIQUETTES, 0, 30)) == pytest.approx(130, abs=10)


def test_lump_is_hotter_faster_and_less_even() -> None:
    # By most accounts; common practice, no source.
    lump, briquettes = COALS[LUMP], COALS[BRIQUETTES]
    assert lump.full_w > briquettes.full_w
    assert usable_window(LUMP)[1] < usable_window(BRIQUETTES)[1]
    assert (lump.fewer, lump.more) > (briquettes.fewer, briquettes.more)


def test_a_window_opens_at_ashing_over_and_wind_shortens_it() -> None:
    start, end = usable_window(BRIQUETTES)
    assert start == firing_times(BRIQUETTES).ash_over_minutes
    assert 50 <= end <= 60
    assert usable_window(BRIQUETTES, rate=1.5)[1] == pytest.approx(25 + (end - 25) / 1.5)


def test_wind_feeds_coals_and_thin_air_starves_them() -> None:
    assert float(bare_gain(0.0)) == pytest.approx(1)
    assert 2 < float(bare_gain(4.0)) < 3.5
    assert 1 < float(burn_rate(4.0)) < float(burn_rate(8.0))
    # Half the pressure, by the square root: 0.707.
    assert float(burn_rate(0.0, 0.25, 101_325 / 2)) == pytest.approx(0.7071, abs=1e-4)


def test_fed_coals_give_the_same_heat_sooner() -> None:
    slow = float(mean_share(BRIQUETTES, 0, 200, 1.0))
    fast = float(mean_share(BRIQUETTES, 0, 200, 2.0))
    assert fast == pytest.approx(slow, rel=0.01)
    assert float(mean_share(BRIQUETTES, 0, 10, 2.0)) > 1.8 * float(mean_share(BRIQUETTES, 0, 10, 1.0))


def test_about_half_the_count_is_added_after_half_an_hour() -> None:
    # Common practice, no source. Lit the 25 min earlier that ashing over takes.
    (only,) = top_ups(17, 8, BRIQUETTES, 60)
    assert (only.at_minute, only.lit_minute) == (30, 5)
    assert 0.45 * 25 <= only.total <= 0.65 * 25
    assert only.lid > only.under


def test_a_short_bake_wants_no_fresh_coals() -> None:
    assert top_ups(17, 8, BRIQUETTES, 38) == ()


def test_fresh_coals_keep_the_mean_heat_within_a_tenth() -> None:
    found = top_ups(20, 10, BRIQUETTES, 180)
    laid = [(0, 30), *((lot.at_minute, lot.total) for lot in found)]
    first = 30 * float(mean_share(BRIQUETTES, 0, 30))
    for start in range(30, 150, 30):
        heat = sum(n * float(mean_share(BRIQUETTES, start - at, start + 30 - at)) for at, n in laid if at <= start)
        assert heat == pytest.approx(first, rel=0.1)


def test_wind_and_lump_want_fresh_coals_sooner() -> None:
    calm = top_ups(17, 8, BRIQUETTES, 90)[0].at_minute
    assert top_ups(17, 8, BRIQUETTES, 90, 1.4)[0].at_minute < calm
    assert top_ups(17, 8, LUMP, 90)[0].at_minute < calm


def test_a_pot_with_no_coals_on_its_lid_gets_none_there() -> None:
    assert all(lot.lid == 0 for lot in top_ups(0, 25, BRIQUETTES, 120))
