"""Reading pages as a person would."""

import re
from typing import Protocol

TOKEN = re.compile(r'name="(?:csrfmiddlewaretoken|next)" value="[^"]*"')


class Answer(Protocol):
    """What came back, as the test client gives it."""

    @property
    def content(self) -> bytes: ...


def unmasked(answer: Answer) -> str:
    """The page without its form tokens, which differ each time, and without the place to come back to."""
    return TOKEN.sub("", answer.content.decode())
