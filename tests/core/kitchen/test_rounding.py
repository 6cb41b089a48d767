"""Amounts rounded to what can be measured, with the rounding in the answer. Steps: common practice, no source."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from cookout.core.kitchen.measures import Amount, convert
from cookout.core.kitchen.rounding import USUAL_TOOLS, Tools, for_person, to_measure, write_amount


@pytest.mark.parametrize(
    ("amount", "text"),
    [
        (Amount(0.3, "tsp"), "1/4 tsp"),
        (Amount(1.6, "tsp"), "1 1/2 tsp"),
        (Amount(1.31, "Tbsp"), "1 Tbsp plus 1 tsp"),
        (Amount(0.8, "cup"), "2/3 cup plus 2 Tbsp"),
        (Amount(2.26, "cup"), "2 1/4 cups"),
        (Amount(3.99, "cup"), "4 cups"),
        (Amount(0.02, "tsp"), "1 pinch"),
        (Amount(20, "oz"), "1 lb plus 4 oz"),
        (Amount(3.1, "lb"), "3 lb plus 2 oz"),
        (Amount(62.5, "g"), "63 g"),
        (Amount(1.2534, "kg"), "1.2550 kg"),
        (Amount(473.2, "mL"), "470 mL"),
        (Amount(4.93, "mL"), "5 mL"),
        (Amount(1.04, "stick"), "1 stick"),
        (Amount(2.4, "can"), "2 1/2 cans"),
        (Amount(2.2, "pinch"), "2 pinches"),
        (Amount(12, "pinch"), "3/4 tsp"),
    ],
)
def test_an_amount_is_measured_with_what_is_at_hand(amount: Amount, text: str) -> None:
    assert to_measure(amount).text == text


def test_eggs_are_whole_and_never_none() -> None:
    assert to_measure(Amount(2.5), "eggs").amount.number == 3
    assert to_measure(Amount(0.2), "eggs").amount.number == 1
    assert to_measure(Amount(0.5), "onion").amount.number == 0.5


def test_the_rounding_stands_in_the_answer() -> None:
    measured = for_person(Amount(0.5, "cup"), "metric", "flour")
    assert measured.asked.number == pytest.approx(62.5)
    assert measured.difference == pytest.approx(0.5)
    assert measured.share == pytest.approx(0.008)
    assert str(measured) == "63 g (1% more than 62.5 g)"
    assert str(to_measure(Amount(2.0, "cup"))) == "2 cups"


def test_nothing_stays_nothing() -> None:
    assert to_measure(Amount(0, "cup")).amount.number == 0


def test_a_finer_scale_rounds_less() -> None:
    assert to_measure(Amount(7.26, "g"), tools=Tools(grams=((10.0, 0.1), (1e9, 1.0)))).amount.number == pytest.approx(
        7.3
    )


LEAST_FOR_AN_EIGHTH = {"tsp": 1.0, "Tbsp": 0.34, "cup": 0.021, "qt": 0.0053, "mL": 10.0, "L": 0.01}
LEAST_FOR_AN_EIGHTH |= {"g": 4.0, "kg": 0.004, "oz": 1.0, "lb": 0.0625}


@settings(deadline=None)
@given(st.floats(1.0, 10_000), st.sampled_from(sorted(LEAST_FOR_AN_EIGHTH)))
def test_above_a_spoonful_what_is_measured_is_within_an_eighth_of_what_was_asked(times: float, unit: str) -> None:
    measured = to_measure(Amount(times * LEAST_FOR_AN_EIGHTH[unit], unit))
    assert abs(measured.share) <= 0.125 + 1e-9


@settings(deadline=None)
@given(st.floats(0.001, 500), st.sampled_from(sorted(LEAST_FOR_AN_EIGHTH)))
def test_the_parts_of_an_amount_are_all_of_it_and_never_nothing(number: float, unit: str) -> None:
    measured = to_measure(Amount(number, unit))
    assert sum(convert(part, unit).number for part in measured.parts) == pytest.approx(measured.amount.number)
    assert measured.amount.number > 0


@settings(deadline=None)
@given(st.floats(0.01, 500), st.sampled_from(["tsp", "Tbsp", "cup", "mL", "L", "g", "kg", "lb"]))
def test_a_measured_amount_measured_again_stays_within_what_a_plain_cup_may_be_off(number: float, unit: str) -> None:
    once = to_measure(Amount(number, unit))
    again = to_measure(once.amount)
    assert again.amount.number == pytest.approx(once.amount.number, rel=USUAL_TOOLS.cup_tolerance)


@pytest.mark.parametrize(
    ("amount", "text"),
    [
        (Amount(2.25, "cup"), "2 1/4 cups"),
        (Amount(1 / 3, "cup"), "1/3 cup"),
        (Amount(1.25, "kg"), "1.25 kg"),
        (Amount(3), "3"),
        (Amount(2, "clove"), "2 cloves"),
        (Amount(0.37, "tsp"), "0.37 tsp"),
    ],
)
def test_amounts_are_written_as_people_write_them(amount: Amount, text: str) -> None:
    assert write_amount(amount) == text
