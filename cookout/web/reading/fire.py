"""Firings and bakes with names, for the fire plan."""

from dataclasses import dataclass

from cookout.core.planning.record import PlannedBake, PlannedFiring, PlanRecord
from cookout.services.sheets import oven_drawing


@dataclass(frozen=True, slots=True)
class FiringRow:
    """Coals lit together: who lights them, and the tasks that they feed, in words."""

    firing: PlannedFiring
    lighters: tuple[str, ...]
    feeds: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class BakeRow:
    """An oven over its coals, with a picture of them (SVG); `top_ups` are (time of the task, coals)."""

    bake: PlannedBake
    picture: str
    total: int
    top_ups: tuple[tuple[str, int], ...]


def firing_rows(record: PlanRecord) -> tuple[FiringRow, ...]:
    """The firings in order of lighting."""
    people = {helper.id: helper.name for helper in record.helpers}
    tasks = {task.id: task for task in record.tasks}
    rows = []
    for firing in sorted(record.firings, key=lambda each: each.lit_at):
        lighter = tasks.get(firing.lit_by)
        names = () if lighter is None else tuple(people.get(each, each) for each in lighter.helpers)
        fed = [tasks[each] for each in firing.feeds if each in tasks]
        rows.append(FiringRow(firing, names, tuple(_fed(record, task.dish, task.name) for task in fed)))
    return tuple(rows)


def bake_rows(record: PlanRecord) -> tuple[BakeRow, ...]:
    """The bakes in the order in which their coals are laid."""
    starts = {task.id: f"{task.starts_at:%H:%M}" for task in record.tasks}
    return tuple(
        BakeRow(
            bake=bake,
            picture=oven_drawing(bake=bake),
            total=bake.lid + bake.under,
            top_ups=tuple((starts.get(task, ""), coals) for task, coals in bake.top_ups),
        )
        for bake in sorted(record.bakes, key=lambda each: (each.laid_at, each.unit))
    )


def coals_in_all(record: PlanRecord) -> int:
    """Coals that all firings light together."""
    return sum(firing.coals for firing in record.firings)


def _fed(record: PlanRecord, dish: str, name: str) -> str:
    title = record.dishes.get(dish, "")
    return f"{title}: {name}" if title else name
