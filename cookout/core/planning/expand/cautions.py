"""What a task says to whoever does it: one line of detail, and the usual caution. Local codes come first.

Cautions follow fire-service and extension advice: gloves, a clear ring of 3 ft for children, never in an enclosed
space, ash that stays hot for 48 hours unless drowned and stirred.
"""

from cookout.core.fire.chart import CoalCount
from cookout.core.safety.limits import LEAST_CENTRE_F

SET_UP = (
    "Level the cooking table, clear the ground 10 ft around to bare earth, water bucket and shovel at hand, "
    "lidded metal can for ash."
)
LIGHT_CAUTION = (
    "In the open only, never in a tent, vehicle or any enclosed space: coals give off carbon monoxide. "
    "Gloves on, children 3 ft away, 10 ft from anything that burns. Local fire rules come first."
)
ASH_OVER = "Ready when the coals are white all over."
ASH_OVER_CAUTION = "Never leave lit coals alone; keep children 3 ft away."
COALS_CAUTION = "Long gloves and tongs; keep children 3 ft away; feed no coals with lighter fluid."
IRON_CAUTION = "Hot iron: gloves, lid lifter, lid set down on a stand and never on the grass."
STEAM_CAUTION = "Hot iron and steam: gloves, tilt the lid away from you, keep children 3 ft away."
TURN = "Oven a quarter turn one way, lid a quarter turn the other."
DROWN = "Spread the coals, pour water, stir, pour again until nothing steams; into a lidded metal can."
DROWN_CAUTION = "Steam scalds: stand upwind, gloves on. Ash that was not drowned stays hot for up to 48 hours."


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


def look_for(food: str, note: str) -> str:
    """What tells that the food is done."""
    centre = LEAST_CENTRE_F.get(food)
    done = f"Centre at least {centre} °F ({round((centre - 32) / 1.8)} °C)." if centre else ""
    return " ".join(part for part in (note, done) if part)


def heat(temperature_c: float, units: str) -> str:
    """A temperature in the event's units."""
    return f"{round(temperature_c * 9 / 5 + 32)} °F" if units == "us" else f"{round(temperature_c)} °C"
