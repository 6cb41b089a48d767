"""How each kind of task shows in a calendar: its category, its colour, and how long before it the alarm sounds."""

from collections.abc import Mapping
from dataclasses import dataclass

from cookout.core.planning.expanded import TaskKind


@dataclass(frozen=True, slots=True)
class Look:
    """`category` in words, `color` a CSS3 colour name (RFC 7986 section 5.9), `lead_minutes` from alarm to start.

    The leads are common practice, no source: long enough to walk over and wash hands, longer where things must be
    fetched first, short for a quarter turn. Useful range 0 to 60.
    """

    category: str
    color: str
    lead_minutes: int


_FIRE, _FOOD, _OVEN, _WAIT, _TABLE = "firebrick", "olivedrab", "sienna", "steelblue", "goldenrod"

LOOKS: Mapping[str, Look] = {
    TaskKind.SET_UP: Look("Set-up", "slategray", 30),
    TaskKind.PREPARE: Look("Preparing", _FOOD, 10),
    TaskKind.MIX: Look("Mixing", _FOOD, 10),
    TaskKind.REST: Look("Resting", _WAIT, 5),
    TaskKind.LIGHT: Look("Fire", _FIRE, 10),
    TaskKind.ASH_OVER: Look("Ashing over", _WAIT, 5),
    TaskKind.LAY_COALS: Look("Fire", _FIRE, 10),
    TaskKind.PREHEAT: Look("Preheating", _WAIT, 5),
    TaskKind.LOAD: Look("Loading", _OVEN, 5),
    TaskKind.BAKE: Look("Baking", _OVEN, 5),
    TaskKind.TURN: Look("Turning", _OVEN, 2),
    TaskKind.LOOK_IN: Look("Look-in", _OVEN, 2),
    TaskKind.TOP_UP: Look("Fire", _FIRE, 5),
    TaskKind.TAKE_OUT: Look("Taking out", _OVEN, 5),
    TaskKind.COOL: Look("Cooling", _WAIT, 5),
    TaskKind.ICE: Look("Icing", _FOOD, 10),
    TaskKind.FINISH: Look("Finishing", _FOOD, 10),
    TaskKind.SERVE: Look("Serving", _TABLE, 10),
    TaskKind.DROWN: Look("Fire", _FIRE, 5),
    TaskKind.TALK: Look("Talk", _TABLE, 5),
    TaskKind.TASTE: Look("Tasting", _TABLE, 5),
}

LIVE_LEAD_MINUTES = 15
"""Least lead of a task shown before an audience, in minutes; common practice, no source."""


def look_of(kind: str) -> Look:
    """The look of a kind; a kind not listed shows under its own name."""
    return LOOKS.get(kind) or Look(kind.replace("_", " ").capitalize() or "Task", "slategray", 5)
