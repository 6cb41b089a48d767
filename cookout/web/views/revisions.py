"""Earlier plans of an event; they never change."""

from uuid import UUID

from django.http import HttpRequest, HttpResponse
from django.shortcuts import render
from django.views.decorators.http import require_GET

from cookout.core.planning.result import Status
from cookout.store.selectors.revisions import list_revisions
from cookout.web import answers
from cookout.web.guards import own_event, own_revision, signed_in
from cookout.web.reading.plan import plan_page
from cookout.web.reading.status import HEADLINES


@require_GET
@signed_in
def listed(request: HttpRequest, event: UUID) -> HttpResponse:
    """Every revision, newest first."""
    owned = own_event(request, event)
    rows = [(each, HEADLINES[Status(each.status)]) for each in list_revisions(event_id=owned.pk)]
    return render(request, "cookout/revisions.html", {"event": owned, "rows": rows, "tab": "revisions"})


@require_GET
@signed_in
def show(request: HttpRequest, event: UUID, number: int) -> HttpResponse:
    """One revision, laid out as the event page is."""
    owned, revision = own_revision(request, event, number)
    page = plan_page(revision, by=request.GET.get("by", ""), now=None)
    return render(request, "cookout/revision.html", {"event": owned, "tab": "revisions", **page})


@require_GET
@signed_in
def download_plan(request: HttpRequest, event: UUID, number: int) -> HttpResponse:
    """The revision as JSON."""
    owned, revision = own_revision(request, event, number)
    name = f"{owned.key}-{number}.json"
    return answers.attachment(answers.json_text(revision.payload), kind="application/json", name=name)


@require_GET
@signed_in
def download_document(request: HttpRequest, event: UUID, number: int) -> HttpResponse:
    """The event file that the revision was planned from."""
    owned, revision = own_revision(request, event, number)
    name = f"{owned.key}-{number}.toml"
    return answers.attachment(revision.document, kind="application/toml; charset=utf-8", name=name)
