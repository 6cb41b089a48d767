"""`solve`: a problem and limits in, a result out."""

from time import perf_counter

from cookout.core.planning.network import start_windows
from cookout.core.planning.problem import Problem
from cookout.core.planning.quick import quick_plan
from cookout.core.planning.result import Level, Limits, Plan, Progress, Result, Status, Watch
from cookout.core.planning.solver.levels import OnePiece
from cookout.core.planning.values import values


def solve(problem: Problem, limits: Limits, watch: Watch | None = None) -> Result:
    """The best plan that the limits allow, with what is known of how good it is.

    With one worker the same seed gives the same plan, unless the clock ends a level before its proof.
    """
    watch = watch or Watch()
    began = perf_counter()
    windows = start_windows(problem)
    if windows is None or lacks_options(problem):
        return Result(Status.IMPOSSIBLE, None, (), perf_counter() - began)
    first = quick_plan(problem, seed=limits.seed, tries=tries_for(problem), windows=windows, stop=watch.stop)
    if first is not None:
        told = tuple(zip(problem.aims, values(problem, first), strict=True))
        watch.tell(Progress(perf_counter() - began, "quick", first, told))
    piece = OnePiece(problem, windows, limits, watch)
    piece.solve(first, perf_counter() - began)
    return Result(
        status_of(piece.best, tuple(piece.levels), impossible=piece.impossible),
        piece.best,
        tuple(piece.levels),
        perf_counter() - began,
    )


def lacks_options(problem: Problem) -> bool:
    """Whether some task needs more than there could ever be."""
    capacity = {resource.id: resource.capacity for resource in problem.resources}
    return any(
        sum(capacity[option] >= need.amount for option in need.options) < need.picks
        for task in problem.tasks
        for need in task.needs
    )


def tries_for(problem: Problem) -> int:
    """How many quick plans are worth making before the solver starts: many for small problems, few for large."""
    return max(3, min(30, 1500 // max(1, len(problem.tasks))))


def status_of(plan: Plan | None, levels: tuple[Level, ...], *, impossible: bool) -> Status:
    """The status that plan and levels add up to."""
    if plan is None:
        return Status.IMPOSSIBLE if impossible else Status.NONE_FOUND
    return Status.PROVED_BEST if all(level.proved for level in levels) else Status.BEST_FOUND
