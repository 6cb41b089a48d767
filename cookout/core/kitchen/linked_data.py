"""Recipes found in linked data: schema.org/Recipe objects in JSON-LD, alone or inside an HTML page.

The text is another's: nothing in it is fetched or run, and its size, depth and number of parts are bounded.
"""

import html
import json
import re
import unicodedata
from collections.abc import Iterator
from typing import TypeGuard

from cookout.core.errors import CookoutError

LARGEST_TEXT = 4_000_000
MOST_NODES = 50_000
LONGEST_TAG = 2_000

Node = dict[str, object]


class RecipeTextError(CookoutError):
    """A text that no recipe can be read from; says why, and what to give instead."""


def find_recipes(text: str) -> tuple[Node, ...]:
    """Every Recipe object of a JSON-LD text or an HTML page, in order; `RecipeTextError` where there is none."""
    if len(text) > LARGEST_TEXT:
        raise RecipeTextError(f"The text has more than {LARGEST_TEXT:,} characters; give the recipe alone.")
    start = text.lstrip("\ufeff \t\r\n")
    if start[:1] in ("{", "["):
        found = tuple(_recipes_in(_load(start)))
    else:
        found = tuple(recipe for script in _scripts(text) for recipe in _recipes_of_script(script))
    if not found:
        raise RecipeTextError("No schema.org/Recipe was found in it; copy name, ingredients and steps by hand.")
    return found


def plain_text(value: object, longest: int) -> str:
    """A value as one line of text: no tags, no entities, no control characters, at most `longest` characters."""
    if isinstance(value, list) and value:
        value = value[0]
    if isinstance(value, int | float) and not isinstance(value, bool):
        value = f"{value:g}"
    if is_node(value):
        value = value.get("@value") or value.get("name") or ""
    if not isinstance(value, str):
        return ""
    text = html.unescape(_TAG.sub(" ", value[: 4 * longest]))
    text = "".join(" " if unicodedata.category(sign)[0] in "CZ" else sign for sign in text)
    return " ".join(text.split())[:longest]


def is_node(value: object) -> TypeGuard[Node]:
    """Whether a value read from JSON is an object."""
    return isinstance(value, dict)


def has_type(node: Node, name: str) -> bool:
    """Whether an object is of a schema.org type, however it is written: ``Recipe``, ``schema:Recipe``, an address."""
    types = node.get("@type", node.get("type"))
    return any(
        isinstance(one, str) and re.split(r"[/:#]", one.strip())[-1] == name
        for one in (types if isinstance(types, list) else [types])
    )


_TAG = re.compile(r"<[^<>]{0,1000}>")
_OPENING = re.compile(r"<!--|<script(?=[\s>])", re.IGNORECASE | re.ASCII)
_CLOSING = re.compile(r"</script", re.IGNORECASE | re.ASCII)
_LINKED_DATA = re.compile(r"type\s*=\s*[\"']?\s*application/ld\+json", re.IGNORECASE | re.ASCII)
_WRAPPING = re.compile(r"^\s*(?:<!--|(?://|/\*)?\s*<!\[CDATA\[\s*(?:\*/)?)|(?:-->|(?://|/\*)?\s*\]\]>\s*(?:\*/)?)\s*$")


def _scripts(page: str) -> Iterator[str]:
    """The contents of the page's linked-data scripts; one pass, whatever stands in the page."""
    at = 0
    while opening := _OPENING.search(page, at):
        if opening[0] == "<!--":
            end = page.find("-->", opening.end())
            if end < 0:
                return
            at = end + 3
            continue
        head = page.find(">", opening.end())
        closing = _CLOSING.search(page, head + 1) if head >= 0 else None
        if closing is None:
            return
        if _LINKED_DATA.search(page, opening.end(), min(head, opening.end() + LONGEST_TAG)):
            yield _WRAPPING.sub("", page[head + 1 : closing.start()])
        at = closing.end()


def _recipes_of_script(script: str) -> tuple[Node, ...]:
    """Recipes of one script; a page may hold others that are broken, so this one is then passed over."""
    try:
        return tuple(_recipes_in(_load(script)))
    except RecipeTextError:
        return ()


def _load(text: str) -> object:
    try:
        return json.loads(text, parse_constant=_refuse, strict=False)
    except (ValueError, RecursionError) as error:
        raise RecipeTextError("This is no JSON that can be read; export the recipe anew.") from error


def _refuse(name: str) -> object:
    raise ValueError(name)


def _recipes_in(value: object) -> Iterator[Node]:
    """Recipe objects anywhere in a value, in reading order, and not inside of one another."""
    waiting, seen = [value], 0
    while waiting:
        seen += 1
        if seen > MOST_NODES:
            raise RecipeTextError("There are too many parts in it; give the recipe alone.")
        node = waiting.pop()
        if is_node(node):
            if has_type(node, "Recipe"):
                yield node
            else:
                waiting += reversed([part for part in node.values() if isinstance(part, dict | list)])
        elif isinstance(node, list):
            waiting += reversed(node)
