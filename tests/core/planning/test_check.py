"""The check of a scheduling problem: silent on plans that keep every rule, and it notices each rule broken in turn."""

from dataclasses import replace
from itertools import islice

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from cookout.core.errors import ProblemError
from cookout.core.planning.check import check, measure
from cookout.core.planning.problem import (
    Aim,
    BreakRule,
    Due,
    Freshness,
    Link,
    LinkKind,
    Need,
    Problem,
    Resource,
    ResourceId,
    Stood,
    Task,
    TaskId,
)
from cookout.core.planning.result import Placed, Plan
from tests.outside import brute
from tests.strategies import HELPERS, problems_with_plans, small_problems

Both = tuple[Problem, Plan]

few = settings(max_examples=40, deadline=None)
"""Problems are large to draw, and each example breaks its rule in a place of its own."""


def rules_broken(problem: Problem, plan: Plan) -> set[str]:
    return {breach.rule for breach in check(problem, plan)}


def moved(plan: Plan, task: TaskId, start: int) -> Plan:
    return Plan(plan.placed | {task: replace(plan.placed[task], start=start)})


def repicked(plan: Plan, task: TaskId, *picks: tuple[str, ...]) -> Plan:
    chosen = tuple(tuple(ResourceId(name) for name in names) for names in picks)
    return Plan(plan.placed | {task: replace(plan.placed[task], picks=chosen)})


@few
@given(problems_with_plans(max_tasks=6))
def test_a_plan_that_keeps_every_rule_by_construction_passes(both: Both) -> None:
    assert check(*both) == ()


@few
@given(problems_with_plans(max_tasks=6), st.data())
def test_a_task_without_a_time_is_noticed(both: Both, data: st.DataObject) -> None:
    problem, plan = both
    task = data.draw(st.sampled_from(problem.tasks))
    less = Plan({name: placed for name, placed in plan.placed.items() if name != task.id})
    assert rules_broken(problem, less) == {"every_task_placed"}


@few
@given(problems_with_plans(max_tasks=6))
def test_a_task_that_is_not_of_the_problem_is_noticed(both: Both) -> None:
    problem, plan = both
    stray = TaskId("stray")
    assert rules_broken(problem, Plan(plan.placed | {stray: Placed(stray, 0)})) == {"every_task_placed"}


@few
@given(problems_with_plans(max_tasks=6), st.data())
def test_a_start_before_the_opening_is_noticed(both: Both, data: st.DataObject) -> None:
    problem, plan = both
    task = data.draw(st.sampled_from(problem.tasks))
    assert "within_horizon" in rules_broken(problem, moved(plan, task.id, problem.opens - 1))
    assert "within_horizon" not in rules_broken(problem, moved(plan, task.id, problem.opens))


@few
@given(problems_with_plans(max_tasks=6), st.data())
def test_an_end_after_the_closing_is_noticed(both: Both, data: st.DataObject) -> None:
    problem, plan = both
    task = data.draw(st.sampled_from(problem.tasks))
    last = problem.closes - task.minutes
    assert "within_horizon" in rules_broken(problem, moved(plan, task.id, last + 1))
    assert "within_horizon" not in rules_broken(problem, moved(plan, task.id, last))


@few
@given(problems_with_plans(max_tasks=6), st.data())
def test_a_start_before_its_earliest_is_noticed(both: Both, data: st.DataObject) -> None:
    problem, plan = both
    task = data.draw(st.sampled_from(problem.tasks))
    shut = replace(problem, tasks=with_task(problem, replace(task, earliest=plan.start(task.id) + 1)))
    assert rules_broken(shut, plan) == {"within_task_window"}


@few
@given(problems_with_plans(max_tasks=6), st.data())
def test_an_end_after_its_latest_is_noticed(both: Both, data: st.DataObject) -> None:
    problem, plan = both
    task = data.draw(st.sampled_from(problem.tasks))
    shut = replace(problem, tasks=with_task(problem, replace(task, latest=plan.end(task) - 1)))
    assert rules_broken(shut, plan) == {"within_task_window"}


def with_task(problem: Problem, changed: Task) -> tuple[Task, ...]:
    return tuple(changed if task.id == changed.id else task for task in problem.tasks)


@few
@given(problems_with_plans(max_tasks=6), st.data(), st.sampled_from(LinkKind))
def test_a_wait_one_minute_too_short_or_too_long_is_noticed(both: Both, data: st.DataObject, kind: LinkKind) -> None:
    problem, plan = both
    assume(len(problem.tasks) > 1)
    before, after = data.draw(st.permutations(problem.tasks))[:2]
    origin = (
        plan.end(before) if kind in (LinkKind.FINISH_TO_START, LinkKind.FINISH_TO_FINISH) else plan.start(before.id)
    )
    target = plan.end(after) if kind in (LinkKind.START_TO_FINISH, LinkKind.FINISH_TO_FINISH) else plan.start(after.id)
    wait = target - origin
    exact = Link(before.id, after.id, kind, wait, wait)
    assert check(replace(problem, links=(*problem.links, exact)), plan) == ()
    short = replace(exact, least=wait + 1, most=None)
    long = replace(exact, least=None, most=wait - 1)
    for wrong in (short, long):
        assert rules_broken(replace(problem, links=(*problem.links, wrong)), plan) == {"links_kept"}


@few
@given(problems_with_plans(max_tasks=6), st.data())
def test_one_piece_of_gear_fewer_than_used_at_the_busiest_minute_is_noticed(both: Both, data: st.DataObject) -> None:
    problem, plan = both
    gear = data.draw(st.sampled_from([each for each in problem.resources if each.helper is None]))
    busiest = max(_in_use(problem, plan, gear.id, plan.start(task.id)) for task in problem.tasks)
    assume(busiest > 0)
    resources = tuple(replace(each, capacity=busiest - 1) if each == gear else each for each in problem.resources)
    assert rules_broken(replace(problem, resources=resources), plan) == {"capacity_kept"}


def _in_use(problem: Problem, plan: Plan, gear: ResourceId, minute: int) -> int:
    busy = [task for task in problem.tasks if plan.start(task.id) <= minute < plan.end(task)]
    return sum(need.amount for task in busy for need in task.needs if need.options == (gear,))


@few
@given(problems_with_plans(max_tasks=6), st.data())
def test_a_helper_too_few_too_many_unfit_or_twice_is_noticed(both: Both, data: st.DataObject) -> None:
    problem, plan = both
    manned = [task for task in problem.tasks if plan.placed[task.id].picks and _has_helpers(problem, task)]
    assume(manned)
    task = data.draw(st.sampled_from(manned))
    picks = plan.placed[task.id].picks
    gear, crew = picks[:-1], picks[-1]
    wrongs = [(*gear, crew[:-1]), (*gear, (*crew, crew[0])), (*gear, ("oven", *crew[1:])), gear]
    for wrong in wrongs:
        assert "needs_met" in rules_broken(problem, repicked(plan, task.id, *wrong))


def _has_helpers(problem: Problem, task: Task) -> bool:
    return problem.resource_by_id[task.needs[-1].options[0]].helper is not None


@few
@given(problems_with_plans(max_tasks=6), st.data())
def test_work_outside_a_shift_is_noticed(both: Both, data: st.DataObject) -> None:
    problem, plan = both
    busy = {shift: task for task in problem.tasks for picks in plan.placed[task.id].picks for shift in picks}
    shifts = [each for each in problem.resources if each.helper is not None and each.id in busy]
    assume(shifts)
    shift = data.draw(st.sampled_from(shifts))
    task = busy[shift.id]
    for changed in (replace(shift, opens=plan.start(task.id) + 1), replace(shift, closes=plan.end(task) - 1)):
        resources = tuple(changed if each == shift else each for each in problem.resources)
        assert "within_shift" in rules_broken(replace(problem, resources=resources), plan)


@few
@given(problems_with_plans(max_tasks=6), st.data())
def test_a_hot_stretch_a_minute_too_long_is_noticed(both: Both, data: st.DataObject) -> None:
    problem, plan = both
    helper = data.draw(st.sampled_from(HELPERS))
    own = set(problem.shifts_by_helper[helper])
    hot = [
        (plan.start(task.id), plan.end(task))
        for task in problem.tasks
        if task.hot and any(own & set(picks) for picks in plan.placed[task.id].picks)
    ]
    assume(hot)
    whole = max(end for _, end in hot) - min(start for start, _ in hot)
    endless = BreakRule(helper, whole, 10_000)
    assert check(replace(problem, breaks=(endless,)), plan) == ()
    assert rules_broken(replace(problem, breaks=(replace(endless, stretch_minutes=whole - 1),)), plan) == {
        "breaks_taken"
    }


def kitchen(*tasks: Task, breaks: tuple[BreakRule, ...] = (), closes: int = 100) -> Problem:
    """Ada on two shifts and Bo on one, before two ovens."""
    resources = (
        Resource(ResourceId("oven"), 2),
        Resource(ResourceId("ada.1"), 1, "ada", 0, 50),
        Resource(ResourceId("ada.2"), 1, "ada", 40, 100),
        Resource(ResourceId("bo"), 1, "bo", 0, 100),
    )
    return Problem(tasks, resources=resources, breaks=breaks, closes=closes)


def by(*names: str, picks: int = 1) -> Need:
    return Need(tuple(ResourceId(name) for name in names), picks=picks)


def plan_of(*rows: tuple[str, int, tuple[str, ...]]) -> Plan:
    """Rows of task, start and the one resource for each need."""
    return Plan(
        {
            TaskId(task): Placed(TaskId(task), start, tuple((ResourceId(one),) for one in picks))
            for task, start, picks in rows
        }
    )


def test_a_helper_on_two_shifts_cannot_be_in_two_places() -> None:
    problem = kitchen(Task(TaskId("a"), 8, (by("ada.1", "bo"),)), Task(TaskId("b"), 8, (by("ada.2", "bo"),)))
    assert rules_broken(problem, plan_of(("a", 40, ("ada.1",)), ("b", 47, ("ada.2",)))) == {"nobody_in_two_places"}
    assert check(problem, plan_of(("a", 40, ("ada.1",)), ("b", 48, ("ada.2",)))) == ()


def test_a_break_counts_from_the_minute_it_is_long_enough() -> None:
    hot = [Task(TaskId(name), 10, (by("ada.1", "ada.2"),), hot=True) for name in "abc"]
    problem = kitchen(*hot, breaks=(BreakRule("ada", 25, 6),))
    paused = plan_of(("a", 0, ("ada.1",)), ("b", 10, ("ada.1",)), ("c", 26, ("ada.1",)))
    short = plan_of(("a", 0, ("ada.1",)), ("b", 10, ("ada.1",)), ("c", 25, ("ada.1",)))
    assert check(problem, paused) == ()
    broken = check(problem, short)
    assert [(breach.rule, breach.tasks, breach.minute) for breach in broken] == [("breaks_taken", ("a", "b", "c"), 0)]
    assert broken[0].text == "ada is at the fire for 35 min without a break, over 25"


def test_a_break_rule_follows_the_helper_over_all_shifts_and_spares_others() -> None:
    tasks = [Task(TaskId(name), 10, (by("ada.1", "ada.2", "bo"),), hot=True) for name in "ab"]
    problem = kitchen(*tasks, breaks=(BreakRule("ada", 15, 5),))
    assert rules_broken(problem, plan_of(("a", 35, ("ada.1",)), ("b", 47, ("ada.2",)))) == {"breaks_taken"}
    assert check(problem, plan_of(("a", 35, ("ada.1",)), ("b", 47, ("bo",)))) == ()


def test_what_is_kept_by_several_tasks_is_the_same_throughout() -> None:
    pot = Need((ResourceId("bo"), ResourceId("ada.1")), kept_as="the stew")
    problem = kitchen(Task(TaskId("a"), 8, (pot,)), Task(TaskId("b"), 8, (pot,)))
    assert rules_broken(problem, plan_of(("a", 0, ("bo",)), ("b", 8, ("ada.1",)))) == {"kept_throughout"}
    assert check(problem, plan_of(("a", 0, ("bo",)), ("b", 8, ("bo",)))) == ()


def test_needs_that_are_kept_as_one_must_be_alike() -> None:
    with pytest.raises(ProblemError, match="the stew are not alike"):
        kitchen(
            Task(TaskId("a"), 8, (Need((ResourceId("bo"),), kept_as="the stew"),)),
            Task(TaskId("b"), 8, (Need((ResourceId("ada.1"),), kept_as="the stew"),)),
        )


def test_what_is_given_back_at_a_minute_can_be_taken_at_that_minute() -> None:
    oven = Need((ResourceId("oven"),), amount=2)
    problem = kitchen(Task(TaskId("a"), 10, (oven,)), Task(TaskId("b"), 10, (oven,)))
    assert check(problem, plan_of(("a", 0, ("oven",)), ("b", 10, ("oven",)))) == ()
    broken = check(problem, plan_of(("a", 0, ("oven",)), ("b", 9, ("oven",))))
    assert [(breach.rule, breach.minute) for breach in broken] == [("capacity_kept", 9)]


def test_a_moment_without_length_takes_nothing() -> None:
    oven = Need((ResourceId("oven"),), amount=2)
    problem = kitchen(Task(TaskId("a"), 10, (oven,)), Task(TaskId("b"), 0, (oven,)))
    assert check(problem, plan_of(("a", 0, ("oven",)), ("b", 5, ("oven",)))) == ()


def test_the_aims_of_a_plan_worked_by_hand() -> None:
    tasks = (
        Task(TaskId("chop"), 10, (by("ada.1", "bo"),)),
        Task(TaskId("bake"), 30, (Need((ResourceId("oven"),)),)),
        Task(TaskId("serve"), 5, (by("ada.2", "bo"),)),
        Task(TaskId("sweep"), 20, (by("bo"),)),
    )
    problem = replace(
        kitchen(*tasks),
        dues=(Due(TaskId("serve"), 60), Due(TaskId("chop"), 50)),
        freshness=(Freshness(TaskId("bake"), TaskId("serve"), free=3), Freshness(TaskId("chop"), by=33)),
        before=(
            Stood(TaskId("chop"), 12, frozenset({"ada"})),
            Stood(TaskId("sweep"), 60, frozenset({"bo"})),
            Stood(TaskId("bake"), 22),
        ),
    )
    plan = plan_of(("chop", 12, ("bo",)), ("bake", 22, ("oven",)), ("serve", 58, ("bo",)), ("sweep", 70, ("bo",)))
    assert measure(problem, plan) == {
        Aim.MAKESPAN: 90,
        Aim.LATENESS: 3,  # served at 63, wanted at 60; chopped long before 50
        Aim.FRESHNESS: 3 + 11,  # out at 52, used at 58, 3 free; chopped at 22, wanted at 33
        Aim.CREW_DAY: 88 + (78 - 2 * 35),  # from 12 to closing at 100; Bo there from 12 to 90, at work for 35
        Aim.FAIR_SHARES: 35 - 18,  # 35 min for two people: 17.5 each, rounded up
        Aim.CHANGES: 2 + 1,  # Bo chops in Ada's place; sweeping moves from 60 to 70; the bake stays
    }


def test_a_crew_without_work_costs_nothing() -> None:
    problem = kitchen(Task(TaskId("bake"), 30, (Need((ResourceId("oven"),)),)))
    found = measure(problem, plan_of(("bake", 0, ("oven",))))
    assert (found[Aim.CREW_DAY], found[Aim.FAIR_SHARES]) == (0, 0)


def test_presence_of_twice_the_work_is_not_idle() -> None:
    problem = kitchen(*(Task(TaskId(name), 10, (by("bo"),)) for name in "ab"))
    days = {gap: measure(problem, plan_of(("a", 0, ("bo",)), ("b", 10 + gap, ("bo",)))) for gap in (0, 20, 21)}
    assert {gap: day[Aim.CREW_DAY] for gap, day in days.items()} == {0: 100, 20: 100, 21: 101}


def test_freshness_that_names_neither_use_nor_minute_is_refused() -> None:
    problem = replace(kitchen(Task(TaskId("bake"), 30)), freshness=(Freshness(TaskId("bake")),))
    with pytest.raises(ProblemError, match="neither what uses it nor by when"):
        measure(problem, plan_of(("bake", 0, ())))


@st.composite
def _nearly_kept(draw: st.DrawFn) -> Both:
    """A plan that kept all its rules until some of its starts were moved a little."""
    problem, plan = draw(problems_with_plans(max_tasks=5, span=12))
    for task in draw(st.sets(st.sampled_from([task.id for task in problem.tasks]), max_size=2)):
        plan = moved(plan, task, plan.start(task) + draw(st.integers(-3, 3)))
    return problem, plan


@given(_nearly_kept())
def test_check_and_measure_agree_with_a_reading_minute_by_minute(both: Both) -> None:
    problem, plan = both
    whole = {task: (placed.start, placed.picks) for task, placed in plan.placed.items()}
    assert (check(problem, plan) == ()) == brute.keeps(problem, whole)
    if not check(problem, plan):
        assert measure(problem, plan) == {aim: brute.value(problem, aim, whole) for aim in Aim}


@given(small_problems(max_tasks=3, span=6))
@few
def test_every_plan_that_trying_out_finds_passes_the_check(problem: Problem) -> None:
    for whole in islice(brute.every_plan(problem), 200):
        plan = Plan({task: Placed(task, start, picks) for task, (start, picks) in whole.items()})
        assert check(problem, plan) == ()


@given(problems_with_plans(max_tasks=3, span=6))
@few
def test_the_plan_by_construction_is_no_better_than_the_best_of_all(both: Both) -> None:
    problem, plan = both
    found = brute.best(problem)
    assert found is not None
    assert found <= tuple(measure(problem, plan)[aim] for aim in problem.aims)
