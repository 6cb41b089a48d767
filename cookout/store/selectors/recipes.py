"""The recipe box as pages read it. Whoever asks for a recipe of somebody else gets None."""

from functools import lru_cache
from uuid import UUID

from django.db.models import Q, QuerySet

from cookout.core.eventfile import read_recipe
from cookout.core.kitchen.recipe import Recipe as CoreRecipe
from cookout.store.models import Event, EventRecipe, Recipe, RecipeVersion

__all__ = [
    "Recipe",
    "RecipeVersion",
    "get_deleted_recipe",
    "get_recipe_for",
    "get_shared",
    "get_version",
    "list_deleted_recipes",
    "list_recipe_names",
    "list_recipes",
    "list_taken",
    "list_versions",
    "recipe_of",
    "taken_keys",
]


MOST_WORDS = 8


@lru_cache(maxsize=256)
def _read(document: str, file_name: str) -> CoreRecipe:
    """The same text is read for every page that shows it, and always means the same."""
    return read_recipe(document, file_name)


def recipe_of(version: RecipeVersion) -> CoreRecipe:
    """The recipe that a version describes; `EventFileError` where the file format has moved on since."""
    return _read(version.document, f"version-{version.number}.toml")


def list_recipes(*, owner_id: int, words: str = "", food: str = "") -> list[Recipe]:
    """Somebody's recipes by name; those with every one of the `words` in name or ingredients, of that kind of food."""
    found = Recipe.objects.filter(owner_id=owner_id, deleted_at=None).select_related("current")
    asked = words.lower().split()[:MOST_WORDS]
    for word in asked:
        found = found.filter(Q(name__icontains=word) | Q(current__document__icontains=word))
    rows = found.filter(food=food) if food else found
    # The text of a recipe file has words of its own, so what the database found is looked at once more.
    return [row for row in rows if all(word in _searched(row) for word in asked)]


def list_recipe_names(*, owner_id: int) -> QuerySet[Recipe]:
    """Somebody's recipes by name, their texts unread, to choose from."""
    return Recipe.objects.filter(owner_id=owner_id, deleted_at=None)


def _searched(row: Recipe) -> str:
    if row.current is None:
        return row.name.lower()
    return " ".join([row.name, *(each.name for each in recipe_of(row.current).ingredients)]).lower()


def list_deleted_recipes(*, owner_id: int) -> QuerySet[Recipe]:
    """Recipes thrown away that can still be had back, the newest first."""
    return Recipe.objects.filter(owner_id=owner_id, deleted_at__isnull=False).order_by("-deleted_at")


def get_recipe_for(*, owner_id: int, public_id: UUID) -> Recipe | None:
    """One of somebody's recipes, with its current version."""
    found = Recipe.objects.select_related("current")
    return found.filter(owner_id=owner_id, public_id=public_id, deleted_at=None).first()


def get_deleted_recipe(*, owner_id: int, public_id: UUID) -> Recipe | None:
    """One of somebody's recipes that was thrown away."""
    return list_deleted_recipes(owner_id=owner_id).filter(public_id=public_id).first()


def get_shared(*, share_hash: str) -> Recipe | None:
    """The recipe whose link has that hash, with its current version and its owner."""
    found = Recipe.objects.select_related("current", "owner")
    return found.filter(share_hash=share_hash, deleted_at=None).first() if share_hash else None


def list_versions(*, recipe_id: int) -> QuerySet[RecipeVersion]:
    """The versions of a recipe, the newest first."""
    return RecipeVersion.objects.filter(recipe_id=recipe_id)


def get_version(*, recipe_id: int, number: int) -> RecipeVersion | None:
    """One version of a recipe."""
    return RecipeVersion.objects.filter(recipe_id=recipe_id, number=number).first()


def list_taken(*, event: Event, owner_id: int) -> dict[str, EventRecipe]:
    """Which recipes of an event came out of somebody's box, by their ids there, with the current versions."""
    rows = EventRecipe.objects.filter(event=event, version__recipe__owner_id=owner_id)
    rows = rows.filter(version__recipe__deleted_at=None).select_related("version__recipe__current")
    return {row.recipe_key: row for row in rows}


def taken_keys(*, owner_id: int) -> frozenset[str]:
    """Ids that somebody's recipes bear, those thrown away among them."""
    return frozenset(Recipe.objects.filter(owner_id=owner_id).values_list("key", flat=True))
