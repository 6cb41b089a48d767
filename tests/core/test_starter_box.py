"""The recipes that come with the program: complete for planning, understood line by line, and sane on the scales."""

import tomllib
from math import pi

import pytest

from cookout.core.eventfile.recipefile import read_recipe, write_recipe_file
from cookout.core.fire.foods import FOODS
from cookout.core.kitchen.ingredients import Parsed, parse_line
from cookout.core.kitchen.recipe import Bake, FoodKind, Ingredient, LoadKind, Recipe, StepKind
from cookout.core.kitchen.scaling import batter_grams
from cookout.core.planning.check import check, check_event
from cookout.core.planning.heat import baking_for, coals_for
from cookout.core.planning.pipeline import plan_event
from cookout.core.planning.result import Limits, Status
from cookout.core.quantities import celsius_to_fahrenheit
from cookout.core.safety.allergens import dish_allergens
from tests.core.starter_box import NAMES, starter, starter_text, supper_of

LIMITS = Limits(seconds=2.5, workers=1, seed=1)
LOOK_FOR_F = {  # USDA-FSIS safe minimum internal temperatures (read in mirrors); stews as its casseroles.
    FoodKind.POULTRY: 165,
    FoodKind.WHOLE_MEAT: 145,
    FoodKind.EGGS: 160,
    FoodKind.FISH: 145,
    FoodKind.STEW_AND_BEANS: 165,
}
PAN_BREADS = ("camp-cornbread", "campfire-loaf", "butter-rolls", "onion-flatbread")


def bakes_of(recipe: Recipe) -> list[Bake]:
    """The bakes of a recipe."""
    return [step.bake for step in recipe.steps if step.bake is not None]


def grams_of(recipe: Recipe, *names: str) -> float:
    """Grams of those ingredients, each at its first line: a cake's own, not its icing's."""
    by_name: dict[str, Ingredient] = {}
    for ingredient in recipe.ingredients:
        by_name.setdefault(ingredient.name, ingredient)
    mass, unknown = batter_grams(tuple(by_name[name] for name in names))
    assert unknown == ()
    return mass


def test_the_box_holds_what_a_cookout_wants() -> None:
    recipes = [starter(name) for name in NAMES]
    loads = {bake.load.food for recipe in recipes for bake in bakes_of(recipe) if bake.load is not None}
    assert len(recipes) >= 12
    assert sum(recipe.icing is not None for recipe in recipes) >= 2
    assert {
        LoadKind.LEAN_BREAD,
        LoadKind.ENRICHED_DOUGH,
        LoadKind.CORNBREAD,
        LoadKind.CAKE,
        LoadKind.CARROT_CAKE,
        LoadKind.STEW,
        LoadKind.BEANS,
        LoadKind.ROAST,
        LoadKind.POULTRY,
        LoadKind.COBBLER,
        LoadKind.POTATOES,
        LoadKind.CASSEROLE,
        LoadKind.FISH,
    } <= loads


@pytest.mark.parametrize("name", NAMES)
def test_a_starter_recipe_bears_the_id_of_its_file_and_is_written_and_read_back_equal(name: str) -> None:
    recipe = starter(name)
    assert recipe.id == name
    assert read_recipe(write_recipe_file(recipe, "us"), "again.toml") == recipe


@pytest.mark.parametrize("people", [12, 24])
@pytest.mark.parametrize("name", NAMES)
def test_a_starter_recipe_alone_is_planned_for_a_dozen_and_for_two(name: str, people: int) -> None:
    outcome = plan_event(supper_of(starter(name), people), LIMITS)
    assert outcome.result.status in (Status.PROVED_BEST, Status.BEST_FOUND), outcome.record.obstacles
    assert outcome.result.plan is not None
    assert check(outcome.expanded.problem, outcome.result.plan) == ()
    assert check_event(outcome.expanded, outcome.result.plan) == ()
    said = [f"{warning.about}: {warning.text}" for warning in outcome.record.warnings]
    assert not [text for text in said if name in text or "refused" in text.lower()], said


@pytest.mark.parametrize("name", NAMES)
def test_every_ingredient_line_of_a_starter_recipe_is_understood_without_a_question(name: str) -> None:
    lines = tomllib.loads(starter_text(name))["recipe"]["ingredients"]
    assert all(isinstance(line, str) and isinstance(parse_line(line), Parsed) for line in lines)


@pytest.mark.parametrize("name", NAMES)
def test_what_allergens_a_starter_recipe_holds_is_known_and_declared(name: str) -> None:
    recipe = starter(name)
    told = dish_allergens(((each.name, each.note) for each in recipe.ingredients), recipe.allergens)
    assert (told.not_known, told.unknown, told.undeclared) == ((), (), ())
    assert {allergen.value for allergen in told.contains} == set(recipe.allergens)


@pytest.mark.parametrize("name", NAMES)
def test_every_bake_of_a_starter_recipe_can_be_reckoned_and_agrees_with_the_minutes_written(name: str) -> None:
    recipe = starter(name)
    event = supper_of(recipe, 12)
    for step in recipe.steps:
        if step.bake is None:
            continue
        assert step.bake.load is not None
        baking = baking_for(event, step.bake, step.minutes, event.weather, coals_for(event, step.bake, event.weather))
        assert baking.modelled
        assert baking.minutes.least <= step.minutes.most, (baking.minutes, step.minutes)
        assert step.minutes.least <= baking.minutes.most, (baking.minutes, step.minutes)


@pytest.mark.parametrize("name", NAMES)
def test_a_note_says_the_centre_that_the_published_table_asks_for(name: str) -> None:
    recipe = starter(name)
    wanted = LOOK_FOR_F.get(recipe.food)
    notes = " ".join(step.note for step in recipe.steps if step.bake is not None)
    assert all(step.note for step in recipe.steps if step.bake is not None)
    if wanted is not None:
        told = [int(word) for word in notes.replace(",", " ").split() if word.isdigit() and 100 < int(word) < 250]
        assert told
        assert min(told) >= wanted
    for bake in bakes_of(recipe):
        assert bake.load is not None
        if wanted is not None and bake.load.done_c is not None:
            assert celsius_to_fahrenheit(bake.load.done_c) >= wanted


@pytest.mark.parametrize("name", PAN_BREADS)
def test_the_depth_in_the_oven_is_that_of_what_was_weighed(name: str) -> None:
    # Density of raw dough and batter as the bake model has it (`fire.foods`, its standing told there).
    recipe = starter(name)
    (bake,) = bakes_of(recipe)
    assert bake.load is not None
    mass, _ = batter_grams(recipe.ingredients)
    area = pi / 4 * bake.load.pan_m**2
    depth = mass / 1000 / recipe.pans / (FOODS[bake.load.food.value].density_kg_m3 * area)
    assert depth == pytest.approx(bake.load.depth_m, rel=0.15)


@pytest.mark.parametrize(
    ("name", "flour", "liquids", "least", "most"),
    [
        # Water by the flour's weight, milk and egg counted whole. Ranges of the trade, from memory.
        ("campfire-loaf", "bread flour", ("lukewarm water",), 0.62, 0.75),
        ("onion-flatbread", "bread flour", ("lukewarm water",), 0.70, 0.82),
        ("butter-rolls", "bread flour", ("lukewarm milk", "egg"), 0.58, 0.72),
        ("cinnamon-rolls", "all-purpose flour", ("lukewarm milk", "egg"), 0.58, 0.75),
    ],
)
def test_doughs_are_as_wet_as_such_doughs_are(
    name: str, flour: str, liquids: tuple[str, ...], least: float, most: float
) -> None:
    recipe = starter(name)
    assert least <= grams_of(recipe, *liquids) / grams_of(recipe, flour) <= most
    assert 0.01 <= grams_of(recipe, "salt") / grams_of(recipe, flour) <= 0.022


@pytest.mark.parametrize(
    ("name", "liquids"),
    [("cocoa-layer-cake", ("eggs", "buttermilk")), ("pumpkin-layer-cake", ("eggs", "canned pumpkin"))],
)
def test_layer_cakes_keep_sugar_flour_and_liquid_in_balance(name: str, liquids: tuple[str, ...]) -> None:
    # Sugar 1 to 1.4 times the flour, liquid no less than the sugar: high-ratio cakes, from memory.
    recipe = starter(name)
    flour, sugar = grams_of(recipe, "all-purpose flour"), grams_of(recipe, "sugar")
    assert 1.0 <= sugar / flour <= 1.45
    assert grams_of(recipe, *liquids) >= sugar


@pytest.mark.parametrize("name", NAMES)
def test_layers_cool_before_they_are_iced(name: str) -> None:
    recipe = starter(name)
    ices = [step for step in recipe.steps if step.kind is StepKind.ICE]
    for step in ices:
        before = [recipe.step(after.step) for after in step.after]
        assert any(earlier.kind is StepKind.COOL for earlier in before) or any(after.least for after in step.after)
