"""The allergen card of each serving: what is known of every dish, what is not, and whom to ask.

The plan's record and the event as it is now may differ, where a recipe was changed and not yet planned again. The card
then tells both together and says so: it may name too much and never too little.
"""

from collections import defaultdict
from dataclasses import dataclass, replace
from datetime import datetime

from cookout.core.planning.earlier import minute_of
from cookout.core.planning.event import Dish, DishId, Event
from cookout.core.planning.record import PlannedAllergens, PlanRecord
from cookout.core.planning.wording import moment
from cookout.core.safety.allergen_words import Allergen
from cookout.core.safety.allergens import NOT_SAID, dish_allergens

# Who does this work knows what is in the food.
_COOKING = frozenset({"prepare", "mix", "ice", "finish"})
CHANGED = "Its recipe or its swaps were changed since the plan was made; both are told here. Plan again."
GONE = "It is in the plan and no longer in the event. Plan again, and until then take it for being served."


@dataclass(frozen=True, slots=True)
class CardDish:
    """What the card says of one dish. `others` are allergens beyond the nine; `cooks` are those who make it.

    `same_oven` are the other dishes that go through one of its ovens; `changed` says that plan and event differ.
    """

    dish: str
    name: str
    contains: tuple[str, ...]
    may_be: tuple[str, ...]
    not_known: tuple[str, ...]
    unknown_ingredients: tuple[str, ...]
    others: tuple[str, ...]
    cooks: tuple[str, ...]
    same_oven: tuple[str, ...]
    changed: str = ""


@dataclass(frozen=True, slots=True)
class CardServing:
    """The dishes of one serving, or of a demo slot in which something is tasted."""

    serving: str
    name: str
    at: datetime
    dishes: tuple[CardDish, ...]


@dataclass(frozen=True, slots=True)
class Card:
    """The card of an event: a page for each serving, in the order of the day, and the note that stands under each."""

    servings: tuple[CardServing, ...]
    note: str = NOT_SAID


def allergen_card(event: Event, record: PlanRecord) -> Card:
    """The card of every serving that has dishes, and of every demo slot in which the audience tastes some."""
    planned = {told.dish: told for told in record.allergens}
    cooks, ovens = _cooks(record), _same_oven(record)
    sheets = []
    occasions = (*_servings(event), *_tastings(event), *_called_off(event, record))
    for occasion in sorted(occasions, key=lambda each: each.minute):
        now = (_dish(event, event.dish(dish), planned.get(dish), cooks.get(dish, ())) for dish in occasion.dishes)
        gone = (_gone(planned[dish], cooks.get(dish, ())) for dish in _taken_out(occasion, record))
        if dishes := _like_ones_once((*now, *gone), ovens):
            sheets.append(CardServing(occasion.id, occasion.name, moment(event, occasion.minute), dishes))
    return Card(tuple(sheets))


@dataclass(frozen=True, slots=True)
class _Occasion:
    """When people eat: a serving, or the tastings of a demo slot."""

    id: str
    name: str
    minute: int
    dishes: tuple[DishId, ...]


def _servings(event: Event) -> list[_Occasion]:
    return [
        _Occasion(each.id, each.name, each.at, tuple(dish.id for dish in event.dishes if dish.serving == each.id))
        for each in event.servings
    ]


def _tastings(event: Event) -> list[_Occasion]:
    return [
        _Occasion(slot.id, slot.name, slot.starts_at, tuple(d.id for d in event.dishes if d.id in slot.tasted))
        for slot in event.slots
        if slot.tasted
    ]


def _called_off(event: Event, record: PlanRecord) -> list[_Occasion]:
    """The servings that the plan has and the event has no longer."""
    kept = {each.id for each in event.servings}
    gone = {each.serving: each for each in record.servings if each.serving not in kept}
    return [_Occasion(each.serving, each.serving_name, minute_of(event, each.due_at), ()) for each in gone.values()]


def _taken_out(occasion: _Occasion, record: PlanRecord) -> list[str]:
    """The dishes that the plan serves there and the event has no longer, or not there."""
    told = {each.dish for each in record.allergens} - set(occasion.dishes)
    return [each.dish for each in record.servings if each.serving == occasion.id and each.dish in told]


def _gone(planned: PlannedAllergens, cooks: tuple[str, ...]) -> CardDish:
    return CardDish(
        dish=planned.dish,
        name=planned.dish_name,
        contains=planned.contains,
        may_be=planned.may_be,
        not_known=planned.not_known,
        unknown_ingredients=planned.unknown_ingredients,
        others=planned.others,
        cooks=cooks,
        same_oven=(),
        changed=GONE,
    )


def _like_ones_once(dishes: tuple[CardDish, ...], ovens: dict[str, dict[str, str]]) -> tuple[CardDish, ...]:
    """Dishes of one name of which the same is known stand there once, with the cooks and the ovens of all of them."""
    found: dict[CardDish, list[CardDish]] = defaultdict(list)
    for dish in dishes:
        found[replace(dish, dish="", cooks=())].append(dish)
    return tuple(
        replace(
            alike[0],
            cooks=tuple(dict.fromkeys(cook for dish in alike for cook in dish.cooks)),
            same_oven=_beside(alike, ovens),
        )
        for alike in found.values()
    )


def _beside(alike: list[CardDish], ovens: dict[str, dict[str, str]]) -> tuple[str, ...]:
    """What else goes through their ovens; another dish of their name, of which other things are known, among it."""
    own = {dish.dish for dish in alike}
    return tuple(
        dict.fromkeys(name for dish in alike for other, name in ovens.get(dish.dish, {}).items() if other not in own)
    )


def _dish(event: Event, dish: Dish, planned: PlannedAllergens | None, cooks: tuple[str, ...]) -> CardDish:
    recipe = event.recipe_of(dish)
    now = dish_allergens(((each.name, each.note) for each in recipe.ingredients), recipe.allergens)
    contains = _either(now.contains, planned.contains if planned else ())
    may_be = tuple(each for each in _either(now.may_be, planned.may_be if planned else ()) if each not in contains)
    not_known = _either(now.not_known, planned.not_known if planned else ())
    unknown = (*now.unknown, *(planned.unknown_ingredients if planned else ()))
    return CardDish(
        dish=dish.id,
        name=recipe.name,
        contains=contains,
        may_be=may_be,
        not_known=tuple(each for each in not_known if each not in contains and each not in may_be),
        unknown_ingredients=tuple(dict.fromkeys(unknown)),
        others=tuple(sorted({*now.others, *(planned.others if planned else ())})),
        cooks=cooks,
        same_oven=(),
        changed=CHANGED if planned is not None and planned.text != now.said else "",
    )


def _either(now: tuple[Allergen, ...], planned: tuple[str, ...]) -> tuple[str, ...]:
    """What either names, in the order of the law."""
    named = {*(allergen.value for allergen in now), *planned}
    return tuple(allergen.value for allergen in Allergen if allergen.value in named)


def _cooks(record: PlanRecord) -> dict[str, tuple[str, ...]]:
    """For each dish the names of those who put it together, the one with the most minutes first."""
    minutes: dict[str, dict[str, float]] = defaultdict(lambda: defaultdict(float))
    for task in record.tasks:
        if task.dish and task.hands_on and task.kind in _COOKING:
            for helper in task.helpers:
                minutes[task.dish][helper] += (task.ends_at - task.starts_at).total_seconds()
    names = {helper.id: helper.name for helper in record.helpers}
    return {
        dish: tuple(names[helper] for helper in sorted(spent, key=lambda each: (-spent[each], each)))
        for dish, spent in minutes.items()
    }


def _same_oven(record: PlanRecord) -> dict[str, dict[str, str]]:
    """For each dish the other dishes that bake in one of its ovens, with their names."""
    in_oven: dict[str, dict[str, str]] = defaultdict(dict)
    for bake in record.bakes:
        in_oven[bake.unit][bake.dish] = bake.dish_name
    found: dict[str, dict[str, str]] = defaultdict(dict)
    for dishes in in_oven.values():
        for dish in dishes:
            found[dish] |= {other: name for other, name in dishes.items() if other != dish}
    return dict(found)
