"""Writing a recipe, changing one, and bringing one in from elsewhere: all on the same page of fields."""

from typing import Any
from uuid import UUID

from django.http import HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.urls import reverse
from django.utils.translation import gettext as _
from django.views.decorators.http import require_http_methods, require_POST

from cookout.core.errors import CookoutError
from cookout.core.kitchen.drafts import DraftRecipe
from cookout.core.kitchen.recipe import Recipe as CoreRecipe
from cookout.services import recipe_import, recipes
from cookout.services.errors import RecipeChangedError
from cookout.store.selectors.recipes import Recipe, RecipeVersion, recipe_of
from cookout.web import answers
from cookout.web.forms.recipe_editor import RecipeEditor, editor_of, understood
from cookout.web.forms.recipe_import import BringForm
from cookout.web.guards import signed_in, user_id_of
from cookout.web.reading.recipes import lines_read, readers_units
from cookout.web.recipe_guards import own_recipe
from cookout.web.views.pressing import in_words

NEW_KEY = "recipe"


@require_http_methods(["GET", "POST"])
@signed_in
def new(request: HttpRequest) -> HttpResponse:
    """A recipe written from nothing, or completed after it was brought in."""
    if request.method == "GET":
        return _page(request, RecipeEditor.blank())
    editor = RecipeEditor.of_post(request.POST)
    if request.POST.get("do", "save") != "save":
        return _page(request, editor.pressed(request.POST["do"]))
    recipe = editor.recipe(NEW_KEY)
    if recipe is None:
        return _page(request, editor, status=422)
    origin = _("brought in from elsewhere") if request.POST.get("origin") == "elsewhere" else ""
    try:
        row = recipes.create_recipe(owner_id=user_id_of(request), recipe=recipe, units=readers_units(), origin=origin)
    except CookoutError as error:
        editor.head.add_error(None, in_words(error))
        return _page(request, editor, status=422)
    told = _("%(recipe)s is in your box.") % {"recipe": row.name}
    answers.told(request, told, undo=reverse("recipe-delete", args=[row.public_id]))
    return redirect("recipe", row.public_id)


@require_http_methods(["GET", "POST"])
@signed_in
def edit(request: HttpRequest, recipe: UUID) -> HttpResponse:
    """A recipe changed; each save is a new version."""
    row, current = own_recipe(request, recipe)
    core = recipe_of(current)
    if request.method == "GET":
        return _page(request, editor_of(core, readers_units()), row, current.number)
    editor = RecipeEditor.of_post(request.POST)
    was = _number(request.POST.get("was", ""), current.number)
    if request.POST.get("do", "save") != "save":
        return _page(request, editor.pressed(request.POST["do"]), row, was)
    changed = editor.recipe(row.key, core.ingredients)
    if changed is None:
        return _page(request, editor, row, was, status=422)
    return _saved(request, row, current, editor, changed, was)


def _saved(
    request: HttpRequest, row: Recipe, current: RecipeVersion, editor: RecipeEditor, changed: CoreRecipe, was: int
) -> HttpResponse:
    note = request.POST.get("version-note", "").strip()[:200]
    try:
        version = recipes.save_recipe(recipe_id=row.pk, recipe=changed, units=readers_units(), was=was, note=note)
    except CookoutError as error:
        editor.head.add_error(None, in_words(error))
        was = error.number if isinstance(error, RecipeChangedError) else was
        return _page(request, editor, row, was, status=422, clash=isinstance(error, RecipeChangedError))
    if version is None:
        answers.told(request, _("Nothing was different, so no version was made."))
    else:
        told = _("Saved as version %(number)d.") % {"number": version.number}
        answers.told(request, told, undo=reverse("recipe-version-back", args=[row.public_id, current.number]))
    return redirect("recipe", row.public_id)


@require_POST
@signed_in
def lines(request: HttpRequest) -> HttpResponse:
    """What the lines of a list of ingredients are understood as, while they are typed."""
    text = request.POST.get("head-ingredients", "")[:20_000]
    return render(request, "cookout/parts/recipe_lines.html", {"lines": lines_read(understood(text))})


@require_http_methods(["GET", "POST"])
@signed_in
def bring_in(request: HttpRequest) -> HttpResponse:
    """A recipe from a saved page, a file or words: read, proposed, and then completed."""
    if request.method == "GET":
        return render(request, "cookout/recipe_import.html", {"form": BringForm()})
    form = BringForm(request.POST, request.FILES)
    if not form.is_valid():
        return render(request, "cookout/recipe_import.html", {"form": form}, status=422)
    try:
        brought = recipe_import.bring(text=form.cleaned_data["text"], file_name=form.cleaned_data["name"])
        return _brought(request, form, brought)
    except CookoutError as error:
        form.add_error("text", in_words(error))
        return render(request, "cookout/recipe_import.html", {"form": form}, status=422)


def _brought(request: HttpRequest, form: BringForm, brought: recipe_import.Brought) -> HttpResponse:
    """One draft goes on to be completed, one complete recipe into the box; of several the user chooses."""
    names = [each.name for each in brought.recipes] + [each.name for each in brought.drafts]
    picked = form.cleaned_data["pick"]
    if len(names) > 1 and not picked:
        page = {"form": form, "names": list(enumerate(names)), "complete": bool(brought.recipes)}
        return render(request, "cookout/recipe_choose.html", page)
    if brought.drafts:
        return _to_complete(request, brought.drafts[min(picked[0] if picked else 0, len(brought.drafts) - 1)])
    chosen = [each for place, each in enumerate(brought.recipes) if not picked or place in picked]
    made = _put_in_box(request, chosen)
    told = _("%(names)s: in your box now.") % {"names": ", ".join(row.name for row in made)}
    undo = reverse("recipe-delete", args=[made[0].public_id]) if len(made) == 1 else ""
    answers.told(request, told, undo=undo)
    return redirect("recipe", made[0].public_id) if len(made) == 1 else redirect("recipes")


def _put_in_box(request: HttpRequest, chosen: list[CoreRecipe]) -> list[Recipe]:
    owner, origin = user_id_of(request), _("out of a file")
    return [recipes.create_recipe(owner_id=owner, recipe=each, units=readers_units(), origin=origin) for each in chosen]


def _to_complete(request: HttpRequest, draft: DraftRecipe) -> HttpResponse:
    proposal = recipe_import.propose(draft=draft, units=readers_units())
    editor = RecipeEditor.of_table(proposal.table, proposal.why)
    editor.ask(NEW_KEY)
    return _page(request, editor, left_out=proposal.left_out, cut=proposal.cut, origin="elsewhere")


def _page(
    request: HttpRequest,
    editor: RecipeEditor,
    row: Recipe | None = None,
    was: int = 0,
    *,
    status: int = 200,
    **more: Any,
) -> HttpResponse:
    text = str(editor.head["ingredients"].value() or "")
    page = {
        "editor": editor,
        "row": row,
        "was": was,
        "lines": lines_read(understood(text)),
        "here": reverse("recipe-new") if row is None else reverse("recipe-edit", args=[row.public_id]),
        "origin": "elsewhere" if request.POST.get("origin") == "elsewhere" else "",
        "note": request.POST.get("version-note", ""),
        **more,
    }
    return render(request, "cookout/recipe_edit.html", page, status=status)


def _number(text: str, usual: int) -> int:
    return int(text) if text.isdecimal() and len(text) < 8 else usual
