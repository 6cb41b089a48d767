"""The event's side of a plan: who does each task and which gear it uses, as the event names them."""

from collections.abc import Iterable, Iterator
from datetime import UTC, timedelta

from cookout.core.fire.chart import CoalCount
from cookout.core.kitchen.recipe import Bake, Step, StepId
from cookout.core.planning.event import Dish, DishId, Event, Gear, GearId, GearKind, Helper, HelperId
from cookout.core.planning.expanded import BakeRun, Expanded, TaskInfo, TaskKind
from cookout.core.planning.heat import Baking, baking_for
from cookout.core.planning.problem import Need, ResourceId, TaskId
from cookout.core.planning.result import Plan


class Reading:
    """What the rules ask of a plan that places every task; times are minutes from the event's origin."""

    def __init__(self, expanded: Expanded, plan: Plan) -> None:
        self.expanded = expanded
        self.event: Event = expanded.event
        self.plan = plan
        self.gear: dict[GearId, Gear] = {gear.id: gear for gear in self.event.gear}
        self.crew: dict[HelperId, Helper] = {helper.id: helper for helper in self.event.crew}

    @property
    def tasks(self) -> Iterable[TaskInfo]:
        """All tasks."""
        return self.expanded.info.values()

    def start(self, task: TaskId) -> int:
        """The minute the task starts."""
        return self.plan.placed[task].start

    def end(self, task: TaskId) -> int:
        """The minute the task ends."""
        return self.plan.placed[task].start + self.expanded.problem.task_by_id[task].minutes

    def name(self, task: TaskId) -> str:
        """The task's name with its dish, as the user knows it."""
        info = self.expanded.info[task]
        return info.name if info.dish is None else f"{info.name} ({self.food(info.dish)})"

    def food(self, dish: DishId) -> str:
        """The name of the dish's recipe."""
        return self.event.recipe(self.dish(dish).recipe).name

    def dish(self, dish: DishId) -> Dish:
        """The dish of that id."""
        return self.event.dish(dish)

    def helpers(self, task: TaskId) -> list[HelperId]:
        """Who does the task; twice the same where the plan asks it of two shifts of theirs."""
        owners = (self.expanded.problem.resource_by_id[picked].helper for _, picked in self._picks(task))
        return [HelperId(owner) for owner in owners if owner is not None]

    def gear_used(self, task: TaskId) -> dict[GearId, int]:
        """Gear in use during the task."""
        used: dict[GearId, int] = {}
        for need, picked in self._picks(task):
            if picked in self.expanded.gear_of:
                gear = self.expanded.gear_of[picked]
                used[gear] = used.get(gear, 0) + need.amount
        return used

    def of_kind(self, *kinds: TaskKind) -> list[TaskInfo]:
        """The tasks of those kinds."""
        return [info for info in self.tasks if info.kind in kinds]

    def of_step(self, dish: DishId, step: StepId) -> list[TaskInfo]:
        """The tasks that are the step itself, once for each pan or batch; for a bake these are its bake runs."""
        return [info for info in self.tasks if info.dish == dish and info.step == step and info.kind not in AROUND_BAKE]

    def runs_of(self, dish: DishId, step: StepId) -> list[BakeRun]:
        """The ovens of a bake step, by the time the food is in."""
        runs = [run for run in self.expanded.bake_runs if self.expanded.info[run.bakes].step == step]
        return sorted((run for run in runs if run.dish == dish), key=lambda run: self.start(run.bakes))

    def bake_step(self, run: BakeRun) -> tuple[Step, Bake] | None:
        """The recipe's step for a run and what it says of the oven; None where the run names no step that bakes."""
        step_id = self.expanded.info[run.bakes].step
        steps = self.event.recipe(self.dish(run.dish).recipe).steps
        found = next((step for step in steps if step.id == step_id), None)
        return None if found is None or found.bake is None else (found, found.bake)

    def baking(self, run: BakeRun, step: Step, bake: Bake) -> Baking:
        """How long the bake must last with the coals that are laid, by the model or else the recipe."""
        count = CoalCount(run.lid, run.under, run.least_coals, run.most_coals)
        weather = self.expanded.weather_of.get(run.bakes, self.event.weather)
        return baking_for(self.event, bake, step.minutes, weather, count)

    def held(self, dish: DishId) -> str:
        """How the finished dish is held: as its recipe has it, or cold where it is put into a cooler at the end."""
        chills = [info for info in self.of_kind(TaskKind.COOL) if info.dish == dish and info.step is None]
        coolers = {gear.id for gear in self.event.gear if gear.kind is GearKind.COOLER and gear.ice}
        if any(coolers.intersection(self.gear_used(info.id)) for info in chills):
            return "cold"
        return self.event.recipe(self.dish(dish).recipe).held

    def air_between(self, start: int, end: int) -> float:
        """The warmest air from one minute to another."""
        hours = [hour.weather for hour in self.event.hours if start < hour.start <= end]
        before = [hour.weather for hour in self.event.hours if hour.start <= start]
        return max(weather.air_c for weather in [*hours, before[-1] if before else self.event.weather])

    def finished(self, dish: DishId, step: Step) -> list[tuple[TaskId, int]]:
        """Each task that finishes the step, with the minute: for a bake, when the food is out."""
        if step.bake is not None:
            return [(run.takes_out, self.end(run.takes_out)) for run in self.runs_of(dish, step.id)]
        return [(info.id, self.end(info.id)) for info in self.of_step(dish, step.id)]

    def _picks(self, task: TaskId) -> Iterator[tuple[Need, ResourceId]]:
        needs = self.expanded.problem.task_by_id[task].needs
        for need, picked in zip(needs, self.plan.placed[task].picks, strict=True):
            for resource in picked:
                yield need, resource


AROUND_BAKE = frozenset(
    {
        TaskKind.LAY_COALS,
        TaskKind.PREHEAT,
        TaskKind.LOAD,
        TaskKind.TURN,
        TaskKind.LOOK_IN,
        TaskKind.TOP_UP,
        TaskKind.TAKE_OUT,
        TaskKind.SERVE,
    }
)
"""Kinds that a bake or a serving brings along and that are no step of a recipe of their own."""


def clock(reading: Reading, minute: int) -> str:
    """A minute of the event as clock time."""
    origin = reading.event.origin
    moment = (origin.astimezone(UTC) + timedelta(minutes=minute)).astimezone(origin.tzinfo)
    return moment.strftime("%H:%M")
