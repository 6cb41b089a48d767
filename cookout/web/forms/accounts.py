"""Signing in and up, and what somebody chooses for themselves."""

from typing import Any

from django import forms
from django.conf import settings
from django.contrib.auth.forms import AuthenticationForm, PasswordResetForm
from django.contrib.auth.password_validation import validate_password
from django.utils.translation import gettext_lazy as _

from cookout.services.accounts import Choices
from cookout.store.selectors.accounts import User

NEW_PASSWORD = forms.PasswordInput(attrs={"autocomplete": "new-password"})
ADDRESS = forms.EmailInput(attrs={"autocomplete": "username", "autocapitalize": "off", "inputmode": "email"})


class SignInForm(AuthenticationForm):
    """E-mail address and password."""

    error_messages = {  # noqa: RUF012  (Django declares it so)
        "invalid_login": _(
            "That address and password do not belong together. Check both; the password minds capitals. "
            "If the account is new, first open the link in the mail to it."
        ),
        "inactive": _(
            "This account is not open. If it is new, use the link in the mail; else ask who runs this service."
        ),
    }

    def clean(self) -> dict[str, Any]:
        """Check the pair; addresses are kept in small letters."""
        if "username" in self.cleaned_data:
            self.cleaned_data["username"] = self.cleaned_data["username"].lower()
        return super().clean()


class ResetForm(PasswordResetForm):
    """The address to mail a link to, under the same name as everywhere else."""

    email = forms.EmailField(label=_("E-mail address"), max_length=254, widget=ADDRESS)


class SignUpForm(forms.Form):
    """A new account: address, and the password twice."""

    email = forms.EmailField(label=_("E-mail address"), max_length=254, widget=ADDRESS)
    password = forms.CharField(
        label=_("Password"),
        strip=False,
        widget=NEW_PASSWORD,
        help_text=_("Ten characters or more; a few words in a row are easy to keep in mind."),
    )
    again = forms.CharField(label=_("The same password again"), strip=False, widget=NEW_PASSWORD)

    def clean_email(self) -> str:
        """Addresses are kept in small letters."""
        return str(self.cleaned_data["email"]).lower()

    def clean_password(self) -> str:
        """A password that is not too easy to guess, neither from the address."""
        password = str(self.cleaned_data["password"])
        validate_password(password, User(email=self.cleaned_data.get("email", "")))
        return password

    def clean(self) -> dict[str, Any]:
        """Both passwords must be alike."""
        cleaned = super().clean() or {}
        if cleaned.get("password") and cleaned.get("again") and cleaned["password"] != cleaned["again"]:
            self.add_error("again", _("This is not the same as above. Type both anew."))
        return cleaned


class ChoicesForm(forms.Form):
    """Name, units, hours, paper and language."""

    name = forms.CharField(
        label=_("Your name"),
        required=False,
        max_length=120,
        help_text=_("What co-planners see beside what you change."),
        widget=forms.TextInput(attrs={"autocomplete": "name"}),
    )
    units = forms.ChoiceField(
        label=_("Units"),
        choices=[("event", _("as the event has them")), ("us", _("US customary")), ("metric", _("metric"))],
    )
    hours = forms.ChoiceField(label=_("Time of day"), choices=[("24", "14:05"), ("12", "2:05 pm")])
    paper = forms.ChoiceField(
        label=_("Paper"),
        choices=[("units", _("by the units")), ("a4", "A4"), ("letter", _("US letter"))],
        help_text=_("By the units: letter with US customary, else A4."),
    )
    language = forms.ChoiceField(label=_("Language"), required=False)

    def __init__(self, *args: Any, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        languages = [("", _("as the browser asks")), *settings.LANGUAGES]
        self.fields["language"].choices = languages  # type: ignore[attr-defined]

    def choices(self) -> Choices:
        """What was chosen."""
        return Choices(**self.cleaned_data)


class PasswordAskedForm(forms.Form):
    """Something that takes the password once more, to show who asks."""

    password = forms.CharField(
        label=_("Your password"),
        strip=False,
        required=False,
        widget=forms.PasswordInput(attrs={"autocomplete": "current-password"}),
    )

    def __init__(self, user: User, *args: Any, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        self.user = user
        if not user.has_usable_password():
            del self.fields["password"]

    def clean_password(self) -> str:
        """The right one; accounts without a password have no such field."""
        password = str(self.cleaned_data["password"])
        if not self.user.check_password(password):
            raise forms.ValidationError(_("That is not your password. Type it again; it minds capitals."))
        return password


class AddressForm(PasswordAskedForm):
    """Another e-mail address."""

    email = forms.EmailField(label=_("New e-mail address"), max_length=254, widget=ADDRESS)
    field_order = ("email", "password")

    def __init__(self, user: User, *args: Any, **kwargs: Any) -> None:
        super().__init__(user, *args, auto_id="address-%s", **kwargs)


class CloseForm(PasswordAskedForm):
    """Closing the account."""

    def __init__(self, user: User, *args: Any, **kwargs: Any) -> None:
        super().__init__(user, *args, auto_id="close-%s", **kwargs)
