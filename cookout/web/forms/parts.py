"""Forms that change a part of an event.

Each carries `was`, the part as it stood when the page was made. What the service finds wrong is told by the field that
it is about; and where somebody else changed the part meanwhile, what is stored now stands beside what was typed.
"""

import re
from datetime import datetime, time
from typing import Any, ClassVar

from django import forms
from django.utils.translation import gettext as _

from cookout.core.errors import EventFileError
from cookout.core.planning.event import Event
from cookout.core.planning.parts import Part, fingerprint, read_part
from cookout.services.errors import PartChangedError
from cookout.web import preferences
from cookout.web.forms.fields import QuantityField

_KEY = re.compile(r"[a-z_]+(?:\[\d+\])?\.([a-z_]+)")


class PartForm(forms.Form):
    """Base. `do` is what its button asks for; `keys` says which field a key of the event file is, where names differ.

    `table` is the table of the event file that it changes.
    """

    do: ClassVar[str] = ""
    table: ClassVar[str] = ""
    keys: ClassVar[dict[str, str]] = {}

    was = forms.CharField(required=False, widget=forms.HiddenInput, max_length=64)

    def __init__(self, event: Event, part: Part, data: Any = None, *, prefix: str = "") -> None:
        self.event = event
        self.part = part
        self.reader_units = preferences.current().units or event.units
        self.stored: list[tuple[str, str]] = []
        value = read_part(event, part)
        super().__init__(data, prefix=prefix or prefix_of(part), label_suffix="")
        self.fill()
        for field in self.fields.values():
            if isinstance(field, QuantityField):
                field.read_bare_in(self.reader_units)
        self.initial = {**self.shown(value), "was": fingerprint(event, part)}

    def fill(self) -> None:
        """Set what can be chosen, by the event."""

    def shown(self, value: Any) -> dict[str, Any]:
        """What the fields show of the part's value; None is a part that is to be made."""
        raise NotImplementedError

    @property
    def was_given(self) -> str:
        """The part as it stood when the page was made."""
        return str(self.cleaned_data["was"])

    @property
    def is_new(self) -> bool:
        """Whether the part is to be made."""
        return read_part(self.event, self.part) is None

    @property
    def thing(self) -> str:
        """The id of what is changed; empty for what is to be made."""
        return self.part[1]

    def tell(self, error: EventFileError) -> None:
        """Say each fault by the field that it is about, else on top with its place."""
        for fault in error.faults:
            place = fault.where.partition(": ")[2]
            field = self._field_of(place)
            words = f"{fault.what} {fault.remedy}"
            self.add_error(field, words if field else f"{place}: {words}")

    def clash(self, error: PartChangedError) -> None:
        """Say that the part was changed meanwhile; the next save replaces knowingly what is stored now."""
        self.add_error(None, str(error))
        if error.part != self.part:
            return
        if hasattr(self.data, "copy"):
            self.data = self.data.copy()
        self.data[self.add_prefix("was")] = error.fingerprint  # type: ignore[index]
        self.stored = self._stored(error.value)

    def _stored(self, value: Any) -> list[tuple[str, str]]:
        if value is None:
            return [(_("Stored now"), _("It was taken out. Saving again puts it back."))]
        shown = self.shown(value)
        rows = [(field, field_text(self.fields[field], shown.get(field))) for field in shown if field in self.fields]
        typed = {field: field_text(self.fields[field], self[field].value()) for field, _text in rows}
        return [(str(self.fields[field].label or field), text) for field, text in rows if text != typed[field]]

    def _field_of(self, place: str) -> str | None:
        found = _KEY.match(place)
        if found is None or not place.startswith(self.table):
            return None
        name = self.keys.get(found[1], found[1])
        return name if name in self.fields else None


def field_text(field: forms.Field, value: Any) -> str:
    """A field's value as words: the label of what is chosen, times as typed."""
    if isinstance(value, bool):
        return _("yes") if value else _("no")
    if isinstance(field, forms.ChoiceField):
        labels = {str(key): str(label) for key, label in _flat(field.choices)}
        values = value if isinstance(value, list | tuple | set | frozenset) else [value]
        return ", ".join(labels.get(str(each), str(each)) for each in values if each not in (None, ""))
    if isinstance(value, datetime):
        return f"{value:%Y-%m-%d %H:%M}"
    if isinstance(value, time):
        return f"{value:%H:%M}"
    if isinstance(value, list | tuple):
        return " ".join(field_text(field, each) for each in value if each not in (None, ""))
    return "" if value is None else str(value)


def prefix_of(part: Part) -> str:
    """The word before the names of a part's fields, so that many forms stand on one page."""
    kind, name = part
    return f"{kind}-{name or 'new'}"


def _flat(choices: Any) -> list[tuple[Any, Any]]:
    found: list[tuple[Any, Any]] = []
    for key, label in choices:
        found += _flat(label) if isinstance(label, list | tuple) else [(key, label)]
    return found
