"""Which pins keep an event from being planned, which rule each breaks, and what to unpin."""

from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace
from itertools import combinations, islice, product

from cookout.core.planning.event import Pin
from cookout.core.planning.expand import expand
from cookout.core.planning.expanded import Expanded
from cookout.core.planning.network import start_windows
from cookout.core.planning.pin_rules import why_not
from cookout.core.planning.pins import say_pin
from cookout.core.planning.problem import TaskId
from cookout.core.planning.record import WayOut
from cookout.core.planning.trying import Trials, feasible

MOST_WAYS = 6


@dataclass(frozen=True, slots=True)
class Clash:
    """Pins that cannot all be kept, and the rule that they break, without its full stop.

    `hours` where other hours of their helpers might do.
    """

    pins: tuple[Pin, ...]
    why: str
    hours: bool = True


def pins_in_the_way(trials: Trials) -> tuple[tuple[str, ...], tuple[WayOut, ...]]:
    """What is said of the pins of an event that could be planned without them, and ways out that were tried."""
    search = _Search(trials)
    clashes = tuple(search.clashes())
    said = tuple(dict.fromkeys(search.say(clash) for clash in clashes))
    helpers = {helper for clash in clashes if clash.hours for pin in clash.pins for helper in pin.helpers}
    ways = [*search.unpinned(clashes), *trials.longer_hours(only=helpers)]
    return said or (_ALL,), tuple(ways)


_ALL = "The event can be planned, but not with all that is pinned in it."


class _Search:
    """Looks for pins that break a rule: alone by what they say, then by their times, then by trying."""

    def __init__(self, trials: Trials) -> None:
        self.trials = trials
        self.event = trials.event
        self.expanded = trials.expanded
        self.free = expand(replace(trials.event, pins=()))
        self.pins = tuple(pin for pin in self.event.pins if TaskId(pin.task) in self.expanded.pinned)

    def clashes(self) -> Iterator[Clash]:
        """Every clash that is found in the time there is; pins of one clash are left out of the search for the next."""
        left = list(self.pins)
        for clash in self._broken_rules():
            left = [pin for pin in left if pin not in clash.pins]
            yield clash
        for stuck in (self._no_times, self._no_plan):
            while left and not self.trials.over() and stuck(tuple(left)):
                pins = self._least(tuple(left), stuck)
                left = [pin for pin in left if pin not in pins]
                yield Clash(pins, self._why(pins))

    def _broken_rules(self) -> Iterator[Clash]:
        for fault in self.expanded.pin_faults:
            yield Clash(tuple(pin for pin in self.pins if pin.task in fault.tasks), fault.text, fault.hours)

    def _no_times(self, pins: tuple[Pin, ...]) -> bool:
        """Whether times and waits alone rule the pins out."""
        problem = self._with(pins).problem
        return start_windows(problem) is None or not all(
            problem.can_meet(need) for task in problem.tasks for need in task.needs
        )

    def _no_plan(self, pins: tuple[Pin, ...]) -> bool:
        """Whether no plan with the pins is found in short time."""
        return not feasible(replace(self.event, pins=pins), self.trials.limits, self.trials.watch)

    def _with(self, pins: tuple[Pin, ...]) -> Expanded:
        return expand(replace(self.event, pins=pins))

    def _least(self, pins: tuple[Pin, ...], stuck: Callable[[tuple[Pin, ...]], bool]) -> tuple[Pin, ...]:
        """As few of the pins as are stuck by themselves: one after another is left out where the rest still are.

        Singles and pairs are tried first, for most slips are one or two pins, and time may run out.
        """
        for count in (1, 2):
            for few in combinations(pins, count):
                if self.trials.over():
                    break
                if self._near(few) and stuck(few):
                    return few
        kept = list(pins)
        for pin in pins:
            fewer = tuple(each for each in kept if each != pin)
            if self.trials.over():
                break
            if fewer and stuck(fewer):
                kept = list(fewer)
        return tuple(kept)

    def _near(self, pins: tuple[Pin, ...]) -> bool:
        """Whether pins are worth trying together: one alone, or two that share a helper, a piece, or a dish."""
        if len(pins) == 1:
            return True
        one, other = pins
        shared = set(one.helpers) & set(other.helpers) or set(one.units) & set(other.units)
        dishes = [self.expanded.info[TaskId(pin.task)].dish for pin in pins]
        return bool(shared) or dishes[0] == dishes[1] or None in dishes

    def _why(self, pins: tuple[Pin, ...]) -> str:
        """The rule that pins break: for one alone its window or hours, for two what they share."""
        if len(pins) == 1:
            return why_not(self.free, self._with((replace(pins[0], at=None),)), pins[0])
        if len(pins) == 2:
            return self._both(*pins)
        return "Each can be kept without the others, but not all of them"

    def _both(self, one: Pin, other: Pin) -> str:
        helpers = [helper for helper in self.event.crew if helper.id in one.helpers and helper.id in other.helpers]
        if helpers and self._overlap(one, other):
            return f"{helpers[0].name} cannot be at both at once"
        units = [unit for unit in one.units if unit in other.units]
        if units:
            return f"“{units[0]}” is not free for both"
        return "Either can be kept, but not both"

    def _overlap(self, one: Pin, other: Pin) -> bool:
        if one.at is None or other.at is None:
            return True
        minutes = {pin.task: self.expanded.problem.task_by_id[TaskId(pin.task)].minutes for pin in (one, other)}
        return one.at < other.at + minutes[other.task] and other.at < one.at + minutes[one.task]

    def name(self, pin: Pin) -> str:
        """What the pin's task is called."""
        return self.expanded.full_name(TaskId(pin.task))

    def say(self, clash: Clash) -> str:
        """A clash as a sentence or two."""
        pins = "; ".join(say_pin(self.event, pin, self.name(pin)) for pin in clash.pins)
        return f"Pinned: {pins}. {clash.why}."

    def unpinned(self, clashes: tuple[Clash, ...]) -> Iterator[WayOut]:
        """One pin of each clash taken out, in every way up to a few; all pins where none of that works."""
        found = False
        choices = islice(product(*(clash.pins for clash in clashes)), MOST_WAYS)
        for pins in choices if clashes else ():
            way = self._way(tuple(dict.fromkeys(pins)))
            if self.trials.works(way.change):
                found = True
                yield way
        if not found:
            way = self._way(self.event.pins)
            yield replace(way, text="Take all pins out.")

    def _way(self, pins: tuple[Pin, ...]) -> WayOut:
        known = [pin for pin in pins if TaskId(pin.task) in self.expanded.info]
        names = " and ".join(f"“{self.name(pin)}”" for pin in known)
        return WayOut(f"Unpin {names}.", {"kind": "unpin", "task": ", ".join(pin.task for pin in pins)})
