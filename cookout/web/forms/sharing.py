"""Asking somebody to share an event."""

from django import forms
from django.utils.translation import gettext_lazy as _

ROLES = [("planner", _("co-planner")), ("viewer", _("viewer"))]


class InviteForm(forms.Form):
    """A role, and an address where the invitation is for one person alone."""

    role = forms.ChoiceField(
        label=_("As"),
        choices=ROLES,
        help_text=_("A co-planner may change everything but sharing; a viewer may look and print."),
    )
    email = forms.EmailField(
        label=_("E-mail address"),
        required=False,
        max_length=254,
        help_text=_("Then only an account of that address can take it. Without one, whoever opens the link first."),
        widget=forms.EmailInput(attrs={"autocomplete": "off", "autocapitalize": "off"}),
    )


class RoleForm(forms.Form):
    """Another role for a member."""

    role = forms.ChoiceField(choices=ROLES)
