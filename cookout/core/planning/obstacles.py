"""What stands in the way of an impossible event, in the user's terms."""

from collections import defaultdict
from collections.abc import Iterator
from dataclasses import dataclass, replace
from time import perf_counter

from cookout.core.planning.event import Event, GearId
from cookout.core.planning.expand import expand
from cookout.core.planning.expanded import FIRE_KINDS, Expanded, TaskInfo, TaskKind
from cookout.core.planning.gear_wanted import lacking, missing_gear, say_missing
from cookout.core.planning.network import all_arcs, chain_start, longest_paths, own_window, start_windows
from cookout.core.planning.pins_in_the_way import pins_in_the_way
from cookout.core.planning.problem import Problem, Task, TaskId
from cookout.core.planning.record import WayOut
from cookout.core.planning.result import Limits, Watch
from cookout.core.planning.trying import Trials, feasible, first_plan
from cookout.core.planning.ways_out import apply_change
from cookout.core.planning.wording import clock, span

ENOUGH = "To mend any one of these is enough."


@dataclass(frozen=True, slots=True)
class Findings:
    """Sentences on what stands in the way, and changes that lead to a plan, cheapest first."""

    obstacles: tuple[str, ...]
    ways_out: tuple[WayOut, ...]


def find_obstacles(event: Event, limits: Limits, watch: Watch | None = None) -> Findings:
    """Look for what stands in the way within the seconds; ways out come first from the cheapest kinds of change."""
    trials = Trials(event, perf_counter() + limits.seconds, limits, watch or Watch())
    unpinned = replace(event, pins=())
    if event.pins and feasible(unpinned, trials.limits, trials.watch):
        return Findings(*pins_in_the_way(trials))
    ways_out = tuple(trials.ways_out())
    without_pins = expand(unpinned) if event.pins else trials.expanded
    plain = tuple(dict.fromkeys(PlainObstacles(without_pins).all()))
    return Findings(plain or crowding(event, ways_out, trials.limits), ways_out)


class PlainObstacles:
    """What can be seen without solving: needs that nothing meets, and chains longer than the time there is."""

    def __init__(self, expanded: Expanded) -> None:
        self.expanded = expanded
        self.event = expanded.event
        self.problem = expanded.problem

    def all(self) -> Iterator[str]:
        """Every sentence; those on lacking gear and hands first."""
        yield from self.short_slots()
        yield from self.lacks()
        if start_windows(self.problem) is None:
            yield from self.chains_too_long()

    def lacks(self) -> Iterator[str]:
        """Needs that can never be met, those alike in one sentence."""
        alike: dict[str, dict[str, None]] = defaultdict(dict)
        for task in self.problem.tasks:
            for number, need in enumerate(task.needs):
                if not self.problem.can_meet(need):
                    for lack, name in self.say_lack(task, number):
                        alike[lack][f"“{name}”"] = None
        for lack, named in alike.items():
            names = list(named)
            more = f" and {len(names) - 3} more" if len(names) > 3 else ""
            yield f"{lack} ({', '.join(names[:3])}{more})."

    def say_lack(self, task: Task, number: int) -> Iterator[tuple[str, str]]:
        """An unmet need in words, without its full stop, and what has it: a task, or for gear a whole step."""
        info, need = self.expanded.info[task.id], task.needs[number]
        counted = [o for o in need.options if self.problem.resource_by_id[o].helper is None]
        if counted:
            name = self.gear_name(self.expanded.gear_of[counted[0]])
            have = self.problem.resource_by_id[counted[0]].capacity
            yield f"It takes {need.amount} of “{name}” at once and there is only {have}", self.step_name(info)
        # Needs for hands stand first in every task that has them; whatever stands behind is gear.
        elif not info.hands or number:
            yield from ((lack, self.step_name(info)) for lack in self.gear_lacks(info))
        elif any(self.is_able(info, helper) for helper in self.able_helpers(info)):
            there = f"Too few of the crew who could do it are there {self.when(task)}"
            yield there, self.expanded.full_name(task.id)
        else:
            yield self.nobody(info), self.expanded.full_name(task.id)

    def gear_lacks(self, info: TaskInfo) -> tuple[str, ...]:
        """The gear that a step asks for and the event has too little of."""
        if info.kind in (TaskKind.LIGHT, TaskKind.ASH_OVER):
            return ("There is no chimney",)
        if info.dish is None or info.step is None:
            return ("There is no gear for it",)
        step = self.event.recipe(self.event.dish(info.dish).recipe).step(info.step)
        most = {wanted.key: wanted for wanted in missing_gear(self.event)}
        missing = tuple(say_missing(self.event, most[wanted.key]) for wanted in lacking(self.event, step))
        if missing or step.bake is None:
            return missing or ("There is no cooler with ice",)
        return (f"No cooking table has room for a {step.bake.oven_inches}-inch oven",)

    def step_name(self, info: TaskInfo) -> str:
        """The step that a task is part of, with its dish; the task's own name where it is of no dish."""
        if info.dish is None or info.step is None:
            return info.name
        recipe = self.event.recipe(self.event.dish(info.dish).recipe)
        return f"{recipe.name}: {recipe.step(info.step).name}"

    def able_helpers(self, info: TaskInfo) -> tuple[str, ...]:
        """The ids of helpers with the skills that a task asks for."""
        return tuple(h.id for h in self.event.crew if info.skills <= h.skills)

    def is_able(self, info: TaskInfo, helper: str) -> bool:
        """Whether a helper with the skills may do the task as far as fire and age go."""
        found = next(h for h in self.event.crew if h.id == helper)
        return found.may_tend_fire if info.kind in FIRE_KINDS else not info.hot or found.adult or found.fire_allowed

    def nobody(self, info: TaskInfo) -> str:
        """That nobody could do a task."""
        who = "No adult, and nobody the organiser named, " if info.kind in FIRE_KINDS or info.hot else "Nobody "
        skills = " and ".join(sorted(info.skills))
        return f"{who}has the {skills} skill" if skills else f"{who}is in the crew"

    def when(self, task: Task) -> str:
        """The time in which a task would have to be done."""
        earliest = f"from {clock(self.event, task.earliest)} " if task.earliest is not None else ""
        latest = f"until {clock(self.event, task.latest)}" if task.latest is not None else "at any time"
        return f"{earliest}{latest}"

    def gear_name(self, gear: GearId) -> str:
        """The name of gear."""
        return next(g.name for g in self.event.gear if g.id == gear)

    def chains_too_long(self) -> Iterator[str]:
        """Servings and slots whose work does not fit between what starts it and their time."""
        said = False
        for name, alone, ends in self.parts():
            if ends and start_windows(alone) is None:
                said = True
                yield f"{name} cannot be ready in time: {self.say_chain(alone, ends)}."
        if not said:
            yield "The work does not fit into the hours of the crew, one step after another."

    def short_slots(self) -> Iterator[str]:
        """Demo slots that are shorter than what is to be shown in them."""
        for slot in self.event.slots:
            infos = self.expanded.info
            # What nobody attends goes on beside the rest.
            live = [t for t in self.problem.tasks if infos[t.id].live_in == slot.id and infos[t.id].hands]
            minutes = sum(task.minutes for task in live)
            if minutes > slot.minutes:
                yield f"What is shown at {slot.name} takes {span(minutes)}, and the slot lasts {span(slot.minutes)}."

    def parts(self) -> Iterator[tuple[str, Problem, frozenset[TaskId]]]:
        """The problem with the deadlines of one serving or slot alone, and the tasks that have them."""
        for serving in self.event.servings:
            ends = frozenset(task for (s, _), task in self.expanded.serves.items() if s == serving.id)
            yield f"{serving.name} at {clock(self.event, serving.at)}", self.with_ends(ends), ends
        for slot in self.event.slots:
            ready = {t for (s, _), ts in self.expanded.ready.items() if s == slot.id for t in ts}
            live = {t for t, info in self.expanded.info.items() if info.live_in == slot.id}
            ends = frozenset(ready | live)
            yield f"{slot.name} at {clock(self.event, slot.starts_at)}", self.with_ends(ends), ends

    def with_ends(self, ends: frozenset[TaskId]) -> Problem:
        """The problem in which only some tasks have times of their own."""
        tasks = tuple(t if t.id in ends else replace(t, earliest=None, latest=None) for t in self.problem.tasks)
        return replace(self.problem, tasks=tasks)

    def say_chain(self, alone: Problem, ends: frozenset[TaskId]) -> str:
        """The chain of work that takes too long, from what starts it."""
        earliest = longest_paths({t.id: own_window(alone, t).earliest for t in alone.tasks}, all_arcs(alone))
        if earliest is None:
            return "its waits contradict one another"
        latest = {t: own_window(alone, alone.task_by_id[t]).latest for t in ends}
        worst = max(ends, key=lambda t: earliest[t] - latest[t])
        if earliest[worst] <= latest[worst]:
            return "its steps do not fit together between the crew's coming and then"
        first = chain_start(alone, worst, earliest)
        ready = earliest[worst] + alone.task_by_id[worst].minutes
        minutes = ready - earliest[first]
        at, name = clock(self.event, earliest[first]), self.expanded.info[first].name
        own = alone.task_by_id[first].earliest == earliest[first]
        start = f"“{name}” starts at {at}" if own else f"nobody who may do “{name}” is there before {at}"
        end = self.expanded.info[worst].name
        return f"{start}, and from it to “{end}” takes at least {span(minutes)}, to {clock(self.event, ready)}"


def crowding(event: Event, ways_out: tuple[WayOut, ...], limits: Limits) -> tuple[str, ...]:
    """Where nothing plain stands in the way: what is short, as the ways out that work show."""
    said = []
    for way in ways_out:
        if way.change["kind"] in ("add_gear", "buy_gear"):
            said.append(gear_crowding(event, way, limits))
        elif way.change["kind"] == "add_helper":
            said.append(f"There are too few hands with the {way.change['skills']} skill for all the dishes at once.")
        elif way.change["kind"] in ("widen_window", "crew_earlier"):
            said.append("The crew's hours are too short for all the dishes.")
        elif way.change["kind"] in ("move_serving", "move_slot"):
            said.append("The time before a serving is too short for all that must go before it.")
    fallback = "The dishes do not fit together in the time, gear and hands that there are."
    told = tuple(dict.fromkeys(said)) or (fallback,)
    # Each was read off a change that leads to a plan by itself.
    return (*told, ENOUGH) if len(told) > 1 else told


def gear_crowding(event: Event, way: WayOut, limits: Limits) -> str:
    """When and for what the gear would be used that is short: read off a plan in which there is enough of it."""
    expanded = expand(apply_change(event, way.change))
    plan = first_plan(expanded, limits)
    gear = GearId(str(way.change.get("gear", "")))
    name = next((g.name for g in event.gear if g.id == gear), "")
    resource = next((r for r, g in expanded.gear_of.items() if g == gear), None)
    if plan is None or resource is None:
        return f"There is too little gear at once; this would do: {way.text}"
    uses = [
        (plan.start(task.id), plan.end(task), expanded.info[task.id])
        for task in expanded.problem.tasks
        if any(resource in group for group in plan.placed[task.id].picks)
    ]
    minute = max((start for start, _, _ in uses), key=lambda m: sum(s <= m < e for s, e, _ in uses))
    at_once = [info for start, end, info in uses if start <= minute < end]
    have = expanded.problem.resource_by_id[resource].capacity - int(way.change["count"])
    dishes = {info.dish for info in at_once}
    if len(at_once) > 1 and len(dishes) == 1 and (dish := dishes.pop()) is not None:
        recipe = event.recipe(event.dish(dish).recipe)
        there = f"there is only {have}" if have == 1 else f"there are only {have}"
        return f"{recipe.name} wants “{name}” for {len(at_once)} batches at once, and {there}."
    names = [f"“{info.name}”" for info in at_once]
    at = clock(event, minute)
    return f"Too much wants “{name}” at the same time (about {at}: {', '.join(names[:4])}), and there is only {have}."
