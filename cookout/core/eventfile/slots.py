"""The tables [[demo_slots]]."""

from collections.abc import Iterable

from cookout.core.eventfile.clock import Clock
from cookout.core.eventfile.fields import DAY_MINUTES, Fields
from cookout.core.eventfile.heading import read_minute
from cookout.core.kitchen.recipe import StepId
from cookout.core.planning.event import (
    DemoSlot,
    DishId,
    HelperId,
    LiveStep,
    ReadyMade,
    Shown,
    SlotId,
    Talk,
    Taste,
)

LONGEST_SAID = 200
"""Letters in what a talk or tasting is called: it is the name of a task."""


def read_slot(fields: Fields, clock: Clock) -> DemoSlot:
    """One demo slot."""
    slot_id = fields.id()
    starts_at = read_minute(fields, "starts", clock)
    minutes = fields.whole("minutes", least=1, most=DAY_MINUTES)
    return DemoSlot(
        id=SlotId(slot_id),
        name=fields.text("name", slot_id),
        starts_at=starts_at,
        minutes=minutes,
        presenter=HelperId(fields.reference("presenter")),
        live=tuple(_read_shown(entry) for entry in fields.tables("live", "demo_slots.live")),
        ready_made=tuple(
            _read_ready_made(
                entry, clock, starts_at, starts_at + minutes if fields.sound("starts", "minutes") else None
            )
            for entry in fields.tables("ready_made", "demo_slots.ready_made")
        ),
    )


def _read_shown(fields: Fields) -> Shown:
    """A live step, unless it is said to be a talk or a tasting."""
    if fields.has("talk"):
        _refuse(fields, ("dish", "step", "taste"), "A talk shows no dish and no step.", "Make it an entry of its own.")
        return Talk(text=fields.text("talk", longest=LONGEST_SAID), minutes=_read_minutes(fields))
    if fields.has("taste"):
        _refuse(fields, ("step",), "A tasting shows no step.", "Make the live step an entry of its own.")
        dish = fields.reference("dish", must=False)
        return Taste(fields.text("taste", longest=LONGEST_SAID), _read_minutes(fields), DishId(dish) if dish else None)
    _refuse(fields, ("minutes",), "A live step lasts as long as its recipe says.", "Leave it out.")
    return LiveStep(dish=DishId(fields.reference("dish")), step=StepId(fields.reference("step")))


def _read_minutes(fields: Fields) -> int:
    return fields.whole("minutes", least=1, most=DAY_MINUTES)


def _refuse(fields: Fields, keys: Iterable[str], what: str, remedy: str) -> None:
    for key in keys:
        if fields.has(key):
            fields.fault(key, what, remedy)


def _read_ready_made(fields: Fields, clock: Clock, starts_at: int, ends_at: int | None) -> ReadyMade:
    by = read_minute(fields, "by", clock) if fields.has("by") else starts_at
    if ends_at is not None and by > ends_at:
        fields.fault("by", "The slot is over by then.", "Write a time before the end of the slot.")
    up_to = fields.reference("up_to", must=False)
    return ReadyMade(dish=DishId(fields.reference("dish")), by=by, up_to=StepId(up_to) if up_to else None)
