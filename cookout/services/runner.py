"""Runs the planner in a thread of its own, while the caller's thread keeps the books.

The planner never touches the database, so one connection serves: the caller's.
"""

from collections.abc import Callable
from concurrent.futures import ThreadPoolExecutor, wait
from threading import Event as Flag

from cookout.core.planning.event import Event
from cookout.core.planning.pipeline import Outcome, plan_event
from cookout.core.planning.record import PlanRecord
from cookout.core.planning.result import Limits, Progress, Watch

BEAT_SECONDS = 0.5

Beat = Callable[[Progress | None, int], bool]
"""Called with the newest progress and how many better plans were found; true ends the run with the best so far."""


class _Latest:
    """Keeps only the newest progress: whoever reads slowly misses nothing that matters."""

    def __init__(self) -> None:
        self.progress: Progress | None = None
        self.found = 0

    def put(self, progress: Progress) -> None:
        self.found += 1
        self.progress = progress


def plan_with_beats(
    event: Event, limits: Limits, beat: Beat, *, near: PlanRecord | None = None, beat_seconds: float = BEAT_SECONDS
) -> Outcome:
    """Plan the event; call `beat` in this thread every `beat_seconds` until the planner ends, and once more.

    `near` is the plan from which the new one should differ as little as it can.
    """
    latest, enough = _Latest(), Flag()
    watch = Watch(tell=latest.put, stop=enough.is_set)
    with ThreadPoolExecutor(max_workers=1, thread_name_prefix="planner") as pool:
        future = pool.submit(plan_event, event, limits, watch, near)
        try:
            while not wait([future], timeout=beat_seconds).done:
                if beat(latest.progress, latest.found):
                    enough.set()
        finally:
            enough.set()
        beat(latest.progress, latest.found)
        return future.result()
