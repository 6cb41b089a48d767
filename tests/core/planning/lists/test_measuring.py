"""Measuring out before the day. How each kind is kept: common practice, no source."""

from dataclasses import replace

import pytest

from cookout.core.kitchen.recipe import Ingredient, StepKind
from cookout.core.planning.event import Event
from cookout.core.planning.lists import measure_out
from cookout.core.planning.lists.measuring import Bag, Kept, kept_how, part_of
from tests.core.planning import build


def bags(event: Event, units: str = "us") -> dict[str, Bag]:
    """All bags by their key."""
    return {bag.key: bag for dish in measure_out(event, units) for bag in dish.bags}


@pytest.mark.parametrize(
    ("ingredient", "kept"),
    [
        (Ingredient("all-purpose flour", 2, "cup"), Kept.DRY),
        (Ingredient("vanilla", 1, "tsp"), Kept.LIQUID),
        (Ingredient("molasses", 1, "cup"), Kept.LIQUID),
        (Ingredient("butter", 6, "Tbsp", "soft"), Kept.COLD),
        (Ingredient("potato", 2.5, "kg", "boiled the day before, kept cold, diced"), Kept.COLD),
        (Ingredient("short pasta", 1, "kg", "soaked in cold water for an hour"), Kept.DRY),
        (Ingredient("cooked rice", 2, "cup"), Kept.COLD),
        (Ingredient("uncooked rice", 2, "cup"), Kept.DRY),
        (Ingredient("cooked black beans", 2, "cup"), Kept.COLD),
        (Ingredient("boiled potatoes", 4), Kept.COLD),
        (Ingredient("frozen peas", 1, "lb"), Kept.COLD),
        (Ingredient("fresh pasta", 1, "lb"), Kept.COLD),
        (Ingredient("tofu", 400, "g"), Kept.COLD),
        (Ingredient("brussels sprouts", 400, "g"), Kept.FRESH),
        (Ingredient("banana", 3, "", "ripe, mashed"), Kept.FRESH),
        (Ingredient("cooked beans", 2, "can"), Kept.CLOSED),
        (Ingredient("tomato", 2, "can"), Kept.CLOSED),
        (Ingredient("tomato", 2, "kg"), Kept.FRESH),
        (Ingredient("moon dust", 2, "kg"), Kept.UNKNOWN),
    ],
)
def test_what_is_cold_stays_cold_and_what_is_dry_goes_into_bags(ingredient: Ingredient, kept: Kept) -> None:
    assert kept_how(ingredient) is kept
    assert kept.how.endswith(".")


@pytest.mark.parametrize(
    ("note", "part"),
    [
        ("soft, for the icing", "icing"),
        ("for the top crust", "top crust"),
        ("for an hour", ""),
        ("for rolling out", ""),
        ("chopped", ""),
    ],
)
def test_only_a_note_tells_what_an_ingredient_is_for(note: str, part: str) -> None:
    assert part_of(note) == part


def test_the_supper_worked_by_hand(supper: Event) -> None:
    """6 Tbsp of butter are a quarter cup and 2 Tbsp; nothing is poured together."""
    found = bags(supper)
    assert [(each.name, each.text) for each in found["cobbler.dry"].measures] == [
        ("sugar", "3/4 cup"), ("cornstarch", "2 Tbsp"), ("all-purpose flour", "1 1/2 cups"),
        ("baking powder", "1 3/4 tsp"),
    ]  # fmt: skip
    assert [each.text for each in found["cobbler.cold"].measures] == ["1/4 cup plus 2 Tbsp", "3/4 cup"]
    assert [each.text for each in found["bean-pot.dry"].measures] == ["2 tsp", "to taste"]


def test_amounts_are_for_one_batch_and_batches_are_counted(festival: Event) -> None:
    """Cornbread for 14 is made three times for 40, with 3 eggs each time."""
    cornbread = next(dish for dish in measure_out(festival, "metric") if dish.dish == "cornbread")
    assert cornbread.batches == 3
    assert {each.name: each.text for bag in cornbread.bags for each in bag.measures}["egg"] == "3"


def test_what_belongs_to_the_icing_is_bagged_apart_and_the_step_named() -> None:
    cake = build.recipe("cake", (build.step("mix"), replace(build.step("ice", StepKind.ICE), name="Beat the icing")))
    parts = (Ingredient("sugar", 1, "cup"), Ingredient("powdered sugar", 4, "cup", "for the icing"))
    found = bags(build.event((replace(cake, ingredients=parts),)))
    assert list(found) == ["cake.dry", "cake.icing.dry"]
    assert (found["cake.icing.dry"].part, found["cake.icing.dry"].step) == ("icing", "Beat the icing")
    assert (found["cake.dry"].part, found["cake.dry"].step) == ("", "")


def test_rounding_that_matters_is_told_and_a_hair_is_not() -> None:
    loaf = replace(build.recipe("loaf"), ingredients=(Ingredient("butter", 80, "g"), Ingredient("milk", 1, "cup")))
    (bag,) = bags(build.event((loaf,))).values()
    assert [bool(each.said) for each in bag.measures] == [True, False]
    assert "less than" in bag.measures[0].said


def test_a_dish_that_is_not_finished_says_how_far_it_is_made(demonstration: Event) -> None:
    told = {dish.dish: dish.up_to for dish in measure_out(demonstration, "us")}
    assert (told["raw-batch"], told["show-cake"]) == ("Mix the batter", "")


def test_every_ingredient_stands_in_one_bag(festival: Event) -> None:
    for dish in measure_out(festival, "us"):
        wanted = sorted(each.name for each in festival.recipe_of(festival.dish(dish.dish)).ingredients)  # type: ignore[arg-type]
        assert sorted(each.name for bag in dish.bags for each in bag.measures) == wanted
