"""Paper that the day is run from, and what keeps sun and rain off people. Common practice, no source."""

from cookout.core.planning.event import Event
from cookout.core.planning.lists.items import Item
from cookout.core.planning.record import PlanRecord
from cookout.core.safety.rules import Standing

_PRACTICE = Standing.PRACTICE.value


def shade_items(record: PlanRecord) -> tuple[Item, ...]:
    """Shade and rain cover for people and food, light for late hours; nothing that goes over coals."""
    lit = "away from the fire" if record.firings else ""
    return (
        Item("shade.roof", "Open shade for food and people", None, lit, _PRACTICE),
        Item("shade.tables", "Work tables and a clean cover", None, "", _PRACTICE),
        Item("shade.water", "Drinking water for the crew", None, "work at coals is hot", _PRACTICE),
        Item("shade.torch", "Torch or head lamp", None, "if it may grow dark before the coals are cold", _PRACTICE),
        Item("shade.seats", "Seats", None, "a break from the coals is part of the plan", _PRACTICE),
    )


def paper_items(event: Event, record: PlanRecord) -> tuple[Item, ...]:
    """Run sheet and call sheets, pens and a clock; sheets are counted by the helpers that the plan calls."""
    called = sum(helper.called_at is not None for helper in record.helpers)
    sheets = (
        (
            Item("paper.run_sheet", "Run sheet", 1, "on a board that bears wind and rain"),
            Item("paper.call_sheets", "Call sheets", called, "one for each helper"),
        )
        if record.tasks
        else ()
    )
    demo = (Item("paper.demo", "Running order of the demonstrations", len(event.slots)),) if event.slots else ()
    return (
        *sheets,
        *demo,
        Item("paper.pens", "Pens, tape and clips", None, "", _PRACTICE),
        Item("paper.clock", "Clock that everybody sees", 1, "the plan goes by the minute", _PRACTICE),
    )
