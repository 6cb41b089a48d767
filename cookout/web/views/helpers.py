"""The crew as the planner sees it: call times, call sheets, and the links that are handed out."""

from uuid import UUID

from django.contrib import messages
from django.http import HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.utils import timezone
from django.utils.translation import gettext
from django.views.decorators.http import require_GET, require_POST

from cookout.services import links
from cookout.services.qr import qr_svg
from cookout.store.selectors.links import list_open_links
from cookout.web import answers
from cookout.web.guards import edited_plan, planned_helper, seen_plan, signed_in
from cookout.web.reading.tasks import call_sheet


@require_GET
@signed_in
def listed(request: HttpRequest, event: UUID) -> HttpResponse:
    """Everyone in the crew, by call time, and who has a link."""
    owned, revision, record = seen_plan(request, event)
    made = {link.helper: link for link in list_open_links(event_id=owned.pk)}
    crew = sorted(
        record.helpers, key=lambda each: (each.called_at is None, each.called_at or timezone.now(), each.name)
    )
    rows = [(helper, made.get(helper.id)) for helper in crew]
    page = {"event": owned, "revision": revision, "record": record, "tab": "helpers", "rows": rows}
    return render(request, "cookout/helpers.html", {**page, "calendar_link": made.get("")})


@require_GET
@signed_in
def show(request: HttpRequest, event: UUID, helper: str) -> HttpResponse:
    """One helper's call sheet, as the planner may always see it."""
    owned, revision, record = seen_plan(request, event)
    found = planned_helper(record, helper)
    link = list_open_links(event_id=owned.pk).filter(helper=found.id).first()
    sheet = call_sheet(record, found, now=timezone.now())
    page = {"event": owned, "revision": revision, "record": record, "tab": "helpers", "sheet": sheet, "link": link}
    return render(request, "cookout/helper.html", page)


@require_POST
@signed_in
def make_link(request: HttpRequest, event: UUID, helper: str) -> HttpResponse:
    """Make the helper a new link and show it, once."""
    owned, _, record = edited_plan(request, event)
    found = planned_helper(record, helper)
    fresh = links.make_helper_link(event_id=owned.pk, helper_id=found.id)
    page_address = answers.address(request, "call-sheet", token=fresh.token)
    page = {
        "event": owned,
        "tab": "helpers",
        "helper": found,
        "page_address": page_address,
        "feed_address": answers.address(request, "feed", token=fresh.token),
        "qr": qr_svg(page_address),
    }
    return answers.shown_once(render(request, "cookout/link_made.html", page))


@require_POST
@signed_in
def end_link(request: HttpRequest, event: UUID, helper: str) -> HttpResponse:
    """End the helper's link."""
    owned, _, record = edited_plan(request, event)
    found = planned_helper(record, helper)
    links.revoke_link(event_id=owned.pk, helper_id=found.id)
    messages.success(request, gettext("The link of %(name)s opens nothing any more.") % {"name": found.name})
    return redirect("helper", event, found.id)
