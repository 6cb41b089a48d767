"""The recipe box: recipes made, saved as new versions, copied, thrown away and had back."""

from dataclasses import replace
from datetime import datetime, timedelta

from django.conf import settings
from django.db import transaction
from django.utils import timezone
from django.utils.translation import gettext as _

from cookout.core.eventfile import write_recipe_file
from cookout.core.kitchen.recipe import Recipe as CoreRecipe
from cookout.core.kitchen.recipe import RecipeId
from cookout.services.errors import NoSuchThingError, RecipeChangedError, TooMuchError
from cookout.services.naming import id_for
from cookout.store.models import Recipe, RecipeVersion
from cookout.store.selectors.recipes import recipe_of, taken_keys

MOST_RECIPES = 2000
MOST_STEPS = 60
LONGEST_NAME = 200


@transaction.atomic
def create_recipe(*, owner_id: int, recipe: CoreRecipe, units: str, origin: str = "", note: str = "") -> Recipe:
    """A recipe put into somebody's box, under an id of its own there; texts of quantities in `units`."""
    _check_size(recipe)
    if Recipe.objects.filter(owner_id=owner_id, deleted_at=None).count() >= MOST_RECIPES:
        words = _("Your box holds %(count)d recipes, which is all it can. Throw some away first.")
        raise TooMuchError(words % {"count": MOST_RECIPES})
    key = id_for(recipe.name, taken_keys(owner_id=owner_id), "recipe")
    row = Recipe.objects.create(owner_id=owner_id, key=key, origin=origin[:300], **_read_out(recipe))
    _add_version(row, recipe, number=1, units=units, note=note)
    return row


@transaction.atomic
def save_recipe(*, recipe_id: int, recipe: CoreRecipe, units: str, was: int, note: str = "") -> RecipeVersion | None:
    """A new version of a recipe, made from version `was`; None where nothing differs from it.

    Raises `RecipeChangedError` where another version was saved meanwhile, `NoSuchThingError` where it is gone.
    """
    _check_size(recipe)
    row = _locked(recipe_id)
    current = _current(row)
    if replace(recipe, id=RecipeId(row.key)) == recipe_of(current):
        return None
    if current.number != was:
        raise RecipeChangedError(current.number)
    for field, value in _read_out(recipe).items():
        setattr(row, field, value)
    return _add_version(row, recipe, number=_last_number(row) + 1, units=units, note=note)


@transaction.atomic
def bring_back_version(*, recipe_id: int, number: int, units: str) -> RecipeVersion | None:
    """An earlier version as the newest again; None where it is the current one, word for word."""
    row = _locked(recipe_id)
    found = RecipeVersion.objects.filter(recipe=row, number=number).first()
    if found is None:
        raise NoSuchThingError(_("There is no such version of this recipe. Choose one from the list."))
    note = _("version %(number)d brought back") % {"number": number}
    return save_recipe(recipe_id=recipe_id, recipe=recipe_of(found), units=units, was=_current(row).number, note=note)


def copy_recipe(*, recipe_id: int, owner_id: int, units: str) -> Recipe:
    """A second recipe out of the current version, to be changed apart from the first."""
    row = Recipe.objects.select_related("current").filter(pk=recipe_id, deleted_at=None).first()
    if row is None:
        raise _gone()
    recipe = recipe_of(_current(row))
    name = _("%(name)s, copy") % {"name": recipe.name}
    origin = _("copied from %(name)s") % {"name": recipe.name}
    return create_recipe(
        owner_id=owner_id, recipe=replace(recipe, name=name[:LONGEST_NAME]), units=units, origin=origin
    )


def delete_recipe(*, recipe_id: int) -> None:
    """Throw a recipe away; its link ends. It can be had back for some days, and events keep what they took."""
    gone = Recipe.objects.filter(pk=recipe_id, deleted_at=None).update(deleted_at=timezone.now(), share_hash="")
    if not gone:
        raise _gone()


def restore_recipe(*, recipe_id: int) -> None:
    """Have a recipe back that was thrown away."""
    if not Recipe.objects.filter(pk=recipe_id, deleted_at__isnull=False).update(deleted_at=None):
        raise NoSuchThingError(_("This recipe is not among those thrown away. It may be back already."))


def forget_deleted(*, now: datetime) -> int:
    """Remove for good what was thrown away longer ago than that; how many recipes that were."""
    old = Recipe.objects.filter(deleted_at__lt=now - timedelta(days=settings.COOKOUT_KEEP_DELETED_DAYS))
    count = old.count()
    old.delete()
    return count


def _check_size(recipe: CoreRecipe) -> None:
    if len(recipe.steps) > MOST_STEPS:
        words = _("This recipe has %(steps)d steps; the box takes %(most)d. Put some of them together.")
        raise TooMuchError(words % {"steps": len(recipe.steps), "most": MOST_STEPS})
    if len(recipe.name) > LONGEST_NAME:
        raise TooMuchError(_("The name is too long; shorten it to %(most)d letters.") % {"most": LONGEST_NAME})


def _read_out(recipe: CoreRecipe) -> dict[str, object]:
    """What lists need of a recipe."""
    return {"name": recipe.name, "food": recipe.food.value, "serves": recipe.serves}


def _add_version(row: Recipe, recipe: CoreRecipe, *, number: int, units: str, note: str) -> RecipeVersion:
    document = write_recipe_file(replace(recipe, id=RecipeId(row.key)), units)
    version = RecipeVersion.objects.create(
        recipe=row, number=number, document=document, note=note[:200], made_at=timezone.now()
    )
    row.current = version
    row.save()
    return version


def _locked(recipe_id: int) -> Recipe:
    row = Recipe.objects.select_for_update(of=("self",)).filter(pk=recipe_id, deleted_at=None).first()
    if row is None:
        raise _gone()
    return row


def _current(row: Recipe) -> RecipeVersion:
    if row.current is None:
        raise _gone()
    return row.current


def _last_number(row: Recipe) -> int:
    last = RecipeVersion.objects.filter(recipe=row).order_by("-number").values_list("number", flat=True).first()
    return last or 0


def _gone() -> NoSuchThingError:
    return NoSuchThingError(_("This recipe is gone. Go back to the recipe box."))
