"""What an event file says becomes an event, with every default in its place."""

import pytest

from cookout.core.errors import EventFileError
from cookout.core.eventfile import read_event
from cookout.core.fire.weather import Weather
from cookout.core.kitchen.recipe import After, BakeMethod, FoodKind, GearUse, Minutes, Scope, StepId, StepKind
from cookout.core.planning.event import Fuel, LiveStep, ReadyMade, Talk, Taste, Window
from cookout.core.planning.expand import expand
from tests.core.eventfile.files import FIXTURE_NAMES, SOUND, faults_of, fixture_text, only_fault, with_change


def test_the_heading_and_its_defaults_are_read() -> None:
    event = read_event(SOUND, "picnic.toml")
    assert event.origin.isoformat() == "2027-06-12T00:00:00-04:00"
    assert (event.timezone, event.units, event.break_minutes, event.setup_minutes) == ("America/New_York", "us", 10, 20)
    assert (event.weather, event.fuel, event.wind_limit_mps) == (Weather(), Fuel(), None)


def test_gusts_are_the_wind_where_the_file_gives_none() -> None:
    event = read_event(with_change("[[servings]]", '[weather]\nwind = "5 m/s"\n[[servings]]'), "picnic.toml")
    assert (event.weather.wind_mps, event.weather.gust_mps) == (5.0, 5.0)


def test_times_count_in_minutes_from_the_start_of_the_day() -> None:
    event = read_event(SOUND, "picnic.toml")
    assert event.servings[0].at == 18 * 60
    assert event.crew[1].windows == (Window(-6 * 60, -4 * 60), Window(15 * 60, 19 * 60))
    assert event.slots[0].ready_made == (ReadyMade(event.dishes[0].id, 16 * 60 + 10, StepId("bake")),)
    assert event.slots[0].live == (LiveStep(event.dishes[1].id, StepId("mix")),)


def test_a_dish_is_in_the_serving_that_lists_it_and_else_only_shown() -> None:
    event = read_event(SOUND, "picnic.toml")
    assert [(dish.id, dish.serving) for dish in event.dishes] == [("loaf", "dinner"), ("dough", None)]


def test_a_dish_may_name_its_serving_instead() -> None:
    text = with_change('dishes = ["loaf"]', "", with_change('id = "loaf"\n', 'id = "loaf"\nserving = "tea"\n'))
    assert read_event(text, "picnic.toml").dishes[0].serving == "tea"


def test_steps_follow_one_another_where_nothing_else_is_said() -> None:
    mix, rise, bake = read_event(SOUND, "picnic.toml").recipes[0].steps
    assert (mix.after, rise.after, bake.after) == ((), (After(mix.id),), (After(rise.id, 5, 20),))
    assert (mix.minutes, rise.minutes) == (Minutes(10, 10, 10), Minutes(40, 50, 60))
    assert (mix.hands, rise.hands, bake.hands) == (1, 0, 0)
    assert (mix.scope, rise.gear, bake.kind) == (Scope.BATCH, (GearUse("bowl"),), StepKind.BAKE)


def test_a_bake_is_read_in_inches_and_celsius() -> None:
    bake = read_event(with_change("12 in", "30 cm"), "picnic.toml").recipes[0].steps[2].bake
    assert bake is not None
    assert (bake.oven_inches, bake.method, bake.look_in_from) == (12, BakeMethod.BAKE, 25)
    assert bake.temperature_c == pytest.approx(204.444, abs=1e-3)


def test_a_step_may_name_a_piece_of_gear_by_its_id() -> None:
    text = with_change("[[crew]]", '[[gear]]\nid = "dough-trough"\nkind = "other"\n\n[[crew]]')
    event = read_event(with_change('kind = "bowl"', 'kind = "dough-trough"', text), "picnic.toml")
    assert event.recipes[0].steps[1].gear == (GearUse("dough-trough"),)


def test_what_only_the_planner_can_judge_is_no_fault() -> None:
    no_such_oven = with_change('oven = "12 in"', 'oven = "16 in"')
    small_spots = with_change("spots = 2", 'spots = 2\nspot_size = "8 in"', no_such_oven)
    assert read_event(small_spots, "picnic.toml").recipes[0].steps[2].bake is not None


def test_all_faults_are_told_at_once_in_the_order_of_the_file() -> None:
    text = with_change('name = "Mill pond"', 'nam = "Mill pond"')
    text = with_change('size = "12 in"', 'size = "big"', text)
    text = with_change('"15:00-19:00"', '"19:00-15:00"', text)
    text = with_change('at = "18:00"', 'at = "noon"', text)
    text = with_change('presenter = "ben"', 'presenter = "bob"', text)
    text = with_change("look_in_from = 25", "look_in_from = 99", text)
    assert [fault.where for fault in faults_of(text)] == [
        "picnic.toml: place.nam",
        "picnic.toml: place.name",
        "picnic.toml: gear[1].size",
        "picnic.toml: crew[1].windows[1]",
        "picnic.toml: servings[1].at",
        "picnic.toml: demo_slots[1].presenter",
        "picnic.toml: recipes.bread.steps[3].bake.look_in_from",
    ]


def test_the_error_shows_every_fault_on_its_own_line() -> None:
    text = with_change("people = 6", "people = 0", with_change("coals = 60", "coals = true"))
    with pytest.raises(EventFileError) as told:
        read_event(text, "picnic.toml")
    lines = str(told.value).splitlines()
    assert lines[0] == ("picnic.toml: gear[2].coals: Here stands true or false, not a whole number. Write coals = 10.")
    assert lines[1].startswith("picnic.toml: servings[1].people: The number is out of range. Write a whole number from")


@pytest.mark.parametrize(
    ("text", "where"),
    [
        ('[event]\nid = "x\n', "picnic.toml: line 2, column 8"),
        ("[event]\n[event]\n", "picnic.toml: line 2, column 7"),
        ("[event", "picnic.toml: end of document"),
        ("x = " + "[" * 5000, "picnic.toml"),
        ("x = " + "9" * 5000, "picnic.toml"),
    ],
)
def test_a_file_that_is_not_toml_tells_the_line(text: str, where: str) -> None:
    fault = only_fault(text)
    assert fault.where == where
    assert fault.what.startswith("The file is not TOML: ")
    assert "Mend this place" in fault.remedy


def test_an_empty_file_tells_what_it_needs() -> None:
    assert [fault.where for fault in faults_of("")] == ["picnic.toml: event", "picnic.toml: place"]


@pytest.mark.parametrize("name", FIXTURE_NAMES)
def test_the_events_that_come_with_the_program_can_be_read(name: str) -> None:
    event = read_event(fixture_text(name), f"{name}.toml")
    assert event.id == name
    assert event.origin.year == 2027


def test_the_events_that_come_with_the_program_are_of_the_sizes_they_show() -> None:
    supper, demonstration, festival = (read_event(fixture_text(name), name) for name in FIXTURE_NAMES)
    assert len({event.timezone for event in (supper, demonstration, festival)}) == 3
    assert (len(supper.dishes), len(supper.crew)) == (3, 3)
    assert [live.step for live in demonstration.slots[0].live_steps] == ["mix", "fill-and-ice"]
    assert [type(item) for item in demonstration.slots[0].live] == [LiveStep, Talk, LiveStep, Taste]
    assert (len(festival.servings), len(festival.slots), len(festival.crew)) == (3, 2, 12)
    assert len(festival.dishes) >= 20
    assert sum(gear.count for gear in festival.gear if gear.kind == "oven") == 12
    assert [helper.adult for helper in festival.crew].count(False) == 1


@pytest.mark.parametrize(
    ("name", "least", "most"), [("supper", 15, 26), ("demonstration", 55, 75), ("festival", 350, 450)]
)
def test_the_events_that_come_with_the_program_make_as_many_tasks_as_they_should(
    name: str, least: int, most: int
) -> None:
    expanded = expand(read_event(fixture_text(name), f"{name}.toml"))
    assert least <= len(expanded.problem.tasks) <= most
    assert expanded.warnings == ()


@pytest.mark.parametrize("name", FIXTURE_NAMES)
def test_no_recipe_that_comes_with_the_program_keeps_food_out_beyond_the_safe_time(name: str) -> None:
    # USDA-FSIS: perishable food is left out for at most 2 hours (read in mirrors).
    perishable = [r for r in read_event(fixture_text(name), name).recipes if r.food is not FoodKind.BREAD_AND_CAKE]
    assert perishable
    assert all((recipe.keeps.air or 0) <= 120 for recipe in perishable)
