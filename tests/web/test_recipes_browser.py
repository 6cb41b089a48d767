"""The recipe box in a real browser: a recipe brought in and completed, rows by keys alone, no barrier, no script."""

import re
from collections.abc import Callable, Iterator

import pytest
from axe_playwright_python.sync_playwright import Axe  # type: ignore[import-untyped]
from django.urls import reverse
from playwright.sync_api import Browser, BrowserContext, Page, expect
from pytest_django import Settings
from pytest_django.live_server_helper import LiveServer

from cookout.services import accounts, event_recipes, events, recipe_sharing, recipes
from cookout.store.models import Event, Recipe
from cookout.store.selectors.recipes import recipe_of
from tests.core.starter_box import starter
from tests.store.cast import OWNER, a_user, example_text

pytestmark = [pytest.mark.browser, pytest.mark.django_db(transaction=True)]

RULES = {"runOnly": ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"]}
WIDE, PHONE = {"width": 1280, "height": 900}, {"width": 390, "height": 800}
BEANS = """Hearth beans
Serves 8

Ingredients
4 cans white beans, drained
1 onion, chopped
1/2 cup molasses

Method
1. Chop the onion and stir everything together.
2. Simmer for 50 to 60 minutes.
"""

Opener = Callable[..., Page]


@pytest.fixture
def row(settings: Settings) -> Recipe:
    """A layer cake in the box of somebody with an event that has an older version of it."""
    settings.COOKOUT_DEMO = True
    owner = a_user(OWNER)
    event = events.create_event(owner_id=owner.pk, document=example_text(), file_name="supper.toml")
    made = recipes.create_recipe(owner_id=owner.pk, recipe=starter("cocoa-layer-cake"), units="us")
    event_recipes.add_recipe_to_event(event_id=event.pk, user_id=owner.pk, recipe_id=made.pk, serving_id="table")
    recipes.save_recipe(recipe_id=made.pk, recipe=starter("pumpkin-layer-cake"), units="us", was=1)
    recipes.delete_recipe(
        recipe_id=recipes.create_recipe(owner_id=owner.pk, recipe=starter("beef-stew"), units="us").pk
    )
    return made


@pytest.fixture
def opened(browser: Browser, live_server: LiveServer, row: Recipe) -> Iterator[Opener]:
    """Opens pages in a browser of the owner's, and holds their complaints."""
    contexts: list[BrowserContext] = []
    complaints: list[str] = []

    def open_page(address: str, **options: object) -> Page:
        context = browser.new_context(base_url=live_server.url, **{"viewport": WIDE, **options})  # type: ignore[arg-type]
        contexts.append(context)
        page = context.new_page()
        page.on("console", lambda said: complaints.append(said.text) if said.type in ("error", "warning") else None)
        page.goto(reverse("demo-enter", args=[accounts.make_demo_entry(user_id=row.owner_id)]))
        page.goto(address)
        return page

    yield open_page
    for context in contexts:
        context.close()
    # A page with faults in its form answers 422, which the browser notes.
    assert [said for said in complaints if "422" not in said] == []


def test_a_recipe_is_brought_in_by_clicks_and_only_what_planning_needs_is_asked(opened: Opener) -> None:
    page = opened(reverse("recipes"))
    page.get_by_role("link", name="Bring one in").click()
    page.get_by_label("Paste it here").fill(BEANS)
    page.get_by_role("button", name="Read it").click()
    expect(page.get_by_text("3 questions, and it is ready.")).to_be_visible()
    page.get_by_role("link", name="Step 1: Usual").click()
    page.get_by_role("listitem", name="Step 1").get_by_label("Usual").fill("15")
    second = page.get_by_role("listitem", name="Step 2")
    second.get_by_label("Oven", exact=True).select_option("12")
    second.get_by_label("How hot").fill("325 F")
    page.get_by_role("button", name="Put it into my box").click()
    expect(page.get_by_role("heading", level=1)).to_have_text("Hearth beans")
    made = Recipe.objects.get(name="Hearth beans")
    assert made.current is not None
    assert [step.minutes.usual for step in recipe_of(made.current).steps] == [15, 55]


def test_what_ingredients_are_understood_as_follows_the_typing(opened: Opener) -> None:
    page = opened(reverse("recipe-new"))
    page.get_by_label("Ingredients, one a line").press_sequentially("1,5 l milk")
    expect(page.locator("#understood")).to_contain_text("A comma may part thousands")
    page.get_by_label("Ingredients, one a line").fill("2 cups flour")
    expect(page.locator("#understood .mark")).to_have_text("wheat")


def test_steps_are_moved_by_keys_without_a_reload_and_the_focus_stays(opened: Opener, row: Recipe) -> None:
    page = opened(reverse("recipe-edit", args=[row.public_id]))
    page.evaluate("window.stayed = true")
    down = page.locator("#down-mix")
    down.focus()
    page.keyboard.press("Enter")
    expect(page.locator(".step-row").nth(1).get_by_label("What is done")).to_have_value("Mix the pumpkin batter")
    expect(page.locator("#down-mix")).to_be_focused()
    assert page.evaluate("window.stayed")
    page.keyboard.press("Enter")
    expect(page.locator(".step-row").nth(2).get_by_label("What is done")).to_have_value("Mix the pumpkin batter")
    page.get_by_role("button", name="Add a step").press("Enter")
    expect(page.locator(".step-row")).to_have_count(6)


def test_the_fields_of_heat_show_where_a_step_goes_over_coals(opened: Opener) -> None:
    page = opened(reverse("recipe-new"))
    step = page.get_by_role("listitem", name="Step 1")
    expect(step.get_by_label("How hot")).to_be_hidden()
    step.get_by_label("Sort of work").select_option("bake")
    expect(step.get_by_label("How hot")).to_be_visible()
    expect(step.get_by_label("Cools to")).to_be_hidden()


def test_enter_in_a_field_saves_and_moves_no_row(opened: Opener, row: Recipe) -> None:
    page = opened(reverse("recipe-edit", args=[row.public_id]))
    page.get_by_label("Name", exact=True).fill("Pumpkin cake of the fire")
    page.get_by_label("Name", exact=True).press("Enter")
    expect(page.get_by_text("Saved as version 3.")).to_be_visible()
    page.get_by_role("button", name="Undo").click()
    expect(page.get_by_text("Version 2 is back, as version 4.")).to_be_visible()


def test_without_a_script_a_recipe_is_changed_all_the_same(opened: Opener, row: Recipe) -> None:
    page = opened(reverse("recipe-edit", args=[row.public_id]), java_script_enabled=False)
    page.locator("#down-mix").click()
    expect(page.locator(".step-row").nth(1).get_by_label("What is done")).to_have_value("Mix the pumpkin batter")
    page.locator("#up-mix").click()
    page.get_by_label("One batch serves").fill("16")
    page.get_by_role("button", name="Save as a new version").click()
    expect(page.get_by_text("Saved as version 3.")).to_be_visible()


def barriers_of(page: Page) -> str:
    """What stands in the way on the page as it is, in words; empty where nothing does."""
    found = Axe().run(page, options=RULES)
    return str(found.generate_report()) if found.violations_count else ""


def pages(row: Recipe) -> list[str]:
    """Every page of recipes that answers with one."""
    event = Event.objects.get()
    token = recipe_sharing.share_recipe(recipe_id=row.pk)
    own = [row.public_id]
    return [
        reverse("recipes"),
        reverse("recipe-new"),
        reverse("recipe-import"),
        reverse("recipe-starter", args=["camp-cornbread"]),
        reverse("recipe", args=own),
        reverse("recipe-edit", args=own),
        reverse("recipe-versions", args=own) + "?first=1&second=2",
        reverse("recipe-version", args=[*own, 1]),
        reverse("recipe-into-event", args=own),
        reverse("recipe-into-event", args=own) + f"?event={event.public_id}",
        reverse("event-recipe", args=[event.public_id, "cocoa-layer-cake-with-butter-icing"]),
        reverse("recipe-shared", args=[token]),
    ]


@pytest.mark.timeout(300)
@pytest.mark.parametrize("scheme", ["light", "dark"])
@pytest.mark.parametrize("viewport", [WIDE, PHONE], ids=["wide", "phone"])
def test_no_page_of_recipes_has_a_barrier_or_runs_over_its_side(
    opened: Opener, row: Recipe, scheme: str, viewport: dict[str, int]
) -> None:
    page = opened(reverse("recipes"), color_scheme=scheme, viewport=viewport)
    barriers = []
    for address in pages(row):
        page.goto(address)
        page.evaluate("document.querySelectorAll('details').forEach((folded) => { folded.open = true; })")
        if found := barriers_of(page):
            barriers.append(f"{address}: {found}")
        assert page.evaluate("document.documentElement.scrollWidth") <= viewport["width"], address
    assert barriers == []


@pytest.mark.parametrize("viewport", [WIDE, PHONE], ids=["wide", "phone"])
def test_a_page_with_questions_or_faults_has_no_barrier(opened: Opener, viewport: dict[str, int]) -> None:
    page = opened(reverse("recipe-import"), viewport=viewport)
    page.get_by_label("Paste it here").fill(BEANS)
    page.get_by_role("button", name="Read it").click()
    assert barriers_of(page) == ""
    page.get_by_role("button", name="Put it into my box").click()
    expect(page.get_by_role("alert")).to_contain_text(re.compile("All that you typed is still here"))
    assert barriers_of(page) == ""
