"""The solver and the independent check over random small problems: they must agree on what is a plan and what it is
worth, and where all can be tried (`tests.outside.brute`) on what is best and what is impossible."""

from hypothesis import HealthCheck, given, settings

from cookout.core.planning.check import check, measure
from cookout.core.planning.problem import Problem
from cookout.core.planning.quick import quick_plan
from cookout.core.planning.result import Limits, Plan, Status
from cookout.core.planning.solver import solve
from cookout.core.planning.values import values
from tests.outside.brute import best
from tests.strategies import problems_with_plans, small_problems

LIMITS = Limits(seconds=5.0, workers=1, seed=1)
THOROUGH = settings(max_examples=120, deadline=None, suppress_health_check=[HealthCheck.too_slow])


@THOROUGH
@given(problems_with_plans())
def test_where_a_plan_is_known_the_solver_finds_one_no_worse_that_passes_the_check(both: tuple[Problem, Plan]) -> None:
    problem, known = both
    result = solve(problem, LIMITS)
    assert result.plan is not None, result.status
    assert check(problem, result.plan) == ()
    found = tuple(level.value for level in result.levels)
    assert found == tuple(measure(problem, result.plan)[aim] for aim in problem.aims)
    assert all(level.bound <= level.value for level in result.levels)
    if result.status is Status.PROVED_BEST:
        assert found <= values(problem, known)


@THOROUGH
@given(small_problems())
def test_a_plan_of_the_solver_passes_the_check_and_the_quick_plan_too(problem: Problem) -> None:
    result = solve(problem, LIMITS)
    quick = quick_plan(problem, tries=3)
    for plan in (result.plan, quick):
        assert plan is None or check(problem, plan) == ()
    assert not (quick is not None and result.status is Status.IMPOSSIBLE)


@THOROUGH
@given(small_problems(max_tasks=4, span=10))
def test_trying_everything_finds_nothing_better_than_what_was_proved_best(problem: Problem) -> None:
    result = solve(problem, LIMITS)
    worths = best(problem)
    if worths is None:
        assert result.status is Status.IMPOSSIBLE
    else:
        assert result.status is Status.PROVED_BEST
        assert tuple(level.value for level in result.levels) == worths
