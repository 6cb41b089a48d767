"""Copies of recipes by link."""

from uuid import UUID

from django.contrib import messages
from django.http import HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.urls import reverse
from django.utils.translation import gettext as _
from django.views.decorators.http import require_GET, require_POST

from cookout.core.errors import CookoutError
from cookout.services import recipe_sharing
from cookout.services.qr import qr_svg
from cookout.store.selectors.recipes import recipe_of
from cookout.web import answers
from cookout.web.guards import signed_in, user_id_of
from cookout.web.reading.recipes import people_asked, readers_units, recipe_page
from cookout.web.recipe_guards import open_recipe, own_recipe
from cookout.web.views.pressing import in_words


@require_POST
@signed_in
def share(request: HttpRequest, recipe: UUID) -> HttpResponse:
    """A new link, shown this once."""
    row, _current = own_recipe(request, recipe)
    token = recipe_sharing.share_recipe(recipe_id=row.pk)
    address = answers.address(request, "recipe-shared", token=token)
    return answers.shown_once(
        render(request, "cookout/recipe_link.html", {"row": row, "address": address, "qr": qr_svg(address)})
    )


@require_POST
@signed_in
def end_share(request: HttpRequest, recipe: UUID) -> HttpResponse:
    """The link opens nothing any more."""
    row, _current = own_recipe(request, recipe)
    recipe_sharing.stop_sharing(recipe_id=row.pk)
    messages.success(request, _("The link opens nothing any more. Copies that were taken stay where they are."))
    return redirect("recipe", row.public_id)


@require_GET
def shared(request: HttpRequest, token: str) -> HttpResponse:
    """The recipe behind a link, for whoever has it."""
    row, current = open_recipe(token)
    core = recipe_of(current)
    page = recipe_page(core, people_asked(request.GET.get("people", ""), core.serves))
    shown = {"page": page, "token": token, "giver": row.owner.name, "is_own": request.user.pk == row.owner_id}
    return answers.unlisted(render(request, "cookout/recipe_shared.html", shown), has_forms=True)


@require_POST
@signed_in
def take(request: HttpRequest, token: str) -> HttpResponse:
    """A copy of it into the taker's box."""
    open_recipe(token)
    try:
        made = recipe_sharing.take_copy(token=token, owner_id=user_id_of(request), units=readers_units())
    except CookoutError as error:
        messages.error(request, in_words(error))
        return redirect("recipe-shared", token)
    told = _("%(recipe)s is in your box now.") % {"recipe": made.name}
    answers.told(request, told, undo=reverse("recipe-delete", args=[made.public_id]))
    return redirect("recipe", made.public_id)
