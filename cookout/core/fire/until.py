"""Marches bodies until the last part of their axis is warm, or cool, enough."""

from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import NDArray

from cookout.core.fire.bodies import Around, Array, Bodies
from cookout.core.fire.march import Equations, plain_step_s, reach, rough_s, step


@dataclass(frozen=True, slots=True)
class StepParams:
    """How finely bodies are marched; our own choice.

    Halving the steps moves times by less than 1 %, doubling the nodes by 1 % as a rule and at most 5: inside the band.

    heights, radii   nodes over height and radius; 7 to 41 and 4 to 21, odd heights put one in the middle
    stages           of a Runge-Kutta-Legendre step, at most; 3 to 9
    share            of the stable step that is used; 0.2 to 0.9
    longest_s        longest step [s]; 30 to 300
    longest_share    longest step as a share of the rough time that heat takes; 0.02 to 0.15
    together         bodies marched side by side, so that their arrays stay in cache; 50 to 1000
    stalled          a body whose whole mean, at its pace of the moment, would by the end of the time allowed move less
                     than this share of what its core lacks is given up, its surroundings being at rest; 0.02 to 0.2
    thinned          where fewer than this share still run, the others are put aside; 0.3 to 0.9
    """

    heights: int = 9
    radii: int = 5
    stages: int = 7
    share: float = 0.9
    longest_s: float = 240.0
    longest_share: float = 0.075
    together: int = 250
    stalled: float = 0.1
    thinned: float = 0.7

    def enough(self, plain: float) -> int:
        """The fewest stages that span so many plain steps, or the most allowed."""
        return next((few for few in range(3, self.stages) if reach(few) >= plain), self.stages)


STEPS = StepParams()
# Thick bodies and food on hot iron have steeper edges in proportion, and need no more steps for finer ones.
THICK_STEPS = StepParams(heights=13, radii=7, stages=9, longest_share=0.045)


@dataclass(frozen=True, slots=True)
class Course:
    """One step of some of the bodies: which, at what time [s], coldest (or warmest) of the axis, top and bottom [C]."""

    which: NDArray[np.intp]
    seconds: Array
    centre_c: Array
    top_c: Array
    bottom_c: Array


@dataclass(frozen=True, slots=True)
class Ended:
    """`seconds` to the end by body, infinite where it was not met in time, and the courses.

    `loss_kg_m3` is the water gone by then, over the volume.
    """

    seconds: Array
    loss_kg_m3: Array
    courses: tuple[Course, ...]


class _March:
    """Bodies on their way, and what has been noted of them."""

    def __init__(self, bodies: Bodies, around: Around, steps: StepParams, state: Array | None) -> None:
        self.nodes = (steps.heights, steps.radii)
        self.steps = steps
        self.which = np.arange(bodies.count)
        self.bodies, self.around = bodies, around
        hottest = np.maximum(np.max([around.top.max(1), around.bottom.max(1), around.side.max(1)], 0), bodies.start_c)
        plain = plain_step_s(bodies, self.nodes, hottest)
        longest = np.minimum(steps.longest_s, steps.longest_share * rough_s(bodies, hottest))
        self.stages = steps.enough(float(np.max(longest / plain)))
        self.pace = steps.share * np.minimum(reach(self.stages) * plain, longest)
        self.seconds = np.zeros(bodies.count)
        self.equations = Equations(bodies, self.nodes, self.pace)
        self.state = self.equations.start() if state is None else state
        self.mean = self.equations.stored(self.state)
        self.held: Array | None = None

    def take_steps_of(self, seconds: Array) -> None:
        """From here on take steps of so many seconds."""
        self.pace = seconds
        self.equations = Equations(self.bodies, self.nodes, seconds)
        self.held = None

    def go(self) -> None:
        """One step of every body, in the surroundings of the step's middle."""
        if self.held is None or self.around.changes:
            self.held = self.equations.held(self.around.at(self.seconds + self.pace / 2))
        self.state = step(self.equations, self.state, self.held, self.stages)
        self.seconds = self.seconds + self.pace

    def left(self, limit_s: float) -> Array:
        """How far [K] each body's mean could move by `limit_s` at its pace of the moment; `inf` before rest."""
        mean = self.equations.stored(self.state)
        moved, self.mean = np.abs(mean - self.mean), mean
        return np.where(self.seconds < self.around.rests_s, np.inf, moved / self.pace * (limit_s - self.seconds))

    def keep(self, running: NDArray[np.bool_]) -> None:
        """Go on with these bodies only."""
        self.which, self.bodies, self.around = self.which[running], self.bodies.take(running), self.around.take(running)
        self.pace, self.seconds, self.mean = self.pace[running], self.seconds[running], self.mean[running]
        self.equations = Equations(self.bodies, self.nodes, self.pace)
        self.state = np.ascontiguousarray(self.state[:, running])
        self.held = None

    def axis_c(self) -> Array:
        """Temperatures along the axis, top first, (height, body)."""
        return self.equations.axis_c(self.state)


@dataclass(frozen=True, slots=True)
class Goal:
    """When to end: `target_c` of each body met by all of the `watched` part of its axis, upward where `warming`.

    `watched` is a slice of the heights, top first; none is the core, the middle half, where a probe is put. A body that
    has not come there by `limit_s` seconds never does.
    """

    target_c: Array
    limit_s: float
    warming: bool
    watched: slice | None = None

    @property
    def sign(self) -> float:
        """1 for warming, -1 for cooling, so that both are read as a rise."""
        return 1.0 if self.warming else -1.0

    def take(self, which: NDArray[np.intp]) -> "Goal":
        """The goal of some of the bodies."""
        return replace(self, target_c=self.target_c[which])


def until(bodies: Bodies, around: Around, goal: Goal, steps: StepParams = STEPS, state: Array | None = None) -> Ended:
    """March all bodies to their goal, from their even start or from a `state`.

    Between steps the time is interpolated.
    """
    parts = []
    for which in np.array_split(np.arange(bodies.count), max(1, round(bodies.count / steps.together))):
        own = None if state is None else np.ascontiguousarray(state[:, which])
        run = _March(bodies.take(which), around.take(which), steps, own)
        parts.append(_until(run, goal.take(which), steps))
    return parts[0] if len(parts) == 1 else _joined(parts)


def after(bodies: Bodies, around: Around, seconds: Array, steps: StepParams = STEPS) -> Array:
    """The state of bodies, even at the start, after `seconds` each, which may be 0."""
    run = _March(bodies, around, steps, None)
    count = int(np.ceil(np.max(seconds / run.pace)))
    if count:
        run.take_steps_of(seconds / count)
    for _ in range(count):
        run.go()
    return run.state


def _joined(parts: list[Ended]) -> Ended:
    courses, before = [], 0
    for part in parts:
        courses += [
            Course(each.which + before, each.seconds, each.centre_c, each.top_c, each.bottom_c) for each in part.courses
        ]
        before += part.seconds.size
    return Ended(
        np.concatenate([part.seconds for part in parts]),
        np.concatenate([part.loss_kg_m3 for part in parts]),
        tuple(courses),
    )


def _until(run: _March, goal: Goal, steps: StepParams) -> Ended:
    watched = goal.watched or run.equations.core
    ended, loss = np.full(run.which.size, np.inf), np.zeros(run.which.size)
    target = goal.sign * goal.target_c
    lacks = target - (goal.sign * run.axis_c()[watched]).min(axis=0)
    ended[lacks <= 0] = 0.0
    run.keep(np.isinf(ended))
    older = last = lacks[run.which]
    courses: list[Course] = []
    while run.which.size:
        run.go()
        axis = run.axis_c()
        core = (goal.sign * axis[watched]).min(axis=0)
        now = target[run.which] - core
        courses.append(Course(run.which, run.seconds, core * goal.sign, axis[0], axis[-1]))
        met = (now <= 0) & np.isinf(ended[run.which])
        if met.any():
            back = run.pace[met] * (1 - _crossing(older[met], last[met], now[met]))
            ended[run.which[met]] = run.seconds[met] - back
            loss[run.which[met]] = run.equations.loss_kg_m3(run.state)[met]
        running = np.isinf(ended[run.which]) & (run.seconds < goal.limit_s)
        running &= run.left(goal.limit_s) > steps.stalled * now
        if running.sum() < steps.thinned * running.size:
            run.keep(running)
            last, now = last[running], now[running]
        older, last = last, now
    return Ended(ended, loss, tuple(courses))


def _crossing(older: Array, last: Array, now: Array) -> Array:
    """Where in the last of two equal steps a parabola through three lacks comes to 0, as a share of the step."""
    bend, slope = (now + older) / 2 - last, (now - older) / 2
    turn = slope * slope - 4 * bend * last
    share = -2 * last / (slope - np.sqrt(np.maximum(turn, 0.0)))
    straight = last / (last - now)
    return np.where((turn >= 0) & (share >= 0) & (share <= 1), share, straight)
