"""The timeline in a real browser: by mouse, by keys alone, without script, on a phone, and read for barriers."""

from collections.abc import Iterator

import pytest
from axe_playwright_python.sync_playwright import Axe  # type: ignore[import-untyped]
from django.test import Client
from django.urls import reverse
from playwright.sync_api import Browser, BrowserContext, Page, expect
from pytest_django.live_server_helper import LiveServer

from tests.store.cast import Cast, the_cast

pytestmark = [pytest.mark.browser, pytest.mark.django_db(transaction=True)]

RULES = {"runOnly": ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"]}
PHONE, DESK = {"width": 390, "height": 800}, {"width": 1280, "height": 900}


@pytest.fixture
def cast() -> Cast:
    """The cast, with the sample's plan."""
    return the_cast()


def signed_in(context: BrowserContext, cast: Cast, live_server: LiveServer) -> Page:
    """A page of the event's owner; what the browser complains of fails the test."""
    client = Client()
    client.force_login(cast.owner)
    context.add_cookies(
        [{"name": "sessionid", "value": client.cookies["sessionid"].value, "url": live_server.url}]
    )  # fmt: skip
    page = context.new_page()
    page.on("pageerror", lambda error: pytest.fail(str(error)))
    return page


@pytest.fixture
def page(browser: Browser, live_server: LiveServer, cast: Cast) -> Iterator[Page]:
    """The owner's browser on a desk."""
    with browser.new_context(base_url=live_server.url, viewport=DESK) as context:  # type: ignore[arg-type]
        yield signed_in(context, cast, live_server)


def timeline(cast: Cast, query: str = "") -> str:
    """The address of the timeline."""
    return reverse("timeline", args=[cast.event.public_id]) + query


CLOSE_UP = "?by=dish&zoom=hour&layout=wide&at=2027-06-19T15:30"


def test_a_task_opens_beside_the_drawing_and_closes_again(page: Page, cast: Cast) -> None:
    page.goto(timeline(cast, CLOSE_UP))
    task = page.locator("[data-drawing] a[href*='/tasks/crumble.slice/']")
    task.click()
    panel = page.get_by_role("complementary", name="Task")
    expect(panel.get_by_role("heading", level=2)).to_be_focused()
    expect(panel).to_contain_text("Why it stands there")
    assert page.url.endswith(CLOSE_UP), "the drawing stays where it is"
    page.keyboard.press("Escape")
    expect(panel).to_be_hidden()
    expect(task).to_be_focused()


def test_from_an_open_task_a_tied_one_opens_in_the_same_place(page: Page, cast: Cast) -> None:
    page.goto(timeline(cast, CLOSE_UP))
    page.locator("[data-drawing] a[href*='/tasks/beans.bake/']").click()
    panel = page.get_by_role("complementary", name="Task")
    expect(panel.locator("#task-title")).to_have_text("Simmer")
    other = panel.locator(".ties a").first
    name = other.text_content() or ""
    other.click()
    expect(panel.locator("#task-title")).to_have_text(name)


def test_arrows_go_from_task_to_task_and_from_row_to_row(page: Page, cast: Cast) -> None:
    page.goto(timeline(cast, CLOSE_UP))
    rows = page.locator("[data-drawing] g.row")
    first = rows.nth(1).locator("a[href*='/tasks/']")
    first.nth(0).focus()
    page.keyboard.press("ArrowRight")
    expect(first.nth(1)).to_be_focused()
    page.keyboard.press("ArrowLeft")
    expect(first.nth(0)).to_be_focused()
    page.keyboard.press("ArrowDown")
    assert page.evaluate("document.activeElement.closest('g.row') === document.querySelectorAll('g.row')[2]")
    page.keyboard.press("ArrowUp")
    assert page.evaluate("document.activeElement.closest('g.row') === document.querySelectorAll('g.row')[1]")
    page.keyboard.press("Enter")
    expect(page.get_by_role("complementary", name="Task").locator("#task-title")).to_be_focused()


def test_keys_look_closer_and_farther_and_earlier_and_later(page: Page, cast: Cast) -> None:
    page.goto(timeline(cast))
    for key, asked in (
        ("+", "zoom=hour"),
        ("+", "zoom=minute"),
        (".", "zoom=minute"),
        (",", "zoom=minute"),
        ("-", "zoom=hour"),
    ):
        before = page.url
        page.locator("[data-drawing]:visible a").last.focus()
        page.keyboard.press(key)
        page.wait_for_url(lambda url, before=before: url != before)  # type: ignore[misc]
        assert asked in page.url


def test_keys_do_nothing_outside_the_drawing(page: Page, cast: Cast) -> None:
    page.goto(timeline(cast))
    page.get_by_role("link", name="The same as a table").focus()
    before = page.url
    page.keyboard.press("+")
    page.wait_for_timeout(200)
    assert page.url == before


def test_every_task_can_be_reached_with_the_tab_key_alone(page: Page, cast: Cast) -> None:
    page.goto(timeline(cast, CLOSE_UP))
    wanted = set(page.locator("[data-drawing] a").evaluate_all("links => links.map(link => link.getAttribute('href'))"))
    assert len(wanted) > 20
    page.locator(".look-tools a").last.focus()
    reached = set()
    for _ in range(len(wanted) + 40):
        page.keyboard.press("Tab")
        reached.add(page.evaluate("document.activeElement.getAttribute('href')"))
    assert wanted <= reached


def test_without_script_a_task_is_a_page_and_looks_are_links(
    browser: Browser, live_server: LiveServer, cast: Cast
) -> None:
    with browser.new_context(base_url=live_server.url, java_script_enabled=False, viewport=DESK) as context:  # type: ignore[arg-type]
        page = signed_in(context, cast, live_server)
        page.goto(timeline(cast))
        page.get_by_role("link", name="hours", exact=True).locator("visible=true").click()
        page.get_by_role("link", name="by helper", exact=True).click()
        assert "by=helper" in page.url
        assert "zoom=hour" in page.url
        page.locator("[data-drawing] a[href*='/tasks/']").first.click()
        expect(page.get_by_role("heading", name="Why it stands there")).to_be_visible()
        page.get_by_text("Pin it by hand").click()
        expect(page.get_by_role("button", name="Try the pin")).to_be_visible()


def test_on_a_phone_the_day_is_drawn_for_its_width_and_a_task_opens_as_a_sheet(
    browser: Browser, live_server: LiveServer, cast: Cast
) -> None:  # fmt: skip
    with browser.new_context(base_url=live_server.url, viewport=PHONE) as context:  # type: ignore[arg-type]
        page = signed_in(context, cast, live_server)
        page.goto(timeline(cast))
        assert page.locator("[data-drawing]:visible").count() == 1
        page.get_by_role("link", name="hours", exact=True).locator("visible=true").click()
        assert "layout=narrow" in page.url
        assert page.evaluate("document.documentElement.scrollWidth <= innerWidth")
        task = page.locator("[data-drawing] a[href*='/tasks/']").last
        task.click()
        panel = page.get_by_role("complementary", name="Task")
        expect(panel).to_be_in_viewport()
        page.get_by_role("button", name="Close").click()
        expect(panel).to_be_hidden()


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_no_look_at_the_timeline_has_a_barrier(page: Page, cast: Cast, scheme: str) -> None:
    page.emulate_media(color_scheme="dark" if scheme == "dark" else "light")
    table = reverse("tasks", args=[cast.event.public_id])
    looks = [
        timeline(cast, f"?by={by}&zoom={zoom}&layout=wide")
        for by in ("dish", "helper", "gear")
        for zoom in ("day", "hour", "minute")
    ]
    for address in [*looks, timeline(cast, "?by=dish&only=crumble"), table]:
        page.goto(address)
        found = Axe().run(page, options=RULES)
        assert found.violations_count == 0, f"{address}: {found.generate_report()}"
    page.goto(timeline(cast, CLOSE_UP))
    page.locator("[data-drawing] a[href*='/tasks/crumble.slice/']").click()
    expect(page.locator("#task-title")).to_be_focused()
    page.get_by_text("Pin it by hand").click()
    found = Axe().run(page, options=RULES)
    assert found.violations_count == 0, found.generate_report()
