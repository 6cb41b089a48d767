"""Two plans of an event side by side: which tasks, people, servings and coals differ."""

from collections.abc import Iterable, Iterator
from dataclasses import replace

from cookout.core.planning.comparing_words import sentences
from cookout.core.planning.comparison import (
    ChangeKind,
    Comparison,
    FuelChange,
    HelperChange,
    LevelChange,
    ServingChange,
    Stand,
    TableTime,
    TaskChange,
)
from cookout.core.planning.record import PlannedHelper, PlannedServing, PlannedTask, PlanRecord, Warning


def compare(before: PlanRecord, after: PlanRecord) -> Comparison:
    """How the plan `after` differs from the plan `before`; tasks are matched by their ids."""
    tasks = tuple(sorted(_tasks(before, after), key=_time_of))
    helpers = tuple(_helpers(before, after, tasks))
    servings = tuple(_servings(before, after))
    fuel = FuelChange(_coals(before), _coals(after))
    new, gone = tuple(_only_in(after, before)), tuple(_only_in(before, after))
    found = Comparison(tasks, helpers, servings, tuple(_levels(before, after)), fuel, new, gone)
    return replace(found, sentences=sentences(before, after, found))


def _time_of(change: TaskChange) -> tuple[float, str]:
    stand = change.after or change.before
    return (stand.starts_at.timestamp() if stand is not None else 0.0, change.task)


def _tasks(before: PlanRecord, after: PlanRecord) -> Iterator[TaskChange]:
    old = {task.id: task for task in before.tasks}
    new = {task.id: task for task in after.tasks}
    for task_id in [*old, *(each for each in new if each not in old)]:
        kind = _kind(old.get(task_id), new.get(task_id))
        task, record = (new[task_id], after) if task_id in new else (old[task_id], before)
        if kind is not None:
            yield TaskChange(
                task.id,
                task.name,
                task.dish,
                record.dishes.get(task.dish, ""),
                kind,
                _stand(old.get(task_id)),
                _stand(new.get(task_id)),
            )


def _stand(task: PlannedTask | None) -> Stand | None:
    return None if task is None else Stand(task.starts_at, task.ends_at, task.helpers, task.units, task.detail)


def _kind(old: PlannedTask | None, new: PlannedTask | None) -> ChangeKind | None:
    """How a task differs; None where it does not."""
    if old is None or new is None:
        return ChangeKind.ADDED if old is None else ChangeKind.REMOVED
    moved, handed = old.starts_at != new.starts_at, set(old.helpers) != set(new.helpers)
    if moved:
        return ChangeKind.MOVED_AND_HANDED_OVER if handed else ChangeKind.MOVED
    if handed:
        return ChangeKind.HANDED_OVER
    if (set(old.units), old.gear) != (set(new.units), new.gear):
        return ChangeKind.OTHER_GEAR
    same_work = (old.ends_at, old.name, old.detail) == (new.ends_at, new.name, new.detail)
    return None if same_work else ChangeKind.OTHER_WORK


def _helpers(before: PlanRecord, after: PlanRecord, tasks: Iterable[TaskChange]) -> Iterator[HelperChange]:
    old = {helper.id: helper for helper in before.helpers}
    new = {helper.id: helper for helper in after.helpers}
    touched = [change.helpers for change in tasks]
    for helper_id in [*old, *(each for each in new if each not in old)]:
        changed = sum(helper_id in helpers for helpers in touched)
        found = _helper(helper_id, old.get(helper_id), new.get(helper_id), changed)
        if changed or _differs(found):
            yield found


def _helper(helper_id: str, old: PlannedHelper | None, new: PlannedHelper | None, changed: int) -> HelperChange:
    known = new or old
    return HelperChange(
        helper=helper_id,
        name=known.name if known is not None else helper_id,
        called_before=old.called_at if old is not None else None,
        called_after=new.called_at if new is not None else None,
        free_before=old.free_at if old is not None else None,
        free_after=new.free_at if new is not None else None,
        work_before=old.work_minutes if old is not None else 0,
        work_after=new.work_minutes if new is not None else 0,
        tasks_changed=changed,
    )


def _differs(change: HelperChange) -> bool:
    before = (change.called_before, change.free_before, change.work_before)
    return before != (change.called_after, change.free_after, change.work_after)


def _servings(before: PlanRecord, after: PlanRecord) -> Iterator[ServingChange]:
    old = {(served.serving, served.dish): served for served in before.servings}
    new = {(served.serving, served.dish): served for served in after.servings}
    for key in [*old, *(each for each in new if each not in old)]:
        was, becomes = _table_time(old.get(key)), _table_time(new.get(key))
        named = new[key] if key in new else old[key]
        if was != becomes:
            yield ServingChange(named.serving, named.serving_name, named.dish, named.dish_name, was, becomes)


def _table_time(served: PlannedServing | None) -> TableTime | None:
    if served is None:
        return None
    return TableTime(served.due_at, served.ready_at, served.late_minutes, served.people)


def _levels(before: PlanRecord, after: PlanRecord) -> Iterator[LevelChange]:
    old = {level.name: level.value for level in before.levels}
    new = {level.name: level.value for level in after.levels}
    for name in dict.fromkeys([*new, *old]):
        yield LevelChange(name, old.get(name), new.get(name))


def _coals(record: PlanRecord) -> int:
    return 0 if record.fuel is None else record.fuel.coals


def _only_in(one: PlanRecord, other: PlanRecord) -> Iterator[Warning]:
    """Warnings of one plan alone."""
    yield from (warning for warning in one.warnings if warning not in other.warnings)
