"""The running order of a demo slot before it is planned: what its parts take, added up against the slot."""

from collections.abc import Iterator
from dataclasses import dataclass

from cookout.core.planning.event import DemoSlot, Event, LiveStep, Shown, Taste
from cookout.core.planning.expand.copies import order_of


@dataclass(frozen=True, slots=True)
class Line:
    """A part of a running order: its name, and `minutes` from `begins` minutes after the start of the slot."""

    item: Shown
    name: str
    begins: int
    minutes: int


def running_order(event: Event, slot: DemoSlot) -> tuple[Line, ...]:
    """The parts one after another. A step takes its usual minutes for each batch or pan, unattended ones all at once.

    `KeyError` where a step names a dish or a step that is not there.
    """
    return tuple(_lines(event, slot))


def minutes_left(event: Event, slot: DemoSlot) -> int:
    """Minutes of the slot for which nothing stands in its running order; below 0 where it is too short."""
    return slot.minutes - sum(line.minutes for line in running_order(event, slot))


def _lines(event: Event, slot: DemoSlot) -> Iterator[Line]:
    begins = 0
    for item in slot.live:
        line = Line(item, _name(event, item), begins, _minutes(event, item))
        yield line
        begins += line.minutes


def _name(event: Event, item: Shown) -> str:
    if isinstance(item, LiveStep):
        recipe = event.recipe(event.dish(item.dish).recipe)
        return f"{recipe.step(item.step).name}: {recipe.name}"
    return f"Taste: {item.text}" if isinstance(item, Taste) else f"Talk: {item.text}"


def _minutes(event: Event, item: Shown) -> int:
    if not isinstance(item, LiveStep):
        return item.minutes
    dish = event.dish(item.dish)
    step = event.recipe(dish.recipe).step(item.step)
    copies = order_of(event, dish).amount.copies(step.scope) if step.hands else (1,)
    return step.minutes.usual * len(copies)
