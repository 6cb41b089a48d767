"""Pins by hand as part of an event: in words, put in, taken out, and freed of helpers who leave.

Changes, which travel as `changes` do:

    {"kind": "pin", "task": ID, "at": MINUTE, "helpers": "ada, ben", "units": "12-inch oven A|12-inch oven B"}
    {"kind": "unpin", "task": ID}                                    several ids are parted by a comma and a blank

Of a pin's at, helpers and units one at least is given; it takes the place of the pin that its task had.
"""

from dataclasses import replace

from cookout.core.planning.changes import Change, ChangeError
from cookout.core.planning.event import Event, HelperId, Pin
from cookout.core.planning.wording import clock


def say_pin(event: Event, pin: Pin, name: str) -> str:
    """A pin in words, such as ``“Bake” at 12:30, by Ada, with 12-inch oven A``; `name` is what its task is called."""
    crew = {helper.id: helper.name for helper in event.crew}
    at = f" at {clock(event, pin.at)}" if pin.at is not None else ""
    by = f", by {' and '.join(crew.get(helper, helper) for helper in pin.helpers)}" if pin.helpers else ""
    units = f", with {' and '.join(pin.units)}" if pin.units else ""
    return f"“{name}”{at}{by}{units}"


def pin_task(event: Event, change: Change) -> Event:
    """A task pinned by hand, in place of what was pinned of it before."""
    pin = Pin(
        task=str(change["task"]),
        at=int(change["at"]) if change.get("at", "") != "" else None,
        helpers=tuple(HelperId(each) for each in str(change.get("helpers", "")).split(", ") if each),
        units=tuple(each for each in str(change.get("units", "")).split("|") if each),
    )
    if pin == Pin(pin.task):
        raise ChangeError("This pins nothing; give a time, helpers or pieces of gear.")
    for helper in pin.helpers:
        event.helper(helper)
    return replace(event, pins=(*(other for other in event.pins if other.task != pin.task), pin))


def unpin_tasks(event: Event, change: Change) -> Event:
    """Tasks that are no longer pinned; `KeyError` where one of them is not."""
    tasks = str(change["task"]).split(", ")
    pinned = {pin.task for pin in event.pins}
    for task in tasks:
        if task not in pinned:
            raise KeyError(task)
    return replace(event, pins=tuple(pin for pin in event.pins if pin.task not in tasks))


def without_helper(event: Event, helper: HelperId) -> Event:
    """The event with nothing pinned to a helper, who may then leave the crew; pins that pin nothing more fall out."""
    pins = (replace(pin, helpers=tuple(h for h in pin.helpers if h != helper)) for pin in event.pins)
    return replace(event, pins=tuple(pin for pin in pins if pin != Pin(pin.task)))
