"""The solver against optima worked by hand."""

from cookout.core.planning.problem import (
    EVENT_AIMS,
    BreakRule,
    Due,
    Freshness,
    Link,
    LinkKind,
    Need,
    Problem,
    Resource,
    ResourceId,
    Task,
    TaskId,
)
from cookout.core.planning.result import Limits, Progress, Status, Watch
from cookout.core.planning.solver import solve
from cookout.core.planning.values import values

OVENS = ResourceId("ovens")
COOK = ResourceId("cook")
FRIEND = ResourceId("friend")
HANDS = Need((COOK,))
LIMITS = Limits(seconds=10.0, workers=1, seed=1)


def T(name: str, minutes: int, *needs: Need, earliest: int | None = None, latest: int | None = None) -> Task:
    return Task(TaskId(name), minutes, needs, earliest, latest)


def follows(before: str, after: str, least: int = 0, most: int | None = None) -> Link:
    return Link(TaskId(before), TaskId(after), LinkKind.FINISH_TO_START, least, most)


def two_oven_supper() -> Problem:
    """A pie (mix 10, bake 30) and a loaf (mix 15, bake 40), each served in 5 min by the one cook, due at 120."""
    return Problem(
        tasks=(
            T("mix pie", 10, HANDS),
            T("bake pie", 30, Need((OVENS,))),
            T("serve pie", 5, HANDS, latest=120),
            T("mix loaf", 15, HANDS),
            T("bake loaf", 40, Need((OVENS,))),
            T("serve loaf", 5, HANDS, latest=120),
        ),
        links=(
            follows("mix pie", "bake pie"),
            follows("bake pie", "serve pie"),
            follows("mix loaf", "bake loaf"),
            follows("bake loaf", "serve loaf"),
        ),
        resources=(Resource(OVENS, 2), Resource(COOK, 1, "cook", 0, 120)),
        closes=120,
        aims=EVENT_AIMS,
        dues=(Due(TaskId("serve pie"), 120), Due(TaskId("serve loaf"), 120)),
        freshness=(
            Freshness(TaskId("bake pie"), TaskId("serve pie")),
            Freshness(TaskId("bake loaf"), TaskId("serve loaf")),
        ),
    )


def test_two_oven_supper_reaches_the_optimum_worked_by_hand() -> None:
    """One cook serves one dish from 110 and the other from 115. Pie last: its bake is 85-115, the loaf's 70-110, so the
    loaf is mixed by 70, at 55, and the pie at 70 or later; pie first: bakes are 80-110 and 75-115, and the mixes fill
    55-80. Either way the call is at 55 and no later is possible, for 25 min of mixing must end by 80 at the latest.
    Presence is 65 min, less than twice the work of 35, so the crew's day is 120 - 55 = 65."""
    result = solve(two_oven_supper(), LIMITS)
    assert result.status is Status.PROVED_BEST
    assert [(level.value, level.bound) for level in result.levels] == [(0, 0), (0, 0), (65, 65), (0, 0)]


def test_with_one_oven_the_supper_is_late_by_what_does_not_fit() -> None:
    """The bakes take 70 min one after another. The second ends at 115 at the latest to be served by 120, so the first
    ends at 75 or 85 and is served then or waits; nothing is late, and freshness is bought by serving it early."""
    problem = two_oven_supper()
    one_oven = Problem(
        tasks=problem.tasks,
        links=problem.links,
        resources=(Resource(OVENS, 1), problem.resources[1]),
        closes=120,
        aims=EVENT_AIMS,
        dues=problem.dues,
        freshness=problem.freshness,
    )
    result = solve(one_oven, LIMITS)
    assert result.status is Status.PROVED_BEST
    assert result.levels[0].value == 0
    assert result.levels[1].value == 0


def test_a_most_wait_that_cannot_be_kept_makes_a_problem_impossible() -> None:
    """One cook has two tasks of 10 min, and the second must start no more than 5 min after the first starts."""
    problem = Problem(
        tasks=(T("a", 10, HANDS), T("b", 10, HANDS)),
        links=(Link(TaskId("a"), TaskId("b"), LinkKind.START_TO_START, 0, 5),),
        resources=(Resource(COOK, 1, "cook", 0, 100),),
        closes=100,
    )
    assert solve(problem, LIMITS).status is Status.IMPOSSIBLE


def test_a_need_that_nobody_meets_makes_a_problem_impossible() -> None:
    problem = Problem(tasks=(T("light", 5, Need(())),), closes=60)
    assert solve(problem, LIMITS).status is Status.IMPOSSIBLE


def test_a_helper_gets_the_break_from_the_heat_that_the_rule_asks_for() -> None:
    """Four hot tasks of 10 min, at most 20 min at a stretch, break of 15: 20 + 15 + 20 = 55 is the shortest day."""
    tasks = tuple(Task(TaskId(f"hot {n}"), 10, (HANDS,), hot=True) for n in range(4))
    problem = Problem(
        tasks=tasks,
        resources=(Resource(COOK, 1, "cook", 0, 200),),
        closes=200,
        breaks=(BreakRule("cook", 20, 15),),
    )
    result = solve(problem, LIMITS)
    assert (result.status, result.levels[0].value, result.levels[0].bound) == (Status.PROVED_BEST, 55, 55)


def test_work_is_shared_evenly_when_all_else_is_equal() -> None:
    """Two helpers, four tasks of 10 min in two pairs at fixed times: 20 min each is an even share."""
    both = Need((COOK, FRIEND))
    tasks = tuple(
        T(f"{pair}{n}", 10, both, earliest=at, latest=at + 10) for pair, at in (("a", 0), ("b", 10)) for n in "12"
    )
    problem = Problem(
        tasks=tasks,
        resources=(Resource(COOK, 1, "cook", 0, 60), Resource(FRIEND, 1, "friend", 0, 60)),
        closes=60,
        aims=EVENT_AIMS,
    )
    result = solve(problem, LIMITS)
    assert result.levels[3].value == 0
    assert result.status is Status.PROVED_BEST


def test_the_same_seed_with_one_worker_gives_the_same_plan() -> None:
    first, second = (solve(two_oven_supper(), LIMITS).plan for _ in range(2))
    assert first == second
    assert first is not None


def test_a_first_plan_is_told_before_solving_ends_and_later_ones_are_better() -> None:
    told: list[Progress] = []
    result = solve(two_oven_supper(), LIMITS, Watch(tell=told.append))
    worths = [values(two_oven_supper(), progress.plan) for progress in told]
    assert told[0].stage == "quick"
    assert worths == sorted(worths, reverse=True)
    assert result.plan is not None
    assert worths[-1] >= values(two_oven_supper(), result.plan)


def test_a_stopped_solve_returns_the_best_plan_so_far() -> None:
    result = solve(two_oven_supper(), LIMITS, Watch(stop=lambda: True))
    assert result.plan is not None
    assert result.status in (Status.BEST_FOUND, Status.PROVED_BEST)
