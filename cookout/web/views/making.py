"""A new event: from blank, from one that is there, from a worked example, from a file."""

from typing import Any
from uuid import UUID

from django.http import Http404, HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.urls import reverse
from django.utils.translation import gettext as _
from django.views.decorators.http import require_http_methods, require_POST

from cookout.core.errors import EventFileError
from cookout.services import events, making
from cookout.store.selectors.events import Event, get_event_for, list_events
from cookout.store.selectors.keeping import get_template, list_templates
from cookout.web import answers, preferences
from cookout.web.forms.day import zone_names
from cookout.web.forms.events import NewEventForm
from cookout.web.forms.making import BlankForm, CopyForm, TemplateNameForm
from cookout.web.guards import seen_event, signed_in, user_id_of
from cookout.web.views.pressing import by_button


@require_http_methods(["GET", "POST"])
@signed_in
def new(request: HttpRequest) -> HttpResponse:
    """The ways to a new event; each leads on to its menu."""
    if request.method != "POST":
        return _page(request)
    return by_button(request, WAYS, request.POST.get("do", "file"), "event-new")


@require_POST
@signed_in
def keep(request: HttpRequest, event: UUID) -> HttpResponse:
    """Keep the event as a template."""
    shared = seen_event(request, event)
    form = TemplateNameForm(request.POST)
    name = form.cleaned_data["name"] if form.is_valid() else shared.name
    template = making.save_template(owner_id=user_id_of(request), event=shared, name=name)
    answers.told(request, _("Kept as the template “%(name)s”.") % {"name": template.name})
    return redirect(reverse("keeping") + "#templates")


def _page(request: HttpRequest, *, status: int = 200, **sent: Any) -> HttpResponse:
    page: dict[str, Any] = {
        "blank": BlankForm(initial={"units": preferences.current().units or "us"}),
        "copy": CopyForm(_sources(request), initial={"source": request.GET.get("from", "")}),
        "form": NewEventForm(),
        "examples": making.list_examples(),
        "zones": zone_names(),
        **sent,
    }
    page["has_sources"] = bool(page["copy"].fields["source"].choices)
    return render(request, "cookout/event_new.html", page, status=status)


def _sources(request: HttpRequest) -> list[Any]:
    user_id = user_id_of(request)
    shared = [(f"event:{each.public_id}", each.name) for each in list_events(user_id=user_id)]
    kept = [(f"template:{each.public_id}", each.name) for each in list_templates(owner_id=user_id)]
    groups = [(_("Templates"), kept), (_("Events"), shared)]
    return [group for group in groups if group[1]]


def _from_blank(request: HttpRequest) -> HttpResponse:
    form = BlankForm(request.POST)
    if not form.is_valid():
        return _page(request, blank=form, status=422)
    return _made(making.make_blank(owner_id=user_id_of(request), blank=form.blank()))


def _from_copy(request: HttpRequest) -> HttpResponse:
    form = CopyForm(_sources(request), request.POST)
    if not form.is_valid():
        return _page(request, copy=form, status=422)
    kind, _colon, name = form.cleaned_data["source"].partition(":")
    owner_id, day = user_id_of(request), form.cleaned_data["day"]
    wanted = {"owner_id": owner_id, "day": day, "name": form.cleaned_data["name"]}
    if kind == "template":
        template = get_template(owner_id=owner_id, public_id=UUID(name))
        if template is None:
            raise Http404("no such template")
        return _made(making.make_from_template(template=template, **wanted))
    event = get_event_for(user_id=owner_id, public_id=UUID(name))
    if event is None:
        raise Http404("no such event")
    return _made(making.copy_event(event=event, **wanted))


def _from_example(request: HttpRequest) -> HttpResponse:
    event = making.copy_example(owner_id=user_id_of(request), key=request.POST.get("example", ""))
    answers.told(request, _("This example is yours now: change it, plan it, or throw it away."))
    return _made(event)


def _from_file(request: HttpRequest) -> HttpResponse:
    form = NewEventForm(request.POST, request.FILES)
    if not form.is_valid():
        return _page(request, form=form, status=422)
    try:
        event = events.create_event(owner_id=user_id_of(request), document=form.cleaned_data["document"])
    except EventFileError as error:
        typed = NewEventForm(initial={"document": form.cleaned_data["document"]})
        return _page(request, form=typed, faults=error.faults, status=422)
    return redirect("event", event.public_id)


def _made(event: Event) -> HttpResponse:
    return redirect("event-menu", event.public_id)


WAYS = {"blank": _from_blank, "copy": _from_copy, "example": _from_example, "file": _from_file}
