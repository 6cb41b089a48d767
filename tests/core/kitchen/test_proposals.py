"""What planning needs is proposed from a draft's words, each with its reason; the rest is left open."""

import pytest

from cookout.core.kitchen.drafts import DraftRecipe
from cookout.core.kitchen.foodkinds import USUAL, propose_food
from cookout.core.kitchen.interchange import draft_of
from cookout.core.kitchen.proposals import ProposedStep, propose
from cookout.core.kitchen.recipe import BakeMethod, FoodKind, StepKind


def draft(*steps: object, **more: object) -> DraftRecipe:
    """A draft of those steps, read as linked data."""
    return draft_of({"@type": "Recipe", "name": "Cake", "recipeInstructions": list(steps), **more})


def steps_of(*steps: object, **more: object) -> tuple[ProposedStep, ...]:
    """What is proposed for those steps."""
    return propose(draft(*steps, **more)).steps


def test_a_bake_in_words_is_a_bake_with_minutes_heat_and_first_look_in() -> None:
    (step,) = steps_of("Bake in a 12-inch oven at 350 °F for 30 to 35 minutes.")
    assert (step.kind, step.minutes, step.look_in_from) == (StepKind.BAKE, (30, 32, 35), 24)
    assert (step.method, step.oven_inches) == (BakeMethod.BAKE, 12)
    assert step.temperature_c == pytest.approx(176.67, abs=0.01)
    assert set(step.why) == {"minutes", "temperature", "oven", "look_in_from"}


def test_what_is_not_told_is_left_open() -> None:
    (step,) = steps_of("Bake until golden.")
    assert (step.minutes, step.temperature_c, step.oven_inches, step.look_in_from) == (None, None, None, None)
    assert "minutes" not in step.why


def test_a_step_that_does_several_things_is_parted_where_the_food_is_left_alone() -> None:
    steps = steps_of("Whisk the eggs. Add flour. Bake for 30 minutes. Cool for 20 minutes. Ice the cake.")
    assert [step.kind for step in steps] == [StepKind.MIX, StepKind.BAKE, StepKind.COOL, StepKind.ICE]
    assert steps[0].note == "Whisk the eggs. Add flour."


def test_heating_a_house_oven_and_serving_are_no_steps_but_their_temperature_counts() -> None:
    found = propose(draft("Preheat the oven to 350 °F.", "Stir it.", "Bake for 20 minutes.", "Serve warm."))
    assert found.left_out == ("Preheat the oven to 350 °F.", "Serve warm.")
    assert found.steps[-1].temperature_c == pytest.approx(176.67, abs=0.01)
    assert found.steps[-1].why["temperature"] == "the one temperature that the recipe names"


def test_two_temperatures_in_a_recipe_are_asked_about() -> None:
    steps = steps_of("Bake at 400 °F for 10 minutes.", "Bake at 350 °F for 20 minutes.", "Bake for 5 minutes.")
    assert [None if step.temperature_c is None else round(step.temperature_c) for step in steps] == [204, 177, None]


def test_layers_in_pans_of_their_own_bake_and_cool_pan_by_pan() -> None:
    found = propose(draft("Line two 9-inch round cake pans.", "Bake for 30 minutes.", "Cool for 40 minutes.", "Stack."))
    assert (found.pans, found.pan) == (2, "9 in round")
    assert [step.scope for step in found.steps] == ["", "pan", "pan", ""]


def test_the_whole_time_of_the_source_goes_to_the_one_step_that_has_none() -> None:
    steps = steps_of("Mix all.", "Bake.", prepTime="PT15M", cookTime="PT40M")
    assert [step.minutes for step in steps] == [(15, 15, 15), (40, 40, 40)]
    several = steps_of("Mix all.", "Stir again.", "Bake.", prepTime="PT15M")
    assert [step.minutes for step in several] == [None, None, None]


def test_a_batter_with_baking_powder_is_not_to_stand_long() -> None:
    with_powder = steps_of("Mix all.", "Bake it.", recipeIngredient=["1 tsp baking powder"])
    assert with_powder[1].most_wait == 30
    assert steps_of("Mix all.", "Bake it.", recipeIngredient=["1 tsp yeast"])[1].most_wait is None


@pytest.mark.parametrize(
    ("text", "method"),
    [
        ("Simmer for an hour.", BakeMethod.SIMMER),
        ("Roast for an hour.", BakeMethod.ROAST),
        ("Fry for 5 minutes.", BakeMethod.FRY),
        ("Bake until brown on top.", BakeMethod.BAKE),
    ],
)
def test_how_it_is_heated_is_read_from_the_verb(text: str, method: BakeMethod) -> None:
    assert steps_of(text)[0].method is method


COOKED = frozenset({StepKind.MIX, StepKind.BAKE})


@pytest.mark.parametrize(
    ("lines", "kinds", "food"),
    [
        ("2 lb chicken thighs|3 cups flour", COOKED, FoodKind.POULTRY),
        ("2 cups chicken broth|1 lb potatoes", COOKED, FoodKind.COOKED_VEGETABLES),
        ("1 lb ground beef|2 cans beans", COOKED, FoodKind.GROUND_MEAT),
        ("1 lb breakfast sausage|12 eggs", COOKED, FoodKind.GROUND_MEAT),
        ("3 lb beef chuck|2 cans beans", COOKED, FoodKind.STEW_AND_BEANS),
        ("3 lb pork loin", COOKED, FoodKind.WHOLE_MEAT),
        ("2 lb trout", COOKED, FoodKind.FISH),
        ("4 cans beans", COOKED, FoodKind.STEW_AND_BEANS),
        ("2 tsp vanilla beans|2 cups flour", COOKED, FoodKind.BREAD_AND_CAKE),
        ("6 cups peaches|1 cup sugar|1 cup flour", COOKED, FoodKind.FRUIT),
        ("2 apples, grated|2 cups flour|1 cup sugar|2 eggs", COOKED, FoodKind.BREAD_AND_CAKE),
        ("12 eggs|1 cup milk", COOKED, FoodKind.EGGS),
        ("2 cups flour|8 oz cream cheese", COOKED | {StepKind.ICE}, FoodKind.CREAM_ICING),
        ("2 lb potatoes|1 onion", COOKED, FoodKind.COOKED_VEGETABLES),
        ("1 head cabbage", frozenset({StepKind.PREPARE}), FoodKind.RAW_VEGETABLES),
        ("3 melons", frozenset({StepKind.PREPARE}), FoodKind.FRUIT),
        ("1 lb hamburger|1 onion", COOKED, FoodKind.GROUND_MEAT),
        ("1 lb ground round|2 onions", COOKED, FoodKind.GROUND_MEAT),
        ("2 hot dog buns|2 cups flour", COOKED, FoodKind.BREAD_AND_CAKE),
        ("2 lb mussels|4 potatoes", COOKED, FoodKind.FISH),
        ("1 Tbsp fish sauce|4 potatoes", COOKED, FoodKind.COOKED_VEGETABLES),
        ("1 lb stew meat|2 potatoes", COOKED, FoodKind.WHOLE_MEAT),
        ("4 oz goat cheese|2 potatoes", COOKED, FoodKind.COOKED_VEGETABLES),
        ("6 pork chops|2 apples", frozenset({StepKind.PREPARE}), None),
        ("1 cup house blend", COOKED, None),
    ],
)
def test_the_kind_of_food_is_proposed_from_the_riskiest_ingredient_named(
    lines: str, kinds: frozenset[StepKind], food: FoodKind | None
) -> None:
    found = propose_food(tuple(lines.split("|")), kinds, simmers=False)
    assert (None if found is None else found.food) == food
    if found is not None:
        assert found.why


def test_every_kind_of_food_has_a_usual_way_to_wait_that_it_keeps() -> None:
    assert set(USUAL) == set(FoodKind)
    for usual in USUAL.values():
        kept = {"hot": usual.keeps.hot, "cold": usual.keeps.cold, "air": usual.keeps.air}[usual.held]
        assert kept is not None
        assert kept >= usual.rests_minutes
