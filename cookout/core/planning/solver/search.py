"""Search around a plan: free a part of it, solve that part with the rest held, keep what is better, and again.

Parts are a stretch of the day, one dish's tasks, or two helpers' work; now and then all hands are dealt anew with the
times held. A part that brings nothing is chosen less often, and parts grow while they are solved to proof.
"""

from collections.abc import Callable
from dataclasses import dataclass
from itertools import cycle
from math import prod
from random import Random
from time import perf_counter

from ortools.sat.python import cp_model

from cookout.core.planning.network import StartWindow
from cookout.core.planning.problem import Problem, TaskId
from cookout.core.planning.result import Limits, Plan, Watch
from cookout.core.planning.solver.aims import expression, floor, is_hands_on
from cookout.core.planning.solver.breaks import missed_breaks
from cookout.core.planning.solver.cpsat import run
from cookout.core.planning.solver.rules import Around, Rules
from cookout.core.planning.values import Values, helpers_of, values

HEAVIEST = 2**56


@dataclass(frozen=True, slots=True)
class Params:
    """Set by trial on the three fixtures.

    `part`: tasks freed at first (10 to 200), at most `largest`; `grow` and `shrink` its factors after a proof or a
    time-out; `seconds` for one part.
    """

    part: int = 30
    largest: int = 160
    grow: float = 1.15
    shrink: float = 0.8
    seconds: float = 0.6


class Search:
    """Improves a plan part by part; deterministic for a seed as long as parts are solved to proof."""

    def __init__(
        self,
        problem: Problem,
        windows: dict[TaskId, StartWindow],
        limits: Limits,
        watch: Watch,
        found: Callable[[Plan], None],
    ) -> None:
        self.problem = problem
        self.windows = windows
        self.limits = limits
        self.watch = watch
        self.found = found
        self.params = Params()
        self.chance = Random(limits.seed)
        self.size = float(self.params.part)
        self.hands_on = frozenset(t.id for t in problem.tasks if is_hands_on(problem, t.id))
        self.floors = tuple(floor(aim, problem, windows) for aim in problem.aims)
        self.neighbours = neighbours(problem)

    def improve(self, plan: Plan, *, seconds: float, idle_rounds: int, enough: Values | None = None) -> Plan:
        """The plan after searching for some seconds, until as many rounds in a row bring nothing or it is `enough`."""
        enough = self.floors if enough is None else enough
        deadline = perf_counter() + seconds
        worth, quiet = values(self.problem, plan), 0
        for make_part in cycle(self.makers()):
            left = deadline - perf_counter()
            if left <= 0.02 or quiet >= idle_rounds or self.watch.stop() or worth <= enough:
                break
            better = self.solve_part(make_part(plan), min(left, self.params.seconds))
            worth_now = values(self.problem, better) if better is not None else worth
            quiet += 1
            if better is not None and worth_now < worth:
                plan, worth, quiet = better, worth_now, 0
                self.found(plan)
        return plan

    def makers(self) -> tuple[Callable[[Plan], Around], ...]:
        """The kinds of parts, in the order in which they take turns."""
        makers = (self.some_hands, self.stretch_of_day, self.around_one, self.two_helpers, self.stretch_of_day)
        return (*makers, self.around_changed) if self.problem.before else makers

    def around_changed(self, plan: Plan) -> Around:
        """A stretch of what differs from before, and what is linked to it, for some of it may stand as it did."""
        moved = [stood.task for stood in self.problem.before if plan.start(stood.task) != stood.start]
        handed = [
            stood.task for stood in self.problem.before if helpers_of(self.problem, plan, stood.task) != stood.helpers
        ]
        differ = sorted({*moved, *handed}, key=lambda task: (plan.start(task), task))
        middle = self.chance.randrange(len(differ)) if differ else 0
        part = differ[max(0, middle - int(self.size) // 2) : middle + int(self.size) // 2]
        free = {*part, *(other for task in part for other in self.neighbours[task])}
        return Around(plan, frozenset(free))

    def some_hands(self, plan: Plan) -> Around:
        """Times held, the work of a few helpers dealt anew."""
        helpers = sorted(self.problem.shifts_by_helper)
        few = set(self.chance.sample(helpers, min(4, len(helpers))))
        return Around(plan, frozenset(), frozenset(self.work_of(plan, few)))

    def stretch_of_day(self, plan: Plan) -> Around:
        """The tasks nearest in time to some moment."""
        moment = plan.start(self.chance.choice(self.problem.tasks).id)
        near = sorted(self.problem.tasks, key=lambda t: (abs(plan.start(t.id) - moment), t.id))
        return Around(plan, frozenset(t.id for t in near[: int(self.size)]))

    def around_one(self, plan: Plan) -> Around:
        """A task with all that is linked to it, link by link, and the hands at work at the time."""
        return Around(plan, self.linked_to(self.chance.choice(self.problem.tasks).id, self.size))

    def linked_to(self, first: TaskId, most: float) -> frozenset[TaskId]:
        """A task with the tasks that are linked to it, nearest first, until there are so many."""
        free: dict[TaskId, None] = {first: None}
        queue = [first]
        while queue and len(free) < most:
            for other in self.neighbours[queue.pop(0)]:
                if other not in free and len(free) < most:
                    free[other] = None
                    queue.append(other)
        return frozenset(free)

    def two_helpers(self, plan: Plan) -> Around:
        """The work of two helpers, and what is bound closely to it."""
        helpers = sorted(self.problem.shifts_by_helper)
        mine = self.work_of(plan, set(self.chance.sample(helpers, min(2, len(helpers)))))
        middle = self.chance.randrange(len(mine)) if mine else 0
        mine = sorted(mine, key=plan.start)
        free = set(mine[max(0, middle - int(self.size) // 2) : middle + int(self.size) // 2])
        free |= {other for task in free for other in self.neighbours[task] if other not in self.hands_on}
        return Around(plan, frozenset(free), frozenset(mine))

    def work_of(self, plan: Plan, helpers: set[str]) -> list[TaskId]:
        """The tasks in the hands of some helpers."""
        return [
            t.id
            for t in self.problem.tasks
            if any(self.problem.resource_by_id[r].helper in helpers for g in plan.placed[t.id].picks for r in g)
        ]

    def solve_part(self, around: Around, seconds: float) -> Plan | None:
        """Solve with the rest held; None where nobody found anything or a break would be missed."""
        rules = Rules(self.problem, self.windows, around)
        rules.apply()
        rules.model.minimize(self.weighed(rules, values(self.problem, around.plan)))
        rules.hint(around.plan)
        limits = Limits(seconds, self.limits.workers, self.limits.seed)
        result = run(rules, limits, self.watch, lambda _: None)
        factor = self.params.grow if result.proved else self.params.shrink
        self.size = min(self.params.largest, max(10.0, self.size * factor), len(self.problem.tasks))
        if result.plan is None or missed_breaks(self.problem, result.plan):
            return None
        return result.plan

    def weighed(self, rules: Rules, worth: Values) -> cp_model.LinearExpr:
        """All levels in one sum, each weighing more than what the next can come to; those at their floor are held."""
        amounts = []
        for aim, value, least in zip(self.problem.aims, worth, self.floors, strict=True):
            amount = expression(aim, rules)
            most = value if value <= least else 2 * value + 240
            rules.model.add(amount <= most)
            if value > least:
                amounts.append((amount, most + 1))
        # The solver reckons with whole numbers below 2^62; of what would not fit, the last levels are left to chance.
        while prod(most for _, most in amounts) > HEAVIEST:
            amounts.pop()
        weight, terms = 1, []
        for amount, most in reversed(amounts):
            terms.append(weight * amount)
            weight *= most
        return cp_model.LinearExpr.sum(terms)


def neighbours(problem: Problem) -> dict[TaskId, tuple[TaskId, ...]]:
    """The tasks that each task is linked to."""
    linked: dict[TaskId, dict[TaskId, None]] = {task.id: {} for task in problem.tasks}
    for link in problem.links:
        linked[link.before][link.after] = None
        linked[link.after][link.before] = None
    return {task: tuple(others) for task, others in linked.items()}
