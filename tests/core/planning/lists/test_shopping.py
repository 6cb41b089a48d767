"""The shopping list of the supper, worked by hand from its recipes, and what holds for any event.

Grams of a US cup: USDA SR28.
"""

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from cookout.core.kitchen.recipe import Ingredient
from cookout.core.kitchen.replacement import Swap, SwapId
from cookout.core.planning.event import Dish, Event
from cookout.core.planning.lists import shopping
from cookout.core.planning.lists.aisles import AisleKind
from cookout.core.planning.lists.shopping import Line
from tests.core.planning import build


def lines(event: Event, units: str = "us") -> dict[str, Line]:
    """All lines by their key."""
    return {line.key: line for aisle in shopping(event, units) for line in aisle.lines}


def with_ingredients(*each: tuple[Ingredient, ...], people: int = 8) -> Event:
    """An event of one dish for each list of ingredients; a batch is for eight."""
    recipes = tuple(replace(build.recipe(f"r{n}"), ingredients=one) for n, one in enumerate(each))
    return build.event(recipes, servings=(build.serving(people=people),))


def test_the_supper_worked_by_hand(supper: Event) -> None:
    """Eight people, recipes for eight: one batch each. 6 Tbsp of butter are 6/16 x 227 = 85.1 g, bought as 90."""
    us = {key: (line.text, line.also) for key, line in lines(supper).items()}
    assert us["smoked-sausage"] == ("2 lb", "")
    assert us["white-bean--can"] == ("4 cans", "")
    assert us["tomato--can"] == ("1 can", "")
    assert us["onion"] == ("2", "")
    assert us["salt"] == ("to taste", "")
    assert us["all-purpose-flour"] == ("1 1/2 cups", "7 oz")  # 187.5 g are 6.61 oz
    assert us["butter"] == ("6 Tbsp", "")
    assert us["sour-cream"] == ("1 cup", "9 oz")  # 230 g are 8.11 oz
    metric = {key: line.text for key, line in lines(supper, "metric").items()}
    assert metric["smoked-sausage"] == "925 g"  # 907.2 g
    assert metric["all-purpose-flour"] == "190 g"  # 187.5 g
    assert metric["butter"] == "90 g"
    assert metric["milk"] == "180 mL"  # 177.4 mL
    assert [aisle.kind for aisle in shopping(supper, "us")] == [
        AisleKind.CANS, AisleKind.BAKING, AisleKind.OILS, AisleKind.SPICES, AisleKind.PRODUCE, AisleKind.DAIRY,
        AisleKind.MEAT,
    ]  # fmt: skip


def test_every_dish_says_how_much_it_wants(demonstration: Event) -> None:
    salt = lines(demonstration)["salt"]
    assert [(want.dish, want.text) for want in salt.wants] == [
        ("show-cake", "1 tsp"), ("twin-cake", "1 tsp"), ("raw-batch", "1 tsp"), ("slaw", "1 Tbsp"),
    ]  # fmt: skip
    assert salt.text == "2 Tbsp"


def test_dishes_of_one_recipe_are_told_apart_by_their_own_names(demonstration: Event) -> None:
    names = [want.dish_name for want in lines(demonstration)["salt"].wants]
    assert names == [
        "Carrot layer cake (show-cake)", "Carrot layer cake (twin-cake)", "Carrot layer cake (raw-batch)", "Apple slaw",
    ]  # fmt: skip


def test_a_dish_that_is_not_finished_says_so_where_it_wants_something(demonstration: Event) -> None:
    wants = {want.dish: want.up_to for want in lines(demonstration)["powdered-sugar"].wants}
    assert wants == {"show-cake": "", "twin-cake": "", "raw-batch": "Mix the batter"}


def test_whole_batches_are_bought_for(festival: Event) -> None:
    """Cornbread for 14 and 40 people: 3 batches of 3 eggs; egg bake for 15 and 30: 2 of 24."""
    wants = {want.dish: want.text for want in lines(festival, "metric")["egg"].wants}
    assert (wants["cornbread"], wants["egg-bake"]) == ("9", "48")


def test_a_swap_is_bought_and_what_it_replaces_is_not() -> None:
    eight = build.recipe("loaf")
    loaf = replace(
        eight, ingredients=(Ingredient("butter", 1, "cup"),), swaps=(Swap(SwapId("oil"), "butter", "oil", 0.75),)
    )
    dish = replace(build.dish("loaf"), swaps=(SwapId("oil"),))
    assert {key: line.text for key, line in lines(build.event((loaf,), (dish,))).items()} == {"oil": "3/4 cup"}


def test_one_food_of_two_dishes_is_one_line_under_the_plural_that_a_recipe_writes() -> None:
    event = with_ingredients((Ingredient("onion", 2),), (Ingredient("Onions", 3, "", "sliced"),))
    assert [(line.name, line.text) for line in lines(event).values()] == [("Onions", "5")]


def test_what_cannot_be_added_stands_side_by_side_with_what_is_to_taste() -> None:
    event = with_ingredients(
        (Ingredient("onion", 4), Ingredient("onion", 600, "g")), (Ingredient("onion", None, "", "to taste"),)
    )
    line = lines(event, "metric")["onion"]
    assert (line.text, line.also, len(line.wants)) == ("600 g and 4 and some to taste", "", 3)


def test_an_event_without_ingredients_has_nothing_to_buy() -> None:
    assert shopping(build.event(), "us") == ()


def test_lines_of_an_aisle_stand_by_their_names(festival: Event) -> None:
    for aisle in shopping(festival, "metric"):
        names = [line.name.lower() for line in aisle.lines]
        assert names == sorted(names)


@pytest.mark.parametrize("times", [2, 7])
def test_keys_survive_more_people_other_units_and_another_order(festival: Event, times: int) -> None:
    more = replace(
        festival,
        servings=tuple(replace(each, people=each.people * times) for each in festival.servings),
        dishes=tuple(reversed(festival.dishes)),
    )
    assert set(lines(more, "us")) == set(lines(festival, "metric"))


units_of = st.sampled_from(["cup", "tsp", "g", "lb", "", "can"])
ingredients = st.builds(
    Ingredient,
    st.sampled_from(["onion", "onions", "flour", "plain flour", "egg", "salt"]),
    st.floats(0.25, 50),
    units_of,
)


@given(st.lists(st.lists(ingredients, min_size=1, max_size=4), min_size=1, max_size=4), st.integers(1, 40))
def test_totals_are_the_sums_over_the_dishes_and_grow_with_the_batches(
    menu: list[list[Ingredient]], people: int
) -> None:
    """Whole batches of eight: twice as many batches make every exact total twice as large."""
    batches = -(-people // 8)
    one = lines(with_ingredients(*map(tuple, menu), people=8))
    many = lines(with_ingredients(*map(tuple, menu), people=people))
    assert one.keys() == many.keys()
    for key, line in one.items():
        assert sum(len(each) for each in menu) >= len(line.wants) >= len(line.buys)
        once = {(each.exact.unit, n): each.exact.number for n, each in enumerate(line.buys)}
        often = {(each.exact.unit, n): each.exact.number for n, each in enumerate(many[key].buys)}
        assert often == pytest.approx({unit: number * batches for unit, number in once.items()})


def test_every_ingredient_of_every_dish_is_wanted_somewhere(festival: Event) -> None:
    wanted = [(want.dish, want.name) for line in lines(festival, "us").values() for want in line.wants]
    there = [(dish.id, each.name) for dish in festival.dishes for each in _recipe(festival, dish)]
    assert sorted(wanted) == sorted(there)


def _recipe(event: Event, dish: Dish) -> tuple[Ingredient, ...]:
    return event.recipe_of(dish).ingredients
