"""What a plan is worth: the value of each aim, in minutes or changes, less being better."""

from collections import defaultdict

from cookout.core.planning.problem import HANDED_OVER, Aim, Freshness, Problem, ResourceId, TaskId
from cookout.core.planning.result import Plan

Values = tuple[int, ...]

# Whoever works half of the time has a good day: food over coals is waited for, and waiting is not the same as idling.
PRESENCE_PER_WORK = 2


def values(problem: Problem, plan: Plan) -> Values:
    """The value of each of the problem's aims, in their order; compare two plans by comparing these."""
    return tuple(MEASURES[aim](problem, plan) for aim in problem.aims)


def makespan(problem: Problem, plan: Plan) -> int:
    """Minutes from the horizon's start to the last end."""
    return max((plan.end(task) for task in problem.tasks), default=problem.opens) - problem.opens


def lateness(problem: Problem, plan: Plan) -> int:
    """Minutes by which dues are missed, summed."""
    return sum(max(0, plan.end(problem.task_by_id[due.task]) - due.at) for due in problem.dues)


def staleness(problem: Problem, plan: Plan) -> int:
    """Minutes that finished food waits beyond what it wants, summed."""
    return sum(stands(problem, plan, wish) for wish in problem.freshness)


def stands(problem: Problem, plan: Plan, wish: Freshness) -> int:
    """Minutes that one finished food waits beyond what it wants."""
    used = plan.start(wish.used) if wish.used is not None else (wish.by or 0)
    return max(0, used - plan.end(problem.task_by_id[wish.made]) - wish.free)


def crew_day(problem: Problem, plan: Plan) -> int:
    """Minutes from the earliest call to the end of the horizon, and idle presence beyond as much again as the work."""
    spans = spans_by_shift(problem, plan)
    if not spans:
        return 0
    called = min(start for work in spans.values() for start, _ in work)
    return problem.closes - called + sum(idle_presence(work) for work in spans.values())


def idle_presence(work: list[tuple[int, int]]) -> int:
    """Minutes by which presence, from the first start to the last end, exceeds twice the work done in it."""
    presence = max(end for _, end in work) - min(start for start, _ in work)
    return max(0, presence - PRESENCE_PER_WORK * sum(end - start for start, end in work))


def uneven_shares(problem: Problem, plan: Plan) -> int:
    """Minutes of work above an even share, summed over the helpers who bear them."""
    spans = spans_by_shift(problem, plan)
    work: dict[str, int] = dict.fromkeys(problem.shifts_by_helper, 0)
    for shift, pieces in spans.items():
        helper = problem.resource_by_id[shift].helper
        if helper is not None:
            work[helper] += sum(end - start for start, end in pieces)
    share = even_share(sum(work.values()), len(work))
    return sum(max(0, minutes - share) for minutes in work.values())


def even_share(total: int, helpers: int) -> int:
    """The whole minutes each would work if work could be dealt out evenly, rounded up."""
    return -(-total // helpers) if helpers else 0


def changes(problem: Problem, plan: Plan) -> int:
    """What differs from where tasks stood before: 1 for another start, `HANDED_OVER` for other hands."""
    return sum(
        (plan.start(stood.task) != stood.start) + HANDED_OVER * (helpers_of(problem, plan, stood.task) != stood.helpers)
        for stood in problem.before
    )


def helpers_of(problem: Problem, plan: Plan, task: TaskId) -> frozenset[str]:
    """Who does a task."""
    owners = (problem.resource_by_id[one].helper for group in plan.placed[task].picks for one in group)
    return frozenset(owner for owner in owners if owner is not None)


def spans_by_shift(problem: Problem, plan: Plan) -> dict[ResourceId, list[tuple[int, int]]]:
    """For each shift with work, the start and end of each of its tasks."""
    spans: dict[ResourceId, list[tuple[int, int]]] = defaultdict(list)
    for task in problem.tasks:
        for group in plan.placed[task.id].picks:
            for resource in group:
                if problem.resource_by_id[resource].helper is not None:
                    spans[resource].append((plan.start(task.id), plan.end(task)))
    return spans


MEASURES = {
    Aim.MAKESPAN: makespan,
    Aim.LATENESS: lateness,
    Aim.FRESHNESS: staleness,
    Aim.CREW_DAY: crew_day,
    Aim.FAIR_SHARES: uneven_shares,
    Aim.CHANGES: changes,
}
