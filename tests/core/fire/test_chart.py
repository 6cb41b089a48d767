"""Coal counts of the heat balance against the chart of common practice (no source), and what the day does to them."""

from dataclasses import replace
from time import perf_counter

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from cookout.core.fire.chart import LID_SHARE, CoalCount, coal_count
from cookout.core.fire.counts import wanted
from cookout.core.fire.iron import OvenBuild, Surface
from cookout.core.fire.network import Stand
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


def coals(stand: Stand, fahrenheit: float = 350, fuel: str = "briquettes") -> float:
    """Coals in all, not yet whole."""
    found = wanted(stand, celsius(fahrenheit), LID_SHARE["bake"], fuel)
    return found.lid + found.under


def twelve(weather: Weather = CALM, **others: object) -> Stand:
    return replace(Stand(OvenBuild(12), weather), **others)  # type: ignore[arg-type]


@pytest.mark.parametrize(("inches", "fahrenheit", "total", "lid", "under"), POINTS)
def test_every_count_is_within_2_of_the_chart(inches: int, fahrenheit: int, total: int, lid: int, under: int) -> None:
    count = coal_count(inches, celsius(fahrenheit), "bake", CALM)
    assert abs(count.total - total) <= 2
    assert abs(count.lid - lid) <= 2
    assert abs(count.under - under) <= 2
    assert count.least <= total <= count.most


def test_over_the_whole_chart_the_mean_error_is_at_most_eight_tenths() -> None:
    errors = [abs(coal_count(i, celsius(f), "bake", CALM).total - total) for i, f, total, _, _ in POINTS]
    assert len(errors) == 30
    assert sum(errors) / len(errors) <= 0.8


@pytest.mark.parametrize("inches", [10, 12, 14, 16])
def test_25_degrees_fahrenheit_take_about_one_pair_of_coals(inches: int) -> None:
    # Common practice, no source: a pair; here over the chart's 125 degrees.
    stand = Stand(OvenBuild(inches), CALM)
    assert 1.5 <= (coals(stand, 450) - coals(stand, 325)) / 5 <= 2.5


def test_the_usual_example_is_met_exactly() -> None:
    count = coal_count(12, celsius(350), "bake", CALM)
    assert (count.lid, count.under) == (17, 8)


@pytest.mark.parametrize(
    ("method", "lid", "under"), [("bake", 17, 8), ("roast", 12, 13), ("simmer", 8, 17), ("fry", 0, 25)]
)
def test_the_method_shares_out_the_same_coals(method: str, lid: int, under: int) -> None:
    # 25 coals: roast 1:1, simmer 1:2, fry all under; common practice, no source.
    count = coal_count(12, celsius(350), method, CALM)
    assert (count.lid, count.under) == (lid, under)


def test_a_method_without_a_split_and_an_unknown_surface_are_refused() -> None:
    with pytest.raises(KeyError):
        coal_count(12, 180, "steam", CALM)
    with pytest.raises(ValueError, match="sand"):
        coal_count(12, 180, "bake", CALM, surface="sand")


@pytest.mark.parametrize("inches", [8, 10, 12, 14, 16])
def test_the_band_spans_the_rules_of_thumb_that_disagree(inches: int) -> None:
    # Twice the diameter is 350 to some and 325 to others; common practice, no source.
    for fahrenheit in (325, 350):
        count = coal_count(inches, celsius(fahrenheit), "bake", CALM)
        assert count.least <= 2 * inches <= count.most


def test_sun_and_warm_air_save_coals_and_cold_costs_them() -> None:
    mild = coals(twelve())
    assert coals(twelve(Weather(sunny=True))) < mild
    assert coals(twelve(Weather(air_c=36))) < mild < coals(twelve(Weather(air_c=-5)))


def test_wind_feeds_and_strips_so_the_band_widens_both_ways_about_the_count() -> None:
    calm, windy = (wanted(twelve(Weather(wind_mps=wind)), celsius(350), 2 / 3, "briquettes") for wind in (0.0, 8.0))
    assert windy.least < calm.least
    assert windy.most > calm.most
    assert windy.lid + windy.under == pytest.approx(calm.lid + calm.under, rel=0.1)


def test_gusts_widen_the_band_further() -> None:
    steady, gusty = (
        wanted(twelve(Weather(wind_mps=6, gust_mps=gust)), celsius(350), 2 / 3, "briquettes") for gust in (6.0, 14.0)
    )
    assert gusty.most - gusty.least > steady.most - steady.least


def test_a_metal_table_saves_coals_below_and_a_grate_or_height_costs_them() -> None:
    ground = coal_count(12, celsius(350), "bake", CALM)
    metal = coal_count(12, celsius(350), "bake", CALM, surface=Surface.METAL)
    grate = coal_count(12, celsius(350), "bake", CALM, surface="grate")
    raised = coal_count(12, celsius(350), "bake", CALM, stand_m=0.1)
    assert metal.under < ground.under < grate.under
    assert raised.under > ground.under
    assert metal.lid == ground.lid == grate.lid == raised.lid


def test_thin_air_costs_a_few_coals() -> None:
    assert 1.0 < coals(twelve(elevation_m=2000.0)) / coals(twelve()) < 1.2


def test_lump_takes_fewer_pieces_within_a_wider_band() -> None:
    lump = wanted(twelve(), celsius(350), 2 / 3, "lump")
    plain = wanted(twelve(), celsius(350), 2 / 3, "briquettes")
    assert lump.lid + lump.under < plain.lid + plain.under
    assert (lump.most - lump.least) / (lump.lid + lump.under) > (plain.most - plain.least) / (plain.lid + plain.under)


def test_a_deep_oven_of_the_same_width_takes_a_little_more() -> None:
    plain = coal_count(12, celsius(350), "bake", CALM)
    deep = coal_count(12, celsius(350), "bake", CALM, oven=OvenBuild(12, deep=True))
    assert plain.total <= deep.total <= plain.total + 3


def test_a_count_that_was_asked_before_takes_less_than_a_millisecond() -> None:
    coal_count(12, celsius(350), "bake", CALM)
    started = perf_counter()
    for _ in range(100):
        coal_count(12, celsius(350), "bake", CALM)
    assert (perf_counter() - started) / 100 < 1e-3


anywhere = st.builds(
    Weather,
    air_c=st.floats(-20, 42),
    wind_mps=st.floats(0, 15),
    gust_mps=st.floats(0, 25),
    sunny=st.booleans(),
)


@settings(max_examples=60, deadline=None)
@given(
    st.floats(4, 30),
    st.floats(0, 400),
    st.sampled_from(sorted(LID_SHARE)),
    anywhere,
    st.sampled_from(Surface),
    st.floats(-300, 4000),
    st.sampled_from(["briquettes", "lump"]),
)
def test_every_count_is_whole_and_inside_its_band(
    inches: float, target: float, method: str, weather: Weather, surface: Surface, elevation: float, fuel: str
) -> None:
    count: CoalCount = coal_count(inches, target, method, weather, surface=surface, elevation_m=elevation, fuel=fuel)
    assert count.lid >= 0
    assert count.under > 0
    assert 1 <= count.least <= count.total <= count.most


@settings(max_examples=40, deadline=None)
@given(st.floats(6, 20), st.floats(100, 300), st.floats(0.5, 40))
def test_more_heat_never_wants_fewer_coals(inches: float, target: float, more: float) -> None:
    stand = Stand(OvenBuild(inches), CALM)
    cooler, hotter = (wanted(stand, heat, 2 / 3, "briquettes") for heat in (target, target + more))
    assert hotter.lid + hotter.under > cooler.lid + cooler.under
