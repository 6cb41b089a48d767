"""Mail that the service sends by itself; each text is a template with its subject in the first line."""

from django.conf import settings
from django.core.mail import EmailMessage
from django.template.loader import render_to_string


def can_send() -> bool:
    """Whether a mail server is set up."""
    return bool(settings.COOKOUT_SENDS_MAIL)


def send(*, to: str, template: str, values: dict[str, object]) -> None:
    """Send one mail now. `OSError` or `SMTPException` where the server cannot be reached or refuses it."""
    subject, _, body = render_to_string(template, values).strip().partition("\n")
    EmailMessage(" ".join(subject.split()), body.strip() + "\n", to=[to]).send()
