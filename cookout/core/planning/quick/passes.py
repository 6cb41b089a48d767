"""The quick pass: several generations with different orders, the best plan kept.

Events are scheduled backward from their dues (in a mirrored frame), which makes food fresh and calls late from the
start; what leads to no due (drowning the coals) is then placed forward, as soon as it may. Makespan problems are
scheduled forward and improved by going back and forth (justification, Valls, Ballestin and Quintanilla 2005).
"""

from collections.abc import Callable, Iterator
from dataclasses import replace
from random import Random

from cookout.core.planning.network import StartWindow, start_windows
from cookout.core.planning.problem import Aim, Problem, Stood, TaskId
from cookout.core.planning.quick.frame import Frame, frame
from cookout.core.planning.quick.generate import Generation, Wish
from cookout.core.planning.result import Plan, never
from cookout.core.planning.values import Values, values


def quick_plan(
    problem: Problem,
    *,
    seed: int = 1,
    tries: int = 1,
    patience: int = 40,
    stop: Callable[[], bool] = never,
    windows: dict[TaskId, StartWindow] | None = None,
) -> Plan | None:
    """The best plan of `tries` feasible generations, giving up after `patience` failures before the first."""
    quick = QuickPass(problem, seed=seed, windows=windows)
    best: tuple[Values, Plan] | None = None
    for attempt, plan in enumerate(quick.plans()):
        if plan is not None:
            worth = values(problem, plan)
            if best is None or worth < best[0]:
                best = (worth, plan)
        if stop() or (attempt + 1 >= (tries if best else max(tries, patience))):
            break
    return best[1] if best else None


class QuickPass:
    """Makes plan after plan for a problem; deterministic for a seed."""

    def __init__(self, problem: Problem, *, seed: int = 1, windows: dict[TaskId, StartWindow] | None = None) -> None:
        self.problem = problem
        self.chance = Random(seed)
        self.windows = windows or start_windows(problem)

    def plans(self) -> Iterator[Plan | None]:
        """Plan after plan without end; None for each order that leads to none."""
        if self.windows is None:
            return iter(())
        if self.problem.aims == (Aim.MAKESPAN,):
            return self.forward_plans()
        return self.backward_plans()

    def backward_plans(self) -> Iterator[Plan | None]:
        """Plans backward from the dues; every second try with all the lateness that is allowed, if need be."""
        on_time = frame(with_dues_as_deadlines(self.problem), mirrored=True)
        with_delay = frame(self.problem, mirrored=True, windows=self.windows)
        ahead = frame(self.problem, mirrored=False, windows=self.windows)
        assert with_delay is not None
        assert ahead is not None
        trailing = trailing_tasks(self.problem, with_delay)
        frames = [f for f in (on_time, with_delay) if f is not None]
        successes = dict.fromkeys(range(len(frames)), 0)
        attempt = 0
        while True:
            which = 0 if successes[0] or attempt < 4 else attempt % len(frames)
            plan = self.backward_plan(frames[which], ahead, trailing, noise=noise_of(attempt))
            successes[which] += plan is not None
            attempt += 1
            yield plan

    def backward_plan(
        self, back: Frame, ahead: Frame, trailing: frozenset[int], *, noise: float, stood: tuple[Stood, ...] = ()
    ) -> Plan | None:
        """One plan: all but the trailing tasks backward, then those forward; near to where tasks `stood`, if at all."""
        wishes = wishes_in(back, self.problem, stood)
        order = [wishes[task].start if task in wishes else latest for task, latest in enumerate(back.latest)]
        rank = [place + (self.chance.gauss(0, noise) if noise else 0.0) for place in order]
        generation = Generation(back, rank, chance=self.chance if noise and not wishes else None, wishes=wishes)
        if not generation.run(only=frozenset(range(len(back.tasks))) - trailing):
            return None
        if not trailing:
            return back.plan(generation.start, generation.picks)
        return self.forward_rest(back, ahead, generation, trailing, stood)

    def forward_rest(
        self, back: Frame, ahead: Frame, generation: Generation, trailing: frozenset[int], stood: tuple[Stood, ...]
    ) -> Plan | None:
        """Place the trailing tasks forward around what stands."""
        rest = Generation(ahead, [float(t) for t in ahead.earliest], wishes=wishes_in(ahead, self.problem, stood))
        for task in range(len(ahead.tasks)):
            if task not in trailing:
                minute = back.to_problem_start(task, generation.start[task])
                rest.preset(task, ahead.to_frame_start(task, minute), generation.picks[task])
        if not rest.run(only=frozenset(range(len(ahead.tasks)))):
            return None
        return ahead.plan(rest.start, rest.picks)

    def forward_plans(self) -> Iterator[Plan | None]:
        """Plans forward, each followed by justified ones as long as they get better."""
        ahead = frame(self.problem, mirrored=False, windows=self.windows)
        back = frame(self.problem, mirrored=True, windows=self.windows)
        assert ahead is not None
        assert back is not None
        attempt = 0
        while True:
            noise = noise_of(attempt)
            rank = [latest + (self.chance.gauss(0, noise) if noise else 0.0) for latest in ahead.latest]
            attempt += 1
            yield from self.justified(ahead, back, rank)

    def justified(self, ahead: Frame, back: Frame, rank: list[float]) -> Iterator[Plan | None]:
        """A forward plan, then right- and left-justified again until that gains nothing."""
        best: int | None = None
        while True:
            forward = Generation(ahead, rank)
            if not forward.run():
                yield None
                return
            length = end_of(ahead, forward.start)
            yield ahead.plan(forward.start, forward.picks)
            if best is not None and length >= best:
                return
            best = length
            ends = [ahead.length - s - m for s, m in zip(forward.start, ahead.minutes, strict=True)]
            backward = Generation(back, [float(e) for e in ends])
            if not backward.run():
                return
            rank = [float(back.to_problem_start(i, s)) for i, s in enumerate(backward.start)]


def wishes_in(packed: Frame, problem: Problem, before: tuple[Stood, ...]) -> dict[int, Wish]:
    """Where tasks stood before and who did them, as wishes by the frame's numbers."""
    if not before:
        return {}
    number = {task: i for i, task in enumerate(packed.tasks)}
    own = {helper: frozenset(shifts) for helper, shifts in problem.shifts_by_helper.items()}
    of = {resource: i for i, resource in enumerate(packed.resources)}
    return {
        number[stood.task]: Wish(
            packed.to_frame_start(number[stood.task], stood.start),
            frozenset(of[one] for helper in stood.helpers for one in own.get(helper, ())),
        )
        for stood in before
    }


def noise_of(attempt: int) -> float:
    """Minutes of disorder in the order of tasks: none in the first try, then more and less again."""
    return 0.0 if attempt == 0 else (2.0, 5.0, 10.0, 20.0, 40.0)[attempt % 5]


def end_of(packed: Frame, start: list[int]) -> int:
    """The last end."""
    return max((s + m for s, m in zip(start, packed.minutes, strict=True)), default=0)


def with_dues_as_deadlines(problem: Problem) -> Problem:
    """The same problem with no lateness allowed."""
    due = {d.task: d.at for d in problem.dues}
    tasks = tuple(
        replace(t, latest=due[t.id] if t.latest is None else min(due[t.id], t.latest)) if t.id in due else t
        for t in problem.tasks
    )
    return replace(problem, tasks=tasks)


def tidied(problem: Problem, plan: Plan, windows: dict[TaskId, StartWindow]) -> Plan:
    """The plan with what no time of day pulls at (drowning the coals) done as soon as it may be, by the same hands.

    No aim asks for it, and without it such a task stands wherever the solver left it. Aims must not suffer.
    """
    back = frame(problem, mirrored=True, windows=windows)
    ahead = frame(problem, mirrored=False, windows=windows)
    if back is None or ahead is None or problem.aims == (Aim.MAKESPAN,):
        return plan
    trailing = trailing_tasks(problem, back)
    generation = Generation(ahead, [float(t) for t in ahead.earliest])
    number = {resource: i for i, resource in enumerate(ahead.resources)}
    for task, name in enumerate(ahead.tasks):
        if task not in trailing:
            placed = plan.placed[name]
            picks = tuple(tuple(number[r] for r in group) for group in placed.picks)
            generation.preset(task, ahead.to_frame_start(task, placed.start), picks)
    if not generation.run():
        return plan
    neat = ahead.plan(generation.start, generation.picks)
    return neat if values(problem, neat) <= values(problem, plan) else plan


def trailing_tasks(problem: Problem, back: Frame) -> frozenset[int]:
    """Numbers of the tasks that no time of day pulls at: nothing anchored comes so late that they must come before.

    `back` is a mirrored frame; its positive arcs lead from the anchored tasks to all that must stand before them or
    (turns, look-ins) within them.
    """
    anchored = {t.id for t in problem.tasks if t.latest is not None} | {due.task for due in problem.dues}
    anchored |= {f.made for f in problem.freshness}
    queue = [i for i, task in enumerate(back.tasks) if task in anchored]
    pulled: set[int] = set()
    while queue:
        task = queue.pop()
        if task not in pulled:
            pulled.add(task)
            queue.extend(head for head, wait in back.leaving[task] if wait > 0)
    return frozenset(range(len(back.tasks))) - pulled
