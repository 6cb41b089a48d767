"""The whole way from an event to a checked and explained plan."""

from dataclasses import dataclass, field, replace
from time import perf_counter

from cookout.core.errors import CookoutError
from cookout.core.planning.check import Breach, check, check_event, measure
from cookout.core.planning.earlier import Course, course_of
from cookout.core.planning.event import Event
from cookout.core.planning.expand import expand
from cookout.core.planning.expanded import Expanded
from cookout.core.planning.first_steps import first_steps
from cookout.core.planning.obstacles import find_obstacles
from cookout.core.planning.otherunits import other_units, texts_in
from cookout.core.planning.problem import Aim, TaskId
from cookout.core.planning.quick import near_plan, quick_plan
from cookout.core.planning.record import PlanRecord, Warning, WayOut
from cookout.core.planning.recording import record_of
from cookout.core.planning.refusals import refusals, sentences
from cookout.core.planning.result import Limits, Progress, Result, Status, Watch
from cookout.core.planning.sketch import outline_of
from cookout.core.planning.solver import solve
from cookout.core.planning.trying import Trials
from cookout.core.safety.finding import Finding

# Beyond the limit of a plan: an event without one deserves to be told why.
SECONDS_FOR_OBSTACLES = 20.0
STOPPED = "The run was stopped before a plan was found, so nothing is known to stand in the way."
# Quick plans tried of either way to light the coals before the solver takes over.
PATIENCE = 6
# Times a plan may be made again because it moved bakes into other weather, and the share of the time for the first.
ROUNDS = 3
FIRST_SHARE = 0.85


class UnsoundPlanError(CookoutError):
    """The check refused a plan; it is not shown or saved. This is a fault of the program."""

    def __init__(self, breaches: tuple[Breach, ...]) -> None:
        self.breaches = breaches
        said = "; ".join(breach.text for breach in breaches[:5])
        super().__init__(f"the plan breaks its own rules and was thrown away ({said}); please report this event")


@dataclass(frozen=True, slots=True)
class Outcome:
    """A record, what it was made from, and its `texts` in the other units (see `otherunits`)."""

    record: PlanRecord
    expanded: Expanded
    result: Result
    texts: dict[str, str] = field(default_factory=dict)


def plan_event(event: Event, limits: Limits, watch: Watch | None = None, near: PlanRecord | None = None) -> Outcome:
    """Plan an event: expand, solve, check, explain; where there is no plan, say what stands in the way.

    Of plans that are as good the one is taken that changes least of `near`, a plan of this event made before.
    """
    watch = watch or Watch()
    missing = first_steps(event)
    if missing:
        return outcome_of(expand(event), Result(Status.IMPOSSIBLE, None, (), 0.0), obstacles=missing)
    refused = refusals(event)
    if refused:
        return refuse(event, refused, limits, watch)
    expanded, result = solve_either_way(event, limits, watch, near)
    if result.plan is None:
        stopped = result.status is Status.NONE_FOUND and watch.stop()
        if stopped:
            return outcome_of(expanded, result, obstacles=(STOPPED,))
        looking = replace(limits, seconds=SECONDS_FOR_OBSTACLES)
        findings = find_obstacles(event, looking, Watch(stop=watch.stop))
        return outcome_of(expanded, result, obstacles=findings.obstacles, ways_out=findings.ways_out)
    refuse_unsound(expanded, result)
    return outcome_of(expanded, result)


def outcome_of(
    expanded: Expanded, result: Result, *, obstacles: tuple[str, ...] = (), ways_out: tuple[WayOut, ...] = ()
) -> Outcome:
    """What is told of a result, in the event's units and beside them in the other ones."""
    record = record_of(expanded, result, obstacles=obstacles, ways_out=ways_out)
    return Outcome(record, expanded, result, texts_in(expanded, result, record, other_units(record.units)))


def refuse(event: Event, refused: tuple[Finding, ...], limits: Limits, watch: Watch) -> Outcome:
    """No plan at all for food that would stand out longer than its code allows, with what was tried and would do."""
    expanded = expand(event)
    result = Result(Status.IMPOSSIBLE, None, (), 0.0)
    trials = Trials(event, perf_counter() + SECONDS_FOR_OBSTACLES, limits, watch)
    ways_out = tuple(trials.safer_waits({finding.about for finding in refused}))
    return outcome_of(expanded, result, obstacles=sentences(refused), ways_out=ways_out)


def solve_either_way(
    event: Event, limits: Limits, watch: Watch, near: PlanRecord | None = None
) -> tuple[Expanded, Result]:
    """Solve with shared firings, and where that gives no plan with a firing for each bake.

    Where the weather changes through the day, a plan that moves a bake into other weather is made again from those
    times, within the same seconds, and kept where it is no worse; after `ROUNDS` of it the plan stands and says which
    bakes are reckoned amiss.
    """
    course = course_of(event, near)
    expanded, shared = first_choice(course, limits.seed)
    if not event.hours:
        return _solve_or_part(course, expanded, limits, watch)[:2]
    began, left = perf_counter(), replace(limits, seconds=limits.seconds * FIRST_SHARE)
    expanded, result, parted = _solve_or_part(course, expanded, left, watch)
    for _ in range(ROUNDS - 1):
        moved = _moved(expanded, result)
        left = replace(limits, seconds=max(1.0, limits.seconds - (perf_counter() - began)))
        if not moved or watch.stop():
            break
        again = course.expand(share=shared and not parted, expected=moved)
        if again.problem == expanded.problem:
            # Only coals differ, so the plan stands as it is, reckoned for its own hours.
            expanded = again
            break
        second = solve(again.problem, left, checked(watch, again))
        if second.plan is None or is_worse(second, result):
            break
        expanded, result = again, replace(second, seconds=perf_counter() - began)
    return with_late_weather(expanded, result), result


def is_worse(second: Result, first: Result) -> bool:
    """Whether a plan made again in what time was left is worse than the first, which then stands with a warning.

    That it changes more of an earlier plan does not make it worse: coals for the right hour are worth that.
    """
    before, after = (tuple(lvl.value for lvl in res.levels if lvl.aim is not Aim.CHANGES) for res in (first, second))
    return after > before


def _solve_or_part(course: Course, expanded: Expanded, limits: Limits, watch: Watch) -> tuple[Expanded, Result, bool]:
    """Solve; where that gives no plan, with a firing for each bake. The third value is whether it came to that."""
    result = solve(expanded.problem, limits, checked(watch, expanded))
    if result.plan is not None:
        return expanded, result, False
    apart, _ = settled(course, limits.seed, share=False)
    if apart.problem == expanded.problem or watch.stop():
        return expanded, result, False
    left = replace(limits, seconds=max(1.0, limits.seconds - result.seconds))
    second = solve(apart.problem, left, checked(watch, apart))
    if second.plan is None and result.status is Status.NONE_FOUND:
        second = replace(second, status=Status.NONE_FOUND)
    return apart, replace(second, seconds=result.seconds + second.seconds), True


def _moved(expanded: Expanded, result: Result) -> dict[TaskId, int]:
    """The starts of a plan that moved bakes or coolings into other weather; empty where it did not."""
    if result.plan is None:
        return {}
    starts = {task: placed.start for task, placed in result.plan.placed.items()}
    return starts if expanded.outdated(starts) else {}


def with_late_weather(expanded: Expanded, result: Result) -> Expanded:
    """The same with a warning for what is still reckoned for weather other than that of its hour."""
    moved = _moved(expanded, result)
    if not moved:
        return expanded
    names = sorted({expanded.info[task].name for task in expanded.outdated(moved)})
    shown = ", ".join(names[:3]) + (f" and {len(names) - 3} more" if len(names) > 3 else "")
    text = f"Reckoned for the weather of another hour than the one it falls into: {shown}."
    remedy = "Look in sooner, and have a few coals more at hand."
    return replace(expanded, warnings=(*expanded.warnings, Warning("weather", text, remedy)))


def first_choice(course: Course, seed: int) -> tuple[Expanded, bool]:
    """The event with shared firings (true), unless only with a firing for each bake a plan is found at once."""
    shared, found = settled(course, seed, share=True)
    if not found:
        apart, found = settled(course, seed, share=False)
        if found:
            return apart, False
    return shared, True


def settled(course: Course, seed: int, *, share: bool) -> tuple[Expanded, bool]:
    """The event's problem, its bakes reckoned for the hours into which quick plans put them; and if there was one.

    Near to an earlier plan these are quick plans near to it.
    """
    expanded, found = course.expand(share=share), False
    again = expanded
    for _ in range(ROUNDS):
        plan = near_plan(again.problem, seed=seed, stop=lambda: True)
        plan = plan or quick_plan(again.problem, seed=seed, patience=PATIENCE)
        if plan is None:
            break
        expanded, found = again, True
        starts = {task: placed.start for task, placed in plan.placed.items()}
        if not expanded.outdated(starts):
            break
        again = course.expand(share=share, expected=starts)
    return expanded, found


def checked(watch: Watch, expanded: Expanded) -> Watch:
    """A watch that is told only of plans that pass the check."""

    def tell(progress: Progress) -> None:
        if not check(expanded.problem, progress.plan):
            watch.tell(replace(progress, outline=outline_of(expanded, progress.plan)))

    return Watch(tell, watch.stop)


def refuse_unsound(expanded: Expanded, result: Result) -> None:
    """Raise where the independent reading of the rules finds a breach."""
    assert result.plan is not None
    breaches = (*check(expanded.problem, result.plan), *check_event(expanded, result.plan))
    worth = measure(expanded.problem, result.plan)
    wrong = tuple(
        Breach("levels", (), f"{level.aim.value} is {worth[level.aim]} and not {level.value}", None)
        for level in result.levels
        if worth[level.aim] != level.value
    )
    if breaches or wrong:
        raise UnsoundPlanError((*breaches, *wrong))
