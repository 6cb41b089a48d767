"""Food paths judged. Limits: FDA Food Code as adopted by states; USDA-FSIS read in mirrors. Temperatures in Celsius."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from cookout.core.quantities import fahrenheit_to_celsius as celsius
from cookout.core.safety.finding import Severity
from cookout.core.safety.foodpath import FoodPath, Held, Leg
from cookout.core.safety.limits import FOOD_CODE, HOME
from cookout.core.safety.local import LimitError
from cookout.core.safety.pathcheck import PathReport, judge_path
from cookout.core.safety.rules import LimitSet

AIR = 24.0


def leg(minutes: float, held: Held, *samples: tuple[float, float], air_c: float = AIR) -> Leg:
    return Leg(minutes, held, air_c, samples=samples)


def straight(minutes: float, held: Held, first_f: float, last_f: float, air_c: float = AIR) -> Leg:
    return Leg(minutes, held, air_c, samples=((0, celsius(first_f)), (minutes, celsius(last_f))))


def still(minutes: float, held: Held, food_f: float, air_c: float = AIR) -> Leg:
    return straight(minutes, held, food_f, food_f, air_c)


def judge(
    *legs: Leg, food: str = "poultry", code: LimitSet = FOOD_CODE, cooks: bool = False, marked: bool = False
) -> PathReport:
    return judge_path(FoodPath("stew", food, legs, cooks=cooks, marked=marked), code)


def sections(report: PathReport, *severities: Severity) -> list[str]:
    wanted = severities or (Severity.REFUSED,)
    return [found.rule.section for found in report.findings if found.rule is not None and found.severity in wanted]


# The least centre.


def test_chicken_that_reaches_165_is_done_and_a_degree_less_is_refused() -> None:
    assert judge(straight(60, Held.OVEN, 40, 165), cooks=True).centre_reached is True
    report = judge(straight(60, Held.OVEN, 40, 164), cooks=True)
    assert (report.centre_reached, sections(report)) == (False, ["3-401.11(A)(3)"])


@pytest.mark.parametrize(
    ("degrees", "seconds", "reached"),
    [(155, 17, True), (155, 16.9, False), (158, 0.1, True), (150, 60, True), (150, 59, False), (145, 180, True)],
)
def test_ground_meat_is_done_by_any_pair_of_heat_and_time(degrees: float, seconds: float, reached: bool) -> None:
    # FDA Food Code 3-401.11(A)(2). It rises and falls steeply, so that no weaker pair is met on the way.
    end, hot = 30 + seconds / 60, celsius(degrees)
    samples = ((0.0, 5.0), (29.999, 55.0), (30.0, hot), (end, hot), (end + 0.001, 55.0))
    report = judge(leg(end + 0.001, Held.OVEN, *samples), food="ground_meat", cooks=True)
    assert report.centre_reached is reached


def test_heat_that_carries_on_after_the_oven_counts() -> None:
    carried = judge(straight(40, Held.OVEN, 40, 160), straight(10, Held.AIR, 160, 166), cooks=True)
    assert carried.centre_reached is True


def test_meat_at_home_rests_three_minutes() -> None:
    short = judge(straight(40, Held.OVEN, 40, 150), still(2, Held.AIR, 150), food="whole_meat", code=HOME, cooks=True)
    long = judge(straight(40, Held.OVEN, 40, 150), still(3, Held.AIR, 150), food="whole_meat", code=HOME, cooks=True)
    assert [found.severity for found in short.findings] == [Severity.WARNING]
    assert long.findings == ()


def test_raw_food_that_is_never_cooked_and_one_nobody_measures_are_told() -> None:
    assert sections(judge(still(10, Held.ICE, 38), cooks=True)) == ["3-401.11(A)(3)"]
    report = judge(Leg(40, Held.OVEN, 180), cooks=True)
    assert (report.centre_reached, sections(report, Severity.NOTE)) == (None, ["3-401.11(A)(3)"])


# Out of heat and cold.


@pytest.mark.parametrize(("minutes", "refused"), [(120, []), (120.5, ["danger zone, the 2-hour rule"])])
def test_at_home_food_is_out_two_hours_at_most(minutes: float, refused: list[str]) -> None:
    report = judge(still(minutes, Held.AIR, 80, air_c=27), code=HOME)
    assert (report.danger_minutes, sections(report)) == (minutes, refused)


def test_at_home_the_hour_of_a_hot_day_counts_as_soon_as_any_of_it_was_hot() -> None:
    legs = (still(30, Held.AIR, 80, air_c=27), still(31, Held.AIR, 80, air_c=33))
    assert sections(judge(*legs, code=HOME)) == ["danger zone, the 2-hour rule"]


def test_going_back_on_ice_does_not_wipe_out_the_minutes_before_and_cooking_through_does() -> None:
    twice = (still(70, Held.AIR, 60), still(30, Held.ICE, 38), still(70, Held.AIR, 60))
    cooked = (still(70, Held.AIR, 60), straight(60, Held.OVEN, 60, 170), still(70, Held.AIR, 100))
    assert sections(judge(*twice, code=HOME)) == ["danger zone, the 2-hour rule"]
    assert judge(*cooked, code=HOME).longest_out == pytest.approx(70)
    assert sections(judge(*cooked, code=HOME)) == []


def test_cooking_that_nobody_measured_begins_a_new_count_and_asks_for_the_measure() -> None:
    legs = (still(70, Held.AIR, 60), Leg(60, Held.OVEN, 180), still(70, Held.AIR, 100))
    report = judge(*legs, code=HOME, cooks=True)
    assert sections(report) == []
    assert sections(report, Severity.NOTE) == ["safe minimum internal temperatures"]


def test_cooking_that_is_known_to_be_too_little_wipes_out_nothing() -> None:
    legs = (still(70, Held.AIR, 60), straight(60, Held.OVEN, 60, 150), still(70, Held.AIR, 100))
    assert judge(*legs, code=HOME).longest_out == pytest.approx(140)


def test_hot_food_in_air_counts_from_when_it_is_no_longer_hot() -> None:
    report = judge(Leg(60, Held.AIR, AIR, start_c=74, tau=60))
    # By hand: 60 ln((74 - 24) / (57.22 - 24)) = 24.5 min are still hot.
    assert report.danger_minutes == pytest.approx(60 - 24.5, abs=0.1)


def test_unmarked_food_waits_no_longer_than_handling_and_marked_food_gets_its_times() -> None:
    legs = (still(200, Held.AIR, 80),)
    assert sections(judge(*legs)) == ["3-501.16(A)"]
    marked = judge(*legs, marked=True)
    assert sections(marked) == []
    (mark,) = marked.marks
    assert (mark.out_at, mark.gone_by, mark.rule.section) == (0, 240, "3-501.19(B)")
    assert sections(judge(still(241, Held.AIR, 80), marked=True)) == ["3-501.19(B)"]


def test_cold_food_has_six_hours_while_it_stays_at_or_below_70() -> None:
    # FDA Food Code 3-501.19(C).
    cool, warm = straight(360, Held.AIR, 41, 70, air_c=21), straight(360, Held.AIR, 41, 71, air_c=21)
    assert sections(judge(cool, marked=True)) == []
    assert sections(judge(warm, marked=True)) == ["3-501.19(B)"]
    assert sections(judge(straight(361, Held.AIR, 41, 70, air_c=21), marked=True)) == ["3-501.19(C)"]


def test_preparing_is_no_wait_but_has_its_four_hours() -> None:
    assert sections(judge(still(200, Held.WORK, 60))) == []
    assert sections(judge(still(241, Held.WORK, 60))) == ["3-501.19(B)"]


def test_a_leg_that_nobody_knows_counts_as_out_where_it_is_out() -> None:
    report = judge(Leg(130, Held.AIR, AIR), code=HOME)
    assert (report.unknown_minutes, report.danger_minutes) == (130, 130)
    assert sections(report) == ["danger zone, the 2-hour rule"]


def test_plain_bread_has_no_limits() -> None:
    assert judge(still(900, Held.AIR, 75), food="bread_and_cake", code=HOME).findings == ()


# Holding.


@pytest.mark.parametrize(("food_f", "refused"), [(135, []), (134, ["3-501.16(A)(1)"])])
def test_hot_holding_is_135_or_more(food_f: float, refused: list[str]) -> None:
    assert sections(judge(still(60, Held.HOT, food_f))) == refused


@pytest.mark.parametrize(("last_f", "refused"), [(41, []), (42, ["3-501.16(A)(2)"])])
def test_cold_holding_is_41_or_less(last_f: float, refused: list[str]) -> None:
    assert sections(judge(straight(60, Held.ICE, 38, last_f))) == refused


def test_holding_that_nobody_measures_is_a_note_with_the_figure() -> None:
    report = judge(Leg(60, Held.HOT, AIR), Leg(60, Held.ICE, AIR))
    assert sections(report, Severity.NOTE) == ["3-501.16(A)(1)", "3-501.16(A)(2)"]
    assert "135 °F" in report.findings[0].remedy


# Cooling.


@pytest.mark.parametrize(
    ("first", "last", "refused"),
    [(120, 360, []), (121, 360, ["3-501.14(A)(1)"]), (120, 361, ["3-501.14(A)(2)"])],
)
def test_cooling_has_two_hours_to_70_and_six_in_all_to_41(first: float, last: float, refused: list[str]) -> None:
    samples = ((0.0, celsius(135)), (first, celsius(70)), (last, celsius(41)))
    report = judge(leg(last, Held.COOLING, *samples))
    assert (report.to_first, report.to_last) == (first, last)
    assert sections(report) == refused


def test_the_clock_of_cooling_starts_when_the_food_is_last_hot() -> None:
    report = judge(
        straight(30, Held.HOT, 180, 165),
        leg(300, Held.COOLING, (0, celsius(165)), (60, celsius(135)), (170, celsius(70)), (300, celsius(41))),
    )
    assert (report.to_first, report.to_last) == pytest.approx((110, 240))
    assert sections(report) == []


def test_cooling_that_is_cut_short_in_time_says_what_is_still_to_do() -> None:
    report = judge(straight(60, Held.COOLING, 135, 100))
    assert sections(report) == []
    assert sections(report, Severity.NOTE) == ["3-501.14(A)(1)", "3-501.14(A)(2)"]


def test_cooling_too_slowly_is_refused_though_the_path_ends_before_it_is_cool() -> None:
    assert sections(judge(straight(125, Held.COOLING, 135, 90))) == ["3-501.14(A)(1)"]


@pytest.mark.parametrize(("minutes", "refused"), [(240, []), (241, ["3-501.14(B)"])])
def test_food_made_at_air_temperature_is_cold_within_four_hours(minutes: float, refused: list[str]) -> None:
    assert sections(judge(straight(minutes, Held.ICE, 72, 41))) == refused


def test_at_home_cooling_in_the_air_counts_as_standing_out() -> None:
    legs = (still(130, Held.COOLING, 90),)
    assert sections(judge(*legs, code=HOME)) == ["danger zone, the 2-hour rule"]


# Reheating.


@pytest.mark.parametrize(
    ("reach_at", "held", "degrees", "refused"),
    [
        (120, 0.25, 165, []),
        (121, 0.25, 165, ["3-403.11(A), (D)"]),
        (120, 0.2, 165, ["3-403.11(A), (D)"]),
        (120, 5, 164, ["3-403.11(A), (D)"]),
    ],
)
def test_reheating_is_165_for_15_seconds_within_two_hours(
    reach_at: float, held: float, degrees: float, refused: list[str]
) -> None:
    samples = ((0.0, celsius(40)), (reach_at, celsius(degrees)), (reach_at + held, celsius(degrees)))
    assert sections(judge(leg(reach_at + held, Held.REHEAT, *samples))) == refused


# What holds of any path.


@given(
    cold=st.floats(0, 4),
    air=st.floats(5, 45),
    warmer=st.floats(0, 10),
    minutes=st.floats(1, 400),
    longer=st.floats(0, 200),
    tau=st.floats(5, 300),
    code=st.sampled_from((HOME, FOOD_CODE)),
    marked=st.booleans(),
)
def test_cold_food_that_stands_longer_or_in_warmer_air_is_never_judged_safer(
    cold: float, air: float, warmer: float, minutes: float, longer: float, tau: float, code: LimitSet, marked: bool
) -> None:
    less = judge(Leg(minutes, Held.AIR, air, start_c=cold, tau=tau), code=code, marked=marked)
    more = judge(Leg(minutes + longer, Held.AIR, air + warmer, start_c=cold, tau=tau), code=code, marked=marked)
    assert less.danger_minutes <= more.danger_minutes + 1e-6
    assert len(sections(less)) <= len(sections(more))


@given(
    hot=st.floats(60, 100),
    air=st.floats(0, 45),
    minutes=st.floats(1, 400),
    longer=st.floats(0, 200),
    tau=st.floats(5, 300),
    held=st.sampled_from((Held.AIR, Held.COOLING)),
    code=st.sampled_from((HOME, FOOD_CODE)),
)
def test_hot_food_that_stands_longer_is_never_judged_safer(
    hot: float, air: float, minutes: float, longer: float, tau: float, held: Held, code: LimitSet
) -> None:
    less = judge(Leg(minutes, held, air, start_c=hot, tau=tau), code=code)
    more = judge(Leg(minutes + longer, held, air, start_c=hot, tau=tau), code=code)
    assert less.danger_minutes <= more.danger_minutes + 1e-6
    assert len(sections(less)) <= len(sections(more))


@given(
    temperatures=st.lists(st.floats(-5, 100), min_size=2, max_size=8),
    held=st.sampled_from(Held),
    food=st.sampled_from(("poultry", "dairy", "eggs", "bread_and_cake")),
    code=st.sampled_from((HOME, FOOD_CODE)),
)
def test_any_curve_gives_a_report_whose_minutes_fit_the_path_and_whose_refusals_cite_a_rule(
    temperatures: list[float], held: Held, food: str, code: LimitSet
) -> None:
    samples = tuple((10.0 * place, food_c) for place, food_c in enumerate(temperatures))
    report = judge(leg(samples[-1][0], held, *samples), food=food, code=code)
    assert 0 <= report.danger_minutes <= samples[-1][0] + 1e-6
    assert all(found.rule is not None and found.remedy for found in report.findings)


@pytest.mark.parametrize(
    ("minutes", "samples", "tau"),
    [
        (-1, (), None),
        (10, ((0, 5),), None),
        (10, ((0, 5), (9, 6)), None),
        (10, ((0, 5), (0, 6), (10, 7)), None),
        (10, (), 0),
    ],
)
def test_a_leg_that_cannot_be_is_refused_with_a_remedy(
    minutes: float, samples: tuple[tuple[float, float], ...], tau: float | None
) -> None:
    with pytest.raises(LimitError, match=r"give|sample|leave"):
        Leg(minutes, Held.AIR, AIR, samples=samples, tau=tau)
