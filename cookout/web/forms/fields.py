"""Fields that people type as they say things: quantities with their unit, times with their day.

A field that `holds` a stored value shows it rounded, in the reader's units; left as it is, it gives back the stored
value itself, so that a save changes nothing that nobody touched.
"""

import re
from collections.abc import Callable
from datetime import datetime, timedelta
from typing import Any
from zoneinfo import ZoneInfo

from django import forms
from django.utils.translation import gettext_lazy as _

from cookout.core.errors import QuantityError
from cookout.core.eventfile.clock import Clock, UnreadableTimeError
from cookout.core.planning.event import Event, Window
from cookout.core.planning.wording import moment
from cookout.core.quantities import (
    METRES_IN_FOOT,
    Units,
    parse_elevation,
    parse_inches,
    parse_length,
    parse_mass,
    parse_speed,
    parse_temperature,
    show_elevation,
    show_inches,
    show_length,
    show_mass,
    show_speed,
    show_temperature,
)

DAY_INPUT = "%Y-%m-%d"
TIME_INPUT = "%H:%M"


def show_distance(metres: float, units: str) -> str:
    """A distance on the ground: ``15 ft`` or ``4.6 m``."""
    return f"{metres / METRES_IN_FOOT:.0f} ft" if Units(units) is Units.US else f"{metres:.1f} m"


BARE_UNITS: dict[str, tuple[str, str]] = {
    "temperature": ("F", "C"),
    "speed": ("mph", "m/s"),
    "elevation": ("ft", "m"),
    "distance": ("ft", "m"),
}
"""The unit of a number that stands alone: US customary, metric; sizes and weights of iron always need theirs."""

_BARE = re.compile(r"[-+]?\d[\d.,]*")


class QuantityField(forms.CharField):
    """A number with its unit, in whatever unit the reader likes; the clean value is in the program's own unit."""

    parse: Callable[[str], float]
    show: Callable[[float, str], str]

    def __init__(self, kind: str, **kwargs: Any) -> None:
        kwargs.setdefault("max_length", 30)
        super().__init__(**kwargs)
        self.kind = kind
        self.parse, self.show = KINDS[kind]
        self.held: tuple[str, float | None] = ("", None)
        self.bare_unit = ""
        self.widget.attrs.update(inputmode="text", autocomplete="off", spellcheck="false")

    def hold(self, value: float | None, units: str) -> str:
        """Remember the stored value, and give the text that shows it."""
        shown = "" if value is None else self.show(value, units)
        self.held = (shown, value)
        return shown

    def read_bare_in(self, units: str) -> None:
        """Read a number without a unit in those units, and say so beside the field."""
        if self.kind in BARE_UNITS:
            customary, metric = BARE_UNITS[self.kind]
            self.bare_unit = customary if Units(units) is Units.US else metric
            told = _("A number alone is in %(unit)s.") % {"unit": self.bare_unit}
            self.help_text = f"{self.help_text} {told}" if self.help_text else told

    def clean(self, value: Any) -> Any:
        """The value in the program's own unit; None where nothing is typed."""
        typed = super().clean(value).strip()
        if not typed:
            return None
        if typed == self.held[0]:
            return self.held[1]
        if self.bare_unit and _BARE.fullmatch(typed):
            typed = f"{typed} {self.bare_unit}"
        try:
            return self.parse(typed)
        except QuantityError as error:
            raise forms.ValidationError(str(error)) from error


KINDS: dict[str, tuple[Callable[[str], float], Callable[..., str]]] = {
    "temperature": (parse_temperature, show_temperature),
    "speed": (parse_speed, show_speed),
    "elevation": (parse_elevation, show_elevation),
    "distance": (parse_length, show_distance),
    "length": (parse_length, show_length),
    "inches": (parse_inches, show_inches),
    "mass": (parse_mass, show_mass),
}


class MomentWidget(forms.MultiWidget):
    """A day and a time beside each other."""

    template_name = "cookout/parts/moment.html"
    use_fieldset = True

    def __init__(self) -> None:
        day = forms.DateInput(format=DAY_INPUT, attrs={"type": "date", "aria-label": _("Day")})
        time = forms.TimeInput(format=TIME_INPUT, attrs={"type": "time", "aria-label": _("Time")})
        super().__init__((day, time))

    def decompress(self, value: datetime | None) -> list[Any]:
        """The day and the time of a moment."""
        return [None, None] if value is None else [value.date(), value.time()]

    def id_for_label(self, id_: str) -> str:  # noqa: ARG002  (Django calls it so)
        """A fieldset has a legend and no label."""
        return ""


class MomentField(forms.MultiValueField):
    """A moment by the event's own clock; the clean value is the event's minute, None where nothing is given."""

    widget = MomentWidget

    def __init__(self, **kwargs: Any) -> None:
        parts = (
            forms.DateField(error_messages={"incomplete": _("Say on which day.")}),
            forms.TimeField(error_messages={"incomplete": _("Say at what time.")}),
        )
        super().__init__(fields=parts, **kwargs)
        self.clock: Clock | None = None
        self.held: tuple[datetime | None, int | None] = (None, None)

    def hold(self, event: Event, minute: int | None) -> datetime | None:
        """Read by the event's clock; give the moment that shows the stored minute."""
        self.clock = clock_of(event)
        at = None if minute is None else moment(event, minute)
        self.held = (None if at is None else at.replace(tzinfo=None, fold=0), minute)
        return at

    def compress(self, data_list: list[Any]) -> int | None:
        """The minute."""
        if not data_list or self.clock is None:
            return None
        day, time = data_list
        if day is None or time is None:
            raise forms.ValidationError(_("Say on which day.") if day is None else _("Say at what time."))
        if datetime.combine(day, time) == self.held[0]:
            return self.held[1]
        try:
            return self.clock.minute(f"{day} {time:%H:%M}")
        except UnreadableTimeError as error:
            raise forms.ValidationError(str(error)) from error


class StretchWidget(forms.MultiWidget):
    """A day, and from when until when."""

    template_name = "cookout/parts/stretch.html"
    use_fieldset = True

    def __init__(self) -> None:
        day = forms.DateInput(format=DAY_INPUT, attrs={"type": "date", "aria-label": _("Day")})
        start = forms.TimeInput(format=TIME_INPUT, attrs={"type": "time", "aria-label": _("From")})
        end = forms.TimeInput(format=TIME_INPUT, attrs={"type": "time", "aria-label": _("Until")})
        super().__init__((day, start, end))

    def decompress(self, value: list[Any] | None) -> list[Any]:
        """The day, the beginning and the end."""
        return value or [None] * 3

    def id_for_label(self, id_: str) -> str:  # noqa: ARG002  (Django calls it so)
        """A fieldset has a legend and no label."""
        return ""


class StretchField(forms.MultiValueField):
    """A stretch of time by the event's clock; one that ends no later than it begins ends on the next day."""

    widget = StretchWidget

    def __init__(self, **kwargs: Any) -> None:
        parts = (
            forms.DateField(error_messages={"incomplete": _("Say on which day.")}),
            forms.TimeField(error_messages={"incomplete": _("Say from when.")}),
            forms.TimeField(error_messages={"incomplete": _("Say until when.")}),
        )
        super().__init__(fields=parts, require_all_fields=False, **kwargs)
        self.clock: Clock | None = None
        self.held: tuple[list[Any], Window | None] = ([], None)

    def hold(self, event: Event, window: Window | None) -> list[Any] | None:
        """Read by the event's clock; give the day and the times that show the stored stretch."""
        self.clock = clock_of(event)
        if window is None:
            return None
        start, end = moment(event, window.start), moment(event, window.end)
        shown = [start.date(), start.time(), end.time()]
        self.held = (shown, window)
        return shown

    def clean(self, value: Any) -> Any:
        """Nothing at all, or a day alone as it is proposed, is no stretch."""
        if value and not any(value[1:]):
            return None
        return super().clean(value)

    def compress(self, data_list: list[Any]) -> Window | None:
        """The stretch in minutes of the event."""
        if not data_list or self.clock is None:
            return None
        if data_list == self.held[0]:
            return self.held[1]
        day, start, end = data_list
        last = day if end > start else day + timedelta(days=1)
        try:
            return self.clock.window(f"{day} {start:%H:%M} - {last} {end:%H:%M}")
        except UnreadableTimeError as error:
            raise forms.ValidationError(str(error)) from error


def clock_of(event: Event) -> Clock:
    """The clock that the event's times are read by."""
    zone = ZoneInfo(event.timezone)
    return Clock(zone, event.origin.astimezone(zone).date())


def within(value: float | None, least: float, most: float, words: Any) -> float | None:
    """The value, if it is in that range; None stays None."""
    if value is not None and not least <= value <= most:
        raise forms.ValidationError(words)
    return value
