"""Recipes in and out as schema.org/Recipe, from kind sources and hostile ones."""

import contextlib
import json
import time
from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from cookout.core.eventfile.reading import read_event
from cookout.core.kitchen.drafts import draft_step
from cookout.core.kitchen.durations import read_duration, write_duration
from cookout.core.kitchen.ingredients import Parsed, Question
from cookout.core.kitchen.interchange import MOST_LINES, draft_of, read_recipes, recipe_node, write_recipe
from cookout.core.kitchen.linked_data import LARGEST_TEXT, RecipeTextError, plain_text
from cookout.core.kitchen.recipe import Recipe, StepKind

CAKE: dict[str, Any] = {
    "@context": "https://schema.org",
    "@type": "Recipe",
    "name": "Harvest &amp; Carrot Cake",
    "recipeYield": ["12", "12 servings"],
    "prepTime": "PT20M",
    "cookTime": "PT35M",
    "totalTime": "PT1H30M",
    "recipeIngredient": ["3 cups flour", "1½ c. sugar", "1,5 l milk", "salt to taste"],
    "recipeInstructions": [
        {
            "@type": "HowToSection",
            "name": "Cake",
            "itemListElement": [
                {"@type": "HowToStep", "text": "Whisk flour and sugar for 5 minutes."},
                {"@type": "HowToStep", "text": "Bake at 350 °F (175 °C) for 30 to 35 minutes."},
            ],
        },
        {"@type": "HowToStep", "name": "Cool", "text": "Cool on a rack.", "timeRequired": "PT40M"},
        "Enjoy.",
    ],
}
EVENTS = Path(__file__).parents[3] / "fixtures" / "events"


def page(*scripts: str, body: str = "") -> str:
    blocks = "".join(f'<script type="application/ld+json">{script}</script>' for script in scripts)
    return f"<!doctype html><html><head><title>x</title>{blocks}</head><body>{body}</body></html>"


def recipes_of_fixtures() -> list[Recipe]:
    paths = sorted(EVENTS.glob("*.toml"))
    return [recipe for path in paths for recipe in read_event(path.read_text(encoding="utf-8"), path.name).recipes]


def test_a_recipe_is_read_into_a_draft_that_names_what_is_missing() -> None:
    (draft,) = read_recipes(json.dumps(CAKE))
    assert draft.name == "Harvest & Carrot Cake"
    assert (draft.serves, draft.yields) == (12, "12")
    assert (draft.prepare_minutes, draft.cook_minutes, draft.total_minutes) == (20, 35, 90)
    assert [type(line) for line in draft.ingredients] == [Parsed, Parsed, Question, Parsed]
    whisk, bake, cool, enjoy = draft.steps
    assert (whisk.section, whisk.minutes, whisk.kind) == ("Cake", (5, 5), StepKind.MIX)
    assert (bake.minutes, bake.kind) == ((30, 35), StepKind.BAKE)
    assert bake.temperature_c == pytest.approx(176.67, abs=0.01)
    assert (cool.section, cool.minutes, cool.kind) == ("", (40, 40), StepKind.COOL)
    assert (enjoy.minutes, enjoy.kind) == (None, None)
    wanted = " | ".join(draft.missing)
    for words in ("food:", "keeps:", '"1,5 l milk"', "step 4: how many minutes", "step 4: what sort"):
        assert words in wanted
    assert "serves" not in wanted
    assert "step 2" not in wanted


@pytest.mark.parametrize(
    "text",
    [
        json.dumps(CAKE),
        json.dumps([{"@type": "WebSite"}, CAKE]),
        json.dumps({"@context": "https://schema.org", "@graph": [{"@type": "Person", "name": "Ada"}, CAKE]}),
        json.dumps({"@type": "WebPage", "mainEntity": CAKE}),
        json.dumps(CAKE | {"@type": ["Recipe", "NewsArticle"]}),
        json.dumps(CAKE | {"@type": "http://schema.org/Recipe"}),
        "\ufeff" + json.dumps(CAKE, indent=1),
        page(json.dumps(CAKE)),
        page('{"@type": "WebSite"}', json.dumps(CAKE)),
        page("{broken", json.dumps(CAKE)),
        page("<!--" + json.dumps(CAKE) + "-->"),
        page("//<![CDATA[\n" + json.dumps(CAKE) + "\n//]]>"),
        page(json.dumps(CAKE)).replace('"application/ld+json"', "'application/ld+json; charset=utf-8' id=x"),
        page(json.dumps(CAKE)).replace("script", "SCRIPT"),
    ],
)
def test_a_recipe_is_found_wherever_pages_put_it(text: str) -> None:
    (draft,) = read_recipes(text)
    assert (draft.name, draft.serves, len(draft.ingredients), len(draft.steps)) == ("Harvest & Carrot Cake", 12, 4, 4)


def test_several_recipes_of_a_page_are_all_read() -> None:
    drafts = read_recipes(page(json.dumps(CAKE), json.dumps(CAKE | {"name": "Icing"})))
    assert [draft.name for draft in drafts] == ["Harvest & Carrot Cake", "Icing"]


@pytest.mark.parametrize(
    ("instructions", "texts"),
    [
        ("1. Mix.\n2. Bake.", ["Mix.", "Bake."]),
        ("<p>Mix.</p><p>Bake <b>well</b>.</p>", ["Mix.", "Bake well ."]),
        (["Mix.", "Bake."], ["Mix.", "Bake."]),
        ([["Mix."], [["Bake."]]], ["Mix.", "Bake."]),
        ({"@type": "ItemList", "itemListElement": ["Mix.", {"@type": "ListItem", "item": {"text": "Bake."}}]}, None),
        ({"@type": "HowToStep", "itemListElement": [{"@type": "HowToDirection", "text": "Mix."}, "Bake."]}, None),
        ([{"@type": "HowToStep", "name": "Mix."}, {"@type": "HowToStep", "text": ["Bake."]}], None),
        (None, []),
        (42, []),
        ([None, 3, {}, {"@type": "HowToStep"}], []),
    ],
)
def test_instructions_are_read_in_every_form_they_come_in(instructions: object, texts: list[str] | None) -> None:
    draft = draft_of({"@type": "Recipe", "recipeInstructions": instructions})
    assert [step.text for step in draft.steps] == (["Mix.", "Bake."] if texts is None else texts)


@pytest.mark.parametrize(
    ("told", "serves"),
    [
        ("12", 12),
        (8, 8),
        ("Serves 6", 6),
        ("4 servings", 4),
        ("10-12 people", 10),
        ("makes 6 portions", 6),
        ({"@type": "QuantitativeValue", "value": 12, "unitText": "servings"}, 12),
        (["1 cake", "16 servings"], 16),
        ("2 loaves", None),
        ("makes 24", None),
        ("0", None),
        ("99999", None),
        (None, None),
        ({"value": "2", "unitText": "loaves"}, None),
    ],
)
def test_a_yield_is_people_only_where_it_says_so(told: object, serves: int | None) -> None:
    assert draft_of({"@type": "Recipe", "recipeYield": told}).serves == serves


@pytest.mark.parametrize(
    ("text", "minutes"),
    [
        ("PT30M", 30),
        ("PT1H30M", 90),
        ("PT90M", 90),
        ("P1DT2H", 1560),
        ("P1W", 10080),
        ("PT1.5H", 90),
        ("PT45S", 1),
        ("pt20m", 20),
        ("P0Y", None),
        ("PT0S", None),
        ("P", None),
        ("PT", None),
        ("45 minutes", None),
        ("P1M", None),
        ("PT-5M", None),
        ("PT99999999999M", None),
        ("", None),
    ],
)
def test_durations_of_iso_8601_are_read_in_minutes(text: str, minutes: int | None) -> None:
    assert read_duration(text) == minutes


@settings(deadline=None)
@given(st.integers(1, 99_999))
def test_a_duration_written_is_read_back(minutes: int) -> None:
    assert read_duration(write_duration(minutes)) == minutes


def test_every_recipe_of_the_fixtures_comes_back_as_it_went_out() -> None:
    recipes = recipes_of_fixtures()
    assert len(recipes) >= 5
    for recipe in recipes:
        (draft,) = read_recipes(page(write_recipe(recipe, "us")))
        assert (draft.name, draft.serves) == (recipe.name, recipe.serves)
        assert draft.questions == ()
        read = [line for line in draft.ingredients if isinstance(line, Parsed)]
        assert [line.ingredient for line in read] == [one.name for one in recipe.ingredients]
        assert [line.unit for line in read] == [one.unit for one in recipe.ingredients]
        for line, ingredient in zip(read, recipe.ingredients, strict=True):
            assert line.least == (None if ingredient.amount is None else pytest.approx(ingredient.amount, abs=1e-5))
        assert [step.minutes for step in draft.steps] == [(step.minutes.usual,) * 2 for step in recipe.steps]
        assert all(
            step.text.startswith(was.name.strip(" .")) for step, was in zip(draft.steps, recipe.steps, strict=True)
        )


def test_steps_go_out_in_sections_with_oven_and_time() -> None:
    recipe = next(one for one in recipes_of_fixtures() if any(step.kind is StepKind.COOL for step in one.steps))
    node: Any = recipe_node(recipe, "metric")
    sections = node["recipeInstructions"]
    assert {section["@type"] for section in sections} == {"HowToSection"}
    steps = [step for section in sections for step in section["itemListElement"]]
    assert len(steps) == len(recipe.steps)
    assert any("°C" in step["text"] for step in steps)
    assert node["recipeYield"] == f"{recipe.serves} servings"
    assert read_duration(node["cookTime"]) == sum(s.minutes.usual for s in recipe.steps if s.kind is StepKind.BAKE)


def test_a_written_recipe_cannot_end_the_script_it_stands_in() -> None:
    recipe = recipes_of_fixtures()[0]
    text = write_recipe(replace(recipe, name="</script><script>alert(1)</script>"), "us")
    assert "<" not in text
    (draft,) = read_recipes(page(text))
    assert "script" not in draft.name


@pytest.mark.parametrize(
    "text",
    [
        "",
        "   ",
        "no recipe at all",
        "{",
        "[" * 100_000,
        '{"a":' * 20_000 + "1" + "}" * 20_000,
        '{"@type": "Recipe", "name": NaN}',
        "null",
        '"Recipe"',
        '{"@type": "Person"}',
        page('{"@type": "Person"}'),
        page("{broken"),
        "<!-- " + page(json.dumps(CAKE)) + " -->",
        '<script type="application/ld+json">' + json.dumps(CAKE),
        json.dumps([[]] * 60_000),
        "x" * (LARGEST_TEXT + 1),
    ],
    ids=range(16),
)
def test_a_text_without_a_recipe_is_refused_with_a_reason(text: str) -> None:
    with pytest.raises(RecipeTextError):
        read_recipes(text)


def test_tags_scripts_and_control_signs_of_others_do_not_come_through() -> None:
    nasty: dict[str, Any] = {
        "@type": "Recipe",
        "name": "<img src=x onerror=alert(1)>Pie\u202e\x00\x1b[31m",
        "recipeIngredient": ["2 cups <script>alert(1)</script> flour", {"@value": "1 egg"}, None, 7, [], {}],
        "recipeInstructions": [{"@type": "HowToStep", "text": "<iframe src='http://x.invalid'></iframe>Mix."}],
    }
    (draft,) = read_recipes(json.dumps(nasty))
    assert draft.name == "Pie [31m"
    assert draft.steps[0].text == "Mix."
    assert not any("<" in line.line for line in draft.ingredients)


def test_a_recipe_with_too_many_lines_says_that_it_was_cut() -> None:
    draft = draft_of({"@type": "Recipe", "recipeIngredient": ["1 egg"] * (MOST_LINES + 5)})
    assert len(draft.ingredients) == MOST_LINES
    assert any("only the first" in want for want in draft.missing)


@pytest.mark.parametrize(
    "text",
    [
        "<script" * 200_000,
        "<!--" * 300_000,
        '<script type="application/ld+json">' * 50_000,
        "<script " + "type=" * 300_000 + ">",
        page(json.dumps({"@type": "Recipe", "name": "<" * 1_000_000})),
        page(json.dumps({"@type": "Recipe", "recipeInstructions": "1 minute to " * 50_000})),
    ],
    ids=range(6),
)
def test_hostile_pages_take_no_time(text: str) -> None:
    start = time.monotonic()
    with contextlib.suppress(RecipeTextError):
        read_recipes(text)
    assert time.monotonic() - start < 2


JSON = st.recursive(
    st.none() | st.booleans() | st.integers(-9, 9) | st.text(max_size=12),
    lambda inner: st.lists(inner, max_size=4) | st.dictionaries(st.sampled_from(["name", "text", "@type", "value",
        "itemListElement", "item", "@value"]), inner, max_size=4),
    max_leaves=12,
)  # fmt: skip


@settings(deadline=None)
@given(
    st.dictionaries(
        st.sampled_from(["name", "recipeYield", "prepTime", "recipeIngredient", "recipeInstructions"]), JSON
    )
)
def test_any_object_that_calls_itself_a_recipe_makes_a_draft(node: dict[str, object]) -> None:
    (draft,) = read_recipes(json.dumps(node | {"@type": "Recipe"}))
    assert "food" in " ".join(draft.missing)


@pytest.mark.parametrize(
    ("text", "minutes", "kind"),
    [
        ("Bake for 1 hour.", (60, 60), StepKind.BAKE),
        ("Let rise 45-60 min", (45, 60), StepKind.REST),
        ("Beat 2 minutes, then bake 30 minutes.", None, StepKind.BAKE),
        ("Ice the cooled cake.", None, StepKind.ICE),
        ("Beat the brown sugar with cream cheese.", None, StepKind.MIX),
        ("Chop the onions.", None, StepKind.PREPARE),
        ("Serve.", None, StepKind.FINISH),
    ],
)
def test_a_steps_words_propose_time_and_kind(text: str, minutes: tuple[int, int] | None, kind: StepKind) -> None:
    step = draft_step(text)
    assert (step.minutes, step.kind) == (minutes, kind)


@pytest.mark.parametrize("text", ["Bake at 350°.", "Bake at 350 °F, then at 400 °F.", "Bake until it reads 74 °C."])
def test_an_oven_temperature_that_is_not_sure_is_not_proposed(text: str) -> None:
    assert draft_step(text).temperature_c is None


def test_plain_text_keeps_to_its_length() -> None:
    assert plain_text("a  b\n c" * 100, 5) == "a b c"
    assert plain_text(True, 5) == ""
