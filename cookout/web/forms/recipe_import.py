"""A recipe from elsewhere, pasted or as a file."""

from typing import Any

from django import forms
from django.core.files.uploadedfile import UploadedFile
from django.utils.translation import gettext_lazy as _

from cookout.core.errors import CookoutError
from cookout.services.recipe_import import file_text

LARGEST_FILE = 4_000_000
LONGEST_TEXT = 4_000_000
KINDS = ".html,.htm,.json,.jsonld,.txt,.md,.toml"


class BringForm(forms.Form):
    """The text, or the file, which wins; `pick` are the places of those chosen where it holds several recipes."""

    text = forms.CharField(
        label=_("Paste it here"),
        required=False,
        strip=False,
        max_length=LONGEST_TEXT,
        widget=forms.Textarea(attrs={"rows": 14, "spellcheck": "false"}),
        help_text=_("Words with a title, ingredients one a line and the steps; or the source of a page; or JSON-LD."),
    )
    file = forms.FileField(
        label=_("or choose a file"),
        required=False,
        widget=forms.FileInput(attrs={"accept": KINDS}),
        help_text=_("A page that you saved, a text, a JSON-LD file, a recipe file or an event file of ours."),
    )
    name = forms.CharField(required=False, max_length=200, widget=forms.HiddenInput)
    pick = forms.CharField(required=False, max_length=2000)

    def __init__(self, data: Any = None, files: Any = None) -> None:
        super().__init__(data, files, label_suffix="")

    def clean_file(self) -> tuple[str, str] | None:
        """The name and text of the chosen file; None where none was chosen."""
        chosen: UploadedFile[bytes] | None = self.cleaned_data["file"]
        if chosen is None:
            return None
        if chosen.size is None or chosen.size > LARGEST_FILE:
            raise forms.ValidationError(_("That file is too large. Save the recipe alone, or copy its words."))
        try:
            return str(chosen.name)[:100], file_text(chosen.read())
        except CookoutError as error:
            raise forms.ValidationError(str(error)) from error

    def clean_pick(self) -> list[int]:
        """The places that were chosen."""
        chosen: list[str] = self.data.getlist("pick")  # type: ignore[attr-defined]
        return [int(word) for word in chosen if word.isdecimal() and len(word) < 4]

    def clean(self) -> dict[str, Any]:
        """Put the text to read under `text`, whichever way it came."""
        given = super().clean() or {}
        if given.get("file"):
            given["name"], given["text"] = given["file"]
        given["name"] = given.get("name") or "recipe"
        given["text"] = str(given.get("text") or "").replace("\r\n", "\n").replace("\r", "\n")
        if not self.errors and not given["text"].strip():
            words = _("There is nothing to read yet. Paste a recipe, or choose a file.")
            self.add_error("text", forms.ValidationError(words))
        return given
