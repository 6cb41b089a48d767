"""What stands before the pages of recipes: a box is its owner's alone. "Not there" and "not yours" look the same."""

from uuid import UUID

from django.http import Http404, HttpRequest

from cookout.core.kitchen.recipe import Recipe as CoreRecipe
from cookout.services import recipe_sharing, starters
from cookout.store.selectors.recipes import Recipe, RecipeVersion, get_deleted_recipe, get_recipe_for, get_version
from cookout.web.guards import user_id_of


def own_recipe(request: HttpRequest, recipe: UUID) -> tuple[Recipe, RecipeVersion]:
    """A recipe of the user's box, with its current version."""
    found = get_recipe_for(owner_id=user_id_of(request), public_id=recipe)
    if found is None or found.current is None:
        raise Http404("no such recipe")
    return found, found.current


def own_deleted_recipe(request: HttpRequest, recipe: UUID) -> Recipe:
    """A recipe that the user threw away."""
    found = get_deleted_recipe(owner_id=user_id_of(request), public_id=recipe)
    if found is None:
        raise Http404("no such recipe")
    return found


def own_version(request: HttpRequest, recipe: UUID, number: int) -> tuple[Recipe, RecipeVersion]:
    """A recipe of the user's box, with one of its versions."""
    row, _current = own_recipe(request, recipe)
    found = get_version(recipe_id=row.pk, number=number)
    if found is None:
        raise Http404("no such version")
    return row, found


def known_starter(name: str) -> CoreRecipe:
    """A recipe that comes with the program."""
    found = starters.get_starter(name)
    if found is None:
        raise Http404("no such recipe")
    return found


def open_recipe(token: str) -> tuple[Recipe, RecipeVersion]:
    """The recipe that a link opens, with its current version."""
    found = recipe_sharing.find_shared(token)
    if found is None or found.current is None:
        raise Http404("no such link")
    return found, found.current
