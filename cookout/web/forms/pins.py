"""A task pinned by hand: when it starts, who does it, in which oven."""

from typing import Any

from django import forms
from django.http import QueryDict
from django.utils.translation import gettext as _
from django.utils.translation import gettext_lazy, ngettext

from cookout.core.planning.changes import Change
from cookout.core.planning.event import Event, GearKind, Helper
from cookout.core.planning.pieces import piece_labels
from cookout.core.planning.record import PlannedTask
from cookout.core.planning.wording import moment
from cookout.web.forms.fields import MomentField


class PinForm(forms.Form):
    """What of a task stays as it is said here while the rest is planned around it.

    All that is filled in is what the plan says now. Something is pinned where its box is ticked or it was changed.
    """

    pin_time = forms.BooleanField(label=gettext_lazy("Pin the time"), required=False)
    at = MomentField(label=gettext_lazy("Starts at"), required=False)
    pin_helpers = forms.BooleanField(label=gettext_lazy("Pin who does it"), required=False)
    helpers = forms.MultipleChoiceField(
        label=gettext_lazy("Done by"), required=False, widget=forms.CheckboxSelectMultiple
    )
    pin_unit = forms.BooleanField(label=gettext_lazy("Pin the oven"), required=False)
    unit = forms.ChoiceField(label=gettext_lazy("In which oven"), required=False)

    def __init__(self, event: Event, task: PlannedTask, data: QueryDict | None = None) -> None:
        super().__init__(data, auto_id="pin-%s", label_suffix="")
        self.event = event
        self.task = task
        self._set_time()
        self._set_helpers()
        self._set_unit()

    def _set_time(self) -> None:
        at = self.fields["at"]
        assert isinstance(at, MomentField)
        minutes = (self.task.starts_at - moment(self.event, 0)).total_seconds() // 60
        self.initial.update({"at": at.hold(self.event, int(minutes)), "pin_time": "time" in self.task.pinned})

    def _set_helpers(self) -> None:
        if not self.task.hands:
            del self.fields["helpers"], self.fields["pin_helpers"]
            return
        choices = [(helper.id, self._named(helper)) for helper in self.event.crew]
        self.fields["helpers"].choices = choices  # type: ignore[attr-defined]
        self.fields["helpers"].help_text = ngettext(
            "It takes %(count)d pair of hands.", "It takes %(count)d pairs of hands.", self.task.hands
        ) % {"count": self.task.hands}
        self.initial.update({"helpers": list(self.task.helpers), "pin_helpers": "helpers" in self.task.pinned})

    def _named(self, helper: Helper) -> str:
        lacks = sorted(set(self.task.needs) - set(helper.skills))
        return (
            _("%(name)s (does not do: %(skills)s)") % {"name": helper.name, "skills": ", ".join(lacks)}
            if lacks
            else helper.name
        )

    def _set_unit(self) -> None:
        ovens = [gear for gear in self.event.gear if gear.kind is GearKind.OVEN]
        if not any(gear.id in self.task.gear for gear in ovens):
            del self.fields["unit"], self.fields["pin_unit"]
            return
        labels = [label for gear in ovens for label in piece_labels(gear, gear.pieces)]
        self.fields["unit"].choices = [(label, label) for label in labels]  # type: ignore[attr-defined]
        now = next((unit for unit in self.task.units if unit in labels), "")
        self.initial.update({"unit": now, "pin_unit": "units" in self.task.pinned})

    def clean_helpers(self) -> list[str]:
        """No more of them than there are hands."""
        chosen = list(self.cleaned_data["helpers"])
        if len(chosen) > self.task.hands:
            raise forms.ValidationError(
                ngettext(
                    "The task takes %(count)d pair of hands; tick no more than that.",
                    "The task takes %(count)d pairs of hands; tick no more than that.",
                    self.task.hands,
                )
                % {"count": self.task.hands}
            )
        return chosen

    def clean(self) -> dict[str, Any]:
        """Something is pinned, and what is pinned is said."""
        super().clean()
        if self._is_wanted("pin_time", "at") and not self.errors and self.cleaned_data.get("at") is None:
            self.add_error("at", _("Say when it starts, or take the tick off the time."))
        if self._is_wanted("pin_helpers", "helpers") and not self.errors and not self.cleaned_data.get("helpers"):
            self.add_error("helpers", _("Tick who does it, or take the tick off who does it."))
        if not self.errors and len(self.change()) <= len(("kind", "task")):
            raise forms.ValidationError(_("Nothing is pinned yet: tick what stays as it is, or change it."))
        return self.cleaned_data

    def _is_wanted(self, box: str, field: str) -> bool:
        return bool(box in self.fields and (self.cleaned_data.get(box) or field in self.changed_data))

    def change(self) -> Change:
        """The pin as a change of the event."""
        change: Change = {"kind": "pin", "task": self.task.id}
        given = self.cleaned_data
        if self._is_wanted("pin_time", "at") and given.get("at") is not None:
            change["at"] = int(given["at"])
        if self._is_wanted("pin_helpers", "helpers") and given.get("helpers"):
            change["helpers"] = ", ".join(given["helpers"])
        if self._is_wanted("pin_unit", "unit") and given.get("unit"):
            change["units"] = given["unit"]
        return change
