"""The supper, planned with the keyboard alone: no pointer, no script that fills a field."""

import pytest
from django.urls import reverse
from playwright.sync_api import Page, expect
from pytest_django import Settings
from pytest_django.live_server_helper import LiveServer

from cookout.services import accounts
from cookout.store.models import Event, Revision
from tests.store.cast import OWNER, a_user
from tests.web.test_browser import page

__all__ = ["page"]

pytestmark = [pytest.mark.browser, pytest.mark.django_db(transaction=True), pytest.mark.timeout(300)]

FOCUSED = """() => {
  const e = document.activeElement;
  const look = getComputedStyle(e);
  const label = e.labels && e.labels[0] ? e.labels[0].textContent : "";
  const name = e.getAttribute("aria-label") || label || e.textContent || e.value || "";
  const ownParts = ["date", "time"].includes(e.type); // the browser marks the very part, such as the month
  const seen = ownParts || look.outlineStyle !== "none" && parseFloat(look.outlineWidth) >= 2;
  return { name: name.replace(/\\s+/g, " ").trim(), tag: e.tagName.toLowerCase(), seen };
}"""
MOST_TABS = 400


def reach(page: Page, words: str, tag: str = "") -> None:
    """Tab until what has the focus is called so; each stop on the way shows that it has it."""
    for _ in range(MOST_TABS):
        page.keyboard.press("Tab")
        found = page.evaluate(FOCUSED)
        assert found["seen"] or found["tag"] == "body", f"the focus on {found} cannot be seen"
        if found["name"].startswith(words) and (not tag or found["tag"] == tag):
            return
    raise AssertionError(f"{words!r} cannot be reached with the keyboard on {page.url}")


def follow(page: Page, words: str, tag: str = "") -> None:
    """Go there with Tab, press Enter, and come to the next page."""
    reach(page, words, tag)
    with page.expect_navigation():
        page.keyboard.press("Enter")


def test_the_supper_is_planned_and_its_timeline_walked_with_the_keyboard_alone(
    page: Page, live_server: LiveServer, settings: Settings
) -> None:
    settings.COOKOUT_DEMO = True
    owner = a_user(OWNER)
    page.goto(reverse("demo-enter", args=[accounts.make_demo_entry(user_id=owner.pk)]))
    follow(page, "New event")
    follow(page, "Try it: Supper under the box elder", "button")
    event = Event.objects.get(owner=owner)
    expect(page.get_by_role("heading", name=event.name).first).to_be_visible()
    follow(page, "Overview", "a")
    follow(page, "Plan this event", "button")
    expect(page.get_by_role("heading", name="on time")).to_be_visible(timeout=90_000)
    assert Revision.objects.filter(event=event).count() == 1
    follow(page, "Timeline", "a")
    follow(page, "hours", "a")
    walk_the_drawing(page)
    follow(page, "The same as a table", "a")
    expect(page.get_by_role("table").first).to_be_visible()
    change_a_number_and_see_what_it_changes(page)


def walk_the_drawing(page: Page) -> None:
    """From task to task with the arrows; Enter opens one, Escape closes it."""
    for _ in range(MOST_TABS):
        page.keyboard.press("Tab")
        if page.evaluate("() => !!document.activeElement.closest('svg a, a.task-link, svg')"):
            break
    first = page.evaluate("() => document.activeElement.getAttribute('href') || ''")
    page.keyboard.press("ArrowRight")
    second = page.evaluate("() => document.activeElement.getAttribute('href') || ''")
    assert second != first
    page.keyboard.press("Enter")
    expect(page.get_by_text("Pin it by hand").first).to_be_visible()
    page.keyboard.press("Escape")


def change_a_number_and_see_what_it_changes(page: Page) -> None:
    """A later supper is typed, tried, and dropped."""
    follow(page, "What if", "a")
    reach(page, "Serve earlier or later", "summary")
    page.keyboard.press("Enter")
    reach(page, "Minutes later", "input")
    page.keyboard.press("Control+a")
    page.keyboard.type("10")
    with page.expect_navigation():
        page.keyboard.press("Enter")
    expect(page.get_by_role("heading", name="What would change")).to_be_visible(timeout=90_000)
    follow(page, "Drop it", "button")
    expect(page.get_by_text("Dropped; the plan is as it was.")).to_be_visible()
