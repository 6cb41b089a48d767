"""A plan made before, as what a new one should stay near to."""

from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from datetime import datetime

from cookout.core.planning.event import Event
from cookout.core.planning.expand import expand
from cookout.core.planning.expanded import Expanded
from cookout.core.planning.problem import EVENT_AIMS, Aim, Stood, TaskId
from cookout.core.planning.record import PlannedTask, PlanRecord

DAY = 24 * 60
LONGEST_DAYS = 15
"""Tasks of a plan that lie further on than any event lasts say nothing of it."""


@dataclass(frozen=True, slots=True)
class Course:
    """How an event is expanded on the way to a plan: near to where `tasks` stood before, where there are any.

    `starts` are their starts in minutes of the event.
    """

    event: Event
    tasks: Mapping[TaskId, PlannedTask] = field(default_factory=dict)
    starts: Mapping[TaskId, int] = field(default_factory=dict)

    def expand(self, *, share: bool, expected: Mapping[TaskId, int] | None = None) -> Expanded:
        """The event's problem with where tasks stood before; `expected` as `expand` has it, else those same starts."""
        expanded = expand(self.event, share_firings=share, expected=self.starts if expected is None else expected)
        there = [task for task in self.starts if task in expanded.info]
        if not there:
            return expanded
        before = tuple(Stood(task, self.starts[task], frozenset(self.tasks[task].helpers)) for task in there)
        problem = replace(expanded.problem, aims=(*EVENT_AIMS, Aim.CHANGES), before=before)
        units = {task: self.tasks[task].units for task in there if self.tasks[task].units}
        return replace(expanded, problem=problem, near_units=units)


def course_of(event: Event, near: PlanRecord | None) -> Course:
    """How to expand the event near to a plan, moved by whole days where the event was; far-off tasks are left out."""
    if near is None:
        return Course(event)
    moved = days_moved(event, near) * DAY
    starts = {TaskId(task.id): minute_of(event, task.starts_at) + moved for task in near.tasks}
    tasks = {TaskId(task.id): task for task in near.tasks if -DAY <= starts[TaskId(task.id)] < LONGEST_DAYS * DAY}
    return Course(event, tasks, {task: starts[task] for task in tasks})


def days_moved(event: Event, near: PlanRecord) -> int:
    """By how many whole days the event lies later than when the plan was made, by its first serving that both have."""
    was = {each.serving: minute_of(event, each.due_at) for each in near.servings}
    return next((round((serving.at - was[serving.id]) / DAY) for serving in event.servings if serving.id in was), 0)


def minute_of(event: Event, at: datetime) -> int:
    """A moment in true elapsed minutes from the event's origin."""
    return round((at.timestamp() - event.origin.timestamp()) / 60)
