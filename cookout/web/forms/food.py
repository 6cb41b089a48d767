"""The rules of food safety that an event keeps, and the stricter numbers of the local code over them."""

from typing import Any

from django import forms
from django.utils.translation import gettext_lazy as _

from cookout.core.eventfile.fields import DAY_MINUTES
from cookout.core.eventfile.foodsafety import BOILING_C, FREEZING_C
from cookout.core.kitchen.recipe import FoodKind
from cookout.core.planning.foodrules import FoodCode, FoodRules
from cookout.core.safety.local import LimitError, LocalNumbers
from cookout.web.forms.fields import QuantityField, within
from cookout.web.forms.parts import PartForm

CODES = [
    (FoodCode.HOME.value, _("at home or a picnic: guidance for homes")),
    (FoodCode.PUBLIC.value, _("sold or served to the public: the food code")),
]
FOODS = {
    FoodKind.BREAD_AND_CAKE: _("bread and cake"),
    FoodKind.CREAM_ICING: _("cream icing"),
    FoodKind.EGGS: _("eggs"),
    FoodKind.FISH: _("fish"),
    FoodKind.WHOLE_MEAT: _("whole meat"),
    FoodKind.GROUND_MEAT: _("ground meat"),
    FoodKind.POULTRY: _("poultry"),
    FoodKind.STEW_AND_BEANS: _("stew and beans"),
    FoodKind.COOKED_VEGETABLES: _("cooked vegetables"),
    FoodKind.RAW_VEGETABLES: _("raw vegetables"),
    FoodKind.FRUIT: _("fruit"),
    FoodKind.DAIRY: _("dairy"),
}
_TEMPERATURES = {
    "hot_c": _("Hot food is at least"),
    "cold_c": _("Cold food is at most"),
    "warm_air_c": _("Warm air begins at"),
    "reheating_c": _("Reheated to"),
}
_MINUTES = {
    "out_minutes": _("Longest out of heat and cold, minutes"),
    "warm_minutes": _("The same in warm air, minutes"),
    "cold_out_minutes": _("Longest for cold food, minutes"),
    "first_minutes": _("First stage of cooling, minutes"),
    "cooling_minutes": _("Both stages of cooling, minutes"),
    "reheating_minutes": _("Reheated within, minutes"),
}
_KEYS = {"hot": "hot_c", "cold": "cold_c", "warm_air": "warm_air_c", "reheating": "reheating_c", "local_code": "local"}


class FoodForm(PartForm):
    """Which published rules hold, and what the local code asks beyond them."""

    do = "food"
    table = "food_safety"
    keys = _KEYS

    code = forms.ChoiceField(label=_("The food is"), choices=CODES)
    marked = forms.BooleanField(label=_("Food out of heat and cold bears its times in writing"), required=False)
    local = forms.CharField(
        label=_("Local code"), max_length=200, required=False, help_text=_("What it is called. Local codes come first.")
    )
    section = forms.CharField(label=_("Its section"), max_length=200, required=False)

    def fill(self) -> None:
        """The numbers that a local code may set."""
        for name, words in _TEMPERATURES.items():
            self.fields[name] = QuantityField("temperature", label=words, required=False)
        for name, words in _MINUTES.items():
            self.fields[name] = forms.IntegerField(label=words, min_value=0, max_value=DAY_MINUTES, required=False)
        for kind, words in FOODS.items():
            label = _("Centre of %(food)s") % {"food": words}
            self.fields[f"centre_{kind.value}"] = QuantityField("temperature", label=label, required=False)

    def shown(self, value: dict[str, FoodRules]) -> dict[str, Any]:
        """The rules as they are."""
        rules = value["food_rules"]
        fields: dict[str, Any] = self.fields
        found: dict[str, Any] = {name: getattr(rules.numbers, name) for name in _MINUTES}
        for name in _TEMPERATURES:
            found[name] = fields[name].hold(getattr(rules.numbers, name), self.reader_units)
        centres = dict(rules.numbers.centres_c)
        for kind in FOODS:
            name = f"centre_{kind.value}"
            found[name] = fields[name].hold(centres.get(kind.value), self.reader_units)
        return {
            **found,
            "code": rules.code.value,
            "marked": rules.marked,
            "local": rules.local,
            "section": rules.section,
        }

    @property
    def numbers(self) -> list[forms.BoundField]:
        """The fields of local numbers."""
        return [self[name] for name in self.fields if name not in ("was", "code", "marked", "local", "section")]

    @property
    def has_numbers(self) -> bool:
        """Whether any is set, or wrong."""
        return any(field.value() not in (None, "") for field in self.numbers)

    def clean(self) -> dict[str, Any]:
        """Temperatures of food, and no number that would allow more than the published one."""
        cleaned = super().clean() or {}
        for name, value in list(cleaned.items()):
            if name in _TEMPERATURES or name.startswith("centre_"):
                try:
                    within(value, FREEZING_C, BOILING_C, _("Food is between 32 F (0 C) and 212 F (100 C)."))
                except forms.ValidationError as error:
                    self.add_error(name, error)
        if not self.errors:
            try:
                _limits = self.rules(self.event.food_rules).limits
            except LimitError as error:
                self.add_error(None, str(error))
        return cleaned

    def rules(self, stored: FoodRules) -> FoodRules:
        """What was typed; the seconds that centres are held stay as they were."""
        given = self.cleaned_data
        centres = tuple(
            (kind.value, given[f"centre_{kind.value}"])
            for kind in FoodKind
            if given[f"centre_{kind.value}"] is not None
        )
        numbers = {name: given[name] for name in (*_TEMPERATURES, *_MINUTES)}
        return FoodRules(
            code=FoodCode(given["code"]),
            marked=given["marked"],
            local=given["local"],
            section=given["section"],
            numbers=LocalNumbers(**numbers, centres_c=centres, centre_seconds=stored.numbers.centre_seconds),
        )
