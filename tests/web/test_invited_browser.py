"""Pages behind links, in a real browser: their buttons work, and their addresses reach no other site."""

from collections.abc import Iterator

import pytest
from django.urls import reverse
from playwright.sync_api import Browser, Page, Route, expect
from pytest_django import Settings
from pytest_django.live_server_helper import LiveServer

from cookout.services import accounts, recipe_sharing, sharing, starters
from cookout.store.models import Event, Membership, Recipe, User
from tests.services.test_sharing import Mailbox, mailbox, text_of
from tests.store.cast import OWNER, STRANGER, a_user, an_event

__all__ = ["mailbox"]

pytestmark = [pytest.mark.browser, pytest.mark.django_db(transaction=True)]

NEW, PASSWORD = "new@meadow.example", "plenty of charcoal"


@pytest.fixture
def event() -> Event:
    return an_event(a_user(OWNER))


@pytest.fixture
def page(browser: Browser, live_server: LiveServer) -> Iterator[Page]:
    """A fresh page; whatever the browser complains of fails the test."""
    complaints: list[str] = []
    with browser.new_context(base_url=live_server.url, viewport={"width": 390, "height": 800}) as context:
        fresh = context.new_page()
        fresh.on("console", lambda said: complaints.append(said.text) if said.type in ("error", "warning") else None)
        yield fresh
    assert complaints == []


def sign_up(page: Page) -> None:
    page.get_by_label("E-mail address").fill(NEW)
    page.get_by_label("Password", exact=False).first.fill(PASSWORD)
    page.get_by_label("The same password again").fill(PASSWORD)
    page.get_by_role("button", name="Make the account").click()


def test_who_is_invited_makes_an_account_and_takes_the_invitation(page: Page, event: Event) -> None:
    fresh = sharing.invite(event_id=event.pk, user_id=event.owner_id, role="planner")
    page.goto(reverse("invitation", args=[fresh.token]))
    page.get_by_role("link", name="Make an account").click()
    sign_up(page)
    page.get_by_role("button", name="Take it").click()
    expect(page.get_by_role("heading", level=1)).to_have_text(event.name)
    assert Membership.objects.get(event=event).user.email == NEW


def test_a_new_account_is_confirmed_by_the_button_behind_the_link(
    page: Page, mailbox: Mailbox, settings: Settings, live_server: LiveServer
) -> None:
    settings.COOKOUT_SIGN_UP = True
    page.goto(reverse("sign-up"))
    sign_up(page)
    expect(page.get_by_role("heading", level=1)).to_have_text("Look into your mail")
    page.goto(live_server.url + text_of(mailbox.mails[0]).split(live_server.url)[1].split()[0])
    page.get_by_role("button", name="Yes, it is mine").click()
    expect(page.get_by_text("Your address is confirmed")).to_be_visible()
    assert User.objects.get(email=NEW).is_active


def test_the_language_is_changed_on_a_page_behind_a_link(page: Page, event: Event) -> None:
    fresh = sharing.invite(event_id=event.pk, user_id=event.owner_id, role="viewer")
    page.goto(reverse("invitation", args=[fresh.token]))
    page.get_by_role("button", name="Español").click()
    expect(page.locator("html")).to_have_attribute("lang", "es")
    assert page.url.endswith(reverse("invitation", args=[fresh.token]))


def test_a_recipe_behind_a_link_is_taken_with_its_button(page: Page, settings: Settings) -> None:
    settings.COOKOUT_DEMO = True
    giver, taker = a_user(OWNER), a_user(STRANGER)
    row = starters.take_starter(owner_id=giver.pk, name="beef-stew", units="us")
    page.goto(reverse("demo-enter", args=[accounts.make_demo_entry(user_id=taker.pk)]))
    page.goto(reverse("recipe-shared", args=[recipe_sharing.share_recipe(recipe_id=row.pk)]))
    page.get_by_role("button", name="Take a copy into my box").click()
    expect(page.get_by_text("is in your box now")).to_be_visible()
    assert Recipe.objects.filter(owner=taker).count() == 1


def test_the_address_of_a_page_behind_a_link_is_told_to_no_other_site(page: Page, event: Event) -> None:
    fresh = sharing.invite(event_id=event.pk, user_id=event.owner_id, role="viewer")
    page.goto(reverse("invitation", args=[fresh.token]))
    asked: list[str | None] = []

    def answer(route: Route) -> None:
        asked.append(route.request.header_value("referer"))
        route.fulfill(body="there")

    page.route("http://elsewhere.example/", answer)
    page.evaluate("location.href = 'http://elsewhere.example/'")
    expect(page.locator("body")).to_have_text("there")
    assert asked == [None]
