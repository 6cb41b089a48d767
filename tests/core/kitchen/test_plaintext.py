"""Recipes written as plain text become drafts; what the look of a line does not tell is left for a person."""

import contextlib
import time

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from cookout.core.kitchen.drafts import DraftRecipe, minutes_told, oven_told, temperature_told
from cookout.core.kitchen.ingredients import Parsed
from cookout.core.kitchen.linked_data import RecipeTextError
from cookout.core.kitchen.plaintext import LONGEST_TEXT, draft_from_text
from cookout.core.kitchen.recipe import StepKind

HEADED = """Vesper's apple cake

Serves 10
Prep time: 20 minutes
Baking time: 1 hr 5 min

Ingredients:
- 2 cups flour
• 1 tsp baking powder

For the top:
- ½ cup sugar
salt

Directions:
1. Grease a 10-inch pan.
2. Mix flour, sugar
   and eggs for 5 minutes.
3) Bake for 40 to 45 minutes.

Cool on a rack for 30 minutes.

Notes
Keeps for three days. Bake 2 of them.
"""
PLAIN = """Camp beans
4 cans beans, drained
1 onion, chopped
salt to taste

Chop the onion and stir everything together.
Simmer for 1 hour at 325 F.
"""


def names_of(draft: DraftRecipe) -> list[str]:
    """The ingredients of a draft by name."""
    return [line.ingredient if isinstance(line, Parsed) else f"? {line.line}" for line in draft.ingredients]


def texts_of(draft: DraftRecipe) -> list[str]:
    """The steps of a draft in words."""
    return [step.text for step in draft.steps]


def test_a_text_with_headings_is_told_apart_by_them() -> None:
    draft = draft_from_text(HEADED)
    assert (draft.name, draft.serves, draft.yields) == ("Vesper's apple cake", 10, "Serves 10")
    assert (draft.prepare_minutes, draft.cook_minutes) == (20, 65)
    assert names_of(draft) == ["flour", "baking powder", "sugar", "salt"]
    assert texts_of(draft) == [
        "Grease a 10-inch pan.",
        "Mix flour, sugar and eggs for 5 minutes.",
        "Bake for 40 to 45 minutes.",
        "Cool on a rack for 30 minutes.",
    ]


def test_a_text_without_headings_is_told_apart_by_its_looks() -> None:
    draft = draft_from_text(PLAIN)
    assert (draft.name, draft.serves) == ("Camp beans", None)
    assert names_of(draft) == ["beans", "onion", "salt"]
    assert texts_of(draft) == ["Chop the onion and stir everything together.", "Simmer for 1 hour at 325 F."]
    assert draft.steps[1].kind is StepKind.BAKE


def test_steps_numbered_on_lines_of_their_own_and_what_follows_them_are_told_apart() -> None:
    text = (
        "Trout\nIngredients\n2 lb trout\nMethod\nStep 1\nLay the trout.\nStep 2\nBake 15 minutes.\nComments (12)\nGood!"
    )
    assert texts_of(draft_from_text(text)) == ["Lay the trout.", "Bake 15 minutes."]


def test_an_ingredient_line_that_is_not_sure_stays_a_question() -> None:
    draft = draft_from_text("Soup\nIngredients\n1,5 l milk\nMethod\nHeat it.")
    assert [question.line for question in draft.questions] == ["1,5 l milk"]


@pytest.mark.parametrize(
    ("line", "serves"),
    [
        ("Serves 6", 6),
        ("serves: 6 to 8", 6),
        ("Feeds 30.", 30),
        ("6 servings", 6),
        ("For 4 people", 4),
        ("Yield: 12 servings", 12),
        ("Makes 24 rolls", None),
        ("Makes 2 loaves", None),
    ],
)
def test_how_many_it_serves_is_read_only_where_it_counts_people(line: str, serves: int | None) -> None:
    assert draft_from_text(f"Bread\n{line}\nIngredients\n1 cup flour\nMethod\nBake it.").serves == serves


@pytest.mark.parametrize(
    ("text", "minutes"),
    [("1 hr 20 min", 80), ("45 minutes", 45), ("20-25 mins", 25), ("2 hours", 120), ("a while", None)],
)
def test_times_in_words_are_read_in_minutes(text: str, minutes: int | None) -> None:
    assert minutes_told(text) == minutes


@pytest.mark.parametrize(
    ("text", "inches"),
    [
        ("in a 12-inch oven", 12),
        ("a 10 in. deep camp oven", 10),
        ('in your 12" cast iron dutch oven', 12),
        ("a 9-inch pan", None),
        ("a 10-inch oven or a 12-inch oven", None),
        ("at 350 in the oven", None),
    ],
)
def test_an_oven_is_read_where_one_is_named(text: str, inches: int | None) -> None:
    assert oven_told(text) == inches


@pytest.mark.parametrize(
    ("text", "celsius"),
    [
        ("at 350 °F", 176.67),
        ("at 325 F for an hour", 162.78),
        ("at 180C", 180.0),
        ("at 350 degrees", None),
        ("350 °F, then 300 °F", None),
        ("10 c flour", None),
    ],
)
def test_a_temperature_is_read_only_with_its_scale_and_alone(text: str, celsius: float | None) -> None:
    assert temperature_told(text) == (None if celsius is None else pytest.approx(celsius, abs=0.01))


@pytest.mark.parametrize("text", ["", "\n\n", "Hello", "x" * (LONGEST_TEXT + 1)])
def test_a_text_without_a_recipe_is_refused_with_what_to_do(text: str) -> None:
    with pytest.raises(RecipeTextError, match=r"write a title|give the recipe alone"):
        draft_from_text(text)


@settings(max_examples=200, deadline=None)
@given(st.lists(st.sampled_from([*HEADED.splitlines(), *PLAIN.splitlines(), "1.", "- ", "½", "\x00", "Step 3:"])))
def test_lines_in_any_order_are_read_or_refused(lines: list[str]) -> None:
    try:
        draft = draft_from_text("\n".join(lines))
    except RecipeTextError:
        return
    assert draft.ingredients or draft.steps


@settings(max_examples=200, deadline=None)
@given(st.text(max_size=400))
def test_any_text_is_read_or_refused(text: str) -> None:
    with contextlib.suppress(RecipeTextError):
        assert draft_from_text(text).name is not None


@pytest.mark.parametrize("unit", ["1 cup ", "a b ", "1. ", "( ", "step 1 ", "10-inch ", "°F 350 ", "two 9-inch "])
def test_long_hostile_text_is_read_before_long(unit: str) -> None:
    began = time.perf_counter()
    with contextlib.suppress(RecipeTextError):
        draft_from_text((unit * 20_000)[:LONGEST_TEXT])
    assert time.perf_counter() - began < 3
