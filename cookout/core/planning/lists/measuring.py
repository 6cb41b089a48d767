"""What can be measured out before the day: for each dish by batch, with what stays cold until it is used.

Recipes do not say at which step an ingredient goes in, unless its note does ("for the icing"). So nothing is poured
together here: each measure is a bag of its own, and the bags of one batch travel together. How each kind is kept is
common practice, no source.
"""

import re
from collections import defaultdict
from dataclasses import dataclass
from enum import StrEnum

from cookout.core.kitchen.densities import density_of, weighed_as
from cookout.core.kitchen.recipe import Ingredient, Recipe
from cookout.core.kitchen.scaling import Scaled, scale
from cookout.core.planning.event import Event
from cookout.core.planning.lists.aisles import AisleKind, aisle_of
from cookout.core.planning.lists.foods import food_of
from cookout.core.planning.lists.portions import Portion, portions


class Kept(StrEnum):
    """How what is measured out waits for the day."""

    DRY = "dry"
    LIQUID = "liquid"
    COLD = "cold"
    FRESH = "fresh"
    CLOSED = "closed"
    UNKNOWN = "unknown"

    @property
    def heading(self) -> str:
        """It in a few words."""
        return _TITLES[self]

    @property
    def how(self) -> str:
        """What to do, in a sentence."""
        return _HOW[self]


_TITLES = {
    Kept.DRY: "Dry, in bags",
    Kept.LIQUID: "In bottles and jars",
    Kept.COLD: "Stays cold",
    Kept.FRESH: "Fresh, on the day",
    Kept.CLOSED: "Closed, as bought",
    Kept.UNKNOWN: "Ask how it is kept",
}
_HOW = {
    Kept.DRY: "Each in a bag of its own, the bags of one batch in a larger one with the dish on it. "
    "Pour together only what goes in at the same step.",
    Kept.LIQUID: "Lids tight, upright. What says “keep cold once opened” goes into the cooler.",
    Kept.COLD: "In closed boxes in the cooler until it is used; raw meat and fish below all else.",
    Kept.FRESH: "Bought and washed before, cut on the day; what is cut stays in the cooler.",
    Kept.CLOSED: "Opened when it is used; bring an opener.",
    Kept.UNKNOWN: "Look on its label whether it must stay cold, and measure it then.",
}

_BY_AISLE = {
    AisleKind.CANS: Kept.LIQUID,
    AisleKind.BAKING: Kept.DRY,
    AisleKind.GRAINS: Kept.DRY,
    AisleKind.OILS: Kept.LIQUID,
    AisleKind.SPICES: Kept.DRY,
    AisleKind.BREAD: Kept.DRY,
    AisleKind.DRINKS: Kept.LIQUID,
    AisleKind.PRODUCE: Kept.FRESH,
    AisleKind.DAIRY: Kept.COLD,
    AisleKind.MEAT: Kept.COLD,
    AisleKind.OTHER: Kept.UNKNOWN,
}
# A name or note with one of these speaks of food that is kept cold, whatever it is; cooked rice, beans and potatoes,
# tofu and sprouts are perishable as cooked and cut food is (USDA FSIS and the FDA Food Code, from memory).
_KEPT_COLD = re.compile(
    r"\b(?:ice|iced|kept cold|chilled|cooked|boiled|leftover|mashed potato(?:es)?|soaked overnight|frozen|thawed"
    r"|fresh (?:pasta|noodles?|lasagn[ae]|ravioli|gnocchi)|tofu|(?<!brussels )sprouts)\b",
    re.IGNORECASE,
)
# "for the icing" names a part of the dish; "for an hour", "for rolling out" and "for 20 min" do not.
_PART = re.compile(r"\bfor the (?P<part>[a-z]+(?: [a-z]+)?)(?=\s*(?:,|;|$))", re.IGNORECASE)


_WORTH_SAYING = 0.03
"""Share of an amount from which its rounding is told; our own choice, no source."""


@dataclass(frozen=True, slots=True)
class Measure:
    """One ingredient for one batch: `text` in the reader's units, "to taste" where the recipe names no amount.

    `said` tells what rounding to a measure changed, where it is more than the few per cent that a spoon is off.
    """

    name: str
    note: str
    text: str
    said: str = ""


@dataclass(frozen=True, slots=True)
class Bag:
    """What is measured out alike for each batch of a dish and kept the same way; `key` survives re-planning.

    `part` is what the notes say it is for ("icing"), and `step` the step of that name; empty where they do not.
    """

    key: str
    kept: Kept
    measures: tuple[Measure, ...]
    part: str = ""
    step: str = ""


@dataclass(frozen=True, slots=True)
class DishMeasures:
    """A dish with its bags, each made `batches` times; `up_to` where it is not finished, see `Portion`."""

    dish: str
    dish_name: str
    batches: int
    bags: tuple[Bag, ...]
    up_to: str = ""


def measure_out(event: Event, units: str) -> tuple[DishMeasures, ...]:
    """Every dish that has ingredients, for a reader with these units; amounts are for one batch."""
    return tuple(_dish(portion, units) for portion in portions(event) if portion.recipe.ingredients)


def _dish(portion: Portion, units: str) -> DishMeasures:
    parts: dict[tuple[str, Kept], list[Measure]] = defaultdict(list)
    for scaled in scale(portion.recipe.ingredients, 1.0, units=units):
        one = scaled.ingredient
        parts[part_of(one.note), kept_how(one)].append(_measure(scaled))
    in_order = sorted(parts, key=lambda key: (key[0], list(Kept).index(key[1])))
    return DishMeasures(
        dish=portion.dish.id,
        dish_name=portion.name,
        batches=portion.batches,
        bags=tuple(_bag(portion, part, kept, parts[part, kept]) for part, kept in in_order),
        up_to=portion.up_to,
    )


def _bag(portion: Portion, part: str, kept: Kept, measures: list[Measure]) -> Bag:
    key = ".".join(word for word in (portion.dish.id, part.replace(" ", "-"), kept.value) if word)
    return Bag(key, kept, tuple(measures), part, _step_named(portion.recipe, part))


def _measure(scaled: Scaled) -> Measure:
    one, measured = scaled.ingredient, scaled.measured
    if measured is None:
        return Measure(one.name, one.note, scaled.said)
    said = scaled.said if abs(measured.share) >= _WORTH_SAYING else ""
    return Measure(one.name, one.note, measured.text, said)


def part_of(note: str) -> str:
    """What a note says that an ingredient is for: "soft, for the icing" is "icing"; empty where it says nothing."""
    found = _PART.search(note)
    return found["part"].lower() if found else ""


def _step_named(recipe: Recipe, part: str) -> str:
    """The one step whose name speaks of that part; empty where none or several do."""
    named = [step.name for step in recipe.steps if part and re.search(rf"\b{re.escape(part)}\b", step.name.lower())]
    return named[0] if len(named) == 1 else ""


def kept_how(ingredient: Ingredient) -> Kept:
    """How an ingredient is kept until the day; what is said of cold or cooked food comes before all else.

    What comes in a can or a jar stays closed, unless its note says that it is kept cold: "cooked" may be its name.
    """
    if _KEPT_COLD.search(ingredient.note):
        return Kept.COLD
    if ingredient.unit in ("can", "jar"):
        return Kept.CLOSED
    if _KEPT_COLD.search(ingredient.name):
        return Kept.COLD
    kept = _BY_AISLE[aisle_of(food_of(ingredient.name))]
    density = density_of(weighed_as(ingredient.name, ingredient.note))
    return Kept.LIQUID if kept is Kept.DRY and density is not None and density.pours else kept
