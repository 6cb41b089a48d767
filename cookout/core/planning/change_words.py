"""Every change in plain words, one sentence each, as a page offers it or tells what was tried."""

from collections.abc import Callable

from cookout.core.kitchen.recipe import RecipeId
from cookout.core.planning.changes import Change
from cookout.core.planning.event import DemoSlot, Event, GearKind, HelperId, ServingId, next_or_key_error
from cookout.core.planning.expand import expand
from cookout.core.planning.gear_wanted import missing_gear
from cookout.core.planning.pins import pin_task, say_pin
from cookout.core.planning.problem import TaskId
from cookout.core.planning.wording import clock, span
from cookout.core.quantities import parse_speed, parse_temperature, show_speed, show_temperature


def describe(event: Event, change: Change) -> str:
    """A change of this event in words, in its units; `KeyError` where the event lacks what is to change.

    Example: `{"kind": "add_gear", "gear": "oven-12", "count": 1}` is "One more: 12-inch oven."
    """
    return WORDS[str(change["kind"])](event, change)


def _add_gear(event: Event, change: Change) -> str:
    return f"{_number(int(change['count']))} more: {_gear(event, change)}."


def _remove_gear(event: Event, change: Change) -> str:
    return f"{_number(int(change.get('count', 1)))} fewer: {_gear(event, change)}."


def _buy_gear(_: Event, change: Change) -> str:
    inches = change.get("inches")
    what = f"{inches}-inch oven" if inches else GearKind(str(change["gear_kind"])).value
    return f"Bring {change['count']} more: {what}."


def _bring_missing(event: Event, change: Change) -> str:
    names = ", ".join(wanted.name(event) for wanted in missing_gear(event))
    return f"Bring {change['count']} of each that is missing: {names}."


def _add_helper(event: Event, change: Change) -> str:
    skills = [skill for skill in str(change["skills"]).split(", ") if skill]
    who = f"Someone with the {' and '.join(skills)} skill" if skills else "One more helper"
    return f"{who} {_hours(event, change)}."


def _remove_helper(event: Event, change: Change) -> str:
    return f"Without {_helper(event, change)}."


def _present(event: Event, change: Change) -> str:
    return f"{_helper(event, change)} is there {_hours(event, change)}."


def _crew_earlier(_: Event, change: Change) -> str:
    return f"The whole crew comes {_shift(int(change['minutes']), later='earlier', earlier='later')}."


def _move_serving(event: Event, change: Change) -> str:
    serving, minutes = event.serving(ServingId(str(change["serving"]))), int(change["minutes"])
    return f"Serve {serving.name} at {clock(event, serving.at + minutes)}, {_shift(minutes)}."


def _move_servings(_: Event, change: Change) -> str:
    return f"Serve everything {_shift(int(change['minutes']))}."


def _move_slot(event: Event, change: Change) -> str:
    slot, minutes = (
        next_or_key_error((s for s in event.slots if s.id == change["slot"]), "slot"),
        int(change["minutes"]),
    )
    return f"Begin {slot.name} at {clock(event, slot.starts_at + minutes)}, {_shift(minutes)}."


def _lengthen_slot(event: Event, change: Change) -> str:
    slot = _slot(event, change)
    return f"Let {slot.name} last {span(slot.minutes + int(change['minutes']))}."


def _hold(event: Event, change: Change) -> str:
    return f"Hold {_recipe(event, change)} {change['held']} until it is served."


def _rest_less(event: Event, change: Change) -> str:
    return f"Let {_recipe(event, change)} rest {span(int(change['minutes']))} at most."


def _more_people(event: Event, change: Change) -> str:
    where = event.serving(ServingId(str(change["serving"]))).name if change.get("serving") else ""
    if not where:
        where = event.servings[0].name if len(event.servings) == 1 else "every serving"
    count = int(change["count"])
    people = "person" if abs(count) == 1 else "people"
    return f"{abs(count)} {people} {'more' if count > 0 else 'fewer'} at {where}."


def _set_wind(event: Event, change: Change) -> str:
    return f"Wind of {show_speed(parse_speed(str(change['wind'])), event.units)} all day."


def _set_air(event: Event, change: Change) -> str:
    return f"Air of {show_temperature(parse_temperature(str(change['air'])), event.units)} all day."


def _pin(event: Event, change: Change) -> str:
    pin = pin_task(event, change).pins[-1]
    return f"Pin {say_pin(event, pin, _task(event, pin.task))}."


def _unpin(event: Event, change: Change) -> str:
    names = [f"“{_task(event, task)}”" for task in str(change["task"]).split(", ")]
    return f"Let {' and '.join(names)} be planned freely again."


def _task(event: Event, task: str) -> str:
    """What a task is called; its id where the event has no such task, which a pin may well outlive."""
    expanded = expand(event)
    return expanded.full_name(TaskId(task)) if task in expanded.info else task


def _number(count: int) -> str:
    return {1: "One", 2: "Two"}.get(count, str(count))


def _shift(minutes: int, later: str = "later", earlier: str = "earlier") -> str:
    return f"{span(minutes)} {later if minutes >= 0 else earlier}"


def _hours(event: Event, change: Change) -> str:
    return f"from {clock(event, int(change['start']))} to {clock(event, int(change['end']))}"


def _slot(event: Event, change: Change) -> DemoSlot:
    return next_or_key_error((s for s in event.slots if s.id == change["slot"]), str(change["slot"]))


def _gear(event: Event, change: Change) -> str:
    return next_or_key_error((g.name for g in event.gear if g.id == change["gear"]), str(change["gear"]))


def _helper(event: Event, change: Change) -> str:
    return event.helper(HelperId(str(change["helper"]))).name


def _recipe(event: Event, change: Change) -> str:
    return event.recipe(RecipeId(str(change["recipe"]))).name


WORDS: dict[str, Callable[[Event, Change], str]] = {
    "add_gear": _add_gear,
    "remove_gear": _remove_gear,
    "buy_gear": _buy_gear,
    "bring_missing": _bring_missing,
    "add_helper": _add_helper,
    "remove_helper": _remove_helper,
    "widen_window": _present,
    "helper_hours": _present,
    "crew_earlier": _crew_earlier,
    "move_serving": _move_serving,
    "all_servings_later": _move_servings,
    "move_servings": _move_servings,
    "move_slot": _move_slot,
    "lengthen_slot": _lengthen_slot,
    "hold": _hold,
    "rest_less": _rest_less,
    "more_people": _more_people,
    "set_wind": _set_wind,
    "set_air": _set_air,
    "pin": _pin,
    "unpin": _unpin,
}
