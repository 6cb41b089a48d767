"""One run of CP-SAT on a model: its limits, its watcher, and what it found."""

import threading
from collections.abc import Callable
from dataclasses import dataclass

from ortools.sat.python import cp_model

from cookout.core.errors import ProblemError
from cookout.core.planning.result import Limits, Plan, Watch
from cookout.core.planning.solver.rules import Rules

WATCH_INTERVAL_SECONDS = 0.05


@dataclass(frozen=True, slots=True)
class Found:
    """What a run gave: a plan or None, a bound of the objective or None, and whether there can be no plan at all."""

    plan: Plan | None
    bound: int | None
    impossible: bool
    proved: bool


class Teller(cp_model.CpSolverSolutionCallback):
    """Passes each solution on as a plan."""

    def __init__(self, rules: Rules, tell: Callable[[Plan], None]) -> None:
        super().__init__()
        self.rules = rules
        self.tell = tell

    def on_solution_callback(self) -> None:
        """Called by the solver at each better solution."""
        self.tell(self.rules.read(self))


def run(
    rules: Rules,
    limits: Limits,
    watch: Watch,
    tell: Callable[[Plan], None],
    *,
    plain: bool = False,
    strict: bool = False,
) -> Found:
    """Solve the model within the limits; `watch.stop` ends it early with what was found.

    `plain` simplifies the model less before the search: the way to ask again when the solver calls it impossible.
    `strict` looks harder at tasks that exclude one another: slower, but it sees some contradictions at once.
    """
    solver = cp_model.CpSolver()
    set_parameters(solver, limits)
    if plain:
        solver.parameters.symmetry_level = 0
        solver.parameters.max_presolve_iterations = 1
    solver.parameters.use_strong_propagation_in_disjunctive = strict
    with Watcher(solver, watch):
        status = solver.solve(rules.model, Teller(rules, tell))
    if status == cp_model.MODEL_INVALID:
        raise ProblemError(f"the solver refuses the model ({rules.model.validate()}); please report this event")
    plan = rules.read(solver) if status in (cp_model.OPTIMAL, cp_model.FEASIBLE) else None
    bound = bound_of(solver, status)
    return Found(plan, bound, status == cp_model.INFEASIBLE, status == cp_model.OPTIMAL)


def set_parameters(solver: cp_model.CpSolver, limits: Limits) -> None:
    """Limits and the few options that planning wants, whatever the problem.

    The rest stays as the solver has it: of OR-Tools 9.15, `cp_model_probing_level = 0` made it call parts of the
    festival impossible whose plan was at hand.
    """
    parameters = solver.parameters
    parameters.max_time_in_seconds = max(0.01, limits.seconds)
    parameters.num_workers = limits.workers
    parameters.random_seed = limits.seed


def bound_of(solver: cp_model.CpSolver, status: object) -> int | None:
    """The best bound as a whole number of minutes: objectives are whole, so it may be rounded up."""
    if status not in (cp_model.OPTIMAL, cp_model.FEASIBLE, cp_model.UNKNOWN):
        return None
    bound = solver.best_objective_bound
    if abs(bound) > 1e12:
        return None
    return int(-(-(bound - 1e-6) // 1))


class Watcher:
    """Asks from time to time whether to stop, for the solver itself asks only when it finds something."""

    def __init__(self, solver: cp_model.CpSolver, watch: Watch) -> None:
        self.solver = solver
        self.watch = watch
        self.over = threading.Event()
        self.thread = threading.Thread(target=self._look, daemon=True)

    def _look(self) -> None:
        while not self.over.wait(WATCH_INTERVAL_SECONDS):
            if self.watch.stop():
                self.solver.stop_search()
                return

    def __enter__(self) -> "Watcher":
        self.thread.start()
        return self

    def __exit__(self, *exception: object) -> None:
        self.over.set()
        self.thread.join()
