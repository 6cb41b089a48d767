"""One event planned once, in a process of its own so that its peak memory is its own; `tests.bench.events` runs it."""

import argparse
import json
import resource
import sys
import time
from collections.abc import Sequence
from dataclasses import asdict, dataclass, field
from pathlib import Path

from cookout.core.eventfile import read_event
from cookout.core.planning.check import check, check_event
from cookout.core.planning.event import Event
from cookout.core.planning.expand import expand
from cookout.core.planning.pipeline import solve_either_way
from cookout.core.planning.result import Limits, Progress, Result, Watch
from tests.bench.made_up import event_with_tasks
from tests.bench.outcome import SETTLED

KIBIBYTES_A_MEBIBYTE = 1024
NEAR = 1.01


@dataclass(frozen=True, slots=True)
class Run:
    """What was measured. Seconds count from when the event is handed over, so that they include its expansion
    (`expand_s`, measured apart); None where that never came to pass.

    `near_s` is when the first plan came whose every level is within 1 % of its final value, `peak_mib` the most memory
    of the whole process. `faults` are breaches that the independent check found.
    """

    event: str
    tasks: int
    status: str
    expand_s: float
    total_s: float
    first_s: float | None
    near_s: float | None
    proof_s: float | None
    peak_mib: float
    first_values: list[int]
    levels: list[tuple[str, int, int]] = field(default_factory=list)
    faults: list[str] = field(default_factory=list)


class Log:
    """When each better plan came, in seconds since this began."""

    def __init__(self) -> None:
        self._began = time.perf_counter()
        self.told: list[tuple[float, Progress]] = []

    def seconds(self) -> float:
        """Seconds since this began."""
        return time.perf_counter() - self._began

    def note(self, progress: Progress) -> None:
        """Note a better plan."""
        self.told.append((self.seconds(), progress))

    def near_seconds(self, result: Result) -> float | None:
        """When the first plan came whose every level is at most 1 % above the final one's."""
        final = {level.aim: level.value for level in result.levels}
        near = (at for at, p in self.told if all(value <= final[aim] * NEAR for aim, value in p.values))
        return next(near, None)


def measure(event: Event, limits: Limits) -> Run:
    """Expand and solve an event, and note when each better plan came."""
    began = time.perf_counter()
    expand(event)
    expand_s = time.perf_counter() - began
    log = Log()
    expanded, result = solve_either_way(event, limits, Watch(tell=log.note))
    total_s = log.seconds()
    faults: list[str] = []
    if result.plan is not None:
        faults = [str(b) for b in (*check(expanded.problem, result.plan), *check_event(expanded, result.plan))]
    return Run(
        event=event.id,
        tasks=len(expanded.problem.tasks),
        status=result.status.value,
        expand_s=expand_s,
        total_s=total_s,
        first_s=log.told[0][0] if log.told else None,
        near_s=log.near_seconds(result),
        proof_s=total_s if result.status in SETTLED else None,
        peak_mib=resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / KIBIBYTES_A_MEBIBYTE,
        first_values=[value for _, value in log.told[0][1].values] if log.told else [],
        levels=[(level.aim.value, level.value, level.bound) for level in result.levels],
        faults=faults,
    )


def event_named(name: str, seed: int) -> Event:
    """The event of a file, or a made-up one of about so many tasks where `name` is a number."""
    if name.isdigit():
        return event_with_tasks(int(name), lambda event: len(expand(event).problem.tasks), seed)
    return read_event(Path(name).read_text(encoding="utf-8"), name)


def main(arguments: Sequence[str] | None = None) -> int:
    """Print a run as JSON."""
    parser = argparse.ArgumentParser(prog="python -m tests.bench.one_event")
    parser.add_argument("event", help="an event file, or how many tasks a made-up event should have")
    parser.add_argument("--seconds", type=float, required=True)
    parser.add_argument("--workers", type=int, required=True)
    parser.add_argument("--seed", type=int, required=True)
    asked = parser.parse_args(arguments)
    limits = Limits(seconds=asked.seconds, workers=asked.workers, seed=asked.seed)
    print(json.dumps(asdict(measure(event_named(asked.event, asked.seed), limits))))
    return 0


if __name__ == "__main__":
    sys.exit(main())
