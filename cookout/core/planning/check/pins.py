"""Rules for what is pinned by hand, and for pieces of gear by name: each in one place at a time."""

from collections.abc import Iterator

from cookout.core.planning.check.breach import Breach, Use, overfull
from cookout.core.planning.check.reading import Reading, clock
from cookout.core.planning.event import Pin
from cookout.core.planning.pieces import NAMED_KINDS, name_pieces, pieces_named
from cookout.core.planning.problem import TaskId


def pins_kept(reading: Reading) -> Iterator[Breach]:
    """Each pinned task starts when it is pinned to, in the hands and with the pieces that it is pinned to.

    A pin to what is no longer there asks for nothing.
    """
    units = name_pieces(reading.expanded, reading.plan) if any(pin.units for pin in reading.event.pins) else {}
    for pin in reading.event.pins:
        task = TaskId(pin.task)
        if task in reading.expanded.info:
            yield from _kept(reading, pin, task, set(units.get(task, ())))


def _kept(reading: Reading, pin: Pin, task: TaskId, units: set[str]) -> Iterator[Breach]:
    start, name = reading.start(task), reading.name(task)
    if pin.at is not None and start != pin.at:
        text = f"{name} is pinned at {clock(reading, pin.at)} and starts at {clock(reading, start)}"
        yield Breach("pins_kept", (task,), text, start)
    for helper in pin.helpers:
        if helper in reading.crew and helper not in reading.helpers(task):
            text = f"{name} is pinned to {reading.crew[helper].name}, who does not do it"
            yield Breach("pins_kept", (task,), text, start)
    for unit in pin.units:
        labels = {label for _, label in pieces_named(reading.event.gear, unit)}
        if labels and not labels & units:
            yield Breach("pins_kept", (task,), f"{name} is pinned to {unit} and does not use it", start)


def pieces_in_one_place(reading: Reading) -> Iterator[Breach]:
    """Each task has as many pieces by name as it uses of such gear, and no piece is in two places at once."""
    named = name_pieces(reading.expanded, reading.plan)
    uses: dict[str, list[Use]] = {}
    for info in reading.tasks:
        start, units = reading.start(info.id), named.get(info.id, ())
        wanted = sum(n for gear, n in reading.gear_used(info.id).items() if reading.gear[gear].kind in NAMED_KINDS)
        if len(units) != wanted:
            text = f"{reading.name(info.id)} uses {wanted} pieces of gear and is given {len(units)} by name"
            yield Breach("pieces_in_one_place", (info.id,), text, start)
        for unit in units:
            uses.setdefault(unit, []).append(Use(info.id, start, reading.end(info.id)))
    for unit, places in uses.items():
        # Two pieces of different sizes may bear the same name.
        found = overfull(places, max(1, len(pieces_named(reading.event.gear, unit))))
        if found is not None:
            minute, _, tasks = found
            text = f"{unit} would be at {' and '.join(map(reading.name, tasks))} at {clock(reading, minute)}"
            yield Breach("pieces_in_one_place", tasks, text, minute)
