"""A draft and a person's answers make a recipe, or all that is still missing, by the rules of recipe files."""

from copy import deepcopy
from typing import Any

import pytest

from cookout.core.errors import EventFileError
from cookout.core.eventfile.completing import complete, id_from, proposal_of
from cookout.core.kitchen.interchange import draft_of
from cookout.core.kitchen.plaintext import draft_from_text
from cookout.core.kitchen.recipe import After, FoodKind, Keeps, Minutes, StepId

CAKE = """Spice cake
Makes 12 servings
2 cups flour
2 tsp baking powder
3 eggs
1,5 l milk

Preheat oven to 350°F. Grease and line two 9-inch round pans. Mix everything for 5 minutes. Bake for 30 to 35 minutes.
Frost the cake.
"""


def missing(table: Any) -> list[str]:
    """Places of a table that still want an answer."""
    with pytest.raises(EventFileError) as told:
        complete(table)
    assert all(fault.remedy for fault in told.value.faults)
    return [fault.where.removeprefix("recipe: recipe.") for fault in told.value.faults]


def test_just_what_could_not_be_read_is_asked() -> None:
    table = proposal_of(draft_from_text(CAKE), "us").table
    assert missing(table) == ["ingredients[4]", "steps[2].bake.oven", "steps[3].minutes"]


def test_the_answers_make_it_a_recipe() -> None:
    table: Any = deepcopy(proposal_of(draft_from_text(CAKE), "us").table)
    table["ingredients"][3] = "1.5 cups milk"
    table["steps"][1]["bake"]["oven"] = "12 in"
    table["steps"][2]["minutes"] = [15, 20, 25]
    recipe = complete(table)
    assert (recipe.id, recipe.name, recipe.serves, recipe.pans) == ("spice-cake", "Spice cake", 12, 2)
    assert (recipe.food, recipe.keeps, recipe.held) == (FoodKind.BREAD_AND_CAKE, Keeps(air=240), "air")
    assert [step.minutes for step in recipe.steps] == [Minutes(5, 5, 5), Minutes(30, 32, 35), Minutes(15, 20, 25)]
    assert recipe.steps[1].after == (After(StepId("step-1"), 0, 30),)
    assert len(recipe.ingredients) == 4


def test_every_proposal_says_where_it_comes_from() -> None:
    found = proposal_of(draft_from_text(CAKE), "us")
    assert found.left_out == ("Preheat oven to 350°F.",)
    assert found.why["steps[2].minutes"] == "read in its words"
    assert found.why["steps[2].bake.temperature"] == "the one temperature that the recipe names"
    assert found.why["keeps"] == "usual for this kind of food, our own figure"
    assert "steps[3].minutes" not in found.why


def test_an_empty_draft_asks_for_everything_that_must_be_there() -> None:
    asked = missing(proposal_of(draft_of({"@type": "Recipe"}), "us").table)
    assert sorted(asked) == ["food", "keeps", "name", "serves", "steps"]


def test_temperatures_are_proposed_in_the_units_of_the_reader() -> None:
    table: Any = proposal_of(draft_from_text("Beans\n2 cans beans\n\nSimmer at 160 C for 40 minutes."), "metric").table
    assert table["steps"][0]["bake"]["temperature"] == "160 C"


@pytest.mark.parametrize(
    ("name", "made"),
    [
        ("Vesper's Apple Cake", "vespers-apple-cake"),
        ("Crème brûlée à la Ofélia", "creme-brulee-a-la-ofelia"),
        ("  ", "recipe"),
        ("寿司", "recipe"),
        ("x" * 90, "x" * 40),
    ],
)
def test_an_id_is_made_of_the_name(name: str, made: str) -> None:
    assert id_from(name) == made


def test_an_id_that_is_taken_gets_a_number() -> None:
    assert id_from("Loaf", ("loaf", "loaf-2")) == "loaf-3"
