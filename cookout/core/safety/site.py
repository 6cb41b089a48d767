"""The checklist of the cooking place, from what the event says about it. Local codes come first, always.

What is not known (None) is a question, never taken for good. A fire warning is one that an authority issued and
somebody recorded: criteria differ from office to office, so none is computed here. No standard wind limit and no
standard age for tending a fire was found; both are the organiser's. Distances and their sources: `distances`. Water
and shovel at hand, ash drowned and stirred or cold for 48 hours, a lidded metal can, never in an enclosed space:
fire-service and forest-service advice, read in copies.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from enum import StrEnum

from cookout.core.quantities import show_elevation, show_speed
from cookout.core.safety.cautions import LOCAL_FIRST
from cookout.core.safety.distances import ADVISED, BURNABLE, CHILD_RING, CLEARED, OPEN_FIRE, Distance
from cookout.core.safety.finding import Finding, Severity
from cookout.core.safety.rules import Standing


class State(StrEnum):
    """How an item of the list stands: to be done, to be found out, a warning, or a reason to light no fire."""

    DO = "to do"
    ASK = "not known"
    WARNING = "warning"
    STOP = "no fire"


class Stage(StrEnum):
    """When it is done: days before, while setting up, while there is fire, after the last food."""

    BEFORE = "before"
    SET_UP = "set_up"
    FIRE = "fire"
    AFTER = "after"


class Enclosure(StrEnum):
    """What stands around the fire; anything but open air and an open shelter gathers carbon monoxide."""

    OPEN = "open"
    OPEN_SHELTER = "open_shelter"
    TENT = "tent"
    CABIN = "cabin"
    VEHICLE = "vehicle"
    ENCLOSED = "enclosed"


@dataclass(frozen=True, slots=True)
class SiteFacts:
    """What the event says of its place. None: nobody said. Speeds in m/s, lengths in metres.

    `clear_m` is the distance to the nearest thing that burns, `wind_limit_mps` the organiser's own limit,
    `fire_warning` the words of one that was issued, `children` whether any will be there, `fire_minors` how many minors
    the organiser lets tend fire, `open_fire` a fire of wood on the ground beside or instead of coals in gear.
    """

    has_fire: bool = True
    dry_grass: bool | None = None
    wind_mps: float = 0.0
    gust_mps: float = 0.0
    wind_limit_mps: float | None = None
    fire_warning: str = ""
    clear_m: float | None = None
    open_fire: bool = False
    enclosure: Enclosure | None = None
    children: bool | None = None
    water: bool | None = None
    shovel: bool | None = None
    metal_can: bool | None = None
    adults_at_fire: int | None = None
    fire_minors: int = 0


@dataclass(frozen=True, slots=True)
class SiteParams:
    """Minutes of work for two, all our own choice with no source.

    rake_minutes    rake or mow dry grass to bare ground in a circle; 10 to 40
    soak_minutes    wet the ground around it; 3 to 10
    fetch_minutes   fill buckets, lay the shovel ready; 3 to 10
    ring_minutes    mark a ring that children stay out of; 3 to 10
    drown_minutes   spread, drown, stir and feel the ash; 8 to 20; it is the task that puts the fire out
    """

    rake_minutes: int = 15
    soak_minutes: int = 5
    fetch_minutes: int = 5
    ring_minutes: int = 5
    drown_minutes: int = 10


SITE = SiteParams()


@dataclass(frozen=True, slots=True)
class SiteItem:
    """One line of the list. `minutes` 0 where it takes no time of its own; `source` who says so, or its standing."""

    id: str
    stage: Stage
    state: State
    text: str
    source: str
    minutes: int = 0

    @property
    def is_task(self) -> bool:
        """Whether it takes time that the plan must find."""
        return self.minutes > 0 and self.state is not State.STOP


def checklist(facts: SiteFacts, *, params: SiteParams = SITE, units: str = "us") -> tuple[SiteItem, ...]:
    """Every line for this event, in the order of the day; nothing but local codes where there is no fire.

    Example: dry grass, water there, no shovel known: rake a circle (15 min), fetch a shovel.
    """
    first = SiteItem("local_codes", Stage.BEFORE, State.DO, f"Ask what is allowed here today. {LOCAL_FIRST}", "always")
    if not facts.has_fire:
        return (first,)
    items = [
        first,
        *_warning(facts),
        *_wind(facts, units),
        _enclosure(facts),
        _distance(facts, units),
        *_ground(facts, params, units),
        *_tools(facts, params),
        _adults(facts),
        *_children(facts, params, units),
        *_ash(facts, params),
    ]
    stages = list(Stage)
    return tuple(sorted(items, key=lambda item: stages.index(item.stage)))


def _warning(facts: SiteFacts) -> Iterator[SiteItem]:
    if facts.fire_warning:
        text = f"A fire warning stands: {facts.fire_warning}. Light no fire unless the fire authority says so."
        yield SiteItem("fire_warning", Stage.BEFORE, State.STOP, text, "issued by an authority, as recorded")
    else:
        text = "Look whether a fire warning or ban was issued, the day before and on the day."
        yield SiteItem("fire_warning", Stage.BEFORE, State.DO, text, "recorded when issued, never computed")


def _wind(facts: SiteFacts, units: str) -> Iterator[SiteItem]:
    blow, source = max(facts.wind_mps, facts.gust_mps), "the organiser's own limit; no standard one was found"
    if facts.wind_limit_mps is None:
        text = "Set a limit of wind and gust above which no fire is lit."
        yield SiteItem("wind", Stage.BEFORE, State.ASK, text, source)
    elif blow > facts.wind_limit_mps:
        limit = show_speed(facts.wind_limit_mps, units)
        text = f"Wind or gusts of {show_speed(blow, units)} are over the limit of {limit}: shelter, or no fire."
        yield SiteItem("wind", Stage.BEFORE, State.STOP, text, source)
    else:
        text = f"Feel the wind before lighting; over {show_speed(facts.wind_limit_mps, units)} no fire is lit."
        yield SiteItem("wind", Stage.FIRE, State.DO, text, source)


def _enclosure(facts: SiteFacts) -> SiteItem:
    source = "fire-service advice: carbon monoxide"
    never = (
        "Coals only in the open: never in a tent, cabin, vehicle or any enclosed space, not even when they look dead"
    )
    if facts.enclosure is Enclosure.OPEN:
        return SiteItem("carbon_monoxide", Stage.FIRE, State.DO, f"{never}.", source)
    if facts.enclosure is Enclosure.OPEN_SHELTER:
        text = f"Under a roof keep every side open, and the ovens at the edge; a headache means out, now. {never}."
        return SiteItem("carbon_monoxide", Stage.FIRE, State.WARNING, text, source)
    if facts.enclosure is None:
        return SiteItem("carbon_monoxide", Stage.BEFORE, State.ASK, f"{never}; is this place open?", source)
    text = f"No fire here ({facts.enclosure.value}): carbon monoxide kills and nobody smells it. Cook in the open."
    return SiteItem("carbon_monoxide", Stage.BEFORE, State.STOP, text, source)


def _distance(facts: SiteFacts, units: str) -> SiteItem:
    wanted = OPEN_FIRE if facts.open_fire else BURNABLE
    want = show_elevation(wanted.metres, units)
    source = _sources(wanted) if facts.open_fire else _sources(BURNABLE, ADVISED)
    if facts.clear_m is None:
        text = f"Pace it out: {want} or more from buildings, tents, trees and anything that burns."
        return SiteItem("distance", Stage.SET_UP, State.ASK, text, source)
    have = show_elevation(facts.clear_m, units)
    if facts.clear_m < wanted.metres:
        short = f"Only {have}" if have != want else f"A little less than {have}"
        text = f"{short} to the nearest thing that burns; {want} are wanted. Move the fire."
        return SiteItem("distance", Stage.BEFORE, State.STOP, text, source)
    if facts.clear_m < ADVISED.metres:
        text = f"{have} to the nearest thing that burns; {show_elevation(ADVISED.metres, units)} are better."
        return SiteItem("distance", Stage.SET_UP, State.WARNING, text, source)
    return SiteItem("distance", Stage.SET_UP, State.DO, f"Keep the {have} around the fire clear.", source)


def _sources(*distances: Distance) -> str:
    return "; ".join(distance.source for distance in distances)


def _ground(facts: SiteFacts, params: SiteParams, units: str) -> Iterator[SiteItem]:
    circle = show_elevation(CLEARED.metres, units)
    if facts.dry_grass is None:
        text = f"Look at the ground: dry grass is raked to bare earth in a circle of {circle}."
        yield SiteItem("ground", Stage.SET_UP, State.ASK, text, CLEARED.source)
    elif facts.dry_grass:
        text = f"Rake the dry grass to bare earth in a circle of {circle} around the fire."
        yield SiteItem("ground", Stage.SET_UP, State.WARNING, text, CLEARED.source, params.rake_minutes)
        text = "Wet the grass around the circle."
        yield SiteItem("soak", Stage.SET_UP, State.DO, text, Standing.PRACTICE.value, params.soak_minutes)
    else:
        text = f"Clear sticks and leaves in a circle of {circle}."
        yield SiteItem("ground", Stage.SET_UP, State.DO, text, CLEARED.source)


def _tools(facts: SiteFacts, params: SiteParams) -> Iterator[SiteItem]:
    for name, there, text in (
        ("water", facts.water, "Water by the fire, in buckets or a hose that reaches, before anything is lit."),
        ("shovel", facts.shovel, "A shovel by the fire, before anything is lit."),
    ):
        minutes = params.fetch_minutes if name == "water" else 0
        state = {True: State.DO, None: State.ASK, False: State.STOP}[there]
        told = text if there is not False else f"There is no {name}: no fire until there is. {text}"
        yield SiteItem(name, Stage.SET_UP, state, told, "forest-service tips", minutes)


def _adults(facts: SiteFacts) -> SiteItem:
    source = "the organiser decides who tends fire; no standard age was found"
    if facts.adults_at_fire is None:
        return SiteItem("adults", Stage.BEFORE, State.ASK, "Name the adults who stay by the fire all the time.", source)
    if facts.adults_at_fire < 1:
        text = "No adult is there to tend the fire: light none."
        return SiteItem("adults", Stage.BEFORE, State.STOP, text, source)
    text = "An adult stays by the fire from the first match until the ash is cold."
    if facts.fire_minors:
        return SiteItem("adults", Stage.FIRE, State.WARNING, f"{text} Minors tend it only beside one.", source)
    return SiteItem("adults", Stage.FIRE, State.DO, text, source)


def _children(facts: SiteFacts, params: SiteParams, units: str) -> Iterator[SiteItem]:
    if facts.children is False:
        return
    ring = show_elevation(CHILD_RING.metres, units)
    text = f"Mark a ring of {ring} around the fire that children stay out of."
    state = State.DO if facts.children else State.ASK
    yield SiteItem("children", Stage.SET_UP, state, text, CHILD_RING.source, params.ring_minutes)


def _ash(facts: SiteFacts, params: SiteParams) -> Iterator[SiteItem]:
    source = "fire-service advice"
    text = "Drown the coals, stir, drown again, feel with the back of the hand; undrowned ash stays hot for 48 hours."
    yield SiteItem("drown", Stage.AFTER, State.DO, text, source, params.drown_minutes)
    text = "Ash goes into a metal can with a lid, on bare ground away from buildings; never into a bin or a paper bag."
    state = State.DO if facts.metal_can else State.ASK if facts.metal_can is None else State.WARNING
    told = text if facts.metal_can is not False else f"There is no lidded metal can: bring one. {text}"
    yield SiteItem("metal_can", Stage.AFTER, state, told, source)


_SEVERITY = {State.STOP: Severity.REFUSED, State.WARNING: Severity.WARNING, State.ASK: Severity.NOTE}


def site_findings(items: tuple[SiteItem, ...]) -> tuple[Finding, ...]:
    """What on the list must be minded before the event: all but the lines that are simply to be done."""
    return tuple(
        Finding("site", _SEVERITY[item.state], f"{item.text} ({item.source})", LOCAL_FIRST)
        for item in items
        if item.state in _SEVERITY
    )
