"""The problem while it grows: tasks, links and what they mean, before needs are settled."""

from collections.abc import Mapping
from dataclasses import dataclass, field, replace

from cookout.core.fire.weather import Weather
from cookout.core.planning.event import DishId, Event, SlotId
from cookout.core.planning.expand.cautions import caution_of
from cookout.core.planning.expand.pinning import Pinning
from cookout.core.planning.expanded import TaskInfo
from cookout.core.planning.problem import Due, Freshness, Link, LinkKind, Need, Task, TaskId
from cookout.core.planning.record import Warning

_MADE_BEFORE_MINUTES = 60


@dataclass(slots=True)
class Draft:
    """Everything that expansion has made so far. Only gear needs stand in `needs`; helpers are asked for at the end.

    `expected` says at which minute tasks started in an earlier plan of the same event.
    """

    event: Event
    expected: Mapping[TaskId, int] = field(default_factory=dict)
    tasks: dict[TaskId, Task] = field(default_factory=dict)
    info: dict[TaskId, TaskInfo] = field(default_factory=dict)
    links: list[Link] = field(default_factory=list)
    dues: list[Due] = field(default_factory=list)
    freshness: list[Freshness] = field(default_factory=list)
    warnings: list[Warning] = field(default_factory=list)
    weather_of: dict[TaskId, Weather] = field(default_factory=dict)
    on_ice: set[DishId] = field(default_factory=set)
    pinning: Pinning = field(init=False)
    _told: set[tuple[str | int, ...]] = field(default_factory=set)

    def __post_init__(self) -> None:
        self.pinning = Pinning(self.event)

    def weather_for(self, task_id: TaskId, dish: DishId) -> Weather:
        """The weather to reckon a bake or a cooling for, noted for the task."""
        minute = self.expected.get(task_id)
        minute = self.pinning.at(task_id) if minute is None else minute
        self.weather_of[task_id] = self.event.weather_at(self._about(dish) if minute is None else minute)
        return self.weather_of[task_id]

    def _about(self, dish_id: DishId) -> int:
        """About when a dish is made, where no plan says: an hour before it is first wanted."""
        event = self.event
        dish = event.dish(dish_id)
        wanted = [event.serving(dish.serving).at] if dish.serving is not None else []
        wanted += [ready.by for slot in event.slots for ready in slot.ready_made if ready.dish == dish_id]
        shown = [(slot, {live.dish for live in slot.live_steps} | slot.tasted) for slot in event.slots]
        wanted += [slot.starts_at for slot, dishes in shown if dish_id in dishes]
        return min(wanted, default=0) - _MADE_BEFORE_MINUTES

    def add(self, info: TaskInfo, minutes: int, needs: tuple[Need, ...] = ()) -> TaskId:
        """Add a task with the caution of its kind; its id differs from `info.id` only where that one is taken."""
        task_id = self._free_id(info.id)
        self.tasks[task_id] = Task(task_id, minutes, needs, hot=info.hot)
        self.info[task_id] = replace(info, id=task_id, caution=caution_of(info, self.event.units))
        at = self.pinning.at(task_id)
        if at is not None:
            self.hold_within(task_id, at, at + minutes)
        return task_id

    def _free_id(self, wanted: TaskId) -> TaskId:
        number, task_id = 1, wanted
        while task_id in self.tasks:
            number += 1
            task_id = TaskId(f"{wanted}~{number}")
        return task_id

    def link(
        self,
        before: TaskId,
        after: TaskId,
        least: int = 0,
        most: int | None = None,
        *,
        kind: LinkKind = LinkKind.FINISH_TO_START,
        why: str = "",
    ) -> None:
        """Put a wait of `least` to `most` minutes between two tasks."""
        self.links.append(Link(before, after, kind, least, most, why))

    def hold_within(self, task_id: TaskId, earliest: int | None = None, latest: int | None = None) -> None:
        """Narrow the task's window; a wider one than it has changes nothing."""
        task = self.tasks[task_id]
        starts = [minute for minute in (task.earliest, earliest) if minute is not None]
        ends = [minute for minute in (task.latest, latest) if minute is not None]
        self.tasks[task_id] = replace(
            task, earliest=max(starts) if starts else None, latest=min(ends) if ends else None
        )

    def need(self, task_id: TaskId, *needs: Need) -> None:
        """Ask for more gear during the task."""
        task = self.tasks[task_id]
        self.tasks[task_id] = replace(task, needs=task.needs + needs)

    def show(self, task_id: TaskId, slot: SlotId) -> None:
        """Mark the task as shown live in a slot."""
        self.info[task_id] = replace(self.info[task_id], live_in=slot)

    def warn(self, about: str, text: str, remedy: str, *same: str | int) -> None:
        """Note something to mind; the same warning stands once.

        A text with quantities says by `same` what makes it the same, for rounded in other units it may read as another.
        """
        told = (about, *(same or (text, remedy)))
        if told not in self._told:
            self._told.add(told)
            self.warnings.append(Warning(about, text, remedy))
