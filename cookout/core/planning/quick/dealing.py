"""Deals the work of a plan anew among the helpers, with all times held, by annealing.

A quick plan gives each task to whoever is best at the moment; looking back, one helper's lone early task often fits
another who is there anyway. One move takes a task from a helper to another who is free, skilled and rested.
"""

from bisect import insort
from dataclasses import dataclass
from math import exp
from random import Random

from cookout.core.planning.problem import Aim, Problem, ResourceId, Task, TaskId
from cookout.core.planning.quick.booking import longest_run
from cookout.core.planning.result import Placed, Plan
from cookout.core.planning.values import PRESENCE_PER_WORK, even_share, values


@dataclass(frozen=True, slots=True)
class Params:
    """Set by trial on the three fixtures.

    `moves_per_task`: moves tried for each task with a choice; `warm` and `cold`: temperatures in minutes of cost;
    `fairness`: what a minute above an even share costs beside a minute of idle presence.
    """

    moves_per_task: int = 60
    warm: float = 25.0
    cold: float = 0.5
    fairness: float = 0.2


@dataclass(frozen=True, slots=True)
class Seat:
    """A task's place at a need: which of the need's picks it is, and who else could take it."""

    task: Task
    need: int
    pick: int
    start: int
    options: tuple[ResourceId, ...]

    @property
    def end(self) -> int:
        """The minute at which the work ends."""
        return self.start + self.task.minutes


def dealt_anew(problem: Problem, plan: Plan, *, seed: int = 1) -> Plan:
    """The plan with its work dealt better, or the plan itself; deterministic for a seed."""
    if Aim.CREW_DAY not in problem.aims:
        return plan
    dealing = Dealing(problem, plan, Random(seed))
    better = dealing.anneal()
    return better if values(problem, better) < values(problem, plan) else plan


class Dealing:
    """The state of the annealing: who does what, and what each shift costs."""

    def __init__(self, problem: Problem, plan: Plan, chance: Random) -> None:
        self.problem = problem
        self.plan = plan
        self.chance = chance
        self.params = Params()
        self.spans: dict[ResourceId, list[tuple[int, int]]] = {r.id: [] for r in problem.resources if r.helper}
        self.hot: dict[str, list[tuple[int, int]]] = {helper: [] for helper in problem.shifts_by_helper}
        self.work: dict[str, int] = dict.fromkeys(problem.shifts_by_helper, 0)
        self.rules = {rule.helper: rule for rule in problem.breaks}
        self.holder: dict[tuple[TaskId, int, int], ResourceId] = {}
        self.seats: list[Seat] = []
        self._sit()
        self.share = even_share(sum(self.work.values()), len(self.work))

    def _sit(self) -> None:
        for task in self.problem.tasks:
            for number, (need, group) in enumerate(zip(task.needs, self.plan.placed[task.id].picks, strict=True)):
                for pick, shift in enumerate(group):
                    if shift in self.spans:
                        seat = Seat(task, number, pick, self.plan.start(task.id), need.options)
                        self.take(seat, shift)
                        if len(need.options) > need.picks and not need.kept_as:
                            self.seats.append(seat)

    def helper(self, shift: ResourceId) -> str:
        """Whose shift it is."""
        return self.problem.resource_by_id[shift].helper or ""

    def take(self, seat: Seat, shift: ResourceId) -> None:
        """Give the work to a shift."""
        self.holder[seat.task.id, seat.need, seat.pick] = shift
        insort(self.spans[shift], (seat.start, seat.end))
        self.work[self.helper(shift)] += seat.task.minutes
        if seat.task.hot:
            self.hot[self.helper(shift)].append((seat.start, seat.end))

    def drop(self, seat: Seat, shift: ResourceId) -> None:
        """Take the work from a shift."""
        self.spans[shift].remove((seat.start, seat.end))
        self.work[self.helper(shift)] -= seat.task.minutes
        if seat.task.hot:
            self.hot[self.helper(shift)].remove((seat.start, seat.end))

    def cost(self, shifts: tuple[ResourceId, ...]) -> float:
        """Idle presence of some shifts and what their helpers bear above an even share, weighed."""
        idle = 0
        for shift in shifts:
            spans = self.spans[shift]
            if spans:
                worked = sum(end - start for start, end in spans)
                idle += max(0, spans[-1][1] - spans[0][0] - PRESENCE_PER_WORK * worked)
        above = sum(max(0, self.work[helper] - self.share) for helper in {self.helper(shift) for shift in shifts})
        return idle + self.params.fairness * above

    def can_take(self, seat: Seat, shift: ResourceId) -> bool:
        """Whether a shift is open, free and its helper rested enough for the work."""
        resource = self.problem.resource_by_id[shift]
        if resource.opens is not None and seat.start < resource.opens:
            return False
        if resource.closes is not None and seat.end > resource.closes:
            return False
        if any(start < seat.end and seat.start < end for start, end in self.spans[shift]):
            return False
        rule = self.rules.get(self.helper(shift)) if seat.task.hot else None
        if rule is None:
            return True
        hot = [*self.hot[self.helper(shift)], (seat.start, seat.end)]
        return longest_run(hot, rule.break_minutes) <= rule.stretch_minutes

    def anneal(self) -> Plan:
        """Move after move, worse ones ever more rarely; the best deal met on the way."""
        moves = self.params.moves_per_task * len(self.seats)
        worth = best_worth = self.cost(tuple(self.spans))
        best = dict(self.holder)
        for move in range(moves):
            heat = self.params.warm * (self.params.cold / self.params.warm) ** (move / moves)
            worth += self.move(heat)
            if worth < best_worth - 1e-9:
                best, best_worth = dict(self.holder), worth
        return self.with_deal(best)

    def move(self, heat: float) -> float:
        """Try one move; the change of cost, 0 where it was not made."""
        seat = self.chance.choice(self.seats)
        giver = self.holder[seat.task.id, seat.need, seat.pick]
        taker = self.chance.choice(seat.options)
        if taker == giver or taker in self.others(seat) or not self.can_take(seat, taker):
            return 0.0
        before = self.cost((giver, taker))
        self.drop(seat, giver)
        self.take(seat, taker)
        change = self.cost((giver, taker)) - before
        if change <= 0 or self.chance.random() < exp(-change / heat):
            return change
        self.drop(seat, taker)
        self.take(seat, giver)
        return 0.0

    def others(self, seat: Seat) -> set[ResourceId]:
        """Who else works at the same task."""
        return {shift for (task, *_), shift in self._of_task(seat.task)}

    def _of_task(self, task: Task) -> list[tuple[tuple[TaskId, int, int], ResourceId]]:
        keys = [
            (task.id, number, pick)
            for number, need in enumerate(task.needs)
            for pick in range(need.picks)
            if (task.id, number, pick) in self.holder
        ]
        return [(key, self.holder[key]) for key in keys]

    def with_deal(self, deal: dict[tuple[TaskId, int, int], ResourceId]) -> Plan:
        """The plan with the work so dealt."""
        placed = dict(self.plan.placed)
        for seat in self.seats:
            stands = placed[seat.task.id]
            groups = [list(group) for group in stands.picks]
            groups[seat.need][seat.pick] = deal[seat.task.id, seat.need, seat.pick]
            placed[seat.task.id] = Placed(stands.task, stands.start, tuple(tuple(group) for group in groups))
        return Plan(placed)
