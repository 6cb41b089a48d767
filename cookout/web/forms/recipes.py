"""What a recipe is as a whole, typed: its head, and the swaps that a dish may choose.

No field is marked as one that must be filled: the reader of recipe files says what is missing, by the same rules for
whatever way a recipe comes in.
"""

from typing import Any

from django import forms
from django.utils.translation import gettext_lazy as _

from cookout.core.eventfile.recipes import MOST_KEPT, MOST_PANS, MOST_SERVED
from cookout.core.eventfile.writing_recipes import Table
from cookout.core.kitchen.replacement import MOST_RATIO
from cookout.web.forms.recipe_words import FOODS, HELDS, ICINGS, choices

DAY = 24 * 60
MOST_LINES = 200
KEEPS = ("hot", "cold", "air")


def whole(label: Any, most: int, hint: Any = "", least: int = 0) -> forms.IntegerField:
    """A whole number that may be left out."""
    number = forms.NumberInput(attrs={"inputmode": "numeric"})
    return forms.IntegerField(
        label=label, min_value=least, max_value=most, required=False, help_text=hint, widget=number
    )


def words(label: Any, longest: int = 200, hint: Any = "", **attrs: Any) -> forms.CharField:
    """A line of text that may be left out."""
    line = forms.TextInput(attrs={"autocomplete": "off", **attrs})
    return forms.CharField(label=label, max_length=longest, required=False, help_text=hint, widget=line)


class HeadForm(forms.Form):
    """Name, servings, how it keeps, and its ingredients one a line."""

    name = words(_("Name"))
    serves = whole(_("One batch serves"), MOST_SERVED, least=1)
    food = forms.ChoiceField(
        label=_("Kind of food"),
        choices=choices(FOODS, nothing=_("choose one")),
        required=False,
        help_text=_("Decides how hot its middle must get and how long it may stand."),
    )
    pans = whole(_("Pans for a batch"), MOST_PANS, _("Layers or loaves that bake by themselves."), least=1)
    pan = words(_("What they are"), 200, placeholder=_("9 in round"))
    icing = forms.ChoiceField(
        label=_("Icing"), choices=choices(ICINGS, nothing=_("as its ingredients tell")), required=False
    )
    held = forms.ChoiceField(label=_("Waits for its serving"), choices=choices(HELDS), required=False)
    keeps_hot = whole(_("Keeps hot, minutes"), MOST_KEPT)
    keeps_cold = whole(_("Keeps cold, minutes"), MOST_KEPT)
    keeps_air = whole(_("Keeps as it is, minutes"), MOST_KEPT)
    rests_minutes = whole(_("Must stand before it is served, minutes"), DAY)
    best_within = whole(_("Best within, minutes"), MOST_KEPT, _("Waiting longer costs freshness."))
    serve_minutes = whole(_("Minutes to serve it"), DAY, least=1)
    serve_hands = whole(_("Helpers to serve it"), 50)
    allergens = words(
        _("Allergens beside those of its ingredients"), 300, _("With commas between. The ingredients tell the others.")
    )
    ingredients = forms.CharField(
        label=_("Ingredients, one a line"),
        required=False,
        max_length=20_000,
        strip=False,
        widget=forms.Textarea(attrs={"rows": 12, "spellcheck": "true"}),
        help_text=_("As you are used to: 1½ cups flour, sifted; 2-3 Tbsp milk; salt to taste."),
    )

    def __init__(self, data: Any = None, *, initial: Any = None) -> None:
        super().__init__(data, initial=initial, prefix="head", label_suffix="")

    def lines(self) -> list[str]:
        """The lines of the ingredients, without empty ones."""
        text = str(self.cleaned_data.get("ingredients", ""))
        return [line.strip() for line in text.splitlines() if line.strip()][:MOST_LINES]

    def table(self, kept: dict[str, Table]) -> Table:
        """What was typed, as keys of a recipe file; `kept` are ingredients by the line that shows them."""
        given = self.cleaned_data
        keeps = {way: given.get(f"keeps_{way}") for way in KEEPS}
        values: Table = {
            "name": given.get("name") or None,
            "keeps": {way: minutes for way, minutes in keeps.items() if minutes is not None} or None,
            "allergens": allergens_of(given.get("allergens") or ""),
            "ingredients": [kept.get(line, line) for line in self.lines()],
        }
        for key in ("food", "icing", "held", "pan"):
            values[key] = given.get(key) or None
        for key in ("serves", "pans", "rests_minutes", "best_within", "serve_minutes", "serve_hands"):
            values[key] = given.get(key)
        return {key: value for key, value in values.items() if value is not None}


class SwapForm(forms.Form):
    """This instead of that."""

    instead_of = words(_("Instead of"))
    use = words(_("Take"))
    ratio = forms.FloatField(
        label=_("For one of the old"),
        min_value=0.001,
        max_value=MOST_RATIO,
        required=False,
        help_text=_("1 where as much"),
    )
    unit = words(_("Unit, where it is another"), 40)
    note = words(_("What to say of it"))
    id = forms.CharField(required=False, max_length=60, widget=forms.HiddenInput)

    def __init__(self, place: int, data: Any = None, *, initial: Any = None) -> None:
        super().__init__(data, initial=initial, prefix=f"swap-{place}", label_suffix="")
        self.place = place

    def table(self) -> Table | None:
        """What was typed; None for a row that was left empty."""
        given = self.cleaned_data
        if not (given.get("instead_of") or given.get("use")):
            return None
        ids = given.get("id") or f"swap-{self.place + 1}"
        values: Table = {"id": ids, "instead_of": given.get("instead_of"), "use": given.get("use")}
        values |= {key: given[key] for key in ("ratio", "note") if given.get(key) not in (None, "")}
        if given.get("unit"):
            values["unit"] = given["unit"]
        return {key: value for key, value in values.items() if value not in (None, "")}


def allergens_of(text: str) -> list[str]:
    """Words parted by commas, each once."""
    return list(dict.fromkeys(word.strip() for word in text.split(",") if word.strip()))


def head_values(table: Table, ingredients: str) -> dict[str, Any]:
    """What the head's fields show of a table of a recipe file."""
    keeps = table.get("keeps")
    shown = {key: table.get(key) for key in HeadForm.base_fields if key in table}
    shown |= {f"keeps_{way}": minutes for way, minutes in keeps.items()} if isinstance(keeps, dict) else {}
    allergens = table.get("allergens")
    shown["allergens"] = ", ".join(map(str, allergens)) if isinstance(allergens, list) else ""
    return {"held": "air", "pans": 1, "serve_minutes": 5, "serve_hands": 1, **shown, "ingredients": ingredients}
