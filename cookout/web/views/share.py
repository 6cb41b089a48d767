"""Pages behind unguessable links, for helpers without an account."""

from django.http import Http404, HttpRequest, HttpResponse
from django.shortcuts import render
from django.utils import timezone
from django.views.decorators.http import require_GET

from cookout.store.selectors.links import Link
from cookout.web import answers
from cookout.web.guards import open_link, plan_of_link, planned_helper
from cookout.web.reading import tasks
from cookout.web.views import paper


@require_GET
def call_sheet(request: HttpRequest, token: str) -> HttpResponse:
    """A helper's own part, for one thumb: what is next, then everything."""
    link = _helper_link(token)
    revision, record = plan_of_link(link)
    sheet = tasks.call_sheet(record, planned_helper(record, link.helper), now=timezone.now())
    page = {
        "record": record,
        "revision": revision,
        "sheet": sheet,
        "token": token,
        "feed_address": answers.address(request, "feed", token=token),
    }
    return answers.unlisted(render(request, "cookout/call_sheet.html", page))


@require_GET
def call_sheet_pdf(request: HttpRequest, token: str) -> HttpResponse:
    """The same on paper."""
    link = _helper_link(token)
    revision, record = plan_of_link(link)
    helper = planned_helper(record, link.helper)
    return paper.helpers_own(request, record=record, helper=helper, revision=revision, token=token)


def _helper_link(token: str) -> Link:
    """Links to the whole event's calendar have no page."""
    link = open_link(token)
    if not link.helper:
        raise Http404("no page behind this link")
    return link
