"""How something is printed: the size of the paper, and which hours go on the wall."""

from datetime import datetime

from django import forms
from django.http import QueryDict
from django.utils.translation import gettext, ngettext
from django.utils.translation import gettext_lazy as _

from cookout.core.planning.record import PlanRecord
from cookout.core.planning.wording import clock_text
from cookout.web import preferences

SIZES = (("a4", "A4"), ("letter", _("US letter")))
SPANS = (1, 2, 3, 4, 6)


class SizeForm(forms.Form):
    """What to print on; what cannot be read is the reader's usual paper."""

    size = forms.ChoiceField(label=_("Paper"), choices=SIZES, widget=forms.RadioSelect, required=False)

    def chosen(self, usual: str) -> str:
        """The size that was asked for, or the usual one."""
        return (self.is_valid() and self.cleaned_data["size"]) or usual


class WallForm(forms.Form):
    """From when, and how many hours; the whole day where neither is chosen."""

    since = forms.TypedChoiceField(label=_("From"), coerce=datetime.fromisoformat, required=False, empty_value=None)
    hours = forms.TypedChoiceField(label=_("For"), coerce=int, required=False, empty_value=None)

    def __init__(self, record: PlanRecord, data: QueryDict | None = None) -> None:
        super().__init__(data, auto_id="wall-%s")
        hours = preferences.current().hours
        starts = [(at.isoformat(), clock_text(at, hours)) for at in _hours_of(record)]
        spans = [(count, ngettext("%(count)d hour", "%(count)d hours", count) % {"count": count}) for count in SPANS]
        self.fields["since"].choices = [("", gettext("the first task")), *starts]  # type: ignore[attr-defined]
        self.fields["hours"].choices = [("", gettext("to the end")), *spans]  # type: ignore[attr-defined]


def _hours_of(record: PlanRecord) -> list[datetime]:
    """The full hours in which tasks begin, in order, on the event's own clock."""
    return sorted({task.starts_at.replace(minute=0) for task in record.tasks})
