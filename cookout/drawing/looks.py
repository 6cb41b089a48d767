"""What a task looks like, and which tasks are ticks on the bake they belong to."""

from collections.abc import Iterable
from enum import StrEnum

from cookout.core.planning.record import PlannedTask, PlanRecord


class Look(StrEnum):
    """The shapes that tasks are drawn in."""

    HANDS = "hands"
    FIRE = "fire"
    WAIT = "wait"
    OVEN = "oven"
    PLATE = "plate"


class TickLook(StrEnum):
    """The signs that stand on the lid of a bake."""

    TURN = "turn"
    LOOK_IN = "look_in"
    TOP_UP = "top_up"


TICK_KINDS = frozenset(TickLook)
OVEN_KINDS = frozenset({"bake", "preheat"})


def look_of(task: PlannedTask) -> Look:
    """The shape of a task."""
    if task.kind in OVEN_KINDS:
        return Look.OVEN
    if task.kind == "serve":
        return Look.PLATE
    if not task.hands_on:
        return Look.WAIT
    return Look.FIRE if task.hot else Look.HANDS


def is_tick(task: PlannedTask) -> bool:
    """Whether the task is a short look at, or help to, something that bakes."""
    return task.kind in TICK_KINDS


def bakes_of_ticks(record: PlanRecord) -> dict[str, str]:
    """For each turn, look-in and top-up the id of the bake it belongs to; those that belong to none are left out.

    A link between the two says so; without one it is the bake of the same dish that is on at the time.
    """
    tasks = {task.id: task for task in record.tasks}
    linked = _linked_bakes(record, tasks)
    found: dict[str, str] = {}
    for task in filter(is_tick, record.tasks):
        bake = linked.get(task.id) or _bake_around(task, record.tasks)
        if bake is not None and _within(task, tasks[bake]):
            found[task.id] = bake
    return found


def _linked_bakes(record: PlanRecord, tasks: dict[str, PlannedTask]) -> dict[str, str]:
    pairs = [pair for link in record.links for pair in ((link.before, link.after), (link.after, link.before))]
    return {
        one: other
        for one, other in pairs
        if is_tick(tasks[one]) and tasks[other].kind in OVEN_KINDS and _within(tasks[one], tasks[other])
    }


def _bake_around(task: PlannedTask, tasks: Iterable[PlannedTask]) -> str | None:
    bakes = (other for other in tasks if other.kind in OVEN_KINDS and other.dish == task.dish and task.dish)
    return next((bake.id for bake in bakes if _within(task, bake)), None)


def _within(task: PlannedTask, bake: PlannedTask) -> bool:
    return bake.starts_at <= task.starts_at and task.ends_at <= bake.ends_at


def kindling_of(record: PlanRecord) -> dict[str, tuple[PlannedTask, ...]]:
    """For each firing the tasks that are drawn on its hill of heat: the lighting, and the ashing over after it."""
    tasks = {task.id: task for task in record.tasks}
    after = {link.before: link.after for link in record.links if link.after in tasks and _is_ashing(tasks[link.after])}
    found: dict[str, tuple[PlannedTask, ...]] = {}
    for firing in record.firings:
        ids = (firing.lit_by, after.get(firing.lit_by))
        found[firing.id] = tuple(tasks[id] for id in ids if id in tasks)
    return found


def _is_ashing(task: PlannedTask) -> bool:
    return task.kind == "ash_over"
