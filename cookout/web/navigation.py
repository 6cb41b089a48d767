"""The stations of an event: where its pages are, in the order in which people come to them."""

from dataclasses import dataclass

from django.urls import reverse
from django.utils.functional import Promise
from django.utils.translation import gettext_lazy as _

from cookout.store.selectors.events import Event

Words = str | Promise


@dataclass(frozen=True, slots=True)
class Station:
    """A page of an event: `tab` marks it as the one shown; `planned` ones exist only once there is a plan."""

    view: str
    words: Words
    tab: str
    planned: bool = False
    edits: bool = False
    owner: bool = False

    def is_open(self, event: Event) -> bool:
        """Whether the reader of the event can go there."""
        return (
            (not self.planned or event.current_id is not None)
            and (not self.edits or event.may_edit)
            and (not self.owner or event.is_own)
        )


STATIONS: tuple[tuple[Words, tuple[Station, ...]], ...] = (
    (
        _("Make"),
        (
            Station("event-day", _("Day and place"), "day"),
            Station("event-menu", _("Menu"), "menu"),
            Station("event-gear", _("Gear"), "gear"),
            Station("event-crew", _("Crew"), "crew"),
            Station("event-show", _("Demo"), "show"),
        ),
    ),
    (
        _("Plan"),
        (
            Station("event", _("Overview"), "plan"),
            Station("timeline", _("Timeline"), "timeline", planned=True),
            Station("run-sheet", _("Run sheet"), "run-sheet", planned=True),
            Station("fire", _("Fire"), "fire", planned=True),
            Station("lists", _("Lists"), "lists", planned=True),
            Station("trials", _("What if"), "trials", planned=True),
        ),
    ),
    (
        _("Hand out"),
        (
            Station("helpers", _("Call sheets"), "helpers", planned=True),
            Station("paper", _("Paper"), "paper", planned=True),
            Station("sharing", _("Sharing"), "sharing"),
            Station("revisions", _("Revisions"), "revisions"),
            Station("event-document", _("Event file"), "document", edits=True),
        ),
    ),
)


def stations(event: Event, tab: str) -> list[tuple[Words, list[tuple[str, Words, bool]]]]:
    """The groups of stations that the reader can go to, as (address, words, whether it is shown now)."""
    return [
        (group, [(reverse(each.view, args=[event.public_id]), each.words, each.tab == tab) for each in row])
        for group, found in STATIONS
        if (row := [each for each in found if each.is_open(event)])
    ]
