"""The tables [[pins]]."""

from cookout.core.eventfile.clock import Clock
from cookout.core.eventfile.fields import Fields
from cookout.core.eventfile.heading import read_minute
from cookout.core.planning.event import HelperId, Pin

# Ids of tasks are put together from up to four ids of sixty letters.
LONGEST_TASK = 300


def read_pin(fields: Fields, clock: Clock) -> Pin:
    """One pin; whether its task and its pieces are there shows only when it is planned."""
    pin = Pin(
        task=fields.text("task", example='"show-cake.b1.p1.bake"', longest=LONGEST_TASK),
        at=read_minute(fields, "at", clock) if fields.has("at") else None,
        helpers=tuple(HelperId(word) for word in fields.words("helpers")),
        units=fields.words("units"),
    )
    if pin == Pin(pin.task) and fields.sound("at", "helpers", "units"):
        fields.fault("", "It pins nothing.", "Write at, helpers or units, or take the pin out.")
    return pin
