"""A bake as tasks: coals, oven and spot, turns, look-in, top-ups, food out. Fire figures are common practice."""

from itertools import pairwise

import pytest

from cookout.core.fire.weather import Weather
from cookout.core.kitchen.recipe import BakeMethod, GearUse
from cookout.core.planning.event import Event, Fuel, Gear, GearKind
from cookout.core.planning.expand import expand
from cookout.core.planning.expanded import Expanded, TaskKind
from tests.core.planning.build import bake, bake_step, dish, event, gear, recipe, serving, step, usual_gear
from tests.core.planning.reading import after_bake_began, gear_needs, hands, ids, info, linked, task, waits
from tests.core.planning.reading import gear as gear_of

CHIMNEY = gear("chimney", GearKind.CHIMNEY, 2, coals=60)


def loaf(
    usual: int = 30,
    least: int | None = None,
    *,
    method: BakeMethod = BakeMethod.BAKE,
    look_in_from: int = 20,
    preheat: int = 0,
) -> Event:
    """One loaf for eight in a 12-inch oven."""
    iron = bake(method=method, look_in_from=look_in_from, preheat=preheat)
    return event((recipe(steps=(step("mix"), bake_step(usual, least=least, oven=iron))),))


def visits(made: Expanded, kind: TaskKind) -> list[tuple[int | None, int | None]]:
    return [after_bake_began(made, "bread.b1.bake", task_id) for task_id in ids(made, kind)]


def test_without_preheating_food_goes_in_first_and_the_coals_at_once_after_it() -> None:
    made = expand(loaf())
    run = made.bake_runs[0]
    assert run.holds == ("bread.b1.bake.load", "bread.b1.bake.lay", "bread.b1.bake", "bread.b1.bake.out")
    assert [task(made, each).minutes for each in run.holds] == [2, 4, 30, 2]
    assert all(waits(made, *pair) == (0, 0) for pair in pairwise(run.holds))
    assert waits(made, "bread.mix", "bread.b1.bake.load") == (0, None)


def test_with_preheating_the_coals_come_first_and_the_mix_is_waited_for_by_the_loading_alone() -> None:
    made = expand(loaf(preheat=15))
    run = made.bake_runs[0]
    names = ["lay", "preheat", "load"]
    assert run.holds == (*(f"bread.b1.bake.{name}" for name in names), "bread.b1.bake", "bread.b1.bake.out")
    assert task(made, "bread.b1.bake.preheat").minutes == 15
    assert linked(made, "bread.mix") == {"bread.b1.bake.load"}


def test_every_task_that_holds_the_oven_names_the_very_same_pieces() -> None:
    kit = (gear("oven-a", GearKind.OVEN, inches=12), gear("oven-b", GearKind.OVEN, inches=12), *tables(), CHIMNEY)
    made = expand(event(servings=(serving(people=16),), kit=kit))
    pieces = [{tuple(gear_needs(made, each)) for each in run.holds} for run in made.bake_runs]
    assert [len(each) for each in pieces] == [1, 1]
    assert gear_of(made, "bread.b1.bake") != gear_of(made, "bread.b2.bake")
    assert all(len(need.options) == 1 for each in made.bake_runs for need in gear_needs(made, each.bakes))


def tables() -> tuple[Gear, ...]:
    """Two tables: one spot for large ovens, two for ovens up to 12 inches."""
    return (
        gear("wide", GearKind.TABLE, spots=1, spot_inches=16),
        gear("long", GearKind.TABLE, spots=2, spot_inches=12),
    )


def test_the_largest_oven_has_first_choice_of_spots() -> None:
    # The 16-inch oven fits the wide table alone, so both loaves go to the long one.
    kit = (
        *tables(),
        gear("oven12", GearKind.OVEN, 2, inches=12),
        gear("oven16", GearKind.OVEN, inches=16),
        CHIMNEY,
    )
    roast = recipe("roast", (bake_step(30, oven=bake(16), after=()),))
    made = expand(event((recipe(), roast), (dish(people=16), dish("roast")), kit=kit))
    spots = {run.bakes: gear_of(made, run.bakes)[1][0] for run in made.bake_runs}
    assert spots == {"bread.b1.bake": ["long"], "bread.b2.bake": ["long"], "roast.b1.bake": ["wide"]}


def test_a_table_has_its_spots_as_capacity() -> None:
    made = expand(event(kit=(*tables(), gear("twin", GearKind.TABLE, 3, spots=4))))
    capacity = {made.gear_of[r.id]: r.capacity for r in made.problem.resources if r.id in made.gear_of}
    assert capacity == {"wide": 1, "long": 2, "twin": 12}


def test_without_any_cooking_table_ovens_stand_on_the_ground_and_a_warning_says_so() -> None:
    made = expand(event(kit=(gear("oven12", GearKind.OVEN, inches=12), CHIMNEY)))
    assert gear_of(made, "bread.b1.bake") == [(["oven12"], 1)]
    assert [warning.about for warning in made.warnings] == ["table"]


def test_trivet_and_the_steps_own_gear_are_held_from_first_coals_to_food_out() -> None:
    kit = (*usual_gear(), gear("trivet", GearKind.TRIVET, 3), gear("rack", GearKind.RACK, 2))
    iron = bake_step(oven=bake(trivet=True), gear=(GearUse("rack", 2),), after=())
    made = expand(event((recipe(steps=(iron,)),), kit=kit))
    held = [(["oven12"], 1), (["table"], 1), (["trivet"], 1), (["rack"], 2)]
    assert all(gear_of(made, each) == held for each in made.bake_runs[0].holds)


def test_turns_come_every_12_minutes_with_3_of_play_and_none_near_the_end() -> None:
    # 40 min: turns at 12 and 24; 36 would be within half an interval of the end.
    assert visits(expand(loaf(40)), TaskKind.TURN) == [(9, 15), (21, 27)]


def test_turns_come_every_8_minutes_in_wind() -> None:
    windy = event(weather=Weather(wind_mps=8))
    assert visits(expand(windy), TaskKind.TURN) == [(5, 11), (13, 19), (21, 27)]


def test_a_pot_that_fries_has_all_coals_under_and_is_not_turned() -> None:
    made = expand(loaf(40, method=BakeMethod.FRY))
    assert visits(made, TaskKind.TURN) == []
    assert (made.bake_runs[0].lid, made.bake_runs[0].under) == (0, 21)


@pytest.mark.parametrize(
    ("least", "look_in_from", "window"), [(25, 20, (20, 24)), (25, 24, (24, 24)), (25, 29, (24, 24))]
)
def test_the_first_look_in_is_before_the_least_bake_time(
    least: int, look_in_from: int, window: tuple[int, int]
) -> None:
    assert visits(expand(loaf(30, least, look_in_from=look_in_from)), TaskKind.LOOK_IN) == [window]


def test_a_bake_of_40_minutes_needs_no_fresh_coals_and_one_of_41_does_at_30() -> None:
    assert visits(expand(loaf(40)), TaskKind.TOP_UP) == []
    assert visits(expand(loaf(41)), TaskKind.TOP_UP) == [(26, 34)]


def test_a_long_bake_is_topped_up_every_30_minutes_with_what_the_coals_before_will_lack() -> None:
    # 17 on the lid and 7 under (a metal table gives heat back): 10 and 4 fresh ones, then 11 and 5.
    made = expand(loaf(100))
    assert visits(made, TaskKind.TOP_UP) == [(26, 34), (56, 64)]
    assert made.bake_runs[0].top_ups == (("bread.b1.bake.topup1", 14), ("bread.b1.bake.topup2", 16))
    assert info(made, "bread.b1.bake.topup1").detail.startswith("10 fresh coals on the lid, 4 under")


def test_preheating_uses_up_coals_so_the_first_top_up_comes_sooner() -> None:
    # 15 min of preheating and 2 of loading: 30 min after the coals is 13 min into the bake.
    assert visits(expand(loaf(50, preheat=15)), TaskKind.TOP_UP) == [(9, 17)]


def test_after_a_very_long_preheat_fresh_coals_follow_soon_after_the_food() -> None:
    assert visits(expand(loaf(30, preheat=60)), TaskKind.TOP_UP) == [(1, 9)]


def test_lump_is_topped_up_sooner() -> None:
    long_bake = recipe(steps=(bake_step(50, after=()),))
    made = expand(event((long_bake,), fuel=Fuel("lump")))
    assert visits(made, TaskKind.TOP_UP) == [(18, 26)]


def test_one_thing_at_a_time_is_done_at_an_oven() -> None:
    # Looked at from 40 on: turns at 12 and 24, coals at 30, turn at 36, look at 42.
    made = expand(loaf(50, 45, look_in_from=40))
    order = ["turn1", "turn2", "topup1", "turn3", "look"]
    assert all(f"bread.b1.bake.{b}" in linked(made, f"bread.b1.bake.{a}") for a, b in pairwise(order))


def test_every_visit_is_over_before_the_bake_is() -> None:
    made = expand(loaf(55))
    for visit in ids(made, TaskKind.TURN, TaskKind.LOOK_IN, TaskKind.TOP_UP):
        most = after_bake_began(made, "bread.b1.bake", visit)[1]
        assert most is not None
        assert most + task(made, visit).minutes <= 55


def test_work_at_the_oven_is_hot_and_the_bake_itself_is_waiting() -> None:
    made = expand(loaf(50, preheat=10))
    waiting = {"bread.b1.bake", "bread.b1.bake.preheat"}
    around = {each for each in ids(made) if each.startswith("bread.b1.bake")}
    assert {each for each in around if not task(made, each).hot} == waiting
    assert all(info(made, each).hot == task(made, each).hot for each in ids(made))
    assert all(info(made, each).hands == 0 and hands(made, each) == [] for each in waiting)


def test_the_coals_to_lay_are_told_to_whoever_lays_them() -> None:
    made = expand(loaf())
    assert info(made, "bread.b1.bake.lay").detail.startswith("17 coals on the lid, 7 under")
    assert "350 °F" in info(made, "bread.b1.bake.lay").detail
    run = made.bake_runs[0]
    assert (run.lid, run.under, run.inches) == (17, 7, 12)
    assert run.least_coals <= 24 <= run.most_coals


def test_hot_work_bears_its_caution() -> None:
    made = expand(loaf(50))
    assert all(info(made, each).caution for each in ids(made) if task(made, each).hot)
    assert "carbon monoxide" in info(made, "coals.bread.b1.bake.lay.light").caution
    assert "48 hours" in info(made, "drown").caution
