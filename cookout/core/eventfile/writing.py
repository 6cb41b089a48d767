"""An `Event` written as an event file. Defaults are left out; what is written reads back as the same event."""

from collections.abc import Iterable
from zoneinfo import ZoneInfo

import tomli_w

from cookout.core.eventfile.clock import Clock
from cookout.core.eventfile.writing_recipes import Table, recipe_table, without_defaults
from cookout.core.fire.iron import Surface
from cookout.core.fire.weather import Weather
from cookout.core.planning.event import (
    DemoSlot,
    Dish,
    Event,
    Fuel,
    Gear,
    Helper,
    LiveStep,
    Pin,
    Place,
    ReadyMade,
    Serving,
    Shown,
    Switches,
    Talk,
    WeatherFrom,
)
from cookout.core.planning.foodrules import FoodRules
from cookout.core.quantities import write_elevation, write_length, write_mass, write_speed, write_temperature


def write_event(event: Event) -> str:
    """The text of an event file; `read_event` makes an equal event of it, where the event has none of its faults."""
    clock = Clock(ZoneInfo(event.timezone), event.origin.date())
    table: Table = {
        "event": _heading_table(event),
        "place": _place_table(event.place, event.units),
        "weather": _weather_table(event.weather, event.units) | _hours_entry(event, clock),
        "fuel": _fuel_table(event.fuel),
        "food_safety": _food_rules_table(event.food_rules, event.units),
        "gear": [_gear_table(gear, event.units) for gear in event.gear],
        "crew": [_helper_table(helper, clock) for helper in event.crew],
        "servings": [_serving_table(serving, clock) for serving in event.servings],
        "dishes": [_dish_table(dish) for dish in event.dishes],
        "demo_slots": [_slot_table(slot, clock) for slot in event.slots],
        "pins": [_pin_table(pin, clock) for pin in event.pins],
        "recipes": {recipe.id: recipe_table(recipe, event.units) for recipe in event.recipes},
    }
    return as_toml({key: value for key, value in table.items() if value})


def as_toml(table: Table) -> str:
    """Tables as the text of a TOML file."""
    return tomli_w.dumps(table)


def write_kit(gear: Iterable[Gear], fuel: Fuel, units: str) -> str:
    """The text of a kit, lengths and masses in `units`; `kitfile.read_kit` makes equal gear and fuel of it."""
    tables: Table = {"gear": [_gear_table(each, units) for each in gear], "fuel": _fuel_table(fuel)}
    return tomli_w.dumps({key: value for key, value in tables.items() if value})


def _fuel_table(fuel: Fuel) -> Table:
    return without_defaults({"kind": fuel.kind, "coals": fuel.coals}, {"kind": Fuel().kind})


def _heading_table(event: Event) -> Table:
    limit = event.wind_limit_mps
    values: Table = {
        "id": event.id,
        "name": event.name,
        "timezone": event.timezone,
        "date": event.origin.date(),
        "units": event.units,
        "break_minutes": event.break_minutes,
        "setup_minutes": event.setup_minutes,
        "wind_limit": None if limit is None else write_speed(limit, event.units),
        "fire_warning": event.fire_warning,
        "use_models": event.switches.use_models,
        "altitude_advice": event.switches.altitude_advice,
    }
    usual = Switches()
    defaults: Table = {
        "units": "us",
        "break_minutes": 10,
        "setup_minutes": 20,
        "fire_warning": "",
        "use_models": usual.use_models,
        "altitude_advice": usual.altitude_advice,
    }
    return without_defaults(values, defaults)


def _place_table(place: Place, units: str) -> Table:
    values: Table = {
        "name": place.name,
        "elevation": write_elevation(place.elevation_m, units) if place.elevation_m else None,
        "latitude": place.latitude,
        "longitude": place.longitude,
        "dry_grass": place.dry_grass,
        "clear": None if place.clear_m is None else write_length(place.clear_m, units),
        "water": place.water,
        "shovel": place.shovel,
        "metal_can": place.metal_can,
        "enclosure": None if place.enclosure is None else place.enclosure.value,
        "children": place.children,
    }
    return without_defaults(values, {})


def _weather_table(weather: Weather, units: str) -> Table:
    usual = Weather()
    values: Table = {
        "air": write_temperature(weather.air_c, units) if weather.air_c != usual.air_c else None,
        "wind": write_speed(weather.wind_mps, units) if weather.wind_mps else None,
        "gust": write_speed(weather.gust_mps, units) if weather.gust_mps != weather.wind_mps else None,
        "humidity": weather.humidity,
        "sunny": weather.sunny,
    }
    return without_defaults(values, {"humidity": usual.humidity, "sunny": False})


def _food_rules_table(rules: FoodRules, units: str) -> Table:
    numbers = rules.numbers

    def degrees(celsius: float | None) -> str | None:
        return None if celsius is None else write_temperature(celsius, units)

    values: Table = {
        "code": rules.code.value,
        "marked": rules.marked,
        "local_code": rules.local,
        "section": rules.section,
        "hot": degrees(numbers.hot_c),
        "cold": degrees(numbers.cold_c),
        "out_minutes": numbers.out_minutes,
        "warm_minutes": numbers.warm_minutes,
        "warm_air": degrees(numbers.warm_air_c),
        "cold_out_minutes": numbers.cold_out_minutes,
        "first_minutes": numbers.first_minutes,
        "cooling_minutes": numbers.cooling_minutes,
        "reheating": degrees(numbers.reheating_c),
        "reheating_minutes": numbers.reheating_minutes,
        "centres": {kind: degrees(centre_c) for kind, centre_c in numbers.centres_c},
    }
    usual = FoodRules()
    defaults: Table = {"code": usual.code.value, "marked": usual.marked, "local_code": "", "section": "", "centres": {}}
    return without_defaults(values, defaults)


def _hours_entry(event: Event, clock: Clock) -> Table:
    before = (event.weather, *(hour.weather for hour in event.hours))
    tables = [_hour_table(hour, last, event.units, clock) for hour, last in zip(event.hours, before, strict=False)]
    return {"hours": tables} if tables else {}


def _hour_table(hour: WeatherFrom, before: Weather, units: str, clock: Clock) -> Table:
    """What changes at that time; a gust left out would follow a wind that is written."""
    now = hour.weather
    windier = now.wind_mps != before.wind_mps
    usual_gust = now.wind_mps if windier else before.gust_mps
    values: Table = {
        "from": clock.moment_text(hour.start),
        "air": write_temperature(now.air_c, units) if now.air_c != before.air_c else None,
        "wind": write_speed(now.wind_mps, units) if windier else None,
        "gust": write_speed(now.gust_mps, units) if now.gust_mps != usual_gust else None,
        "humidity": now.humidity,
        "sunny": now.sunny,
    }
    return without_defaults(values, {"humidity": before.humidity, "sunny": before.sunny})


def _gear_table(gear: Gear, units: str) -> Table:
    values: Table = {
        "id": gear.id,
        "kind": gear.kind.value,
        "name": gear.name,
        "count": gear.count,
        "size": None if gear.inches is None else f"{gear.inches} in",
        "deep": gear.deep,
        "coals": gear.coals,
        "spots": gear.spots,
        "spot_size": None if gear.spot_inches is None else f"{gear.spot_inches} in",
        "material": gear.material,
        "surface": gear.surface.value,
        "iron": None if gear.iron_kg is None else write_mass(gear.iron_kg, units),
        "height": None if gear.height_m is None else write_length(gear.height_m, units),
        "ice": gear.ice,
        "places": gear.places,
    }
    usual = {"surface": Surface.METAL.value, "ice": True, "places": 6}
    return without_defaults(values, {"name": gear.id, "count": 1, "deep": False, "material": "", **usual})


def _helper_table(helper: Helper, clock: Clock) -> Table:
    values: Table = {
        "id": helper.id,
        "name": helper.name,
        "skills": sorted(helper.skills),
        "windows": [clock.window_text(window) for window in helper.windows],
        "adult": helper.adult,
        "fire_allowed": helper.fire_allowed,
        "hot_stretch_minutes": helper.hot_stretch_minutes,
        "contact": helper.contact,
    }
    defaults: Table = {"skills": [], "adult": True, "fire_allowed": False, "hot_stretch_minutes": 60, "contact": ""}
    return without_defaults(values, defaults)


def _serving_table(serving: Serving, clock: Clock) -> Table:
    values: Table = {
        "id": serving.id,
        "name": serving.name,
        "at": clock.moment_text(serving.at),
        "early": serving.early,
        "late": serving.late,
        "people": serving.people,
    }
    return without_defaults(values, {"name": serving.id, "early": 10, "late": 10})


def _dish_table(dish: Dish) -> Table:
    values: Table = {
        "id": dish.id,
        "recipe": dish.recipe,
        "serving": dish.serving,
        "people": dish.people,
        "swaps": list(dish.swaps),
    }
    return without_defaults(values, {"swaps": []})


def _slot_table(slot: DemoSlot, clock: Clock) -> Table:
    values: Table = {
        "id": slot.id,
        "name": slot.name,
        "starts": clock.moment_text(slot.starts_at),
        "minutes": slot.minutes,
        "presenter": slot.presenter,
        "live": [_shown_table(item) for item in slot.live],
        "ready_made": [_ready_made_table(ready, slot, clock) for ready in slot.ready_made],
    }
    return without_defaults(values, {"name": slot.id, "live": [], "ready_made": []})


def _shown_table(item: Shown) -> Table:
    if isinstance(item, LiveStep):
        return {"dish": item.dish, "step": item.step}
    if isinstance(item, Talk):
        return {"talk": item.text, "minutes": item.minutes}
    return without_defaults({"taste": item.text, "dish": item.dish, "minutes": item.minutes}, {})


def _ready_made_table(ready: ReadyMade, slot: DemoSlot, clock: Clock) -> Table:
    by = clock.moment_text(ready.by) if ready.by != slot.starts_at else None
    return without_defaults({"dish": ready.dish, "by": by, "up_to": ready.up_to}, {})


def _pin_table(pin: Pin, clock: Clock) -> Table:
    values: Table = {
        "task": pin.task,
        "at": None if pin.at is None else clock.moment_text(pin.at),
        "helpers": list(pin.helpers),
        "units": list(pin.units),
    }
    return without_defaults(values, {"helpers": [], "units": []})
