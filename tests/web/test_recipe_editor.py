"""Writing and changing recipes: rows come and go without a script, faults stand by their fields, nothing is lost."""

from typing import Any

import pytest
from django.test import Client
from django.urls import reverse
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from cookout.core.kitchen.recipe import After, Minutes, StepId
from cookout.core.kitchen.recipe import Recipe as CoreRecipe
from cookout.services import recipes
from cookout.store.models import Recipe
from cookout.store.selectors.recipes import recipe_of
from cookout.web.forms.recipe_editor import RecipeEditor, editor_of
from tests.core.starter_box import NAMES, starter
from tests.store.cast import Cast
from tests.web.filling import Form, form_of

FIRST = {"name": "Camp bread", "serves": "8", "food": "bread_and_cake", "keeps_air": "240"}


@pytest.fixture
def row(cast: Cast) -> Recipe:
    """A recipe of the owner's box, with waits, layers, a cooling and an icing."""
    return recipes.create_recipe(owner_id=cast.owner.pk, recipe=starter("cocoa-layer-cake"), units="us")


def form(answer: Any) -> Form:
    """The recipe's form on a page."""
    return form_of(answer, "add")


def current(row: Recipe) -> CoreRecipe:
    """The recipe as the box has it."""
    row.refresh_from_db()
    assert row.current is not None
    return recipe_of(row.current)


def sent(editor: RecipeEditor) -> dict[str, str]:
    """What a page of fields sends as it stands."""
    post = {"steps-count": str(len(editor.steps)), "swaps-count": str(len(editor.swaps))}
    for each in (editor.head, *editor.steps, *editor.swaps):
        for name in each.fields:
            value = each[name].value()
            if value not in (None, False, ""):
                post[each.add_prefix(name)] = "on" if value is True else str(value)
    return post


@pytest.mark.parametrize("units", ["us", "metric"])
@pytest.mark.parametrize("name", NAMES)
def test_a_recipe_that_is_opened_and_saved_as_it_stands_is_the_same_to_the_last_digit(name: str, units: str) -> None:
    recipe = starter(name)
    again = RecipeEditor.of_post(sent(editor_of(recipe, units))).recipe(recipe.id, recipe.ingredients)
    assert again == recipe


def test_saving_without_a_change_makes_no_version(owner: Client, row: Recipe) -> None:
    place = reverse("recipe-edit", args=[row.public_id])
    answer = owner.post(place, form(owner.get(place)).filled("save"), follow=True)
    assert "Nothing was different" in answer.content.decode()
    assert row.versions.count() == 1


def test_a_change_is_a_new_version_with_what_is_new_in_it(owner: Client, row: Recipe) -> None:
    place = reverse("recipe-edit", args=[row.public_id])
    filled = form(owner.get(place)).filled("save", **{"head-serves": "14", "version-note": "for more"})
    assert "Saved as version 2." in owner.post(place, filled, follow=True).content.decode()
    assert current(row).serves == 14
    assert row.current is not None
    assert row.current.note == "for more"


def test_a_recipe_is_written_from_nothing(owner: Client) -> None:
    place = reverse("recipe-new")
    page = form(owner.post(place, form(owner.get(place)).filled("add")))
    typed = {f"head-{key}": value for key, value in FIRST.items()}
    typed |= {"head-ingredients": "5 cups bread flour\n2 cups water\n", "step-0-name": "Mix", "step-0-usual": "15"}
    typed |= {"step-1-name": "Bake", "step-1-kind": "bake", "step-1-least": "30", "step-1-usual": "35"}
    typed |= {"step-1-most": "40", "step-1-oven": "12", "step-1-temperature": "425 F", "step-1-look_in_from": "25"}
    typed |= {"step-1-hands": "0", "step-1-after_most_0": "90"}
    answer = owner.post(place, page.filled("save", **typed))
    row = Recipe.objects.get()
    assert answer.headers["Location"] == reverse("recipe", args=[row.public_id])
    recipe = current(row)
    assert (recipe.name, [each.name for each in recipe.ingredients]) == ("Camp bread", ["bread flour", "water"])
    mix, bake = recipe.steps
    assert (mix.minutes, bake.minutes) == (Minutes(15, 15, 15), Minutes(30, 35, 40))
    assert bake.after == (After(StepId("step-1"), 0, 90),)
    assert bake.bake is not None
    assert (bake.bake.oven_inches, bake.bake.look_in_from) == (12, 25)


def test_what_is_missing_is_asked_by_the_field_and_what_was_typed_stays(owner: Client) -> None:
    place = reverse("recipe-new")
    filled = form(owner.get(place)).filled("save", **{"head-ingredients": "1,5 l milk", "step-0-note": "Look here"})
    answer = owner.post(place, filled)
    page = answer.content.decode()
    assert answer.status_code == 422
    for words in (
        "What is it called?",
        "How many does one batch serve?",
        "Which kind of food is it?",
        "How long does it keep",
        "How many minutes does it take?",
        "A comma may part thousands",
        "1,5 l milk",
        "Look here",
        'href="#id_step-0-usual"',
    ):
        assert words in page
    assert Recipe.objects.count() == 0


@pytest.mark.parametrize(
    ("typed", "words"),
    [
        ({"step-0-least": "9", "step-0-usual": "5"}, "Least, usual and most rise"),
        ({"step-0-least": "9"}, "Say how long it usually takes."),
        ({"step-0-usual": "many"}, "Enter a whole number."),
        ({"step-0-kind": "bake", "step-0-usual": "30"}, "Which oven does it want?"),
        (
            {"step-0-kind": "bake", "step-0-usual": "30", "step-0-oven": "12", "step-0-temperature": "350"},
            "350",
        ),
        ({"step-0-kind": "bake", "step-0-usual": "30", "step-0-pan": "9 in"}, "How deep is the food in it?"),
        ({"head-held": "hot", "head-keeps_air": "60"}, "It does not keep this way."),
        ({"step-0-kind": "made up"}, "Select a valid choice"),
        ({"head-name": "x" * 300}, "at most 200 characters"),
    ],
)
def test_what_is_wrong_is_told_by_its_field(owner: Client, typed: dict[str, str], words: str) -> None:
    place = reverse("recipe-new")
    answer = owner.post(place, form(owner.get(place)).filled("save", **typed))
    assert answer.status_code == 422
    assert words in answer.content.decode()


def test_a_look_in_after_the_least_minutes_is_told_by_its_field(owner: Client, row: Recipe) -> None:
    place = reverse("recipe-edit", args=[row.public_id])
    page = owner.post(place, form(owner.get(place)).filled("save", **{"step-1-look_in_from": "25"})).content.decode()
    assert "Write a number below 25." in page
    assert 'href="#id_step-1-look_in_from"' in page


@pytest.mark.parametrize(
    ("button", "ids"),
    [
        ("up:1", ["bake", "mix", "cool", "icing", "ice"]),
        ("down:3", ["mix", "bake", "cool", "ice", "icing"]),
        ("up:0", ["mix", "bake", "cool", "icing", "ice"]),
        ("down:4", ["mix", "bake", "cool", "icing", "ice"]),
        ("out:3", ["mix", "bake", "cool", "ice"]),
        ("add", ["mix", "bake", "cool", "icing", "ice", "step-6"]),
        ("look", ["mix", "bake", "cool", "icing", "ice"]),
        ("out:99", ["mix", "bake", "cool", "icing", "ice"]),
        ("made up", ["mix", "bake", "cool", "icing", "ice"]),
    ],
)
def test_rows_come_go_and_move_by_buttons_and_keep_what_was_typed(
    owner: Client, row: Recipe, button: str, ids: list[str]
) -> None:
    place = reverse("recipe-edit", args=[row.public_id])
    typed = {"step-1-note": "Typed just now", "head-serves": "x"}
    answer = owner.post(place, form(owner.get(place)).filled(button, **typed))
    assert answer.status_code == 200
    fields = form(answer).fields
    assert [fields[f"step-{place}-id"] for place in range(len(ids))] == ids
    at = ids.index("bake")
    assert fields[f"step-{at}-note"] == "Typed just now"
    assert (fields[f"step-{at}-oven"], fields[f"step-{at}-trivet"]) == ("12", ["on"])
    assert fields["head-serves"] == "x"
    assert row.versions.count() == 1


def test_a_step_that_waited_for_one_taken_out_waits_for_the_step_before(owner: Client, row: Recipe) -> None:
    place = reverse("recipe-edit", args=[row.public_id])
    page = form(owner.post(place, form(owner.get(place)).filled("out:2")))
    ice = {key.removeprefix("step-3-"): value for key, value in page.fields.items() if key.startswith("step-3-after")}
    assert (ice["after_0"], ice["after_most_0"], ice["after_1"]) == ("before", "180", "icing")


def test_a_wait_for_a_circle_is_told(owner: Client, row: Recipe) -> None:
    place = reverse("recipe-edit", args=[row.public_id])
    page = owner.post(place, form(owner.get(place)).filled("save", **{"step-0-after_0": "ice"})).content.decode()
    assert "wait in a circle" in page


def test_swaps_are_rows_too(owner: Client, row: Recipe) -> None:
    place = reverse("recipe-edit", args=[row.public_id])
    page = form(owner.post(place, form(owner.get(place)).filled("swap")))
    typed = {"swap-0-instead_of": "buttermilk", "swap-0-use": "oat milk", "swap-0-note": "no milk in the batter"}
    owner.post(place, page.filled("save", **typed))
    (swap,) = current(row).swaps
    assert (swap.instead_of, swap.use, swap.ratio) == ("buttermilk", "oat milk", 1.0)
    page = form(owner.get(place))
    wrong = owner.post(place, page.filled("save", **{"swap-0-instead_of": "lobster"})).content.decode()
    assert "The recipe has no ingredient" in wrong
    owner.post(place, form(owner.post(place, page.filled("swap-out:0"))).filled("save"))
    assert current(row).swaps == ()


def test_two_tabs_saving_the_same_recipe_lose_nothing_unasked(owner: Client, row: Recipe) -> None:
    place = reverse("recipe-edit", args=[row.public_id])
    first, second = form(owner.get(place)), form(owner.get(place))
    owner.post(place, first.filled("save", **{"head-name": "First"}))
    answer = owner.post(place, second.filled("save", **{"head-name": "Second"}))
    assert answer.status_code == 422
    assert "Another version of this recipe was saved" in answer.content.decode()
    assert form(answer).fields["head-name"] == "Second"
    assert current(row).name == "First"
    owner.post(place, form(answer).filled("save"))
    assert current(row).name == "Second"


def test_lines_are_read_while_they_are_typed(owner: Client) -> None:
    page = owner.post(reverse("recipe-lines"), {"head-ingredients": "2 cups flour\n1,5 l milk\nhouse rub"})
    text = page.content.decode()
    assert "<html" not in text
    assert '<span class="mark">wheat</span>' in text
    assert "A comma may part thousands" in text
    assert "allergens not known" in text


NAMES_OF_FIELDS = sorted(sent(editor_of(starter("cocoa-layer-cake"), "us")))
ODD = ("-1", "0", "1e9", "NaN", "999999999999", "<b>", "bake", "on", "9 in", "\x00")
NASTY = st.text(max_size=20) | st.sampled_from(ODD)


@pytest.mark.django_db
@settings(max_examples=60, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(st.dictionaries(st.sampled_from(NAMES_OF_FIELDS), NASTY, max_size=6), st.sampled_from(["save", "add", "up:1"]))
def test_whatever_is_typed_a_page_comes_back(typed: dict[str, str], button: str) -> None:
    editor = RecipeEditor.of_post(sent(editor_of(starter("cocoa-layer-cake"), "us")) | typed)
    if button == "save":
        editor.recipe("cake")
        return
    pressed = editor.pressed(button)
    assert len(pressed.steps) == len(editor.steps) + (button == "add")
