"""The fuel of a whole event."""

import pytest

from cookout.core.fire.supply import BakeFuel, Supply, fuel_for


def test_two_bakes_of_an_hour_are_summed_with_their_top_ups_and_a_spare_part() -> None:
    # 25 each laid, 10 and 5 each added; 80 and 15 in 100 to spare, 12; 92 of 25 g; two loads of 60.
    assert fuel_for([BakeFuel(17, 8, 60)] * 2, chimney_coals=60) == Supply(50, 30, 12, 2.3, 2)


def test_no_bakes_want_nothing() -> None:
    assert fuel_for([]) == Supply(0, 0, 0, 0.0, 0)


def test_wind_burns_more() -> None:
    calm, windy = (fuel_for([BakeFuel(17, 8, 90, rate)]) for rate in (1.0, 1.5))
    assert windy.coals > calm.coals
    assert windy.laid == calm.laid


def test_a_chimney_that_lights_nothing_is_refused() -> None:
    with pytest.raises(ValueError, match="at least one coal"):
        fuel_for([], chimney_coals=0)
