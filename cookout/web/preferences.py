"""How the reader of a page likes it: units, hours, paper, language.

Set for each request by the middleware and read wherever something is printed, as Django does with the language.
"""

from collections.abc import Callable
from contextvars import ContextVar
from dataclasses import dataclass

from django.conf import settings
from django.http import HttpRequest, HttpResponse
from django.utils import translation

from cookout.core.planning.wording import HourStyle
from cookout.store.selectors.accounts import User


@dataclass(frozen=True, slots=True)
class Preferences:
    """`units` "us", "metric" or None (as the event has them), `paper` "a4", "letter" or None (by the units)."""

    units: str | None = None
    hours: HourStyle = "24"
    paper: str | None = None


_current: ContextVar[Preferences | None] = ContextVar("preferences", default=None)


def current() -> Preferences:
    """The preferences of whoever is being answered."""
    return _current.get() or Preferences()


def of_user(user: object) -> Preferences:
    """The preferences of an account; those of nobody in particular for strangers."""
    if not isinstance(user, User):
        return Preferences()
    return Preferences(
        units=None if user.units == User.Units.AS_EVENT else user.units,
        hours="12" if user.hours == User.Hours.TWELVE else "24",
        paper=None if user.paper == User.Paper.BY_UNITS else user.paper,
    )


class PreferencesMiddleware:
    """Puts the reader's preferences in force for the request, the language of their account before the browser's."""

    def __init__(self, get_response: Callable[[HttpRequest], HttpResponse]) -> None:
        self.get_response = get_response

    def __call__(self, request: HttpRequest) -> HttpResponse:
        """Answer the request with them."""
        token = _current.set(of_user(request.user))
        language = getattr(request.user, "language", "")
        try:
            if language in dict(settings.LANGUAGES):
                translation.activate(language)
            return self.get_response(request)
        finally:
            _current.reset(token)
