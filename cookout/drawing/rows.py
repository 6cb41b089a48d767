"""What stands in the rows of a timeline: by dish, by helper, or by piece of gear."""

from collections.abc import Callable, Iterable
from dataclasses import dataclass, field
from datetime import datetime
from typing import Literal

from cookout.core.planning.record import PlannedGear, PlannedHelper, PlannedTask, PlanRecord
from cookout.drawing.looks import bakes_of_ticks, is_tick, kindling_of

By = Literal["dish", "helper", "gear"]
FEW = 80  # tasks up to which a plan has room to write out even its shortest tasks


@dataclass(frozen=True, slots=True)
class Mark:
    """A task in a row; `ticks` are the short tasks drawn upon it, `texts` what may be written by it, longest first."""

    task: PlannedTask
    texts: tuple[str, ...]
    ticks: tuple[PlannedTask, ...] = ()


@dataclass(frozen=True, slots=True)
class Row:
    """A labelled row; `present` are the stretches in which a helper is there."""

    label: str
    note: str
    marks: tuple[Mark, ...]
    present: tuple[tuple[datetime, datetime], ...] = field(default=())


def rows_of(record: PlanRecord, by: By) -> tuple[Row, ...]:
    """The rows, none empty, in the order in which they matter."""
    makers: dict[By, Callable[[PlanRecord], Iterable[Row]]] = {
        "dish": _by_dish,
        "helper": _by_helper,
        "gear": _by_gear,
    }
    return tuple(row for row in makers[by](record) if row.marks)


Texts = Callable[[PlannedTask], tuple[str, ...]]


def _marks(tasks: Iterable[PlannedTask], record: PlanRecord, texts: Texts) -> tuple[Mark, ...]:
    """The tasks as marks, with all the ticks of a bake upon it where the bake is among them."""
    chosen = sorted(tasks, key=lambda task: (task.starts_at, task.ends_at))
    here = {task.id for task in chosen}
    bakes = bakes_of_ticks(record)
    on_lid: dict[str, list[PlannedTask]] = {}
    for task in record.tasks:
        if (bake := bakes.get(task.id)) in here:
            on_lid.setdefault(str(bake), []).append(task)
    return tuple(
        Mark(task, texts(task), tuple(on_lid.get(task.id, ()))) for task in chosen if bakes.get(task.id) not in here
    )


def _by_dish(record: PlanRecord) -> Iterable[Row]:
    on_hills = {task.id for tasks in kindling_of(record).values() for task in tasks}
    whole = [task for task in record.tasks if task.dish not in record.dishes and task.id not in on_hills]
    yield Row("For everyone", "ground and fire", _marks(whole, record, _name_only))
    for dish in _dishes_in_order(record):
        tasks = [task for task in record.tasks if task.dish == dish]
        yield Row(record.dishes[dish], _readiness(record, dish), _marks(tasks, record, _name_only))


def _dishes_in_order(record: PlanRecord) -> list[str]:
    starts: dict[str, datetime] = {}
    for task in record.tasks:
        starts[task.dish] = min(task.starts_at, starts.get(task.dish, task.starts_at))
    due = {serving.dish: serving.due_at for serving in reversed(record.servings)}
    return sorted(
        (dish for dish in record.dishes if dish in starts),
        key=lambda dish: (due.get(dish, starts[dish]), starts[dish]),
    )


def _readiness(record: PlanRecord, dish: str) -> str:
    served = [serving for serving in record.servings if serving.dish == dish]
    if not served:
        return "shown, not served"
    late = max(serving.late_minutes for serving in served)
    times = ", ".join(sorted({f"{serving.ready_at:%H:%M}" for serving in served}))
    return f"{late} min late, {times}" if late else f"on the table {times}"


def _by_helper(record: PlanRecord) -> Iterable[Row]:
    for helper in sorted(record.helpers, key=_call_order):
        tasks = [task for task in record.tasks if helper.id in task.helpers]
        yield Row(helper.name, _call_note(helper), _marks(tasks, record, _name_then_dish(record)), helper.windows)


def _call_order(helper: PlannedHelper) -> tuple[bool, float, str]:
    return helper.called_at is None, helper.called_at.timestamp() if helper.called_at else 0.0, helper.name


def _call_note(helper: PlannedHelper) -> str:
    if helper.called_at is None or helper.free_at is None:
        return "not called"
    return f"{helper.called_at:%H:%M} to {helper.free_at:%H:%M}"


def _name_only(task: PlannedTask) -> tuple[str, ...]:
    return (task.name,)


def _name_then_dish(record: PlanRecord) -> Texts:
    def texts(task: PlannedTask) -> tuple[str, ...]:
        if is_tick(task) and len(record.tasks) > FEW:
            return ()
        dish = record.dishes.get(task.dish, "")
        return (f"{task.name}, {dish}", task.name) if dish else (task.name,)

    return texts


def _dish_then_name(record: PlanRecord) -> Texts:
    def texts(task: PlannedTask) -> tuple[str, ...]:
        dish = record.dishes.get(task.dish, "")
        return (f"{dish}: {task.name}", dish) if dish and not task.hands_on else (task.name,)

    return texts


def _by_gear(record: PlanRecord) -> Iterable[Row]:
    """Each named piece has a row; gear that is only counted has one for all its pieces."""
    kinds = {gear.id: place for place, gear in enumerate(record.gear)}
    for unit in sorted({unit for task in record.tasks for unit in task.units}, key=lambda u: _unit_order(u, record)):
        tasks = [task for task in record.tasks if unit in task.units]
        yield Row(_capital(unit), "", _marks(tasks, record, _dish_then_name(record)))
    for gear in sorted(record.gear, key=lambda gear: kinds[gear.id]):
        tasks = [task for task in record.tasks if gear.id in task.gear]
        if not any(_is_piece_of(unit, gear) for task in tasks for unit in task.units):
            note = f"{gear.count} in all" if gear.count > 1 else ""
            yield Row(_capital(gear.name), note, _marks(tasks, record, _dish_then_name(record)))


def oven_rows(record: PlanRecord) -> tuple[Row, ...]:
    """A row for each oven that bakes, with its bakes alone; on their lids only the top-ups."""
    tasks = {task.id: task for task in record.tasks}
    rows = []
    for unit in sorted({bake.unit for bake in record.bakes}, key=lambda unit: _unit_order(unit, record)):
        marks = tuple(
            Mark(
                tasks[bake.task],
                (f"{bake.dish_name}: {bake.lid} on the lid, {bake.under} under", bake.dish_name),
                tuple(tasks[top_up] for top_up, _ in bake.top_ups),
            )
            for bake in sorted(record.bakes, key=lambda bake: bake.in_at)
            if bake.unit == unit
        )
        rows.append(Row(_capital(unit), "", marks))
    return tuple(rows)


def _is_piece_of(unit: str, gear: PlannedGear) -> bool:
    return unit == gear.name or unit.startswith((f"{gear.name} ", f"{gear.name},"))


def _unit_order(unit: str, record: PlanRecord) -> tuple[int, int, str]:
    places = (place for place, gear in enumerate(record.gear) if _is_piece_of(unit, gear))
    return next(places, len(record.gear)), len(unit), unit


def _capital(text: str) -> str:
    return text[:1].upper() + text[1:]
