"""Pages with many small forms: each button sends what it wants as `do`, and the page is shown again."""

from collections.abc import Callable, Mapping, Sequence
from typing import Any
from uuid import UUID

from django import forms
from django.contrib import messages
from django.http import Http404, HttpRequest, HttpResponse
from django.shortcuts import redirect
from django.urls import reverse
from django.utils.translation import gettext as _

from cookout.core.errors import CookoutError, EventFileError
from cookout.core.planning.parts import Part
from cookout.services import editing
from cookout.services.editing import Changed
from cookout.services.errors import PartChangedError
from cookout.store.selectors.events import Event
from cookout.web import answers
from cookout.web.forms.parts import PartForm
from cookout.web.guards import edited_event, seen_event, user_id_of

Shown = forms.Form | None
"""A form that was sent and has something wrong, which a page shows in its place."""

Outcome = forms.Form | str
"""A form with something wrong, to be shown again; or the name of the place on the page to come back to."""

Action = Callable[[HttpRequest, Event], Outcome]
Page = Callable[..., HttpResponse]


def page_of_forms(
    request: HttpRequest, event: UUID, actions: Mapping[str, Action], page: Page, view: str
) -> HttpResponse:
    """A page of an event's forms for who may see it, and what its buttons do for who may change the event."""
    if request.method == "POST":
        return pressed(request, edited_event(request, event), actions, page, view)
    return page(request, seen_event(request, event))


def by_button(
    request: HttpRequest, actions: Mapping[str, Callable[[HttpRequest], HttpResponse]], button: str, view: str
) -> HttpResponse:
    """Do what a button of a page of one's own asks for; what cannot be done is told on that page."""
    action = actions.get(button)
    if action is None:
        raise Http404("no such button")
    try:
        return action(request)
    except CookoutError as error:
        messages.error(request, in_words(error))
        return redirect(view)


def pressed(request: HttpRequest, event: Event, actions: Mapping[str, Action], page: Page, view: str) -> HttpResponse:
    """Do what the button asked for, then come back to the page; a form with faults stays as it was typed."""
    action = actions.get(request.POST.get("do", "").partition(":")[0])
    if action is None:
        raise Http404("no such button")
    try:
        outcome = action(request, event)
    except CookoutError as error:
        messages.error(request, in_words(error))
        outcome = request.POST.get("at", "")
    if isinstance(outcome, str):
        return redirect(reverse(view, args=[event.public_id]) + (f"#{outcome}" if outcome else ""))
    return page(request, event, outcome, status=422)


def save_form(
    request: HttpRequest, event: Event, form: PartForm, changes: Sequence[Changed], words: str, done: str = ""
) -> Outcome:
    """Save what a form stands for; the form with what is wrong, or the place to come back to."""
    try:
        edit = editing.save_parts(event_id=event.pk, user_id=user_id_of(request), changes=changes, words=words)
    except PartChangedError as error:
        form.clash(error)
    except EventFileError as error:
        form.tell(error)
    else:
        tell_saved(request, event, edit)
        return done or place_of(form.part)
    return form


def tell_saved(request: HttpRequest, event: Event, edit: Any) -> None:
    """Say what was done, with the way back."""
    if edit is None:
        messages.info(request, _("Nothing was different, so nothing was saved."))
    else:
        answers.told(request, edit.words, undo=reverse("event-undo", args=[event.public_id, edit.pk]))


def ask_again(request: HttpRequest, words: str, place: str) -> str:
    """Say what is missing, and come back to the same place."""
    messages.error(request, words)
    return place


def place_of(part: Part) -> str:
    """The name of the place on the page where a part stands."""
    return "-".join(word for word in part if word)


def in_words(error: CookoutError) -> str:
    """An error as one sentence or two; the places in the event file mean nothing on a page of forms."""
    if isinstance(error, EventFileError):
        return " ".join(f"{fault.what} {fault.remedy}" for fault in error.faults[:3])
    return str(error)
