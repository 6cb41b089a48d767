"""Kits, people and templates: listed, changed, deleted, had back."""

from collections.abc import Callable
from dataclasses import asdict
from typing import Any
from uuid import UUID

from django.contrib import messages
from django.http import Http404, HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.urls import reverse
from django.utils.translation import gettext as _
from django.views.decorators.http import require_http_methods, require_POST

from cookout.core.errors import CookoutError
from cookout.services import keeping
from cookout.services.keeping import Deleted
from cookout.store.selectors.keeping import get_person, list_kits, list_people, list_templates
from cookout.web import answers
from cookout.web.forms.keeping import NameForm, PersonForm
from cookout.web.guards import signed_in, user_id_of
from cookout.web.reading.keeping import kit_row
from cookout.web.views.pressing import by_button, in_words

SESSION = "deleted_keepsakes"
KEPT = 20
"""So many deleted things can be had back in a session; older ones are forgotten."""


@require_http_methods(["GET", "POST"])
@signed_in
def show(request: HttpRequest) -> HttpResponse:
    """All that is kept, and every button on its page."""
    if request.method != "POST":
        return _page(request)
    return by_button(request, ACTIONS, request.POST.get("do", ""), "keeping")


@require_POST
@signed_in
def bring_back(request: HttpRequest, thing: UUID) -> HttpResponse:
    """Make again what was deleted a moment ago."""
    deleted = request.session.get(SESSION, {})
    found = deleted.pop(str(thing), None)
    if found is None:
        messages.error(request, _("It cannot be had back any more: that goes only soon after, in the same browser."))
        return redirect("keeping")
    try:
        keeping.bring_back(owner_id=user_id_of(request), deleted=Deleted(**found))
    except CookoutError as error:
        messages.error(request, in_words(error))
    else:
        request.session[SESSION] = deleted
        answers.told(request, _("%(name)s is back.") % {"name": found["name"]})
    return redirect("keeping")


def _page(request: HttpRequest, sent: PersonForm | None = None, *, status: int = 200) -> HttpResponse:
    owner_id = user_id_of(request)
    people = list(list_people(owner_id=owner_id))
    known = sorted({skill for person in people for skill in person.skills})
    forms = [PersonForm(person, known) for person in people]
    new = PersonForm(None, known)
    if sent is not None:
        forms = [sent if form.prefix == sent.prefix else form for form in forms]
        new = sent if new.prefix == sent.prefix else new
    page: dict[str, Any] = {"people": forms, "new_person": new, "templates": list_templates(owner_id=owner_id)}
    page["kits"] = [kit_row(kit) for kit in list_kits(owner_id=owner_id)]
    return render(request, "cookout/keeping.html", page, status=status)


def _save_person(request: HttpRequest) -> HttpResponse:
    owner_id, person = user_id_of(request), None
    if request.POST.get("thing"):
        person = get_person(owner_id=owner_id, public_id=_uuid(request))
        if person is None:
            raise Http404("no such person")
    skills = {skill for each in list_people(owner_id=owner_id) for skill in each.skills}
    form = PersonForm(person, sorted(skills), request.POST)
    if not form.is_valid():
        return _page(request, form, status=422)
    saved = keeping.save_person(
        owner_id=owner_id, person=person.public_id if person else None, fields=form.person_fields()
    )
    answers.told(request, _("%(name)s saved.") % {"name": saved.name})
    return redirect(reverse("keeping") + "#people")


def _renaming(kind: str) -> Callable[[HttpRequest], HttpResponse]:
    def rename(request: HttpRequest) -> HttpResponse:
        form = NameForm(request.POST)
        if not form.is_valid():
            messages.error(request, _("Give it a name of at most 120 letters, then save it."))
            return redirect("keeping")
        keeping.rename(owner_id=user_id_of(request), kind=kind, **form.cleaned_data)
        answers.told(request, _("%(name)s saved.") % {"name": form.cleaned_data["name"]})
        return redirect("keeping")

    return rename


def _deleting(kind: str) -> Callable[[HttpRequest], HttpResponse]:
    def delete(request: HttpRequest) -> HttpResponse:
        deleted = keeping.delete(owner_id=user_id_of(request), kind=kind, thing=_uuid(request))
        kept = {**request.session.get(SESSION, {}), deleted.id: asdict(deleted)}
        request.session[SESSION] = dict(list(kept.items())[-KEPT:])
        words = _("%(name)s is deleted.") % {"name": deleted.name}
        answers.told(request, words, undo=reverse("keeping-back", args=[deleted.id]))
        return redirect("keeping")

    return delete


def _uuid(request: HttpRequest) -> UUID:
    try:
        return UUID(request.POST.get("thing", ""))
    except ValueError as error:
        raise Http404("no such thing") from error


ACTIONS = {
    "person": _save_person,
    "person-out": _deleting("person"),
    "kit": _renaming("kit"),
    "kit-out": _deleting("kit"),
    "template": _renaming("template"),
    "template-out": _deleting("template"),
}
