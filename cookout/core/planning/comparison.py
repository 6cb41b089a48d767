"""What differs between two plans, as values: tasks, people, servings, levels, coals, and what is to be minded."""

from dataclasses import dataclass
from datetime import datetime
from enum import StrEnum

from cookout.core.planning.record import Warning


class ChangeKind(StrEnum):
    """How a task differs. `OTHER_WORK`: same time, hands and gear, but it lasts longer or asks for something else."""

    MOVED = "moved"
    HANDED_OVER = "handed_over"
    MOVED_AND_HANDED_OVER = "moved_and_handed_over"
    OTHER_GEAR = "other_gear"
    OTHER_WORK = "other_work"
    ADDED = "added"
    REMOVED = "removed"


@dataclass(frozen=True, slots=True)
class Stand:
    """Where a task stands in one of the plans. `helpers` are ids, `detail` the line for whoever does it."""

    starts_at: datetime
    ends_at: datetime
    helpers: tuple[str, ...]
    units: tuple[str, ...]
    detail: str = ""


@dataclass(frozen=True, slots=True)
class TaskChange:
    """A task that differs; `before` is None where it was added and `after` where it was removed.

    `dish_name` is empty for tasks of the whole event.
    """

    task: str
    name: str
    dish: str
    dish_name: str
    kind: ChangeKind
    before: Stand | None
    after: Stand | None

    @property
    def helpers(self) -> frozenset[str]:
        """The ids of all whom the change touches: who had the task and who has it now."""
        return frozenset(helper for stand in (self.before, self.after) if stand is not None for helper in stand.helpers)


@dataclass(frozen=True, slots=True)
class HelperChange:
    """One of the crew who is affected. Times are None where the plan does not need them, or they are not in the crew.

    `tasks_changed` counts the changed tasks that they had or have.
    """

    helper: str
    name: str
    called_before: datetime | None
    called_after: datetime | None
    free_before: datetime | None
    free_after: datetime | None
    work_before: int
    work_after: int
    tasks_changed: int


@dataclass(frozen=True, slots=True)
class TableTime:
    """When a dish is wanted and is on the table, how late that is in minutes, and for how many people it is made."""

    due_at: datetime
    ready_at: datetime
    late_minutes: int
    people: int


@dataclass(frozen=True, slots=True)
class ServingChange:
    """A dish on the table that differs; `before` is None where it was added and `after` where it was removed."""

    serving: str
    serving_name: str
    dish: str
    dish_name: str
    before: TableTime | None
    after: TableTime | None


@dataclass(frozen=True, slots=True)
class LevelChange:
    """An aim's value in both plans, None where that plan has no such level."""

    name: str
    before: int | None
    after: int | None


@dataclass(frozen=True, slots=True)
class FuelChange:
    """Coals to bring, those to spare among them."""

    before: int
    after: int


@dataclass(frozen=True, slots=True)
class Comparison:
    """How one plan differs from another; lists hold only what differs, but for `levels`, which holds all.

    `tasks` are by their time, removed ones at their old time. `sentences` say the difference in plain words, what
    matters most first; there is always one, for plans that do not differ too. `new_warnings` and `gone_warnings` are
    what is to be minded in one of the plans alone.
    """

    tasks: tuple[TaskChange, ...]
    helpers: tuple[HelperChange, ...]
    servings: tuple[ServingChange, ...]
    levels: tuple[LevelChange, ...]
    fuel: FuelChange
    new_warnings: tuple[Warning, ...]
    gone_warnings: tuple[Warning, ...]
    sentences: tuple[str, ...] = ()

    @property
    def unchanged(self) -> bool:
        """Whether nothing differs that anybody would notice."""
        differs = self.tasks or self.helpers or self.servings or self.new_warnings or self.gone_warnings
        return not differs and self.fuel.before == self.fuel.after
