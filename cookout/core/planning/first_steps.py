"""What an event lacks before it can be planned at all, in the order in which it is best added."""

from collections.abc import Iterator

from cookout.core.planning.event import Event
from cookout.core.planning.expand.demos import wanted_steps


def first_steps(event: Event) -> tuple[str, ...]:
    """What to add first, each in a sentence; empty where there is work and somebody to do it.

    Gear is named only beside other things that are missing: an event that lacks nothing else is told by its obstacles
    which gear its recipes ask for.
    """
    missing = (*_occasion(event), *_food(event), *_hands(event))
    return (*missing, *_gear(event)) if missing else ()


def _occasion(event: Event) -> Iterator[str]:
    if not event.servings and not event.slots:
        yield "There is nothing to be ready for yet: add a serving with its time and its people."


def _food(event: Event) -> Iterator[str]:
    if any(wanted_steps(event, dish) for dish in event.dishes) or any(slot.live for slot in event.slots):
        return
    if event.dishes:
        yield "No dish is to be served or shown yet: choose a serving for each dish."
    else:
        where = f" for {event.servings[0].name}" if event.servings else ""
        yield f"There is nothing to cook yet: add a dish{where}, made by a recipe of yours."


def _hands(event: Event) -> Iterator[str]:
    if not event.crew:
        yield "Nobody helps yet: add the crew, with the hours in which each of them is there."


def _gear(event: Event) -> Iterator[str]:
    if not event.gear:
        yield "There is no gear yet: add ovens, chimneys and what else the recipes ask for."
