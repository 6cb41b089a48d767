"""Who misses a break from the heat in a plan."""

from cookout.core.planning.problem import Problem
from cookout.core.planning.quick.booking import longest_run
from cookout.core.planning.result import Plan


def missed_breaks(problem: Problem, plan: Plan) -> set[str]:
    """The helpers who stand at the fire for too long without a break."""
    hot: dict[str, list[tuple[int, int]]] = {rule.helper: [] for rule in problem.breaks}
    for task in problem.tasks:
        if task.hot:
            for group in plan.placed[task.id].picks:
                for resource in group:
                    helper = problem.resource_by_id[resource].helper
                    if helper in hot:
                        hot[helper].append((plan.start(task.id), plan.end(task)))
    return {
        rule.helper
        for rule in problem.breaks
        if longest_run(hot[rule.helper], rule.break_minutes) > rule.stretch_minutes
    }
