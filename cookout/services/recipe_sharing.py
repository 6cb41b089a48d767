"""Copies of recipes given away: a link shows the recipe, and whoever has an account may take a copy of it."""

from django.utils.translation import gettext as _

from cookout.services.errors import NoSuchThingError
from cookout.services.recipes import create_recipe
from cookout.services.tokens import fresh_token, hash_of
from cookout.store.models import Recipe
from cookout.store.selectors import recipes


def share_recipe(*, recipe_id: int) -> str:
    """A new link to a recipe: its token, which is not stored and cannot be shown again. The one before ends."""
    token = fresh_token()
    if not Recipe.objects.filter(pk=recipe_id, deleted_at=None).update(share_hash=hash_of(token)):
        raise NoSuchThingError(_("This recipe is gone. Go back to the recipe box."))
    return token


def stop_sharing(*, recipe_id: int) -> bool:
    """End the link of a recipe; whether there was one. Copies that were taken stay with whoever took them."""
    return Recipe.objects.filter(pk=recipe_id).exclude(share_hash="").update(share_hash="") > 0


def find_shared(token: str) -> Recipe | None:
    """The recipe behind a link, or None. Looked up by hash, so timing tells nothing of stored tokens."""
    return recipes.get_shared(share_hash=hash_of(token))


def take_copy(*, token: str, owner_id: int, units: str) -> Recipe:
    """A copy of the recipe behind a link, in the taker's own box."""
    shared = find_shared(token)
    if shared is None or shared.current is None:
        raise NoSuchThingError(_("This link has ended. Ask whoever sent it for a new one."))
    giver = shared.owner.name or _("somebody")
    origin = _("a copy from %(giver)s") % {"giver": giver}
    return create_recipe(owner_id=owner_id, recipe=recipes.recipe_of(shared.current), units=units, origin=origin)
