"""Swaps that recipes declare."""

import pytest

from cookout.core.errors import QuantityError
from cookout.core.kitchen.recipe import Ingredient
from cookout.core.kitchen.replacement import Swap, SwapId
from cookout.core.kitchen.swaps import offered, swap

BATTER = (Ingredient("butter", 1, "cup", "soft"), Ingredient("eggs", 4), Ingredient("salt"))
OIL = Swap(SwapId("oil"), "butter", "oil", 0.75)
APPLESAUCE = Swap(SwapId("no-egg"), "egg", "applesauce", 0.25, "cup")
SEEDS = Swap(SwapId("seeds"), "pecans", "sunflower seeds")


def test_only_swaps_of_what_is_in_the_recipe_are_offered() -> None:
    assert offered((OIL, APPLESAUCE, SEEDS), BATTER) == (OIL, APPLESAUCE)


def test_chosen_swaps_change_name_amount_and_unit() -> None:
    swapped = swap(BATTER, (OIL, APPLESAUCE))
    oil, applesauce, salt = swapped.ingredients
    assert (oil.name, oil.amount, oil.unit, oil.note) == ("oil", 0.75, "cup", "instead of butter")
    assert (applesauce.name, applesauce.amount, applesauce.unit) == ("applesauce", 1.0, "cup")
    assert salt == BATTER[2]
    assert swapped.made == (OIL, APPLESAUCE)
    assert swapped.changes[0] == "0.75 cup oil instead of 1 cup butter"


def test_a_swap_to_taste_stays_to_taste() -> None:
    swapped = swap(BATTER, (Swap(SwapId("soy"), "salt", "soy sauce"),))
    assert swapped.ingredients[2].amount is None


def test_a_swap_of_what_is_not_there_is_refused() -> None:
    with pytest.raises(QuantityError, match="pecan"):
        swap(BATTER, (SEEDS,))


def test_two_swaps_of_one_ingredient_contradict_each_other() -> None:
    with pytest.raises(QuantityError, match="choose one"):
        swap(BATTER, (OIL, Swap(SwapId("lard"), "Butter", "lard")))


@pytest.mark.parametrize(
    ("use", "ratio"), [("oil", 0.0), ("oil", -1.0), ("oil", float("nan")), ("Butter", 1.0), ("", 1.0)]
)
def test_a_swap_that_makes_no_sense_is_refused(use: str, ratio: float) -> None:
    with pytest.raises(QuantityError):
        Swap(SwapId("odd"), "butter", use, ratio)
