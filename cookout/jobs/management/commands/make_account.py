"""`python manage.py make_account ADDRESS`: make an account, or a new way into one, without mail."""

from argparse import ArgumentParser
from typing import Any

from django.conf import settings
from django.core.management.base import BaseCommand, CommandError
from django.core.validators import validate_email
from django.forms import ValidationError
from django.urls import reverse

from cookout.services import accounts


class Command(BaseCommand):
    """Prints a link to choose a password, to be handed to whoever the account is for."""

    help = "Make an account where there is none, and print a link to choose its password; it works once, for a day."

    def add_arguments(self, parser: ArgumentParser) -> None:
        """The address."""
        parser.add_argument("address", help="the e-mail address, which is also the name to sign in with")

    def handle(self, *_args: Any, **options: Any) -> None:
        """Make it and tell the link."""
        try:
            validate_email(options["address"])
        except ValidationError as error:
            raise CommandError(
                f"{options['address']!r} is no e-mail address; write one as name@host.example"
            ) from error
        user = accounts.get_or_create_user(email=options["address"])
        uid, token = accounts.make_password_entry(user_id=user.pk)
        self.stdout.write(settings.BASE_URL + reverse("reset-confirm", args=[uid, token]))
