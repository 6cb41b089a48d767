"""The tables [[servings]] and [[dishes]]."""

from cookout.core.eventfile.clock import Clock
from cookout.core.eventfile.faults import did_you_mean, quoted
from cookout.core.eventfile.fields import DAY_MINUTES, Fields
from cookout.core.eventfile.heading import read_minute
from cookout.core.kitchen.recipe import RecipeId
from cookout.core.kitchen.replacement import SwapId
from cookout.core.planning.event import Dish, DishId, Serving, ServingId

MOST_PEOPLE = 10_000


def read_serving(fields: Fields, clock: Clock) -> Serving:
    """One serving; its list of dishes is read by `serving_by_dish`."""
    serving_id = fields.id()
    return Serving(
        id=ServingId(serving_id),
        name=fields.text("name", serving_id),
        at=read_minute(fields, "at", clock),
        people=fields.whole("people", least=1, most=MOST_PEOPLE),
        early=fields.whole("early", 10, most=DAY_MINUTES),
        late=fields.whole("late", 10, most=DAY_MINUTES),
    )


def serving_by_dish(tables: list[Fields], servings: tuple[Serving, ...], dish_ids: list[str]) -> dict[str, ServingId]:
    """Which serving lists which dish; a dish that is not there, or that stands in two lists, is a fault."""
    found: dict[str, ServingId] = {}
    for fields, serving in zip(tables, servings, strict=True):
        for dish, position in fields.placed_words("dishes").items():
            if dish not in dish_ids:
                fields.fault_in("dishes", position, f"There is no dish {quoted(dish)}.", did_you_mean(dish, dish_ids))
            elif found.setdefault(dish, serving.id) != serving.id:
                what = f"{quoted(dish)} is on the list of {quoted(found[dish])} too."
                fields.fault_in("dishes", position, what, "Make two dishes of it, each with an id of its own.")
    return found


def read_dish(fields: Fields, listed: dict[str, ServingId], servings: tuple[Serving, ...]) -> Dish:
    """One dish, in the serving that it names or that lists it."""
    dish_id = fields.id()
    named = fields.reference("serving", must=False)
    if listed.get(dish_id, named) != named and any(serving.id == named for serving in servings):
        what = f"The serving {quoted(listed[dish_id])} lists this dish."
        fields.fault("serving", what, "Name the serving in one place only.")
    serving = named or listed.get(dish_id)
    return Dish(
        id=DishId(dish_id),
        recipe=RecipeId(fields.reference("recipe")),
        serving=ServingId(serving) if serving else None,
        people=fields.maybe_whole("people", least=1, most=MOST_PEOPLE),
        swaps=tuple(SwapId(word) for word in fields.words("swaps")),
    )
