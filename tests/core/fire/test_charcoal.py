"""Times of a firing and of tending; ashing over at 25 min and near full heat to 45 as in one log of one chimney."""

from cookout.core.fire.charcoal import TENDING, firing_times
from cookout.core.fire.weather import Weather


def test_briquettes_are_lit_in_4_min_ash_over_at_25_and_serve_for_20() -> None:
    times = firing_times("briquettes")
    assert (times.light_minutes, times.ashing_minutes, times.window_minutes) == (4, 21, 20)


def test_lump_is_sooner_ready_and_sooner_spent() -> None:
    # Common practice, no source.
    lump, briquettes = firing_times("lump"), firing_times("briquettes")
    assert lump.ash_over_minutes < briquettes.ash_over_minutes
    assert lump.window_minutes < briquettes.window_minutes
    assert lump.top_up_minutes < briquettes.top_up_minutes


def test_a_fuel_that_nobody_knows_is_timed_as_briquettes() -> None:
    assert firing_times("pellets") == firing_times("briquettes")


def test_ovens_are_turned_oftener_only_above_15_miles_an_hour() -> None:
    assert TENDING.turn_interval(Weather(wind_mps=6.7)) == 12
    assert TENDING.turn_interval(Weather(wind_mps=6.8)) == 8
