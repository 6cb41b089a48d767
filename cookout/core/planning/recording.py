"""From a solved event to the record that everybody reads."""

from dataclasses import dataclass
from datetime import datetime

from cookout.core.fire.patterns import lay
from cookout.core.fire.weather import Weather
from cookout.core.planning.event import DemoSlot, Event, Gear, GearKind, Helper, LiveStep
from cookout.core.planning.expand.demos import item_id
from cookout.core.planning.expanded import BakeRun, Expanded, Firing
from cookout.core.planning.explain import Explainer, Reasons
from cookout.core.planning.heat import stand_of, troubles
from cookout.core.planning.pieces import name_pieces, piece_labels
from cookout.core.planning.problem import Link, ResourceId, Task, TaskId
from cookout.core.planning.record import (
    HeldBy,
    PlannedBake,
    PlannedFiring,
    PlannedGear,
    PlannedHelper,
    PlannedLevel,
    PlannedLink,
    PlannedServing,
    PlannedSlot,
    PlannedTask,
    PlanRecord,
    Warning,
    WayOut,
)
from cookout.core.planning.recording_safety import (
    advice_of,
    allergens_of,
    checklist_of,
    fuel_of,
    safety_of,
    warnings_of,
)
from cookout.core.planning.result import Level, Plan, Result
from cookout.core.planning.reviewing import review_of
from cookout.core.planning.wording import clock, moment
from cookout.core.quantities import show_speed, show_temperature


def record_of(
    expanded: Expanded,
    result: Result,
    *,
    obstacles: tuple[str, ...] = (),
    ways_out: tuple[WayOut, ...] = (),
) -> PlanRecord:
    """The record of a result; without a plan it has obstacles and ways out in place of tasks."""
    recorder = Recorder(expanded, result.plan) if result.plan is not None else None
    event, review = expanded.event, review_of(expanded, result.plan)
    return PlanRecord(
        event_id=event.id,
        event_name=event.name,
        place=event.place.name,
        timezone=event.timezone,
        weather=weather_line(event),
        units=event.units,
        status=result.status,
        seconds=round(result.seconds, 3),
        levels=tuple(level_of(level) for level in result.levels),
        servings=recorder.servings() if recorder else (),
        slots=recorder.slots() if recorder else (),
        dishes={dish.id: event.recipe(dish.recipe).name for dish in event.dishes},
        tasks=recorder.tasks() if recorder else (),
        links=tuple(link_of(link) for link in expanded.problem.links) if recorder else (),
        helpers=tuple(recorder.helper(helper) for helper in event.crew) if recorder else (),
        gear=tuple(gear_of(gear) for gear in event.gear),
        firings=tuple(recorder.firing(firing) for firing in expanded.firings) if recorder else (),
        bakes=tuple(recorder.bake(run) for run in expanded.bake_runs) if recorder else (),
        warnings=(*expanded.warnings, *(recorder.warnings() if recorder else ()), *warnings_of(review)),
        obstacles=obstacles,
        ways_out=ways_out,
        break_minutes=event.break_minutes,
        fuel=fuel_of(expanded) if recorder else None,
        safety=safety_of(expanded, review),
        allergens=allergens_of(event, review),
        checklist=checklist_of(review),
        advice=advice_of(event),
    )


def weather_line(event: Event) -> str:
    """The expected weather of the day in one line, in the event's units, with what changes and when."""
    lines = [weather_words(event.weather, event.units)]
    lines += [f"from {clock(event, hour.start)} {weather_words(hour.weather, event.units)}" for hour in event.hours]
    return "; ".join(lines)


def weather_words(weather: Weather, units: str) -> str:
    """Weather in words, in those units."""
    parts = [
        show_temperature(weather.air_c, units),
        f"wind {show_speed(weather.wind_mps, units)}",
        f"gusts {show_speed(weather.gust_mps, units)}" if weather.gust_mps > weather.wind_mps else "",
        f"humidity {round(weather.humidity * 100)} %",
        "sun" if weather.sunny else "shade",
    ]
    return ", ".join(part for part in parts if part)


def level_of(level: Level) -> PlannedLevel:
    """A level by the name that the JSON uses."""
    return PlannedLevel(level.aim.value, level.value, level.bound)


def link_of(link: Link) -> PlannedLink:
    """A link by the names that the JSON uses."""
    return PlannedLink(link.before, link.after, link.kind.value, link.least or 0, link.most, link.why)


def gear_of(gear: Gear) -> PlannedGear:
    """Gear as a plan counts it: a cooking table counts as its spots, a cooler as its places."""
    return PlannedGear(gear.id, gear.kind.value, gear.name, gear.pieces, gear.inches, gear.coals)


@dataclass(slots=True)
class Recorder:
    """Turns the parts of one plan into their recorded form."""

    expanded: Expanded
    plan: Plan
    reasons: dict[TaskId, Reasons]
    pieces: dict[TaskId, tuple[str, ...]]

    def __init__(self, expanded: Expanded, plan: Plan) -> None:
        self.expanded = expanded
        self.plan = plan
        self.reasons = Explainer(expanded, plan).explain()
        self.pieces = name_pieces(expanded, plan)

    def at(self, minute: int) -> datetime:
        """A minute as a datetime in the event's zone."""
        return moment(self.expanded.event, minute)

    def end(self, task: TaskId) -> int:
        """The minute at which a task ends."""
        return self.plan.end(self.expanded.problem.task_by_id[task])

    def tasks(self) -> tuple[PlannedTask, ...]:
        """All tasks by their start."""
        in_order = sorted(self.expanded.problem.tasks, key=lambda task: (self.plan.start(task.id), task.id))
        return tuple(self.task(task) for task in in_order)

    def task(self, task: Task) -> PlannedTask:
        """One task with who, what, and why it stands there."""
        info = self.expanded.info[task.id]
        reasons = self.reasons[task.id]
        helpers, gear = self.uses(task)
        return PlannedTask(
            id=task.id,
            dish=info.dish or "",
            name=info.name,
            kind=info.kind.value,
            starts_at=self.at(self.plan.start(task.id)),
            ends_at=self.at(self.end(task.id)),
            helpers=helpers,
            gear=gear,
            hands_on=info.hands > 0,
            slack_minutes=reasons.later.room,
            held_by=(
                HeldBy("later", reasons.later.by, reasons.later.text),
                HeldBy("earlier", reasons.earlier.by, reasons.earlier.text),
            ),
            units=self.pieces.get(task.id, ()),
            needs=tuple(sorted(info.skills)),
            hands=info.hands,
            hot=info.hot,
            detail=info.detail,
            caution=info.caution,
            live_in=info.live_in or "",
            pinned=self.expanded.pinned.get(task.id, ()),
        )

    def uses(self, task: Task) -> tuple[tuple[str, ...], dict[str, int]]:
        """Who does a task, and how much of which gear it takes."""
        helpers: list[str] = []
        gear: dict[str, int] = {}
        for need, group in zip(task.needs, self.plan.placed[task.id].picks, strict=True):
            for resource in group:
                helper = self.expanded.problem.resource_by_id[resource].helper
                if helper is not None:
                    helpers.append(helper)
                else:
                    self.count(gear, resource, need.amount)
        return tuple(helpers), gear

    def count(self, gear: dict[str, int], resource: ResourceId, amount: int) -> None:
        """Add gear to what a task takes."""
        name = self.expanded.gear_of[resource]
        gear[name] = gear.get(name, 0) + amount

    def servings(self) -> tuple[PlannedServing, ...]:
        """Each dish of each serving, by due time."""
        event = self.expanded.event
        planned = []
        for (serving_id, dish_id), task in self.expanded.serves.items():
            serving, dish = event.serving(serving_id), event.dish(dish_id)
            ready = self.end(task)
            planned.append(
                PlannedServing(
                    serving=serving_id,
                    serving_name=serving.name,
                    dish=dish_id,
                    dish_name=event.recipe(dish.recipe).name,
                    due_at=self.at(serving.at),
                    earliest_at=self.at(serving.at - serving.early),
                    latest_at=self.at(serving.at + serving.late),
                    ready_at=self.at(ready),
                    late_minutes=max(0, ready - serving.at),
                    people=serving.people if dish.people is None else dish.people,
                )
            )
        return tuple(sorted(planned, key=lambda s: (s.due_at, s.dish)))

    def slots(self) -> tuple[PlannedSlot, ...]:
        """Demo slots with their live tasks in order."""
        return tuple(
            PlannedSlot(
                id=slot.id,
                name=slot.name,
                starts_at=self.at(slot.starts_at),
                ends_at=self.at(slot.ends_at),
                presenter=slot.presenter,
                live=self.live_tasks(slot),
                ready_made=tuple(
                    (ready.dish, task, self.at(ready.by))
                    for ready in slot.ready_made
                    for task in self.expanded.ready.get((slot.id, ready.dish), ())
                ),
            )
            for slot in self.expanded.event.slots
        )

    def live_tasks(self, slot: DemoSlot) -> tuple[str, ...]:
        """The tasks of what a slot shows, one thing after the other in the order that the event gives."""
        return tuple(task for place in range(len(slot.live)) for task in self.shown(slot, place))

    def shown(self, slot: DemoSlot, place: int) -> list[TaskId]:
        """The tasks of one thing that a slot shows, by their start."""
        item, info = slot.live[place], self.expanded.info
        if not isinstance(item, LiveStep):
            return [item_id(slot, place)]
        wanted = (slot.id, item.dish, item.step)
        live = [task for task in info if (info[task].live_in, info[task].dish, info[task].step) == wanted]
        return sorted(live, key=self.plan.start)

    def helper(self, helper: Helper) -> PlannedHelper:
        """A helper with call time and the minutes of work."""
        mine = [
            task
            for task in self.expanded.problem.tasks
            for group in self.plan.placed[task.id].picks
            for resource in group
            if self.expanded.problem.resource_by_id[resource].helper == helper.id
        ]
        return PlannedHelper(
            id=helper.id,
            name=helper.name,
            skills=tuple(sorted(helper.skills)),
            windows=tuple((self.at(window.start), self.at(window.end)) for window in helper.windows),
            adult=helper.adult,
            fire_allowed=helper.fire_allowed,
            hot_stretch_minutes=helper.hot_stretch_minutes,
            called_at=self.at(min(self.plan.start(task.id) for task in mine)) if mine else None,
            free_at=self.at(max(self.end(task.id) for task in mine)) if mine else None,
            work_minutes=sum(task.minutes for task in mine),
        )

    def firing(self, firing: Firing) -> PlannedFiring:
        """A firing with the window in which its coals can be laid."""
        ready = self.end(firing.ashes)
        return PlannedFiring(
            id=firing.id,
            lit_at=self.at(self.plan.start(firing.lights)),
            ready_from=self.at(ready),
            ready_until=self.at(ready + firing.window_minutes),
            coals=firing.coals,
            feeds=tuple(firing.feeds),
            lit_by=firing.lights,
            chimneys=firing.chimneys,
        )

    def bake(self, run: BakeRun) -> PlannedBake:
        """One oven over coals."""
        event = self.expanded.event
        named = {o for g in event.gear if g.kind is GearKind.OVEN for o in piece_labels(g, g.pieces)}
        ovens = [unit for unit in self.pieces.get(run.bakes, ()) if unit in named]
        return PlannedBake(
            task=run.bakes,
            dish=run.dish,
            dish_name=event.recipe(event.dish(run.dish).recipe).name,
            unit=ovens[0] if ovens else f"{run.inches}-inch oven",
            inches=run.inches,
            lid=run.lid,
            under=run.under,
            least_coals=run.least_coals,
            most_coals=run.most_coals,
            temperature=show_temperature(run.temperature_c, event.units),
            laid_at=self.at(self.plan.start(run.lays)),
            in_at=self.at(self.plan.end(self.expanded.problem.task_by_id[run.loads])),
            out_at=self.at(self.plan.start(run.takes_out)),
            top_ups=tuple((str(task), coals) for task, coals in run.top_ups),
            weather=weather_words(self.weather(run), event.units),
            least_minutes=run.minutes.least,
            usual_minutes=run.minutes.usual,
            most_minutes=run.minutes.most,
            modelled=run.modelled,
            pattern=lay(run.lid, run.under, run.inches).words,
            troubles=self.troubles(run),
        )

    def weather(self, run: BakeRun) -> Weather:
        """The weather that a bake is reckoned for."""
        return self.expanded.weather_of[run.bakes]

    def troubles(self, run: BakeRun) -> tuple[str, ...]:
        """What may go amiss with a bake; nothing where the models are left out."""
        event, step = self.expanded.event, self.expanded.info[run.bakes].step
        bake = event.recipe(event.dish(run.dish).recipe).step(step).bake if step is not None else None
        if bake is None or not event.switches.use_models:
            return ()
        return troubles(stand_of(event, bake, self.weather(run)), event.fuel.kind, bake, run.lid, run.under)

    def warnings(self) -> tuple[Warning, ...]:
        """What the plan itself gives to mind."""
        return tuple(
            Warning(
                serving.dish,
                f"{serving.dish_name} is on the table {serving.late_minutes} min after {serving.serving_name} is due.",
                "It is inside the tolerance; to be on time give it another oven or helper, or serve later.",
            )
            for serving in self.servings()
            if serving.late_minutes
        )
