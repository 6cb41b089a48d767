"""Altitude against Colorado State University Extension and the table for cakes that extension services pass on."""

import pytest

from cookout.core import air
from cookout.core.kitchen.altitude import Change, Dish, advice, apply, dish_of
from cookout.core.kitchen.recipe import FoodKind, Ingredient

FEET = 0.3048
CAKE = Dish(FoodKind.BREAD_AND_CAKE, leavened=True)
BATTER = (
    Ingredient("flour", 3, "cup"),
    Ingredient("milk", 2, "cup"),
    Ingredient("baking powder", 2, "tsp"),
    Ingredient("sugar", 2, "cup"),
    Ingredient("egg", 4),
)


@pytest.mark.parametrize(
    ("feet", "liquid", "powder", "sugar"),
    [
        (3000, (1, 2), (0.125, 0.125), None),
        (5000, (2, 3), (0.125, 0.25), None),
        (6900, (2, 3), (0.125, 0.25), None),
        (7000, (3, 4), (0.25, 0.5), (1, 2)),
        (10_000, (3, 4), (0.25, 0.5), (1, 2)),
    ],
)
def test_cakes_follow_the_table(
    feet: float, liquid: tuple[float, float], powder: tuple[float, float], sugar: tuple[float, float] | None
) -> None:
    found = {one.change: one for one in advice(CAKE, feet * FEET)}
    assert (found[Change.LIQUID].least, found[Change.LIQUID].most) == liquid
    assert (-found[Change.LEAVENING].least, -found[Change.LEAVENING].most) == powder
    assert (Change.SUGAR in found) == (sugar is not None)
    if sugar:
        assert (-found[Change.SUGAR].least, -found[Change.SUGAR].most) == sugar
    assert found[Change.OVEN].most == 25
    assert all(one.source for one in found.values())


def test_nothing_changes_below_three_thousand_feet() -> None:
    assert advice(CAKE, 2900 * FEET) == ()


def test_a_braise_takes_a_quarter_longer_at_five_thousand_feet() -> None:
    (slower,) = advice(Dish(FoodKind.STEW_AND_BEANS, simmered=True), 5000 * FEET)
    assert slower.change is Change.TIME
    assert slower.most == pytest.approx(0.25)


def test_the_boiling_point_is_told_with_a_word_on_safe_temperatures() -> None:
    (boiling,) = advice(Dish(FoodKind.POULTRY), 5000 * FEET, air.boiling_c(5000 * FEET))
    assert "94.9 °C (203 °F)" in boiling.text
    assert "Safe inner temperatures stay" in boiling.text


def test_chosen_advice_changes_the_batter_and_says_so() -> None:
    chosen = advice(CAKE, 7000 * FEET)
    applied = apply(BATTER, chosen)
    by_name = {one.name: one.amount for one in applied.ingredients}
    assert by_name["milk"] == pytest.approx(2 + 2 * 3.5 / 16)
    assert by_name["baking powder"] == pytest.approx(2 - 2 * 0.375)
    assert by_name["sugar"] == pytest.approx(2 - 2 * 1.5 / 16)
    assert (by_name["flour"], by_name["egg"]) == (3, 4)
    assert len(applied.changes) == 3
    assert "milk: 0.438 cup more, from 2 cup" in applied.changes


def test_nothing_is_applied_unless_it_is_chosen() -> None:
    assert apply(BATTER, ()).ingredients == BATTER


def test_what_cannot_be_changed_is_said_and_left() -> None:
    (liquid, *_) = advice(CAKE, 5000 * FEET)
    without = (Ingredient("flour", 3, "cup"),)
    applied = apply(without, (liquid,))
    assert applied.ingredients == without
    assert "No liquid was found" in applied.changes[0]
    weighed = (Ingredient("milk", 500, "g"), Ingredient("water"))
    assert apply(weighed, (liquid,)).ingredients == weighed


def test_a_dish_is_leavened_by_what_is_in_it() -> None:
    assert dish_of(FoodKind.BREAD_AND_CAKE, BATTER).leavened
    assert not dish_of(FoodKind.BREAD_AND_CAKE, BATTER[:2]).leavened
    assert not dish_of(FoodKind.POULTRY, BATTER).leavened
