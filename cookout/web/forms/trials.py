"""What is to be tried: a kind of change and what it takes, as a suggestion or a small form sends it."""

from collections.abc import Callable, Mapping
from typing import Any

from django import forms
from django.utils.translation import gettext_lazy as _

from cookout.core.errors import CookoutError
from cookout.core.planning.changes import Change
from cookout.core.planning.event import Event
from cookout.core.planning.whatif import OFFERED
from cookout.core.quantities import parse_speed, parse_temperature

MOST = 100_000


class _TrialForm(forms.Form):
    """Base: `change()` after it proved valid is what is to be tried."""

    kind = ""

    def __init__(self, event: Event, data: Mapping[str, Any] | None = None) -> None:
        super().__init__(data, auto_id=f"{self.kind}-%s")
        self.event = event
        self.fill()

    def fill(self) -> None:
        """Set what can be chosen, by the event."""

    def change(self) -> Change:
        """What is to be tried."""
        given = {key: value for key, value in self.cleaned_data.items() if value not in (None, "")}
        return OFFERED[self.kind](**given)

    def quantity(self, name: str, parse: Callable[[str], float], example: str) -> str:
        """A quantity with its unit, as it was typed."""
        typed = str(self.cleaned_data[name])
        try:
            parse(typed)
        except CookoutError as error:
            raise forms.ValidationError(f"{error} {example}") from error
        return typed


class MorePeopleForm(_TrialForm):
    """More guests, or fewer."""

    kind = "more_people"
    title = _("More or fewer guests")
    count = forms.IntegerField(label=_("How many more (fewer: with a minus)"), min_value=-MOST, max_value=MOST)
    serving = forms.ChoiceField(label=_("At which serving"), required=False)

    def fill(self) -> None:
        """The servings."""
        servings = [(each.id, each.name) for each in self.event.servings]
        self.fields["serving"].choices = [("", _("every one")), *servings]  # type: ignore[attr-defined]

    def clean_count(self) -> int:
        """Nobody more is nothing to try."""
        count = int(self.cleaned_data["count"])
        if count == 0:
            raise forms.ValidationError(_("Nobody more changes nothing. Write how many, such as 20 or -10."))
        return count


class FewerHelpersForm(_TrialForm):
    """Somebody stays away."""

    kind = "remove_helper"
    title = _("Somebody stays away")
    helper = forms.ChoiceField(label=_("Who"))

    def fill(self) -> None:
        """The crew."""
        self.fields["helper"].choices = [(each.id, each.name) for each in self.event.crew]  # type: ignore[attr-defined]


class MoreGearForm(_TrialForm):
    """More of some gear."""

    kind = "add_gear"
    title = _("More gear")
    gear = forms.ChoiceField(label=_("Of what"))
    count = forms.IntegerField(label=_("How many more"), min_value=1, max_value=50, initial=1)

    def fill(self) -> None:
        """The gear."""
        self.fields["gear"].choices = [(each.id, each.name) for each in self.event.gear]  # type: ignore[attr-defined]


class FewerGearForm(MoreGearForm):
    """Less of some gear."""

    kind = "remove_gear"
    title = _("Gear that breaks or stays at home")
    count = forms.IntegerField(label=_("How many fewer"), min_value=1, max_value=50, initial=1)


class ServeAtForm(_TrialForm):
    """Serving earlier or later."""

    kind = "move_servings"
    title = _("Serve earlier or later")
    minutes = forms.IntegerField(
        label=_("Minutes later (earlier: with a minus)"), min_value=-1440, max_value=1440, initial=-30
    )

    def clean_minutes(self) -> int:
        """No minutes are nothing to try."""
        minutes = int(self.cleaned_data["minutes"])
        if minutes == 0:
            raise forms.ValidationError(_("0 minutes change nothing. Write how many, such as -30 or 15."))
        return minutes


class WindForm(_TrialForm):
    """Another wind."""

    kind = "set_wind"
    title = _("Wind")
    wind = forms.CharField(label=_("Mean wind, with its unit"), max_length=30, initial="20 mph")

    def clean_wind(self) -> str:
        """A speed."""
        return self.quantity("wind", parse_speed, "")


class AirForm(_TrialForm):
    """Warmer or colder air."""

    kind = "set_air"
    title = _("Air")
    air = forms.CharField(label=_("Air in the shade, with its unit"), max_length=30, initial="95 F")

    def clean_air(self) -> str:
        """A temperature."""
        return self.quantity("air", parse_temperature, "")


FORMS: dict[str, type[_TrialForm]] = {
    form.kind: form
    for form in (MorePeopleForm, FewerHelpersForm, MoreGearForm, FewerGearForm, ServeAtForm, WindForm, AirForm)
}


def empty_forms(event: Event) -> list[_TrialForm]:
    """Every form that has something to choose, unfilled."""
    return [form(event) for form in FORMS.values() if _has_choices(form, event)]


def _has_choices(form: type[_TrialForm], event: Event) -> bool:
    needs = {"remove_helper": event.crew, "add_gear": event.gear, "remove_gear": event.gear}
    return bool(needs.get(form.kind, event.servings))
