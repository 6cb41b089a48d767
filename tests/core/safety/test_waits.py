"""Planned waits judged: boundary values, the sections cited, and that nothing warmer or longer is ever safer."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from cookout.core.quantities import fahrenheit_to_celsius
from cookout.core.safety.finding import Severity, rank_of, show_minutes
from cookout.core.safety.limits import CONTROLLED_FOODS, FOOD_CODE, HOME, longest_wait
from cookout.core.safety.local import LocalNumbers, stricter
from cookout.core.safety.rules import LimitSet
from cookout.core.safety.waits import judge_wait

AIR_80_F = fahrenheit_to_celsius(80)
CODES = st.sampled_from((HOME, FOOD_CODE))
FOODS = st.sampled_from(sorted(CONTROLLED_FOODS))
AIR = st.floats(-10, 50)
MINUTES = st.floats(0, 600)


@pytest.mark.parametrize("code", [HOME, FOOD_CODE])
def test_chicken_that_is_to_wait_three_hours_at_80_fahrenheit_is_refused_with_the_section(code: LimitSet) -> None:
    found = judge_wait("poultry", "air", AIR_80_F, 180, code=code, name="roast chicken")
    assert found is not None
    assert found.severity is Severity.REFUSED
    assert "FDA Food Code 3-501.16(A)" in found.said
    assert "2-hour rule" in found.said
    assert found.rule == (HOME.out_rule if code is HOME else FOOD_CODE.holding_rule)
    assert "Roast chicken is to wait 3 h out in air of 80 °F" in found.text
    assert "local" in found.remedy or "code of the place" in found.remedy


def test_each_code_is_cited_by_its_own_numbers_alone() -> None:
    # Two and a half hours with written times: allowed by 3-501.19(B), refused by the home figures.
    found = judge_wait("poultry", "air", 21, 150, marked=True)
    assert found is not None
    assert found.also == ()
    assert judge_wait("poultry", "air", 21, 150, code=FOOD_CODE, marked=True) is None


@pytest.mark.parametrize(
    ("air_f", "minutes", "refused"), [(70, 120, False), (70, 120.01, True), (90, 120, False), (90.1, 60.01, True)]
)
def test_the_home_limit_is_two_hours_to_the_minute_and_one_above_90_fahrenheit(
    air_f: float, minutes: float, refused: bool
) -> None:
    found = judge_wait("dairy", "air", fahrenheit_to_celsius(air_f), minutes)
    assert (found is not None) is refused


@pytest.mark.parametrize(
    ("minutes", "air_f", "from_cold", "section"),
    [
        (240, 80, False, None),
        (241, 80, False, "3-501.19(B)"),
        (360, 70, True, None),
        (361, 70, True, "3-501.19(C)"),
        (241, 71, True, "3-501.19(B)"),
    ],
)
def test_written_times_allow_four_hours_or_six_from_cold_up_to_70_fahrenheit(
    minutes: float, air_f: float, from_cold: bool, section: str | None
) -> None:
    # FDA Food Code 3-501.19 (B) and (C), as adopted by states.
    air_c = fahrenheit_to_celsius(air_f)
    found = judge_wait("fruit", "air", air_c, minutes, code=FOOD_CODE, marked=True, from_cold=from_cold)
    assert (None if found is None or found.rule is None else found.rule.section) == section


def test_without_written_times_the_food_code_wants_it_hot_or_cold_and_says_how_to_mark_it() -> None:
    found = judge_wait("poultry", "air", 21, 60, code=FOOD_CODE)
    assert found is not None
    assert "must be held hot or cold" in found.text
    assert "mark it" in found.remedy
    assert "3-501.19(B)" in found.remedy
    assert judge_wait("poultry", "air", 21, 30, code=FOOD_CODE) is None


@pytest.mark.parametrize(
    ("code", "held", "food_f", "section"),
    [
        (FOOD_CODE, "hot", 135, None),
        (FOOD_CODE, "hot", 134.9, "3-501.16(A)(1)"),
        (FOOD_CODE, "cold", 41, None),
        (FOOD_CODE, "cold", 41.1, "3-501.16(A)(2)"),
        (HOME, "hot", 139, "danger zone, 40 to 140 °F"),
        (HOME, "cold", 40, None),
    ],
)
def test_holding_is_judged_at_the_degree(code: LimitSet, held: str, food_f: float, section: str | None) -> None:
    found = judge_wait("eggs", held, 21, 90, code=code, holder_c=fahrenheit_to_celsius(food_f))
    assert (None if found is None or found.rule is None else found.rule.section) == section


def test_bread_waits_as_long_as_it_likes_and_unknown_food_does_not() -> None:
    assert judge_wait("bread_and_cake", "air", 35, 900) is None
    assert judge_wait("something new", "air", 21, 121) is not None


def test_texts_come_in_the_units_of_the_user() -> None:
    found = judge_wait("poultry", "air", AIR_80_F, 180, units="metric")
    assert found is not None
    assert "27 °C" in found.text
    assert "60 °C" in found.remedy


def test_minutes_are_never_shown_shorter_than_they_are() -> None:
    assert [show_minutes(minutes) for minutes in (45, 120, 120.01, 150)] == ["45 min", "2 h", "2 h 1 min", "2 h 30 min"]


@given(food=FOODS, code=CODES, air=AIR, warmer=st.floats(0, 30), minutes=MINUTES, longer=MINUTES, flags=st.booleans())
def test_warmer_or_longer_is_never_judged_safer(
    food: str, code: LimitSet, air: float, warmer: float, minutes: float, longer: float, flags: bool
) -> None:
    for cold in (False, True):
        less = judge_wait(food, "air", air, minutes, code=code, marked=flags, from_cold=cold)
        more = judge_wait(food, "air", air + warmer, minutes + longer, code=code, marked=flags, from_cold=cold)
        assert rank_of(less) <= rank_of(more)


NUMBERS = st.builds(
    LocalNumbers,
    out_minutes=st.none() | st.integers(0, 120),
    warm_minutes=st.none() | st.integers(0, 60),
    warm_air_c=st.none() | st.floats(0, 32),
    hot_c=st.none() | st.floats(60, 90),
    cold_c=st.none() | st.floats(0, 4.4),
)


@given(food=FOODS, base=CODES, numbers=NUMBERS, air=AIR, minutes=MINUTES, marked=st.booleans(), holder=st.floats(0, 90))
def test_a_stricter_code_never_allows_more(
    food: str, base: LimitSet, numbers: LocalNumbers, air: float, minutes: float, marked: bool, holder: float
) -> None:
    if base is FOOD_CODE and (numbers.warm_minutes is None) != (numbers.warm_air_c is None):
        return
    local = stricter(base, numbers, "Local")
    for held in ("air", "hot", "cold"):
        published = judge_wait(food, held, air, minutes, code=base, marked=marked, holder_c=holder)
        strict = judge_wait(food, held, air, minutes, code=local, marked=marked, holder_c=holder)
        assert rank_of(published) <= rank_of(strict)
    before, after = longest_wait(food, "air", air, code=base), longest_wait(food, "air", air, code=local)
    assert before is not None
    assert after is not None
    assert after.minutes <= before.minutes


@given(food=FOODS, code=CODES, air=AIR, marked=st.booleans())
def test_the_longest_wait_is_the_longest_that_is_not_refused(
    food: str, code: LimitSet, air: float, marked: bool
) -> None:
    wait = longest_wait(food, "air", air, code=code, marked=marked)
    assert wait is not None
    assert judge_wait(food, "air", air, wait.minutes, code=code, marked=marked) is None
    assert judge_wait(food, "air", air, wait.minutes + 1, code=code, marked=marked) is not None
