"""The tables that say what the event is: [event], [place], [weather] and [fuel]."""

from dataclasses import dataclass
from datetime import date, datetime
from enum import StrEnum
from zoneinfo import ZoneInfo, ZoneInfoNotFoundError, available_timezones

from cookout.core.eventfile.clock import Clock, UnreadableTimeError, read_day
from cookout.core.eventfile.faults import did_you_mean, quoted
from cookout.core.eventfile.fields import DAY_MINUTES, Fields
from cookout.core.fire.weather import Weather
from cookout.core.planning.event import Fuel, Place, Switches, WeatherFrom
from cookout.core.quantities import Units, parse_elevation, parse_length, parse_speed, parse_temperature
from cookout.core.safety.site import Enclosure

# Ranges that only catch slips of the pen: no inhabited place, no weather to cook in, lies outside them.
LOWEST_M, HIGHEST_M = -500.0, 6000.0
COLDEST_C, WARMEST_C = -60.0, 60.0
STRONGEST_MPS = 120.0
FARTHEST_M = 1000.0

_CALM = Weather()
_STAND_IN_ZONE = "UTC"
_STAND_IN_DAY = date(2027, 1, 1)


class FuelKind(StrEnum):
    """What lies in the chimneys."""

    BRIQUETTES = "briquettes"
    LUMP = "lump"


@dataclass(frozen=True, slots=True)
class Heading:
    """What [event] says, with the clock that all its times are read by."""

    id: str
    name: str
    timezone: str
    clock: Clock
    units: str
    break_minutes: int
    setup_minutes: int
    wind_limit_mps: float | None
    fire_warning: str
    switches: Switches


LONGEST_NAME = 200
"""Letters in an event's name; a store keeps it in a column of its own."""


def read_heading(fields: Fields) -> Heading:
    """The table [event]."""
    return Heading(
        id=fields.id(),
        name=fields.text("name", longest=LONGEST_NAME),
        timezone=fields.text("timezone", example='"America/Denver"'),
        clock=_read_clock(fields),
        units=(fields.choice("units", Units, Units.US) or Units.US).value,
        break_minutes=fields.whole("break_minutes", 10, most=DAY_MINUTES),
        setup_minutes=fields.whole("setup_minutes", 20, least=1, most=DAY_MINUTES),
        wind_limit_mps=_read_speed(fields, "wind_limit"),
        fire_warning=fields.text("fire_warning", ""),
        switches=Switches(
            use_models=fields.flag("use_models", default=True),
            altitude_advice=fields.flag("altitude_advice", default=False),
        ),
    )


def read_place(fields: Fields) -> Place:
    """The table [place]."""
    elevation = 0.0
    if fields.has("elevation"):
        elevation = fields.quantity("elevation", parse_elevation, '"1,200 ft"', least=LOWEST_M, most=HIGHEST_M)
    return Place(
        name=fields.text("name"),
        elevation_m=elevation,
        latitude=fields.maybe_number("latitude", least=-90, most=90),
        longitude=fields.maybe_number("longitude", least=-180, most=180),
        dry_grass=_read_found(fields, "dry_grass"),
        clear_m=_read_distance(fields) if fields.has("clear") else None,
        water=_read_found(fields, "water"),
        shovel=_read_found(fields, "shovel"),
        metal_can=_read_found(fields, "metal_can"),
        enclosure=fields.choice("enclosure", Enclosure) if fields.has("enclosure") else None,
        children=_read_found(fields, "children"),
    )


def _read_found(fields: Fields, key: str) -> bool | None:
    """What somebody looked for and found or not; None where nobody looked."""
    return fields.flag(key, default=False) if fields.has(key) else None


def _read_distance(fields: Fields) -> float:
    return fields.quantity("clear", parse_length, '"15 ft"', least=0, most=FARTHEST_M)


def read_weather(fields: Fields, usual: Weather = _CALM) -> Weather:
    """The table [weather], or one of [[weather.hours]] that changes the weather before it, `usual`."""
    air = usual.air_c
    if fields.has("air"):
        air = fields.quantity("air", parse_temperature, '"72 F"', least=COLDEST_C, most=WARMEST_C)
    wind, gust = _read_speed(fields, "wind"), _read_speed(fields, "gust")
    usual_gust = usual.gust_mps if wind is None else wind
    return Weather(
        air_c=air,
        wind_mps=usual.wind_mps if wind is None else wind,
        gust_mps=usual_gust if gust is None else gust,
        humidity=fields.number("humidity", usual.humidity, least=0, most=1),
        sunny=fields.flag("sunny", default=usual.sunny),
    )


def read_hours(fields: Fields, clock: Clock, weather: Weather) -> tuple[WeatherFrom, ...]:
    """The tables [[weather.hours]], each a change of the weather before it."""
    hours: list[WeatherFrom] = []
    for table in fields.tables("hours", "weather.hours"):
        start = read_minute(table, "from", clock)
        if hours and start <= hours[-1].start and table.sound("from"):
            table.fault("from", "It is no later than the one before.", "Put them in the order of their times.")
        weather = read_weather(table, weather)
        hours.append(WeatherFrom(start, weather))
    return tuple(hours)


def read_minute(fields: Fields, key: str, clock: Clock) -> int:
    """A time that must be there, in minutes from the event's origin."""
    found = fields.value(key, '"18:00"')
    if found is None:
        return 0
    try:
        return clock.minute(found)
    except UnreadableTimeError as error:
        fields.fault(key, error.what, error.remedy)
        return 0


def read_fuel(fields: Fields) -> Fuel:
    """The table [fuel]."""
    kind = fields.choice("kind", FuelKind, FuelKind.BRIQUETTES) or FuelKind.BRIQUETTES
    return Fuel(kind=kind.value, coals=fields.maybe_whole("coals"))


def _read_speed(fields: Fields, key: str) -> float | None:
    if not fields.has(key):
        return None
    return fields.quantity(key, parse_speed, '"8 mph"', least=0, most=STRONGEST_MPS)


def _read_clock(fields: Fields) -> Clock:
    day = _read_date(fields)
    return Clock(_read_zone(fields), day or _STAND_IN_DAY, near_day=day is not None)


def _read_zone(fields: Fields) -> ZoneInfo:
    name = fields.value("timezone")
    if not isinstance(name, str) or not name.strip():
        return ZoneInfo(_STAND_IN_ZONE)
    try:
        return ZoneInfo(name.strip())
    except (ZoneInfoNotFoundError, ValueError, OSError):
        remedy = did_you_mean(name, sorted(zone for zone in available_timezones() if "/" in zone))
        fields.fault("timezone", f"{quoted(name)} is no IANA time zone.", remedy)
        return ZoneInfo(_STAND_IN_ZONE)


def _read_date(fields: Fields) -> date | None:
    found = fields.value("date", '"2027-06-12"')
    if found is None:
        return None
    if isinstance(found, date) and not isinstance(found, datetime):
        found = found.isoformat()
    if not isinstance(found, str):
        fields.fault("date", "It is not a date.", 'Write date = "2027-06-12".')
        return None
    try:
        return read_day(found)
    except UnreadableTimeError as error:
        fields.fault("date", error.what, error.remedy)
        return None
