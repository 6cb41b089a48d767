"""Lists for reading: lines in sections, each with how it stands and who ticked it."""

from collections.abc import Callable, Iterable
from dataclasses import dataclass, replace

from django.utils.functional import Promise
from django.utils.translation import gettext_lazy as _

from cookout.core.planning.event import Event as CoreEvent
from cookout.core.planning.record import PlanRecord
from cookout.store.selectors.lists import Tick
from cookout.web.reading.list_lines import (
    KEPT,
    Line,
    Section,
    leftover_sections,
    measuring_sections,
    packing_sections,
    shopping_sections,
)

Words = str | Promise
Builder = Callable[[CoreEvent, PlanRecord, str], tuple[Section, ...]]


@dataclass(frozen=True, slots=True)
class Kind:
    """One of the lists: its title, what it is for, what a ticked line is called, and whether things may be on hand.

    `counted` is what the lines are that nothing is left to do about, `legend` says what the words on its lines ask for.
    """

    title: Words
    purpose: Words
    done: Words
    counted: Words
    build: Builder
    may_be_on_hand: bool = False
    legend: tuple[tuple[Words, Words], ...] = ()


KINDS: dict[str, Kind] = {
    "shopping": Kind(
        _("Shopping"),
        _("What all dishes take together, for as many batches as are really made, by where it stands in a shop."),
        _("bought"),
        _("bought or on hand"),
        shopping_sections,
        may_be_on_hand=True,
    ),
    "measuring": Kind(
        _("Measure out"),
        _("What can be measured before the day, for one batch at a time, and what stays cold until then."),
        _("measured"),
        _("measured"),
        measuring_sections,
        legend=tuple(KEPT.values()),
    ),
    "packing": Kind(
        _("Packing"),
        _("The gear that the plan uses, fuel, and what keeps people safe and clean."),
        _("packed"),
        _("packed"),
        packing_sections,
    ),
    "leftovers": Kind(
        _("Leftovers and fire out"),
        _(
            "What is left of each dish and by when it must be cold, and what is done with coals and ovens. What was on "
            "a plate, or has stood for a time that nobody knows, is thrown away."
        ),
        _("done"),
        _("done"),
        leftover_sections,
    ),
}


@dataclass(frozen=True, slots=True)
class Ticked:
    """A line with its tick.

    `outgrown`: it was ticked for less than is wanted now, so it counts as open.
    """

    line: Line
    state: str
    by: str
    outgrown: bool

    @property
    def is_settled(self) -> bool:
        """Whether nothing is left to do about it."""
        return self.state != Tick.State.OPEN and not self.outgrown

    @property
    def is_done(self) -> bool:
        """Whether it was got, packed, done."""
        return self.is_settled and self.state == Tick.State.DONE

    @property
    def is_on_hand(self) -> bool:
        """Whether it need not be got."""
        return self.is_settled and self.state == Tick.State.ON_HAND

    @property
    def next_done(self) -> str:
        """What a press on the line sends."""
        return self._press(Tick.State.OPEN if self.is_done else Tick.State.DONE)

    @property
    def next_on_hand(self) -> str:
        """What a press on "on hand" sends."""
        return self._press(Tick.State.OPEN if self.is_on_hand else Tick.State.ON_HAND)

    def _press(self, state: Tick.State) -> str:
        return f"{state.value} {self.line.key} {self.line.told}".rstrip()


@dataclass(frozen=True, slots=True)
class TickedSection:
    """A section whose lines bear their ticks."""

    section: Section
    lines: tuple[Ticked, ...]


@dataclass(frozen=True, slots=True)
class TickList:
    """A whole list. `count` of its lines are settled, of `total`."""

    name: str
    kind: Kind
    sections: tuple[TickedSection, ...]

    @property
    def total(self) -> int:
        """How many lines there are."""
        return sum(len(section.lines) for section in self.sections)

    @property
    def count(self) -> int:
        """How many of them are settled."""
        return sum(ticked.is_settled for section in self.sections for ticked in section.lines)

    def line(self, key: str) -> Ticked | None:
        """The line of that key; None where there is none."""
        return next((each for each in self.lines if each.line.key == key), None)

    @property
    def lines(self) -> tuple[Ticked, ...]:
        """All lines in order."""
        return tuple(ticked for section in self.sections for ticked in section.lines)

    def left(self) -> "TickList":
        """The list with only what is still to do; sections with nothing of it fall away."""
        open_lines = [
            replace(each, lines=tuple(line for line in each.lines if not line.is_settled)) for each in self.sections
        ]
        return replace(self, sections=tuple(each for each in open_lines if each.lines))


def tick_list(name: str, event: CoreEvent, record: PlanRecord, units: str, ticks: Iterable[Tick]) -> TickList:
    """The list of that name (one of `KINDS`) with its ticks; ticks of lines that are gone are passed over."""
    by_key = {tick.key: tick for tick in ticks}
    kind = KINDS[name]
    return TickList(
        name,
        kind,
        tuple(
            TickedSection(section, tuple(_ticked(line, by_key.get(line.key)) for line in section.lines))
            for section in kind.build(event, record, units)
        ),
    )


def _ticked(line: Line, tick: Tick | None) -> Ticked:
    if tick is None or tick.state == Tick.State.OPEN:
        return Ticked(line, Tick.State.OPEN, "", outgrown=False)
    by = "" if tick.by is None else tick.by.name or tick.by.email
    return Ticked(line, tick.state, by, outgrown=has_grown(tick.told, line.told))


def has_grown(told: str, now: str) -> bool:
    """Whether more is wanted now than was told then, or something that cannot be compared with it.

    Both are as `list_lines.amounts_told` writes them: 2 cans may do for 1, and never for 1 kg.
    """
    before, after = _amounts(told), _amounts(now)
    return any(number > before.get(unit, 0.0) * (1 + 1e-6) for unit, number in after.items())


def _amounts(told: str) -> dict[str, float]:
    found = {}
    for part in told.split(","):
        unit, sign, number = part.rpartition("=")
        if sign:
            found[unit] = _number(number)
    return found


def _number(text: str) -> float:
    """A number that a browser sent back; what is none counts as nothing, so that the line is looked at again."""
    try:
        return float(text)
    except ValueError:
        return 0.0
