"""What could be tried beside a plan: builders for the changes that are offered, and trials that suit this event."""

from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import dataclass
from itertools import islice
from types import MappingProxyType

from cookout.core.kitchen.recipe import Step
from cookout.core.planning.change_words import describe
from cookout.core.planning.changes import Change
from cookout.core.planning.event import Event, Gear, GearKind, Helper
from cookout.core.planning.expand.copies import order_of
from cookout.core.planning.expand.demos import wanted_steps
from cookout.core.quantities import parse_speed, parse_temperature

__all__ = ["OFFERED", "describe", "suggestions"]

MOST_SUGGESTED = 6
EARLIER_MINUTES = 30
# So many guests more are asked about as the event can be thought to double at most.
GUESTS = (20, 10, 4, 2, 1)
WINDY = {"us": "20 mph", "metric": "9 m/s"}
HOT = {"us": "95 F", "metric": "35 C"}


def add_gear(*, gear: str, count: int = 1) -> Change:
    """More of some gear that the event has."""
    return {"kind": "add_gear", "gear": gear, "count": count}


def remove_gear(*, gear: str, count: int = 1) -> Change:
    """Fewer of some gear."""
    return {"kind": "remove_gear", "gear": gear, "count": count}


def add_helper(*, skills: Iterable[str], start: int, end: int) -> Change:
    """One adult more with those skills, there from minute `start` to minute `end` of the event."""
    return {"kind": "add_helper", "skills": ", ".join(sorted(skills)), "start": start, "end": end}


def remove_helper(*, helper: str) -> Change:
    """One of the crew stays away."""
    return {"kind": "remove_helper", "helper": helper}


def helper_hours(*, helper: str, start: int, end: int) -> Change:
    """One of the crew is there from minute `start` to minute `end` of the event and no longer."""
    return {"kind": "helper_hours", "helper": helper, "start": start, "end": end}


def more_people(*, count: int, serving: str | None = None) -> Change:
    """So many people more (below 0: fewer), at one serving or at each."""
    change: Change = {"kind": "more_people", "count": count}
    return change | {"serving": serving} if serving else change


def set_wind(*, wind: str) -> Change:
    """A wind such as "20 mph" all day."""
    return {"kind": "set_wind", "wind": wind}


def set_air(*, air: str) -> Change:
    """Air such as "95 F" all day."""
    return {"kind": "set_air", "air": air}


def move_servings(*, minutes: int) -> Change:
    """Every serving so many minutes later, or (below 0) earlier."""
    return {"kind": "move_servings", "minutes": minutes}


def move_serving(*, serving: str, minutes: int) -> Change:
    """One serving so many minutes later, or (below 0) earlier."""
    return {"kind": "move_serving", "serving": serving, "minutes": minutes}


def move_slot(*, slot: str, minutes: int) -> Change:
    """A demo slot, with what must stand ready for it, so many minutes later, or (below 0) earlier."""
    return {"kind": "move_slot", "slot": slot, "minutes": minutes}


def lengthen_slot(*, slot: str, minutes: int) -> Change:
    """A demo slot that lasts so many minutes longer, or (below 0) shorter."""
    return {"kind": "lengthen_slot", "slot": slot, "minutes": minutes}


OFFERED: Mapping[str, Callable[..., Change]] = MappingProxyType(
    {
        "add_gear": add_gear,
        "remove_gear": remove_gear,
        "add_helper": add_helper,
        "remove_helper": remove_helper,
        "helper_hours": helper_hours,
        "more_people": more_people,
        "set_wind": set_wind,
        "set_air": set_air,
        "move_servings": move_servings,
        "move_serving": move_serving,
        "move_slot": move_slot,
        "lengthen_slot": lengthen_slot,
    }
)
"""The builder of each kind of change that a planner is offered to try, by its kind."""


def suggestions(event: Event) -> tuple[Change, ...]:
    """About six trials that teach something about this event; their words are given by `describe`."""
    return tuple(islice(_Suggesting(event).all(), MOST_SUGGESTED))


@dataclass(frozen=True, slots=True)
class _Suggesting:
    event: Event

    def all(self) -> Iterator[Change]:
        """What is tried first, where the event has it; fewer ovens come last, where there was room for them."""
        event = self.event
        ovens = self._ovens_by_demand()
        yield from (add_gear(gear=oven.id) for oven in ovens[:1])
        yield from (remove_helper(helper=helper.id) for helper in self._spare_helpers()[:1])
        people = max((serving.people for serving in event.servings), default=0)
        yield from (more_people(count=count) for count in [g for g in GUESTS if g <= people][:1])
        weathers = (event.weather, *(hour.weather for hour in event.hours))
        if event.dishes and max(w.wind_mps for w in weathers) < parse_speed(WINDY[event.units]):
            yield set_wind(wind=WINDY[event.units])
        if event.servings:
            yield move_servings(minutes=-EARLIER_MINUTES)
        if event.dishes and max(w.air_c for w in weathers) < parse_temperature(HOT[event.units]):
            yield set_air(air=HOT[event.units])
        yield from (remove_gear(gear=oven.id) for oven in ovens[::-1] if oven.count > 1)

    def _ovens_by_demand(self) -> list[Gear]:
        """Ovens that something bakes in, those first that have the most minutes to bake each."""
        ovens = [gear for gear in self.event.gear if gear.kind is GearKind.OVEN]
        wanted = {gear.id: self._minutes_in(gear.inches) for gear in ovens}
        pieces = {gear.id: sum(g.count for g in ovens if g.inches == gear.inches) for gear in ovens}
        used = [gear for gear in ovens if wanted[gear.id]]
        return sorted(used, key=lambda gear: -wanted[gear.id] / pieces[gear.id])

    def _minutes_in(self, inches: int | None) -> int:
        """Minutes of baking in ovens of a size, all dishes together."""
        return sum(
            len(order_of(self.event, dish).amount.copies(step.scope)) * step.minutes.usual
            for dish in self.event.dishes
            for step in wanted_steps(self.event, dish)
            if _bakes_in(step, inches)
        )

    def _spare_helpers(self) -> list[Helper]:
        """Helpers who present nothing, those first whose every skill another has, and of them who is there shortest."""
        crew = self.event.crew if len(self.event.crew) > 1 else ()
        presenters = {slot.presenter for slot in self.event.slots}
        return sorted((h for h in crew if h.id not in presenters), key=lambda h: (self._only_one(h), _minutes_there(h)))

    def _only_one(self, helper: Helper) -> bool:
        """Whether nobody else has one of a helper's skills."""
        others = (other.skills for other in self.event.crew if other.id != helper.id)
        return not helper.skills <= frozenset().union(*others)


def _bakes_in(step: Step, inches: int | None) -> bool:
    return step.bake is not None and step.bake.oven_inches == inches


def _minutes_there(helper: Helper) -> int:
    return sum(window.end - window.start for window in helper.windows)
