"""The way through the pages in a real browser, from the demo's start page to a helper's call sheet."""

from collections.abc import Iterator

import pytest
from django.urls import reverse
from playwright.sync_api import Browser, ConsoleMessage, Page, expect
from pytest_django import Settings
from pytest_django.live_server_helper import LiveServer

from cookout.core.planning.result import Limits
from cookout.services import accounts, events, plan
from cookout.store.models import Event, PlanRun, Revision
from tests.services.impossible import nobody_for_the_fire
from tests.store.cast import OWNER, a_user, example_text

pytestmark = [pytest.mark.browser, pytest.mark.django_db(transaction=True)]

PHONE, DESK = {"width": 390, "height": 800}, {"width": 1280, "height": 900}
SIZES = pytest.mark.parametrize("size", [PHONE, DESK], ids=["phone", "desk"])


@pytest.fixture
def example(settings: Settings) -> Event:
    """The supper as the demo loads it, planned."""
    settings.COOKOUT_DEMO = True
    owner = a_user(OWNER)
    event, _ = events.load_example(owner_id=owner.pk, document=example_text(), file_name="supper.toml")
    run = plan.queue_planning(event_id=event.pk, limits=Limits(seconds=10, workers=1), announce=False)
    plan.run_planning(run_id=run.pk)
    return event


@pytest.fixture
def page(browser: Browser, live_server: LiveServer) -> Iterator[Page]:
    """A fresh page; whatever the browser complains of fails the test, a broken rule for content among it."""
    complaints: list[str] = []

    def listen(message: ConsoleMessage) -> None:
        if message.type in ("error", "warning"):
            complaints.append(message.text)

    with browser.new_context(base_url=live_server.url) as context:
        fresh = context.new_page()
        fresh.on("console", listen)
        fresh.on("pageerror", lambda error: complaints.append(str(error)))
        yield fresh
    assert complaints == []


def enter(page: Page, event: Event) -> None:
    """Come in by the address that the demo prints."""
    page.goto(reverse("demo-enter", args=[accounts.make_demo_entry(user_id=event.owner_id)]))


def assert_no_sideways_scrolling(page: Page) -> None:
    assert page.evaluate("document.documentElement.scrollWidth <= document.documentElement.clientWidth")


@SIZES
def test_from_the_demos_start_page_to_a_helpers_call_sheet(page: Page, example: Event, size: dict[str, int]) -> None:
    page.set_viewport_size({"width": size["width"], "height": size["height"]})
    enter(page, example)
    expect(page.get_by_role("heading", name="Your events")).to_be_visible()
    page.get_by_role("link", name=example.name).click()
    expect(page.get_by_role("heading", name="Every serving on time")).to_be_visible()
    assert_no_sideways_scrolling(page)
    page.get_by_role("link", name="Call sheets", exact=True).click()
    page.get_by_role("link", name="Call sheet of").first.click()
    page.get_by_role("button", name="Make the link").click()
    shown_once = page.get_by_label("Call sheet", exact=True).input_value()
    page.context.clear_cookies()  # from here on somebody without an account
    page.goto(shown_once)
    expect(page.get_by_role("heading", name="Everything in order")).to_be_visible()
    expect(page.get_by_text("Next", exact=True)).to_be_visible()
    expect(page.locator(".countdown")).to_contain_text("to go")
    assert page.get_by_label("Subscribe to this address").input_value().endswith(".ics")
    assert_no_sideways_scrolling(page)


def test_planning_again_is_a_trial_first_and_a_new_revision_once_kept(page: Page, example: Event) -> None:
    enter(page, example)
    page.goto(reverse("event", args=[example.public_id]))
    page.get_by_role("button", name="Plan again").click()
    expect(page.get_by_role("heading", name="What would change")).to_be_visible(timeout=30_000)
    assert Revision.objects.count() == 1
    page.get_by_role("button", name="Keep: make this the plan").click()
    expect(page.get_by_text("Kept: revision 2 is the plan now.")).to_be_visible()
    assert PlanRun.objects.filter(state="done").count() == 2


def test_an_impossible_event_is_mended_by_the_button_of_a_way_out(page: Page, settings: Settings) -> None:
    settings.COOKOUT_DEMO = True
    event = events.create_event(owner_id=a_user(OWNER).pk, document=nobody_for_the_fire())
    enter(page, event)
    page.goto(reverse("event", args=[event.public_id]))
    page.get_by_role("button", name="Plan this event").click()
    expect(page.get_by_role("heading", name="What stands in the way")).to_be_visible(timeout=60_000)
    page.get_by_role("button", name="Apply and plan again").first.click()
    expect(page.locator(".badge")).to_be_visible(timeout=60_000)
