"""Food safety all the way from an event to its record: refused waits, icing that slides, figures shown."""

from dataclasses import replace
from pathlib import Path

import pytest

from cookout.core.eventfile import read_event
from cookout.core.fire.weather import Weather
from cookout.core.kitchen.recipe import FoodKind, Keeps, StepKind
from cookout.core.kitchen.replacement import Swap, SwapId
from cookout.core.planning.check import check, check_event
from cookout.core.planning.event import Event, Gear, GearId, GearKind, Place, WeatherFrom
from cookout.core.planning.expand import expand
from cookout.core.planning.foodrules import FoodCode, FoodRules
from cookout.core.planning.pipeline import Outcome, plan_event
from cookout.core.planning.problem import Task
from cookout.core.planning.refusals import refusals
from cookout.core.planning.result import Limits, Status
from cookout.core.planning.ways_out import apply_change
from cookout.core.quantities import fahrenheit_to_celsius
from cookout.core.safety.local import LocalNumbers
from cookout.core.safety.site import Enclosure
from tests.core.planning.build import after, bake_step, event, recipe, step

EVENTS = Path(__file__).parents[3] / "fixtures" / "events"
LIMITS = Limits(seconds=10, workers=2, seed=1)
F80, F95 = fahrenheit_to_celsius(80), fahrenheit_to_celsius(95)
RAW = step("cut", StepKind.PREPARE)
COOLER = Gear(GearId("chest"), GearKind.COOLER, "Cooler with ice")


def demonstration(air_c: float, *more: Gear) -> Event:
    """The demonstration on an afternoon of that air, with more gear."""
    text = (EVENTS / "demonstration.toml").read_text(encoding="utf-8")
    made = read_event(text, "demonstration.toml")
    return replace(made, weather=replace(made.weather, air_c=air_c), gear=(*made.gear, *more))


def plan(made: Event) -> Outcome:
    """A plan that passes every check."""
    outcome = plan_event(made, LIMITS)
    assert outcome.result.plan is not None
    assert check(outcome.expanded.problem, outcome.result.plan) == ()
    assert check_event(outcome.expanded, outcome.result.plan) == ()
    return outcome


def tasks_of(outcome: Outcome) -> tuple[Task, ...]:
    """All tasks of a plan."""
    return outcome.expanded.problem.tasks


def test_on_a_95_degree_afternoon_the_icing_will_not_hold_and_a_cooler_mends_it_with_another_plan() -> None:
    hot, cooled = plan(demonstration(F95)), plan(demonstration(F95, COOLER))
    texts = [f"{warning.text} {warning.remedy}" for warning in hot.record.warnings]
    assert any("icing will not hold" in text and "cooler with ice" in text for text in texts)
    assert any("does not cool to 86 °F" in text for text in texts)
    assert not any("icing" in w.text or "does not cool" in w.text for w in cooled.record.warnings)
    in_chest = {task.id: task for task in cooled.record.tasks if "chest" in task.gear}
    assert {"show-cake.b1.p1.cool", "twin-cake.b1.p2.cool"} <= in_chest.keys()
    assert {"show-cake.b1.fill-and-ice.chill", "twin-cake.b1.fill-and-ice.chill"} <= in_chest.keys()
    assert [task.id for task in cooled.record.tasks] != [task.id for task in hot.record.tasks]
    held = {figures.dish: figures.held for figures in cooled.record.safety}
    assert held["show-cake"] == "held cold, 40 °F or colder"


def test_an_afternoon_that_turns_hot_by_the_hour_is_mended_by_a_cooler_too() -> None:
    mild = demonstration(20.0, COOLER)
    hours = (WeatherFrom(12 * 60, Weather(air_c=F95, sunny=True)),)
    cooled = plan(replace(mild, hours=hours))
    assert not any("icing" in w.text or "does not cool" in w.text for w in cooled.record.warnings)
    assert cooled.expanded.on_ice == {"show-cake", "twin-cake"}
    assert any("icing will not hold" in w.text for w in plan(replace(demonstration(20.0), hours=hours)).record.warnings)


def test_on_a_mild_day_the_cake_stands_in_the_open_even_where_there_is_a_cooler() -> None:
    made = expand(demonstration(23, COOLER))
    assert made.on_ice == frozenset()
    assert made.warnings == ()


def test_a_cooler_without_ice_helps_nobody() -> None:
    assert expand(demonstration(F95, replace(COOLER, ice=False))).on_ice == frozenset()


def chicken(**changes: object) -> Event:
    """Chicken for six o'clock on an afternoon of 80 °F."""
    food = recipe("chicken", (RAW, bake_step(after=("cut",))), food=FoodKind.POULTRY)
    return event((replace(food, **changes),), weather=Weather(air_c=F80))  # type: ignore[arg-type]


THREE_HOURS = (
    chicken(rests_minutes=180),
    chicken(steps=(RAW, bake_step(after=("cut",)), step("wait", StepKind.REST, 180, hands=0, after=("bake",)))),
    chicken(steps=(RAW, bake_step(after=("cut",)), step("carve", after=(after("bake", 180),)))),
    chicken(steps=(RAW, bake_step(after=(after("cut", 180),)))),
)


@pytest.mark.parametrize("made", THREE_HOURS, ids=["rests", "rest step", "waits to be carved", "waits raw"])
def test_chicken_planned_to_wait_three_hours_at_80_degrees_is_refused_with_the_section(made: Event) -> None:
    outcome = plan_event(made, LIMITS)
    assert outcome.result.status is Status.IMPOSSIBLE
    assert outcome.record.tasks == ()
    (told,) = outcome.record.obstacles
    assert "3 h out in air of 80 °F" in told
    assert "USDA-FSIS danger zone, the 2-hour rule" in told
    assert "FDA Food Code 3-501.16(A)" in told
    assert "Hold it at 140 °F or hotter" in told


def test_each_way_out_of_a_refused_rest_works_when_it_is_applied() -> None:
    made = chicken(rests_minutes=180)
    kinds = []
    for way in plan_event(made, LIMITS).record.ways_out:
        changed = apply_change(made, way.change)
        assert refusals(changed) == ()
        plan(changed)
        kinds.append((way.change["kind"], way.change.get("held")))
    assert kinds == [("hold", "hot"), ("hold", "cold"), ("rest_less", None)]


def test_chicken_that_is_held_hot_or_waits_two_hours_is_no_matter() -> None:
    assert refusals(chicken(rests_minutes=180, held="hot", keeps=Keeps(hot=200))) == ()
    assert refusals(chicken(rests_minutes=120)) == ()
    assert refusals(replace(chicken(rests_minutes=120), weather=Weather(air_c=F95)))[0].about == "chicken"


def test_bread_may_wait_as_long_as_it_likes_and_a_plain_cake_too_before_it_is_iced() -> None:
    assert refusals(event((recipe(rests=400),))) == ()
    steps = (bake_step(after=()), step("ice", StepKind.ICE, after=(after("bake", 300),)))
    assert refusals(event((recipe(steps=steps, food=FoodKind.CREAM_ICING),))) == ()


def test_a_stricter_local_code_shortens_the_waits_and_is_cited() -> None:
    rules = FoodRules(local="Harbour County code", section="7.2", numbers=LocalNumbers(out_minutes=30))
    strict = replace(chicken(), food_rules=rules)
    (link,) = (each for each in expand(strict).problem.links if each.after == "chicken.s.serve")
    assert link.most == 30
    (told,) = refusals(replace(chicken(rests_minutes=45), food_rules=rules))
    assert "Harbour County code 7.2" in told.said


def test_the_public_code_gives_marked_food_four_hours_and_unmarked_food_next_to_none() -> None:
    marked, unmarked = (FoodRules(FoodCode.PUBLIC, marked=flag) for flag in (True, False))
    assert refusals(replace(chicken(rests_minutes=180), food_rules=marked)) == ()
    assert "3-501.16(A)" in refusals(replace(chicken(rests_minutes=180), food_rules=unmarked))[0].said
    plan(replace(chicken(rests_minutes=100), food_rules=marked))


def test_the_figures_of_a_dish_stand_on_the_record() -> None:
    record = plan(chicken()).record
    (figures,) = record.safety
    assert figures.centre == "Middle at least 165 °F (USDA-FSIS safe minimum internal temperatures)."
    assert figures.most_out_minutes == 120
    assert figures.out_minutes is not None
    assert 10 <= figures.out_minutes <= 120
    metric = plan(replace(chicken(), units="metric")).record
    assert metric.safety[0].centre.startswith("Middle at least 74 °C")


def test_allergens_come_from_the_ingredients_and_an_unknown_one_makes_the_rest_not_known() -> None:
    supper = read_event((EVENTS / "supper.toml").read_text(encoding="utf-8"), "supper.toml")
    cobbler = next(each for each in plan(supper).record.allergens if each.dish == "cobbler")
    assert {"milk", "wheat"} <= set(cobbler.contains)
    (bread,) = plan(event()).record.allergens
    assert bread.contains == ()
    assert "peanuts" in bread.not_known
    assert "NOT KNOWN" in bread.text


def test_a_swap_that_a_dish_chose_changes_its_allergens() -> None:
    supper = read_event((EVENTS / "supper.toml").read_text(encoding="utf-8"), "supper.toml")
    rice = Swap(SwapId("rice"), "all-purpose flour", "rice flour")
    recipes = tuple(replace(r, allergens=(), swaps=(rice,)) if r.id == "peach-cobbler" else r for r in supper.recipes)
    dishes = tuple(replace(d, swaps=(rice.id,)) if d.id == "cobbler" else d for d in supper.dishes)
    plain, swapped = replace(supper, recipes=recipes), replace(supper, recipes=recipes, dishes=dishes)
    contains = [
        next(set(each.contains) for each in plan(made).record.allergens if each.dish == "cobbler")
        for made in (plain, swapped)
    ]
    assert contains == [{"milk", "wheat"}, {"milk"}]


def test_the_checklist_of_the_place_comes_from_the_event() -> None:
    dry = replace(event(), place=Place("Heath", dry_grass=True, clear_m=2.0), fire_warning="Red flag until 20:00")
    record = plan(dry).record
    states = {check.id: check.state for check in record.checklist}
    assert (states["ground"], states["distance"], states["fire_warning"]) == ("warning", "no fire", "no fire")
    assert any("Red flag until 20:00" in warning.text for warning in record.warnings)
    assert {task.id for task in record.tasks if task.kind == "set_up"} == {"set_up", "ground", "soak"}


def test_what_was_found_at_the_place_is_asked_about_no_more_and_a_tent_means_no_fire() -> None:
    asked = {check.id for check in plan(event()).record.checklist if check.state == "not known"}
    assert {"water", "shovel", "metal_can", "carbon_monoxide"} <= asked
    # There is a minor in this crew.
    assert "children" not in asked
    looked = Place(
        "Green", water=True, shovel=True, metal_can=True, enclosure=Enclosure.OPEN, children=False, dry_grass=False
    )
    grown = tuple(helper for helper in event().crew if helper.adult)
    record = plan(replace(event(), place=looked, crew=grown)).record
    assert {check.id for check in record.checklist if check.state == "not known"} == {"wind", "distance"}
    assert "children" not in {check.id for check in record.checklist}
    record = plan(replace(event(), place=replace(looked, enclosure=Enclosure.TENT, water=False))).record
    states = {check.id: check.state for check in record.checklist}
    assert (states["carbon_monoxide"], states["water"], states["shovel"]) == ("no fire", "no fire", "to do")
    assert any("carbon monoxide kills" in warning.text for warning in record.warnings)
    assert any("There is no water" in warning.text for warning in record.warnings)


def test_minors_in_the_crew_are_children_at_the_place_whatever_was_said() -> None:
    made = replace(event(), place=Place("Green", children=False))
    assert any(not helper.adult for helper in made.crew)
    assert "children" in {check.id for check in plan(made).record.checklist}


def test_work_on_dry_grass_is_done_before_any_fire_and_left_out_where_there_is_none() -> None:
    dry = replace(event(), place=Place("Heath", dry_grass=True))
    outcome = plan(dry)
    assert outcome.result.plan is not None
    lit = min(outcome.result.plan.start(firing.lights) for firing in outcome.expanded.firings)
    spans = {str(t.id): (outcome.result.plan.start(t.id), outcome.result.plan.end(t)) for t in tasks_of(outcome)}
    assert spans["ground"][1] <= spans["soak"][0]
    assert spans["soak"][1] <= lit
    assert "ground" not in expand(replace(event(), place=Place("Yard", dry_grass=False))).info


def test_wind_over_the_organisers_limit_at_the_hour_of_the_fire_is_told() -> None:
    blowing = Weather(wind_mps=5, gust_mps=11)
    told = [w.text for w in plan(event(weather=blowing, wind_limit_mps=10)).record.warnings]
    assert any("over the limit" in text for text in told)
    assert plan(event(weather=blowing, wind_limit_mps=12)).record.warnings == ()


def test_fuel_for_the_whole_event_is_counted_weighed_and_loaded() -> None:
    record = plan(event()).record
    assert record.fuel is not None
    assert (record.fuel.laid, record.fuel.added) == (24, 0)
    assert record.fuel.coals == 24 + record.fuel.spare
    assert record.fuel.kilograms == pytest.approx(record.fuel.coals * 0.025)
    assert record.fuel.mass.endswith("lb")
    assert record.fuel.chimney_loads == 1


def test_what_is_to_be_held_cold_wants_a_cooler() -> None:
    salad = recipe("salad", (RAW,), food=FoodKind.RAW_VEGETABLES, keeps=Keeps(cold=120), held="cold")
    told = [warning.about for warning in expand(event((salad,))).warnings]
    assert told == ["cooler"]
    assert expand(event((salad,), kit=(COOLER,))).warnings == ()


def test_altitude_advice_is_given_only_where_the_organiser_asks() -> None:
    supper = read_event((EVENTS / "supper.toml").read_text(encoding="utf-8"), "supper.toml")
    assert plan(supper).record.advice == ()
    asked = replace(supper, switches=replace(supper.switches, altitude_advice=True))
    advice = plan(asked).record.advice
    assert any(each.dish == "bean-pot" for each in advice)
    assert all(each.source for each in advice)
