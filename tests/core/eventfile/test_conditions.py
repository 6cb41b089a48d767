"""What a file says of weather by the hour, food safety, heat, ingredients and swaps; each slip told with its remedy."""

import pytest

from cookout.core.eventfile import read_event, write_event
from cookout.core.fire.iron import Surface
from cookout.core.fire.weather import Weather
from cookout.core.kitchen.recipe import Cool, CoolPlace, IcingKind, Ingredient, Load, LoadKind, StepKind
from cookout.core.planning.event import Event
from cookout.core.planning.foodrules import FoodCode
from cookout.core.safety.site import Enclosure
from tests.core.eventfile.files import SOUND, faults_of, only_fault, with_change

AT_THE_END = 'food = "bread_and_cake"\nkeeps = { air = 300 }\n'


def read(text: str) -> Event:
    """The event of a file that has no fault, read again from what is written of it."""
    event = read_event(text, "picnic.toml")
    assert read_event(write_event(event), "again.toml") == event
    return event


def with_table(table: str) -> str:
    """The sound file with a table more, before its gear."""
    return with_change("[[gear]]", f"{table}\n\n[[gear]]")


def with_recipe(lines: str) -> str:
    """The sound file with lines more in its recipe."""
    return with_change(AT_THE_END, f"{AT_THE_END}{lines}\n")


def test_weather_changes_by_the_hour_each_from_what_was_before() -> None:
    event = read(
        with_table(
            '[weather]\nair = "60 F"\nwind = "4 m/s"\n\n'
            '[[weather.hours]]\nfrom = "12:00"\nair = "77 F"\nsunny = true\n\n'
            '[[weather.hours]]\nfrom = "17:00"\nwind = "6 m/s"'
        )
    )
    assert [(hour.start, hour.weather) for hour in event.hours] == [
        (720, Weather(25.0, 4.0, 4.0, 0.5, sunny=True)),
        (1020, Weather(25.0, 6.0, 6.0, 0.5, sunny=True)),
    ]


def test_hours_out_of_order_are_a_fault() -> None:
    fault = only_fault(with_table('[[weather.hours]]\nfrom = "12:00"\n\n[[weather.hours]]\nfrom = "11:00"'))
    assert fault.where == "picnic.toml: weather.hours[2].from"
    assert "order" in fault.remedy


def test_food_safety_takes_a_published_code_and_stricter_numbers() -> None:
    event = read(
        with_table(
            '[food_safety]\ncode = "public"\nmarked = true\nlocal_code = "Harbour code"\nout_minutes = 90\n'
            'centres = { poultry = "170 F" }'
        )
    )
    rules = event.food_rules
    assert (rules.code, rules.marked, rules.numbers.out_minutes) == (FoodCode.PUBLIC, True, 90)
    assert rules.limits.time_control is not None
    assert rules.limits.time_control.minutes == 90


def test_a_local_number_that_would_allow_more_is_refused() -> None:
    fault = only_fault(with_table("[food_safety]\nout_minutes = 300"))
    assert fault.where == "picnic.toml: food_safety"
    assert "lower it or leave it out" in fault.remedy


def test_a_number_that_the_code_has_no_rule_for_is_refused() -> None:
    assert "food code" in only_fault(with_table("[food_safety]\ncooling_minutes = 200")).remedy


def test_the_switches_and_the_place() -> None:
    text = with_change('date = "2027-06-12"', 'date = "2027-06-12"\nuse_models = false\naltitude_advice = true')
    event = read(text.replace('name = "Mill pond"', 'name = "Mill pond"\ndry_grass = true\nclear = "12 ft"'))
    assert (event.switches.use_models, event.switches.altitude_advice) == (False, True)
    assert event.place.dry_grass is True
    assert event.place.clear_m == pytest.approx(3.6576)


def test_what_was_found_at_the_place_is_told_apart_from_what_nobody_looked_for() -> None:
    found = 'water = true\nshovel = false\nmetal_can = true\nenclosure = "open_shelter"\nchildren = false'
    place = read(with_change('name = "Mill pond"', f'name = "Mill pond"\n{found}')).place
    assert (place.water, place.shovel, place.metal_can, place.children) == (True, False, True, False)
    assert place.enclosure is Enclosure.OPEN_SHELTER
    nobody = read(SOUND).place
    assert {nobody.water, nobody.shovel, nobody.metal_can, nobody.children, nobody.enclosure} == {None}


@pytest.mark.parametrize(
    ("line", "key", "remedy"),
    [
        ('enclosure = "tnet"', "enclosure", '"tent"'),
        ("enclosure = true", "enclosure", '"open"'),
        ('water = "yes"', "water", "true"),
    ],
)
def test_what_was_found_is_one_of_the_known_words(line: str, key: str, remedy: str) -> None:
    fault = only_fault(with_change('name = "Mill pond"', f'name = "Mill pond"\n{line}'))
    assert fault.where == f"picnic.toml: place.{key}"
    assert remedy in fault.remedy


def test_gear_says_its_iron_its_surface_and_its_places() -> None:
    text = SOUND.replace('size = "12 in"', 'size = "12 in"\niron = "20 lb"').replace(
        "spots = 2", 'spots = 2\nsurface = "grate"'
    )
    more = '[[gear]]\nid = "chest"\nkind = "cooler"\nice = false\nplaces = 4\n\n'
    event = read(text.replace("[[crew]]", f"{more}[[crew]]", 1))
    oven, _, table, chest = event.gear
    assert oven.iron_kg == pytest.approx(9.0718474)
    assert table.surface is Surface.GRATE
    assert (chest.ice, chest.places, chest.pieces) == (False, 4, 4)


def test_a_bake_says_what_stands_in_the_oven_and_a_step_what_it_cools_to() -> None:
    text = with_change(
        "look_in_from = 25 }",
        'look_in_from = 25, pan = "9 in", depth = "1.25 in", load = "carrot cake", start = "68 F" }\n\n'
        '[[recipes.bread.steps]]\nid = "cool"\nname = "Cool"\nminutes = 40\ncool = { to = "86 F", where = "cooler" }',
    )
    bake, cool = read(text).recipes[0].steps[-2:]
    assert bake.bake is not None
    assert bake.bake.load == Load(LoadKind.CARROT_CAKE, 0.2286, 0.03175, 20.0)
    assert (cool.kind, cool.cool) == (StepKind.COOL, Cool(30.0, CoolPlace.COOLER))


def test_half_a_load_is_told_what_it_lacks() -> None:
    faults = faults_of(with_change("look_in_from = 25 }", 'look_in_from = 25, pan = "9 in", done = "200 F" }'))
    assert [fault.where.rpartition(".")[2] for fault in faults] == ["load", "depth"]
    alone = only_fault(with_change("look_in_from = 25 }", 'look_in_from = 25, done = "200 F" }'))
    assert "pan, depth and load" in alone.what


def test_a_step_that_cools_is_of_no_other_kind() -> None:
    fault = only_fault(with_change('kind = "mix"', 'kind = "mix"\ncool = { to = "80 F" }'))
    assert fault.where.endswith("steps[1].kind")


def test_ingredients_are_lines_as_people_write_them_or_tables() -> None:
    event = read(with_recipe('ingredients = ["1 1/2 cups flour, sifted", "3 large eggs", { name = "salt" }]'))
    assert event.recipes[0].ingredients == (
        Ingredient("flour", 1.5, "cup", "sifted"),
        Ingredient("eggs", 3.0, "", "large"),
        Ingredient("salt"),
    )


def test_a_line_that_can_be_read_in_two_ways_is_asked_about_and_never_guessed() -> None:
    fault = only_fault(with_recipe('ingredients = ["2 cups flour", "1,5 l milk"]'))
    assert fault.where == "picnic.toml: recipes.bread.ingredients[2]"
    assert "1.5 or 1500" in fault.remedy


SWAPS = (
    'icing = "butter"\ningredients = ["1 cup butter", "2 eggs"]\n'
    'swaps = [{ id = "oil", instead_of = "butter", use = "oil", ratio = 0.75 }, '
    '{ id = "lard", instead_of = "butter", use = "lard" }]'
)


def test_a_recipe_declares_swaps_and_a_dish_chooses() -> None:
    text = with_recipe(SWAPS).replace('id = "loaf"\nrecipe = "bread"', 'id = "loaf"\nrecipe = "bread"\nswaps = ["oil"]')
    event = read(text)
    assert event.recipes[0].icing is IcingKind.BUTTER
    loaf, dough = event.dishes
    assert event.recipe_of(loaf).ingredients[0] == Ingredient("oil", 0.75, "cup", "instead of butter")
    assert event.recipe_of(dough) == event.recipes[0]


@pytest.mark.parametrize(
    ("chosen", "where", "what"),
    [
        ('["ghee"]', "dishes[1].swaps[1]", 'There is no swap "ghee".'),
        ('["oil", "lard"]', "dishes[1].swaps", "These swaps do not go together."),
    ],
)
def test_swaps_that_cannot_be_made_are_told(chosen: str, where: str, what: str) -> None:
    chooses = f'id = "loaf"\nrecipe = "bread"\nswaps = {chosen}'
    fault = only_fault(with_recipe(SWAPS).replace('id = "loaf"\nrecipe = "bread"', chooses))
    assert (fault.where, fault.what) == (f"picnic.toml: {where}", what)


def test_a_swap_of_something_that_is_not_in_the_recipe_is_told() -> None:
    lines = 'ingredients = ["2 eggs"]\nswaps = [{ id = "oil", instead_of = "butter", use = "oil" }]'
    fault = only_fault(with_recipe(lines))
    assert fault.where == "picnic.toml: recipes.bread.swaps[1].instead_of"


def test_a_swap_of_a_thing_for_itself_is_told() -> None:
    lines = 'ingredients = ["2 eggs"]\nswaps = [{ id = "same", instead_of = "eggs", use = "egg" }]'
    assert "does not replace" in only_fault(with_recipe(lines)).remedy
