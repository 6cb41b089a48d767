"""Demo slots: the running order before an audience."""

from dataclasses import replace
from uuid import UUID

from django.http import HttpRequest, HttpResponse
from django.shortcuts import render
from django.utils.translation import gettext as _
from django.views.decorators.http import require_http_methods

from cookout.core.errors import EventFileError
from cookout.core.planning.event import DemoSlot, Dish, ReadyMade, SlotId
from cookout.services import show as shows
from cookout.services.errors import PartChangedError
from cookout.store.selectors.events import Event, event_of
from cookout.web.forms.show import SlotForm
from cookout.web.guards import signed_in, user_id_of
from cookout.web.views.pressing import Outcome, Shown, page_of_forms, tell_saved


@require_http_methods(["GET", "POST"])
@signed_in
def show(request: HttpRequest, event: UUID) -> HttpResponse:
    """The demos, and every button on their page."""
    return page_of_forms(request, event, ACTIONS, _page, "event-show")


def _page(request: HttpRequest, event: Event, sent: Shown = None, *, status: int = 200) -> HttpResponse:
    core = event_of(event)
    forms = [SlotForm(core, ("slots", slot.id)) for slot in sorted(core.slots, key=lambda slot: slot.starts_at)]
    new = SlotForm(core, ("slots", ""))
    if isinstance(sent, SlotForm):
        forms = [sent if form.prefix == sent.prefix else form for form in forms]
        new = sent if sent.is_new else new
    page = {"event": event, "tab": "show", "slots": forms, "new": new, "has_crew": bool(core.crew)}
    return render(request, "cookout/event_show.html", page, status=status)


def _save(request: HttpRequest, event: Event) -> Outcome:
    """Save all of a slot; the button says what besides: ``up:2``, ``out:2``, ``talk``."""
    core = event_of(event)
    form = SlotForm(core, ("slots", request.POST.get("thing", "")), request.POST)
    if not form.is_valid():
        return form
    slot = form.slot(SlotId(form.part[1]) or shows.slot_id_for(core, form.cleaned_data["name"]))
    what, _colon, place = request.POST["do"].partition(":")
    dishes: list[Dish] = []
    if what in ("live", "talk", "taste", "ready"):
        added = form.added(what)
        if added is None:
            return form
        thing, dishes = added
        slot = _with_ready(slot, thing) if isinstance(thing, ReadyMade) else shows.with_item(slot, thing)
    elif place.isdecimal() and len(place) < 4:
        slot = _changed(slot, what, int(place))
    return _saved(request, event, form, slot, dishes)


def _saved(request: HttpRequest, event: Event, form: SlotForm, slot: DemoSlot, dishes: list[Dish]) -> Outcome:
    words = _("The demo “%(slot)s” added") if form.is_new else _("The demo “%(slot)s” changed")
    try:
        edit = shows.save_slot(
            event_id=event.pk,
            user_id=user_id_of(request),
            slot=slot,
            dishes=dishes,
            was=form.was_given,
            words=words % {"slot": slot.name},
        )
    except PartChangedError as error:
        form.clash(error)
        return form
    except EventFileError as error:
        form.tell(error)
        return form
    tell_saved(request, event, edit)
    return f"slots-{slot.id}"


def _changed(slot: DemoSlot, what: str, place: int) -> DemoSlot:
    if what == "out":
        return replace(slot, live=(*slot.live[:place], *slot.live[place + 1 :]))
    if what == "unready":
        return replace(slot, ready_made=(*slot.ready_made[:place], *slot.ready_made[place + 1 :]))
    return replace(slot, live=shows.reordered(slot.live, place, -1 if what == "up" else 1))


def _with_ready(slot: DemoSlot, ready: ReadyMade) -> DemoSlot:
    return replace(slot, ready_made=(*slot.ready_made, ready))


def _remove(request: HttpRequest, event: Event) -> Outcome:
    slot = request.POST.get("thing", "")
    tell_saved(request, event, shows.remove_slot(event_id=event.pk, user_id=user_id_of(request), slot_id=slot))
    return ""


ACTIONS = {
    **dict.fromkeys(("slot", "live", "talk", "taste", "ready", "up", "down", "out", "unready"), _save),
    "slot-out": _remove,
}
