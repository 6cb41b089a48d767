"""The day: when and where, fire, weather, food rules. One form a part, each saved by itself."""

from dataclasses import replace
from datetime import date, datetime
from typing import Any
from zoneinfo import ZoneInfo, available_timezones

from django import forms
from django.utils.translation import gettext_lazy as _

from cookout.core.eventfile.clock import YEARS
from cookout.core.eventfile.fields import DAY_MINUTES
from cookout.core.eventfile.heading import (
    COLDEST_C,
    FARTHEST_M,
    HIGHEST_M,
    LONGEST_NAME,
    LOWEST_M,
    STRONGEST_MPS,
    WARMEST_C,
)
from cookout.core.fire.weather import Weather
from cookout.core.planning.event import Place, Switches, WeatherFrom
from cookout.core.safety.site import Enclosure
from cookout.web.forms.fields import DAY_INPUT, MomentField, QuantityField, within
from cookout.web.forms.parts import PartForm

MOST_CHANGES = 48
UNITS = [("us", _("US customary (°F, in, lb)")), ("metric", _("metric (°C, cm, kg)"))]
YES_NO = [("", _("nobody looked")), ("yes", _("yes")), ("no", _("no"))]
NOBODY_SAID = [("", _("nobody said")), ("yes", _("yes")), ("no", _("no"))]
ENCLOSURES = [
    ("", _("nobody looked")),
    (Enclosure.OPEN.value, _("open air")),
    (Enclosure.OPEN_SHELTER.value, _("a roof with open sides")),
    (Enclosure.TENT.value, _("a tent")),
    (Enclosure.CABIN.value, _("a cabin")),
    (Enclosure.VEHICLE.value, _("a vehicle")),
    (Enclosure.ENCLOSED.value, _("closed walls")),
]
_FOUND = ("dry_grass", "water", "shovel", "metal_can", "children")
_FLAG = {None: "", True: "yes", False: "no"}
_FROM_FLAG = {"": None, "yes": True, "no": False}


def zone_names() -> list[str]:
    """The time zones that can be chosen."""
    return sorted(name for name in available_timezones() if "/" in name and not name.startswith(("Etc/", "posix/")))


def read_zone(name: str) -> str:
    """The name of a time zone, of which the town is enough; a name that there is not is refused."""
    typed = name.strip()
    if typed in available_timezones():
        return typed
    found = zones_called(typed)
    if len(found) > 1:
        words = _("Several time zones are called so: %(zones)s. Write one of them.")
        raise forms.ValidationError(words % {"zones": ", ".join(found)})
    if not found:
        raise forms.ValidationError(_("There is no such time zone. Write it as America/Denver; the list helps."))
    return found[0]


def zones_called(typed: str) -> list[str]:
    """The time zones with that name, or with that town at its end, in whatever letters."""
    wanted = "_".join(typed.casefold().split())
    return [zone for zone in zone_names() if wanted in (zone.casefold(), zone.casefold().rpartition("/")[2])]


def day_input() -> forms.DateInput:
    """A field that asks for a day."""
    return forms.DateInput(format=DAY_INPUT, attrs={"type": "date"})


def zone_input() -> forms.TextInput:
    """A field that searches the list of time zones as one types."""
    return forms.TextInput(
        attrs={"list": "time-zones", "autocomplete": "off", "autocapitalize": "off", "spellcheck": "false"}
    )


class HeadingForm(PartForm):
    """What it is called, and when."""

    do = "heading"
    table = "event"
    keys = {"date": "day"}  # noqa: RUF012

    name = forms.CharField(
        label=_("Name"), max_length=LONGEST_NAME, widget=forms.TextInput(attrs={"autocomplete": "off"})
    )
    day = forms.DateField(label=_("Date"), widget=day_input(), help_text=_("Every time of the event moves along."))
    timezone = forms.CharField(label=_("Time zone"), max_length=64, widget=zone_input())
    units = forms.ChoiceField(label=_("Units of the event"), choices=UNITS)
    setup_minutes = forms.IntegerField(
        label=_("Minutes to set up"),
        min_value=1,
        max_value=DAY_MINUTES,
        help_text=_("Tables, water and shovel, before the first fire."),
    )
    break_minutes = forms.IntegerField(
        label=_("Minutes of a break"),
        min_value=0,
        max_value=DAY_MINUTES,
        help_text=_("Rest that ends a stretch of hot work."),
    )

    def shown(self, value: dict[str, Any]) -> dict[str, Any]:
        """The heading as it is."""
        origin: datetime = value["origin"]
        names = ("name", "timezone", "units", "setup_minutes", "break_minutes")
        day = origin.astimezone(ZoneInfo(value["timezone"])).date()
        return {**{name: value[name] for name in names}, "day": day}

    def clean_timezone(self) -> str:
        """A zone that there is."""
        return read_zone(self.cleaned_data["timezone"])

    def clean_day(self) -> date:
        """A day in the years that plans are made for."""
        day: date = self.cleaned_data["day"]
        return check_day(day)


def check_day(day: date) -> date:
    """A day in the years that plans are made for."""
    if day.year not in YEARS:
        words = _("Write a year from %(first)d to %(last)d.") % {"first": YEARS.start, "last": YEARS.stop - 1}
        raise forms.ValidationError(words)
    return day


class PlaceForm(PartForm):
    """Where it is, and what burns there."""

    do = "place"
    table = "place"
    keys = {"elevation": "elevation_m", "clear": "clear_m"}  # noqa: RUF012

    name = forms.CharField(label=_("Place"), max_length=200, widget=forms.TextInput(attrs={"autocomplete": "off"}))
    elevation_m = QuantityField(
        "elevation", label=_("Elevation"), required=False, help_text=_("Such as 1,200 ft or 366 m.")
    )
    latitude = forms.FloatField(
        label=_("Latitude"), min_value=-90, max_value=90, required=False, help_text=_("Degrees, north positive.")
    )
    longitude = forms.FloatField(
        label=_("Longitude"), min_value=-180, max_value=180, required=False, help_text=_("Degrees, east positive.")
    )
    clear_m = QuantityField(
        "distance",
        label=_("Nearest thing that burns"),
        required=False,
        help_text=_("Its distance from the fire, such as 15 ft or 5 m. Empty: nobody looked."),
    )
    dry_grass = forms.ChoiceField(label=_("Dry grass or leaves around the fire"), choices=YES_NO, required=False)
    enclosure = forms.ChoiceField(
        label=_("What stands around the fire"),
        choices=ENCLOSURES,
        required=False,
        help_text=_("Coals give off carbon monoxide: never in a tent, a vehicle or a closed room."),
    )
    water = forms.ChoiceField(label=_("Water by the fire"), choices=YES_NO, required=False)
    shovel = forms.ChoiceField(label=_("A shovel by the fire"), choices=YES_NO, required=False)
    metal_can = forms.ChoiceField(label=_("A lidded metal can for the ash"), choices=YES_NO, required=False)
    children = forms.ChoiceField(label=_("Children will be there"), choices=NOBODY_SAID, required=False)

    def shown(self, value: dict[str, Place]) -> dict[str, Any]:
        """The place as it is."""
        place = value["place"]
        fields: dict[str, Any] = self.fields
        return {
            "name": place.name,
            "elevation_m": fields["elevation_m"].hold(place.elevation_m, self.reader_units),
            "latitude": place.latitude,
            "longitude": place.longitude,
            "clear_m": fields["clear_m"].hold(place.clear_m, self.reader_units),
            "enclosure": "" if place.enclosure is None else place.enclosure.value,
            **{name: _FLAG[getattr(place, name)] for name in _FOUND},
        }

    def clean_elevation_m(self) -> float:
        """The elevation; sea level where none is given."""
        words = _("Elevations are from 1,600 ft (500 m) below the sea to 19,700 ft (6,000 m). Check number and unit.")
        found = within(self.cleaned_data["elevation_m"], LOWEST_M, HIGHEST_M, words)
        return 0.0 if found is None else found

    def clean_clear_m(self) -> float | None:
        """The distance, if somebody looked."""
        words = _("Write a distance of at most 3,280 ft (1,000 m). Check number and unit.")
        return within(self.cleaned_data["clear_m"], 0, FARTHEST_M, words)

    def place(self, stored: Place) -> Place:
        """What was typed, on the place as it was."""
        given = {key: value for key, value in self.cleaned_data.items() if key != "was"}
        found = {name: _FROM_FLAG[given[name]] for name in _FOUND}
        enclosure = Enclosure(given["enclosure"]) if given["enclosure"] else None
        return replace(stored, **{**given, **found, "enclosure": enclosure})


class FireForm(PartForm):
    """The organiser's own limits for fire, and what authorities have said."""

    do = "fire"
    table = "event"
    keys = {"wind_limit": "wind_limit_mps"}  # noqa: RUF012

    wind_limit_mps = QuantityField(
        "speed",
        label=_("No fire above a wind of"),
        required=False,
        help_text=_("Your own limit, such as 18 mph or 8 m/s. No standard gives one; local rules come first."),
    )
    fire_warning = forms.CharField(
        label=_("Fire warning in force"),
        max_length=2000,
        required=False,
        help_text=_("Word for word as the authorities issued it."),
    )
    use_models = forms.BooleanField(
        label=_("Coals and minutes by the heat model"),
        required=False,
        help_text=_("Off: by the chart and the recipes alone."),
    )
    altitude_advice = forms.BooleanField(label=_("Show what the elevation changes in recipes"), required=False)

    def shown(self, value: dict[str, Any]) -> dict[str, Any]:
        """The limits as they are."""
        wind: Any = self.fields["wind_limit_mps"]
        return {
            "wind_limit_mps": wind.hold(value["wind_limit_mps"], self.reader_units),
            "fire_warning": value["fire_warning"],
            "use_models": value["switches"].use_models,
            "altitude_advice": value["switches"].altitude_advice,
        }

    def clean_wind_limit_mps(self) -> float | None:
        """A wind that there is."""
        return within(self.cleaned_data["wind_limit_mps"], 0, STRONGEST_MPS, TOO_STRONG)

    def clean_fire_warning(self) -> str:
        """On one line, as the event file has it."""
        return " ".join(self.cleaned_data["fire_warning"].split())

    def heading(self) -> dict[str, Any]:
        """What was typed, as fields of the heading."""
        given = self.cleaned_data
        return {
            "wind_limit_mps": given["wind_limit_mps"],
            "fire_warning": given["fire_warning"],
            "switches": Switches(given["use_models"], given["altitude_advice"]),
        }


TOO_STRONG = _("No wind is above 268 mph (120 m/s). Check number and unit.")
NO_AIR = _("Air is between -76 F (-60 C) and 140 F (60 C). Check number and unit.")


class WeatherForm(PartForm):
    """The weather that is expected, and its changes through the day, the last row empty for another.

    An empty field of a change means as before it.
    """

    do = "weather"
    table = "weather"

    def fill(self) -> None:
        """The weather to begin with, and a row for each change."""
        for number in range(self._rows()):
            words = "" if number == 0 else f"_{number}"
            if number:
                self.fields[f"from{words}"] = MomentField(label=_("From"), required=False)
            self.fields[f"air{words}"] = QuantityField("temperature", label=_("Air in the shade"), required=False)
            self.fields[f"wind{words}"] = QuantityField("speed", label=_("Mean wind"), required=False)
            self.fields[f"gust{words}"] = QuantityField("speed", label=_("Gusts"), required=False)
            self.fields[f"humidity{words}"] = forms.IntegerField(
                label=_("Humidity, %"), min_value=0, max_value=100, required=False
            )
            self.fields[f"sunny{words}"] = forms.BooleanField(label=_("Ovens in the sun"), required=False)

    def shown(self, value: dict[str, Any]) -> dict[str, Any]:
        """The weather as it is; a new change is proposed with the sun as it was last."""
        hours: tuple[WeatherFrom, ...] = value["hours"]
        found = self._shown_weather("", value["weather"])
        for number in range(1, self.row_count):
            hour = hours[number - 1] if number <= len(hours) else None
            start: Any = self.fields[f"from_{number}"]
            found[f"from_{number}"] = start.hold(self.event, hour.start if hour else None)
            if hour:
                found |= self._shown_weather(f"_{number}", hour.weather)
        return found

    @property
    def row_count(self) -> int:
        """How many rows there are, the first weather included."""
        return sum(name.startswith("air") for name in self.fields)

    @property
    def rows(self) -> list[list[forms.BoundField]]:
        """The fields of each row."""
        suffixes = ["" if number == 0 else f"_{number}" for number in range(self.row_count)]
        names = ("from", "air", "wind", "gust", "humidity", "sunny")
        return [[self[name + each] for name in names if name + each in self.fields] for each in suffixes]

    def clean(self) -> dict[str, Any]:
        """Ranges, and changes in the order of their times."""
        cleaned = super().clean() or {}
        for name in list(cleaned):
            if name.startswith("air"):
                self._refuse(name, COLDEST_C, WARMEST_C, NO_AIR)
            elif name.startswith(("wind", "gust")):
                self._refuse(name, 0, STRONGEST_MPS, TOO_STRONG)
        for number in range(1, self.row_count):
            self._refuse_lost_row(number)
        self._refuse_disorder()
        return cleaned

    def weather(self) -> dict[str, Any]:
        """What was typed: the weather, and its changes."""
        first = last = self._weather_of("", Weather())
        hours = []
        for number in range(1, self.row_count):
            start = self.cleaned_data.get(f"from_{number}")
            if start is not None:
                last = self._weather_of(f"_{number}", last)
                hours.append(WeatherFrom(start, last))
        return {"weather": first, "hours": tuple(hours)}

    def _weather_of(self, suffix: str, before: Weather) -> Weather:
        given = {name: self.cleaned_data.get(f"{name}{suffix}") for name in ("air", "wind", "gust", "humidity")}
        wind = before.wind_mps if given["wind"] is None else given["wind"]
        usual_gust = before.gust_mps if given["wind"] is None else wind
        return Weather(
            air_c=before.air_c if given["air"] is None else given["air"],
            wind_mps=wind,
            gust_mps=usual_gust if given["gust"] is None else given["gust"],
            humidity=before.humidity if given["humidity"] is None else self._humidity(suffix, given["humidity"]),
            sunny=bool(self.cleaned_data.get(f"sunny{suffix}")),
        )

    def _humidity(self, suffix: str, percent: int) -> float:
        """The stored share where the per cent that show it were left alone."""
        value = self._weathers().get(suffix)
        return value.humidity if value is not None and round(value.humidity * 100) == percent else percent / 100

    def _weathers(self) -> dict[str, Weather]:
        found = {f"_{number}": hour.weather for number, hour in enumerate(self.event.hours, 1)}
        return {"": self.event.weather, **found}

    def _shown_weather(self, suffix: str, weather: Weather) -> dict[str, Any]:
        fields: dict[str, Any] = self.fields
        return {
            f"air{suffix}": fields[f"air{suffix}"].hold(weather.air_c, self.reader_units),
            f"wind{suffix}": fields[f"wind{suffix}"].hold(weather.wind_mps, self.reader_units),
            f"gust{suffix}": fields[f"gust{suffix}"].hold(weather.gust_mps, self.reader_units),
            f"humidity{suffix}": round(weather.humidity * 100),
            f"sunny{suffix}": weather.sunny,
        }

    def _refuse(self, name: str, least: float, most: float, words: Any) -> None:
        value = self.cleaned_data[name]
        if value is not None and not least <= value <= most:
            self.add_error(name, words)

    def _refuse_lost_row(self, number: int) -> None:
        """A change without a time would be lost."""
        typed = [self.cleaned_data.get(f"{name}_{number}") for name in ("air", "wind", "gust", "humidity")]
        name = f"from_{number}"
        if name not in self.errors and self.cleaned_data.get(name) is None and any(each is not None for each in typed):
            self.add_error(name, _("Say from when, or empty the row to take this change out."))

    def _refuse_disorder(self) -> None:
        last = None
        for number in range(1, self.row_count):
            start = self.cleaned_data.get(f"from_{number}")
            if start is not None and last is not None and start <= last:
                self.add_error(f"from_{number}", _("This is no later than the change before. Put them in order."))
            last = last if start is None else start

    def _rows(self) -> int:
        sent = 1
        while self.is_bound and sent < MOST_CHANGES and self.add_prefix(f"from_{sent}") + "_0" in self.data:
            sent += 1
        return max(sent, len(self.event.hours) + 2)
