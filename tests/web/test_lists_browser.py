"""Lists in a real browser: two phones at once, a lost connection, keys alone, no script, no barrier."""

from collections.abc import Callable, Iterator

import pytest
from axe_playwright_python.sync_playwright import Axe  # type: ignore[import-untyped]
from django.urls import reverse
from playwright.sync_api import Browser, BrowserContext, Locator, Page, expect
from pytest_django import Settings
from pytest_django.live_server_helper import LiveServer

from cookout.services import accounts
from cookout.store.models import Event, Membership, Tick, User
from tests.core.planning.lists.conftest import planned
from tests.store.cast import OWNER, a_user, an_event, plan_it

pytestmark = [pytest.mark.browser, pytest.mark.django_db(transaction=True)]

PHONE = {"width": 390, "height": 800}
LARGE_ENOUGH = 44
LISTS = ("shopping", "measuring", "packing", "leftovers")

Opener = Callable[..., Page]


@pytest.fixture
def supper(settings: Settings) -> Event:
    """The supper, planned."""
    settings.COOKOUT_DEMO = True
    event = an_event(a_user(OWNER))
    plan_it(event, planned("supper"))
    return event


@pytest.fixture
def phone(browser: Browser, live_server: LiveServer) -> Iterator[Opener]:
    """Opens a page of somebody's own phone, signed in."""
    contexts: list[BrowserContext] = []

    def open_for(user: User, address: str, **options: object) -> Page:
        context = browser.new_context(base_url=live_server.url, viewport=PHONE, **options)  # type: ignore[arg-type]
        contexts.append(context)
        page = context.new_page()
        page.goto(reverse("demo-enter", args=[accounts.make_demo_entry(user_id=user.pk)]))
        page.goto(address)
        return page

    yield open_for
    for context in contexts:
        context.close()


def shopping(event: Event) -> str:
    """The address of the shopping list."""
    return reverse("list", args=[event.public_id, "shopping"])


def tick(page: Page, key: str) -> Locator:
    """The button of a line."""
    return page.locator(f"button[id='tick-{key}']")


def ask_for_news(page: Page) -> None:
    """Have the page ask now, as it does when it is looked at again."""
    page.evaluate("document.dispatchEvent(new Event('visibilitychange'))")


def test_what_one_ticks_the_other_sees(phone: Opener, supper: Event) -> None:
    friend = a_user("friend@meadow.example")
    Membership.objects.create(event=supper, user=friend, role="planner")
    mine, theirs = phone(supper.owner, shopping(supper)), phone(friend, shopping(supper))
    tick(mine, "onion").click()
    tick(theirs, "butter").click()
    expect(tick(mine, "onion")).to_have_attribute("aria-pressed", "true")
    expect(tick(theirs, "butter")).to_have_attribute("aria-pressed", "true")
    for page, key in ((mine, "butter"), (theirs, "onion")):
        ask_for_news(page)
        expect(tick(page, key)).to_have_attribute("aria-pressed", "true")
        expect(page.locator("#list-progress")).to_contain_text("2 of 19")
    expect(mine.locator("#line-butter")).to_contain_text("friend@meadow.example")
    assert set(Tick.objects.values_list("key", "state")) == {("onion", "done"), ("butter", "done")}


def test_a_tick_without_a_connection_is_told_and_sent_when_there_is_one(phone: Opener, supper: Event) -> None:
    page = phone(supper.owner, shopping(supper))
    page.context.set_offline(True)
    tick(page, "onion").click()
    expect(page.get_by_role("alert")).to_contain_text("Not saved yet")
    expect(tick(page, "onion")).to_have_attribute("aria-pressed", "false")
    page.context.set_offline(False)
    expect(tick(page, "onion")).to_have_attribute("aria-pressed", "true", timeout=15_000)
    expect(page.get_by_role("alert")).to_be_hidden()
    assert Tick.objects.get().key == "onion"


def test_keys_alone_tick_and_untick_and_stay_on_the_line(phone: Opener, supper: Event) -> None:
    page = phone(supper.owner, shopping(supper))
    tick(page, "onion").focus()
    for state in ("true", "false"):
        page.keyboard.press("Space")
        expect(tick(page, "onion")).to_have_attribute("aria-pressed", state)
        expect(tick(page, "onion")).to_be_focused()
    page.keyboard.press("Tab")
    page.keyboard.press("Enter")
    expect(page.get_by_role("button", name="on hand: onion")).to_have_attribute("aria-pressed", "true")


def test_presses_in_quick_succession_are_all_sent_and_none_loads_the_page_anew(phone: Opener, supper: Event) -> None:
    page = phone(supper.owner, shopping(supper))
    page.evaluate("document.title = 'the same page'")
    for key in ("onion", "butter", "radish"):
        tick(page, key).focus()
        page.keyboard.press("Space")
    for key in ("onion", "butter", "radish"):
        expect(tick(page, key)).to_have_attribute("aria-pressed", "true")
    assert page.title() == "the same page"
    assert Tick.objects.filter(event=supper, state="done").count() == 3


def test_without_a_script_a_press_leads_back_to_the_line(phone: Opener, supper: Event) -> None:
    page = phone(supper.owner, shopping(supper), java_script_enabled=False)
    tick(page, "radish").click()
    assert page.url.endswith("#line-radish")
    expect(tick(page, "radish")).to_have_attribute("aria-pressed", "true")
    expect(tick(page, "radish")).to_be_in_viewport()


@pytest.mark.parametrize("name", [*LISTS, "card", ""])
@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_no_list_has_a_barrier_or_scrolls_sideways(phone: Opener, supper: Event, name: str, scheme: str) -> None:
    page = phone(supper.owner, f"{reverse('lists', args=[supper.public_id])}{name and f'{name}/'}", color_scheme=scheme)
    if name == "shopping":
        tick(page, "onion").click()
        page.get_by_role("button", name="on hand: butter").click()
        expect(page.locator("#list-progress")).to_contain_text("2 of 19")
    found = Axe().run(page)
    assert found.violations_count == 0, found.generate_report()
    assert page.evaluate("document.documentElement.scrollWidth <= document.documentElement.clientWidth")


@pytest.mark.parametrize("name", LISTS)
def test_floury_fingers_hit_every_line(phone: Opener, supper: Event, name: str) -> None:
    page = phone(supper.owner, reverse("list", args=[supper.public_id, name]))
    boxes = [button.bounding_box() for button in page.locator("button[name=tick]").all()]
    assert len(boxes) >= 5
    assert all(box and min(box["width"], box["height"]) >= LARGE_ENOUGH for box in boxes)
