"""The event page, the heart: timeline, status, servings, and planning itself."""

from typing import cast
from uuid import UUID

from django.contrib import messages
from django.http import HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.urls import reverse
from django.utils import timezone
from django.utils.translation import gettext as _
from django.views.decorators.http import require_GET, require_POST

from cookout.core.errors import CookoutError
from cookout.services import plan, trials
from cookout.services.errors import ServiceError
from cookout.store.selectors.plan import PlanRun, last_run
from cookout.web import answers
from cookout.web.guards import edited_event, edited_run, seen_event, seen_plan, seen_run, signed_in, user_id_of
from cookout.web.reading.plan import current_page
from cookout.web.reading.run import run_panel_of
from cookout.web.reading.table import plan_csv


@require_GET
@signed_in
def show(request: HttpRequest, event: UUID) -> HttpResponse:
    """The event with its current plan, and how planning stands."""
    owned = seen_event(request, event)
    page = current_page(owned.current, event=owned.public_id, now=timezone.now())
    stale = owned.current is not None and owned.current.document != owned.document
    panel = run_panel_of(last_run(event_id=owned.pk), owned)
    shown = {"event": owned, "tab": "plan", "stale": stale, "panel": panel, **page}
    return render(request, "cookout/plan.html", shown)


@require_POST
@signed_in
def start(request: HttpRequest, event: UUID) -> HttpResponse:
    """Ask for a plan of the event as it stands."""
    owned = edited_event(request, event)
    try:
        fresh = "fresh" in request.POST
        words = _("Planned from scratch") if fresh else _("Planned again")
        run = trials.ask_for_plan(event_id=owned.pk, user_id=user_id_of(request), words=words, fresh=fresh)
    except ServiceError as error:
        messages.error(request, str(error))
        return _to_panel(event)
    return redirect("trial", event, run.pk) if run.purpose == run.Purpose.TRIAL else _to_panel(event)


@require_GET
@signed_in
def run_panel(request: HttpRequest, event: UUID, run: int) -> HttpResponse:
    """The progress of a run, asked for again and again; when the run is over the whole page is fetched anew."""
    found = seen_run(request, event, run)
    if not request.headers.get("HX-Request"):
        return _to_panel(event)
    shown = {"event": found.event, "panel": run_panel_of(found, found.event)}
    response = render(request, "cookout/_run.html", shown)
    if not found.is_active:
        response.headers["HX-Refresh"] = "true"
    return response


@require_POST
@signed_in
def stop(request: HttpRequest, event: UUID, run: int) -> HttpResponse:
    """End the run soon and keep the best plan so far."""
    plan.stop_planning(run_id=edited_run(request, event, run).pk)
    return _to_panel(event)


@require_POST
@signed_in
def cancel(request: HttpRequest, event: UUID, run: int) -> HttpResponse:
    """End the run and throw its plan away."""
    plan.cancel_planning(run_id=edited_run(request, event, run).pk)
    return _to_panel(event)


@require_POST
@signed_in
def take_way_out(request: HttpRequest, event: UUID, run: int, number: int) -> HttpResponse:
    """Change the event by a way out that a run offered, and plan it again."""
    found: PlanRun = edited_run(request, event, run)
    words = _("Planned again")
    try:
        if found.purpose == found.Purpose.TRIAL:
            tried = trials.try_way_out(run_id=found.pk, number=number, user_id=user_id_of(request))
            return redirect("trial", event, tried.pk)
        trials.take_way_out(run_id=found.pk, number=number, user_id=user_id_of(request), words=words)
    except CookoutError as error:
        messages.error(request, str(error))
    else:
        messages.success(request, _("The event is changed and is being planned again."))
    return _to_panel(event)


@require_GET
@signed_in
def download(request: HttpRequest, event: UUID) -> HttpResponse:
    """The current plan as JSON, in the form that README.md describes."""
    owned, revision, _ = seen_plan(request, event)
    content = answers.json_text(cast("dict[str, object]", revision.payload))
    return answers.attachment(content, kind="application/json", name=f"{owned.key}-{revision.number}.json")


@require_GET
@signed_in
def download_table(request: HttpRequest, event: UUID) -> HttpResponse:
    """The current plan as a table for spreadsheets."""
    owned, revision, record = seen_plan(request, event)
    return answers.attachment(
        plan_csv(record), kind="text/csv; charset=utf-8", name=f"{owned.key}-{revision.number}.csv"
    )


def _to_panel(event: UUID) -> HttpResponse:
    return redirect(reverse("event", args=[event]) + "#planning")
