"""Making an event in a real browser: dragged, added up while typing, by keys alone, without script or barrier."""

from collections.abc import Callable, Iterator

import pytest
from axe_playwright_python.sync_playwright import Axe  # type: ignore[import-untyped]
from django.urls import reverse
from playwright.sync_api import Browser, BrowserContext, Page, expect
from pytest_django import Settings
from pytest_django.live_server_helper import LiveServer

from cookout.services import accounts, crew, events, gear, making
from cookout.store.mapping import event_of
from cookout.store.models import Event
from tests.store.cast import OWNER, a_user, example_text

pytestmark = [pytest.mark.browser, pytest.mark.django_db(transaction=True)]

RULES = {"runOnly": ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"]}
WIDE, PHONE = {"width": 1280, "height": 900}, {"width": 390, "height": 800}
PAGES = ("event-day", "event-menu", "event-gear", "event-crew", "event-show", "event-edits")

Opener = Callable[..., Page]


@pytest.fixture
def event(settings: Settings) -> Event:
    """The demonstration, not planned, with a kit, a person and a template kept from it."""
    settings.COOKOUT_DEMO = True
    owner = a_user(OWNER)
    made = events.create_event(owner_id=owner.pk, document=example_text("demonstration"))
    gear.save_kit(event_id=made.pk, user_id=owner.pk, name="Trailer")
    crew.keep_person(event_id=made.pk, user_id=owner.pk, helper_id="ivo")
    making.save_template(owner_id=owner.pk, event=made, name="Show and tasting")
    return made


@pytest.fixture
def opened(browser: Browser, live_server: LiveServer, event: Event) -> Iterator[Opener]:
    """Opens pages in a browser of the owner's."""
    contexts: list[BrowserContext] = []

    def open_page(address: str, **options: object) -> Page:
        context = browser.new_context(base_url=live_server.url, **{"viewport": WIDE, **options})  # type: ignore[arg-type]
        contexts.append(context)
        page = context.new_page()
        page.goto(reverse("demo-enter", args=[accounts.make_demo_entry(user_id=event.owner_id)]))
        page.goto(address)
        return page

    yield open_page
    for context in contexts:
        context.close()


def address(name: str, event: Event) -> str:
    return reverse(name, args=[event.public_id])


def order(event: Event) -> list[str]:
    event.refresh_from_db()
    return [dish.id for dish in event_of(event).dishes if dish.serving is not None]


def test_a_dish_is_dragged_to_another_place(opened: Opener, event: Event) -> None:
    page = opened(address("event-menu", event))
    before = order(event)
    page.locator(f"#dishes-{before[-1]} b").first.drag_to(
        page.locator(f"#dishes-{before[0]}"), target_position={"x": 300, "y": 4}
    )
    expect(page.get_by_text("moved on the menu")).to_be_visible()
    assert order(event) == [before[-1], *before[:-1]]
    page.get_by_role("button", name="Undo").click()
    expect(page.get_by_text("Taken back")).to_be_visible()
    assert order(event) == before


def test_a_dish_is_moved_and_taken_back_by_keys_without_any_script(opened: Opener, event: Event) -> None:
    page = opened(address("event-menu", event), java_script_enabled=False)
    before = order(event)
    button = page.locator(f"#dishes-{before[0]}").get_by_role("button", name="down")
    button.focus()
    page.keyboard.press("Enter")
    expect(page.get_by_text("moved on the menu")).to_be_visible()
    assert order(event)[:2] == [before[1], before[0]]


def test_minutes_add_up_against_the_slot_while_they_are_typed(opened: Opener, event: Event) -> None:
    """By hand: 12 to mix, 4 to talk, 22 to ice, 6 to taste are 44 of 48; with 14 to talk 54, 6 too long."""
    page = opened(address("event-show", event))
    total = page.locator("[data-sum]")
    expect(total).to_have_text("44 of 48 min: 4 min left")
    page.locator("[data-adds]").first.fill("14")
    expect(total).to_have_text("54 of 48 min: 6 min too long")
    page.locator("[data-slot]").first.fill("54")
    expect(total).to_have_text("54 of 54 min: just right")


def test_the_sum_is_there_without_script_too(opened: Opener, event: Event) -> None:
    page = opened(address("event-show", event), java_script_enabled=False)
    expect(page.locator("[data-sum]")).to_have_text("44 of 48 min")


def test_the_time_zone_is_proposed_by_the_browser(opened: Opener) -> None:
    page = opened(reverse("event-new"), timezone_id="America/Chicago")
    expect(page.get_by_label("Time zone")).to_have_value("America/Chicago")


@pytest.mark.timeout(300)
@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_no_page_has_a_barrier_with_everything_unfolded(opened: Opener, event: Event, scheme: str) -> None:
    places = [*(address(name, event) for name in PAGES), reverse("event-new"), reverse("keeping"), reverse("start")]
    page = opened(places[0], color_scheme=scheme)
    barriers = []
    for place in places:
        page.goto(place)
        page.evaluate("document.querySelectorAll('details').forEach(each => { each.open = true })")
        found = Axe().run(page, options=RULES)
        barriers += [
            f"{place}: {each['id']}: {node['html']}" for each in found.response["violations"] for node in each["nodes"]
        ]
    assert barriers == []


def test_nothing_is_wider_than_a_phone(opened: Opener, event: Event) -> None:
    places = [*(address(name, event) for name in PAGES), reverse("event-new"), reverse("keeping"), reverse("start")]
    page = opened(places[0], viewport=PHONE)
    for place in places:
        page.goto(place)
        page.evaluate("document.querySelectorAll('details').forEach(each => { each.open = true })")
        assert page.evaluate("document.documentElement.scrollWidth") <= PHONE["width"], place
