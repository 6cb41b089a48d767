"""An independent reading for barriers on every page that there is, light and dark (axe-core, WCAG 2.2 A and AA)."""

from collections.abc import Iterator
from dataclasses import dataclass

import pytest
from axe_playwright_python.sync_playwright import Axe  # type: ignore[import-untyped]
from django.test import Client
from django.urls import reverse
from playwright.sync_api import Browser, BrowserContext, Page
from pytest_django import Settings
from pytest_django.live_server_helper import LiveServer

from cookout.core.planning.result import Limits
from cookout.services import event_recipes, events, links, plan, recipe_sharing, recipes, sharing, trials
from cookout.store.models import EventRecipe, Recipe, User
from cookout.web.urls import urlpatterns
from tests.core.starter_box import starter
from tests.services.impossible import nobody_for_the_fire
from tests.store.cast import Cast, the_cast

pytestmark = [pytest.mark.browser, pytest.mark.django_db(transaction=True), pytest.mark.timeout(600)]

RULES = {"runOnly": ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"]}
SCHEMES = pytest.mark.parametrize("scheme", ["light", "dark"])
LISTS = ("shopping", "measuring", "packing", "leftovers")
TOPICS = ("first-event", "planning", "words", "cautions")
FEWEST_PAGES = 54
EVENT_PAGES = ("event", "event-day", "event-menu", "event-gear", "event-crew", "event-show", "event-edits", "trials")
ELSEWHERE = {"demo-enter", "sign-out", "feed", "invitation", "call-sheet", "recipe-shared", "confirm", "reset-confirm"}
"""Addresses that are no page of the owner's: they answer strangers, who have a test of their own, or send on."""


@dataclass(frozen=True)
class Stored:
    """Everything that a page can be about."""

    cast: Cast
    trial: int
    recipe: Recipe
    recipe_token: str
    invitation: str
    call_sheet: str


@pytest.fixture
def stored() -> Stored:
    """The cast with two real plans, a trial, a recipe of two versions in box and event, and open links."""
    cast = the_cast()
    owner, event = cast.owner, cast.event
    recipe = recipes.create_recipe(owner_id=owner.pk, recipe=starter("camp-cornbread"), units="us")
    recipes.save_recipe(recipe_id=recipe.pk, recipe=starter("molasses-gingerbread"), units="us", was=1)
    plan.run_planning(run_id=plan.queue_planning(event_id=event.pk, limits=Limits(10, 2, 1), announce=False).pk)
    change: dict[str, str | int] = {"kind": "move_servings", "minutes": -15}
    run = trials.try_change(event_id=event.pk, user_id=owner.pk, change=change, words="15 min earlier")
    plan.run_planning(run_id=run.pk)
    event_recipes.add_recipe_to_event(event_id=event.pk, user_id=owner.pk, recipe_id=recipe.pk, serving_id="table")
    event.refresh_from_db()
    assert event.current is not None
    assert event.current.number == 2
    invitation = sharing.invite(event_id=event.pk, user_id=owner.pk, role="planner").token
    link = links.make_helper_link(event_id=event.pk, helper_id=event.current.payload["helpers"][0]["id"])
    return Stored(cast, run.pk, recipe, recipe_sharing.share_recipe(recipe_id=recipe.pk), invitation, link.token)


def known(stored: Stored) -> dict[str, object]:
    """A value for each part of an address."""
    current = stored.cast.event.current
    assert current is not None
    return {
        "event": stored.cast.event.public_id,
        "number": 2,  # a revision and a recipe's version of this number are both there
        "run": stored.trial,
        "helper": current.payload["helpers"][0]["id"],
        "task": current.payload["tasks"][0]["id"],
        "recipe": stored.recipe.public_id,
        "key": EventRecipe.objects.get(event=stored.cast.event).recipe_key,
        "name": "shopping",
        "kind": "run-sheet",
        "topic": "words",
    }


def own_addresses(stored: Stored) -> list[str]:
    """Every address with every part known, and those whose part has several values of its own."""
    values, event, recipe = known(stored), stored.cast.event.public_id, stored.recipe.public_id
    found = []
    for pattern in urlpatterns:
        parts = list(pattern.pattern.converters)
        if pattern.name not in ELSEWHERE and all(part in values for part in parts):
            found.append(reverse(str(pattern.name), kwargs={part: values[part] for part in parts}))
    found += [reverse("list", args=[event, name]) for name in LISTS[1:]]
    found += [reverse("timeline", args=[event]) + f"?by={by}&zoom=hour" for by in ("helper", "gear")]
    found += [
        reverse("recipe-starter", args=["beef-stew"]),
        reverse("recipe-into-event", args=[recipe]) + f"?event={event}",
        reverse("recipe-versions", args=[recipe]) + "?first=1&second=2",
        reverse("revisions-compared", args=[event]) + "?before=1&after=2",
    ]
    return found


def pages_among(client: Client, addresses: list[str]) -> list[str]:
    """Those that answer a GET with a whole page, not with a part of one or a file."""
    answers = {address: client.get(address) for address in addresses}
    return [
        address
        for address, answer in answers.items()
        if answer.status_code == 200 and not answer.streaming and answer.content.lower().startswith(b"<!doctype html>")
    ]


def barriers_on(page: Page, addresses: list[str]) -> list[str]:
    """What stands in the way on each page with everything unfolded, in words."""
    found = []
    for address in addresses:
        page.goto(address)
        page.evaluate("document.querySelectorAll('details').forEach(each => { each.open = true })")
        for barrier in Axe().run(page, options=RULES).response["violations"]:
            found += [f"{address}: {barrier['id']}: {node['html'][:300]}" for node in barrier["nodes"]]
    return found


@pytest.fixture
def context(browser: Browser, live_server: LiveServer, scheme: str) -> Iterator[BrowserContext]:
    """A browser of nobody's, light or dark."""
    chosen = "dark" if scheme == "dark" else "light"
    with browser.new_context(base_url=live_server.url, color_scheme=chosen) as fresh:  # type: ignore[arg-type]
        yield fresh


def sign_in(context: BrowserContext, live_server: LiveServer, user: User) -> Client:
    """The browser becomes the user's; so does the client that is given back."""
    client = Client()
    client.force_login(user)
    session = client.cookies["sessionid"].value
    context.add_cookies([{"name": "sessionid", "value": session, "url": live_server.url}])
    return client


@SCHEMES
def test_no_page_of_the_owners_has_a_barrier(context: BrowserContext, live_server: LiveServer, stored: Stored) -> None:
    client = sign_in(context, live_server, stored.cast.owner)
    pages = pages_among(client, own_addresses(stored))
    assert len(pages) >= FEWEST_PAGES
    assert barriers_on(context.new_page(), pages) == []


@SCHEMES
def test_no_page_has_a_barrier_with_nothing_in_it_yet_or_with_what_stands_in_the_way(
    context: BrowserContext, live_server: LiveServer, stored: Stored
) -> None:
    client = sign_in(context, live_server, stored.cast.stranger)
    blank = {"name": "Bare", "day": "2027-08-01", "place": "By the ford", "timezone": "America/Denver", "units": "us"}
    made = client.post(reverse("event-new"), {"do": "blank", **{f"blank-{key}": text for key, text in blank.items()}})
    event = made.headers["Location"].split("/")[2]
    own = [reverse(name) for name in ("start", "recipes", "keeping", "account", "event-new")]
    impossible = events.create_event(owner_id=stored.cast.stranger.pk, document=nobody_for_the_fire())
    plan.run_planning(run_id=plan.queue_planning(event_id=impossible.pk, announce=False).pk)
    own.append(reverse("event", args=[impossible.public_id]))
    assert "What stands in the way" in client.get(own[-1]).content.decode()
    pages = pages_among(client, [*own, *(reverse(name, args=[event]) for name in EVENT_PAGES)])
    assert len(pages) == len(own) + len(EVENT_PAGES)
    assert barriers_on(context.new_page(), pages) == []


@SCHEMES
def test_no_page_for_everybody_has_a_barrier(context: BrowserContext, settings: Settings, stored: Stored) -> None:
    behind_links = [
        reverse("invitation", args=[stored.invitation]),
        reverse("recipe-shared", args=[stored.recipe_token]),
        reverse("call-sheet", args=[stored.call_sheet]),
    ]
    assert pages_among(Client(), behind_links) == behind_links
    open_to_all = [
        *behind_links,
        *(reverse(name) for name in ("sign-in", "reset", "reset-sent", "reset-done", "help")),
        *(reverse("help-topic", args=[topic]) for topic in TOPICS),
        reverse("reset-confirm", args=["MQ", "set-password"]),
        reverse("confirm", args=["misspelt"]),
        reverse("invitation", args=["gone"]),
        "/nothing-here/",
    ]
    page, found = context.new_page(), []
    for is_open in (True, False):
        settings.COOKOUT_SIGN_UP = is_open
        found += barriers_on(page, [reverse("sign-up")])
    assert found + barriers_on(page, open_to_all) == []
