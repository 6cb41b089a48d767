"""Servings and dishes."""

from typing import Any
from uuid import UUID

from django import forms
from django.utils.translation import gettext_lazy as _

from cookout.core.eventfile.menu import MOST_PEOPLE
from cookout.core.kitchen.replacement import Swap
from cookout.core.planning.event import Dish, Serving, ServingId
from cookout.web.forms.fields import MomentField
from cookout.web.forms.parts import PartForm

DAY = 24 * 60
BOX = "box:"
"""Before the id of a recipe in the user's box, where those of the event stand in the same list."""
STARTER = "starter:"
"""The same before the name of a recipe that comes with the program."""


class ServingForm(PartForm):
    """When food is on the table, for how many."""

    do = "serving"
    table = "servings"

    name = forms.CharField(
        label=_("Name"),
        max_length=200,
        widget=forms.TextInput(attrs={"placeholder": _("Supper"), "autocomplete": "off"}),
    )
    at = MomentField(label=_("On the table at"))
    people = forms.IntegerField(label=_("People"), min_value=1, max_value=MOST_PEOPLE)
    early = forms.IntegerField(label=_("Minutes early at most"), min_value=0, max_value=DAY, required=False)
    late = forms.IntegerField(
        label=_("Minutes late at most"),
        min_value=0,
        max_value=DAY,
        required=False,
        help_text=_("A plan that is later than this is no plan."),
    )

    def shown(self, value: Serving | None) -> dict[str, Any]:
        """A new serving is proposed for six in the evening of the event's day."""
        at: Any = self.fields["at"]
        if value is None:
            moment = at.hold(self.event, 18 * 60)
            return {"name": "", "at": moment, "people": None, "early": 10, "late": 10}
        return {
            "name": value.name,
            "at": at.hold(self.event, value.at),
            "people": value.people,
            "early": value.early,
            "late": value.late,
        }

    def serving(self, serving_id: ServingId) -> Serving:
        """What was typed."""
        given = self.cleaned_data
        early, late = (10 if given[key] is None else given[key] for key in ("early", "late"))
        return Serving(serving_id, given["name"], given["at"], given["people"], early, late)


class NewDishForm(forms.Form):
    """A recipe to be put on a serving."""

    serving = forms.CharField(widget=forms.HiddenInput, max_length=60)
    recipe = forms.CharField(max_length=120)
    people = forms.IntegerField(min_value=1, max_value=MOST_PEOPLE, required=False)
    from_box: UUID | None = None
    """The recipe of the user's box that was chosen; None where it is one of the event's own."""

    @property
    def from_starters(self) -> str:
        """The name of the recipe to start with that was chosen; empty where it is none of these."""
        chosen: str = self.cleaned_data["recipe"]
        return chosen.removeprefix(STARTER) if chosen.startswith(STARTER) else ""

    def clean_recipe(self) -> str:
        """The id of a recipe of the event, or `from_box` told apart by its first letters."""
        chosen: str = self.cleaned_data["recipe"]
        if chosen.startswith(BOX):
            try:
                self.from_box = UUID(chosen.removeprefix(BOX))
            except ValueError as error:
                raise forms.ValidationError(_("Choose a recipe from the list.")) from error
        return chosen


class PlaceForm(forms.Form):
    """Where a dish is to go: into a serving, before another dish or behind all."""

    dish = forms.CharField(max_length=60)
    serving = forms.CharField(max_length=60, required=False)
    before = forms.CharField(max_length=60, required=False)


class DishForm(PartForm):
    """How many want a dish, and what is swapped in it."""

    do = "dish"
    table = "dishes"

    people = forms.IntegerField(
        label=_("For how many"),
        min_value=1,
        max_value=MOST_PEOPLE,
        required=False,
        help_text=_("Leave it empty for all of the serving's people."),
    )
    serving = forms.ChoiceField(label=_("Served at"), required=False)
    swaps = forms.MultipleChoiceField(label=_("Swaps"), required=False, widget=forms.CheckboxSelectMultiple)

    def fill(self) -> None:
        """The servings, and the swaps of the dish's recipe."""
        fields: dict[str, Any] = self.fields
        dish = next((each for each in self.event.dishes if each.id == self.part[1]), None)
        fields["serving"].choices = [(each.id, each.name) for each in self.event.servings]
        if dish is None or dish.serving is None:
            fields["serving"].choices = [("", _("only shown")), *fields["serving"].choices]
        swaps = self.event.recipe(dish.recipe).swaps if dish is not None else ()
        fields["swaps"].choices = [(each.id, swap_words(each)) for each in swaps]
        if not swaps:
            del fields["swaps"]

    def shown(self, value: Dish | None) -> dict[str, Any]:
        """The dish as it is."""
        if value is None:
            return {}
        return {"people": value.people, "serving": value.serving or "", "swaps": list(value.swaps)}

    def dish(self, stored: Dish) -> Dish:
        """What was typed, on the dish as it was."""
        given = self.cleaned_data
        serving = ServingId(given["serving"]) if given["serving"] else None
        return Dish(stored.id, stored.recipe, serving, given["people"], tuple(given.get("swaps", ())))


def swap_words(swap: Swap) -> str:
    """A swap in words, such as "applesauce instead of egg"."""
    words = _("%(use)s instead of %(old)s") % {"use": swap.use, "old": swap.instead_of}
    return f"{words} ({swap.note})" if swap.note else words
