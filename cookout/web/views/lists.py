"""Lists that come from the plan, ticked by whoever plans: shopping, measuring, packing, leftovers; the card."""

from dataclasses import dataclass
from datetime import datetime, timedelta
from uuid import UUID

from django.contrib import messages
from django.http import Http404, HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.urls import reverse
from django.utils import timezone
from django.utils.translation import gettext as _
from django.views.decorators.http import require_GET, require_POST

from cookout.core.planning.event import Event as CoreEvent
from cookout.core.planning.lists import allergen_card
from cookout.core.planning.record import PlanRecord
from cookout.services import lists
from cookout.store.selectors.events import Event, event_of
from cookout.store.selectors.lists import list_all_ticks, list_ticks, planned_event, stamp_of
from cookout.store.selectors.revisions import Revision
from cookout.web import preferences
from cookout.web.forms.lists import TickForm
from cookout.web.guards import edited_plan, seen_event_head, seen_plan, signed_in, user_id_of
from cookout.web.reading.cards import card_page
from cookout.web.reading.lists import KINDS, TickList, tick_list

_OVERLAP = timedelta(seconds=30)
"""A tick may be stored later than its time says; so much is sent a second time rather than missed."""


@dataclass(frozen=True, slots=True)
class Planned:
    """An event with its plan, and the event as it was when it was planned."""

    row: Event
    revision: Revision
    record: PlanRecord
    core: CoreEvent

    @property
    def units(self) -> str:
        """The units that the reader wants."""
        return preferences.current().units or self.core.units

    @property
    def page(self) -> dict[str, object]:
        """What every page of lists shows; `stale` where the event was changed since it was planned."""
        stale = self.row.document != self.revision.document
        return {"event": self.row, "revision": self.revision, "tab": "lists", "stale": stale}

    def listed(self, name: str) -> TickList:
        """One of the lists with its ticks as they are now."""
        ticks = list_ticks(event_id=self.row.pk, list_name=name)
        return tick_list(name, self.core, self.record, self.units, ticks)


@require_GET
@signed_in
def overview(request: HttpRequest, event: UUID) -> HttpResponse:
    """All lists, and how far each of them is."""
    planned = _planned(seen_plan(request, event))
    ticks = list_all_ticks(event_id=planned.row.pk)
    found = [tick_list(name, planned.core, planned.record, planned.units, ticks.get(name, ())) for name in KINDS]
    return render(request, "cookout/lists.html", {**planned.page, "lists": found})


@require_GET
@signed_in
def show(request: HttpRequest, event: UUID, name: str) -> HttpResponse:
    """One list to tick, whole or only what is left of it."""
    planned = _planned(seen_plan(request, event))
    left_only = "left" in request.GET
    seen = _seen(planned.row, _known(name))
    listed = planned.listed(name)
    page = {"whole": listed, "listed": listed.left() if left_only else listed, "left_only": left_only}
    return render(request, "cookout/list.html", {**planned.page, **page, **seen})


@require_POST
@signed_in
def tick(request: HttpRequest, event: UUID, name: str) -> HttpResponse:
    """Set how one line stands; the answer is the line, or without JavaScript the list at that line."""
    planned = _planned(edited_plan(request, event))
    press = TickForm(request.POST).press()
    if press is None or planned.listed(_known(name)).line(press.key) is None:
        return _line_gone(request, event, name)
    lists.set_tick(
        event_id=planned.row.pk,
        user_id=user_id_of(request),
        list_name=name,
        key=press.key,
        state=press.state,
        told=press.told,
    )
    if not request.headers.get("HX-Request"):
        return redirect(f"{reverse('list', args=[event, name])}#line-{press.key}")
    listed = planned.listed(name)
    return render(
        request, "cookout/_list_ticked.html", {**planned.page, "whole": listed, "line": listed.line(press.key)}
    )


@require_GET
@signed_in
def news(request: HttpRequest, event: UUID, name: str) -> HttpResponse:
    """What others ticked since the page was made; nothing at all where nobody did."""
    head = seen_event_head(request, event)
    seen = _seen(head, _known(name))
    if head.current_id is None:
        raise Http404("no plan yet")
    if request.GET.get("seen") == seen["stamp"] and request.GET.get("plan") == str(head.current_id):
        return HttpResponse(status=204)
    planned = _planned(seen_plan(request, event))
    listed = planned.listed(name)
    since = _moment(request.GET.get("at", ""))
    changed = {each.key for each in list_ticks(event_id=head.pk, list_name=name, since=since)}
    page = {
        "whole": listed,
        "changed": [each for each in listed.lines if each.line.key in changed],
        "replanned": request.GET.get("plan") != str(head.current_id),
    }
    return render(request, "cookout/_list_news.html", {**planned.page, **page, **seen})


@require_GET
@signed_in
def card(request: HttpRequest, event: UUID) -> HttpResponse:
    """The allergen card for the table: the plan and the event as it is now, whichever tells more."""
    shared, revision, record = seen_plan(request, event)
    planned = _planned((shared, revision, record))
    now = planned.core if shared.document == revision.document else event_of(shared)
    shown = card_page(allergen_card(now, record))
    return render(request, "cookout/list_card.html", {**planned.page, **shown})


def _line_gone(request: HttpRequest, event: UUID, name: str) -> HttpResponse:
    """Back to the list as it is now, and why; a script's answer has the page fetched anew."""
    messages.warning(request, _("That line is not on the list any more: the plan has changed. This is the list now."))
    if request.headers.get("HX-Request"):
        return HttpResponse(headers={"HX-Refresh": "true"})
    return redirect("list", event, name)


def _planned(found: tuple[Event, Revision, PlanRecord]) -> Planned:
    shared, revision, record = found
    return Planned(shared, revision, record, planned_event(shared, revision))


def _known(name: str) -> str:
    if name not in KINDS:
        raise Http404("no such list")
    return name


def _seen(event: Event, name: str) -> dict[str, object]:
    """What a page remembers of the ticks it shows, to ask for news of later ones.

    Read before the ticks themselves: one set in between is then told a second time, and not missed.
    """
    return {"stamp": stamp_of(event_id=event.pk, list_name=name), "asked_at": timezone.now()}


def _moment(text: str) -> datetime | None:
    """The moment from which ticks are news; None, which is all of them, where the page sent none."""
    try:
        found = datetime.fromisoformat(text)
    except ValueError:
        return None
    return found - _OVERLAP if found.tzinfo is not None else None
