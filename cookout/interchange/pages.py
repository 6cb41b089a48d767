"""A recipe out of any HTML page: its JSON-LD where it has some, else its microdata.

The page is text that a person gave; nothing is fetched, and no site is treated in a way of its own.
"""

import re

from recipe_scrapers import NoSchemaFoundInWildMode, scrape_html

from cookout.core.kitchen.drafts import DraftRecipe
from cookout.core.kitchen.interchange import draft_of, read_recipes
from cookout.core.kitchen.linked_data import LARGEST_TEXT, RecipeTextError

LARGEST_PAGE = 1_000_000
"""Characters of a page without JSON-LD: all of it becomes a tree in memory."""
_XML_HEAD = re.compile(r"^\s*<\?xml[^<>]*>")
_NOWHERE = "https://page.invalid/"
"""The address given for a page: of no site, so that what is read depends on the page alone."""


def read_page(text: str) -> tuple[DraftRecipe, ...]:
    """Every recipe of a JSON-LD text or HTML page, as drafts; `RecipeTextError` where there is none."""
    try:
        return read_recipes(text)
    except RecipeTextError:
        if len(text) > min(LARGEST_PAGE, LARGEST_TEXT) or "itemprop" not in text:
            raise
    return (_from_microdata(text),)


def _from_microdata(text: str) -> DraftRecipe:
    try:
        found = scrape_html(_XML_HEAD.sub("", text), org_url=_NOWHERE, online=False, supported_only=False)
    except (NoSchemaFoundInWildMode, ValueError, RecursionError) as error:
        raise RecipeTextError("No recipe was found in the page; copy name, ingredients and steps by hand.") from error
    return draft_of(dict(found.schema.data))
