"""Demo slots: what is shown before an audience, in what order, and what must stand ready."""

from collections.abc import Sequence
from dataclasses import replace

from django.db import transaction
from django.utils.translation import gettext as _

from cookout.core.planning.event import DemoSlot, Dish, Event, LiveStep, Shown, SlotId
from cookout.core.planning.expand.copies import order_of
from cookout.services.editing import Changed, save_parts
from cookout.services.naming import id_for
from cookout.services.stored import read_stored, stored_part
from cookout.store.models import Edit


def slot_id_for(event: Event, name: str) -> SlotId:
    """An id for a new slot."""
    return SlotId(id_for(name, {slot.id for slot in event.slots}, "demo"))


@transaction.atomic
def save_slot(
    *, event_id: int, user_id: int | None, slot: DemoSlot, dishes: Sequence[Dish], was: str, words: str
) -> Edit | None:
    """Save a slot, with `dishes` that are made only for it; one that no demo shows any more goes off the menu.

    Raises as `save_parts` does.
    """
    event = read_stored(event_id)
    changes = [Changed(("dishes", dish.id), dish, was="") for dish in dishes]
    others = tuple(each for each in event.slots if each.id != slot.id)
    changes += [Changed(("slots", slot.id), slot, was=was), *_idle(event, (*others, slot))]
    return save_parts(event_id=event_id, user_id=user_id, changes=changes, words=words)


@transaction.atomic
def remove_slot(*, event_id: int, user_id: int | None, slot_id: str) -> Edit | None:
    """Take a demo out, with the dishes that were made only for it."""
    event = read_stored(event_id)
    slot: DemoSlot = stored_part(event, ("slots", slot_id))
    others = tuple(each for each in event.slots if each.id != slot.id)
    changes = [Changed(("slots", slot.id), None), *_idle(event, others)]
    words = _("The demo “%(slot)s” taken out") % {"slot": slot.name}
    return save_parts(event_id=event_id, user_id=user_id, changes=changes, words=words)


def reordered(live: Sequence[Shown], place: int, by: int) -> tuple[Shown, ...]:
    """The running order with one item moved up (-1) or down (1); at the end of it, it stays."""
    order = list(live)
    if 0 <= place < len(order) and 0 <= place + by < len(order):
        order.insert(place + by, order.pop(place))
    return tuple(order)


def minutes_of(event: Event, item: Shown) -> int:
    """Minutes before the audience: of a talk or tasting as given; of a step its usual ones, for each time it is done.

    A step that wants no hands goes on in all its pans at once.
    """
    if not isinstance(item, LiveStep):
        return item.minutes
    dish = event.dish(item.dish)
    step = next(step for step in event.recipe(dish.recipe).steps if step.id == item.step)
    times = len(order_of(event, dish).amount.copies(step.scope)) if step.hands else 1
    return step.minutes.usual * times


def _idle(event: Event, slots: Sequence[DemoSlot]) -> list[Changed]:
    shown = {dish for slot in slots for dish in slot.dishes}
    gone = [dish for dish in event.dishes if dish.serving is None and dish.id not in shown]
    return [Changed(("dishes", dish.id), None) for dish in gone]


def with_item(slot: DemoSlot, item: Shown) -> DemoSlot:
    """The slot with one more thing shown, at the end."""
    return replace(slot, live=(*slot.live, item))
