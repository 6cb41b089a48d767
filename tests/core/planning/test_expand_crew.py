"""Who may do a task: skills, leave, windows, longest hot stretch."""

import pytest

from cookout.core.kitchen.recipe import FIRE_SKILL, StepKind
from cookout.core.planning.event import Helper, HelperId, Window
from cookout.core.planning.expand import expand
from cookout.core.planning.expanded import TaskKind
from cookout.core.planning.problem import BreakRule
from tests.core.planning.build import BAKER, bake_step, event, helper, recipe, step
from tests.core.planning.reading import hands, ids, task


def test_a_helper_needs_every_skill_of_the_step() -> None:
    crew = (helper("ana", "knife"), helper("bo", "knife", "baker"), helper("cy", "baker"))
    made = expand(event((recipe(steps=(step("cut", skills=("knife", "baker")),)),), crew=crew))
    assert hands(made, "bread.cut") == [{"bo"}]


def test_hands_are_so_many_different_helpers() -> None:
    made = expand(event((recipe(steps=(step("lift", hands=2),)),)))
    (need,) = task(made, "bread.lift").needs
    assert (need.picks, need.amount, len(need.options)) == (2, 1, 3)


def test_an_unattended_step_asks_for_nobody() -> None:
    made = expand(event((recipe(steps=(step("rise", StepKind.REST, hands=0),)),)))
    assert task(made, "bread.rise").needs == ()


def test_hot_steps_go_to_adults_and_those_named() -> None:
    crew = (helper("ana"), helper("kid", adult=False), helper("teen", adult=False, fire_allowed=True))
    made = expand(event((recipe(steps=(step("stir", hot=True),)),), crew=crew))
    assert hands(made, "bread.stir") == [{"ana", "teen"}]
    assert task(made, "bread.stir").hot


def test_loading_turning_and_taking_out_want_the_steps_skills_and_leave_for_hot_iron() -> None:
    made = expand(event((recipe(steps=(bake_step(after=(), skills=(BAKER,)),)),)))
    for part in ("load", "turn1", "look", "out"):
        assert hands(made, f"bread.b1.bake.{part}") == [{"ines", "olu"}]


def test_a_heavy_oven_is_loaded_and_emptied_by_two_and_turned_by_one() -> None:
    made = expand(event((recipe(steps=(bake_step(after=(), hands=2),)),)))
    picks = {part: task(made, f"bread.b1.bake.{part}").needs[0].picks for part in ("load", "out", "turn1")}
    assert picks == {"load": 2, "out": 2, "turn1": 1}


def test_nobody_is_asked_whose_window_is_too_short() -> None:
    crew = (helper("ana", window=(0, 9)), helper("bo", window=(0, 10)))
    made = expand(event((recipe(steps=(step("mix", usual=10),)),), crew=crew))
    assert hands(made, "bread.mix") == [{"bo"}]


def test_nobody_is_asked_whose_window_misses_the_tasks_own() -> None:
    # Serving starts at 345 or later and ends by 370.
    crew = (helper("early", window=(0, 349)), helper("fits", window=(0, 350)), helper("late", window=(366, 480)))
    assert hands(expand(event(crew=crew)), "bread.s.serve") == [{"fits"}]


def test_hot_work_longer_than_a_helpers_stretch_goes_to_others() -> None:
    crew = (helper("ana", stretch=20), helper("bo", stretch=45))
    made = expand(event((recipe(steps=(step("fry", usual=30, hot=True),)),), crew=crew))
    assert hands(made, "bread.fry") == [{"bo"}]


def test_windows_that_overlap_or_touch_are_one_shift_and_empty_ones_none() -> None:
    windows = (Window(100, 200), Window(0, 60), Window(200, 240), Window(50, 80), Window(300, 300))
    ana = Helper(HelperId("ana"), "Ana", frozenset({FIRE_SKILL}), windows)
    made = expand(event(crew=(ana,)))
    shifts = [made.problem.resource_by_id[each] for each in made.problem.shifts_by_helper["ana"]]
    assert [(shift.opens, shift.closes, shift.capacity) for shift in shifts] == [(0, 80, 1), (100, 240, 1)]


def test_every_helper_has_a_rule_for_breaks() -> None:
    made = expand(event(crew=(helper("ana", stretch=45), helper("bo"))))
    assert made.problem.breaks == (BreakRule("ana", 45, 10), BreakRule("bo", 60, 10))


def test_without_anybody_for_the_fire_the_needs_stay_open() -> None:
    made = expand(event(crew=(helper("ana"), helper("tam", "fire", adult=False))))
    fire = ids(made, TaskKind.LIGHT, TaskKind.LAY_COALS, TaskKind.DROWN)
    assert [hands(made, each) for each in fire] == [[set()]] * 3


@pytest.mark.parametrize(
    ("window", "opens", "closes"), [((60, 480), 60, 480), ((60, 200), 60, 370), ((400, 420), 400, 420)]
)
def test_the_day_lasts_from_the_first_helper_to_the_last_deadline_or_helper(
    window: tuple[int, int], opens: int, closes: int
) -> None:
    problem = expand(event(crew=(helper("ines", "fire", window=window),))).problem
    assert (problem.opens, problem.closes) == (opens, closes)


def test_an_event_without_crew_still_has_a_day() -> None:
    problem = expand(event(crew=())).problem
    assert (problem.opens, problem.closes) == (0, 370)
