"""What a new event is made from."""

from datetime import date
from typing import Any

from django import forms
from django.utils.translation import gettext_lazy as _

from cookout.core.eventfile.heading import LONGEST_NAME
from cookout.core.eventfile.menu import MOST_PEOPLE
from cookout.services.making import Blank
from cookout.web.forms.day import UNITS, check_day, day_input, read_zone, zone_input


class BlankForm(forms.Form):
    """A new event with nothing in it yet."""

    name = forms.CharField(
        label=_("What it is called"), max_length=LONGEST_NAME, widget=forms.TextInput(attrs={"autocomplete": "off"})
    )
    day = forms.DateField(label=_("Date"), widget=day_input())
    place = forms.CharField(label=_("Where"), max_length=200, widget=forms.TextInput(attrs={"autocomplete": "off"}))
    timezone = forms.CharField(
        label=_("Time zone"), max_length=64, widget=zone_input(), help_text=_("Type the nearest large town.")
    )
    units = forms.ChoiceField(label=_("Units"), choices=UNITS)
    at = forms.TimeField(
        label=_("First serving at"), required=False, widget=forms.TimeInput(format="%H:%M", attrs={"type": "time"})
    )
    people = forms.IntegerField(
        label=_("For how many people"), min_value=1, max_value=MOST_PEOPLE, required=False, help_text=_("Can wait.")
    )

    def __init__(self, data: Any = None, *, initial: dict[str, Any] | None = None) -> None:
        super().__init__(data, prefix="blank", label_suffix="", initial=initial)
        self.fields["timezone"].widget.attrs["data-time-zone"] = True

    def clean_day(self) -> date:
        """A day in the years that plans are made for."""
        day: date = self.cleaned_data["day"]
        return check_day(day)

    def clean_timezone(self) -> str:
        """A zone that there is."""
        return read_zone(self.cleaned_data["timezone"])

    def clean(self) -> dict[str, Any]:
        """A serving at a time is for somebody."""
        cleaned = super().clean() or {}
        if cleaned.get("at") and cleaned.get("people") is None and "people" not in self.errors:
            self.add_error("people", _("Say for how many people the first serving is, or leave its time empty."))
        return cleaned

    def blank(self) -> Blank:
        """What was typed."""
        return Blank(**self.cleaned_data)


class CopyForm(forms.Form):
    """An event or a template, to be made anew on another day."""

    source = forms.ChoiceField(label=_("Made from"))
    day = forms.DateField(label=_("On"), widget=day_input())
    name = forms.CharField(
        label=_("What it is called"),
        max_length=LONGEST_NAME,
        required=False,
        help_text=_("Empty: as before."),
        widget=forms.TextInput(attrs={"autocomplete": "off"}),
    )

    def __init__(self, sources: list[Any], data: Any = None, *, initial: dict[str, Any] | None = None) -> None:
        super().__init__(data, prefix="copy", label_suffix="", initial=initial)
        self.fields["source"].choices = sources  # type: ignore[attr-defined]

    def clean_day(self) -> date:
        """A day in the years that plans are made for."""
        day: date = self.cleaned_data["day"]
        return check_day(day)


class TemplateNameForm(forms.Form):
    """What a template is called."""

    name = forms.CharField(max_length=200)
