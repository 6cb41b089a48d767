"""A form with every kind of field, for the page that shows all components."""

from django import forms
from django.utils.translation import gettext_lazy as _

from cookout.web.forms.fields import QuantityField

FUELS = (("briquettes", _("briquettes")), ("lump", _("lump")))


class SamplesForm(forms.Form):
    """One field of each kind; it is never sent anywhere."""

    name = forms.CharField(label=_("Name"), max_length=200, help_text=_("As it stands on the sheets."))
    people = forms.IntegerField(label=_("People"), min_value=1, initial=24)
    across = QuantityField("inches", label=_("Size across"), help_text=_("Such as 12 in or 30 cm."))
    fuel = forms.ChoiceField(label=_("Fuel"), choices=FUELS)
    day = forms.DateField(label=_("Day"), widget=forms.DateInput(attrs={"type": "date"}))
    time = forms.TimeField(label=_("Time"), widget=forms.TimeInput(attrs={"type": "time"}))
    kinds = forms.MultipleChoiceField(label=_("Several of them"), choices=FUELS, widget=forms.CheckboxSelectMultiple)
    kind = forms.ChoiceField(label=_("One of them"), choices=FUELS, widget=forms.RadioSelect)
    deep = forms.BooleanField(label=_("Deep"), required=False)
    locked = forms.CharField(label=_("Cannot be changed"), disabled=True, required=False, initial=_("as it is"))
    note = forms.CharField(label=_("Note"), widget=forms.Textarea(attrs={"rows": 3}), required=False)


def wrong_samples() -> SamplesForm:
    """The form as it comes back where nearly all that was typed is wrong."""
    typed = {"wrong-name": "", "wrong-people": "0", "wrong-across": "twelve", "wrong-fuel": "wood"}
    return SamplesForm(typed, prefix="wrong", label_suffix="")
