"""What is packed: the gear that the plans of the shipped events take, and what safety asks for, by its sources."""

from dataclasses import replace

import pytest

from cookout.core.kitchen.recipe import Ingredient
from cookout.core.planning.event import DishId, Event, Fuel, Gear, GearId, GearKind
from cookout.core.planning.lists import packing
from cookout.core.planning.lists.items import Group, Item
from cookout.core.planning.lists.packing_gear import _is_pan
from cookout.core.planning.record import PlanRecord


def groups(event: Event, record: PlanRecord, units: str = "us") -> dict[str, Group]:
    """All groups by their key."""
    return {group.key: group for group in packing(event, record, units)}


def items(event: Event, record: PlanRecord, units: str = "us") -> dict[str, Item]:
    """All items by their key."""
    return {item.key: item for group in packing(event, record, units) for item in group.items}


def without_fire(event: Event, record: PlanRecord) -> tuple[Event, PlanRecord]:
    """The event and its record with nothing that burns."""
    return event, replace(record, firings=(), bakes=(), fuel=None, checklist=record.checklist[:1])


def test_ovens_are_told_by_letter_and_what_is_not_used_stays_apart(
    demonstration: Event, demonstration_plan: PlanRecord
) -> None:
    found = items(demonstration, demonstration_plan)
    used = {unit for bake in demonstration_plan.bakes for unit in (bake.unit,)}
    large = [unit for unit in sorted(used) if unit.startswith("12-inch")]
    assert found["gear.oven-12"].count == len(large)
    assert found["gear.oven-12"].detail.split(";")[0] == ", ".join(unit[-1] for unit in large)
    kettle = Gear(GearId("kettle"), GearKind.OTHER, "Kettle", 2)
    more = replace(demonstration, gear=(*demonstration.gear, kettle))
    assert [(item.key, item.count) for item in groups(more, demonstration_plan)["unused"].items] == [("gear.kettle", 2)]
    assert "unused" not in groups(demonstration, demonstration_plan)


def test_gear_without_names_says_how_much_of_it_is_in_use_at_once(supper: Event, supper_plan: PlanRecord) -> None:
    """Three dishes, the cobbler with two bowls: never more than the three bowls that there are."""
    found = items(supper, supper_plan)
    assert (found["gear.bowl"].count, found["gear.bowl"].detail) == (3, "")
    assert found["gear.ice-chest"].detail == "up to 1 of 6 places in use"
    assert (found["gear.table"].count, found["gear.table"].detail) == (1, "2 spots in use")


def test_without_a_plan_all_gear_is_packed(supper: Event, supper_plan: PlanRecord) -> None:
    bare = replace(supper_plan, tasks=(), bakes=(), firings=(), fuel=None)
    packed = [item.key for item in groups(supper, bare)["gear"].items]
    assert packed == [f"gear.{gear.id}" for gear in supper.gear]
    assert "unused" not in groups(supper, bare)
    assert "paper.run_sheet" not in items(supper, bare)


def test_pans_are_packed_for_what_is_baked_alone(demonstration: Event, demonstration_plan: PlanRecord) -> None:
    pans = {key: item.count for key, item in items(demonstration, demonstration_plan).items() if key[:4] == "pan."}
    assert pans == {"pan.show-cake": 2, "pan.twin-cake": 2}


def test_coals_are_counted_against_those_on_hand(supper: Event, supper_plan: PlanRecord) -> None:
    assert supper_plan.fuel is not None
    needed = supper_plan.fuel.coals
    assert items(supper, supper_plan)["fuel.coals"].count == needed
    assert "180 on hand, which is enough" in items(supper, supper_plan)["fuel.coals"].detail
    few = replace(supper, fuel=Fuel("briquettes", needed - 10))
    assert f"{needed - 10} on hand, 10 more to bring" in items(few, supper_plan)["fuel.coals"].detail
    uncounted = replace(supper, fuel=Fuel("briquettes", None))
    assert "on hand" not in items(uncounted, supper_plan)["fuel.coals"].detail


@pytest.mark.parametrize(
    ("key", "source"),
    [
        ("safety.water", "forest-service tips"),
        ("safety.shovel", "forest-service tips"),
        ("safety.metal_can", "fire-service advice"),
        ("safety.ring", "fire-service advice: a clear ring for children"),
        ("safety.tongs", "common practice, no source"),
        ("safety.first_aid", "from memory, not confirmed"),
        ("safety.extinguisher", "the local code"),
        ("cold.ice", "USDA-FSIS"),
        ("clean.boards", "from memory, not confirmed"),
    ],
)
def test_the_safety_kit_says_who_asks_for_it(supper: Event, supper_plan: PlanRecord, key: str, source: str) -> None:
    assert items(supper, supper_plan)[key].source == source


def test_work_with_fire_bears_its_caution(supper: Event, supper_plan: PlanRecord) -> None:
    found = groups(supper, supper_plan)
    assert "carbon monoxide" in found["fuel"].caution
    assert "Local codes" in found["safety"].caution
    assert "3 ft" in found["fuel"].caution
    assert "1 m" in groups(supper, supper_plan, "metric")["fuel"].caution


def test_where_nothing_is_lit_no_fuel_and_no_fire_kit_is_packed(supper: Event, supper_plan: PlanRecord) -> None:
    found = groups(*without_fire(supper, supper_plan))
    assert found.keys().isdisjoint({"fuel", "safety"})
    assert {"gear", "cold", "clean", "table", "paper"} <= found.keys()


def test_raw_meat_wants_a_board_of_its_own(supper: Event, demonstration: Event, supper_plan: PlanRecord) -> None:
    assert items(supper, supper_plan)["clean.boards"].count == 2
    salad = replace(supper, dishes=tuple(dish for dish in supper.dishes if dish.id == "salad"), recipes=supper.recipes)
    assert items(salad, supper_plan)["clean.boards"].count == 1
    assert "clean.raw_tongs" not in items(salad, supper_plan)


@pytest.mark.parametrize(("name", "boards"), [("egg yolks", 2), ("egg", 2), ("egg noodles", 1), ("eggplant", 1)])
def test_raw_egg_in_any_part_wants_a_board_of_its_own(
    supper: Event, supper_plan: PlanRecord, name: str, boards: int
) -> None:
    salad = supper.dish(DishId("salad"))
    recipe = replace(supper.recipe_of(salad), ingredients=(Ingredient(name, 3),))
    event = replace(supper, dishes=(salad,), recipes=(recipe,))
    assert items(event, supper_plan)["clean.boards"].count == boards


def test_what_is_bought_frozen_or_brought_cooked_wants_ice(supper: Event, supper_plan: PlanRecord) -> None:
    salad = supper.dish(DishId("salad"))
    for name, iced in (("frozen peas", True), ("cooked rice", True), ("rice", False)):
        recipe = replace(supper.recipe_of(salad), ingredients=(Ingredient(name, 3, "cup"),))
        event = replace(supper, dishes=(salad,), recipes=(recipe,))
        assert ("cold.ice" in items(event, replace(supper_plan, safety=()))) is iced


def test_food_that_is_held_cold_wants_a_cooler_even_where_the_event_names_none(
    demonstration: Event, demonstration_plan: PlanRecord, supper: Event, supper_plan: PlanRecord
) -> None:
    assert items(demonstration, demonstration_plan)["cold.cooler"].count == 1
    assert "cold.cooler" not in items(supper, supper_plan)


def test_times_on_labels_are_packed_for_where_food_bears_its_times(festival: Event, supper_plan: PlanRecord) -> None:
    found = items(festival, supper_plan, "metric")
    assert found["cold.labels"].source == "FDA Food Code as adopted by states"
    assert "5 °C or colder" in found["cold.ice"].detail


def test_spoons_are_counted_by_dish_and_plates_by_people(demonstration: Event, demonstration_plan: PlanRecord) -> None:
    found = items(demonstration, demonstration_plan)
    assert (found["table.spoons"].count, found["table.plates"].count) == (4, 24)
    assert found["paper.call_sheets"].count == 5
    assert found["paper.demo"].count == 1


@pytest.mark.parametrize("units", ["us", "metric"])
def test_no_key_stands_twice(festival: Event, supper_plan: PlanRecord, units: str) -> None:
    keys = [item.key for group in packing(festival, supper_plan, units) for item in group.items]
    assert len(keys) == len(set(keys))


def test_only_what_is_a_pan_is_packed_as_pans() -> None:
    """Words of the recipes that come with the program."""
    assert all(_is_pan(words) for words in ("9 in round, lined", "23 cm round", "two loaf tins"))
    assert not any(_is_pan(words) for words in ("buttered oven", "on a trivet", "straight into the oven, on paper", ""))
