"""An event file's text made into an `Event`, or all that is wrong with it."""

import re
import tomllib
from itertools import islice

from cookout.core.errors import EventFileError, Fault
from cookout.core.eventfile.clock import Clock
from cookout.core.eventfile.crew import read_helper
from cookout.core.eventfile.faults import FaultList
from cookout.core.eventfile.fields import MOST_ENTRIES, Fields, described, is_id
from cookout.core.eventfile.foodsafety import read_food_rules
from cookout.core.eventfile.gear import read_gear
from cookout.core.eventfile.heading import read_fuel, read_heading, read_hours, read_place, read_weather
from cookout.core.eventfile.menu import read_dish, read_serving, serving_by_dish
from cookout.core.eventfile.pins import read_pin
from cookout.core.eventfile.recipes import read_recipe
from cookout.core.eventfile.references import check_references
from cookout.core.eventfile.slots import read_slot
from cookout.core.fire.weather import Weather
from cookout.core.kitchen.recipe import Recipe
from cookout.core.planning.event import Dish, Event, Fuel, Serving, WeatherFrom
from cookout.core.planning.foodrules import FoodRules

_AT_LINE = re.compile(r"^(.*?)\s*\(at (line \d+, column \d+|end of document)\)$", re.DOTALL)


def read_event(text: str, file: str) -> Event:
    """The event that an event file's text holds; `schema` documents its tables and keys.

    `file` names the file in what is told of its faults. Raises `EventFileError` with all of them at once.
    """
    data = parse(text, file)
    faults = FaultList(file, data)
    event = _build(Fields("", data, (), faults), faults)
    check_references(event, faults)
    faults.raise_if_any()
    return event


def parse(text: str, file: str) -> dict[str, object]:
    """The tables of a TOML text; `EventFileError` with the line for a text that is none."""
    try:
        return tomllib.loads(text)
    except (ValueError, RecursionError) as error:
        raise EventFileError((_syntax_fault(str(error), file),)) from error


def _syntax_fault(message: str, file: str) -> Fault:
    found = _AT_LINE.match(message)
    what, line = (found[1], found[2]) if found else (message, "")
    where = f"{file}: {line}" if line else file
    return Fault(where, f"The file is not TOML: {what}.", "Mend this place; whatever comes after it was not read.")


def _build(root: Fields, faults: FaultList) -> Event:
    heading = read_heading(root.must_table("event", "event"))
    servings, dishes = _read_menu(root, heading.clock)
    weather, hours = _read_weather(root, heading.clock)
    return Event(
        id=heading.id,
        name=heading.name,
        place=read_place(root.must_table("place", "place")),
        timezone=heading.timezone,
        origin=heading.clock.origin,
        weather=weather,
        servings=servings,
        dishes=dishes,
        slots=tuple(read_slot(fields, heading.clock) for fields in root.tables("demo_slots", "demo_slots")),
        gear=tuple(read_gear(fields) for fields in root.tables("gear", "gear")),
        fuel=read_fuel(fuel) if (fuel := root.table("fuel", "fuel")) else Fuel(),
        crew=tuple(read_helper(fields, heading.clock) for fields in root.tables("crew", "crew")),
        recipes=_read_recipes(root, faults),
        break_minutes=heading.break_minutes,
        setup_minutes=heading.setup_minutes,
        wind_limit_mps=heading.wind_limit_mps,
        fire_warning=heading.fire_warning,
        units=heading.units,
        hours=hours,
        switches=heading.switches,
        food_rules=read_food_rules(rules) if (rules := root.table("food_safety", "food_safety")) else FoodRules(),
        pins=tuple(read_pin(fields, heading.clock) for fields in root.tables("pins", "pins")),
    )


def _read_weather(root: Fields, clock: Clock) -> tuple[Weather, tuple[WeatherFrom, ...]]:
    fields = root.table("weather", "weather")
    if fields is None:
        return Weather(), ()
    weather = read_weather(fields)
    return weather, read_hours(fields, clock, weather)


def _read_menu(root: Fields, clock: Clock) -> tuple[tuple[Serving, ...], tuple[Dish, ...]]:
    serving_tables = root.tables("servings", "servings")
    dish_tables = root.tables("dishes", "dishes")
    servings = tuple(read_serving(fields, clock) for fields in serving_tables)
    ids = [found for fields in dish_tables if isinstance(found := fields.value("id"), str)]
    listed = serving_by_dish(serving_tables, servings, ids)
    return servings, tuple(read_dish(fields, listed, servings) for fields in dish_tables)


def _read_recipes(root: Fields, faults: FaultList) -> tuple[Recipe, ...]:
    found = root.value("recipes")
    if found is None:
        return ()
    if not isinstance(found, dict):
        root.fault("recipes", f"Here stands {described(found)}.", "Write each recipe as [recipes.its-id].")
        return ()
    if len(found) > MOST_ENTRIES:
        root.fault("recipes", f"There are {len(found)} recipes.", f"Write {MOST_ENTRIES} at most.")
    recipes: list[Recipe] = []
    for recipe_id, table in islice(found.items(), MOST_ENTRIES):
        is_id(recipe_id, ("recipes",), recipe_id, faults)
        recipes.append(read_recipe(recipe_id, Fields("recipes.ID", table, ("recipes", recipe_id), faults)))
    return tuple(recipes)
