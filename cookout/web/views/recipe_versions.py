"""The versions of a recipe: listed, held side by side, brought back."""

from uuid import UUID

from django.contrib import messages
from django.http import HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.urls import reverse
from django.utils.translation import gettext as _
from django.views.decorators.http import require_GET, require_POST

from cookout.core.errors import CookoutError
from cookout.services import recipes
from cookout.store.selectors.recipes import RecipeVersion, get_version, list_versions, recipe_of
from cookout.web import answers
from cookout.web.guards import signed_in
from cookout.web.reading.recipes import difference, people_asked, readers_units, recipe_page
from cookout.web.recipe_guards import own_recipe, own_version
from cookout.web.views.pressing import in_words


@require_GET
@signed_in
def listed(request: HttpRequest, recipe: UUID) -> HttpResponse:
    """All versions; where two are chosen, what differs between them."""
    row, current = own_recipe(request, recipe)
    versions = list(list_versions(recipe_id=row.pk))
    page: dict[str, object] = {"row": row, "version": current, "versions": versions}
    first, second = (_chosen(row.pk, request.GET.get(key, "")) for key in ("first", "second"))
    if first is not None and second is not None:
        page |= {"first": first, "second": second, "lines": difference(recipe_of(first), recipe_of(second))}
    return render(request, "cookout/recipe_versions.html", page)


@require_GET
@signed_in
def show(request: HttpRequest, recipe: UUID, number: int) -> HttpResponse:
    """One version as it was."""
    row, found = own_version(request, recipe, number)
    core = recipe_of(found)
    page = recipe_page(core, people_asked(request.GET.get("people", ""), core.serves))
    return render(request, "cookout/recipe_version.html", {"row": row, "version": found, "page": page})


@require_POST
@signed_in
def bring_back(request: HttpRequest, recipe: UUID, number: int) -> HttpResponse:
    """An earlier version as the newest again."""
    row, current = own_recipe(request, recipe)
    try:
        version = recipes.bring_back_version(recipe_id=row.pk, number=number, units=readers_units())
    except CookoutError as error:
        messages.error(request, in_words(error))
    else:
        if version is None:
            messages.info(request, _("This version is the current one already."))
        else:
            words = _("Version %(old)d is back, as version %(number)d.") % {"old": number, "number": version.number}
            answers.told(request, words, undo=reverse("recipe-version-back", args=[row.public_id, current.number]))
    return redirect("recipe", row.public_id)


def _chosen(recipe_id: int, text: str) -> RecipeVersion | None:
    return get_version(recipe_id=recipe_id, number=int(text)) if text.isdecimal() and len(text) < 8 else None
