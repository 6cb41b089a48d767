"""The whole way from an event to a checked and explained plan."""

from dataclasses import dataclass, replace

from cookout.core.errors import CookoutError
from cookout.core.planning.check import Breach, check, check_event
from cookout.core.planning.event import Event
from cookout.core.planning.expand import expand
from cookout.core.planning.expanded import Expanded
from cookout.core.planning.obstacles import find_obstacles
from cookout.core.planning.quick import quick_plan
from cookout.core.planning.record import PlanRecord
from cookout.core.planning.recording import record_of
from cookout.core.planning.result import Limits, Progress, Result, Status, Watch
from cookout.core.planning.solver import solve

SECONDS_FOR_OBSTACLES = 20.0
# Quick plans tried of either way to light the coals before the solver takes over.
PATIENCE = 6


class UnsoundPlanError(CookoutError):
    """The check refused a plan; it is not shown or saved. This is a fault of the program."""

    def __init__(self, breaches: tuple[Breach, ...]) -> None:
        self.breaches = breaches
        said = "; ".join(breach.text for breach in breaches[:5])
        super().__init__(f"the plan breaks its own rules and was thrown away ({said}); please report this event")


@dataclass(frozen=True, slots=True)
class Outcome:
    """A record, and what it was made from."""

    record: PlanRecord
    expanded: Expanded
    result: Result


def plan_event(event: Event, limits: Limits, watch: Watch | None = None) -> Outcome:
    """Plan an event: expand, solve, check, explain; where there is no plan, say what stands in the way."""
    watch = watch or Watch()
    expanded, result = solve_either_way(event, limits, watch)
    if result.plan is None:
        stopped = result.status is Status.NONE_FOUND and watch.stop()
        seconds = 0.0 if stopped else SECONDS_FOR_OBSTACLES
        findings = find_obstacles(event, seconds=seconds, seed=limits.seed, watch=Watch(stop=watch.stop))
        record = record_of(expanded, result, obstacles=findings.obstacles, ways_out=findings.ways_out)
        return Outcome(record, expanded, result)
    refuse_unsound(expanded, result)
    return Outcome(record_of(expanded, result), expanded, result)


def solve_either_way(event: Event, limits: Limits, watch: Watch) -> tuple[Expanded, Result]:
    """Solve with shared firings, and where that gives no plan with a firing for each bake."""
    expanded = first_choice(event, limits)
    result = solve(expanded.problem, limits, checked(watch, expanded))
    if result.plan is not None:
        return expanded, result
    apart = expand(event, share_firings=False)
    if apart.problem == expanded.problem or watch.stop():
        return expanded, result
    left = replace(limits, seconds=max(1.0, limits.seconds - result.seconds))
    second = solve(apart.problem, left, checked(watch, apart))
    if second.plan is None and result.status is Status.NONE_FOUND:
        second = replace(second, status=Status.NONE_FOUND)
    return apart, replace(second, seconds=result.seconds + second.seconds)


def first_choice(event: Event, limits: Limits) -> Expanded:
    """The event with shared firings, unless only with a firing for each bake a plan is found at once."""
    shared = expand(event, share_firings=True)
    if quick_plan(shared.problem, seed=limits.seed, patience=PATIENCE) is None:
        apart = expand(event, share_firings=False)
        if quick_plan(apart.problem, seed=limits.seed, patience=PATIENCE) is not None:
            return apart
    return shared


def checked(watch: Watch, expanded: Expanded) -> Watch:
    """A watch that is told only of plans that pass the check."""

    def tell(progress: Progress) -> None:
        if not check(expanded.problem, progress.plan):
            watch.tell(progress)

    return Watch(tell, watch.stop)


def refuse_unsound(expanded: Expanded, result: Result) -> None:
    """Raise where the independent reading of the rules finds a breach."""
    assert result.plan is not None
    breaches = (*check(expanded.problem, result.plan), *check_event(expanded, result.plan))
    if breaches:
        raise UnsoundPlanError(breaches)
