"""Recipes from elsewhere: a recipe or event file is read as it is, all else becomes a proposal to be completed."""

from dataclasses import dataclass

from django.utils.translation import gettext as _

from cookout.core.errors import CookoutError
from cookout.core.eventfile import read_event, read_recipe
from cookout.core.eventfile.completing import Proposal, proposal_of
from cookout.core.kitchen.drafts import DraftRecipe
from cookout.core.kitchen.linked_data import RecipeTextError
from cookout.core.kitchen.plaintext import draft_from_text
from cookout.core.kitchen.recipe import Recipe as CoreRecipe
from cookout.interchange.pages import read_page

MOST_RECIPES = 200
"""Recipes of one text that are offered; a page with more is a list of them."""


@dataclass(frozen=True, slots=True)
class Brought:
    """What a text holds: `recipes` that are complete, or `drafts` to be completed one by one."""

    recipes: tuple[CoreRecipe, ...] = ()
    drafts: tuple[DraftRecipe, ...] = ()


def bring(*, text: str, file_name: str = "recipe") -> Brought:
    """Read a text: our own recipe or event file, JSON-LD, a saved page, or plain words.

    Raises `EventFileError` for a file of ours with faults, `RecipeTextError` where no recipe is found.
    """
    start = text.lstrip("\ufeff \t\r\n")
    if not start:
        raise RecipeTextError(_("There is nothing in it. Paste a recipe, or choose a file."))
    if _is_recipe_file(start):
        return Brought(recipes=(read_recipe(start, file_name),))
    if _is_event_file(start):
        return Brought(recipes=read_event(start, file_name).recipes[:MOST_RECIPES])
    if start[0] in "<{[" or _looks_like_page(start):
        return Brought(drafts=read_page(text)[:MOST_RECIPES])
    return Brought(drafts=(draft_from_text(start),))


def propose(*, draft: DraftRecipe, units: str) -> Proposal:
    """What was read and what is proposed for planning, as the table of a recipe file."""
    return proposal_of(draft, units)


def file_text(content: bytes) -> str:
    """The text of a file that was sent; `CookoutError` for one that is no text."""
    for encoding in ("utf-8-sig", "utf-16"):
        if encoding == "utf-16" and content[:2] not in (b"\xff\xfe", b"\xfe\xff"):
            continue
        try:
            return content.decode(encoding)
        except UnicodeDecodeError:
            continue
    if b"\x00" in content:
        raise CookoutError(_("This file is no text. Save the page as HTML, or copy the recipe's words."))
    return content.decode("cp1252", errors="replace")


def _is_recipe_file(text: str) -> bool:
    return any(line.strip() == "[recipe]" for line in text.splitlines()[:200])


def _is_event_file(text: str) -> bool:
    return any(line.strip() == "[event]" for line in text.splitlines()[:200])


def _looks_like_page(text: str) -> bool:
    head = text[:5000].lower()
    return "<html" in head or "<body" in head or "application/ld+json" in text
