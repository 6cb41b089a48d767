"""Rules for what others see: servings on the table in time, demo slots and what stands ready at them."""

from collections.abc import Iterator
from itertools import pairwise

from cookout.core.planning.check.breach import Breach
from cookout.core.planning.check.cooking import eaten_in_time
from cookout.core.planning.check.reading import Reading, clock
from cookout.core.planning.event import DemoSlot, LiveStep, ReadyMade, Shown, Talk, Taste
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
    """Live steps, talks and tastings are shown within their slot, by the presenter, in the order given.

    A step that two slots claim is done once, and so belongs to the first.
    """
    elsewhere: set[Shown] = set()
    for slot in reading.event.slots:
        shown = _all_shown(reading, slot, [item for item in slot.live if item not in elsewhere])
        elsewhere |= set(slot.live_steps)
        for item, infos in shown:
            if not infos:
                text = f"{_called(reading, item)} is not shown in {slot.name}"
                yield Breach("live_steps_in_slot", (), text, slot.starts_at)
            for info in infos:
                yield from _live(reading, slot, info)
        firsts = [min(infos, key=lambda info: reading.start(info.id)).id for _, infos in shown if infos]
        yield from _in_order(reading, firsts)


def _all_shown(reading: Reading, slot: DemoSlot, items: list[Shown]) -> list[tuple[Shown, list[TaskInfo]]]:
    """Each thing with its tasks; of talks and tastings that are alike, each one that is left by its time."""
    live = sorted((info for info in reading.tasks if info.live_in == slot.id), key=lambda info: reading.start(info.id))
    found: list[tuple[Shown, list[TaskInfo]]] = []
    for item in items:
        infos = [info for info in live if _is_of(reading, info, item)]
        found.append((item, infos if isinstance(item, LiveStep) else infos[:1]))
        live = [info for info in live if info not in found[-1][1]]
    return found


def _is_of(reading: Reading, info: TaskInfo, item: Shown) -> bool:
    if isinstance(item, LiveStep):
        return (info.dish, info.step) == (item.dish, item.step)
    kind, dish = (TaskKind.TALK, None) if isinstance(item, Talk) else (TaskKind.TASTE, item.dish)
    minutes = reading.end(info.id) - reading.start(info.id)
    return (info.kind, info.dish, minutes) == (kind, dish, item.minutes) and item.text in info.name


def _called(reading: Reading, item: Shown) -> str:
    return f"{item.step} of {reading.food(item.dish)}" if isinstance(item, LiveStep) else item.text


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


def tasted_when_done(reading: Reading) -> Iterator[Breach]:
    """What the audience tastes is finished by then, has rested, and stands no longer than it keeps or is safe."""
    for slot in reading.event.slots:
        for item, infos in _all_shown(reading, slot, list(slot.live)):
            if isinstance(item, Taste) and item.dish is not None:
                for info in infos:
                    yield from eaten_in_time(reading, item.dish, info.id, "tasted_when_done")


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
