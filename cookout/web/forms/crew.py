"""Helpers: what they can, when they are there, what they may do."""

from typing import Any

from django import forms
from django.utils.translation import gettext_lazy as _

from cookout.core.kitchen.recipe import Skill
from cookout.core.planning.event import Event, Helper, HelperId, Window
from cookout.services.crew import proposed_hours, wanted_skills
from cookout.web.forms.fields import StretchField
from cookout.web.forms.parts import PartForm

MOST_STRETCHES = 30
HOT_MINUTES = 60


class SkillsForm(forms.Form):
    """What somebody can do and may do; shared by helpers and the address book."""

    name = forms.CharField(
        label=_("Name"),
        max_length=120,
        widget=forms.TextInput(attrs={"autocomplete": "off", "autocapitalize": "words"}),
    )
    contact = forms.CharField(
        label=_("How to reach them"),
        max_length=254,
        required=False,
        help_text=_("A telephone number or an address, for the planners alone."),
        widget=forms.TextInput(attrs={"autocomplete": "off"}),
    )
    skills = forms.MultipleChoiceField(
        label=_("Can do"), required=False, widget=forms.CheckboxSelectMultiple(attrs={"class": "chips"})
    )
    more_skills = forms.CharField(
        label=_("Other skills"),
        max_length=300,
        required=False,
        help_text=_("In words of your own, with commas between."),
        widget=forms.TextInput(attrs={"autocomplete": "off", "autocapitalize": "off"}),
    )
    adult = forms.BooleanField(label=_("Adult"), required=False)
    fire_allowed = forms.BooleanField(
        label=_("May tend fire though not an adult"),
        required=False,
        help_text=_("Fire and hot iron go to adults, and to those whom you name here. No standard gives an age."),
    )
    hot_stretch_minutes = forms.IntegerField(
        label=_("Longest time at hot work, minutes"), min_value=1, max_value=24 * 60, required=False
    )

    def offer(self, skills: list[str], chosen: frozenset[Any]) -> None:
        """The skills that can be ticked, with those that are there already."""
        names = sorted({*skills, *map(str, chosen)})
        self.fields["skills"].choices = [(name, name) for name in names]  # type: ignore[attr-defined]

    def clean_more_skills(self) -> frozenset[Skill]:
        """Words of one's own, in small letters as recipes write them."""
        words = (word.strip().lower() for word in self.cleaned_data["more_skills"].split(","))
        return frozenset(Skill(word) for word in words if word)

    @property
    def all_skills(self) -> frozenset[Skill]:
        """What is ticked and what is written."""
        more: frozenset[Skill] = self.cleaned_data["more_skills"]
        return frozenset(map(Skill, self.cleaned_data["skills"])) | more


class HelperForm(SkillsForm, PartForm):
    """One of the crew, with one or more stretches of hours, the last one empty for another."""

    do = "helper"
    table = "crew"
    keys = {"windows": "stretch_0"}  # noqa: RUF012

    def fill(self) -> None:
        """The skills that recipes ask for, and a row for each stretch."""
        helper = self._stored_helper()
        self.offer(wanted_skills(self.event), helper.skills if helper else frozenset())
        for number in range(self._rows(helper)):
            words = _("There") if number == 0 else _("and there again")
            self.fields[f"stretch_{number}"] = StretchField(label=words, required=False)

    def shown(self, value: Helper | None) -> dict[str, Any]:
        """A new helper is proposed to be there from before the first serving until after the last."""
        windows = (proposed_hours(self.event),) if value is None else value.windows
        found: dict[str, Any] = {"adult": True, "hot_stretch_minutes": HOT_MINUTES}
        if value is not None:
            found = {
                "name": value.name,
                "contact": value.contact,
                "skills": sorted(value.skills),
                "adult": value.adult,
                "fire_allowed": value.fire_allowed,
                "hot_stretch_minutes": value.hot_stretch_minutes,
            }
        for number, field in enumerate(self.stretches):
            found[field] = self._hold(field, windows[number] if number < len(windows) else None)
        return found

    @property
    def stretches(self) -> list[str]:
        """The names of the fields for hours."""
        return [name for name in self.fields if name.startswith("stretch_")]

    @property
    def stretch_fields(self) -> list[forms.BoundField]:
        """The same to be drawn."""
        return [self[name] for name in self.stretches]

    def clean(self) -> dict[str, Any]:
        """Somebody is there at some time."""
        cleaned = super().clean() or {}
        if not self.errors and not any(cleaned.get(name) for name in self.stretches):
            self.add_error("stretch_0", _("Say when they are there: a day, from when, until when."))
        return cleaned

    def helper(self, helper_id: HelperId) -> Helper:
        """What was typed."""
        given = self.cleaned_data
        windows: list[Window] = [given[name] for name in self.stretches if given.get(name)]
        return Helper(
            id=helper_id,
            name=given["name"],
            skills=self.all_skills,
            windows=tuple(windows),
            adult=given["adult"],
            fire_allowed=given["fire_allowed"],
            hot_stretch_minutes=given["hot_stretch_minutes"] or HOT_MINUTES,
            contact=given["contact"],
        )

    def _hold(self, field: str, window: Window | None) -> Any:
        stretch: Any = self.fields[field]
        return stretch.hold(self.event, window)

    def _rows(self, helper: Helper | None) -> int:
        sent = 0
        while self.is_bound and sent < MOST_STRETCHES and self.add_prefix(f"stretch_{sent}") + "_0" in self.data:
            sent += 1
        return max(sent, 1 if helper is None else len(helper.windows) + 1)

    def _stored_helper(self) -> Helper | None:
        return next((each for each in self.event.crew if each.id == self.part[1]), None)


class FromBookForm(forms.Form):
    """People of the address book who come to the event, all with the same hours to begin with."""

    people = forms.MultipleChoiceField(
        label=_("Who comes"),
        widget=forms.CheckboxSelectMultiple(attrs={"class": "chips"}),
        error_messages={"required": _("Tick whoever comes.")},
    )
    hours = StretchField(label=_("There"))

    def __init__(self, event: Event, people: list[tuple[str, str]], data: Any = None) -> None:
        super().__init__(data, prefix="book", label_suffix="")
        self.fields["people"].choices = people  # type: ignore[attr-defined]
        hours: Any = self.fields["hours"]
        self.initial = {"hours": hours.hold(event, proposed_hours(event))}
