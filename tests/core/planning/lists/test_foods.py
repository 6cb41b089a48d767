"""Which ingredients are one thing to buy. What is the same food: common practice, no source."""

import pytest

from cookout.core.kitchen.recipe import Ingredient
from cookout.core.planning.lists.foods import food_key, food_of, size_of_each


@pytest.mark.parametrize(
    ("one", "other"),
    [
        ("onion", "Onions"),
        ("diced onion", "chopped onions"),
        ("tomatoes", "tomato"),
        ("chickpeas", "chickpea"),
        ("flour", "all-purpose flour"),
        ("icing sugar", "powdered sugar"),
        ("cold butter", "butter"),
        ("finely grated carrots", "carrot"),
        ("spring onions", "scallion"),
    ],
)
def test_number_and_the_cooks_work_make_no_other_food(one: str, other: str) -> None:
    assert food_of(one) == food_of(other)


@pytest.mark.parametrize(
    ("one", "other"),
    [
        ("unsalted butter", "butter"),
        ("sunflower oil", "oil"),
        ("red onion", "onion"),
        ("fresh thyme", "thyme"),
        ("smoked paprika", "paprika"),
        ("brown sugar", "sugar"),
        ("coconut milk", "milk"),
        ("bread flour", "all-purpose flour"),
    ],
)
def test_what_is_bought_apart_stays_apart(one: str, other: str) -> None:
    assert food_of(one) != food_of(other)


def test_a_can_has_a_key_of_its_own_and_a_name_in_any_script_has_one() -> None:
    assert food_key(Ingredient("tomatoes", 6, "kg")) == "tomato"
    assert food_key(Ingredient("tomato", 2, "can")) == "tomato--can"
    assert food_key(Ingredient("łosoś", 1, "kg")) == "łosoś"
    assert food_key(Ingredient("chopped", 1)) == "chopped"


@pytest.mark.parametrize(
    ("note", "size"), [("14 oz each", "14 oz"), ("drained, 400 g each", "400 g"), ("each cut", "")]
)
def test_the_size_of_a_can_is_read_from_its_note(note: str, size: str) -> None:
    assert size_of_each(note) == size
