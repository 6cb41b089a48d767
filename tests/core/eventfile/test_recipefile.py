"""One recipe as a file of its own: read, refused with every fault, written, and read back as the same recipe."""

from typing import Any

import pytest
import tomli_w
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from cookout.core.errors import EventFileError, Fault
from cookout.core.eventfile import read_event, read_recipe, schema, write_recipe_file
from tests.core.eventfile.files import FIXTURE_NAMES, fixture_text

LOAF = """
[recipe]
id = "loaf"
name = "Loaf"
serves = 8
food = "bread_and_cake"
keeps = { air = 300 }
ingredients = ["4 cups bread flour", "1 1/2 cups water", "1 tsp salt"]

[[recipe.steps]]
id = "mix"
name = "Mix"
kind = "mix"
minutes = 10
gear = [{ kind = "bowl" }]

[[recipe.steps]]
id = "bake"
name = "Bake"
minutes = [30, 35, 40]
after = [{ step = "mix", least = 50, most = 90 }]
bake = { oven = "12 in", temperature = "400 F", look_in_from = 25 }
"""


def faults_of(text: str) -> dict[str, Fault]:
    """The faults of a recipe file that has some, by their place."""
    with pytest.raises(EventFileError) as told:
        read_recipe(text, "loaf.toml")
    return {fault.where.removeprefix("loaf.toml: "): fault for fault in told.value.faults}


def test_a_recipe_file_holds_one_recipe_with_its_id() -> None:
    recipe = read_recipe(LOAF, "loaf.toml")
    assert (recipe.id, recipe.name, recipe.serves) == ("loaf", "Loaf", 8)
    assert [step.id for step in recipe.steps] == ["mix", "bake"]
    assert recipe.ingredients[1].amount == 1.5


@pytest.mark.parametrize("units", ["us", "metric"])
@pytest.mark.parametrize("name", FIXTURE_NAMES)
def test_every_recipe_of_our_events_is_a_file_that_reads_back_nearly_or_wholly_equal(name: str, units: str) -> None:
    for recipe in read_event(fixture_text(name), f"{name}.toml").recipes:
        text = write_recipe_file(recipe, units)
        again = read_recipe(text, "again.toml")
        assert write_recipe_file(again, units) == text
        assert again.ingredients == recipe.ingredients
        assert [step.minutes for step in again.steps] == [step.minutes for step in recipe.steps]


def test_what_is_wrong_is_told_all_at_once_by_its_place_in_the_file() -> None:
    faulty = LOAF.replace("serves = 8", "serves = 0").replace('"1 1/2 cups water"', '"1,5 l water"')
    faulty = faulty.replace('step = "mix"', 'step = "mixing"').replace('kind = "bowl"', 'kind = "oven"')
    faults = faults_of(faulty)
    assert list(faults) == [
        "recipe.serves",
        "recipe.ingredients[2]",
        "recipe.steps[1].gear[1].kind",
        "recipe.steps[2].after[1]",
    ]
    assert "mix" in faults["recipe.steps[2].after[1]"].remedy


@pytest.mark.parametrize(
    ("text", "where", "word"),
    [
        ("", "recipe", "missing"),
        ("[recipes.loaf]\nname = 'x'", "recipes", "no such table"),
        (LOAF.replace('id = "loaf"\n', ""), "recipe.id", "missing"),
        (LOAF.replace('id = "loaf"', 'id = "a loaf"'), "recipe.id", "no id"),
        (LOAF.replace('id = "loaf"', "id = 7"), "recipe.id", "no text"),
        (LOAF.replace('name = "Loaf"', "nam = 1"), "recipe.nam", "no such key"),
        ("recipe = 3", "recipe", "whole number"),
        (LOAF.replace('kind = "bowl"', 'kind = "blue-bowl"'), "recipe.steps[1].gear[1].kind", "no gear"),
    ],
)
def test_a_fault_names_its_place_and_a_remedy(text: str, where: str, word: str) -> None:
    fault = faults_of(text)[where]
    assert word in fault.what
    assert fault.remedy


def test_a_text_that_is_no_toml_names_the_line() -> None:
    with pytest.raises(EventFileError, match="line 2"):
        read_recipe("[recipe]\nname == 3", "loaf.toml")


def faults_or_none(text: str) -> tuple[Fault, ...] | None:
    """The faults of a text; None where it has none and is read."""
    try:
        read_recipe(text, "any.toml")
    except EventFileError as error:
        return error.faults
    return None


KEYS = sorted({*schema.KEYS["recipes.ID"], *schema.KEYS["recipes.ID.steps"], "id"})
VALUES = st.recursive(
    st.booleans() | st.integers() | st.floats() | st.text(st.characters(exclude_categories=["Cs"]), max_size=12),
    lambda inner: st.lists(inner, max_size=3) | st.dictionaries(st.sampled_from(KEYS), inner, max_size=4),
    max_leaves=8,
)


@settings(max_examples=150, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(VALUES)
def test_whatever_stands_in_it_the_file_is_read_or_refused_with_remedies(value: Any) -> None:
    faults = faults_or_none(tomli_w.dumps({"recipe": value}))
    assert faults is None or len(faults) > 0
    assert all(fault.where.startswith("any.toml") and fault.remedy for fault in faults or ())
