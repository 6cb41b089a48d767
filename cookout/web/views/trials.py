"""What if: trials beside the current plan, with what they would change; kept or dropped."""

from uuid import UUID

from django.contrib import messages
from django.http import Http404, HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.utils.translation import gettext as _
from django.views.decorators.http import require_GET, require_http_methods, require_POST

from cookout.core.errors import CookoutError
from cookout.core.planning.whatif import describe
from cookout.services import trials
from cookout.services.plan import FRESH
from cookout.store.selectors.events import Event, event_of
from cookout.store.selectors.trials import PlanRun, get_trial, list_trials
from cookout.web import answers
from cookout.web.forms.trials import FORMS, empty_forms
from cookout.web.guards import edited_event, seen_event, signed_in, user_id_of
from cookout.web.reading.run import run_panel_of
from cookout.web.reading.trials import suggested, trial_page


@require_GET
@signed_in
def listed(request: HttpRequest, event: UUID) -> HttpResponse:
    """What could be tried, and what was."""
    return _list_page(request, seen_event(request, event))


@require_POST
@signed_in
def start(request: HttpRequest, event: UUID) -> HttpResponse:
    """Try one change, sent as a kind and its fields."""
    changed = edited_event(request, event)
    kind = request.POST.get("kind", "")
    if kind not in FORMS:
        raise Http404("no such kind of trial")
    core = event_of(changed)
    form = FORMS[kind](core, request.POST)
    if not form.is_valid():
        return _list_page(request, changed, form, status=422)
    try:
        change = form.change()
        run = trials.try_change(
            event_id=changed.pk, user_id=user_id_of(request), change=change, words=describe(core, change)
        )
    except CookoutError as error:
        messages.error(request, str(error))
        return redirect("trials", event)
    return redirect("trial", event, run.pk)


@require_GET
@signed_in
def show(request: HttpRequest, event: UUID, run: int) -> HttpResponse:
    """One trial: its progress, or what it would change."""
    shared = seen_event(request, event)
    found = _trial(shared, run)
    page = {"event": shared, "tab": "trials", "run": found, "panel": run_panel_of(found, shared), "query": "?"}
    stale = found.base_document != shared.document or found.base_id != shared.current_id
    return render(
        request, "cookout/trial.html", {**page, "stale": stale, **trial_page(found, by=request.GET.get("by", ""))}
    )


@require_POST
@signed_in
def keep(request: HttpRequest, event: UUID, run: int) -> HttpResponse:
    """Make the trial's plan the event's."""
    changed = edited_event(request, event)
    found = _trial(changed, run)
    try:
        revision = trials.keep_trial(event_id=changed.pk, run_id=found.pk, user_id=user_id_of(request))
    except CookoutError as error:
        messages.error(request, str(error))
        return redirect("trial", event, run)
    answers.told(request, _("Kept: revision %(number)d is the plan now.") % {"number": revision.number})
    return redirect("event", event)


@require_POST
@signed_in
def drop(request: HttpRequest, event: UUID, run: int) -> HttpResponse:
    """Put the trial away."""
    changed = edited_event(request, event)
    found = _trial(changed, run)
    try:
        trials.drop_trial(event_id=changed.pk, run_id=found.pk)
    except CookoutError as error:
        messages.error(request, str(error))
    else:
        answers.told(request, _("Dropped; the plan is as it was."))
    return redirect("trials", event)


@require_http_methods(["POST"])
@signed_in
def again(request: HttpRequest, event: UUID, run: int) -> HttpResponse:
    """Try the same once more, with the event as it is now."""
    changed = edited_event(request, event)
    found = _trial(changed, run)
    try:
        if found.change and found.change != FRESH:
            fresh = trials.try_change(
                event_id=changed.pk, user_id=user_id_of(request), change=found.change, words=found.words
            )
        else:
            fresh = trials.ask_for_plan(
                event_id=changed.pk, user_id=user_id_of(request), words=found.words, fresh=bool(found.change)
            )
    except CookoutError as error:
        messages.error(request, str(error))
        return redirect("trial", event, run)
    return redirect("trial", event, fresh.pk)


def _trial(event: Event, run: int) -> PlanRun:
    found = get_trial(event_id=event.pk, run_id=run)
    if found is None:
        raise Http404("no such trial")
    return found


def _list_page(request: HttpRequest, event: Event, sent: object = None, *, status: int = 200) -> HttpResponse:
    core = event_of(event)
    forms = [sent if getattr(sent, "kind", None) == form.kind else form for form in empty_forms(core)]
    page = {
        "event": event,
        "tab": "trials",
        "suggested": suggested(core),
        "forms": forms,
        "runs": list_trials(event_id=event.pk),
    }
    return render(request, "cookout/trials.html", page, status=status)
