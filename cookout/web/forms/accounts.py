"""Signing in."""

from typing import Any

from django.contrib.auth.forms import AuthenticationForm


class SignInForm(AuthenticationForm):
    """E-mail address and password."""

    error_messages = {  # noqa: RUF012  (Django declares it so)
        "invalid_login": "That address and password do not belong together. Check both; the password minds capitals.",
        "inactive": "This account is closed. Ask whoever runs this service.",
    }

    def clean(self) -> dict[str, Any]:
        """Check the pair; addresses are kept in small letters."""
        if "username" in self.cleaned_data:
            self.cleaned_data["username"] = self.cleaned_data["username"].lower()
        return super().clean()
