"""Where in an event a recipe goes."""

from typing import Any

from django import forms
from django.utils.translation import gettext_lazy as _

from cookout.core.eventfile.menu import MOST_PEOPLE
from cookout.core.planning.event import Event


class IntoEventForm(forms.Form):
    """The serving that it is put on, and for how many."""

    serving_id = forms.ChoiceField(label=_("Put it on"), required=False)
    people = forms.IntegerField(
        label=_("For how many"),
        min_value=1,
        max_value=MOST_PEOPLE,
        required=False,
        help_text=_("Leave it empty for all of the serving's people."),
    )

    def __init__(self, event: Event, data: Any = None) -> None:
        servings = [(str(each.id), each.name) for each in sorted(event.servings, key=lambda each: each.at)]
        super().__init__(data, initial={"serving_id": servings[0][0] if servings else ""}, label_suffix="")
        self.fields["serving_id"].choices = [*servings, ("", _("no serving yet: only into the event"))]  # type: ignore[attr-defined]
