"""The list of events, and the event file: new, edited, downloaded, deleted."""

from uuid import UUID

from django.contrib import messages
from django.http import HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.utils import timezone
from django.views.decorators.http import require_GET, require_http_methods

from cookout.core.errors import EventFileError
from cookout.services import events
from cookout.services.errors import EventChangedError
from cookout.store.selectors.events import Event, list_events
from cookout.web import answers
from cookout.web.forms.events import DocumentForm, NewEventForm
from cookout.web.guards import own_event, signed_in, user_id_of
from cookout.web.reading.events import event_rows


@require_GET
@signed_in
def start(request: HttpRequest) -> HttpResponse:
    """The user's events, each with its next serving."""
    rows = event_rows(list_events(owner_id=user_id_of(request)), now=timezone.now())
    has_examples = any(row.event.is_example for row in rows)
    return render(request, "cookout/start.html", {"rows": rows, "has_examples": has_examples})


@require_http_methods(["GET", "POST"])
@signed_in
def new(request: HttpRequest) -> HttpResponse:
    """A new event from a file or from typed text."""
    form = NewEventForm(request.POST or None, request.FILES or None)
    faults: tuple[object, ...] = ()
    if form.is_valid():
        try:
            event = events.create_event(owner_id=user_id_of(request), document=form.cleaned_data["document"])
        except EventFileError as error:
            faults, form = error.faults, NewEventForm(initial={"document": form.cleaned_data["document"]})
        else:
            return redirect("event", event.public_id)
    return render(request, "cookout/event_new.html", {"form": form, "faults": faults}, status=_status(faults))


@require_http_methods(["GET", "POST"])
@signed_in
def document(request: HttpRequest, event: UUID) -> HttpResponse:
    """The event file for editing; whatever is wrong with it, nothing typed is lost."""
    owned = own_event(request, event)
    form = DocumentForm(request.POST or None, initial={"document": owned.document, "version": owned.version})
    page: dict[str, object] = {"event": owned, "form": form, "tab": "document"}
    if form.is_valid():
        try:
            events.save_document(event_id=owned.pk, **form.cleaned_data)
        except EventFileError as error:
            page["faults"] = error.faults
        except EventChangedError as error:
            page.update(changed=error, form=_again(form, error))
        else:
            messages.success(request, "Saved. The plan below is still the old one until you plan again.")
            return redirect("event", owned.public_id)
    return render(request, "cookout/event_document.html", page, status=_status(page.get("faults", page.get("changed"))))


@require_GET
@signed_in
def download(request: HttpRequest, event: UUID) -> HttpResponse:
    """The event file as a file."""
    owned = own_event(request, event)
    return answers.attachment(owned.document, kind="application/toml; charset=utf-8", name=owned.file_name)


@require_http_methods(["GET", "POST"])
@signed_in
def delete(request: HttpRequest, event: UUID) -> HttpResponse:
    """Ask once, then delete the event with all that hangs on it."""
    owned: Event = own_event(request, event)
    if request.method == "GET":
        return render(request, "cookout/event_delete.html", {"event": owned, "tab": "document"})
    events.delete_event(event_id=owned.pk)
    messages.success(request, f"{owned.name} is deleted.")
    return redirect("start")


def _again(form: DocumentForm, error: EventChangedError) -> DocumentForm:
    """The typed text, now on top of what is stored: the next save replaces it knowingly."""
    return DocumentForm(initial={"document": form.cleaned_data["document"], "version": error.version})


def _status(trouble: object) -> int:
    return 422 if trouble else 200
