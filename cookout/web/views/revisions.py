"""Earlier plans of an event; they never change."""

from uuid import UUID

from django.contrib import messages
from django.http import HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.utils.translation import gettext as _
from django.views.decorators.http import require_GET, require_POST

from cookout.core.errors import CookoutError
from cookout.core.planning.result import Status
from cookout.services import revisions
from cookout.services.errors import ServiceError
from cookout.store.selectors.revisions import get_revision, list_revisions, record_of
from cookout.web import answers, preferences
from cookout.web.guards import edited_event, seen_event, seen_revision, signed_in, user_id_of
from cookout.web.reading.plan import earlier_page
from cookout.web.reading.status import HEADLINES
from cookout.web.reading.trials import difference


@require_GET
@signed_in
def listed(request: HttpRequest, event: UUID) -> HttpResponse:
    """Every revision, newest first."""
    owned = seen_event(request, event)
    rows = [(each, HEADLINES[Status(each.status)]) for each in list_revisions(event_id=owned.pk)]
    return render(request, "cookout/revisions.html", {"event": owned, "rows": rows, "tab": "revisions"})


@require_GET
@signed_in
def show(request: HttpRequest, event: UUID, number: int) -> HttpResponse:
    """One revision, laid out as the event page is."""
    owned, revision = seen_revision(request, event, number)
    page = earlier_page(revision, by=request.GET.get("by", ""))
    return render(request, "cookout/revision.html", {"event": owned, "tab": "revisions", **page})


@require_GET
@signed_in
def download_plan(request: HttpRequest, event: UUID, number: int) -> HttpResponse:
    """The revision as JSON."""
    owned, revision = seen_revision(request, event, number)
    name = f"{owned.key}-{number}.json"
    return answers.attachment(answers.json_text(revision.payload), kind="application/json", name=name)


@require_GET
@signed_in
def download_document(request: HttpRequest, event: UUID, number: int) -> HttpResponse:
    """The event file that the revision was planned from."""
    owned, revision = seen_revision(request, event, number)
    name = f"{owned.key}-{number}.toml"
    return answers.attachment(revision.document, kind="application/toml; charset=utf-8", name=name)


@require_GET
@signed_in
def compared(request: HttpRequest, event: UUID) -> HttpResponse:
    """Two revisions side by side, named in the query as `before` and `after`."""
    shared = seen_event(request, event)
    numbers = [request.GET.get(name, "")[:8] for name in ("before", "after")]
    found = [get_revision(event_id=shared.pk, number=int(each)) for each in numbers if each.isdecimal()]
    if len(found) != 2 or found[0] is None or found[1] is None:
        messages.error(request, _("Choose two revisions to compare."))
        return redirect("revisions", event)
    units = preferences.current().units
    before, after = (record_of(each, units) for each in found if each is not None)
    query = f"?before={numbers[0]}&after={numbers[1]}&"
    shown = difference(before, after, by=request.GET.get("by", ""))
    page = {"event": shared, "tab": "revisions", "old": found[0], "new": found[1], "query": query, **shown}
    return render(request, "cookout/revisions_compared.html", page)


@require_POST
@signed_in
def name(request: HttpRequest, event: UUID, number: int) -> HttpResponse:
    """Call a revision something."""
    shared = edited_event(request, event)
    try:
        revisions.name_revision(event_id=shared.pk, number=number, name=request.POST.get("name", ""))
    except ServiceError as error:
        messages.error(request, str(error))
    return redirect("revisions", event)


@require_POST
@signed_in
def bring_back(request: HttpRequest, event: UUID, number: int) -> HttpResponse:
    """Make an earlier revision the plan again."""
    shared = edited_event(request, event)
    words = _("Brought back revision %(number)d") % {"number": number}
    try:
        fresh = revisions.bring_back(event_id=shared.pk, number=number, user_id=user_id_of(request), words=words)
    except CookoutError as error:
        messages.error(request, str(error))
        return redirect("revisions", event)
    answers.told(
        request, _("%(words)s; it is the plan now, as revision %(number)d.") % {"words": words, "number": fresh.number}
    )
    return redirect("event", event)
