"""The menu: servings, the dishes on them, and their order."""

from dataclasses import replace

from django.db import transaction
from django.utils.translation import gettext as _

from cookout.core.planning.event import Dish, DishId, Event, Serving, ServingId
from cookout.core.planning.parts import fingerprint
from cookout.services.editing import Changed, save_parts
from cookout.services.errors import InUseError, NoSuchThingError
from cookout.services.naming import id_for
from cookout.services.stored import read_stored, stored_part
from cookout.store.models import Edit


@transaction.atomic
def remove_serving(*, event_id: int, user_id: int | None, serving_id: str) -> Edit | None:
    """Take a serving out with its dishes; a dish that a demo shows stays, to be shown alone."""
    event = read_stored(event_id)
    serving = _serving(event, serving_id)
    shown = {dish for slot in event.slots for dish in slot.dishes}
    changes = [Changed(("servings", serving.id), None)]
    changes += [
        Changed(("dishes", dish.id), replace(dish, serving=None) if dish.id in shown else None)
        for dish in _dishes_of(event, serving.id)
    ]
    words = _("%(serving)s taken off the menu") % {"serving": serving.name}
    return save_parts(event_id=event_id, user_id=user_id, changes=changes, words=words)


@transaction.atomic
def add_dish(
    *, event_id: int, user_id: int | None, recipe_id: str, serving_id: str, people: int | None = None
) -> tuple[Edit | None, DishId]:
    """Put a dish of one of the event's recipes on a serving; whoever wants it twice gets a second dish of it."""
    event = read_stored(event_id)
    serving = _serving(event, serving_id)
    dish = new_dish(event, recipe_id, serving.id, people)
    words = _("%(dish)s put on %(serving)s") % {"dish": event.recipe(dish.recipe).name, "serving": serving.name}
    changes = [Changed(("dishes", dish.id), dish, was="")]
    return save_parts(event_id=event_id, user_id=user_id, changes=changes, words=words), dish.id


def new_dish(event: Event, recipe_id: str, serving: ServingId | None, people: int | None = None) -> Dish:
    """A dish of one of the event's recipes, with an id of its own; `NoSuchThingError` where there is no such recipe."""
    recipe = next((each for each in event.recipes if each.id == recipe_id), None)
    if recipe is None:
        raise NoSuchThingError(_("There is no such recipe in this event. Choose one from the list."))
    name = id_for(recipe.name, {dish.id for dish in event.dishes}, "dish")
    return Dish(id=DishId(name), recipe=recipe.id, serving=serving, people=people)


@transaction.atomic
def remove_dish(*, event_id: int, user_id: int | None, dish_id: str) -> Edit | None:
    """Take a dish off the menu; `InUseError` where a demo shows it."""
    event = read_stored(event_id)
    dish = _dish(event, dish_id)
    slot = next((slot for slot in event.slots if dish.id in slot.dishes), None)
    name = dish_name(event, dish)
    if slot is not None:
        words = _("%(dish)s is shown in the demo “%(slot)s”. Take it out there first.")
        raise InUseError(words % {"dish": name, "slot": slot.name})
    words = _("%(dish)s taken off the menu") % {"dish": name}
    return save_parts(event_id=event_id, user_id=user_id, changes=[Changed(("dishes", dish.id), None)], words=words)


@transaction.atomic
def move_dish(*, event_id: int, user_id: int | None, dish_id: str, by: int) -> Edit | None:
    """Move a dish up (-1) or down (1) among those of its serving; at the end of them it stays where it is."""
    event = read_stored(event_id)
    dish = _dish(event, dish_id)
    row = [each.id for each in _dishes_of(event, dish.serving)]
    place = row.index(dish.id) + by
    if not 0 <= place < len(row):
        return None
    before = row[place] if by < 0 else (row[place + 1] if place + 1 < len(row) else None)
    return place_dish(
        event_id=event_id, user_id=user_id, dish_id=dish_id, serving_id=dish.serving or "", before=before or ""
    )


@transaction.atomic
def place_dish(*, event_id: int, user_id: int | None, dish_id: str, serving_id: str, before: str) -> Edit | None:
    """Put a dish into a serving (empty: only shown), before another of its dishes or (empty) behind them all."""
    event = read_stored(event_id)
    dish = _dish(event, dish_id)
    serving = _serving(event, serving_id).id if serving_id else None
    order = [each.id for each in event.dishes if each.id != dish.id]
    order.insert(order.index(_dish(event, before).id) if before else len(order), dish.id)
    changes = [Changed(("dishes", dish.id), replace(dish, serving=serving))]
    changes.append(Changed(("order", "dishes"), tuple(order), was=fingerprint(event, ("order", "dishes"))))
    words = _("%(dish)s moved on the menu") % {"dish": dish_name(event, dish)}
    return save_parts(event_id=event_id, user_id=user_id, changes=changes, words=words)


def dish_name(event: Event, dish: Dish) -> str:
    """What a dish is called on pages: its recipe's name, numbered where there are several of it."""
    name = event.recipe(dish.recipe).name
    alike = [each.id for each in event.dishes if each.recipe == dish.recipe]
    return name if len(alike) == 1 else f"{name} ({alike.index(dish.id) + 1})"


def serving_id_for(event: Event, name: str) -> ServingId:
    """An id for a new serving."""
    return ServingId(id_for(name, {serving.id for serving in event.servings}, "serving"))


def _serving(event: Event, name: str) -> Serving:
    found: Serving = stored_part(event, ("servings", name))
    return found


def _dish(event: Event, name: str) -> Dish:
    found: Dish = stored_part(event, ("dishes", name))
    return found


def _dishes_of(event: Event, serving: ServingId | None) -> list[Dish]:
    return [dish for dish in event.dishes if dish.serving == serving]
