"""The menu: servings and their dishes."""

from uuid import UUID

from django.http import HttpRequest, HttpResponse
from django.shortcuts import render
from django.utils.translation import gettext as _
from django.views.decorators.http import require_http_methods

from cookout.core.planning.event import Dish, DishId
from cookout.services import event_recipes, menu
from cookout.services.editing import Changed
from cookout.services.errors import NoSuchThingError
from cookout.services.starters import starters
from cookout.services.stored import stored_part
from cookout.store.selectors.events import Event, event_of
from cookout.store.selectors.recipes import Recipe, get_recipe_for, list_recipe_names, list_taken
from cookout.web.forms.menu import DishForm, NewDishForm, PlaceForm, ServingForm
from cookout.web.guards import signed_in, user_id_of
from cookout.web.reading.menu import menu_page
from cookout.web.reading.recipes import readers_units
from cookout.web.views.pressing import Outcome, Shown, ask_again, page_of_forms, save_form, tell_saved


@require_http_methods(["GET", "POST"])
@signed_in
def show(request: HttpRequest, event: UUID) -> HttpResponse:
    """The menu, and every button on its page."""
    return page_of_forms(request, event, ACTIONS, _page, "event-menu")


def _page(request: HttpRequest, event: Event, sent: Shown = None, *, status: int = 200) -> HttpResponse:
    core, user_id = event_of(event), user_id_of(request)
    page = {"event": event, "tab": "menu", **menu_page(core, sent)}
    there = {str(recipe.id) for recipe in core.recipes}
    taken = [link.version.recipe_id for key, link in list_taken(event=event, owner_id=user_id).items() if key in there]
    page["box"] = list_recipe_names(owner_id=user_id).exclude(pk__in=taken)
    page["to_start"] = [each for each in starters(owner_id=user_id) if not each.taken] if event.may_edit else []
    page["moved_on"] = event_recipes.moved_on(event=event, core=core, user_id=user_id) if event.may_edit else ()
    return render(request, "cookout/event_menu.html", page, status=status)


def _save_serving(request: HttpRequest, event: Event) -> Outcome:
    core = event_of(event)
    form = ServingForm(core, ("servings", request.POST.get("thing", "")), request.POST)
    if not form.is_valid():
        return form
    name = form.cleaned_data["name"]
    serving_id = form.part[1] or menu.serving_id_for(core, name)
    words = (_("%(serving)s added") if form.is_new else _("%(serving)s changed")) % {"serving": name}
    serving = form.serving(serving_id)  # type: ignore[arg-type]
    change = Changed(("servings", serving_id), serving, was=form.was_given)
    return save_form(request, event, form, [change], words, done=f"servings-{serving_id}")


def _save_dish(request: HttpRequest, event: Event) -> Outcome:
    core = event_of(event)
    part = ("dishes", request.POST.get("thing", ""))
    stored: Dish = stored_part(core, part)
    form = DishForm(core, part, request.POST)
    if not form.is_valid():
        return form
    words = _("%(dish)s changed") % {"dish": menu.dish_name(core, stored)}
    return save_form(request, event, form, [Changed(part, form.dish(stored), was=form.was_given)], words)


def _remove_serving(request: HttpRequest, event: Event) -> Outcome:
    edit = menu.remove_serving(event_id=event.pk, user_id=user_id_of(request), serving_id=request.POST.get("thing", ""))
    tell_saved(request, event, edit)
    return ""


def _add_dish(request: HttpRequest, event: Event) -> Outcome:
    form = NewDishForm(request.POST)
    if not form.is_valid():
        return ask_again(request, _("Choose a recipe from the list, then add it."), request.POST.get("at", ""))
    given, user_id = form.cleaned_data, user_id_of(request)
    kept: Recipe | None = None
    dish: DishId | None = None
    if form.from_box is not None:
        kept = get_recipe_for(owner_id=user_id, public_id=form.from_box)
        if kept is None:
            raise NoSuchThingError(_("This recipe is not in your box any more. Choose another one."))
    put = {"event_id": event.pk, "user_id": user_id, "serving_id": given["serving"], "people": given["people"]}
    if form.from_starters:
        units = readers_units()
        edit, dish = event_recipes.add_starter_to_event(name=form.from_starters, units=units, **put)
    elif kept is None:
        edit, dish = menu.add_dish(recipe_id=given["recipe"], **put)
    else:
        edit, dish = event_recipes.add_recipe_to_event(recipe_id=kept.pk, **put)
    tell_saved(request, event, edit)
    return f"dishes-{dish}"


def _take_newer(request: HttpRequest, event: Event) -> Outcome:
    key = request.POST.get("thing", "")
    edit = event_recipes.take_new_version(event_id=event.pk, user_id=user_id_of(request), key=key)
    tell_saved(request, event, edit)
    return ""


def _remove_dish(request: HttpRequest, event: Event) -> Outcome:
    edit = menu.remove_dish(event_id=event.pk, user_id=user_id_of(request), dish_id=request.POST.get("thing", ""))
    tell_saved(request, event, edit)
    return request.POST.get("at", "")


def _move_dish(request: HttpRequest, event: Event) -> Outcome:
    dish = request.POST.get("thing", "")
    by = -1 if request.POST["do"] == "up" else 1
    tell_saved(request, event, menu.move_dish(event_id=event.pk, user_id=user_id_of(request), dish_id=dish, by=by))
    return f"dishes-{dish}"


def _place_dish(request: HttpRequest, event: Event) -> Outcome:
    form = PlaceForm(request.POST)
    if not form.is_valid():
        return ask_again(request, _("That dish could not be moved. Look at the page anew and try again."), "")
    given = form.cleaned_data
    edit = menu.place_dish(
        event_id=event.pk,
        user_id=user_id_of(request),
        dish_id=given["dish"],
        serving_id=given["serving"],
        before=given["before"],
    )
    tell_saved(request, event, edit)
    return f"dishes-{given['dish']}"


ACTIONS = {
    "serving": _save_serving,
    "serving-out": _remove_serving,
    "dish": _save_dish,
    "dish-in": _add_dish,
    "dish-out": _remove_dish,
    "up": _move_dish,
    "down": _move_dish,
    "place": _place_dish,
    "newer": _take_newer,
}
