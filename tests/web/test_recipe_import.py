"""Bringing recipes in: read, proposed, asked just for what planning needs, and then in the box."""

import json

import pytest
from django.core.files.uploadedfile import SimpleUploadedFile
from django.test import Client
from django.urls import reverse

from cookout.store.models import Recipe
from cookout.store.selectors.recipes import recipe_of
from tests.core.starter_box import starter, starter_text
from tests.store.cast import example_text
from tests.web.filling import form_of, forms_of

CAKE = """Spice cake
2 cups flour
2 tsp baking powder
3 eggs

Preheat oven to 350°F. Grease and line two 9-inch round pans. Mix everything for 5 minutes. Bake for 30 to 35 minutes.
Frost the cake.
"""


def brought(client: Client, **sent: object) -> str:
    """The page that comes back for what was sent."""
    return client.post(reverse("recipe-import"), sent, follow=True).content.decode()


def test_words_become_a_page_that_asks_for_what_is_not_there(owner: Client) -> None:
    page = brought(owner, text=CAKE)
    assert "3 questions, and it is ready." in page
    assert '<a href="#id_head-serves">One batch serves</a>' in page
    assert '<a href="#id_step-1-oven">Step 2: Oven</a>' in page
    assert '<a href="#id_step-2-usual">Step 3: Usual</a>' in page
    assert "“Preheat oven to 350°F.”" in page
    assert "Proposed: the one temperature that the recipe names." in page
    assert "Proposed: “flour” is among the ingredients." in page.replace("&quot;", '"')


def test_the_answers_put_it_into_the_box(owner: Client) -> None:
    answer = owner.post(reverse("recipe-import"), {"text": CAKE})
    typed = {"head-serves": "12", "step-1-oven": "12", "step-2-usual": "20"}
    owner.post(reverse("recipe-new"), form_of(answer, "add").filled("save", **typed))
    row = Recipe.objects.get()
    assert row.current is not None
    recipe = recipe_of(row.current)
    assert (recipe.name, recipe.pans, row.origin) == ("Spice cake", 2, "brought in from elsewhere")
    assert [(step.minutes.least, step.minutes.most) for step in recipe.steps] == [(5, 5), (30, 35), (20, 20)]


def test_a_saved_page_is_read_from_its_file(owner: Client) -> None:
    soup = {"@type": "Recipe", "name": "Pea soup", "recipeYield": "8 servings", "recipeIngredient": ["1 lb peas"]}
    html = f'<html><script type="application/ld+json">{json.dumps(soup)}</script></html>'
    page = brought(owner, file=SimpleUploadedFile("soup.html", html.encode()))
    assert 'value="Pea soup"' in page
    assert "Steps: The list is empty." not in page
    assert "questions, and it is ready." in page


def test_a_recipe_file_goes_straight_into_the_box(owner: Client) -> None:
    page = brought(owner, file=SimpleUploadedFile("stew.toml", starter_text("beef-stew").encode()))
    assert "Beef and root stew: in your box now." in page
    row = Recipe.objects.get()
    assert row.current is not None
    assert recipe_of(row.current).steps == starter("beef-stew").steps


def test_of_several_recipes_one_chooses(owner: Client) -> None:
    answer = owner.post(reverse("recipe-import"), {"text": example_text()})
    (choosing,) = [form for form in forms_of(answer) if "pick" in form.fields]
    assert choosing.fields["pick"] == ["0", "1", "2"]
    owner.post(reverse("recipe-import"), {**choosing.fields, "pick": ["1", "2"]})
    assert sorted(row.name for row in Recipe.objects.all()) == ["Cucumber salad", "Peach cobbler"]


def test_of_several_drafts_one_goes_on_to_be_completed(owner: Client) -> None:
    two = [{"@type": "Recipe", "name": name, "recipeIngredient": ["1 lb peas"]} for name in ("Pea soup", "Pea bread")]
    answer = owner.post(reverse("recipe-import"), {"text": json.dumps(two)})
    (choosing,) = [form for form in forms_of(answer) if "pick" in form.fields]
    page = owner.post(reverse("recipe-import"), {**choosing.fields, "pick": ["1"]}).content.decode()
    assert 'value="Pea bread"' in page


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("", "There is nothing to read yet."),
        ("Hello there", "write a title"),
        ("<html><body>Hello</body></html>", "copy name, ingredients and steps by hand"),
        (starter_text("beef-stew").replace("serves = 12", "serves = 0"), "out of range"),
    ],
)
def test_what_cannot_be_read_says_what_to_do_and_stays_in_the_field(owner: Client, text: str, words: str) -> None:
    answer = owner.post(reverse("recipe-import"), {"text": text})
    assert answer.status_code == 422
    assert words in answer.content.decode()
    fields = next(form for form in forms_of(answer) if "text" in form.fields).fields
    assert str(fields["text"]).strip() == text.strip()


@pytest.mark.parametrize("content", [b"\x89PNG\x00\x00", b"", b"\xff\xfe\x00"])
def test_a_file_that_is_no_text_is_told(owner: Client, content: bytes) -> None:
    answer = owner.post(reverse("recipe-import"), {"file": SimpleUploadedFile("x.png", content)})
    assert answer.status_code == 422
