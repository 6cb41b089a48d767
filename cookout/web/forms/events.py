"""The event file as typed or chosen."""

from typing import Any

from django import forms
from django.core.files.uploadedfile import UploadedFile
from django.utils.translation import gettext_lazy as _

MOST_CHARACTERS = 500_000
TEXT_AREA = forms.Textarea(attrs={"rows": 28, "spellcheck": "false", "autocapitalize": "off", "class": "document"})


class DocumentForm(forms.Form):
    """The text of an event file, and the version of the event that it was typed from."""

    document = forms.CharField(label=_("Event file"), strip=False, max_length=MOST_CHARACTERS, widget=TEXT_AREA)
    version = forms.IntegerField(widget=forms.HiddenInput, min_value=1)

    def clean_document(self) -> str:
        """The text with plain line ends; browsers send others."""
        return _plain_lines(self.cleaned_data["document"])


class NewEventForm(forms.Form):
    """The text of an event file, typed or from a file chosen; the file wins."""

    document = forms.CharField(
        label=_("or type it here"), strip=False, required=False, max_length=MOST_CHARACTERS, widget=TEXT_AREA
    )
    file = forms.FileField(
        label=_("Choose an event file"), required=False, widget=forms.FileInput(attrs={"accept": ".toml"})
    )

    def clean_file(self) -> str | None:
        """The chosen file's text; None where none was chosen."""
        chosen: UploadedFile[bytes] | None = self.cleaned_data["file"]
        if chosen is None:
            return None
        if chosen.size is None or chosen.size > MOST_CHARACTERS:
            raise forms.ValidationError(_("That file is too large for an event file. Choose a .toml file."))
        try:
            return _plain_lines(chosen.read().decode("utf-8"))
        except UnicodeDecodeError as error:
            raise forms.ValidationError(_("That file is not UTF-8 text. Choose a .toml file.")) from error

    def clean(self) -> dict[str, Any]:
        """Put the text to use under `document`, whichever way it came."""
        cleaned = super().clean() or {}
        text = cleaned.get("file") or _plain_lines(cleaned.get("document") or "")
        if not self.errors and not text.strip():
            raise forms.ValidationError(_("There is nothing to read yet. Choose an event file, or type one."))
        return {**cleaned, "document": text}


def _plain_lines(text: str) -> str:
    return text.replace("\r\n", "\n").replace("\r", "\n")
