"""The shopping list: what all dishes take together, as much as is really made, by where it stands in a shop."""

from collections import defaultdict
from dataclasses import dataclass

from cookout.core.kitchen.recipe import Ingredient
from cookout.core.kitchen.words import plain_name
from cookout.core.planning.event import Event
from cookout.core.planning.lists.aisles import AisleKind, aisle_of
from cookout.core.planning.lists.buying import Buy, buy
from cookout.core.planning.lists.foods import food_key, food_of
from cookout.core.planning.lists.portions import Portion, portions
from cookout.core.planning.lists.sums import Asked, add_up, asked_of

TO_TASTE = "to taste"


@dataclass(frozen=True, slots=True)
class Want:
    """What one dish wants of a food, as its recipe names it.

    `text` is the amount for all of its batches in the reader's units, rounded up by itself; "to taste" where the recipe
    names none. `up_to` names the last step of a dish that is not finished, of which less may do.
    """

    dish: str
    dish_name: str
    name: str
    note: str
    text: str
    up_to: str = ""


@dataclass(frozen=True, slots=True)
class Line:
    """One thing to buy. `key` stays the same through re-planning and scaling; `wants` are in the event's order.

    `buys` stand side by side where amounts cannot be added, and are empty where all of it is to taste; `to_taste` where
    some dish wants it so.
    """

    key: str
    name: str
    buys: tuple[Buy, ...]
    wants: tuple[Want, ...]
    to_taste: bool = False

    @property
    def text(self) -> str:
        """How much to buy: ``6 1/2 cups``, ``4 and 600 g``, ``to taste``."""
        amounts = [one.text for one in self.buys]
        if self.to_taste:
            amounts.append("some to taste" if amounts else TO_TASTE)
        return " and ".join(amounts)

    @property
    def also(self) -> str:
        """The same in the measure of the shop, where that is known for all that is measured; else empty."""
        return self.buys[0].also if len(self.buys) == 1 else ""


@dataclass(frozen=True, slots=True)
class Aisle:
    """The lines of one kind of aisle, by name."""

    kind: AisleKind
    lines: tuple[Line, ...]


@dataclass(frozen=True, slots=True)
class _Use:
    """An ingredient in a dish."""

    portion: Portion
    ingredient: Ingredient

    @property
    def asked(self) -> Asked | None:
        """How much all batches ask for; None to taste."""
        return asked_of(self.ingredient, self.portion.batches)


def shopping(event: Event, units: str) -> tuple[Aisle, ...]:
    """All that is bought for the event's dishes, for a reader with these units ("us" or "metric").

    Each dish counts with whole batches and its swaps. Two dishes with 2 and 3 onions make one line of 5 onions.
    """
    aisles: dict[AisleKind, list[Line]] = defaultdict(list)
    for key, uses in _by_food(event).items():
        first = uses[0].ingredient
        aisles[aisle_of(food_of(first.name), first.unit)].append(_line(key, uses, units))
    return tuple(
        Aisle(kind, tuple(sorted(aisles[kind], key=lambda line: (line.name.lower(), line.key))))
        for kind in AisleKind
        if kind in aisles
    )


def _by_food(event: Event) -> dict[str, list[_Use]]:
    found: dict[str, list[_Use]] = defaultdict(list)
    for portion in portions(event):
        for ingredient in portion.recipe.ingredients:
            found[food_key(ingredient)].append(_Use(portion, ingredient))
    return found


def _line(key: str, uses: list[_Use], units: str) -> Line:
    asked = tuple(use.asked for use in uses)
    return Line(
        key=key,
        name=_name(uses),
        buys=tuple(buy(total, units) for total in add_up(tuple(one for one in asked if one is not None))),
        wants=tuple(_want(use, units) for use in uses),
        to_taste=None in asked,
    )


def _name(uses: list[_Use]) -> str:
    """The name as the recipes write it: the longest of those that are but the food, so "onions" before "onion"."""
    food = food_of(uses[0].ingredient.name)
    names = {use.ingredient.name for use in uses}
    plain = [name for name in names if plain_name(name) in (food, plain_name(food))]
    if len(names) == 1:
        return names.pop()
    return max(plain, key=lambda name: (len(name), name), default=food)


def _want(use: _Use, units: str) -> Want:
    asked, portion = use.asked, use.portion
    texts = [buy(total, units).text for total in add_up((asked,))] if asked is not None else [TO_TASTE]
    return Want(
        dish=portion.dish.id,
        dish_name=portion.name,
        name=use.ingredient.name,
        note=use.ingredient.note,
        text=texts[0],
        up_to=portion.up_to,
    )
