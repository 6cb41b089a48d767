"""What is left. Limits: USDA-FSIS (2 hours out, 165 °F again) and the FDA Food Code as adopted by states, as cited."""

from dataclasses import replace
from datetime import timedelta

from cookout.core.kitchen.recipe import FoodKind
from cookout.core.planning.event import DishId, Event, Taste
from cookout.core.planning.foodrules import FoodCode, FoodRules
from cookout.core.planning.lists import leftovers
from cookout.core.planning.lists.leftovers import Afterwards, LeftDish
from cookout.core.planning.record import PlanRecord


def dishes(event: Event, record: PlanRecord, units: str = "us") -> dict[str, LeftDish]:
    """Every dish by its id."""
    return {dish.dish: dish for dish in leftovers(event, record, units).dishes}


def said(dish: LeftDish) -> str:
    """All that is told of a dish, with its sources."""
    return " ".join(f"{each.text} [{each.source}]" for each in dish.advice)


def test_portions_are_those_of_whole_batches(festival: Event, supper_plan: PlanRecord) -> None:
    """Cornbread for 14: three batches for 40 people make 42, two to spare."""
    cornbread = dishes(festival, supper_plan)["cornbread"]
    assert (cornbread.made, cornbread.eating, cornbread.spare) == (42, 40, 2)


def test_food_is_cold_before_its_two_hours_are_over(supper: Event, supper_plan: PlanRecord) -> None:
    """USDA-FSIS: at most 2 hours out, counted with what it stood out before it was served."""
    served = {each.dish: each for each in supper_plan.servings}
    safety = {each.dish: each for each in supper_plan.safety}
    for dish, left in dishes(supper, supper_plan).items():
        before = safety[dish].out_minutes or 0
        assert left.by == served[dish].ready_at + timedelta(minutes=120 - before)
        assert left.by <= served[dish].ready_at + timedelta(hours=2)


def test_a_pot_is_chilled_in_shallow_boxes_and_heated_through_before_it_is_eaten_again(
    supper: Event, supper_plan: PlanRecord
) -> None:
    told = said(dishes(supper, supper_plan)["bean-pot"])
    assert "shallow boxes" in told
    assert "heated to 165 °F" in told
    assert "USDA-FSIS" in told
    assert "74 °C" in said(dishes(supper, supper_plan, "metric")["bean-pot"])


def test_a_salad_goes_onto_ice_and_is_not_heated(supper: Event, supper_plan: PlanRecord) -> None:
    told = said(dishes(supper, supper_plan)["salad"])
    assert "40 °F" in told
    assert "heated" not in told


def test_under_the_food_code_what_stood_out_is_thrown_away_and_hot_food_cools_in_two_stages(
    festival: Event, supper_plan: PlanRecord
) -> None:
    """FDA Food Code 3-501.14 (A): 135 to 70 °F in 2 h, 41 °F in 6 h in all; 3-501.19: then thrown away."""
    told = said(dishes(festival, supper_plan)["bean-pot"])
    assert "from 135 °F to 70 °F within 2 h, to 41 °F within 6 h in all" in told
    assert "3-501.14(A)(1)" in told
    assert "never put back on ice" in told
    assert "3-501.19(B)" in told


def test_what_only_time_controls_is_never_kept(supper: Event, supper_plan: PlanRecord) -> None:
    public = replace(supper, food_rules=FoodRules(FoodCode.PUBLIC, marked=True))
    assert [each.source for each in dishes(public, supper_plan)["cobbler"].advice] == ["FDA Food Code 3-501.19(B)"]


def test_bread_keeps_without_a_cooler(supper: Event, supper_plan: PlanRecord) -> None:
    bread = replace(supper, recipes=tuple(replace(each, food=FoodKind.BREAD_AND_CAKE) for each in supper.recipes))
    cobbler = dishes(bread, supper_plan)["cobbler"]
    assert "no cooler" in said(cobbler)
    assert cobbler.by is None


def test_raw_batter_is_not_tasted(demonstration: Event, demonstration_plan: PlanRecord) -> None:
    raw = dishes(demonstration, demonstration_plan)["raw-batch"]
    assert (raw.eating, raw.spare) == (None, 0)
    assert raw.after is Afterwards.RAW
    assert "Nobody tastes it" in said(raw)


def test_what_an_audience_tastes_is_food_and_no_show_piece(
    demonstration: Event, demonstration_plan: PlanRecord
) -> None:
    (slot,) = demonstration.slots
    tasted = replace(slot, live=(*slot.live, Taste("A slice for everybody", 5, DishId("raw-batch"))))
    left = dishes(replace(demonstration, slots=(tasted,)), demonstration_plan)["raw-batch"]
    assert (left.after, left.eating) == (Afterwards.ICE, 12)


def test_without_a_plan_no_time_is_told(supper: Event, supper_plan: PlanRecord) -> None:
    bare = replace(supper_plan, servings=(), tasks=(), bakes=(), firings=(), fuel=None)
    assert {left.by for left in dishes(supper, bare).values()} == {None}


def test_coals_are_drowned_and_those_never_lit_counted(supper: Event, supper_plan: PlanRecord) -> None:
    fire = {item.key: item for item in leftovers(supper, supper_plan, "us").fire}
    assert supper_plan.fuel is not None
    assert fire["fire.unlit"].count == 180 - supper_plan.fuel.laid - supper_plan.fuel.added
    assert "48 hours" in fire["fire.drown"].detail
    assert fire["fire.drown"].source == "fire-service advice"
    assert "metal can" in fire["fire.metal_can"].detail


def test_where_nothing_was_lit_nothing_is_said_of_ash(supper: Event, supper_plan: PlanRecord) -> None:
    assert leftovers(supper, replace(supper_plan, checklist=supper_plan.checklist[:1]), "us").fire == ()
