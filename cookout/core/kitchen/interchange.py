"""Recipes in and out as schema.org/Recipe in JSON-LD, alone or inside an HTML page.

In: a `DraftRecipe` that names what is missing; out: a text that others read. Properties as schema.org defines them:
name, recipeIngredient, recipeInstructions (HowToStep, HowToSection), recipeYield, prepTime, cookTime, totalTime,
timeRequired; times as ISO 8601 durations.
"""

import json
import re
from collections.abc import Iterator
from itertools import groupby

from cookout.core.kitchen.drafts import DraftRecipe, DraftStep, draft_step
from cookout.core.kitchen.durations import read_duration, write_duration
from cookout.core.kitchen.ingredients import parse_line
from cookout.core.kitchen.linked_data import Node, find_recipes, has_type, is_node, plain_text
from cookout.core.kitchen.measures import Amount
from cookout.core.kitchen.recipe import Ingredient, Recipe, Step, StepKind
from cookout.core.kitchen.rounding import write_amount
from cookout.core.quantities import show_inches, show_temperature

MOST_LINES = 200
LONGEST_NAME = 200
LONGEST_LINE = 400
LONGEST_STEP = 4000
DEEPEST = 8
MOST_SERVED = 1000


def read_recipes(text: str) -> tuple[DraftRecipe, ...]:
    """Every recipe of a JSON-LD text or an HTML page, as drafts.

    `linked_data.RecipeTextError` where there is none, or the text is too long or broken.
    """
    return tuple(draft_of(node) for node in find_recipes(text))


def draft_of(node: Node) -> DraftRecipe:
    """The draft of one schema.org/Recipe object; what has an unknown form is left out and so stands as missing."""
    lines = _lines(node.get("recipeIngredient", node.get("ingredients")))
    steps = _steps(node.get("recipeInstructions"))
    serves, yields = _yield(node.get("recipeYield", node.get("yield")))
    return DraftRecipe(
        name=plain_text(node.get("name") or node.get("headline"), LONGEST_NAME),
        serves=serves,
        yields=yields,
        ingredients=tuple(parse_line(line) for line in lines[:MOST_LINES]),
        steps=tuple(steps[:MOST_LINES]),
        prepare_minutes=_minutes(node.get("prepTime")),
        cook_minutes=_minutes(node.get("cookTime")),
        total_minutes=_minutes(node.get("totalTime")),
        cut=tuple(
            f"{what}: only the first {MOST_LINES} were read"
            for what, found in (("ingredients", lines), ("steps", steps))
            if len(found) > MOST_LINES
        ),
    )


def write_recipe(recipe: Recipe, units: str) -> str:
    """A recipe as JSON-LD; temperatures and sizes in the units, amounts as the recipe has them.

    No character of it can end a script element, so that it can stand inside an HTML page.
    """
    text = json.dumps(recipe_node(recipe, units), ensure_ascii=False, indent=2)
    return text.replace("<", "\\u003c").replace(">", "\\u003e").replace("&", "\\u0026")


def recipe_node(recipe: Recipe, units: str) -> Node:
    """The schema.org/Recipe object of a recipe."""
    node: Node = {
        "@context": "https://schema.org",
        "@type": "Recipe",
        "name": recipe.name,
        "recipeYield": f"{recipe.serves} servings",
        "recipeIngredient": [ingredient_line(ingredient) for ingredient in recipe.ingredients],
        "recipeInstructions": _instructions(recipe.steps, units),
    }
    for name, kinds in (("prepTime", _PREPARING), ("cookTime", (StepKind.BAKE,))):
        minutes = sum(step.minutes.usual for step in recipe.steps if step.kind in kinds)
        node |= {name: write_duration(minutes)} if minutes else {}
    return node


_PREPARING = (StepKind.PREPARE, StepKind.MIX)
_SECTIONS = {
    StepKind.PREPARE: "Prepare", StepKind.MIX: "Prepare", StepKind.REST: "Prepare", StepKind.BAKE: "Bake",
    StepKind.COOL: "Cool and finish", StepKind.ICE: "Cool and finish", StepKind.FINISH: "Cool and finish",
}  # fmt: skip
_NUMBERING = re.compile(r"^(?:step\s*)?\d{1,2}\s*[.):]\s+", re.IGNORECASE)
_SPLIT = re.compile(r"(?:</(?:p|li|div|h\d)>|<br\s*/?>|\r?\n)\s*", re.IGNORECASE)
_EATERS = r"(?:servings?|people|persons?|portions?|guests?|helpings?)"
_PEOPLE = re.compile(
    rf"(?:(?:serves|feeds|for|makes(?=.*{_EATERS}))\s+)?(\d{{1,4}})(?:\s*(?:-|–|to)\s*\d{{1,4}})?\s*{_EATERS}?\.?",
    re.IGNORECASE,
)


def _minutes(value: object) -> int | None:
    return read_duration(plain_text(value, 60))


def _lines(value: object) -> list[str]:
    if isinstance(value, str):
        value = _SPLIT.split(value)
    parts = value if isinstance(value, list) else []
    return [line for part in parts if (line := plain_text(part, LONGEST_LINE))]


def _yield(value: object) -> tuple[int | None, str]:
    """How many people it serves, where that is told, and the words of the source; "2 loaves" does not tell."""
    told = [_yield_text(one) for one in (value if isinstance(value, list) else [value])]
    for text in told:
        match = _PEOPLE.fullmatch(text)
        if match and 0 < int(match[1]) <= MOST_SERVED:
            return int(match[1]), text
    return None, next((text for text in told if text), "")


def _yield_text(value: object) -> str:
    if is_node(value):
        number, unit = plain_text(value.get("value"), 20), plain_text(value.get("unitText"), 40)
        return f"{number} {unit}".strip()
    return plain_text(value, LONGEST_NAME)


def _steps(value: object) -> list[DraftStep]:
    return [step for part in _parts(value) for step in _steps_of(part, "", 0)]


def _parts(value: object) -> list[object]:
    if isinstance(value, list):
        return value
    return [] if value is None else [value]


def _steps_of(part: object, section: str, depth: int) -> Iterator[DraftStep]:
    if depth > DEEPEST:
        return
    if isinstance(part, str):
        for piece in _SPLIT.split(part):
            if text := _NUMBERING.sub("", plain_text(piece, LONGEST_STEP)):
                yield draft_step(text, section)
    elif isinstance(part, list):
        for one in part:
            yield from _steps_of(one, section, depth + 1)
    elif is_node(part):
        yield from _steps_of_node(part, section, depth)


def _steps_of_node(node: Node, section: str, depth: int) -> Iterator[DraftStep]:
    inside = _parts(node.get("itemListElement", node.get("steps")))
    if has_type(node, "ListItem") and is_node(node.get("item")):
        inside = [node["item"]]
    text = plain_text(node.get("text") or node.get("description"), LONGEST_STEP)
    if not text and inside:
        under = plain_text(node.get("name"), LONGEST_NAME) if has_type(node, "HowToSection") else section
        for one in inside:
            yield from _steps_of(one, under or section, depth + 1)
        return
    text = _NUMBERING.sub("", text or plain_text(node.get("name"), LONGEST_STEP))
    times = (_minutes(node.get(name)) for name in ("timeRequired", "totalTime", "performTime"))
    if text:
        yield draft_step(text, section, next((minutes for minutes in times if minutes), None))


def ingredient_line(ingredient: Ingredient) -> str:
    """An ingredient as a line of a list, which `parse_line` reads as the same: "2 cups flour, sifted"."""
    amount = "" if ingredient.amount is None else write_amount(Amount(ingredient.amount, ingredient.unit))
    note = f", {ingredient.note}" if ingredient.note else ""
    return f"{amount} {ingredient.name}{note}".strip()


def _instructions(steps: tuple[Step, ...], units: str) -> list[Node]:
    groups = [(name, list(group)) for name, group in groupby(steps, key=lambda step: _SECTIONS[step.kind])]
    if len(groups) == 1:
        return [_step_node(step, units) for step in steps]
    return [
        {"@type": "HowToSection", "name": name, "itemListElement": [_step_node(step, units) for step in group]}
        for name, group in groups
    ]


def _step_node(step: Step, units: str) -> Node:
    sentences = [step.name]
    if step.bake:
        heat, size = show_temperature(step.bake.temperature_c, units), show_inches(step.bake.oven_inches, units)
        sentences.append(f"In a {size} oven at {heat}, {step.minutes.least} to {step.minutes.most} minutes")
    sentences += [step.note] if step.note else []
    return {
        "@type": "HowToStep",
        "name": step.name,
        "text": ". ".join(sentence.strip(" .") for sentence in sentences) + ".",
        "timeRequired": write_duration(step.minutes.usual),
    }
