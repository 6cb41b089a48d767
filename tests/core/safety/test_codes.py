"""The two codes as data and a local code over them: FDA Food Code as adopted by states, USDA-FSIS read in mirrors."""

import pytest

from cookout.core.quantities import celsius_to_fahrenheit, fahrenheit_to_celsius
from cookout.core.safety.limits import CODES, FOOD_CODE, HOME, least_centre, longest_wait
from cookout.core.safety.local import LimitError, LocalNumbers, stricter
from cookout.core.safety.rules import LimitSet, Standing


def fahrenheit(celsius: float) -> int:
    return round(celsius_to_fahrenheit(celsius))


# FDA Food Code 3-401.11 (A)(1) to (3): degrees Fahrenheit and seconds.
@pytest.mark.parametrize(
    ("food", "degrees", "seconds", "section"),
    [
        ("whole_meat", 145, 15, "3-401.11(A)(1)"),
        ("fish", 145, 15, "3-401.11(A)(1)"),
        ("ground_meat", 155, 17, "3-401.11(A)(2)"),
        ("eggs", 155, 17, "3-401.11(A)(2)"),
        ("poultry", 165, 0, "3-401.11(A)(3)"),
        ("stew_and_beans", 165, 0, "3-401.11(A)(3)"),
    ],
)
def test_the_food_code_gives_each_kind_its_centre_and_section(
    food: str, degrees: int, seconds: int, section: str
) -> None:
    centre = least_centre(food, FOOD_CODE)
    assert centre is not None
    assert (fahrenheit(centre.usual_c), centre.usual_seconds, centre.rule.section) == (degrees, seconds, section)


def test_ground_meat_may_be_less_hot_for_longer_in_the_food_code() -> None:
    centre = least_centre("ground_meat", FOOD_CODE)
    assert centre is not None
    assert {(fahrenheit(c), seconds) for c, seconds in centre.pairs} == {(155, 17), (158, 0), (150, 60), (145, 180)}


def test_the_home_figures_are_their_own_and_meat_rests_three_minutes() -> None:
    centre, ground = least_centre("whole_meat"), least_centre("ground_meat")
    assert centre is not None
    assert ground is not None
    assert (fahrenheit(centre.usual_c), centre.rest_minutes, fahrenheit(ground.usual_c)) == (145, 3, 160)
    assert HOME.cooling is None
    assert HOME.time_control is None
    assert not [rule for _, rule in HOME.centres if "FDA" in str(rule.rule)]


def test_cooling_reheating_and_time_as_the_control_stand_with_their_sections() -> None:
    cooling, control, reheating = FOOD_CODE.cooling, FOOD_CODE.time_control, FOOD_CODE.reheating
    assert cooling is not None
    assert control is not None
    stages = [fahrenheit(c) for c in (cooling.from_c, cooling.first_c, cooling.last_c)]
    assert (stages, cooling.first_minutes, cooling.last_minutes) == ([135, 70, 41], 120, 360)
    assert (control.minutes, control.cold_minutes, fahrenheit(control.cold_most_c)) == (240, 360, 70)
    assert (fahrenheit(reheating.centre_c), reheating.seconds, reheating.minutes) == (165, 15, 120)
    sections = [rule.section for rule in (cooling.first_rule, control.rule, control.cold_rule, reheating.rule)]
    assert sections == ["3-501.14(A)(1)", "3-501.19(B)", "3-501.19(C)", "3-403.11(A), (D)"]


def test_a_code_can_be_a_key_and_is_found_by_the_word_of_an_event() -> None:
    assert {HOME: 1, FOOD_CODE: 2}[CODES["public"]] == 2
    assert CODES["home"] is HOME


def test_a_local_code_is_cited_where_it_sets_the_number_and_only_there() -> None:
    local = stricter(HOME, LocalNumbers(out_minutes=90), "Hollow County food order", "7.2")
    wait = longest_wait("poultry", "air", 21, code=local)
    assert wait is not None
    assert (wait.minutes, "Hollow County food order 7.2" in wait.reason) == (90, True)
    assert local.out_rule.standing is Standing.ORGANISER
    assert local.hot_rule == HOME.hot_rule
    assert local.holding.minutes_out(fahrenheit_to_celsius(95)) == 60


def test_a_local_code_can_bring_a_limit_for_warm_air_where_the_set_has_none() -> None:
    local = stricter(FOOD_CODE, LocalNumbers(warm_minutes=60, warm_air_c=30), "Local")
    assert [local.holding.minutes_out(air) for air in (30.0, 30.1)] == [240, 60]


def test_a_local_centre_takes_away_the_pairs_that_would_allow_less() -> None:
    hot = fahrenheit_to_celsius(160)
    local = stricter(FOOD_CODE, LocalNumbers(centres_c=(("ground_meat", hot),), centre_seconds=30), "Local")
    centre = local.centre("ground_meat")
    assert centre is not None
    assert centre.pairs == ((hot, 30),)


def test_a_local_time_out_shortens_the_written_times_too() -> None:
    local = stricter(FOOD_CODE, LocalNumbers(out_minutes=120), "Local")
    assert local.time_control is not None
    assert (local.time_control.minutes, local.time_control.cold_minutes) == (120, 120)


@pytest.mark.parametrize(
    ("base", "numbers", "word"),
    [
        (HOME, LocalNumbers(out_minutes=121), "out minutes"),
        (HOME, LocalNumbers(hot_c=55), "hot holding"),
        (HOME, LocalNumbers(cold_c=8), "cold holding"),
        (FOOD_CODE, LocalNumbers(cooling_minutes=400), "cooling"),
        (FOOD_CODE, LocalNumbers(centres_c=(("poultry", 70),)), "poultry"),
        (FOOD_CODE, LocalNumbers(reheating_minutes=150), "reheating"),
        (HOME, LocalNumbers(first_minutes=60), "first minutes"),
        (FOOD_CODE, LocalNumbers(warm_minutes=60), "warm air"),
    ],
)
def test_a_local_number_that_allows_more_or_fits_no_rule_is_refused(
    base: LimitSet, numbers: LocalNumbers, word: str
) -> None:
    with pytest.raises(LimitError, match=word):
        stricter(base, numbers, "Local")
