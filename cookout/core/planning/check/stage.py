"""Rules for what others see: servings on the table in time, demo slots and what stands ready at them."""

from collections.abc import Iterator
from itertools import pairwise

from cookout.core.planning.check.breach import Breach
from cookout.core.planning.check.reading import Reading, clock
from cookout.core.planning.event import DemoSlot, LiveStep, ReadyMade
from cookout.core.planning.expanded import TaskInfo, TaskKind
from cookout.core.planning.problem import TaskId

BESIDE = frozenset({TaskKind.LAY_COALS, TaskKind.TOP_UP, TaskKind.TURN, TaskKind.LOOK_IN})
"""Care of the fire and the iron around a live bake, which another helper may take from the presenter."""


def served_in_time(reading: Reading) -> Iterator[Breach]:
    """Every dish of a serving is on the table within the serving's tolerance."""
    for dish in reading.event.dishes:
        if dish.serving is None:
            continue
        serving = reading.event.serving(dish.serving)
        task = reading.expanded.serves.get((serving.id, dish.id))
        if task is None:
            text = f"nobody serves {reading.food(dish.id)} at {serving.name}"
            yield Breach("served_in_time", (), text, serving.at)
            continue
        on_table = reading.end(task)
        first, last = serving.at - serving.early, serving.at + serving.late
        if not first <= on_table <= last:
            wanted = _span(reading, first, last)
            text = f"{reading.name(task)} is done at {clock(reading, on_table)}; {serving.name} is {wanted}"
            yield Breach("served_in_time", (task,), text, on_table)


def _span(reading: Reading, start: int, end: int) -> str:
    return f"{clock(reading, start)} to {clock(reading, end)}"


def live_steps_in_slot(reading: Reading) -> Iterator[Breach]:
    """Live steps are shown within their slot, by the presenter, in the order given.

    A step that two slots claim is done once, and so belongs to the first.
    """
    elsewhere: set[LiveStep] = set()
    for slot in reading.event.slots:
        shown = [(live, _shown(reading, slot, live)) for live in slot.live if live not in elsewhere]
        elsewhere |= set(slot.live)
        for live, infos in shown:
            if not infos:
                text = f"{live.step} of {reading.food(live.dish)} is not shown in {slot.name}"
                yield Breach("live_steps_in_slot", (), text, slot.starts_at)
            for info in infos:
                yield from _live(reading, slot, info)
        firsts = [min(infos, key=lambda info: reading.start(info.id)).id for _, infos in shown if infos]
        yield from _in_order(reading, firsts)


def _shown(reading: Reading, slot: DemoSlot, live: LiveStep) -> list[TaskInfo]:
    return [info for info in reading.tasks if (info.dish, info.step, info.live_in) == (live.dish, live.step, slot.id)]


def _live(reading: Reading, slot: DemoSlot, info: TaskInfo) -> Iterator[Breach]:
    start, end = reading.start(info.id), reading.end(info.id)
    if start < slot.starts_at or end > slot.ends_at:
        text = f"{reading.name(info.id)} is not within {slot.name}, {_span(reading, slot.starts_at, slot.ends_at)}"
        yield Breach("live_steps_in_slot", (info.id,), text, start)
    helpers = reading.helpers(info.id)
    if helpers and slot.presenter not in helpers and info.kind not in BESIDE:
        text = f"{reading.name(info.id)} is not shown by {reading.event.helper(slot.presenter).name}"
        yield Breach("live_steps_in_slot", (info.id,), text, start)


def _in_order(reading: Reading, tasks: list[TaskId]) -> Iterator[Breach]:
    for before, after in pairwise(tasks):
        if reading.start(after) < reading.start(before):
            text = f"{reading.name(after)} is shown before {reading.name(before)}"
            yield Breach("live_steps_in_slot", (before, after), text, reading.start(after))


def presenter_only_presents(reading: Reading) -> Iterator[Breach]:
    """Whoever presents has no other task within the slot."""
    for slot in reading.event.slots:
        for info in reading.tasks:
            during = reading.start(info.id) < slot.ends_at and reading.end(info.id) > slot.starts_at
            if during and info.live_in != slot.id and slot.presenter in reading.helpers(info.id):
                name = reading.event.helper(slot.presenter).name
                text = f"{name} presents {slot.name} and cannot do {reading.name(info.id)} then"
                yield Breach("presenter_only_presents", (info.id,), text, reading.start(info.id))


def ready_made_by_then(reading: Reading) -> Iterator[Breach]:
    """What stands ready at a slot is finished by its time."""
    for slot in reading.event.slots:
        for ready in slot.ready_made:
            finished = _finished(reading, slot, ready)
            if not finished:
                text = f"nothing makes {reading.food(ready.dish)} ready for {slot.name}"
                yield Breach("ready_made_by_then", (), text, ready.by)
            for task, minute in finished.items():
                if minute > ready.by:
                    wanted = clock(reading, ready.by)
                    text = f"{reading.name(task)} is done at {clock(reading, minute)}, wanted by {wanted}"
                    yield Breach("ready_made_by_then", (task,), text, minute)


def _finished(reading: Reading, slot: DemoSlot, ready: ReadyMade) -> dict[TaskId, int]:
    """The last tasks that make it, by the planner's word and by the recipe, with the minutes they are over."""
    recipe = reading.event.recipe(reading.dish(ready.dish).recipe)
    steps = recipe.last_steps() if ready.up_to is None else (recipe.step(ready.up_to),)
    finished = {task: minute for step in steps for task, minute in reading.finished(ready.dish, step)}
    told = reading.expanded.ready.get((slot.id, ready.dish), ())
    return finished | {task: reading.end(task) for task in told}
