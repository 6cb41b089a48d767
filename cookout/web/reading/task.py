"""One task of a plan for reading: what, who, when, why it stands there, and what may move."""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import datetime

from cookout.core.planning.event import Event as CoreEvent
from cookout.core.planning.lists import measure_out
from cookout.core.planning.lists.measuring import Bag
from cookout.core.planning.record import PlannedBake, PlannedHelper, PlannedLink, PlannedTask, PlanRecord
from cookout.web.reading.tasks import Row, row_of

WITH_AMOUNTS = frozenset({"prepare", "mix", "ice"})
"""Kinds of work that ingredients go into."""


@dataclass(frozen=True, slots=True)
class Neighbour:
    """A task that this one waits for, or that waits for it: the task, its dish, and why it is tied."""

    task: PlannedTask
    dish: str
    link: PlannedLink

    @property
    def is_bounded(self) -> bool:
        """Whether it may wait only so long."""
        return self.link.most_minutes is not None


@dataclass(frozen=True, slots=True)
class Pinned:
    """What of a task is pinned by hand, for reading; None and empty for what is not."""

    at: datetime | None
    helpers: tuple[str, ...]
    units: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class TaskPage:
    """A task with all that is told of it; `before` and `after` it are the tasks it is tied to, `bags` its amounts."""

    row: Row
    crew: tuple[PlannedHelper, ...]
    before: tuple[Neighbour, ...]
    after: tuple[Neighbour, ...]
    bake: PlannedBake | None
    bags: tuple[Bag, ...]
    pinned: Pinned | None

    @property
    def task(self) -> PlannedTask:
        """The task itself."""
        return self.row.task


def find_task(record: PlanRecord, task_id: str) -> PlannedTask | None:
    """The task of that id; None where the plan has none."""
    return next((task for task in record.tasks if task.id == task_id), None)


def task_page(record: PlanRecord, task: PlannedTask, event: CoreEvent, *, units: str) -> TaskPage:
    """Everything about a task; amounts in those units."""
    return TaskPage(
        row=row_of(record, task),
        crew=tuple(helper for helper in record.helpers if helper.id in task.helpers),
        before=_neighbours(record, ((link.before, link) for link in record.links if link.after == task.id)),
        after=_neighbours(record, ((link.after, link) for link in record.links if link.before == task.id)),
        bake=next((bake for bake in record.bakes if bake.task == task.id), None),
        bags=_bags(event, task, units),
        pinned=_pinned(record, task, event),
    )


def _neighbours(record: PlanRecord, tied: Iterable[tuple[str, PlannedLink]]) -> tuple[Neighbour, ...]:
    tasks = {task.id: task for task in record.tasks}
    found = [Neighbour(tasks[id], record.dishes.get(tasks[id].dish, ""), link) for id, link in tied]
    return tuple(sorted(found, key=lambda each: (each.task.starts_at, each.task.ends_at)))


def _bags(event: CoreEvent, task: PlannedTask, units: str) -> tuple[Bag, ...]:
    """The ingredients of the task's dish, without those that their notes give to another step."""
    if task.kind not in WITH_AMOUNTS:
        return ()
    dishes = (dish for dish in measure_out(event, units) if dish.dish == task.dish)
    return tuple(bag for dish in dishes for bag in dish.bags if not bag.step or task.name.startswith(bag.step))


def _pinned(record: PlanRecord, task: PlannedTask, event: CoreEvent) -> Pinned | None:
    """What the plan keeps of the pins of a task; None where it has none."""
    pin = next((pin for pin in event.pins if pin.task == task.id), None)
    if pin is None or not task.pinned:
        return None
    names = {helper.id: helper.name for helper in record.helpers}
    return Pinned(
        task.starts_at if "time" in task.pinned else None,
        tuple(names.get(helper, helper) for helper in pin.helpers) if "helpers" in task.pinned else (),
        pin.units if "units" in task.pinned else (),
    )
