"""Fuel, lighting, and what stands by the fire so that nobody is hurt.

Water, shovel and lidded metal can are what fire and forest services ask for (`safety.site`). Tongs, lid lifter,
gloves and closed shoes: common practice, no source. Cooling a burn under running water: first-aid teaching, from
memory.
"""

from cookout.core.planning.event import Event
from cookout.core.planning.lists.items import Item
from cookout.core.planning.record import PlannedFuel, PlanRecord
from cookout.core.quantities import show_elevation, show_mass
from cookout.core.safety.distances import CHILD_RING
from cookout.core.safety.rules import Standing

_PRACTICE = Standing.PRACTICE.value
_MEMORY = Standing.MEMORY.value

# The lines of the checklist of the place that stand for a thing to bring, with the name of that thing.
_FROM_CHECKLIST = {
    "water": "Buckets of water, or a hose that reaches",
    "shovel": "Shovel",
    "metal_can": "Metal can with a lid, for ash",
}

_BY_THE_FIRE = (
    Item("safety.gloves", "Leather gloves, long", None, "a pair for everybody who tends fire", _PRACTICE),
    Item("safety.tongs", "Long tongs", None, "one for each pair of hands at the coals", _PRACTICE),
    Item("safety.lifter", "Lid lifter and lid stand", None, "no lid is set down on the grass", _PRACTICE),
    Item("safety.shoes", "Closed shoes, no loose sleeves", None, "for everybody near the fire", _PRACTICE),
    Item(
        "safety.first_aid", "First-aid kit with burn dressings", 1,
        "a burn is cooled under running water first; for more than a small one call for help", _MEMORY,
    ),
    Item("safety.burn_water", "Clean cool water for burns", None, "apart from that for the fire", _MEMORY),
    Item("safety.extinguisher", "Fire extinguisher", None, "where the local code asks for one", "the local code"),
    Item("safety.brush", "Whisk broom and scraper", 1, "for ash on lids and coals", _PRACTICE),
)  # fmt: skip


def has_fire(record: PlanRecord) -> bool:
    """Whether the plan lights any coals; without a plan the checklist of the place tells."""
    return bool(record.firings) or any(check.id in _FROM_CHECKLIST for check in record.checklist)


def fuel_items(event: Event, record: PlanRecord, units: str) -> tuple[Item, ...]:
    """Coals with what is on hand of them, and what lights them; nothing where no fire is lit."""
    if not has_fire(record):
        return ()
    loads = record.fuel.chimney_loads if record.fuel is not None else None
    paper = f"for {loads} chimney loads" if loads is not None and loads != 1 else "for each chimney load"
    return (
        *((_coals(event, record.fuel, units),) if record.fuel is not None else ()),
        Item("fuel.lighter", "Lighter, and matches kept dry", None, "one beside the other", _PRACTICE),
        Item("fuel.starter", "Paper or fire starters", loads, f"{paper}; no lighter fluid", _PRACTICE),
    )


def _coals(event: Event, fuel: PlannedFuel, units: str) -> Item:
    kind = "Briquettes" if fuel.kind == "briquettes" else "Lump charcoal, in pieces of a briquette's size"
    parts = [
        show_mass(fuel.kilograms, units),
        f"{fuel.laid} laid, {fuel.added} added later, {fuel.spare} to spare",
    ]
    if event.fuel.coals is not None:
        short = fuel.coals - event.fuel.coals
        on_hand = f"{event.fuel.coals} on hand"
        parts.append(f"{on_hand}, {short} more to bring" if short > 0 else f"{on_hand}, which is enough")
    return Item("fuel.coals", kind, fuel.coals, "; ".join(parts))


def safety_items(record: PlanRecord, units: str) -> tuple[Item, ...]:
    """What stands by the fire before any is lit; nothing where none is."""
    if not has_fire(record):
        return ()
    asked = tuple(
        Item(f"safety.{check.id}", _FROM_CHECKLIST[check.id], None, check.text, check.source)
        for check in record.checklist
        if check.id in _FROM_CHECKLIST
    )
    return (*asked, *_BY_THE_FIRE, *_ring(record, units))


def _ring(record: PlanRecord, units: str) -> tuple[Item, ...]:
    """Rope for the ring that children stay out of, unless the place is known to have none."""
    if not any(check.id == "children" for check in record.checklist):
        return ()
    around = show_elevation(CHILD_RING.metres, units)
    return (Item("safety.ring", "Rope or flags", None, f"to mark {around} around the fire", CHILD_RING.source),)
