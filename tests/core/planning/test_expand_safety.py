"""Food safety as waits, and warnings before the day. Limits: USDA-FSIS, read in mirrors."""

import pytest

from cookout.core.fire.weather import Weather
from cookout.core.kitchen.recipe import FoodKind, GearUse, Keeps, Step, StepKind
from cookout.core.planning.event import Fuel, GearKind
from cookout.core.planning.expand import expand
from tests.core.planning.build import after, bake, bake_step, event, gear, layer_cake, recipe, step, usual_gear
from tests.core.planning.reading import info, link, waits

HOT_DAY = Weather(air_c=34)
CHICKEN = (step("cut", StepKind.PREPARE), bake_step(after=("cut",)))


def test_perishable_food_is_served_within_two_hours_or_one_on_a_hot_day() -> None:
    food = recipe(steps=CHICKEN, food=FoodKind.POULTRY)
    assert waits(expand(event((food,))), "bread.b1.bake.out", "bread.s.serve") == (0, 120)
    assert waits(expand(event((food,), weather=HOT_DAY)), "bread.b1.bake.out", "bread.s.serve") == (0, 60)


def test_the_wait_says_which_rule_sets_it() -> None:
    made = expand(event((recipe(steps=CHICKEN, food=FoodKind.POULTRY),)))
    assert "USDA-FSIS" in link(made, "bread.b1.bake.out", "bread.s.serve").why


@pytest.mark.parametrize(("keeps", "most"), [(45, 45), (200, 120)])
def test_the_shorter_of_quality_and_safety_counts(keeps: int, most: int) -> None:
    food = recipe(steps=CHICKEN, food=FoodKind.POULTRY, keeps=Keeps(air=keeps))
    assert waits(expand(event((food,))), "bread.b1.bake.out", "bread.s.serve") == (0, most)


def test_food_held_hot_is_bound_by_its_quality_alone() -> None:
    food = recipe(steps=CHICKEN, food=FoodKind.POULTRY, keeps=Keeps(hot=180), held="hot")
    assert waits(expand(event((food,))), "bread.b1.bake.out", "bread.s.serve") == (0, 180)


def test_bread_may_wait_as_long_as_it_likes() -> None:
    assert waits(expand(event()), "bread.b1.bake.out", "bread.s.serve") == (0, None)


def between(food: FoodKind, later: Step, *, cooler: bool = False) -> tuple[int | None, int | None]:
    gear_uses = (GearUse("cooler"),) if cooler else ()
    steps = (step("cut", StepKind.PREPARE, gear=gear_uses), later)
    kit = (*usual_gear(), gear("ice-box", GearKind.COOLER))
    return waits(expand(event((recipe(steps=steps, food=food),), kit=kit)), "bread.cut", "bread.grill")


def test_raw_meat_waits_between_steps_no_longer_than_is_safe() -> None:
    # 120 min out at most, 10 of them spent cutting.
    assert between(FoodKind.GROUND_MEAT, step("grill", after=("cut",))) == (0, 110)


def test_a_wait_that_the_recipe_limits_more_or_that_is_spent_on_ice_is_left_alone() -> None:
    assert between(FoodKind.GROUND_MEAT, step("grill", after=(after("cut", 0, 30),))) == (0, 30)
    assert between(FoodKind.GROUND_MEAT, step("grill", after=("cut",)), cooler=True) == (0, None)
    assert between(FoodKind.GROUND_MEAT, step("grill", after=(after("cut", 0, 200),))) == (0, 110)
    assert between(FoodKind.BREAD_AND_CAKE, step("grill", after=("cut",))) == (0, None)


def test_plain_layers_wait_freely_until_they_bear_cream_icing() -> None:
    made = expand(event((layer_cake(),)))
    assert waits(made, "cake.b1.p1.bake.out", "cake.b1.p1.cool") == (0, None)
    # 120 min out at most, 15 of them spent icing.
    assert waits(made, "cake.ice", "cake.s.serve") == (0, 105)


def test_the_look_in_says_how_hot_the_centre_must_be() -> None:
    made = expand(event((recipe(steps=CHICKEN, food=FoodKind.POULTRY),)))
    assert "165 °F" in info(made, "bread.b1.bake.look").detail


def test_a_calm_mild_event_with_all_it_needs_has_no_warning() -> None:
    assert expand(event(fuel=Fuel(coals=24))).warnings == ()


def test_too_little_fuel_is_told_with_what_is_missing() -> None:
    (warning,) = expand(event(fuel=Fuel(coals=20))).warnings
    assert (warning.about, warning.text) == ("fuel", "The bakes want 24 coals and there are 20.")
    assert "at least 4 more" in warning.remedy


def test_an_oven_that_fits_no_spot_is_told_and_leaves_the_need_open() -> None:
    kit = (*usual_gear(), gear("oven16", GearKind.OVEN, inches=16))
    made = expand(event((recipe(steps=(bake_step(oven=bake(16), after=()),)),), kit=kit))
    assert [warning.text for warning in made.warnings] == ["No spot on a cooking table takes a 16-inch oven."]
    assert [need.options for need in made.problem.task_by_id[made.bake_runs[0].bakes].needs] == [("gear.oven16",), ()]


def test_an_oven_that_nobody_has_is_told_with_those_that_are_there() -> None:
    made = expand(event((recipe(steps=(bake_step(oven=bake(10), after=()),)),)))
    (warning,) = made.warnings
    assert "10-inch" in warning.text
    assert "12 inches" in warning.remedy
