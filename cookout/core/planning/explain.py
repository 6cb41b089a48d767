"""Why each task stands where it stands: how far it could move with all else in place, and what stops it."""

from collections.abc import Iterator
from dataclasses import dataclass

from cookout.core.planning.event import GearKind, Pin
from cookout.core.planning.expanded import Expanded, TaskInfo
from cookout.core.planning.network import Arc, arcs_of
from cookout.core.planning.problem import Link, LinkKind, ResourceId, Task, TaskId
from cookout.core.planning.quick.booking import longest_run
from cookout.core.planning.record import BEHIND
from cookout.core.planning.result import Plan
from cookout.core.planning.wording import clock, span

NO_PIN = Pin("")
PINNED = " (pinned by hand)"


@dataclass(frozen=True, slots=True)
class Stop:
    """A task could move `room` minutes before this stops it; `by` is what does, `text` says it."""

    room: int
    by: str
    text: str


@dataclass(frozen=True, slots=True)
class Reasons:
    """What stops a task from starting later and earlier; `later.room` is its slack."""

    later: Stop
    earlier: Stop


@dataclass(frozen=True, slots=True)
class Occupied:
    """Minutes in which a task uses a resource."""

    task: TaskId
    start: int
    end: int
    amount: int


class Explainer:
    """Explains the tasks of one plan."""

    def __init__(self, expanded: Expanded, plan: Plan) -> None:
        self.expanded = expanded
        self.event = expanded.event
        self.problem = expanded.problem
        self.plan = plan
        self.uses: dict[ResourceId, list[Occupied]] = {}
        self.by_helper: dict[str, list[Occupied]] = {}
        self.run_of = {task: run.bakes for run in expanded.bake_runs for task in run.holds}
        self.run_of |= {task: firing.lights for firing in expanded.firings for task in (firing.lights, firing.ashes)}
        self.links_of: dict[TaskId, list[tuple[Arc, Link]]] = {task.id: [] for task in self.problem.tasks}
        self.pins = {TaskId(pin.task): pin for pin in self.event.pins}
        self._collect()

    def _collect(self) -> None:
        for task in self.problem.tasks:
            for need, group in zip(task.needs, self.plan.placed[task.id].picks, strict=True):
                for resource in group:
                    use = Occupied(task.id, self.plan.start(task.id), self.plan.end(task), need.amount)
                    self.uses.setdefault(resource, []).append(use)
                    helper = self.problem.resource_by_id[resource].helper
                    if helper is not None:
                        self.by_helper.setdefault(helper, []).append(use)
        for link in self.problem.links:
            before, after = self.problem.task_by_id[link.before], self.problem.task_by_id[link.after]
            for arc in arcs_of(link, before, after):
                self.links_of[arc.tail].append((arc, link))
                self.links_of[arc.head].append((arc, link))

    def explain(self) -> dict[TaskId, Reasons]:
        """Reasons for every task."""
        later = {task.id: self.stops(task, later=True) for task in self.problem.tasks}
        earlier = {task.id: self.stops(task, later=False) for task in self.problem.tasks}
        return {
            task: Reasons(self.said(task, later, "later"), self.said(task, earlier, "earlier"))
            for task in self.problem.task_by_id
        }

    def stops(self, task: Task, *, later: bool) -> list[Stop]:
        """All that stops the task, the nearest first."""
        stops = [
            *self.own_stops(task, later=later),
            *self.link_stops(task, later=later),
            *self.resource_stops(task, later=later),
        ]
        stops.sort(key=lambda stop: stop.room)
        nearer = self.break_stop(task, stops[0].room, later=later)
        return [nearer, *stops] if nearer is not None else stops

    def own_stops(self, task: Task, *, later: bool) -> Iterator[Stop]:
        """The task's own times and the horizon."""
        start, end = self.plan.start(task.id), self.plan.end(task)
        if not later:
            yield Stop(
                start - self.problem.opens, "", f"nobody is there before {clock(self.event, self.problem.opens)}"
            )
            if task.earliest is not None:
                yield Stop(start - task.earliest, "", self.own_reason(task, task.earliest, later=False))
            return
        yield Stop(self.problem.closes - end, "", f"all is over at {clock(self.event, self.problem.closes)}")
        if task.latest is not None:
            yield Stop(task.latest - end, "", self.own_reason(task, task.latest, later=True))
        for due in self.problem.dues:
            if due.task == task.id:
                # Past the due time but inside the tolerance the task is as late as it may be.
                yield Stop(max(0, due.at - end), "", f"it is due at {clock(self.event, due.at)}")

    def own_reason(self, task: Task, minute: int, *, later: bool) -> str:
        """A task's own time in words."""
        info, at = self.info(task.id), clock(self.event, minute)
        if self.pins.get(task.id, NO_PIN).at is not None:
            return f"it is pinned by hand at {clock(self.event, self.plan.start(task.id))}"
        if info.live_in is not None:
            slot = next(s for s in self.event.slots if s.id == info.live_in)
            return f"it is shown live, and {slot.name} {'ends' if later else 'begins'} at {at}"
        if task.id in self.expanded.serves.values():
            edge = "latest" if later else "earliest"
            return f"with the serving's tolerance that is its {edge} time ({at})"
        for (slot_id, _), tasks in self.expanded.ready.items():
            if task.id in tasks:
                name = next(s.name for s in self.event.slots if s.id == slot_id)
                return f"it stands ready at {name}, {'by' if later else 'made no earlier than'} {at}"
        return f"it must be {'done by' if later else 'started no earlier than'} {at}"

    def link_stops(self, task: Task, *, later: bool) -> Iterator[Stop]:
        """Waits to other tasks."""
        for arc, link in self.links_of[task.id]:
            if (arc.tail == task.id) is not later:
                continue
            room = self.plan.start(arc.head) - self.plan.start(arc.tail) - arc.minutes
            other = arc.head if later else arc.tail
            yield Stop(room, other, self.link_reason(link, other, later=later))

    def link_reason(self, link: Link, other: TaskId, *, later: bool) -> str:
        """A wait in words, from the side of the task that wants to move."""
        name = f"“{self.info(other).name}”"
        why = f" ({link.why})" if link.why else ""
        if (other == link.after) is not later:
            return f"{self.most_words(link, other, name)}{why}"
        ends = link.kind in (LinkKind.FINISH_TO_START, LinkKind.FINISH_TO_FINISH)
        # A link's reason is that of its most-wait where it has one; beside a plain "comes next" it would mislead.
        why = "" if link.most and not link.least else why
        if later:
            at = clock(self.event, self.plan.start(other))
            if not link.least:
                return f"{name} comes next, at {at}{why}"
            gap = f"{span(link.least)} must lie between" if ends else f"this must start {span(link.least)} before it"
            return f"{name} starts at {at}, and {gap}{why}"
        minute = self.plan.end(self.problem.task_by_id[other]) if ends else self.plan.start(other)
        must_pass = f", and {span(link.least)} must pass" if link.least else ""
        return f"{name} {'ends' if ends else 'starts'} at {clock(self.event, minute)}{must_pass}{why}"

    def most_words(self, link: Link, other: TaskId, name: str) -> str:
        """A most-wait in words: from the task before, "within so long of it"; from the one after, "no sooner"."""
        ends = link.kind in (LinkKind.FINISH_TO_START, LinkKind.FINISH_TO_FINISH)
        if not link.most:
            edge = "ends" if other == link.before else "starts"
            minute = self.plan.end(self.problem.task_by_id[other]) if edge == "ends" else self.plan.start(other)
            return f"it goes with {name}, which {edge} at {clock(self.event, minute)}, with no wait between"
        if other == link.before:
            return f"it must start within {span(link.most)} of the {'end' if ends else 'start'} of {name}"
        return f"{name} must start within {span(link.most)} of its {'end' if ends else 'start'}"

    def resource_stops(self, task: Task, *, later: bool) -> Iterator[Stop]:
        """Helpers and gear that are busy just before or after."""
        for need, group in zip(task.needs, self.plan.placed[task.id].picks, strict=True):
            for resource in group:
                helper = self.problem.resource_by_id[resource].helper
                if helper is not None:
                    yield from self.helper_stops(task, resource, helper, later=later)
                else:
                    yield from self.gear_stops(task, resource, need.amount, later=later)

    def helper_stops(self, task: Task, shift: ResourceId, helper: str, *, later: bool) -> Iterator[Stop]:
        """The helper's other tasks and the end of the shift."""
        start, end = self.plan.start(task.id), self.plan.end(task)
        name = next(h.name for h in self.event.crew if h.id == helper)
        name += PINNED if helper in self.pins.get(task.id, NO_PIN).helpers else ""
        resource = self.problem.resource_by_id[shift]
        if later and resource.closes is not None:
            yield Stop(resource.closes - end, helper, f"{name} is there until {clock(self.event, resource.closes)}")
        if not later and resource.opens is not None:
            yield Stop(start - resource.opens, helper, f"{name} is there from {clock(self.event, resource.opens)}")
        for use in self.by_helper[helper]:
            if use.task == task.id:
                continue
            other = self.info(use.task).name
            if later and use.start >= end:
                yield Stop(use.start - end, helper, f"{name} has “{other}” at {clock(self.event, use.start)}")
            if not later and use.end <= start:
                yield Stop(start - use.end, helper, f"{name} is at “{other}” until {clock(self.event, use.end)}")

    def gear_stops(self, task: Task, resource: ResourceId, amount: int, *, later: bool) -> Iterator[Stop]:
        """The nearest minute at which too little of the gear is free."""
        start, end = self.plan.start(task.id), self.plan.end(task)
        own = self.run_of.get(task.id, task.id)
        # A bake's own tasks follow one another in the oven; links say so better than the oven's being in use.
        others = [use for use in self.uses[resource] if self.run_of.get(use.task, use.task) != own]
        capacity = self.problem.resource_by_id[resource].capacity
        name = self.gear_name(resource)
        name += PINNED if set(self.pins.get(task.id, NO_PIN).units) & set(self.labels(resource)) else ""
        for use in others:
            minute = use.start if later else use.end - 1
            if (later and use.start < end) or (not later and use.end > start):
                continue
            busy = sum(o.amount for o in others if o.start <= minute < o.end)
            if busy + amount > capacity:
                room = minute - end if later else start - minute - 1
                when = f"from {clock(self.event, minute)}" if later else f"until {clock(self.event, minute + 1)}"
                text = f"{name} is in use {when} for “{self.info(use.task).name}”"
                yield Stop(room, self.gear_id(resource), text)

    def break_stop(self, task: Task, room: int, *, later: bool) -> Stop | None:
        """The move within `room` minutes that would cost somebody a break from the heat, if there is one."""
        for minutes in range(1, room + 1) if task.hot else ():
            helper = self.missing_break(task, minutes if later else -minutes)
            if helper is not None:
                name = next(h.name for h in self.event.crew if h.id == helper)
                return Stop(minutes - 1, helper, f"{name} would miss a break from the heat")
        return None

    def missing_break(self, task: Task, shift: int) -> str | None:
        """The helper who would stand at the fire too long if the task moved by `shift` minutes."""
        for rule in self.problem.breaks:
            mine = [u for u in self.by_helper.get(rule.helper, []) if self.problem.task_by_id[u.task].hot]
            if any(use.task == task.id for use in mine):
                spans = [(u.start + shift, u.end + shift) if u.task == task.id else (u.start, u.end) for u in mine]
                if longest_run(spans, rule.break_minutes) > rule.stretch_minutes:
                    return rule.helper
        return None

    def said(self, task: TaskId, stops: dict[TaskId, list[Stop]], word: str) -> Stop:
        """The nearest stop as a sentence, with what stands behind it at the end of a chain of tasks without room."""
        stop = stops[task][0]
        lead = f"can start no {word}" if stop.room == 0 else f"could start {span(stop.room)} {word}, then"
        text = f"{lead}: {stop.text}"
        behind = self.root(task, stops) if stop.room == 0 and stop.by in self.expanded.info else None
        if behind is not None:
            end, why = behind
            text += f"{BEHIND}“{self.info(end).name}”: {why.text}"
        return Stop(stop.room, stop.by, text)

    def root(self, task: TaskId, stops: dict[TaskId, list[Stop]]) -> tuple[TaskId, Stop] | None:
        """What the chain of tasks that hold one another without room comes to: a time, else a helper or gear.

        The nearest such task in the chain; None where nothing but tasks stands there.
        """
        queue, seen = [task], {task}
        fallback: tuple[TaskId, Stop] | None = None
        for at in queue:
            tight = [stop for stop in stops[at] if stop.room == 0]
            for stop in tight:
                if stop.by == "" and at != task:
                    return at, stop
                if stop.by not in self.expanded.info and at != task:
                    fallback = fallback or (at, stop)
            ahead = dict.fromkeys(TaskId(stop.by) for stop in tight if stop.by in self.expanded.info)
            queue.extend(other for other in ahead if other not in seen)
            seen.update(ahead)
        return fallback

    def info(self, task: TaskId) -> TaskInfo:
        """What the task means."""
        return self.expanded.info[task]

    def gear_id(self, resource: ResourceId) -> str:
        """The gear that a resource stands for."""
        return str(self.expanded.gear_of.get(resource, resource))

    def gear_name(self, resource: ResourceId) -> str:
        """What is all in use: the piece, or of several pieces (or of a table's spots) that no more are free."""
        gear = next((g for g in self.event.gear if g.id == self.gear_id(resource)), None)
        if gear is None:
            return str(resource)
        if gear.kind is GearKind.TABLE:
            return f"every spot that “{gear.name}” could spare"
        capacity = self.problem.resource_by_id[resource].capacity
        if capacity == 1:
            return self.labels(resource)[0] if self.labels(resource) else gear.name
        beside = "" if capacity == gear.pieces else " beside what is pinned"
        return f"all there is of “{gear.name}”{beside} ({capacity})"

    def labels(self, resource: ResourceId) -> tuple[str, ...]:
        """The names of the pieces that a resource stands for, where they have names."""
        return tuple(self.expanded.labels.get(resource, ()))
