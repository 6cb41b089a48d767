"""The gear, the fuel, and kits."""

from uuid import UUID

from django.http import HttpRequest, HttpResponse
from django.shortcuts import render
from django.utils.translation import gettext as _
from django.views.decorators.http import require_http_methods

from cookout.core.planning.event import Gear
from cookout.services import gear
from cookout.services.editing import Changed
from cookout.services.stored import stored_part
from cookout.store.selectors.events import Event, event_of
from cookout.store.selectors.keeping import list_kits
from cookout.web import answers
from cookout.web.forms.gear import FuelForm, GearForm, KitForm, KitNameForm, OtherGearForm
from cookout.web.guards import signed_in, user_id_of
from cookout.web.reading.gear import gear_page
from cookout.web.views.pressing import Outcome, Shown, ask_again, page_of_forms, save_form, tell_saved


@require_http_methods(["GET", "POST"])
@signed_in
def show(request: HttpRequest, event: UUID) -> HttpResponse:
    """The gear, and every button on its page."""
    return page_of_forms(request, event, ACTIONS, _page, "event-gear")


def _page(request: HttpRequest, event: Event, sent: Shown = None, *, status: int = 200) -> HttpResponse:
    kits = list_kits(owner_id=user_id_of(request))
    page = {"event": event, "tab": "gear", "kits": kits, **gear_page(event_of(event), sent)}
    return render(request, "cookout/event_gear.html", page, status=status)


def _save(request: HttpRequest, event: Event) -> Outcome:
    core = event_of(event)
    part = ("gear", request.POST.get("thing", ""))
    stored: Gear = stored_part(core, part)
    form = GearForm(core, part, request.POST)
    if not form.is_valid():
        return form
    words = _("%(gear)s changed") % {"gear": form.cleaned_data["name"]}
    return save_form(request, event, form, [Changed(part, form.gear(stored), was=form.was_given)], words)


def _save_fuel(request: HttpRequest, event: Event) -> Outcome:
    form = FuelForm(event_of(event), ("fuel", ""), request.POST)
    if not form.is_valid():
        return form
    change = Changed(form.part, {"fuel": form.fuel()}, was=form.was_given)
    return save_form(request, event, form, [change], _("Fuel on hand changed"))


def _add_usual(request: HttpRequest, event: Event) -> Outcome:
    what = request.POST.get("what", "")
    edit, added = gear.add_usual(event_id=event.pk, user_id=user_id_of(request), what=what)
    tell_saved(request, event, edit)
    return f"gear-{added}"


def _add_other(request: HttpRequest, event: Event) -> Outcome:
    form = OtherGearForm(request.POST, prefix="other", label_suffix="")
    if not form.is_valid():
        return form
    given = form.cleaned_data
    edit, added = gear.add_other(
        event_id=event.pk, user_id=user_id_of(request), name=given["name"], count=given["count"]
    )
    tell_saved(request, event, edit)
    return f"gear-{added}"


def _count(request: HttpRequest, event: Event) -> Outcome:
    thing = request.POST.get("thing", "")
    by = 1 if request.POST["do"] == "more" else -1
    tell_saved(request, event, gear.count_gear(event_id=event.pk, user_id=user_id_of(request), gear_id=thing, by=by))
    return f"gear-{thing}"


def _remove(request: HttpRequest, event: Event) -> Outcome:
    thing = request.POST.get("thing", "")
    tell_saved(request, event, gear.remove_gear(event_id=event.pk, user_id=user_id_of(request), gear_id=thing))
    return ""


def _use_kit(request: HttpRequest, event: Event) -> Outcome:
    form = KitForm(request.POST)
    if not form.is_valid():
        return ask_again(request, _("Choose a kit from the list, then use it."), "kits")
    edit = gear.use_kit(event_id=event.pk, user_id=user_id_of(request), kit=form.cleaned_data["kit"])
    tell_saved(request, event, edit)
    return ""


def _save_kit(request: HttpRequest, event: Event) -> Outcome:
    form = KitNameForm(request.POST)
    if not form.is_valid():
        return ask_again(request, _("Give the kit a name of at most 120 letters, then save it."), "kits")
    kit = gear.save_kit(event_id=event.pk, user_id=user_id_of(request), name=form.cleaned_data["name"])
    answers.told(request, _("Kept as the kit “%(kit)s”.") % {"kit": kit.name})
    return "kits"


ACTIONS = {
    "gear": _save,
    "fuel": _save_fuel,
    "usual": _add_usual,
    "other": _add_other,
    "more": _count,
    "fewer": _count,
    "gear-out": _remove,
    "kit": _use_kit,
    "keep": _save_kit,
}
