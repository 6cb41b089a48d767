"""`solve`: a problem and limits in, a result out."""

from time import perf_counter

from cookout.core.planning.network import StartWindow, all_arcs, start_windows
from cookout.core.planning.problem import Aim, Problem, TaskId
from cookout.core.planning.quick import near_plan, quick_plan, tidied
from cookout.core.planning.quick.dealing import dealt_anew
from cookout.core.planning.quick.evolve import Evolution
from cookout.core.planning.result import Level, Limits, Plan, Progress, Result, Status, Watch
from cookout.core.planning.solver.aims import floor
from cookout.core.planning.solver.levels import UNHINTED_TASKS, OnePiece
from cookout.core.planning.solver.search import Search
from cookout.core.planning.values import values

# How much of the time goes to breeding makespan plans before the solver starts, by trial on PSPLIB and RCPSP/max: the
# solver proves small instances and those with most-waits, and on large ones without it is beaten by breeding.
BREEDING_SHARE_SMALL = 0.25
BREEDING_SHARE_LARGE = 0.8
BREEDING_SHARE_WITH_MOST_WAITS = 0.0
BREEDING_SMALL_TASKS = 80
BREEDING_CHILDREN_A_SECOND = 200
# Quick plans tried in vain before the solver is asked for a first one.
PATIENCE = 12
# Up to how many tasks the whole problem is given to the solver in one piece after the search.
ONE_PIECE_TASKS = 500
# Up to how many the solver is quicker without a search before it.
SMALL_TASKS = 150
SEARCH_SHARE = 0.8
SEARCH_SHARE_LARGE = 0.95
# After as many parts in a row that bring nothing the search gives way to the one-piece solver.
IDLE_ROUNDS = 40
# The share of the time for a first plan near to an earlier one, and again for it to catch up with the quick one.
NEAR_SHARE = 0.15


def solve(problem: Problem, limits: Limits, watch: Watch | None = None) -> Result:
    """The best plan that the limits allow, with what is known of how good it is.

    With one worker the same seed gives the same plan, unless the clock ends a level before its proof.
    """
    watch = watch or Watch()
    began = perf_counter()
    windows = start_windows(problem)
    if windows is None or lacks_options(problem):
        return Result(Status.IMPOSSIBLE, None, (), perf_counter() - began)
    first = quick_plan(
        problem, seed=limits.seed, tries=tries_for(problem), patience=PATIENCE, windows=windows, stop=watch.stop
    )
    if first is not None:
        told = tuple(zip(problem.aims, values(problem, first), strict=True))
        watch.tell(Progress(perf_counter() - began, "quick", first, told))
    if problem.aims == (Aim.MAKESPAN,) and first is not None:
        first = bred_plan(problem, windows, limits, watch, first)
    piece = OnePiece(problem, windows, limits, watch, began)
    if problem.aims != (Aim.MAKESPAN,):
        first = polished_plan(piece, first)
    piece.solve(first)
    levels = tuple(piece.levels)
    if piece.best is not None:
        piece.best = tidied(problem, piece.best, windows)
        worth = values(problem, piece.best)
        levels = tuple(Level(a.aim, v, min(a.bound, v)) for a, v in zip(levels, worth, strict=True))
    status = status_of(piece.best, levels, impossible=piece.impossible)
    return Result(status, piece.best, levels, perf_counter() - began)


def polished_plan(piece: OnePiece, first: Plan | None) -> Plan | None:
    """The first plan with its work dealt better and, of all but small problems, after a search around it.

    What is near to an earlier plan and no worse than the first takes its place, and is not dealt anew.
    """
    piece.best = first
    search = Search(piece.problem, piece.windows, piece.limits, piece.watch, lambda plan: piece.keep(plan, "search"))
    until = perf_counter() + NEAR_SHARE * piece.left()
    near = near_plan(
        piece.problem,
        seed=piece.limits.seed,
        windows=piece.windows,
        stop=lambda: piece.watch.stop() or perf_counter() > until,
    )
    if near is not None:
        piece.keep(as_good(piece, search, near), "near")
    if piece.best is None:
        return None
    if piece.best is first:
        piece.keep(dealt_anew(piece.problem, piece.best, seed=piece.limits.seed), "deal")
    if len(piece.problem.tasks) <= SMALL_TASKS:
        return piece.best
    large = len(piece.problem.tasks) > ONE_PIECE_TASKS
    share = SEARCH_SHARE_LARGE if large else SEARCH_SHARE
    return search.improve(piece.best, seconds=share * piece.left(), idle_rounds=10**6 if large else IDLE_ROUNDS)


def as_good(piece: OnePiece, search: Search, near: Plan) -> Plan:
    """A plan near to an earlier one after a search around it, until it is as good as the best that is known."""
    if piece.best is None or len(piece.problem.tasks) <= SMALL_TASKS:
        return near
    enough = values(piece.problem, piece.best)
    return search.improve(near, seconds=NEAR_SHARE * piece.left(), idle_rounds=IDLE_ROUNDS, enough=enough)


def bred_plan(problem: Problem, windows: dict[TaskId, StartWindow], limits: Limits, watch: Watch, first: Plan) -> Plan:
    """A shorter plan for a makespan problem, bred for a share of the time; the first where breeding finds none."""
    least = floor(Aim.MAKESPAN, problem, windows)
    length = values(problem, first)[0]
    if length <= least:
        return first
    evolution = Evolution(problem, windows, seed=limits.seed)
    seconds = breeding_share(problem) * limits.seconds
    until = perf_counter() + seconds
    children = int(BREEDING_CHILDREN_A_SECOND * seconds)
    evolution.run(lambda: watch.stop() or perf_counter() > until, floor=least, children=children)
    bred = evolution.best()
    return bred if bred is not None and values(problem, bred)[0] < length else first


def breeding_share(problem: Problem) -> float:
    """The share of the time for breeding."""
    if any(arc.minutes < 0 for arc in all_arcs(problem)):
        return BREEDING_SHARE_WITH_MOST_WAITS
    if len(problem.tasks) <= UNHINTED_TASKS:
        return 0.0
    return BREEDING_SHARE_SMALL if len(problem.tasks) <= BREEDING_SMALL_TASKS else BREEDING_SHARE_LARGE


def lacks_options(problem: Problem) -> bool:
    """Whether some task needs more than there could ever be."""
    return not all(problem.can_meet(need) for task in problem.tasks for need in task.needs)


def tries_for(problem: Problem) -> int:
    """How many quick plans are worth making before the solver starts: many for small problems, few for large."""
    return max(3, min(30, 1500 // max(1, len(problem.tasks))))


def status_of(plan: Plan | None, levels: tuple[Level, ...], *, impossible: bool) -> Status:
    """The status that plan and levels add up to."""
    if plan is None:
        return Status.IMPOSSIBLE if impossible else Status.NONE_FOUND
    return Status.PROVED_BEST if all(level.proved for level in levels) else Status.BEST_FOUND
