"""Plans near to an earlier one: the quick pass, with each task where it stood and in the hands that it was in.

Where that makes a dish late or lets food stand, what goes on at that time is placed anew, and the rest stays.
"""

from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace
from statistics import median_low

from cookout.core.planning.network import StartWindow
from cookout.core.planning.problem import Problem, Stood, TaskId
from cookout.core.planning.quick.frame import Frame, frame
from cookout.core.planning.quick.passes import QuickPass, trailing_tasks, with_dues_as_deadlines
from cookout.core.planning.result import Plan, never
from cookout.core.planning.values import Values, stands, values


@dataclass(frozen=True, slots=True)
class Params:
    """Set by trial on the three fixtures.

    `noises`: minutes of disorder in the order of tasks, one try each. `margins`: minutes before a waste begins from
    which all is placed anew, one more try each.
    """

    noises: tuple[float, ...] = (0.0, 4.0, 12.0)
    margins: tuple[int, ...] = (0, 30, 60, 120)


def near_plan(
    problem: Problem,
    *,
    seed: int = 1,
    windows: dict[TaskId, StartWindow] | None = None,
    stop: Callable[[], bool] = never,
) -> Plan | None:
    """The best of a few plans in which tasks stand as they did before wherever they can; None where none is found.

    It ends early when `stop` says so, but not before the first.
    """
    quick = QuickPass(problem, seed=seed, windows=windows)
    if quick.windows is None or not problem.before:
        return None
    best: tuple[Values, Plan] | None = None
    for plan in _plans(quick):
        worth = values(problem, plan)
        if best is None or worth < best[0]:
            best = (worth, plan)
        if stop():
            break
    return best[1] if best is not None else None


def _plans(quick: QuickPass) -> Iterator[Plan]:
    on_time = frame(with_dues_as_deadlines(quick.problem), mirrored=True)
    with_delay = frame(quick.problem, mirrored=True, windows=quick.windows)
    frames = [back for back in (on_time, with_delay) if back is not None]
    for noise in Params().noises:
        for shift in shifts(quick.problem):
            stood = tuple(replace(each, start=each.start + shift) for each in quick.problem.before)
            for back in frames:
                yield from _loosened(quick, back, stood, noise)


def _loosened(quick: QuickPass, back: Frame, stood: tuple[Stood, ...], noise: float) -> Iterator[Plan]:
    """A plan near to where tasks stood, and then ever less of it kept around what goes to waste."""
    ahead = frame(quick.problem, mirrored=False, windows=quick.windows)
    assert ahead is not None, "a problem with windows has a frame"
    trailing = trailing_tasks(quick.problem, back)
    for margin in (*Params().margins, None):
        plan = quick.backward_plan(back, ahead, trailing, noise=noise, stood=stood)
        if plan is None:
            return
        yield plan
        wasted = waste(quick.problem, plan)
        if wasted is None or margin is None:
            return
        first, last = wasted
        stood = tuple(each for each in stood if not first - margin <= each.start <= last)


def waste(problem: Problem, plan: Plan) -> tuple[int, int] | None:
    """From the first start to the last end of what is late or lets food stand; None where nothing does."""
    late = [due.task for due in problem.dues if plan.end(problem.task_by_id[due.task]) > due.at]
    stale = [wish for wish in problem.freshness if stands(problem, plan, wish)]
    tasks = {*late, *(wish.made for wish in stale), *(wish.used for wish in stale if wish.used is not None)}
    if not tasks:
        return None
    return min(map(plan.start, tasks)), max(plan.end(problem.task_by_id[task]) for task in tasks)


def shifts(problem: Problem) -> tuple[int, ...]:
    """By how many minutes the day may have moved: not at all, or as what is due has in the middle."""
    stood = {each.task: each.start for each in problem.before}
    moves = [
        due.at - problem.task_by_id[due.task].minutes - stood[due.task] for due in problem.dues if due.task in stood
    ]
    return tuple(dict.fromkeys((0, median_low(moves)))) if moves else (0,)
