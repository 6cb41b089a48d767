"""The problem while it grows: tasks, links and what they mean, before needs are settled."""

from dataclasses import dataclass, field, replace

from cookout.core.planning.event import Event, SlotId
from cookout.core.planning.expanded import TaskInfo
from cookout.core.planning.problem import Due, Freshness, Link, LinkKind, Need, Task, TaskId
from cookout.core.planning.record import Warning


@dataclass(slots=True)
class Draft:
    """Everything that expansion has made so far. Only gear needs stand in `needs`; helpers are asked for at the end."""

    event: Event
    tasks: dict[TaskId, Task] = field(default_factory=dict)
    info: dict[TaskId, TaskInfo] = field(default_factory=dict)
    links: list[Link] = field(default_factory=list)
    dues: list[Due] = field(default_factory=list)
    freshness: list[Freshness] = field(default_factory=list)
    warnings: list[Warning] = field(default_factory=list)

    def add(self, info: TaskInfo, minutes: int, needs: tuple[Need, ...] = ()) -> TaskId:
        """Add a task and return its id, which differs from `info.id` only where that one is taken."""
        task_id = self._free_id(info.id)
        self.tasks[task_id] = Task(task_id, minutes, needs, hot=info.hot)
        self.info[task_id] = replace(info, id=task_id)
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

    def warn(self, about: str, text: str, remedy: str) -> None:
        """Note something to mind; the same warning stands once."""
        warning = Warning(about, text, remedy)
        if warning not in self.warnings:
            self.warnings.append(warning)
