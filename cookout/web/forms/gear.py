"""Gear, fuel and kits."""

from typing import Any

from django import forms
from django.utils.translation import gettext_lazy as _

from cookout.core.eventfile.gear import (
    HEAVIEST_KG,
    HIGHEST_TRIVET_M,
    LARGEST_INCHES,
    LIGHTEST_KG,
    LOWEST_TRIVET_M,
    MOST_PIECES,
    MOST_PLACES,
    SMALLEST_INCHES,
)
from cookout.core.fire.iron import Surface
from cookout.core.planning.event import Fuel, Gear, GearId, GearKind
from cookout.web.forms.fields import QuantityField, within
from cookout.web.forms.parts import PartForm

KINDS = {
    GearKind.OVEN: _("Ovens"),
    GearKind.CHIMNEY: _("Chimneys"),
    GearKind.TABLE: _("Cooking tables"),
    GearKind.TRIVET: _("Trivets"),
    GearKind.RACK: _("Cooling racks"),
    GearKind.COOLER: _("Coolers"),
    GearKind.MIXER: _("Mixers"),
    GearKind.BOWL: _("Bowls"),
    GearKind.SKILLET: _("Skillets"),
    GearKind.OTHER: _("Other gear"),
}

SURFACES = {Surface.GROUND: _("bare ground"), Surface.METAL: _("metal"), Surface.GRATE: _("a grate")}

_OF_KIND = {
    GearKind.OVEN: ("inches", "deep", "iron_kg"),
    GearKind.CHIMNEY: ("coals",),
    GearKind.TABLE: ("spots", "spot_inches", "surface", "material"),
    GearKind.TRIVET: ("height_m",),
    GearKind.COOLER: ("ice", "places"),
}
_QUANTITIES = ("inches", "iron_kg", "spot_inches", "height_m")


class GearForm(PartForm):
    """One kind of gear with what only that kind has."""

    do = "gear"
    table = "gear"
    keys = {"size": "inches", "iron": "iron_kg", "spot_size": "spot_inches", "height": "height_m"}  # noqa: RUF012

    name = forms.CharField(label=_("Name"), max_length=200, widget=forms.TextInput(attrs={"autocomplete": "off"}))
    count = forms.IntegerField(label=_("How many"), min_value=1, max_value=MOST_PIECES)
    inches = QuantityField("inches", label=_("Size across"), help_text=_("Such as 12 in or 30 cm."))
    deep = forms.BooleanField(label=_("Deep"), required=False)
    iron_kg = QuantityField(
        "mass", label=_("Weight of one"), required=False, help_text=_("Empty: as ovens of that size usually weigh.")
    )
    coals = forms.IntegerField(
        label=_("Coals it lights at once"), min_value=1, max_value=1000, help_text=_("Briquettes.")
    )
    spots = forms.IntegerField(label=_("Spots for ovens"), min_value=1, max_value=MOST_PIECES)
    spot_inches = QuantityField(
        "inches", label=_("Largest oven on a spot"), required=False, help_text=_("Such as 14 in or 36 cm.")
    )
    surface = forms.ChoiceField(label=_("Coals lie on"), choices=list(SURFACES.items()))
    material = forms.CharField(label=_("Made of"), max_length=200, required=False)
    height_m = QuantityField("length", label=_("Height"), required=False, help_text=_("Such as 1 in or 2 cm."))
    ice = forms.BooleanField(label=_("With ice: holds food cold"), required=False)
    places = forms.IntegerField(
        label=_("Places"),
        min_value=1,
        max_value=MOST_PLACES,
        help_text=_("Layers, cakes or bowls that stand in one."),
    )

    def fill(self) -> None:
        """Leave out what other kinds have."""
        gear = next(each for each in self.event.gear if each.id == self.part[1])
        kept = _OF_KIND.get(gear.kind, ())
        for name in {name for names in _OF_KIND.values() for name in names}.difference(kept):
            del self.fields[name]

    def shown(self, value: Gear) -> dict[str, Any]:
        """The gear as it is."""
        found: dict[str, Any] = {"name": value.name, "count": value.count}
        for name in (name for name in _OF_KIND.get(value.kind, ()) if name in self.fields):
            stored = getattr(value, name)
            field: Any = self.fields[name]
            found[name] = field.hold(stored, self.reader_units) if name in _QUANTITIES else stored
        return found

    @property
    def drawn(self) -> list[forms.BoundField]:
        """The fields to be drawn."""
        return [field for field in self if not field.is_hidden]

    def clean_inches(self) -> int | None:
        """The size of an oven."""
        return self._inches("inches")

    def clean_spot_inches(self) -> int | None:
        """The size of the largest oven on a spot."""
        return self._inches("spot_inches")

    def clean_iron_kg(self) -> float | None:
        """The weight of an oven."""
        words = _("An oven weighs between 1 lb (0.5 kg) and 220 lb (100 kg). Check number and unit.")
        return within(self.cleaned_data["iron_kg"], LIGHTEST_KG, HEAVIEST_KG, words)

    def clean_height_m(self) -> float | None:
        """The height of a trivet."""
        words = _("A trivet is between 3 mm (1/8 in) and 30 cm (12 in) high. Check number and unit.")
        return within(self.cleaned_data["height_m"], LOWEST_TRIVET_M, HIGHEST_TRIVET_M, words)

    def gear(self, stored: Gear) -> Gear:
        """What was typed, on the gear as it was."""
        given = {key: value for key, value in self.cleaned_data.items() if key != "was"}
        if "surface" in given:
            given["surface"] = Surface(given["surface"])
        return Gear(id=GearId(stored.id), kind=stored.kind, pooled=stored.pooled, **given)

    def _inches(self, name: str) -> int | None:
        words = _("Ovens are from 4 in (10 cm) to 24 in (61 cm) across. Check number and unit.")
        found = within(self.cleaned_data[name], SMALLEST_INCHES, LARGEST_INCHES, words)
        return None if found is None else round(found)


class FuelForm(PartForm):
    """Fuel on hand."""

    do = "fuel"
    table = "fuel"

    kind = forms.ChoiceField(label=_("Fuel"), choices=[("briquettes", _("briquettes")), ("lump", _("lump charcoal"))])
    coals = forms.IntegerField(
        label=_("Pieces on hand"),
        min_value=0,
        max_value=1_000_000,
        required=False,
        help_text=_("Leave it empty where nobody counted."),
    )

    def shown(self, value: dict[str, Fuel]) -> dict[str, Any]:
        """The fuel as it is."""
        return {"kind": value["fuel"].kind, "coals": value["fuel"].coals}

    def fuel(self) -> Fuel:
        """What was typed."""
        return Fuel(self.cleaned_data["kind"], self.cleaned_data["coals"])


class OtherGearForm(forms.Form):
    """Gear of one's own that is counted and nothing more."""

    name = forms.CharField(
        label=_("Something else"), max_length=120, widget=forms.TextInput(attrs={"autocomplete": "off"})
    )
    count = forms.IntegerField(label=_("How many"), min_value=1, max_value=MOST_PIECES, initial=1)


class KitNameForm(forms.Form):
    """What a kit is called."""

    name = forms.CharField(max_length=120)


class KitForm(forms.Form):
    """Which kit to use."""

    kit = forms.UUIDField()
