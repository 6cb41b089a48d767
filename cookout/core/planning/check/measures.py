"""What a plan is judged by, worked out from the plan alone."""

from cookout.core.errors import ProblemError
from cookout.core.planning.problem import Aim, Freshness, Problem, ResourceId, Stood, Task
from cookout.core.planning.result import Plan

PRESENCE_FOR_WORK = 2
"""Minutes of presence that a minute of work excuses: as long a wait for food over coals as the work is not idling."""

MOVED, IN_OTHER_HANDS = 1, 2
"""What a task counts that starts at another minute than before, and one that others do."""


def measure(problem: Problem, plan: Plan) -> dict[Aim, int]:
    """The value of every aim in minutes, for a plan that places every task; `KeyError` names one that is not placed."""
    return {
        Aim.MAKESPAN: _makespan(problem, plan),
        Aim.LATENESS: _lateness(problem, plan),
        Aim.FRESHNESS: sum(_staleness(problem, plan, rule) for rule in problem.freshness),
        Aim.CREW_DAY: _crew_day(problem, plan),
        Aim.FAIR_SHARES: _unfairness(problem, plan),
        Aim.CHANGES: sum(_change(problem, plan, stood) for stood in problem.before),
    }


def _makespan(problem: Problem, plan: Plan) -> int:
    """Minutes from the opening to the last end."""
    return max((_end(plan, task) for task in problem.tasks), default=problem.opens) - problem.opens


def _lateness(problem: Problem, plan: Plan) -> int:
    """Minutes after their due minute, summed over what is due."""
    return sum(max(0, _end(plan, problem.task_by_id[due.task]) - due.at) for due in problem.dues)


def _staleness(problem: Problem, plan: Plan, rule: Freshness) -> int:
    """Minutes that something finished waits beyond what is free."""
    used = plan.placed[rule.used].start if rule.used is not None else rule.by
    if used is None:
        raise ProblemError(f"freshness of {rule.made} says neither what uses it nor by when; give it one of them")
    return max(0, used - _end(plan, problem.task_by_id[rule.made]) - rule.free)


def _crew_day(problem: Problem, plan: Plan) -> int:
    """Minutes from the first start of anyone's work to the closing, and each shift's idle minutes."""
    shifts = {shift for ids in problem.shifts_by_helper.values() for shift in ids}
    manned = [task for task in problem.tasks if any(shifts.intersection(need.options) for need in task.needs)]
    called = min((plan.placed[task.id].start for task in manned), default=problem.closes)
    return problem.closes - called + sum(_idle(plan, work) for work in _work_by_shift(problem, plan).values())


def _idle(plan: Plan, work: list[Task]) -> int:
    """Minutes from first start to last end beyond what the work excuses; `work` is not empty."""
    first, last = min(plan.placed[task.id].start for task in work), max(_end(plan, task) for task in work)
    return max(0, last - first - PRESENCE_FOR_WORK * sum(task.minutes for task in work))


def _unfairness(problem: Problem, plan: Plan) -> int:
    """Minutes that helpers work beyond an equal share, rounded up to whole minutes."""
    if not problem.shifts_by_helper:
        return 0
    by_shift = _work_by_shift(problem, plan)
    totals = [
        sum(task.minutes for shift in shifts for task in by_shift.get(shift, ()))
        for shifts in problem.shifts_by_helper.values()
    ]
    share = -(-sum(totals) // len(totals))
    return sum(max(0, total - share) for total in totals)


def _change(problem: Problem, plan: Plan, stood: Stood) -> int:
    """How much a task differs from where it stood before."""
    placed = plan.placed[stood.task]
    doing = {problem.resource_by_id[picked].helper for picks in placed.picks for picked in picks} - {None}
    return MOVED * (placed.start != stood.start) + IN_OTHER_HANDS * (doing != stood.helpers)


def _work_by_shift(problem: Problem, plan: Plan) -> dict[ResourceId, list[Task]]:
    """The tasks of every shift that has any."""
    work: dict[ResourceId, list[Task]] = {}
    for task in problem.tasks:
        for resource in {picked for picks in plan.placed[task.id].picks for picked in picks}:
            if problem.resource_by_id[resource].helper is not None:
                work.setdefault(resource, []).append(task)
    return work


def _end(plan: Plan, task: Task) -> int:
    return plan.placed[task.id].start + task.minutes
