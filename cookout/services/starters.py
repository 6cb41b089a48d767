"""The recipes that come with the program, offered to every box."""

from dataclasses import dataclass
from functools import cache
from pathlib import Path

from django.conf import settings
from django.db import transaction
from django.utils.translation import gettext as _

from cookout.core.eventfile import read_recipe
from cookout.core.kitchen.recipe import Recipe as CoreRecipe
from cookout.services.errors import NoSuchThingError
from cookout.services.recipes import create_recipe
from cookout.store.models import Recipe

ORIGIN = "starter:"
"""What `Recipe.origin` begins with for a recipe of these, before its name."""


@dataclass(frozen=True, slots=True)
class Starter:
    """A recipe that comes with the program; `taken` where it is in the box already."""

    name: str
    recipe: CoreRecipe
    taken: bool


def starters(*, owner_id: int) -> tuple[Starter, ...]:
    """All of them by what they are called."""
    taken = set(Recipe.objects.filter(owner_id=owner_id, deleted_at=None).values_list("origin", flat=True))
    return tuple(Starter(name, recipe, f"{ORIGIN}{name}" in taken) for name, recipe in _all().items())


def get_starter(name: str) -> CoreRecipe | None:
    """One of them."""
    return _all().get(name)


def take_starter(*, owner_id: int, name: str, units: str) -> Recipe:
    """One of them put into somebody's box."""
    recipe = get_starter(name)
    if recipe is None:
        raise NoSuchThingError(_("There is no such recipe to start with. Choose one from the list."))
    return create_recipe(owner_id=owner_id, recipe=recipe, units=units, origin=f"{ORIGIN}{name}")


@transaction.atomic
def take_all_starters(*, owner_id: int, units: str) -> int:
    """Those that are not in the box yet put there; how many they were."""
    missing = [starter for starter in starters(owner_id=owner_id) if not starter.taken]
    for starter in missing:
        take_starter(owner_id=owner_id, name=starter.name, units=units)
    return len(missing)


@cache
def _all() -> dict[str, CoreRecipe]:
    files = sorted(Path(settings.COOKOUT_STARTER_RECIPES).glob("*.toml"))
    found = {file.stem: read_recipe(file.read_text(encoding="utf-8"), file.name) for file in files}
    return dict(sorted(found.items(), key=lambda item: item[1].name))
