"""Every rule of a scheduling problem, read from the problem and the plan alone."""

from collections.abc import Iterator

from cookout.core.planning.check.breach import Breach, Use, overfull, overlong_stretches
from cookout.core.planning.problem import Link, LinkKind, Need, Problem, ResourceId, Task
from cookout.core.planning.result import Plan


def check(problem: Problem, plan: Plan) -> tuple[Breach, ...]:
    """Every breach of the problem's rules, rule by rule; empty for a valid plan."""
    reading = _Reading(problem, plan)
    return tuple(breach for rule in reading.rules() for breach in rule)


class _Reading:
    """One method a rule; a rule passes over what is not placed, which is a breach of its own."""

    def __init__(self, problem: Problem, plan: Plan) -> None:
        self.problem = problem
        self.plan = plan
        self.placed = [task for task in problem.tasks if task.id in plan.placed]
        self.uses = self._uses()

    def rules(self) -> tuple[Iterator[Breach], ...]:
        return (
            self.every_task_placed(),
            self.within_horizon(),
            self.within_task_window(),
            self.links_kept(),
            self.needs_met(),
            self.kept_throughout(),
            self.capacity_kept(),
            self.within_shift(),
            self.nobody_in_two_places(),
            self.breaks_taken(),
        )

    def every_task_placed(self) -> Iterator[Breach]:
        for task in self.problem.tasks:
            if task.id not in self.plan.placed:
                yield Breach("every_task_placed", (task.id,), f"{task.id} has no time")
            elif self.plan.placed[task.id].task != task.id:
                yield Breach("every_task_placed", (task.id,), f"the time of {task.id} bears another task's id")
        for stray in self.plan.placed.keys() - self.problem.task_by_id.keys():
            yield Breach("every_task_placed", (stray,), f"{stray} is planned, but is no task of the problem")

    def within_horizon(self) -> Iterator[Breach]:
        opens, closes = self.problem.opens, self.problem.closes
        for task, start, end in self._times():
            if start < opens:
                yield Breach("within_horizon", (task.id,), f"{task.id} starts before minute {opens}", start)
            if end > closes:
                yield Breach("within_horizon", (task.id,), f"{task.id} ends after minute {closes}", end)

    def within_task_window(self) -> Iterator[Breach]:
        for task, start, end in self._times():
            if task.earliest is not None and start < task.earliest:
                text = f"{task.id} starts before its earliest minute {task.earliest}"
                yield Breach("within_task_window", (task.id,), text, start)
            if task.latest is not None and end > task.latest:
                text = f"{task.id} ends after its latest minute {task.latest}"
                yield Breach("within_task_window", (task.id,), text, end)

    def links_kept(self) -> Iterator[Breach]:
        for link in self.problem.links:
            if link.before not in self.plan.placed or link.after not in self.plan.placed:
                continue
            origin, target = self._ends(link)
            pair, wait = (link.before, link.after), target - origin
            if link.least is not None and wait < link.least:
                text = f"{link.after} comes {wait} min after {link.before}, at least {link.least} are wanted"
                yield Breach("links_kept", pair, text, target)
            if link.most is not None and wait > link.most:
                text = f"{link.after} comes {wait} min after {link.before}, at most {link.most} are allowed"
                yield Breach("links_kept", pair, text, target)

    def needs_met(self) -> Iterator[Breach]:
        for task in self.placed:
            picks = self.plan.placed[task.id].picks
            if len(picks) != len(task.needs):
                text = f"{task.id} has {len(task.needs)} needs, but {len(picks)} are met"
                yield Breach("needs_met", (task.id,), text, self.plan.placed[task.id].start)
                continue
            for need, picked in zip(task.needs, picks, strict=True):
                yield from self._need_met(task, need, picked)

    def _need_met(self, task: Task, need: Need, picked: tuple[ResourceId, ...]) -> Iterator[Breach]:
        start = self.plan.placed[task.id].start
        if len(set(picked)) != len(picked):
            yield Breach("needs_met", (task.id,), f"{task.id} is given the same one twice", start)
        if len(picked) != need.picks:
            yield Breach("needs_met", (task.id,), f"{task.id} wants {need.picks} and is given {len(picked)}", start)
        for stranger in sorted(set(picked) - set(need.options)):
            yield Breach("needs_met", (task.id,), f"{task.id} cannot be done with {stranger}", start)

    def kept_throughout(self) -> Iterator[Breach]:
        first: dict[str, tuple[Task, set[ResourceId]]] = {}
        for task in self.placed:
            for need, picked in zip(task.needs, self.plan.placed[task.id].picks, strict=False):
                if not need.kept_as:
                    continue
                before, kept = first.setdefault(need.kept_as, (task, set(picked)))
                if kept != set(picked):
                    text = f"{task.id} does not keep what {before.id} has, as {need.kept_as} asks"
                    yield Breach("kept_throughout", (before.id, task.id), text, self.plan.placed[task.id].start)

    def capacity_kept(self) -> Iterator[Breach]:
        for resource in self.problem.resources:
            found = overfull(self.uses.get(resource.id, []), resource.capacity)
            if found is not None:
                minute, taken, tasks = found
                text = f"{taken} of {resource.id} are in use at minute {minute}, and there are {resource.capacity}"
                yield Breach("capacity_kept", tasks, text, minute)

    def within_shift(self) -> Iterator[Breach]:
        for resource in self.problem.resources:
            for use in self.uses.get(resource.id, []):
                if resource.opens is not None and use.start < resource.opens:
                    text = f"{use.task} starts before {resource.id} opens at minute {resource.opens}"
                    yield Breach("within_shift", (use.task,), text, use.start)
                if resource.closes is not None and use.end > resource.closes:
                    text = f"{use.task} ends after {resource.id} closes at minute {resource.closes}"
                    yield Breach("within_shift", (use.task,), text, use.end)

    def nobody_in_two_places(self) -> Iterator[Breach]:
        for helper in self.problem.shifts_by_helper:
            found = overfull([Use(use.task, use.start, use.end) for use in self._uses_of(helper)], 1)
            if found is not None:
                minute, _, tasks = found
                text = f"{helper} would be at {' and '.join(tasks)} at once"
                yield Breach("nobody_in_two_places", tasks, text, minute)

    def breaks_taken(self) -> Iterator[Breach]:
        for rule in self.problem.breaks:
            hot = [use for use in self._uses_of(rule.helper) if self.problem.task_by_id[use.task].hot]
            for stretch in overlong_stretches(hot, rule.stretch_minutes, rule.break_minutes):
                lasts = max(use.end for use in stretch) - stretch[0].start
                text = f"{rule.helper} is at the fire for {lasts} min without a break, over {rule.stretch_minutes}"
                yield Breach("breaks_taken", tuple(use.task for use in stretch), text, stretch[0].start)

    def _times(self) -> Iterator[tuple[Task, int, int]]:
        for task in self.placed:
            start = self.plan.placed[task.id].start
            yield task, start, start + task.minutes

    def _ends(self, link: Link) -> tuple[int, int]:
        """The two minutes between which the link's wait lies."""
        origin, target = self.plan.placed[link.before].start, self.plan.placed[link.after].start
        if link.kind in (LinkKind.FINISH_TO_START, LinkKind.FINISH_TO_FINISH):
            origin += self.problem.task_by_id[link.before].minutes
        if link.kind in (LinkKind.START_TO_FINISH, LinkKind.FINISH_TO_FINISH):
            target += self.problem.task_by_id[link.after].minutes
        return origin, target

    def _uses(self) -> dict[ResourceId, list[Use]]:
        uses: dict[ResourceId, list[Use]] = {}
        for task, start, end in self._times():
            for need, picked in zip(task.needs, self.plan.placed[task.id].picks, strict=False):
                for resource in picked:
                    uses.setdefault(resource, []).append(Use(task.id, start, end, need.amount))
        return uses

    def _uses_of(self, helper: str) -> list[Use]:
        """What the helper does, each task once for every pick of one of the helper's shifts."""
        return [use for shift in self.problem.shifts_by_helper.get(helper, ()) for use in self.uses.get(shift, [])]
