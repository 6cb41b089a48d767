"""Pins by hand: which of them can be kept, and what each asks of the task, the helpers and the gear."""

from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import dataclass, field, replace
from typing import TypeVar

from cookout.core.planning.event import Event, Gear, GearKind, HelperId, Pin
from cookout.core.planning.expand.gear import Hold, Kit
from cookout.core.planning.expanded import PinFault
from cookout.core.planning.pieces import pieces_named
from cookout.core.planning.problem import ResourceId, TaskId
from cookout.core.planning.record import Warning

Name = TypeVar("Name", bound=str)

TAKE_OUT = "Take the pin out, or pin what took its place."


@dataclass(frozen=True, slots=True)
class Piece:
    """A very piece of gear that a task is pinned to."""

    task: TaskId
    label: str
    resources: tuple[ResourceId, ...]

    def is_of(self, hold: Hold) -> tuple[ResourceId, ...]:
        """Of the options of what a task wants, those that the piece belongs to."""
        return tuple(option for option in hold.options if option in self.resources)


@dataclass(slots=True)
class Pinning:
    """The pins of an event, cleared of helpers and pieces that are not there. Faults are noted as expansion meets them.

    `taken` are the labels of pieces that an occupation (a bake, a firing) is pinned to, by its first task.
    """

    event: Event
    pins: dict[TaskId, Pin] = field(default_factory=dict)
    gone: list[tuple[TaskId, str]] = field(default_factory=list)
    faults: list[PinFault] = field(default_factory=list)
    taken: dict[TaskId, tuple[str, ...]] = field(default_factory=dict)

    def __post_init__(self) -> None:
        self.pins = {TaskId(pin.task): self._cleared(pin) for pin in self.event.pins}

    def _cleared(self, pin: Pin) -> Pin:
        """The pin without what is gone, each noted."""
        crew = {helper.id for helper in self.event.crew}
        helpers = self._kept(pin, pin.helpers, lambda helper: helper in crew, "nobody in the crew is called that")
        units = self._kept(pin, pin.units, lambda unit: bool(self.pieces(unit)), "no piece of gear is called that")
        return replace(pin, helpers=helpers, units=units)

    def _kept(self, pin: Pin, names: tuple[Name, ...], known: Callable[[Name], bool], lack: str) -> tuple[Name, ...]:
        for name in names:
            if not known(name):
                self.gone.append((TaskId(pin.task), f"to “{name}” is left out: {lack} any more."))
        return tuple(name for name in names if known(name))

    def pieces(self, unit: str) -> tuple[tuple[Gear, str], ...]:
        """The pieces of that name, with their gear."""
        return pieces_named(self.event.gear, unit)

    def warnings(self, names: Mapping[TaskId, str]) -> Iterator[Warning]:
        """What is left out, given the names of all tasks of the plan."""
        for task in self.pins:
            if task not in names:
                yield Warning(task, f"A pin is left out: the plan has no task “{task}” any more.", TAKE_OUT)
        for task, text in self.gone:
            if task in names:
                yield Warning(task, f"The pin of “{names[task]}” {text}", TAKE_OUT)

    def fault(self, text: str, *tasks: TaskId, hours: bool = False) -> None:
        """Note why pins cannot be kept; `hours` where other hours of the helper might do."""
        self.faults.append(PinFault(tasks, text, hours))

    def at(self, task: TaskId) -> int | None:
        """The minute at which a task is pinned to start."""
        return self.pins[task].at if task in self.pins else None

    def helpers(self, task: TaskId) -> tuple[HelperId, ...]:
        """The helpers whom a task is pinned to."""
        return self.pins[task].helpers if task in self.pins else ()

    def parts(self, tasks: Iterable[TaskId]) -> dict[TaskId, tuple[str, ...]]:
        """What is pinned of each of the tasks that are pinned."""
        return {task: tuple(_parts(self.pins[task])) for task in tasks if task in self.pins}

    def units(self, tasks: Iterable[TaskId], kit: Kit) -> tuple[Piece, ...]:
        """The pieces that tasks of one occupation are pinned to, each once."""
        found: dict[str, Piece] = {}
        for task in tasks:
            for unit in self.pins[task].units if task in self.pins else ():
                named = self.pieces(unit)
                resources = tuple(kit.resource_of(gear) for gear, _ in named)
                found.setdefault(named[0][1], Piece(task, named[0][1], resources))
        return tuple(found.values())

    def settle(self, holder: TaskId, tasks: Iterable[TaskId], wants: tuple[Hold, ...], kit: Kit) -> tuple[Hold, ...]:
        """What a bake wants, with the gear that the pinned pieces belong to as the only option.

        Without an option where a pin cannot be kept; why is noted.
        """
        pieces = self.units(tasks, kit)
        by_hold: dict[int, list[Piece]] = {}
        for piece in pieces:
            fitting = [place for place, hold in enumerate(wants) if piece.is_of(hold)]
            if not fitting:
                self.fault(self._misfit(piece, wants, kit), piece.task)
                return tuple(Hold((), hold.amount) for hold in wants)
            by_hold.setdefault(fitting[0], []).append(piece)
        settled = list(wants)
        for place, chosen in by_hold.items():
            if len(chosen) > wants[place].amount:
                self._clash(chosen)
                return tuple(Hold((), hold.amount) for hold in wants)
            settled[place] = replace(wants[place], options=chosen[0].is_of(wants[place])[:1])
        self.taken[holder] = tuple(piece.label for piece in pieces)
        return tuple(settled)

    def settle_chimneys(self, holder: TaskId, tasks: Iterable[TaskId], coals: int, kit: Kit) -> Hold | None:
        """The chimneys of the kind that a firing is pinned to, as many as its coals fill; None where it is not pinned.

        Without an option where a pin cannot be kept; why is noted.
        """
        pieces = self.units(tasks, kit)
        if not pieces:
            return None
        kinds = [kind for kind in kit.chimneys if kind.resource in pieces[0].resources]
        strangers = [piece for piece in pieces if not kinds or kinds[0].resource not in piece.resources]
        if strangers:
            other = " beside those of another kind" if kinds else ""
            self.fault(f"It has no use for “{strangers[0].label}”{other}", strangers[0].task)
            return Hold(())
        count = -(-coals // kinds[0].coals)
        if count > kinds[0].count:
            text = f"It wants {coals} coals, and all of “{kit.gear(kinds[0].resource).name}” light {kinds[0].all_coals}"
            self.fault(text, pieces[0].task)
            return Hold(())
        if len(pieces) > count:
            self.fault(f"Its {coals} coals fill {count} and not {len(pieces)}", *dict.fromkeys(p.task for p in pieces))
            return Hold(())
        self.taken[holder] = tuple(piece.label for piece in pieces)
        return Hold((kinds[0].resource,), count)

    def _clash(self, pieces: list[Piece]) -> None:
        names = " and ".join(f"“{piece.label}”" for piece in pieces)
        self.fault(f"It cannot be in {names} at once", *dict.fromkeys(piece.task for piece in pieces))

    def _misfit(self, piece: Piece, wants: tuple[Hold, ...], kit: Kit) -> str:
        """Why a bake can do nothing with a piece."""
        gear = kit.gear(piece.resources[0])
        alike = [kit.gear(option) for hold in wants for option in hold.options]
        wanted = next((other for other in alike if other.kind is gear.kind), None)
        if wanted is not None and gear.kind is GearKind.OVEN:
            return f"It wants an oven of {wanted.inches} inches, and “{piece.label}” is one of {gear.inches}"
        if gear.kind is GearKind.TABLE:
            return f"“{piece.label}” is for ovens up to {gear.spot_inches} inches, and its own is larger"
        return f"It has no use for “{piece.label}”"

    def refuse_unused(self, tasks: Iterable[TaskId], holders: Iterable[TaskId]) -> None:
        """Note each pin to a piece of a task that holds no such gear, given all tasks and those that do."""
        idle = set(tasks) - set(holders)
        for task, pin in self.pins.items():
            if pin.units and task in idle:
                self.fault(f"It takes no oven, chimney or spot of a table, and so not “{pin.units[0]}”", task)


def _parts(pin: Pin) -> Iterator[str]:
    if pin.at is not None:
        yield "time"
    if pin.helpers:
        yield "helpers"
    if pin.units:
        yield "units"
