"""The menu as its page shows it."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime

from django.forms import Form

from cookout.core.planning.event import Dish, Event, Serving
from cookout.core.planning.wording import moment
from cookout.services.menu import dish_name
from cookout.web.forms.menu import DishForm, ServingForm, swap_words


@dataclass(frozen=True, slots=True)
class DishRow:
    """A dish on the page; `people` who get it, `swaps` in words, `slot` the demo that shows it."""

    id: str
    recipe: str
    name: str
    people: int | None
    serves: int
    swaps: tuple[str, ...]
    slot: str
    form: DishForm
    is_first: bool
    is_last: bool


@dataclass(frozen=True, slots=True)
class ServingRow:
    """A serving with its dishes."""

    serving: Serving
    at: datetime
    form: ServingForm
    dishes: list[DishRow]


def menu_page(event: Event, sent: Form | None = None) -> dict[str, object]:
    """The names of the template; a form that was sent stands in its place, as it was typed."""
    rows = [
        ServingRow(
            serving,
            moment(event, serving.at),
            _serving_form(event, serving.id, sent),
            _dish_rows(event, [dish for dish in event.dishes if dish.serving == serving.id], sent),
        )
        for serving in sorted(event.servings, key=lambda serving: serving.at)
    ]
    return {
        "servings": rows,
        "shown_only": _dish_rows(event, [dish for dish in event.dishes if dish.serving is None], sent),
        "new_serving": _serving_form(event, "", sent),
        "recipes": [(recipe.id, recipe.name) for recipe in event.recipes],
    }


def _serving_form(event: Event, name: str, sent: Form | None) -> ServingForm:
    """The form that was sent for this serving; one for what was taken off meanwhile stands where new ones are made."""
    if isinstance(sent, ServingForm) and (sent.thing == name or (not name and sent.is_new)):
        return sent
    return ServingForm(event, ("servings", name))


def _dish_rows(event: Event, dishes: Sequence[Dish], sent: Form | None) -> list[DishRow]:
    return [_dish_row(event, dish, place, len(dishes), sent) for place, dish in enumerate(dishes)]


def _dish_row(event: Event, dish: Dish, place: int, count: int, sent: Form | None) -> DishRow:
    fresh = DishForm(event, ("dishes", dish.id))
    recipe = event.recipe(dish.recipe)
    slot = next((slot.name for slot in event.slots if dish.id in slot.dishes), "")
    return DishRow(
        id=dish.id,
        recipe=dish.recipe,
        name=dish_name(event, dish),
        people=dish.people,
        serves=recipe.serves,
        swaps=tuple(swap_words(swap) for swap in recipe.swaps if swap.id in dish.swaps),
        slot=slot,
        form=sent if isinstance(sent, DishForm) and sent.prefix == fresh.prefix else fresh,
        is_first=place == 0,
        is_last=place == count - 1,
    )
