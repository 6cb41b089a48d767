"""Calendars: subscribed by link, or downloaded by the planner."""

from uuid import UUID

from django.contrib import messages
from django.http import Http404, HttpRequest, HttpResponse, HttpResponseNotModified
from django.shortcuts import redirect, render
from django.utils.cache import get_conditional_response
from django.utils.translation import gettext
from django.views.decorators.http import require_GET, require_POST, require_safe

from cookout.services import calendars, links
from cookout.services.errors import NoSuchThingError
from cookout.services.qr import qr_svg
from cookout.store.selectors.links import Link
from cookout.web import answers
from cookout.web.guards import edited_event, open_link, seen_plan, signed_in

KIND = "text/calendar; charset=utf-8"


@require_safe
def feed(request: HttpRequest, token: str) -> HttpResponse:
    """The calendar behind a link; unchanged since the reader last looked, it costs one look-up."""
    link = open_link(token)
    revision = link.event.current
    if revision is None:
        raise Http404("no plan yet")
    etag = _etag(link, revision.number, request.GET.get("as", ""))
    if get_conditional_response(request, etag, int(revision.made_at.timestamp())) is not None:
        return answers.marked(HttpResponseNotModified(), etag=etag, changed_at=revision.made_at)
    response = HttpResponse(_text(request, link), content_type=KIND)
    return answers.marked(answers.unlisted(response), etag=etag, changed_at=revision.made_at)


@require_GET
@signed_in
def own(request: HttpRequest, event: UUID) -> HttpResponse:
    """The calendar of the whole event as a file."""
    owned, revision, _ = seen_plan(request, event)
    content = calendars.calendar(event_id=owned.pk)
    return answers.attachment(content, kind=KIND, name=f"{owned.key}-{revision.number}.ics")


@require_POST
@signed_in
def make_link(request: HttpRequest, event: UUID) -> HttpResponse:
    """Make a new address for the whole event's calendar and show it, once."""
    owned = edited_event(request, event)
    fresh = links.make_event_link(event_id=owned.pk)
    feed_address = answers.address(request, "feed", token=fresh.token)
    page = {"event": owned, "tab": "helpers", "feed_address": feed_address, "qr": qr_svg(feed_address)}
    return answers.shown_once(render(request, "cookout/link_made.html", page))


@require_POST
@signed_in
def end_link(request: HttpRequest, event: UUID) -> HttpResponse:
    """End the address of the whole event's calendar."""
    links.revoke_link(event_id=edited_event(request, event).pk)
    messages.success(request, gettext("That calendar address opens nothing any more."))
    return redirect("helpers", event)


def _text(request: HttpRequest, link: Link) -> bytes:
    try:
        return calendars.calendar_for_link(
            link=link, address=request.build_absolute_uri(), todos=request.GET.get("as") == "todos"
        )
    except NoSuchThingError as error:
        raise Http404("not in this plan") from error


def _etag(link: Link, revision: int, form: str) -> str:
    return f'"{link.pk}-{revision}{"-todos" if form == "todos" else ""}"'
