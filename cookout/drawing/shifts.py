"""What differs between two plans in one row, as shifts: a task or a run of tasks that changed in the same way."""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime
from enum import StrEnum

from cookout.core.planning.comparison import ChangeKind, Comparison, Stand, TaskChange
from cookout.core.planning.record import PlannedTask, PlanRecord
from cookout.drawing.bouts import look_from_afar
from cookout.drawing.geometry import minutes_between
from cookout.drawing.looks import Look
from cookout.drawing.rows import EVERYONE, By, capital
from cookout.drawing.voice import Voice

TOGETHER = 12.0  # minutes between two tasks that moved alike up to which they are drawn as one


HANDED = frozenset({ChangeKind.HANDED_OVER, ChangeKind.MOVED_AND_HANDED_OVER})


class Role(StrEnum):
    """What a row has of a change."""

    STAYS = "stays"
    """The task was in the row and is: it moved, or is done otherwise."""
    CAME = "came"
    LEFT = "left"


@dataclass(frozen=True, slots=True)
class Shift:
    """Changes of one look and kind that moved by the same minutes; `role` is what this row has of them."""

    changes: tuple[TaskChange, ...]
    role: Role
    look: Look

    @property
    def before(self) -> tuple[datetime, datetime] | None:
        """From and until before; None where the row had none of it."""
        return None if self.role is Role.CAME else _around(change.before for change in self.changes)

    @property
    def after(self) -> tuple[datetime, datetime] | None:
        """From and until after; None where the row has no more of it."""
        return None if self.role is Role.LEFT else _around(change.after for change in self.changes)

    @property
    def minutes(self) -> int:
        """How much later they begin; earlier below nought, and nought where there is no before or no after."""
        return moved_minutes(self.changes[0])

    @property
    def begins(self) -> datetime:
        """The first moment that it shows."""
        return min(span[0] for span in (self.before, self.after) if span is not None)

    @property
    def ends(self) -> datetime:
        """The last moment that it shows."""
        return max(span[1] for span in (self.before, self.after) if span is not None)


@dataclass(frozen=True, slots=True)
class ChangedRow:
    """A row with changes; `still` are from and until of its tasks that stay as they are."""

    key: str
    label: str
    note: str
    shifts: tuple[Shift, ...]
    still: tuple[tuple[datetime, datetime], ...]


def _around(stands: Iterable[Stand | None]) -> tuple[datetime, datetime]:
    found = [stand for stand in stands if stand is not None]
    return min(stand.starts_at for stand in found), max(stand.ends_at for stand in found)


def moved_minutes(change: TaskChange) -> int:
    """How much later a task begins."""
    if change.before is None or change.after is None:
        return 0
    return round(minutes_between(change.before.starts_at, change.after.starts_at))


def changed_rows(
    before: PlanRecord, after: PlanRecord, comparison: Comparison, by: By, voice: Voice
) -> tuple[ChangedRow, ...]:  # fmt: skip
    """The rows that any change touches, in the order of the first thing that changes in them."""
    tasks = {task.id: task for record in (before, after) for task in record.tasks}
    grouped: dict[str, list[tuple[TaskChange, Role]]] = {}
    for change in comparison.tasks:
        was, will = _keys(change, change.before, by), _keys(change, change.after, by)
        for key in sorted(was | will):
            role = Role.STAYS if key in was and key in will else Role.CAME if key in will else Role.LEFT
            grouped.setdefault(key, []).append((change, role))
    names = _names(before, after, by, voice)
    changed = {change.task for change in comparison.tasks}
    rows = [
        ChangedRow(key, *names.get(key, (capital(key), "")), _shifts(found, tasks), _still(after, key, by, changed))
        for key, found in grouped.items()
    ]
    return tuple(sorted(rows, key=lambda row: (min(shift.begins for shift in row.shifts), row.label)))


def _keys(change: TaskChange, stand: Stand | None, by: By) -> frozenset[str]:
    if stand is None:
        return frozenset()
    keys = {"dish": [change.dish or EVERYONE], "helper": stand.helpers, "gear": stand.units}
    return frozenset(keys[by])


def _keys_of_task(task: PlannedTask, by: By) -> Sequence[str]:
    return {"dish": (task.dish or EVERYONE,), "helper": task.helpers, "gear": task.units}[by]


def _names(before: PlanRecord, after: PlanRecord, by: By, voice: Voice) -> Mapping[str, tuple[str, str]]:
    """The label and the note of each row; what only the plan before knows is there too."""
    if by == "helper":
        return {helper.id: (helper.name, "") for record in (before, after) for helper in record.helpers}
    if by == "gear":
        return {}
    dishes = {dish: (name, "") for record in (before, after) for dish, name in record.dishes.items()}
    return {EVERYONE: (voice.words.for_everyone, voice.words.ground_and_fire), **dishes}


def _still(after: PlanRecord, key: str, by: By, changed: set[str]) -> tuple[tuple[datetime, datetime], ...]:
    return tuple(
        (task.starts_at, task.ends_at)
        for task in after.tasks
        if task.id not in changed and key in _keys_of_task(task, by)
    )


def _shifts(found: Sequence[tuple[TaskChange, Role]], tasks: Mapping[str, PlannedTask]) -> tuple[Shift, ...]:
    """Changes that are alike and follow one another as one shift."""
    groups: dict[tuple[object, ...], list[TaskChange]] = {}
    looks = {change.task: look_from_afar(tasks[change.task]) for change, _ in found}
    roles = {change.task: role for change, role in found}
    for change, role in found:
        alike = (role, looks[change.task], change.kind, moved_minutes(change), *_hands(change))
        groups.setdefault(alike, []).append(change)
    runs = [run for changes in groups.values() for run in _runs(changes, roles[changes[0].task])]
    shifts = [Shift(tuple(run), roles[run[0].task], looks[run[0].task]) for run in runs]
    return tuple(sorted(shifts, key=lambda shift: (shift.begins, shift.ends)))


def _hands(change: TaskChange) -> tuple[tuple[str, ...], tuple[str, ...]]:
    """Who had a task and who has it, where that is what changed."""
    if change.kind not in HANDED or change.before is None or change.after is None:
        return (), ()
    return change.before.helpers, change.after.helpers


def _runs(changes: Sequence[TaskChange], role: Role) -> Iterator[list[TaskChange]]:
    """Runs of changes each of which begins soon after the ones before it end."""
    run: list[TaskChange] = []
    for change in sorted(changes, key=lambda change: _shown(change, role)):
        if run and minutes_between(max(_shown(one, role)[1] for one in run), _shown(change, role)[0]) > TOGETHER:
            yield run
            run = []
        run.append(change)
    yield run


def _shown(change: TaskChange, role: Role) -> tuple[datetime, datetime]:
    stand = change.before if role is Role.LEFT or change.after is None else change.after
    return _around([stand])
