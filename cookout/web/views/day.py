"""When and where it is, fire and weather, and which food rules hold."""

from collections.abc import Callable
from typing import Any
from uuid import UUID

from django.http import HttpRequest, HttpResponse
from django.shortcuts import render
from django.utils.translation import gettext_lazy
from django.views.decorators.http import require_http_methods

from cookout.core.errors import EventFileError
from cookout.core.planning.event import Event as CoreEvent
from cookout.core.planning.parts import read_part
from cookout.services.day import save_heading
from cookout.services.editing import Changed
from cookout.services.errors import PartChangedError
from cookout.store.selectors.events import Event, event_of
from cookout.web.forms.day import FireForm, HeadingForm, PlaceForm, WeatherForm, zone_names
from cookout.web.forms.food import FoodForm
from cookout.web.forms.parts import PartForm
from cookout.web.guards import signed_in, user_id_of
from cookout.web.views.pressing import Outcome, Shown, page_of_forms, save_form, tell_saved

PARTS: dict[type[PartForm], str] = {
    HeadingForm: "heading",
    PlaceForm: "place",
    FireForm: "heading",
    WeatherForm: "weather",
    FoodForm: "food_rules",
}


@require_http_methods(["GET", "POST"])
@signed_in
def show(request: HttpRequest, event: UUID) -> HttpResponse:
    """The day, and every button on its page."""
    return page_of_forms(request, event, ACTIONS, _page, "event-day")


def _page(request: HttpRequest, event: Event, sent: Shown = None, *, status: int = 200) -> HttpResponse:
    core = event_of(event)
    page: dict[str, Any] = {kind.do: sent if isinstance(sent, kind) else _form(kind, core) for kind in PARTS}
    page.update(event=event, tab="day", zones=zone_names() if event.may_edit else [])
    return render(request, "cookout/event_day.html", page, status=status)


def _form(kind: type[PartForm], core: CoreEvent, data: Any = None) -> Any:
    return kind(core, (PARTS[kind], ""), data, prefix=kind.do)


def _save_heading(request: HttpRequest, event: Event) -> Outcome:
    form: HeadingForm = _form(HeadingForm, event_of(event), request.POST)
    if not form.is_valid():
        return form
    fields = {key: value for key, value in form.cleaned_data.items() if key not in ("was", "day")}
    try:
        edit = save_heading(
            event_id=event.pk,
            user_id=user_id_of(request),
            day=form.cleaned_data["day"],
            fields=fields,
            was=form.was_given,
        )
    except PartChangedError as error:
        form.clash(error)
        return form
    except EventFileError as error:
        form.tell(error)
        return form
    tell_saved(request, event, edit)
    return "heading"


def _saving(kind: type[PartForm], value: Callable[[Any, CoreEvent], Any], words: Any) -> Callable[..., Outcome]:
    """The action that saves one of the forms."""

    def save(request: HttpRequest, event: Event) -> Outcome:
        core = event_of(event)
        form = _form(kind, core, request.POST)
        if not form.is_valid():
            return form  # type: ignore[no-any-return]
        change = Changed(form.part, value(form, core), was=form.was_given)
        return save_form(request, event, form, [change], str(words), done=kind.do)

    return save


def _heading_with_fire(form: FireForm, core: CoreEvent) -> Any:
    return {**read_part(core, ("heading", "")), **form.heading()}


ACTIONS = {
    "heading": _save_heading,
    "place": _saving(PlaceForm, lambda form, core: {"place": form.place(core.place)}, gettext_lazy("Place changed")),
    "fire": _saving(FireForm, _heading_with_fire, gettext_lazy("Limits for fire changed")),
    "weather": _saving(WeatherForm, lambda form, _core: form.weather(), gettext_lazy("Weather changed")),
    "food": _saving(
        FoodForm, lambda form, core: {"food_rules": form.rules(core.food_rules)}, gettext_lazy("Food rules changed")
    ),
}
