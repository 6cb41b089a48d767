"""Coal counts against the chart of common practice (no source), and the band around them."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from cookout.core.fire.chart import coal_count
from cookout.core.fire.weather import Weather

CALM = Weather()

# Total, lid, under; common practice, no source.
CHART = {
    8: [(15, 10, 5), (16, 11, 5), (17, 11, 6), (18, 12, 6), (19, 13, 6), (20, 14, 6)],
    10: [(19, 13, 6), (21, 14, 7), (23, 16, 7), (25, 17, 8), (27, 18, 9), (29, 19, 10)],
    12: [(23, 16, 7), (25, 17, 8), (27, 18, 9), (29, 19, 10), (31, 21, 10), (33, 22, 11)],
    14: [(30, 20, 10), (32, 21, 11), (34, 22, 12), (36, 24, 12), (38, 25, 13), (40, 26, 14)],
    16: [(34, 22, 12), (36, 24, 12), (38, 24, 14), (40, 27, 13), (42, 28, 14), (44, 30, 14)],
}
POINTS = [
    (inches, fahrenheit, *counts)
    for inches, row in CHART.items()
    for fahrenheit, counts in zip(range(325, 475, 25), row, strict=True)
]


def celsius(fahrenheit: float) -> float:
    return (fahrenheit - 32) / 1.8


@pytest.mark.parametrize(("inches", "fahrenheit", "total", "lid", "under"), POINTS)
def test_a_bake_meets_the_chart_at_each_of_its_points(
    inches: int, fahrenheit: int, total: int, lid: int, under: int
) -> None:
    count = coal_count(inches, celsius(fahrenheit), "bake", CALM)
    assert (count.total, count.lid, count.under) == (total, lid, under)
    assert count.least <= total <= count.most


def test_between_two_sizes_and_two_heats_the_count_lies_in_the_middle() -> None:
    # 10 and 12 inches at 350 and 375: lids 14, 16, 17, 18 average 16.25; under 7, 7, 8, 9 average 7.75; 24 in all.
    count = coal_count(11, celsius(362.5), "bake", CALM)
    assert (count.lid, count.under) == (16, 8)


@pytest.mark.parametrize(
    ("method", "lid", "under"), [("bake", 17, 8), ("roast", 12, 13), ("simmer", 8, 17), ("fry", 0, 25)]
)
def test_the_method_shares_out_the_same_coals(method: str, lid: int, under: int) -> None:
    # 25 coals: roast 1:1, simmer 1:2, fry all under; common practice, no source.
    count = coal_count(12, celsius(350), method, CALM)
    assert (count.lid, count.under) == (lid, under)


def test_a_method_without_a_split_is_refused() -> None:
    with pytest.raises(KeyError):
        coal_count(12, 180, "steam", CALM)


def test_the_band_spans_the_rules_of_thumb_that_disagree() -> None:
    # 12 inches, 350: chart 25; twice the diameter is 24 at 350; at 325 it is 24, and 25 degrees at 10 a coal make 26.5.
    # Shade may ask for 4 in 100 more, one coal here: 27.5 at most.
    count = coal_count(12, celsius(350), "bake", CALM)
    assert (count.least, count.most) == (24, 28)


def test_wind_widens_the_band_both_ways_and_leaves_the_count() -> None:
    calm, windy = (coal_count(12, celsius(350), "bake", Weather(wind_mps=wind)) for wind in (0.0, 9.0))
    assert windy.total == calm.total
    assert windy.least < calm.least
    assert windy.most > calm.most


def test_cold_asks_for_more_and_warm_air_and_sun_for_fewer() -> None:
    mild = coal_count(12, celsius(350), "bake", Weather(air_c=21))
    cold = coal_count(12, celsius(350), "bake", Weather(air_c=-5))
    warm = coal_count(12, celsius(350), "bake", Weather(air_c=38, sunny=True))
    assert cold.most > mild.most
    assert cold.least == mild.least
    assert warm.least < mild.least
    assert warm.most < mild.most


def test_past_its_edge_the_chart_goes_on_gently_and_then_holds() -> None:
    # 12 inches: 10 coals over 125 degrees. 100 degrees below 325 that makes 8 fewer, 15; further down it holds.
    assert coal_count(12, celsius(225), "bake", CALM).total == 15
    assert coal_count(12, celsius(100), "bake", CALM) == coal_count(12, celsius(225), "bake", CALM)
    assert coal_count(40, celsius(350), "bake", CALM) == coal_count(20, celsius(350), "bake", CALM)


@given(st.floats(4, 30), st.floats(60, 350), st.sampled_from(["bake", "roast", "simmer", "fry"]))
def test_every_count_is_whole_and_inside_its_band(inches: float, temperature: float, method: str) -> None:
    count = coal_count(inches, temperature, method, CALM)
    assert count.lid >= 0
    assert count.under > 0
    assert 1 <= count.least <= count.total <= count.most


@given(st.floats(8, 16), st.floats(150, 240), st.floats(0, 30))
def test_more_heat_never_wants_fewer_coals(inches: float, temperature: float, more: float) -> None:
    # One coal of play: lid and under are rounded together, and one row of the chart is uneven (16 inches, 375).
    cooler, hotter = (coal_count(inches, t, "roast", CALM).total for t in (temperature, temperature + more))
    assert hotter >= cooler
