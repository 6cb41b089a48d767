"""Recipes out of pages with microdata, and of pages that have none."""

import json
import socket
from typing import NoReturn

import pytest

from cookout.core.kitchen.ingredients import Parsed
from cookout.core.kitchen.linked_data import RecipeTextError
from cookout.interchange.pages import LARGEST_PAGE, read_page

MICRODATA = """<!doctype html><html><body><article itemscope itemtype="https://schema.org/Recipe">
<h1 itemprop="name">Pan <b>Bread</b></h1><p>For <span itemprop="recipeYield">6 servings</span>
<time itemprop="prepTime" datetime="PT10M">ten minutes</time></p>
<ul><li itemprop="recipeIngredient">2 cups flour</li><li itemprop="recipeIngredient">1½ tsp salt</li></ul>
<div itemprop="recipeInstructions">Mix for 5 minutes.</div>
<div itemprop="recipeInstructions">Bake at 375 °F for 30 minutes.</div></article></body></html>"""
LINKED = '<script type="application/ld+json">{}</script>'


def test_microdata_is_read_where_there_is_no_json_ld() -> None:
    (draft,) = read_page(MICRODATA)
    assert (draft.name, draft.serves, draft.prepare_minutes) == ("Pan Bread", 6, 10)
    assert [(line.least, line.unit) for line in draft.ingredients if isinstance(line, Parsed)] == [
        (2.0, "cup"),
        (1.5, "tsp"),
    ]
    assert [step.minutes for step in draft.steps] == [(5, 5), (30, 30)]


def test_a_page_that_calls_itself_xml_is_read_the_same() -> None:
    (draft,) = read_page('<?xml version="1.0" encoding="utf-8"?>\n' + MICRODATA)
    assert draft.name == "Pan Bread"


def test_json_ld_comes_before_microdata() -> None:
    linked = LINKED.format(json.dumps({"@type": "Recipe", "name": "Linked"}))
    assert [draft.name for draft in read_page(linked + MICRODATA)] == ["Linked"]


@pytest.mark.parametrize(
    "text",
    [
        "",
        "<html></html>",
        "<p itemprop=name>x</p>",
        "<div itemscope itemtype='https://schema.org/Person'><p itemprop=name>x</p></div>",
        "<div itemprop " * 2000,
        "itemprop" + "<div>" * 20_000,
        "itemprop" * LARGEST_PAGE,
    ],
    ids=range(7),
)
def test_a_page_without_a_recipe_is_refused_with_a_reason(text: str) -> None:
    with pytest.raises(RecipeTextError):
        read_page(text)


def test_nothing_is_fetched_for_a_page(monkeypatch: pytest.MonkeyPatch) -> None:
    def refuse(*args: object, **kwargs: object) -> NoReturn:
        raise AssertionError("a page was read over the network")

    monkeypatch.setattr(socket, "create_connection", refuse)
    monkeypatch.setattr(socket.socket, "connect", refuse)
    outside = (
        '<link rel="stylesheet" href="https://page.invalid/a.css"><img itemprop="image" src="//page.invalid/b.png">'
    )
    doctype = '<!DOCTYPE html SYSTEM "https://page.invalid/c.dtd">'
    (draft,) = read_page(doctype + MICRODATA.replace("<h1", outside + "<h1"))
    assert draft.name == "Pan Bread"
