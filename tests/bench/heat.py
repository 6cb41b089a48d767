"""Bake times against a general integrator on the same equations, in the same run, on one core.

    python -m tests.bench.heat [--bakes 1000] [--compare 6] [--repeat 5] [--seed 1] [--method LSODA]

Three lines: one bake with its band (median of the repeats, over several foods); many different bakes at once; and, for
some of them, `scipy.integrate.solve_ivp` on the same equations to the same goal, one body at a time, as it must be
called. The last gives seconds a bake, both ratios and by how much the times differ. No time is ever asserted.
"""

import argparse
import os
import sys
from collections.abc import Sequence
from dataclasses import dataclass
from random import Random
from statistics import median
from time import perf_counter
from typing import Literal, get_args

for name in ("OMP_NUM_THREADS", "OPENBLAS_NUM_THREADS", "MKL_NUM_THREADS"):
    os.environ.setdefault(name, "1")

import numpy as np  # noqa: E402
from scipy.integrate import solve_ivp  # noqa: E402

from cookout.core.fire.baking import (  # noqa: E402
    BAKE,
    BakeCase,
    around_bakes,
    bake_times,
    bake_times_many,
    baked_bodies,
    run_bakes,
    steps_for,
)
from cookout.core.fire.bodies import Array  # noqa: E402
from cookout.core.fire.march import Equations  # noqa: E402

Method = Literal["LSODA", "BDF", "Radau", "RK45"]
PANNED = ("cake", "carrot cake", "quick bread", "enriched dough", "lean bread", "cornbread")
ON_IRON = ("cobbler", "casserole", "potatoes", "beans", "stew")
MARCHES = 5  # usual, oven up and down, food up and down


def main(arguments: Sequence[str] | None = None) -> int:
    """The command; gives its exit status."""
    asked = _parser().parse_args(arguments)
    chance = Random(asked.seed)
    cases = [made_up(chance) for _ in range(asked.bakes)]
    bake_times(cases[0])
    single = median(_one(case) for case in cases[:20] for _ in range(asked.repeat))
    print(f"one bake with its band     {single * 1e3:9.1f} ms")
    began = perf_counter()
    bake_times_many(cases)
    many = perf_counter() - began
    print(f"{len(cases):5} bakes at once        {many:9.2f} s   ({many / len(cases) * 1e3:.2f} ms each)")
    _compare(cases[: asked.compare], asked.method, many / len(cases))
    return 0


def made_up(chance: Random) -> BakeCase:
    """A bake by chance: half in pans, half on the iron."""
    panned = chance.random() < 0.5
    middle = chance.uniform(150, 240)
    return BakeCase(
        food=chance.choice(PANNED if panned else ON_IRON),
        pan_diameter_m=chance.uniform(0.15, 0.35),
        depth_m=chance.uniform(0.02, 0.05) if panned else chance.uniform(0.04, 0.1),
        above_c=(middle - 15, middle, middle + 20),
        below_c=(middle - 10, middle + 5, middle + 25),
        start_c=chance.uniform(5, 25),
        elevation_m=chance.uniform(0, 2500),
        in_pan=panned,
    )


@dataclass(frozen=True, slots=True)
class Elsewhere:
    """What a general integrator found: seconds until the core is done, and seconds that it took."""

    done_s: float
    took_s: float


def elsewhere(case: BakeCase, method: Method) -> Elsewhere:
    """The usual bake by `solve_ivp` on the very same equations."""
    steps = steps_for(case)
    nodes = (steps.heights, steps.radii)
    equations = Equations(baked_bodies([case]), nodes, np.ones(1))
    held = equations.held(around_bakes([case], 1).at(np.zeros(1)))
    out = np.empty_like(equations.start())

    def pace(_: float, state: Array) -> Array:
        equations.gain(state[:, None], held, out)
        return out[:, 0].copy()

    def lacks(_: float, state: Array) -> float:
        return float(equations.axis_c(state[:, None])[equations.core].min() - case.target_c())

    lacks.terminal = True  # type: ignore[attr-defined]
    limit, start = BAKE.longest_minutes * 60, equations.start()[:, 0]
    began = perf_counter()
    solved = solve_ivp(pace, (0.0, limit), start, method=method, events=lacks, rtol=1e-4, atol=1e-3)
    took = perf_counter() - began
    ends = solved.t_events[0] if solved.t_events else np.empty(0)
    return Elsewhere(float(ends[0]) if ends.size else np.inf, took)


def _compare(cases: Sequence[BakeCase], method: Method, each_s: float) -> None:
    theirs = [elsewhere(case, method) for case in cases]
    ours = [float(run_bakes([case], BAKE, steps_for(case)).seconds[0]) for case in cases]
    alone = median(_one(case) for case in cases)
    band = median(one.took_s for one in theirs) * MARCHES
    apart = max(
        abs(mine / one.done_s - 1)
        for mine, one in zip(ours, theirs, strict=True)
        if np.isfinite([mine, one.done_s]).all()
    )
    print(
        f"solve_ivp ({method})         {band * 1e3:9.1f} ms  for a band of {MARCHES} marches; "
        f"one by one x{band / alone:.0f}, many at once x{band / each_s:.0f}; times differ by {apart:.2%} at most"
    )


def _one(case: BakeCase) -> float:
    began = perf_counter()
    bake_times(case)
    return perf_counter() - began


def _parser() -> argparse.ArgumentParser:
    parser = argparse.ArgumentParser(prog="python -m tests.bench.heat", description=__doc__.split("\n")[0])
    parser.add_argument("--bakes", type=int, default=1000, help="different bakes at once")
    parser.add_argument("--compare", type=int, default=6, help="bakes also solved by the general integrator")
    parser.add_argument("--repeat", type=int, default=5, help="times each single bake is timed")
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--method", default="LSODA", choices=get_args(Method))
    return parser


if __name__ == "__main__":
    sys.exit(main())
