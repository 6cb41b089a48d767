"""The tasks of a plan: all of them as a table, each with what is to be known of it, and pins by hand."""

from uuid import UUID

from django.http import Http404, HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.utils.cache import patch_vary_headers
from django.views.decorators.http import require_GET, require_POST

from cookout.core.errors import CookoutError
from cookout.core.planning.changes import Change
from cookout.core.planning.record import PlannedTask, PlanRecord
from cookout.core.planning.whatif import describe
from cookout.services import trials
from cookout.store.selectors.events import Event, event_of
from cookout.web import preferences
from cookout.web.forms.pins import PinForm
from cookout.web.guards import edited_plan, seen_plan, signed_in, user_id_of
from cookout.web.reading.task import find_task, task_page
from cookout.web.reading.tasklist import task_list


@require_GET
@signed_in
def listed(request: HttpRequest, event: UUID) -> HttpResponse:
    """Every task in order of time, or those of one dish or one helper."""
    shared, revision, record = seen_plan(request, event)
    page = {"event": shared, "revision": revision, "record": record, "tab": "timeline"}
    chosen = task_list(record, dish=request.GET.get("dish", ""), helper=request.GET.get("helper", ""))
    return render(request, "cookout/tasks.html", page | chosen)


@require_GET
@signed_in
def show(request: HttpRequest, event: UUID, task: str) -> HttpResponse:
    """One task; for the page's own script as a part to be shown beside the timeline."""
    shared, _, record = seen_plan(request, event)
    return _answer(request, shared, record, _task(record, task), None)


@require_POST
@signed_in
def pin(request: HttpRequest, event: UUID, task: str) -> HttpResponse:
    """Try the plan with the task pinned as the form says; what it would change is shown before it is kept."""
    shared, _, record = edited_plan(request, event)
    found = _task(record, task)
    form = PinForm(event_of(shared), found, request.POST)
    if form.is_valid():
        try:
            return _tried(request, shared, form.change())
        except CookoutError as error:
            form.add_error(None, str(error))
    return _answer(request, shared, record, found, form, status=422)


@require_POST
@signed_in
def unpin(request: HttpRequest, event: UUID, task: str) -> HttpResponse:
    """Try the plan without what was pinned of the task."""
    shared, _, record = edited_plan(request, event)
    found = _task(record, task)
    try:
        return _tried(request, shared, {"kind": "unpin", "task": found.id})
    except CookoutError as error:
        form = PinForm(event_of(shared), found)
        return _answer(request, shared, record, found, form, status=409, trouble=str(error))


def _tried(request: HttpRequest, event: Event, change: Change) -> HttpResponse:
    """On to the trial of the change, which a page in parts goes to as a whole."""
    words = describe(event_of(event), change)
    run = trials.try_change(event_id=event.pk, user_id=user_id_of(request), change=change, words=words)
    return redirect("trial", event.public_id, run.pk)


def _task(record: PlanRecord, task_id: str) -> PlannedTask:
    found = find_task(record, task_id)
    if found is None:
        raise Http404("no such task")
    return found


def _answer(
    request: HttpRequest,
    event: Event,
    record: PlanRecord,
    task: PlannedTask,
    form: PinForm | None,
    *,
    status: int = 200,
    trouble: str = "",
) -> HttpResponse:
    core = event_of(event)
    shown = task_page(record, task, core, units=preferences.current().units or core.units)
    page = {"event": event, "record": record, "tab": "timeline", "shown": shown, "trouble": trouble}
    page["form"] = (form or PinForm(core, task)) if event.may_edit else None
    is_part = bool(request.headers.get("HX-Request"))
    template = "cookout/_task.html" if is_part else "cookout/task.html"
    response = render(request, template, page | {"is_part": is_part}, status=status)
    patch_vary_headers(response, ["HX-Request"])
    return response
