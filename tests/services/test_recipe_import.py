"""Texts from elsewhere: our own files are read whole, pages and words become drafts."""

import json

import pytest

from cookout.core.errors import CookoutError, EventFileError
from cookout.core.kitchen.linked_data import RecipeTextError
from cookout.services.recipe_import import bring, file_text
from tests.core.starter_box import starter, starter_text
from tests.store.cast import example_text

SOUP = {"@type": "Recipe", "name": "Soup", "recipeIngredient": ["1 cup peas"], "recipeInstructions": "Simmer it."}
MICRODATA = (
    '<div itemscope itemtype="https://schema.org/Recipe"><h1 itemprop="name">Soup</h1>'
    '<li itemprop="recipeIngredient">1 cup peas</li><p itemprop="recipeInstructions">Simmer it.</p></div>'
)


def test_a_recipe_file_comes_in_whole() -> None:
    assert bring(text=starter_text("beef-stew")).recipes == (starter("beef-stew"),)


def test_an_event_file_gives_all_its_recipes() -> None:
    names = [recipe.name for recipe in bring(text=example_text()).recipes]
    assert names == ["Sausage and bean pot", "Peach cobbler", "Cucumber salad"]


def test_a_recipe_file_with_faults_tells_them() -> None:
    with pytest.raises(EventFileError, match="serves"):
        bring(text=starter_text("beef-stew").replace("serves = 12", "serves = 0"))


@pytest.mark.parametrize(
    "text",
    [
        json.dumps(SOUP),
        f'<!doctype html><html><script type="application/ld+json">{json.dumps(SOUP)}</script></html>',
        f'words before <script type="application/ld+json">{json.dumps(SOUP)}</script>',
        MICRODATA,
        "Soup\n\nIngredients\n1 cup peas\n\nMethod\nSimmer it.",
        "\ufeffSoup\n1 cup peas\n\nSimmer it.",
    ],
)
def test_a_page_linked_data_and_words_become_the_same_draft(text: str) -> None:
    (draft,) = bring(text=text).drafts
    assert (draft.name, [line.line for line in draft.ingredients]) == ("Soup", ["1 cup peas"])
    assert [step.text for step in draft.steps] == ["Simmer it."]


@pytest.mark.parametrize("text", ["", "  \n", "<html><body>Nothing</body></html>", "{broken", "Hello"])
def test_a_text_without_a_recipe_says_what_to_do(text: str) -> None:
    with pytest.raises(RecipeTextError, match=r"[Pp]aste|copy|export|write"):
        bring(text=text)


def test_files_are_read_in_the_encodings_that_people_have() -> None:
    assert file_text("Crème".encode()) == "Crème"
    assert file_text("Crème".encode("utf-8-sig")) == "Crème"
    assert file_text("Crème".encode("utf-16")) == "Crème"
    assert file_text("Crème".encode("cp1252")) == "Crème"
    with pytest.raises(CookoutError, match="no text"):
        file_text(b"\x89PNG\x00\x00\xff\xfe")
