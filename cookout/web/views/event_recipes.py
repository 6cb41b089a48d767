"""Recipes of the box in events: put in, looked at, brought up to date, kept."""

from uuid import UUID

from django.contrib import messages
from django.http import Http404, HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.urls import reverse
from django.utils.translation import gettext as _
from django.views.decorators.http import require_GET, require_http_methods, require_POST

from cookout.core.errors import CookoutError
from cookout.core.kitchen.recipe import Recipe as CoreRecipe
from cookout.core.planning.event import Event as CoreEvent
from cookout.services import event_recipes
from cookout.store.selectors.events import Event, Role, event_of, get_event_for, list_events
from cookout.store.selectors.recipes import recipe_of
from cookout.web import answers
from cookout.web.forms.recipe_into import IntoEventForm
from cookout.web.guards import edited_event, seen_event, signed_in, user_id_of
from cookout.web.reading.recipes import gear_words, people_asked, readers_units, recipe_page
from cookout.web.recipe_guards import own_recipe
from cookout.web.views.pressing import in_words, tell_saved


@require_http_methods(["GET", "POST"])
@signed_in
def into_event(request: HttpRequest, recipe: UUID) -> HttpResponse:
    """Choose an event, then a serving, and the recipe is on its menu."""
    row, current = own_recipe(request, recipe)
    event = _chosen_event(request)
    if event is None:
        shared = list_events(user_id=user_id_of(request))
        events = [each for each in shared if each.part in _EDITORS]  # type: ignore[attr-defined]
        return render(request, "cookout/recipe_into_event.html", {"row": row, "events": events})
    core = event_of(event)
    form = IntoEventForm(core, request.POST if request.method == "POST" else None)
    if not form.is_valid():
        lacking = event_recipes.lacking(core, recipe_of(current))
        page = {"row": row, "event": event, "form": form, "lacking": lacking, "gear": gear_words(lacking.gear)}
        return render(request, "cookout/recipe_into_event.html", page, status=422 if form.is_bound else 200)
    try:
        edit, dish = event_recipes.add_recipe_to_event(
            event_id=event.pk, user_id=user_id_of(request), recipe_id=row.pk, **form.cleaned_data
        )
    except CookoutError as error:
        messages.error(request, in_words(error))
        return redirect(f"{reverse('recipe-into-event', args=[row.public_id])}?event={event.public_id}")
    tell_saved(request, event, edit)
    return redirect(reverse("event-menu", args=[event.public_id]) + (f"#dishes-{dish}" if dish else ""))


_EDITORS = (Role.OWNER.value, Role.PLANNER.value)


def _chosen_event(request: HttpRequest) -> Event | None:
    """The event that was chosen, if the user may change it; None where none was."""
    name = request.POST.get("event") or request.GET.get("event")
    if not name:
        return None
    try:
        found = get_event_for(user_id=user_id_of(request), public_id=UUID(name))
    except ValueError as error:
        raise Http404("no such event") from error
    if found is None or not found.may_edit:
        raise Http404("no such event")
    return found


@require_GET
@signed_in
def show(request: HttpRequest, event: UUID, key: str) -> HttpResponse:
    """A recipe as the event has it, for as many as eat of it."""
    shared = seen_event(request, event)
    core = event_of(shared)
    recipe = _recipe(core, key)
    usual = _people(core, recipe) or recipe.serves
    moved = {each.key: each for each in event_recipes.moved_on(event=shared, core=core, user_id=user_id_of(request))}
    page = {
        "event": shared,
        "tab": "menu",
        "key": key,
        "page": recipe_page(recipe, people_asked(request.GET.get("people", ""), usual)),
        "moved": moved.get(key),
    }
    return render(request, "cookout/event_recipe.html", page)


@require_POST
@signed_in
def renew(request: HttpRequest, event: UUID, key: str) -> HttpResponse:
    """The version that is in the user's box by now in place of the one that the event has."""
    changed = edited_event(request, event)
    _recipe(event_of(changed), key)
    try:
        edit = event_recipes.take_new_version(event_id=changed.pk, user_id=user_id_of(request), key=key)
    except CookoutError as error:
        messages.error(request, in_words(error))
    else:
        tell_saved(request, changed, edit)
    return redirect("event-recipe", changed.public_id, key)


@require_POST
@signed_in
def keep(request: HttpRequest, event: UUID, key: str) -> HttpResponse:
    """A copy of the event's recipe in the user's own box."""
    shared = seen_event(request, event)
    _recipe(event_of(shared), key)
    try:
        row = event_recipes.keep_in_box(event=shared, user_id=user_id_of(request), key=key, units=readers_units())
    except CookoutError as error:
        messages.error(request, in_words(error))
        return redirect("event-recipe", shared.public_id, key)
    told = _("%(recipe)s is in your box now.") % {"recipe": row.name}
    answers.told(request, told, undo=reverse("recipe-delete", args=[row.public_id]))
    return redirect("recipe", row.public_id)


def _recipe(core: CoreEvent, key: str) -> CoreRecipe:
    found = next((each for each in core.recipes if each.id == key), None)
    if found is None:
        raise Http404("no such recipe")
    return found


def _people(core: CoreEvent, recipe: CoreRecipe) -> int:
    """How many eat of it in the whole event."""
    dishes = [dish for dish in core.dishes if dish.recipe == recipe.id and dish.serving is not None]
    return sum(dish.people or core.serving(dish.serving).people for dish in dishes if dish.serving is not None)
