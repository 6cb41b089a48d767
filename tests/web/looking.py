"""Reading pages as a person would."""

import re

from django.http import HttpResponse

TOKEN = re.compile(r'(name="csrfmiddlewaretoken" value=|"X-CSRFToken": )"[^"]*"')


def unmasked(answer: HttpResponse) -> str:
    """The page without its form tokens, which differ each time that it is made."""
    return TOKEN.sub("", answer.content.decode())
