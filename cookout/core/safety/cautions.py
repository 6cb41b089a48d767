"""The caution that stands beside each kind of work, on pages and on paper. Local codes come first.

Sources: a clear ring of 3 ft for children, 10 ft from anything that burns (a state fire code), never in an enclosed
space (carbon monoxide), ash that stays hot up to 48 hours unless drowned and stirred: fire-service and extension
advice, read in copies. Gloves, tongs, lid on its stand: common practice, no source.
"""

from dataclasses import dataclass

from cookout.core.quantities import show_elevation, show_temperature
from cookout.core.safety.distances import BURNABLE, CHILD_RING
from cookout.core.safety.limits import HOME, least_centre
from cookout.core.safety.rules import LimitSet

LOCAL_FIRST = "Local codes and the fire authority come first."


@dataclass(frozen=True, slots=True)
class Caution:
    """What to mind at a kind of work; `hot` work wants it on every sheet that shows the task."""

    text: str
    hot: bool = True


# Text by kind of task; {ring} and {clear} are distances in the user's units.
_TEXTS: dict[str, Caution] = {
    "set_up": Caution("Check for a fire ban today. Never in a tent, cabin, vehicle or enclosed space.", hot=False),
    "light": Caution(
        "In the open only, never in a tent, cabin, vehicle or any enclosed space: coals give off carbon monoxide, "
        "which nobody smells. Gloves on, children {ring} away, {clear} from anything that burns. {local}"
    ),
    "ash_over": Caution("Never leave lit coals alone; keep children {ring} away."),
    "lay_coals": Caution("Long gloves and tongs; keep children {ring} away; feed no coals with lighter fluid."),
    "top_up": Caution("Long gloves and tongs; keep children {ring} away; feed no coals with lighter fluid."),
    "preheat": Caution("Never leave lit coals alone; keep children {ring} away."),
    "load": Caution("Hot iron: gloves, lid lifter, lid set down on a stand and never on the grass."),
    "bake": Caution("Never leave lit coals alone; keep children {ring} away."),
    "turn": Caution("Hot iron: gloves, lid lifter, lid set down on a stand and never on the grass."),
    "look_in": Caution("Hot iron and steam: gloves, tilt the lid away from you, keep children {ring} away."),
    "take_out": Caution("Hot iron and steam: gloves, tilt the lid away from you, keep children {ring} away."),
    "cool": Caution("The pan stays hot for a while: where nobody reaches for it bare-handed."),
    "ice": Caution("Chilled until the last moment, hands washed.", hot=False),
    "prepare": Caution("Hands washed; raw meat, fish and egg apart from food that is ready to eat.", hot=False),
    "mix": Caution("Raw batter is not for tasting: raw egg and raw flour.", hot=False),
    "serve": Caution("Ask about allergies before serving; clean spoon for each dish.", hot=False),
    "taste": Caution(
        "Ask about allergies before anybody tastes; a clean spoon for each; nothing with raw egg or raw flour in it.",
        hot=False,
    ),
    "drown": Caution(
        "Steam scalds: stand upwind, gloves on. Ash that was not drowned stays hot for up to 48 hours; into a lidded "
        "metal can, never into a bin or a paper bag."
    ),
}


def caution_for(kind: str, units: str = "us") -> Caution | None:
    """The caution for a kind of task by its word (``light``, ``turn`` ...), distances in the user's units.

    None where the kind is known to need none, or is not known here.
    """
    found = _TEXTS.get(kind)
    if found is None:
        return None
    ring, clear = show_elevation(CHILD_RING.metres, units), show_elevation(BURNABLE.metres, units)
    return Caution(found.text.format(ring=ring, clear=clear, local=LOCAL_FIRST), found.hot)


def done_at(food: str, units: str = "us", code: LimitSet = HOME) -> str:
    """How hot the middle must be, with the rule that says so; empty where the code asks for nothing.

    Example: poultry: "Middle at least 165 °F (USDA-FSIS safe minimum internal temperatures)."
    """
    centre = least_centre(food, code)
    if centre is None:
        return ""
    held = f" for {centre.usual_seconds:g} s" if centre.usual_seconds else ""
    rests = f", then {centre.rest_minutes:g} min of rest" if centre.rest_minutes else ""
    return f"Middle at least {show_temperature(centre.usual_c, units)}{held}{rests} ({centre.rule})."
