"""An `Event` written as an event file. Defaults are left out; what is written reads back as the same event."""

from zoneinfo import ZoneInfo

import tomli_w

from cookout.core.eventfile.clock import Clock
from cookout.core.eventfile.writing_recipes import Table, recipe_table, without_defaults
from cookout.core.fire.weather import Weather
from cookout.core.planning.event import DemoSlot, Dish, Event, Fuel, Gear, Helper, Place, ReadyMade, Serving
from cookout.core.quantities import write_elevation, write_speed, write_temperature


def write_event(event: Event) -> str:
    """The text of an event file; `read_event` makes an equal event of it, where the event has none of its faults."""
    clock = Clock(ZoneInfo(event.timezone), event.origin.date())
    table: Table = {
        "event": _heading_table(event),
        "place": _place_table(event.place, event.units),
        "weather": _weather_table(event.weather, event.units),
        "fuel": without_defaults({"kind": event.fuel.kind, "coals": event.fuel.coals}, {"kind": Fuel().kind}),
        "gear": [_gear_table(gear) for gear in event.gear],
        "crew": [_helper_table(helper, clock) for helper in event.crew],
        "servings": [_serving_table(serving, clock) for serving in event.servings],
        "dishes": [_dish_table(dish) for dish in event.dishes],
        "demo_slots": [_slot_table(slot, clock) for slot in event.slots],
        "recipes": {recipe.id: recipe_table(recipe, event.units) for recipe in event.recipes},
    }
    return tomli_w.dumps({key: value for key, value in table.items() if value})


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
    }
    return without_defaults(values, {"units": "us", "break_minutes": 10, "setup_minutes": 20, "fire_warning": ""})


def _place_table(place: Place, units: str) -> Table:
    values: Table = {
        "name": place.name,
        "elevation": write_elevation(place.elevation_m, units) if place.elevation_m else None,
        "latitude": place.latitude,
        "longitude": place.longitude,
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


def _gear_table(gear: Gear) -> Table:
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
    }
    return without_defaults(values, {"name": gear.id, "count": 1, "deep": False, "material": ""})


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
    values: Table = {"id": dish.id, "recipe": dish.recipe, "serving": dish.serving, "people": dish.people}
    return without_defaults(values, {})


def _slot_table(slot: DemoSlot, clock: Clock) -> Table:
    values: Table = {
        "id": slot.id,
        "name": slot.name,
        "starts": clock.moment_text(slot.starts_at),
        "minutes": slot.minutes,
        "presenter": slot.presenter,
        "live": [{"dish": live.dish, "step": live.step} for live in slot.live],
        "ready_made": [_ready_made_table(ready, slot, clock) for ready in slot.ready_made],
    }
    return without_defaults(values, {"name": slot.id, "live": [], "ready_made": []})


def _ready_made_table(ready: ReadyMade, slot: DemoSlot, clock: Clock) -> Table:
    by = clock.moment_text(ready.by) if ready.by != slot.starts_at else None
    return without_defaults({"dish": ready.dish, "by": by, "up_to": ready.up_to}, {})
