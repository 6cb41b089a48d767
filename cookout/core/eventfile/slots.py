"""The tables [[demo_slots]]."""

from cookout.core.eventfile.clock import Clock
from cookout.core.eventfile.fields import DAY_MINUTES, Fields
from cookout.core.eventfile.heading import read_minute
from cookout.core.kitchen.recipe import StepId
from cookout.core.planning.event import DemoSlot, DishId, HelperId, LiveStep, ReadyMade, SlotId


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
        live=tuple(_read_live(entry) for entry in fields.tables("live", "demo_slots.live")),
        ready_made=tuple(
            _read_ready_made(
                entry, clock, starts_at, starts_at + minutes if fields.sound("starts", "minutes") else None
            )
            for entry in fields.tables("ready_made", "demo_slots.ready_made")
        ),
    )


def _read_live(fields: Fields) -> LiveStep:
    return LiveStep(dish=DishId(fields.reference("dish")), step=StepId(fields.reference("step")))


def _read_ready_made(fields: Fields, clock: Clock, starts_at: int, ends_at: int | None) -> ReadyMade:
    by = read_minute(fields, "by", clock) if fields.has("by") else starts_at
    if ends_at is not None and by > ends_at:
        fields.fault("by", "The slot is over by then.", "Write a time before the end of the slot.")
    up_to = fields.reference("up_to", must=False)
    return ReadyMade(dish=DishId(fields.reference("dish")), by=by, up_to=StepId(up_to) if up_to else None)
