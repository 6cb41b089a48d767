"""What a task says to whoever does it: one line of detail, and the usual caution. Local codes come first."""

from cookout.core.fire.chart import CoalCount
from cookout.core.planning.event import Event
from cookout.core.planning.expanded import TaskInfo, TaskKind
from cookout.core.quantities import show_elevation
from cookout.core.safety.cautions import caution_for, done_at
from cookout.core.safety.distances import CLEARED

ASH_OVER = "Ready when the coals are white all over."
TURN = "Oven a quarter turn one way, lid a quarter turn the other."
DROWN = "Spread the coals, pour water, stir, pour again until nothing steams; into a lidded metal can."


def set_up(units: str) -> str:
    """What setting up takes, distances in the event's units."""
    around = show_elevation(CLEARED.metres, units)
    return (
        f"Level the cooking table, clear the ground {around} around to bare earth, water bucket and shovel at hand, "
        "lidded metal can for ash."
    )


# Work that is not hot and yet bears its caution.
_ALWAYS = frozenset({TaskKind.SET_UP, TaskKind.SERVE, TaskKind.TASTE})


def caution_of(info: TaskInfo, units: str) -> str:
    """The usual caution of a task by its kind, or that of hot iron where it is hot work of a kind that need not be."""
    if info.kind is TaskKind.COOL and info.step is None:
        return ""
    found = caution_for(info.kind.value, units)
    if info.hot and (found is None or not found.hot):
        found = caution_for(TaskKind.LOAD.value, units)
    return found.text if found is not None and (found.hot or info.kind in _ALWAYS) else ""


def coals_to_lay(count: CoalCount) -> str:
    """How many coals go where, and the band in which the rules of thumb agree."""
    where = f"{count.lid} coals on the lid, {count.under} under"
    if count.lid == 0:
        where = f"{count.under} coals under, none on the lid"
    return f"{where} (anything from {count.least} to {count.most} in all is defensible)."


def coals_to_add(lid: int, under: int) -> str:
    """How many fresh coals go where; the ash is knocked off first."""
    where = f"{lid} fresh coals on the lid, {under} under" if lid else f"{under} fresh coals under"
    return f"{where}; knock the ash off first."


def look_for(event: Event, food: str, note: str) -> str:
    """What tells that the food is done, with the rule that asks for it."""
    done = done_at(food, event.units, event.food_rules.limits)
    return " ".join(part for part in (note, done) if part)


def heat(temperature_c: float, units: str) -> str:
    """A temperature in the event's units."""
    return f"{round(temperature_c * 9 / 5 + 32)} °F" if units == "us" else f"{round(temperature_c)} °C"
