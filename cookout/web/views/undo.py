"""What was changed in an event lately, and taking it back."""

from urllib.parse import urlsplit
from uuid import UUID

from django.contrib import messages
from django.http import HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.urls import reverse
from django.utils.http import url_has_allowed_host_and_scheme
from django.utils.translation import gettext as _
from django.views.decorators.http import require_GET, require_POST

from cookout.core.errors import CookoutError
from cookout.services.editing import undo_edit
from cookout.store.selectors.edits import get_edit, list_edits
from cookout.web import answers
from cookout.web.guards import edited_event, seen_event, signed_in, user_id_of
from cookout.web.views.pressing import in_words


@require_GET
@signed_in
def listed(request: HttpRequest, event: UUID) -> HttpResponse:
    """Who changed what and when."""
    shared = seen_event(request, event)
    page = {"event": shared, "tab": "edits", "edits": list_edits(event_id=shared.pk)}
    return render(request, "cookout/event_edits.html", page)


@require_POST
@signed_in
def undo(request: HttpRequest, event: UUID, edit: int) -> HttpResponse:
    """Take a change back, and come back to the page where that was asked for."""
    changed = edited_event(request, event)
    found = get_edit(event_id=changed.pk, edit_id=edit)
    words = _("Taken back: %(words)s") % {"words": "" if found is None else found.words}
    try:
        done = undo_edit(event_id=changed.pk, user_id=user_id_of(request), edit_id=edit, words=words)
    except CookoutError as error:
        messages.error(request, in_words(error))
    else:
        answers.told(request, done.words, undo=reverse("event-undo", args=[changed.public_id, done.pk]))
    return redirect(_came_from(request) or reverse("event-edits", args=[changed.public_id]))


def _came_from(request: HttpRequest) -> str:
    """The page of this site that the request came from; empty where it came from elsewhere."""
    place = request.headers.get("Referer", "")
    if not url_has_allowed_host_and_scheme(place, {request.get_host()}):
        return ""
    parts = urlsplit(place)
    # Two strokes at the start would be another's host.
    return "/" + parts.path.lstrip("/") + (f"?{parts.query}" if parts.query else "")
