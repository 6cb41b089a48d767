"""The list of events, and the event file: new, edited, downloaded, deleted."""

from uuid import UUID

from django.conf import settings
from django.contrib import messages
from django.http import Http404, HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.urls import reverse
from django.utils import timezone
from django.utils.translation import gettext as _
from django.views.decorators.http import require_GET, require_http_methods, require_POST

from cookout.core.errors import EventFileError
from cookout.services import events
from cookout.services.errors import EventChangedError
from cookout.store.selectors.events import Event, get_deleted_event, list_deleted_events, list_events
from cookout.store.selectors.keeping import list_templates
from cookout.web import answers
from cookout.web.forms.events import DocumentForm
from cookout.web.guards import edited_event, own_event, seen_event, signed_in, user_id_of
from cookout.web.reading.events import event_rows

HINT = "start"
"""The first-run hint of the start page."""


@require_GET
@signed_in
def start(request: HttpRequest) -> HttpResponse:
    """The user's events, each with its next serving; templates, and what was thrown away."""
    user_id = user_id_of(request)
    rows = event_rows(list_events(user_id=user_id), now=timezone.now())
    page = {
        "rows": rows,
        "has_examples": any(row.event.is_example for row in rows),
        "templates": list_templates(owner_id=user_id),
        "thrown_away": list_deleted_events(owner_id=user_id),
        "days": settings.COOKOUT_KEEP_DELETED_DAYS,
        "shows_hint": HINT not in getattr(request.user, "hints_seen", []),
    }
    return render(request, "cookout/start.html", page)


@require_http_methods(["GET", "POST"])
@signed_in
def document(request: HttpRequest, event: UUID) -> HttpResponse:
    """The event file for editing; whatever is wrong with it, nothing typed is lost."""
    owned = edited_event(request, event)
    form = DocumentForm(request.POST or None, initial={"document": owned.document, "version": owned.version})
    page: dict[str, object] = {"event": owned, "form": form, "tab": "document"}
    if form.is_valid():
        try:
            events.save_document(event_id=owned.pk, user_id=user_id_of(request), **form.cleaned_data)
        except EventFileError as error:
            page["faults"] = error.faults
        except EventChangedError as error:
            page.update(changed=error, form=_again(form, error))
        else:
            messages.success(request, _("Saved. The plan below is still the old one until you plan again."))
            return redirect("event", owned.public_id)
    return render(request, "cookout/event_document.html", page, status=_status(page.get("faults", page.get("changed"))))


@require_GET
@signed_in
def download(request: HttpRequest, event: UUID) -> HttpResponse:
    """The event file as a file."""
    owned = seen_event(request, event)
    return answers.attachment(owned.document, kind="application/toml; charset=utf-8", name=owned.file_name)


@require_http_methods(["GET", "POST"])
@signed_in
def delete(request: HttpRequest, event: UUID) -> HttpResponse:
    """Say what goes with it, then throw the event away; for some days it can be had back."""
    owned: Event = own_event(request, event)
    if request.method == "GET":
        page = {"event": owned, "tab": "document", "days": settings.COOKOUT_KEEP_DELETED_DAYS}
        return render(request, "cookout/event_delete.html", page)
    events.delete_event(event_id=owned.pk)
    words = _("%(event)s is thrown away.") % {"event": owned.name}
    answers.told(request, words, undo=reverse("event-back", args=[owned.public_id]))
    return redirect("start")


@require_POST
@signed_in
def bring_back(request: HttpRequest, event: UUID) -> HttpResponse:
    """Have an event back that was thrown away."""
    found = _thrown_away(request, event)
    events.bring_back_event(owner_id=found.owner_id, public_id=event)
    answers.told(request, _("%(event)s is back, with its links and calendars.") % {"event": found.name})
    return redirect("event", event)


@require_POST
@signed_in
def erase(request: HttpRequest, event: UUID) -> HttpResponse:
    """Remove an event that was thrown away for good."""
    found = _thrown_away(request, event)
    events.erase_event(owner_id=found.owner_id, public_id=event)
    messages.success(request, _("%(event)s is deleted for good.") % {"event": found.name})
    return redirect("start")


def _thrown_away(request: HttpRequest, event: UUID) -> Event:
    found = get_deleted_event(owner_id=user_id_of(request), public_id=event)
    if found is None:
        raise Http404("no such event thrown away")
    return found


def _again(form: DocumentForm, error: EventChangedError) -> DocumentForm:
    """The typed text, now on top of what is stored: the next save replaces it knowingly."""
    return DocumentForm(initial={"document": form.cleaned_data["document"], "version": error.version})


def _status(trouble: object) -> int:
    return 422 if trouble else 200
