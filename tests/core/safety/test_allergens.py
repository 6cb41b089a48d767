"""Allergens from the names of ingredients: the nine of FALCPA 2004 and the FASTER Act 2021, and what is not known."""

from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from cookout.core.eventfile import read_event
from cookout.core.safety.allergen_words import COMPOSITE, Allergen
from cookout.core.safety.allergens import NOT_SAID, Presence, dish_allergens, tell

FIXTURES = Path(__file__).parents[3] / "fixtures" / "events"


def test_there_are_nine_and_they_are_called_as_the_law_calls_them() -> None:
    assert [allergen.value for allergen in Allergen] == [
        "milk",
        "eggs",
        "fish",
        "crustacean shellfish",
        "tree nuts",
        "peanuts",
        "wheat",
        "soybeans",
        "sesame",
    ]


# Words that two state departments of agriculture print under each allergen (Minnesota, Nebraska; read in copies).
@pytest.mark.parametrize(
    ("name", "contains"),
    [
        ("unsalted butter, softened", "milk"),
        ("2% milk", "milk"),
        ("Crème fraîche", "milk"),
        ("half-and-half", "milk"),
        ("ghee", "milk"),
        ("sodium caseinate", "milk"),
        ("whey protein", "milk"),
        ("lactose", "milk"),
        ("5 large eggs", "eggs"),
        ("egg whites", "eggs"),
        ("mayonnaise", "eggs"),
        ("meringue powder", "eggs"),
        ("albumin", "eggs"),
        ("Worcestershire sauce", "fish"),
        ("anchovies", "fish"),
        ("surimi", "fish"),
        ("shrimp", "crustacean shellfish"),
        ("crawfish tails", "crustacean shellfish"),
        ("toasted walnuts", "tree nuts"),
        ("pecan halves", "tree nuts"),
        ("almond flour", "tree nuts"),
        ("marzipan", "tree nuts"),
        ("peanut butter", "peanuts"),
        ("all-purpose flour", "wheat"),
        ("semolina", "wheat"),
        ("couscous", "wheat"),
        ("breadcrumbs", "wheat"),
        ("vital wheat gluten", "wheat"),
        ("tofu", "soybeans"),
        ("edamame", "soybeans"),
        ("miso", "soybeans"),
        ("tahini", "sesame"),
        ("hummus", "sesame"),
    ],
)
def test_a_word_tells_of_its_allergen(name: str, contains: str) -> None:
    assert {allergen.value for allergen in tell(name).contains} == {contains}


@pytest.mark.parametrize(
    "name",
    [
        "peanut butter",
        "apple butter",
        "cocoa butter",
        "butter beans",
        "butternut squash",
        "cream of tartar",
        "coconut milk",
        "almond milk",
        "eggplant",
        "nutmeg",
        "water chestnuts",
        "buckwheat flour",
        "rice flour",
        "corn tortillas",
        "oyster mushrooms",
    ],
)
def test_a_word_that_only_sounds_like_an_allergen_tells_of_no_milk_eggs_or_wheat(name: str) -> None:
    told = tell(name)
    assert told.known
    assert not told.contains & {Allergen.MILK, Allergen.EGGS, Allergen.WHEAT}


def test_two_allergens_in_one_word() -> None:
    assert tell("soy sauce").contains == {Allergen.SOYBEANS, Allergen.WHEAT}
    assert tell("egg noodles").contains == {Allergen.EGGS, Allergen.WHEAT}
    assert tell("butter or almonds").contains == {Allergen.MILK, Allergen.TREE_NUTS}


def test_what_depends_on_the_maker_may_be_in_it() -> None:
    assert {Allergen.MILK, Allergen.SOYBEANS} <= tell("chocolate chips").may_be
    assert Allergen.SOYBEANS in tell("vegetable oil").may_be
    assert not tell("olive oil").may_be


@pytest.mark.parametrize(
    "name",
    [
        "house rub",
        "dragon powder",
        "chicken stock",
        "mustard dressing",
        "vegan cheese",
        "egg-free mayo",
        "",
        "мука",
        "?!",
    ],
)
def test_what_is_not_understood_is_not_known(name: str) -> None:
    assert tell(name).known is False


def test_one_unknown_ingredient_makes_every_other_allergen_not_known() -> None:
    found = dish_allergens(("flour", "butter", "chocolate", "house rub"))
    assert found.contains == (Allergen.MILK, Allergen.WHEAT)
    assert found.presence(Allergen.SOYBEANS) is Presence.MAY_BE
    assert found.presence(Allergen.SESAME) is Presence.NOT_KNOWN
    assert found.unknown == ("house rub",)
    assert "NOT KNOWN" in found.said
    assert "house rub" in found.said


def test_a_dish_with_no_ingredients_listed_is_never_said_to_hold_none() -> None:
    found = dish_allergens(())
    assert found.not_known == tuple(Allergen)
    assert {found.presence(allergen) for allergen in Allergen} == {Presence.NOT_KNOWN}
    declared = dish_allergens((), declared=("milk",))
    assert declared.contains == (Allergen.MILK,)
    assert declared.presence(Allergen.EGGS) is Presence.NOT_KNOWN


def test_plain_food_is_said_to_have_none_found_and_never_to_be_free_of_anything() -> None:
    found = dish_allergens(("melon", "mint", "lemon juice"))
    assert {found.presence(allergen) for allergen in Allergen} == {Presence.NOT_FOUND}
    assert "free" not in found.said
    assert "Ask the cook" in found.said
    assert "labels" in NOT_SAID


def test_a_note_can_add_and_never_takes_away() -> None:
    plain = dish_allergens((("bread flour", ""),))
    noted = dish_allergens((("bread flour", "brushed with melted butter"),))
    assert Allergen.MILK not in plain.may_be
    assert noted.presence(Allergen.MILK) is Presence.MAY_BE
    assert dish_allergens((("cream cheese", "kept cold until used, no milk"),)).contains == (Allergen.MILK,)
    assert noted.unknown == ()


def test_a_list_that_leaves_something_out_is_noticed() -> None:
    assert dish_allergens(("flour", "egg"), declared=("wheat",)).undeclared == (Allergen.EGGS,)
    assert dish_allergens(("flour", "egg"), declared=("wheat", "eggs", "mustard")).others == ("mustard",)
    assert dish_allergens(("flour", "egg")).undeclared == ()


def test_each_allergen_says_which_ingredients_tell_of_it() -> None:
    found = dict(dish_allergens(("butter", "cream cheese", "oil")).because)
    assert found[Allergen.MILK] == ("butter", "cream cheese")
    assert found[Allergen.SOYBEANS] == ("oil",)


def test_the_lists_in_the_fixtures_leave_nothing_out() -> None:
    for path in sorted(FIXTURES.glob("*.toml")):
        for recipe in read_event(path.read_text(encoding="utf-8"), path.name).recipes:
            pairs = [(item.name, item.note) for item in recipe.ingredients]
            assert dish_allergens(pairs, recipe.allergens).undeclared == (), recipe.name


@given(words=st.lists(st.text(alphabet="abcdefghij ", max_size=12), max_size=6))
def test_whatever_is_written_no_allergen_is_found_absent_while_anything_is_unknown(words: list[str]) -> None:
    found = dish_allergens(words)
    if found.unknown:
        assert all(found.presence(allergen) is not Presence.NOT_FOUND for allergen in Allergen)


@given(st.sampled_from([phrase.strip() for phrase in COMPOSITE.split(";")]), st.sampled_from(["fresh", "red", "large"]))
def test_what_is_made_of_many_things_is_never_known_by_its_name(phrase: str, how: str) -> None:
    assert tell(f"{how} {phrase}").known is False
