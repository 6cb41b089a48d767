"""The packing list: the gear that the plan takes, fuel, what keeps people safe and clean, and what serving needs."""

from cookout.core.planning.event import Event
from cookout.core.planning.lists.items import Group
from cookout.core.planning.lists.packing_fire import fuel_items, safety_items
from cookout.core.planning.lists.packing_food import clean_items, cold_items, table_items
from cookout.core.planning.lists.packing_gear import gear_items, pan_items, unused_items
from cookout.core.planning.lists.packing_paper import paper_items, shade_items
from cookout.core.planning.lists.portions import portions
from cookout.core.planning.record import PlanRecord
from cookout.core.safety.cautions import LOCAL_FIRST, caution_for

RAW_APART = (
    "Hands washed; raw meat, fish and egg apart from food that is ready to eat, on its own board and in its own bag."
)


def packing(event: Event, record: PlanRecord, units: str) -> tuple[Group, ...]:
    """All that is brought, group by group, for a reader with these units; groups with nothing in them are left out.

    Without a plan (`record` has no tasks) nothing is known of what is used, and all gear of the event stands there.
    """
    lit = caution_for("light", units)
    assert lit is not None
    groups = (
        Group("gear", "Ovens and gear", (*gear_items(event, record), *pan_items(event))),
        Group("fuel", "Fuel and lighting", fuel_items(event, record, units), lit.text),
        Group("safety", "Fire safety and first aid", safety_items(record, units), LOCAL_FIRST),
        Group("cold", "Keeping food cold and hot", cold_items(event, record, units)),
        Group("clean", "Clean hands, boards and knives", clean_items(event), RAW_APART),
        Group("table", "Serving", table_items(event, portions(event))),
        Group("shade", "Shade and shelter", shade_items(record), _SHADE),
        Group("paper", "Paper and pens", paper_items(event, record)),
        Group("unused", "Not in the plan", unused_items(event, record)),
    )
    return tuple(group for group in groups if group.items)


_SHADE = "No coals under anything that closes in: roof, tent and tarpaulin hold carbon monoxide, which nobody smells."
