"""What an engine makes of a problem."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass

from cookout.core.planning.problem import Problem, TaskId
from cookout.core.planning.result import Limits, Status

SETTLED = frozenset({Status.PROVED_BEST, Status.IMPOSSIBLE})


@dataclass(frozen=True, slots=True)
class Outcome:
    """How an attempt ended; `makespan` and `starts` are None and empty without a plan, `bound` None without one.

    `seconds` are of the wall clock and include the building of the model.
    """

    status: Status
    seconds: float
    makespan: int | None = None
    bound: int | None = None
    starts: Mapping[TaskId, int] | None = None


Engine = Callable[[Problem, Limits], Outcome]
