"""Rounding up to what can be bought. The steps are our own choice, no source; grams of a cup: USDA SR28."""

import pytest
from hypothesis import example, given
from hypothesis import strategies as st

from cookout.core.kitchen.measures import Amount, Kind, convert
from cookout.core.planning.lists.buying import buy
from cookout.core.planning.lists.sums import Sum

SPOON = 4.92892159
CUP = 236.5882365


@pytest.mark.parametrize(
    ("total", "units", "text", "also"),
    [
        (Sum(Amount(6.1 * CUP, "mL"), "all-purpose flour"), "us", "6 1/2 cups", "1 3/4 lb"),
        (Sum(Amount(6.1 * CUP, "mL"), "all-purpose flour"), "metric", "775 g", ""),
        (Sum(Amount(6 * CUP, "mL"), "oil"), "us", "6 cups", "1 1/2 qt"),
        (Sum(Amount(6 * CUP, "mL"), "oil"), "metric", "1.5 L", ""),
        (Sum(Amount(0.25 * CUP, "mL")), "us", "1/4 cup", ""),
        (Sum(Amount(6 * 3 * SPOON, "mL"), "butter"), "us", "6 Tbsp", ""),
        (Sum(Amount(1.75 * SPOON, "mL"), "baking powder"), "us", "1 3/4 tsp", ""),
        (Sum(Amount(450, "g")), "us", "1 lb", ""),
        (Sum(Amount(454, "g")), "us", "1 1/4 lb", ""),
        (Sum(Amount(200, "g")), "us", "8 oz", ""),
        (Sum(Amount(2, "pinch"), "salt"), "metric", "2 pinches", ""),
        (Sum(Amount(2.5), "onion"), "us", "3", ""),
        (Sum(Amount(3, "can"), "tomato", "14 oz"), "us", "3 cans of 14 oz", ""),
    ],
)
def test_totals_are_told_as_they_are_bought(total: Sum, units: str, text: str, also: str) -> None:
    found = buy(total, units)
    assert (found.text, found.also) == (text, also)


@given(st.floats(0.01, 1e6), st.sampled_from(["mL", "g", "", "can"]), st.sampled_from(["us", "metric"]))
@example(0.1 + 0.2, "g", "us")
def test_never_less_is_bought_than_asked_and_never_a_step_more(number: float, unit: str, units: str) -> None:
    found = buy(Sum(Amount(number, unit)), units)
    bought = found.amount.number if found.amount.kind is Kind.COUNT else convert(found.amount, unit).number
    assert bought >= number * (1 - 1e-6)
    # The coarsest step for little is half an ounce; for more, a quarter cup above half a cup.
    assert bought <= (1.5 * number + 15 if unit in ("mL", "g") else number + 1)


@given(st.integers(1, 200), st.sampled_from(["us", "metric"]))
def test_more_is_never_told_as_less(number: int, units: str) -> None:
    less, more = (buy(Sum(Amount(each * 11.3, "mL"), "milk"), units).amount for each in (number, number + 1))
    assert convert(less, "mL").number <= convert(more, "mL").number + 1e-9


def test_what_is_asked_for_by_weight_is_bought_by_weight() -> None:
    assert buy(Sum(Amount(907.18474, "g"), "sugar"), "us").text == "2 lb"
