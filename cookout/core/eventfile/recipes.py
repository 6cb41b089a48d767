"""The tables [recipes.ID]."""

from enum import StrEnum

from cookout.core.errors import QuantityError
from cookout.core.eventfile.faults import quoted
from cookout.core.eventfile.fields import DAY_MINUTES, Fields
from cookout.core.eventfile.steps import read_steps
from cookout.core.kitchen.ingredients import Question, parse_line, to_ingredient
from cookout.core.kitchen.recipe import FoodKind, IcingKind, Ingredient, Keeps, Recipe, RecipeId
from cookout.core.kitchen.replacement import MOST_RATIO, Swap, SwapId

MOST_SERVED = 1000
MOST_PANS = 50
MOST_KEPT = 14 * DAY_MINUTES


class Held(StrEnum):
    """How a finished dish waits for its serving."""

    AIR = "air"
    HOT = "hot"
    COLD = "cold"


def read_recipe(recipe_id: str, fields: Fields) -> Recipe:
    """One recipe with its steps."""
    keeps = _read_keeps(fields)
    rests = fields.whole("rests_minutes", 0, most=DAY_MINUTES)
    return Recipe(
        id=RecipeId(recipe_id),
        name=fields.text("name"),
        serves=fields.whole("serves", least=1, most=MOST_SERVED),
        steps=read_steps(fields),
        food=fields.choice("food", FoodKind) or FoodKind.DAIRY,
        keeps=keeps,
        pans=fields.whole("pans", 1, least=1, most=MOST_PANS),
        pan=fields.text("pan", ""),
        ingredients=_read_ingredients(fields),
        rests_minutes=rests,
        best_within=fields.whole("best_within", 0, most=MOST_KEPT),
        serve_minutes=fields.whole("serve_minutes", 5, least=1, most=DAY_MINUTES),
        serve_hands=fields.whole("serve_hands", 1, most=50),
        held=_read_held(fields, keeps, rests).value,
        allergens=fields.words("allergens"),
        icing=fields.choice("icing", IcingKind) if fields.has("icing") else None,
        swaps=tuple(found for entry in fields.tables("swaps", "recipes.ID.swaps") if (found := _read_swap(entry))),
    )


def _read_keeps(fields: Fields) -> Keeps:
    table = fields.must_table("keeps", "recipes.ID.keeps")
    return Keeps(*(table.maybe_whole(way, most=MOST_KEPT) for way in ("hot", "cold", "air")))


def _read_held(fields: Fields, keeps: Keeps, rests: int) -> Held:
    held = fields.choice("held", Held, Held.AIR) or Held.AIR
    if fields.has("keeps") and fields.sound("held", "keeps", "rests_minutes"):
        kept = {Held.AIR: keeps.air, Held.HOT: keeps.hot, Held.COLD: keeps.cold}[held]
        if kept is None:
            fields.fault("held", f"It does not keep this way: {held}.", f"Give keeps.{held} or another held.")
        elif kept < rests:
            fields.fault("rests_minutes", f"It keeps for {kept} min only.", f"Lengthen keeps.{held} or rest it less.")
    return held


def _read_ingredients(recipe: Fields) -> tuple[Ingredient, ...]:
    """Lines as people write them, or tables. A line that is not sure is a fault that asks, never a guess."""
    found = []
    for position, entry in enumerate(recipe.entries("ingredients")):
        if not isinstance(entry, str):
            found.append(_read_ingredient(recipe.entry_table("ingredients", position, entry, "recipes.ID.ingredients")))
            continue
        parsed = parse_line(entry)
        if isinstance(parsed, Question):
            recipe.fault_in("ingredients", position, _say_unclear(entry, parsed), parsed.ask)
        else:
            found.append(to_ingredient(parsed))
    return tuple(found)


def _say_unclear(line: str, question: Question) -> str:
    """What is not clear, in the line as it was typed."""
    if question.unclear.strip() == line.strip():
        return f"{quoted(line)} is not clear."
    return f"In {quoted(line)}, {quoted(question.unclear)} is not clear."


def _read_swap(fields: Fields) -> Swap | None:
    """One swap; None where it is faulty."""
    values = (fields.id(), fields.text("instead_of"), fields.text("use"))
    ratio = fields.number("ratio", 1.0, least=0.001, most=MOST_RATIO)
    unit = fields.text("unit", "") if fields.has("unit") else None
    note = fields.text("note", "")
    if not all(values):
        return None
    try:
        return Swap(SwapId(values[0]), values[1], values[2], ratio, unit, note)
    except QuantityError as error:
        fields.fault("use", "It cannot be swapped so.", str(error))
        return None


def _read_ingredient(fields: Fields) -> Ingredient:
    return Ingredient(
        name=fields.text("name"),
        amount=fields.maybe_number("amount", least=0, most=1_000_000),
        unit=fields.text("unit", ""),
        note=fields.text("note", ""),
    )
