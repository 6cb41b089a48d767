"""A page of an event's forms as its tests open it."""

from django.test import Client
from django.urls import reverse

from cookout.core.planning.event import Event as CoreEvent
from cookout.store.mapping import event_of
from tests.store.cast import Cast
from tests.web.filling import Answered


class FormPage:
    """One page of the cast's event, by the name of its address."""

    def __init__(self, view: str) -> None:
        self.view = view

    def place(self, cast: Cast) -> str:
        """Its address."""
        return reverse(self.view, args=[cast.event.public_id])

    def opened(self, client: Client, cast: Cast) -> Answered:
        """The page as that browser gets it."""
        answer: Answered = client.get(self.place(cast))
        assert answer.status_code == 200
        return answer


def core(cast: Cast) -> CoreEvent:
    """The event as it is stored by now."""
    cast.event.refresh_from_db()
    return event_of(cast.event)
