"""Everything that can be printed of a plan, by the word that it is asked for with."""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field
from datetime import datetime

from django.db import transaction
from django.utils.translation import get_language, gettext, ngettext

from cookout.core.planning.event import Event as CoreEvent
from cookout.core.planning.lists import allergen_card, leftovers, measure_out, packing, shopping
from cookout.core.planning.lists.table_card import Card
from cookout.core.planning.record import PlanRecord
from cookout.core.planning.wording import HourStyle
from cookout.drawing.words import Words
from cookout.services import links
from cookout.services.errors import NoSuchThingError
from cookout.sheets import (
    Paper,
    Printing,
    allergen_cards_pdf,
    allergen_sheet_pdf,
    call_sheet_pdf,
    call_sheets_pdf,
    coal_plan_pdf,
    leftovers_pdf,
    measuring_pdf,
    packing_pdf,
    run_sheet_pdf,
    running_order_pdf,
    shopping_pdf,
    wall_pdf,
)
from cookout.store.selectors.events import Event, event_of
from cookout.store.selectors.lists import list_ticks, planned_event
from cookout.store.selectors.revisions import Revision


@dataclass(frozen=True, slots=True, kw_only=True)
class Source:
    """What is printed: a revision of an event, as a record and in units that its reader wants.

    `addresses` are those of the helpers' own pages, by helper. `start` (aware) and `hours` say which part of the day
    goes on the wall; all of it without them.
    """

    event: Event
    revision: Revision
    record: PlanRecord
    units: str
    addresses: Mapping[str, str] = field(default_factory=dict)
    start: datetime | None = None
    hours: int | None = None

    @property
    def planned(self) -> CoreEvent:
        """The event as it was when it was planned; `EventFileError` where it cannot be read any more."""
        return planned_event(self.event, self.revision)

    @property
    def card(self) -> Card:
        """What is known of allergens by plan and event, whichever tells more."""
        return allergen_card(event_of(self.event), self.record)

    def ticks(self, name: str) -> dict[str, str]:
        """How the lines of a list stand that were ticked."""
        ticks = list_ticks(event_id=self.event.pk, list_name=name)
        return {tick.key: tick.state for tick in ticks if tick.state != tick.State.OPEN}


Maker = Callable[[Source, Printing], bytes]


def _shopping(source: Source, printing: Printing) -> bytes:
    aisles = shopping(source.planned, source.units)
    return shopping_pdf(source.record, aisles, printing, ticks=source.ticks("shopping"))


def _packing(source: Source, printing: Printing) -> bytes:
    groups = packing(source.planned, source.record, source.units)
    return packing_pdf(source.record, groups, printing, ticks=source.ticks("packing"))


def _measuring(source: Source, printing: Printing) -> bytes:
    return measuring_pdf(source.record, measure_out(source.planned, source.units), printing)


def _leftovers(source: Source, printing: Printing) -> bytes:
    return leftovers_pdf(source.record, leftovers(source.planned, source.record, source.units), printing)


MAKERS: dict[str, Maker] = {
    "run-sheet": lambda source, printing: run_sheet_pdf(source.record, printing),
    "wall": lambda source, printing: wall_pdf(source.record, printing, start=source.start, hours=source.hours),
    "running-order": lambda source, printing: running_order_pdf(source.record, printing),
    "call-sheets": lambda source, printing: call_sheets_pdf(source.record, printing, addresses=source.addresses),
    "fire": lambda source, printing: coal_plan_pdf(source.record, printing),
    "shopping": _shopping,
    "packing": _packing,
    "measuring": _measuring,
    "leftovers": _leftovers,
    "allergens": lambda source, printing: allergen_sheet_pdf(source.record, source.card, printing),
    "table-cards": lambda source, printing: allergen_cards_pdf(source.record, source.card, printing),
}


def print_sheet(*, kind: str, source: Source, printing: Printing) -> bytes:
    """One of `MAKERS` as PDF; `NoSuchThingError` for a word that none goes by."""
    maker = MAKERS.get(kind)
    if maker is None:
        raise NoSuchThingError(gettext("There is no sheet of that name. Choose one on the page of papers."))
    return maker(source, printing)


@transaction.atomic
def make_links(*, event_id: int, helper_ids: Sequence[str]) -> dict[str, str]:
    """A new link for each of the helpers, by helper; those that they had before end."""
    return {helper: links.make_helper_link(event_id=event_id, helper_id=helper).token for helper in helper_ids}


def print_call_sheet(*, record: PlanRecord, helper_id: str, printing: Printing) -> bytes:
    """One helper's part as PDF."""
    return call_sheet_pdf(record, helper_id, printing)


def printing_for(
    *,
    record: PlanRecord,
    paper: str | None,
    hours: HourStyle,
    address: str | None,
    revision: int,
    drawing_words: Words,
) -> Printing:
    """How to print for a reader, in the language in force; `paper` None is the one that goes with the units."""
    chosen: Paper = "letter" if paper == "letter" else "a4" if paper == "a4" else usual_paper(record)
    return Printing(
        paper=chosen,
        hours=hours,
        address=address,
        revision=revision,
        language=(get_language() or "en").partition("-")[0],
        gettext=gettext,
        ngettext=ngettext,
        drawing_words=drawing_words,
    )


def usual_paper(record: PlanRecord) -> Paper:
    """The paper that goes with the event's units."""
    return "letter" if record.units == "us" else "a4"
