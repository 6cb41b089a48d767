"""An oven in time: energy is kept, the step does not matter, and what is known of it comes out."""

from dataclasses import replace

import numpy as np
import pytest
from scipy.integrate import solve_ivp

from cookout.core.air import SEA_LEVEL_PA, ZERO_C_IN_K
from cookout.core.fire import heat
from cookout.core.fire.coals import heat_w
from cookout.core.fire.counts import day_of
from cookout.core.fire.influences import band
from cookout.core.fire.iron import IRON_HEAT, OvenBuild, Surface
from cookout.core.fire.network import OVEN, Array, FoodLoad, Network, Stand
from cookout.core.fire.oven import Batch, OvenCase, oven_heat, simulate, usual_load
from cookout.core.fire.weather import Weather

STAND = Stand(OvenBuild(12))
BATTER = FoodLoad(0.7, 0.229, trivet=True)
BAKE = OvenCase(STAND, (Batch(17, 8), Batch(10, 5, laid_at=30)), food=BATTER, food_at=12)
WINDY = Weather(air_c=24, wind_mps=7.8, gust_mps=10)
WINDY_TABLE = Stand(OvenBuild(12), WINDY, Surface.METAL)


@pytest.mark.parametrize(
    "case",
    [
        BAKE,
        replace(BAKE, stand=replace(WINDY_TABLE, elevation_m=1500.0), fuel="lump"),
        OvenCase(STAND, (Batch(17, 8, off_at=20), Batch(3, 2)), food=usual_load(STAND.oven), start_c=180),
        OvenCase(replace(STAND, weather=Weather(air_c=-5, sunny=True)), (Batch(0, 20),)),
    ],
    ids=["a bake with a top-up", "lump on a windy table", "coals taken off", "empty, in cold sun"],
)
def test_energy_is_kept(case: OvenCase) -> None:
    course = simulate(case, 60)
    astray = course.came_in - course.lost - course.used - course.stored
    assert np.all(np.abs(astray[1:]) <= 0.005 * course.came_in[1:] + 1.0)


def test_what_came_in_is_the_coals_own_heat_by_another_sum() -> None:
    # Calm, at the sea: each coal's curve, times the share caught, summed by trapezoids.
    minutes = np.linspace(0, 60, 6001)
    first, second = heat_w(25 + minutes), np.where(minutes < 30, 0.0, heat_w(25 + minutes - 30))
    on_lid, under = OVEN.lid_catch, OVEN.lid_catch * OVEN.under_catch
    caught = first * (17 * on_lid + 8 * under) + second * (10 * on_lid + 5 * under)
    course = simulate(BAKE, 60)
    assert course.came_in[-1, 0] == pytest.approx(float(np.trapezoid(caught, minutes * 60)), rel=0.002)


def test_what_is_stored_is_iron_and_food_warmed() -> None:
    course = simulate(OvenCase(STAND, (Batch(17, 8),), start_c=100.0), 5)
    assert course.stored[0] == pytest.approx(np.zeros(13))
    warmed = course.stored[-1, 0] / (IRON_HEAT * STAND.oven.mass_kg)
    assert warmed == pytest.approx(course.mean_c[-1, 0] - course.mean_c[0, 0], rel=0.15)


def test_what_is_lost_is_convection_and_radiation_from_lid_wall_and_base() -> None:
    network = Network(STAND, day_of(STAND, "briquettes"))
    kelvin = np.full((4, 13), 450.0)
    air, oven = 21 + ZERO_C_IN_K, STAND.oven
    still = (450.0, air, oven.wide_m, 0.0, SEA_LEVEL_PA)
    shine = heat.radiated(0.9, 450.0, air)
    expected = (
        oven.plate_m2 * (heat.lid_coefficient(*still) * (450 - air) + shine)
        + oven.wall_m2 * (heat.wall_coefficient(*still, oven.depth_m) * (450 - air) + shine)
        + oven.plate_m2 * 0.5 * (heat.base_coefficient(*still) * (450 - air) + shine)
    )
    lost = network.flows(kelvin, np.zeros((3, 13)), loaded=False).lost
    assert lost[0] == pytest.approx(float(expected), rel=1e-3)


def test_halving_the_step_changes_times_by_less_than_1_in_100() -> None:
    whole, half = simulate(BAKE, 60), simulate(BAKE, 60, step_s=15)
    for celsius in (100, 150, 170):
        first, second = whole.minutes_to(celsius), half.minutes_to(celsius)
        assert first is not None
        assert second is not None
        assert first == pytest.approx(second, rel=0.01)
    assert whole.food_c[-1] == pytest.approx(half.food_c[-1], abs=0.1)


def test_an_independent_integrator_finds_the_same_temperatures() -> None:
    case = OvenCase(STAND, (Batch(17, 8),), food=BATTER)
    columns = day_of(STAND, "briquettes")
    network = Network(STAND, columns, OVEN, BATTER)

    def slope(seconds: float, kelvin: Array) -> Array:
        each = float(heat_w(25 + seconds / 60))
        under = 8 * each * OVEN.lid_catch * OVEN.under_catch
        coming = np.array([17 * each * OVEN.lid_catch, OVEN.wall_share * under, (1 - OVEN.wall_share) * under])
        spread = np.repeat(kelvin[:, None], 13, axis=1)
        flows = network.flows(spread, np.repeat(coming[:, None], 13, axis=1), loaded=True)
        return np.asarray(flows.net[:, 0] / network.stores[:, 0])

    start = np.full(4, 21 + ZERO_C_IN_K)
    found = solve_ivp(slope, (0, 2400), start, rtol=1e-7, atol=1e-5, max_step=60)
    course = simulate(case, 40)
    assert course.food_c[-1, 0] == pytest.approx(found.y[3, -1] - ZERO_C_IN_K, abs=0.2)


def test_the_counts_of_a_target_bring_a_hot_oven_there() -> None:
    # 17 and 8 coals are common practice for 350 degrees Fahrenheit, 177 Celsius (no source).
    found = oven_heat(STAND, 17, 8)
    assert found.mean.usual == pytest.approx(177, abs=8)
    assert found.mean.least < 165
    assert found.mean.most > 190
    assert abs(found.above.usual - found.below.usual) < 10


def test_a_coal_is_worth_10_to_15_degrees_fahrenheit() -> None:
    # Common practice, no source; two on the lid and one under count as three.
    fewer, more = (oven_heat(STAND, 16 + 2 * extra, 8 + extra).mean.usual for extra in (0, 1))
    assert 10 <= (more - fewer) * 1.8 / 3 <= 16


def test_cold_iron_is_hot_in_10_to_25_minutes() -> None:
    # Common practice, no source: a preheat takes 10 to 20 min.
    reached = simulate(OvenCase(STAND, (Batch(17, 8),)), 40).minutes_to(165)
    assert reached is not None
    assert 8 <= reached <= 25


def test_an_oven_with_too_few_coals_never_gets_there() -> None:
    assert simulate(OvenCase(STAND, (Batch(4, 2),)), 40).minutes_to(165) is None


def test_coals_fade_and_fresh_ones_lift_the_oven_again() -> None:
    plain = OvenCase(STAND, (Batch(17, 8),), food=BATTER)
    fed = replace(plain, batches=(*plain.batches, Batch(10, 5, laid_at=30)))
    alone, topped = simulate(plain, 60), simulate(fed, 60)
    assert alone.heat_at(60).mean.usual < alone.heat_at(30).mean.usual - 25
    assert topped.heat_at(60).mean.usual > alone.heat_at(60).mean.usual + 25
    assert topped.heat_at(29).mean.usual == pytest.approx(alone.heat_at(29).mean.usual)


def test_food_holds_near_the_boiling_point_while_it_steams() -> None:
    course = simulate(OvenCase(STAND, (Batch(17, 8),), food=BATTER, food_at=12), 45)
    assert 90 < course.food_c[-1, 0] < 112
    assert course.used[-1, 0] > 0


def test_heat_between_two_minutes_lies_between_theirs() -> None:
    course = simulate(OvenCase(STAND, (Batch(17, 8),)), 20)
    low, mean, high = (each.above.usual for each in (course.heat_at(5), course.heat_between(5, 10), course.heat_at(10)))
    assert low < mean < high


def test_a_metal_table_raises_the_heat_from_below() -> None:
    # Common practice, no source.
    ground, metal = oven_heat(STAND, 17, 8), oven_heat(replace(STAND, surface=Surface.METAL), 17, 8)
    assert metal.below.usual > ground.below.usual + 5
    assert metal.below.usual - ground.below.usual > metal.above.usual - ground.above.usual


def test_lump_on_a_metal_table_in_wind_may_run_far_too_hot_with_light_coals() -> None:
    # Common practice, no source: such an oven bakes in 12 to 13 min what takes 30 to 35 at 177 degrees Celsius.
    found = oven_heat(WINDY_TABLE, 12, 7, "lump")
    assert found.mean.usual > 195
    assert found.mean.most > 280
    calm = oven_heat(STAND, 12, 7)
    assert found.mean.most - found.mean.usual > 2 * (calm.mean.most - calm.mean.usual)


def test_wind_makes_an_oven_less_sure() -> None:
    calm, windy = oven_heat(STAND, 17, 8).mean, oven_heat(replace(STAND, weather=WINDY), 17, 8).mean
    assert windy.most - windy.least > 1.1 * (calm.most - calm.least)


def test_influences_add_up_by_their_squares_each_way() -> None:
    # Departures -3 and -4 make 5 down; 6 alone makes 6 up.
    least, usual, most = band(np.array([10.0, 7.0, 16.0, 6.0, 10.0]))
    assert [float(each) for each in (least, usual, most)] == [5.0, 10.0, 16.0]


@pytest.mark.parametrize("inches", [8, 10, 12, 14, 16])
def test_the_parts_of_an_oven_weigh_what_it_weighs(inches: int) -> None:
    oven = OvenBuild(inches)
    assert sum(oven.masses_kg) == pytest.approx(oven.mass_kg)
    assert 0.004 < oven.thick_m < 0.007
    assert OvenBuild(inches, deep=True).wall_m2 > oven.wall_m2


def test_an_oven_is_refused_where_it_makes_no_sense_and_taken_as_told_where_it_does() -> None:
    with pytest.raises(ValueError, match="5 to 24 inches"):
        OvenBuild(30)
    with pytest.raises(ValueError, match="above 0"):
        OvenBuild(12, iron_kg=0)
    told = OvenBuild(12, iron_kg=11.0, depth_in=4.0)
    assert told.mass_kg == 11.0
    assert told.depth_m == pytest.approx(0.1016)
