"""One-piece solving: every level in turn over the whole problem, each optimised and then held."""

from time import perf_counter

from cookout.core.planning.network import StartWindow
from cookout.core.planning.problem import Aim, Problem, TaskId
from cookout.core.planning.result import Level, Limits, Plan, Progress, Watch
from cookout.core.planning.solver.aims import expression, floor
from cookout.core.planning.solver.breaks import missed_breaks
from cookout.core.planning.solver.cpsat import Found, run
from cookout.core.planning.solver.rules import Rules
from cookout.core.planning.values import values

# How the seconds are dealt out among the levels still to come; the first must not eat the time of the last.
SHARES = {
    Aim.MAKESPAN: 1.0,
    Aim.LATENESS: 2.0,
    Aim.FRESHNESS: 2.0,
    Aim.CREW_DAY: 4.0,
    Aim.FAIR_SHARES: 1.5,
    Aim.CHANGES: 0.5,
}

# On makespan problems of so few tasks a hint keeps the solver near a plan that it would leave by itself.
UNHINTED_TASKS = 40
# Where no quick plan is at hand: the share of the time left for a strict look, then for any plan without an aim.
STRICT_SHARE = 0.1
ANY_SHARE = 0.8


class OnePiece:
    """Solves the levels of a problem one after another on a single model."""

    def __init__(
        self, problem: Problem, windows: dict[TaskId, StartWindow], limits: Limits, watch: Watch, began: float
    ) -> None:
        self.problem = problem
        self.windows = windows
        self.limits = limits
        self.watch = watch
        self.began = began
        self.best: Plan | None = None
        self.levels: list[Level] = []
        self.impossible = False
        self.rules = Rules(problem, windows)
        self.break_helpers: set[str] = set()

    def solve(self, first: Plan | None) -> None:
        """Work through the levels, starting from a first plan where there is one."""
        self.best = first
        self.rules.apply()
        if self.best is None:
            self.find_any()
        for number, aim in enumerate(self.problem.aims):
            if self.impossible:
                return
            self.level(number, aim)
            if self.best is None:
                return

    def find_any(self) -> None:
        """Look for any plan at all, with no aim: first with a strict look for contradictions, then plainly."""
        for strict, share in ((True, STRICT_SHARE), (False, ANY_SHARE)):
            limits = Limits(share * self.left(), self.limits.workers, self.limits.seed)
            found = run(self.rules, limits, self.watch, lambda plan: self.keep(plan, "any"), strict=strict)
            if found.impossible:
                self.impossible = self.confirmed_impossible("any")
            if found.plan is not None:
                self.keep(found.plan, "any")
                self.mend_breaks(found.plan)
            if self.impossible or self.best is not None or self.watch.stop():
                return

    def level(self, number: int, aim: Aim) -> None:
        """Optimise one level and hold it."""
        least = floor(aim, self.problem, self.windows)
        worth = values(self.problem, self.best)[number] if self.best else None
        amount = expression(aim, self.rules)
        if worth is None or worth > least:
            self.rules.model.minimize(amount)
            least = max(least, self.search(number, aim))
        if self.best is None:
            return
        value = values(self.problem, self.best)[number]
        self.levels.append(Level(aim, value, min(least, value)))
        self.rules.model.clear_objective()  # type: ignore[no-untyped-call]
        self.rules.model.add(amount <= value)

    def search(self, number: int, aim: Aim) -> int:
        """Run the solver until the level is proved, its time is over, or it is stopped; the bound that was reached."""
        until = self.left() * SHARES[aim] / sum(SHARES[a] for a in self.problem.aims[number:])
        deadline = perf_counter() + until
        bound = -(10**9)
        while perf_counter() < deadline and not self.watch.stop():
            found = self.attempt(aim, deadline - perf_counter())
            bound = max(bound, found.bound if found.bound is not None else bound)
            if found.impossible and self.best is None:
                self.impossible = self.confirmed_impossible(aim.value)
            if found.plan is None or not self.mend_breaks(found.plan):
                break
        return bound

    def attempt(self, aim: Aim, seconds: float) -> Found:
        """One run from the best plan so far."""
        self.rules.model.clear_hints()  # type: ignore[no-untyped-call]
        if self.best is not None and not (aim is Aim.MAKESPAN and len(self.problem.tasks) <= UNHINTED_TASKS):
            self.rules.hint(self.best)
        limits = Limits(seconds, self.limits.workers, self.limits.seed)
        found = run(self.rules, limits, self.watch, lambda plan: self.keep(plan, aim.value))
        if found.plan is not None:
            self.keep(found.plan, aim.value)
        return found

    def confirmed_impossible(self, stage: str) -> bool:
        """Whether asking again, with less done to the model before the search, finds no plan either in as long."""
        spent = perf_counter() - self.began
        limits = Limits(min(max(1.0, spent), max(0.5, self.left())), self.limits.workers, self.limits.seed + 1)
        again = run(self.rules, limits, self.watch, lambda plan: self.keep(plan, stage), plain=True)
        if again.plan is not None:
            self.keep(again.plan, stage)
        return again.plan is None

    def keep(self, plan: Plan, stage: str) -> None:
        """Keep a plan if it is better than the best and nobody misses a break, and tell of it."""
        if missed_breaks(self.problem, plan):
            return
        worth = values(self.problem, plan)
        if self.best is None or worth < values(self.problem, self.best):
            self.best = plan
            told = tuple(zip(self.problem.aims, worth, strict=True))
            self.watch.tell(Progress(perf_counter() - self.began, stage, plan, told))

    def mend_breaks(self, plan: Plan) -> bool:
        """Add the break rule for those whose breaks the plan misses; whether there are new ones."""
        missed = missed_breaks(self.problem, plan) - self.break_helpers
        for helper in sorted(missed):
            self.rules.breaks_are_kept(helper)
        self.break_helpers |= missed
        return bool(missed)

    def left(self) -> float:
        """Seconds left of the limit."""
        return max(0.0, self.limits.seconds - (perf_counter() - self.began))
