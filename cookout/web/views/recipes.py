"""The recipe box: its list, one recipe, copies, files out, throwing away and having back."""

from uuid import UUID

from django.conf import settings
from django.contrib import messages
from django.http import HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.urls import reverse
from django.utils.translation import gettext as _
from django.views.decorators.http import require_GET, require_POST

from cookout.core.errors import CookoutError
from cookout.core.eventfile import write_recipe_file
from cookout.core.kitchen.interchange import write_recipe
from cookout.core.quantities import Units
from cookout.services import recipes, starters
from cookout.store.selectors.recipes import list_deleted_recipes, list_recipes, recipe_of
from cookout.web import answers
from cookout.web.forms.recipe_words import FOODS, choices
from cookout.web.guards import signed_in, user_id_of
from cookout.web.reading.recipes import box_rows, origin_words, people_asked, readers_units, recipe_page
from cookout.web.recipe_guards import known_starter, own_deleted_recipe, own_recipe
from cookout.web.views.pressing import in_words


@require_GET
@signed_in
def listed(request: HttpRequest) -> HttpResponse:
    """The user's recipes, searched and by kind."""
    owner, words = user_id_of(request), request.GET.get("words", "").strip()[:100]
    food = request.GET.get("food", "")
    food = food if food in [kind.value for kind in FOODS] else ""
    rows = box_rows(list_recipes(owner_id=owner, words=words, food=food))
    page = {
        "rows": rows,
        "words": words,
        "food": food,
        "foods": choices(FOODS, nothing=_("all kinds")),
        "is_search": bool(words or food),
        "starters": [starter for starter in starters.starters(owner_id=owner) if not starter.taken],
        "thrown_away": list_deleted_recipes(owner_id=owner)[:20],
        "days_kept": settings.COOKOUT_KEEP_DELETED_DAYS,
    }
    return render(request, "cookout/recipes.html", page)


@require_GET
@signed_in
def show(request: HttpRequest, recipe: UUID) -> HttpResponse:
    """One recipe, for as many people as asked."""
    row, current = own_recipe(request, recipe)
    core = recipe_of(current)
    page = recipe_page(core, people_asked(request.GET.get("people", ""), core.serves))
    shown = {"row": row, "version": current, "page": page, "origin": origin_words(row)}
    return render(request, "cookout/recipe.html", {**shown, "is_shared": bool(row.share_hash)})


@require_GET
@signed_in
def starter(request: HttpRequest, name: str) -> HttpResponse:
    """One of the recipes that come with the program, before it is taken."""
    found = known_starter(name)
    page = recipe_page(found, people_asked(request.GET.get("people", ""), found.serves))
    return render(request, "cookout/recipe_starter.html", {"name": name, "page": page})


@require_POST
@signed_in
def take_starters(request: HttpRequest) -> HttpResponse:
    """One of the recipes that come with the program, or all that are not in the box yet."""
    owner, units, name = user_id_of(request), readers_units(), request.POST.get("name", "")
    try:
        if name:
            row = starters.take_starter(owner_id=owner, name=name, units=units)
            told = _("%(recipe)s is in your box now.") % {"recipe": row.name}
            answers.told(request, told, undo=reverse("recipe-delete", args=[row.public_id]))
            return redirect("recipe", row.public_id)
        count = starters.take_all_starters(owner_id=owner, units=units)
    except CookoutError as error:
        messages.error(request, in_words(error))
    else:
        messages.success(request, _("%(count)d recipes are in your box now.") % {"count": count})
    return redirect("recipes")


@require_POST
@signed_in
def copy(request: HttpRequest, recipe: UUID) -> HttpResponse:
    """A second recipe like this one."""
    row, _current = own_recipe(request, recipe)
    try:
        made = recipes.copy_recipe(recipe_id=row.pk, owner_id=user_id_of(request), units=readers_units())
    except CookoutError as error:
        messages.error(request, in_words(error))
        return redirect("recipe", row.public_id)
    answers.told(
        request, _("This is the copy. Give it a name of its own."), undo=reverse("recipe-delete", args=[made.public_id])
    )
    return redirect("recipe-edit", made.public_id)


@require_POST
@signed_in
def delete(request: HttpRequest, recipe: UUID) -> HttpResponse:
    """Thrown away, with the way back."""
    row, _current = own_recipe(request, recipe)
    recipes.delete_recipe(recipe_id=row.pk)
    told = _("%(recipe)s is thrown away. Events that have it keep it.") % {"recipe": row.name}
    answers.told(request, told, undo=reverse("recipe-restore", args=[row.public_id]))
    return redirect("recipes")


@require_POST
@signed_in
def restore(request: HttpRequest, recipe: UUID) -> HttpResponse:
    """Had back."""
    row = own_deleted_recipe(request, recipe)
    recipes.restore_recipe(recipe_id=row.pk)
    told = _("%(recipe)s is back in your box.") % {"recipe": row.name}
    answers.told(request, told, undo=reverse("recipe-delete", args=[row.public_id]))
    return redirect("recipe", row.public_id)


@require_GET
@signed_in
def download(request: HttpRequest, recipe: UUID) -> HttpResponse:
    """The recipe file."""
    row, current = own_recipe(request, recipe)
    text = write_recipe_file(recipe_of(current), readers_units())
    return answers.attachment(text, kind="application/toml", name=f"{row.key}.toml")


@require_GET
@signed_in
def linked_data(request: HttpRequest, recipe: UUID) -> HttpResponse:
    """The recipe as schema.org/Recipe, for other programs."""
    row, current = own_recipe(request, recipe)
    text = write_recipe(recipe_of(current), Units(readers_units()))
    return answers.attachment(text, kind="application/ld+json", name=f"{row.key}.jsonld")
