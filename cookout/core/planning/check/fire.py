"""Rules for the fire: set-up first, coals used while they are good, room in the chimneys, drowned at last."""

from collections.abc import Iterator

from cookout.core.planning.check.breach import Breach, Use, overfull
from cookout.core.planning.check.reading import Reading, clock
from cookout.core.planning.event import GearKind
from cookout.core.planning.expanded import FIRE_KINDS, Firing, TaskKind
from cookout.core.planning.problem import TaskId

WITH_COALS = (FIRE_KINDS - {TaskKind.DROWN}) | {
    TaskKind.ASH_OVER,
    TaskKind.PREHEAT,
    TaskKind.LOAD,
    TaskKind.BAKE,
    TaskKind.TURN,
    TaskKind.LOOK_IN,
    TaskKind.TAKE_OUT,
}
"""Kinds of task during which coals are alight."""

GROUND_MINUTES = 15
"""Least minutes to bare the ground of dry grass, for two; our own choice, no source."""


def set_up_first(reading: Reading) -> Iterator[Breach]:
    """Table, water and shovel stand there before anything is lit, where the event gives time to that at all."""
    if reading.event.setup_minutes <= 0:
        return
    lights = reading.of_kind(TaskKind.LIGHT)
    set_ups = reading.of_kind(TaskKind.SET_UP)
    if lights and not set_ups:
        yield Breach("set_up_first", (lights[0].id,), "coals are lit, but nobody sets up water and shovel before")
    for light in lights:
        for set_up in set_ups:
            if reading.start(light.id) < reading.end(set_up.id):
                text = f"{reading.name(light.id)} comes before {reading.name(set_up.id)} is done"
                yield Breach("set_up_first", (set_up.id, light.id), text, reading.start(light.id))
    if set_ups:
        longest = max(set_ups, key=lambda info: reading.end(info.id) - reading.start(info.id))
        if reading.end(longest.id) - reading.start(longest.id) < reading.event.setup_minutes:
            text = f"{reading.name(longest.id)} is given less than {reading.event.setup_minutes} min"
            yield Breach("set_up_first", (longest.id,), text, reading.start(longest.id))


def no_fire_on_dry_grass(reading: Reading) -> Iterator[Breach]:
    """Where dry grass lies around the fire, somebody takes time to bare the ground, beside the set-up itself."""
    set_ups, lights = reading.of_kind(TaskKind.SET_UP), reading.of_kind(TaskKind.LIGHT)
    if not reading.event.place.dry_grass or not lights or reading.event.setup_minutes <= 0:
        return
    spent = sum(reading.end(info.id) - reading.start(info.id) for info in set_ups)
    if spent < reading.event.setup_minutes + GROUND_MINUTES:
        text = "coals are lit on dry grass that nobody takes the time to rake away"
        yield Breach("no_fire_on_dry_grass", tuple(info.id for info in set_ups), text, reading.start(lights[0].id))


def drowned_last(reading: Reading) -> Iterator[Breach]:
    """The coals are drowned once nothing is over them any more."""
    burning = reading.of_kind(*WITH_COALS)
    drowns = reading.of_kind(TaskKind.DROWN)
    if not burning:
        return
    last = max(burning, key=lambda info: reading.end(info.id))
    if not drowns:
        yield Breach("drowned_last", (last.id,), "coals are lit, but nobody drowns them afterwards")
        return
    drown = max(drowns, key=lambda info: reading.start(info.id))
    if reading.start(drown.id) < reading.end(last.id):
        text = f"{reading.name(drown.id)} comes before {reading.name(last.id)} is over"
        yield Breach("drowned_last", (last.id, drown.id), text, reading.start(drown.id))


def fed_while_usable(reading: Reading) -> Iterator[Breach]:
    """Coals are laid after they have ashed over and before they fade, and every laying has coals lit for it."""
    for firing in reading.expanded.firings:
        yield from _ashed_over(reading, firing)
        ready_from = reading.end(firing.ashes)
        ready_until = ready_from + firing.window_minutes
        for task in firing.feeds:
            if not ready_from <= reading.start(task) <= ready_until:
                span = f"{clock(reading, ready_from)} to {clock(reading, ready_until)}"
                text = (
                    f"{reading.name(task)} is at {clock(reading, reading.start(task))}; its coals are good from {span}"
                )
                yield Breach("fed_while_usable", (firing.ashes, task), text, reading.start(task))
    fed = [task for firing in reading.expanded.firings for task in firing.feeds]
    for info in reading.of_kind(TaskKind.LAY_COALS, TaskKind.TOP_UP):
        if fed.count(info.id) == 0:
            text = f"no coals are lit for {reading.name(info.id)}"
            yield Breach("fed_while_usable", (info.id,), text, reading.start(info.id))


def _ashed_over(reading: Reading, firing: Firing) -> Iterator[Breach]:
    if not reading.start(firing.lights) <= reading.start(firing.ashes) <= reading.end(firing.lights):
        text = f"{reading.name(firing.ashes)} does not follow on {reading.name(firing.lights)}"
        yield Breach("fed_while_usable", (firing.lights, firing.ashes), text, reading.start(firing.ashes))


def coals_enough(reading: Reading) -> Iterator[Breach]:
    """Every task has as many coals lit for it as it takes, and no firing gives more than it holds."""
    wanted = {run.lays: run.lid + run.under for run in reading.expanded.bake_runs}
    wanted |= {task: coals for run in reading.expanded.bake_runs for task, coals in run.top_ups}
    feeders: dict[TaskId, list[Firing]] = {}
    for firing in reading.expanded.firings:
        for task in firing.feeds:
            feeders.setdefault(task, []).append(firing)
    for task, firings in feeders.items():
        lit = sum(firing.coals for firing in firings)
        if wanted.get(task, 0) > lit:
            text = f"{reading.name(task)} takes {wanted[task]} coals, and {lit} are lit for it"
            yield Breach("coals_enough", (task,), text, reading.start(task))
    for firing in reading.expanded.firings:
        alone = [task for task in firing.feeds if len(feeders[task]) == 1]
        takes = sum(wanted.get(task, 0) for task in alone)
        if takes > firing.coals:
            text = f"{reading.name(firing.lights)}: {firing.coals} coals are lit, and {takes} are taken from them"
            yield Breach("coals_enough", (firing.lights, *alone), text, reading.start(firing.lights))


def chimney_room(reading: Reading) -> Iterator[Breach]:
    """No more chimneys at once than there are, and none overfilled."""
    chimneys = [gear for gear in reading.event.gear if gear.kind is GearKind.CHIMNEY]
    known = [gear.coals for gear in chimneys if gear.coals is not None]
    largest = max(known) if known and len(known) == len(chimneys) else None
    firings = reading.expanded.firings
    for firing in firings:
        if largest is not None and firing.coals > firing.chimneys * largest:
            text = f"{firing.coals} coals do not fit into {firing.chimneys} chimneys of {largest}"
            yield Breach("chimney_room", (firing.lights,), text, reading.start(firing.lights))
    uses = [Use(each.lights, reading.start(each.lights), reading.end(each.ashes), each.chimneys) for each in firings]
    found = overfull(uses, sum(gear.count for gear in chimneys))
    if found is not None:
        minute, taken, tasks = found
        text = f"{taken} chimneys are lit at {clock(reading, minute)}, more than there are"
        yield Breach("chimney_room", tasks, text, minute)
