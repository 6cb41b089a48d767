"""Changes that a planner tries beside a plan: what each makes of the event, and what none may make of it.

A change is a flat mapping, so that it travels in JSON and through a form. These are tried to see what would be; those
that lead out of an impossible event, and the one way to apply any of them, stand in `ways_out`.

    {"kind": "helper_hours", "helper": ID, "start": MINUTE, "end": MINUTE}
    {"kind": "remove_gear", "gear": ID, "count": N}                  count is 1 where it is left out
    {"kind": "more_people", "count": N, "serving": ID}               fewer with N below 0; every serving without an ID
    {"kind": "move_servings", "minutes": N}                          earlier with N below 0
    {"kind": "set_wind", "wind": "20 mph"}
    {"kind": "set_air", "air": "95 F"}
"""

from collections.abc import Callable, Iterator
from dataclasses import replace
from itertools import pairwise

from cookout.core.errors import CookoutError
from cookout.core.fire.weather import Weather
from cookout.core.planning.event import (
    DemoSlot,
    Dish,
    Event,
    Gear,
    Helper,
    HelperId,
    Pin,
    Serving,
    ServingId,
    Window,
    next_or_key_error,
)
from cookout.core.quantities import parse_speed, parse_temperature

Change = dict[str, str | int]

# What an event file can say; a test writes events at these limits and reads them back.
MOST_PIECES = 200
SMALLEST_INCHES, LARGEST_INCHES = 4, 24
MOST_PEOPLE = 10_000
MOST_SLOT_MINUTES = 24 * 60
FARTHEST_MINUTES = 13 * 24 * 60
STRONGEST_MPS = 120.0
COLDEST_C, WARMEST_C = -60.0, 60.0


class ChangeError(CookoutError):
    """A change that does not fit the event, such as one for a helper who has left the crew."""


def helper_hours(event: Event, change: Change) -> Event:
    """One of the crew is there from then until then, whatever was said before."""
    helper = event.helper(HelperId(str(change["helper"])))
    hours = Window(int(change["start"]), int(change["end"]))
    return replace(event, crew=tuple(replace(h, windows=(hours,)) if h.id == helper.id else h for h in event.crew))


def remove_gear(event: Event, change: Change) -> Event:
    """Fewer of some gear, or none of it."""
    gear = next_or_key_error((g for g in event.gear if g.id == change["gear"]), str(change["gear"]))
    fewer = int(change.get("count", 1))
    if not 0 < fewer <= gear.count:
        raise ChangeError(f"There are {gear.count} of “{gear.name}”; take away from 1 to {gear.count}.")
    if fewer < gear.count:
        left = tuple(replace(g, count=g.count - fewer) if g.id == gear.id else g for g in event.gear)
        return replace(event, gear=left)
    for recipe in event.recipes:
        if any(use.kind == gear.id for step in recipe.steps for use in step.gear):
            raise ChangeError(f"{recipe.name} asks for “{gear.name}” by name; keep one, or change the recipe first.")
    return replace(event, gear=tuple(g for g in event.gear if g.id != gear.id))


def more_people(event: Event, change: Change) -> Event:
    """More people, or fewer, at one serving or at every one; dishes for some of them grow in proportion."""
    chosen = event.serving(ServingId(str(change["serving"]))) if change.get("serving") else None
    more = int(change["count"])
    grown = {s.id: s.people + more for s in event.servings if chosen is None or s.id == chosen.id}
    before = {serving.id: serving for serving in event.servings}
    for serving_id, people in grown.items():
        if people < 1:
            serving = before[serving_id]
            raise ChangeError(f"{serving.name} is for {serving.people}; take away {serving.people - 1} at most.")
    return replace(
        event,
        servings=tuple(replace(s, people=grown.get(s.id, s.people)) for s in event.servings),
        dishes=tuple(
            _for_as_many(dish, before[dish.serving].people, grown[dish.serving])
            if dish.serving is not None and dish.serving in grown
            else dish
            for dish in event.dishes
        ),
    )


def _for_as_many(dish: Dish, before: int, after: int) -> Dish:
    """The dish for its share of the people, rounded half up, and for one at least."""
    if dish.people is None:
        return dish
    return replace(dish, people=max(1, (2 * dish.people * after + before) // (2 * before)))


def move_servings(event: Event, change: Change) -> Event:
    """Every serving later, or earlier, by as much; demo slots stay where they are."""
    minutes = int(change["minutes"])
    return replace(event, servings=tuple(replace(s, at=s.at + minutes) for s in event.servings))


def set_wind(event: Event, change: Change) -> Event:
    """A wind that blows all day, with gusts no weaker than it."""
    mps = parse_speed(str(change["wind"]))
    if mps > STRONGEST_MPS:
        raise ChangeError(f"No wind is as strong as {change['wind']}; check the number and its unit.")
    return _in_weather(event, lambda w: replace(w, wind_mps=mps, gust_mps=max(w.gust_mps, mps)))


def set_air(event: Event, change: Change) -> Event:
    """Air that is as warm or cold as that all day."""
    air_c = parse_temperature(str(change["air"]))
    if not COLDEST_C <= air_c <= WARMEST_C:
        raise ChangeError(f"Nobody cooks outdoors at {change['air']}; check the number and its scale.")
    return _in_weather(event, lambda w: replace(w, air_c=air_c))


def _in_weather(event: Event, changed: Callable[[Weather], Weather]) -> Event:
    hours = tuple(replace(hour, weather=changed(hour.weather)) for hour in event.hours)
    return replace(event, weather=changed(event.weather), hours=hours)


def refuse_unwritable(before: Event, after: Event) -> None:
    """Raise `ChangeError` where a change made something that no event file can say, and so nobody could keep."""
    for word in (
        *_gear_amiss(set(after.gear) - set(before.gear)),
        *_servings_amiss(set(after.servings) - set(before.servings)),
        *_dishes_amiss(set(after.dishes) - set(before.dishes)),
        *_slots_amiss(set(after.slots) - set(before.slots), after.slots),
        *_crew_amiss(set(after.crew) - set(before.crew)),
        *_pins_amiss(set(after.pins) - set(before.pins)),
    ):
        raise ChangeError(word)


def _gear_amiss(changed: set[Gear]) -> Iterator[str]:
    for gear in changed:
        if not 1 <= gear.count <= MOST_PIECES:
            yield f"That makes {gear.count} of “{gear.name}”; from 1 to {MOST_PIECES} can be planned with."
        if gear.inches is not None and not SMALLEST_INCHES <= gear.inches <= LARGEST_INCHES:
            yield f"No oven is {gear.inches} inches across; from {SMALLEST_INCHES} to {LARGEST_INCHES} there are."


def _servings_amiss(changed: set[Serving]) -> Iterator[str]:
    for serving in changed:
        if not 1 <= serving.people <= MOST_PEOPLE:
            yield f"That makes {serving.people} people at {serving.name}; from 1 to {MOST_PEOPLE} can be planned for."
        if abs(serving.at) > FARTHEST_MINUTES:
            yield f"That takes {serving.name} to another week; move it by less."


def _dishes_amiss(changed: set[Dish]) -> Iterator[str]:
    for dish in changed:
        if dish.people is not None and dish.people > MOST_PEOPLE:
            yield f"That makes {dish.people} people for “{dish.id}”; {MOST_PEOPLE} at most can be planned for."


def _slots_amiss(changed: set[DemoSlot], slots: tuple[DemoSlot, ...]) -> Iterator[str]:
    for slot in changed:
        if any(ready.by > slot.ends_at for ready in slot.ready_made):
            yield f"{slot.name} would be over before something stands ready for it; give it more minutes."
        for other in slots:
            together = other.starts_at < slot.ends_at and slot.starts_at < other.ends_at
            if other.id != slot.id and other.presenter == slot.presenter and together:
                yield f"{slot.name} and {other.name} would be at the same time, with one presenter for both."
        if not 1 <= slot.minutes <= MOST_SLOT_MINUTES:
            yield f"{slot.name} would last {slot.minutes} min; from 1 min to a day is possible."
        if abs(slot.starts_at) > FARTHEST_MINUTES:
            yield f"That takes {slot.name} to another week; move it by less."


def _crew_amiss(changed: set[Helper]) -> Iterator[str]:
    for helper in changed:
        in_order = sorted(helper.windows, key=lambda window: window.start)
        if any(later.start < earlier.end for earlier, later in pairwise(in_order)):
            yield f"{helper.name} would be there twice at once; move the hours by less."
        for window in helper.windows:
            if window.end <= window.start:
                yield f"{helper.name} would go before coming; give an end after the start."
            if max(abs(window.start), abs(window.end)) > FARTHEST_MINUTES:
                yield f"That takes the hours of {helper.name} to another week; move them by less."


def _pins_amiss(changed: set[Pin]) -> Iterator[str]:
    for pin in changed:
        if pin.at is not None and abs(pin.at) > FARTHEST_MINUTES:
            yield "That pins a task to another week; give a time nearer to the event."
        if len(set(pin.helpers)) < len(pin.helpers) or len(set(pin.units)) < len(pin.units):
            yield "That pins the same helper or piece twice; name each once."
