"""From an empty account to a planned, shared and printed demonstration, by clicks and keys alone, at two sizes."""

import re
from collections.abc import Iterator

import pytest
from django.core.cache import cache
from django.test import override_settings
from playwright.sync_api import Browser, BrowserContext, ConsoleMessage, Locator, Page, expect
from pytest_django.live_server_helper import LiveServer

from cookout.services.paper import MAKERS
from cookout.store.mapping import event_of
from cookout.store.models import Event, Membership, Revision

pytestmark = [pytest.mark.browser, pytest.mark.django_db(transaction=True), pytest.mark.timeout(600)]

PASSWORD = "plenty of charcoal"
DAY = "2027-08-21"
CAKE = """Carrot layer cake

Serves 12

2 cups all-purpose flour
1 1/2 cups sugar
1 1/2 tsp baking soda
2 tsp cinnamon
1 tsp salt
4 eggs
1 cup oil
3 cups carrot, grated
1 cup pecans, chopped
16 oz cream cheese, for the icing
1 cup butter, soft, for the icing
4 cups powdered sugar, for the icing

1. Mix the batter and fill two lined 9 inch pans, 12 minutes.
2. Bake the layers at 350 F for 24 to 34 minutes.
3. Cool the layers on a rack for 45 minutes.
4. Beat the icing for 12 minutes.
5. Fill and ice the cake, 22 minutes.
"""
GEAR = (
    *["+ 12 in oven, deep"] * 4,
    *["+ 10 in oven"] * 2,
    *["+ 12 in oven"] * 2,
    *["+ Chimney"] * 3,
    "+ Cooking table",
    "+ Cooking table",
    *["+ Trivet"] * 4,
    *["+ Cooling rack"] * 4,
    "+ Cooler with ice",
    "+ Mixer",
    "+ Mixer",
    *["+ Mixing bowl"] * 5,
    "+ Skillet",
)
CREW = (
    ("Odette Brann", "baking, icing, knife"),
    ("Ivo Sandoval", "fire"),
    ("Maren Quill", "fire, baking"),
    ("Pell Okafor", "baking, icing, knife"),
    ("Sunniva Dray", "knife, fire, serving"),
)


class Traveller:
    """Somebody at a browser. Every page that they come to must not scroll sideways."""

    def __init__(self, page: Page) -> None:
        self.page = page

    def go(self, words: str) -> None:
        """Follow the link of those words in the pages' own navigation."""
        self.page.get_by_role("navigation").get_by_role("link", name=words, exact=True).first.click()
        self.arrived()

    def arrived(self) -> None:
        self.page.wait_for_load_state()
        fits = "document.documentElement.scrollWidth <= document.documentElement.clientWidth"
        assert self.page.evaluate(fits), f"{self.page.url} scrolls sideways"

    def press(self, words: str) -> None:
        """Press the first button of just those words."""
        just = re.compile(rf"^\s*{re.escape(words)}\s*$")
        self.shown(self.page.locator("main button", has_text=just).first).click(timeout=10_000)
        self.arrived()

    def type(self, name: str, text: str) -> None:
        """Type into the field of that name."""
        field = self.shown(self.page.locator(f"main [name='{name}']").first)
        if field.evaluate("e => e.tagName") == "SELECT":
            value = field.evaluate(
                "(e, t) => [...e.options].find(o => o.textContent.includes(t))?.value ?? 'no such choice'", text
            )
            field.select_option(value)
        else:
            field.fill(text)

    def shown(self, place: Locator) -> Locator:
        """The place, with everything unfolded that it lies in."""
        while (folded := place.locator("xpath=ancestor::details[not(@open)]").first).count():
            folded.locator("xpath=./summary").click()
        return place


@pytest.fixture(params=[1280, 390], ids=["laptop", "phone"])
def width(request: pytest.FixtureRequest) -> int:
    """Pixels across."""
    return int(request.param)


@pytest.fixture
def open_one(browser: Browser, live_server: LiveServer, width: int) -> Iterator["Opener"]:
    """Opens browsers of several people; whatever any of them complains of fails the test."""
    cache.clear()
    with override_settings(COOKOUT_SIGN_UP=True):
        opener = Opener(browser, live_server.url, width)
        yield opener
        opener.close()


class Opener:
    """Opens a browser for one person after another."""

    def __init__(self, browser: Browser, url: str, width: int) -> None:
        self.browser, self.url, self.width = browser, url, width
        self.contexts: list[BrowserContext] = []
        self.complaints: list[str] = []

    def __call__(self) -> Traveller:
        context = self.browser.new_context(
            base_url=self.url, viewport={"width": self.width, "height": 900}, color_scheme="light"
        )
        self.contexts.append(context)
        page = context.new_page()
        page.on("console", self.listen)
        page.on("pageerror", lambda error: self.complaints.append(str(error)))
        return Traveller(page)

    def listen(self, message: ConsoleMessage) -> None:
        if message.type in ("error", "warning") and "422" not in message.text:
            self.complaints.append(message.text)

    def close(self) -> None:
        for context in self.contexts:
            context.close()
        assert self.complaints == []


def sign_up(who: Traveller, email: str) -> None:
    who.type("email", email)
    who.type("password", PASSWORD)
    who.type("again", PASSWORD)
    who.press("Make the account")


def fill_the_box(who: Traveller) -> None:
    """Two starter recipes, and one brought in as plain words, with the one answer that the words do not give."""
    for name in ("Two-bean chili", "Cabbage and apple slaw"):
        who.page.goto("/recipes/")
        who.press(f"Take this one: {name}")
    who.page.goto("/recipes/import/")
    who.type("text", CAKE)
    who.press("Read it")
    who.type("step-1-oven", "12")
    for step in ("step-0", "step-3"):
        who.type(f"{step}-gear_mixer", "1")
        who.type(f"{step}-gear_bowl", "1")
    who.type("step-0-skills", "baking")
    who.type("step-3-skills", "icing")
    who.type("step-4-skills", "icing")
    who.page.locator("main button[name=do][value=save]").last.click()
    who.arrived()
    expect(who.page.get_by_role("heading", name="Carrot layer cake")).to_be_visible()


def make_the_event(who: Traveller) -> None:
    who.page.goto("/")
    who.page.get_by_role("link", name="New event").first.click()
    who.arrived()
    typed = {
        "name": "Layer cake in iron",
        "day": DAY,
        "place": "Cobbler's Ford meadow",
        "timezone": "America/Chicago",
        "at": "15:15",
        "people": "24",
    }
    for name, text in typed.items():
        who.type(f"blank-{name}", text)
    who.press("Make it, and on to the menu")
    for recipe in ("Carrot layer cake", "Carrot layer cake", "Two-bean chili", "Cabbage and apple slaw"):
        who.type("recipe", recipe)
        who.press("Add")
    dishes = event_of(Event.objects.get()).dishes
    for dish in dishes[:2]:
        who.type(f"dishes-{dish.id}-people", "12")
        who.page.locator(f"[name='dishes-{dish.id}-people']").press("Enter")
        who.arrived()
    assert [dish.people for dish in event_of(Event.objects.get()).dishes[:2]] == [12, 12]


def bring_gear_and_crew(who: Traveller) -> None:
    who.go("Gear")
    for words in GEAR:
        who.press(words)
    who.go("Crew")
    for name, skills in CREW:
        who.type("crew-new-name", name)
        who.type("crew-new-more_skills", skills)
        for part, text in enumerate((DAY, "09:30", "16:30")):
            who.type(f"crew-new-stretch_0_{part}", text)
        who.press("Add to the crew")
    assert [helper.name for helper in event_of(Event.objects.get()).crew] == [name for name, _ in CREW]


def tell_the_day(who: Traveller) -> None:
    who.go("Day and place")
    for name, text in {"air": "74 F", "wind": "4 mph", "gust": "9 mph"}.items():
        who.type(f"weather-{name}", text)
    who.page.locator("[name='weather-gust']").press("Enter")
    who.arrived()
    assert round(event_of(Event.objects.get()).weather.air_c, 1) == 23.3


def plan_the_demo(who: Traveller) -> None:
    """The second cake is iced before the audience between a talk and a tasting of the first."""
    who.go("Demo")
    slot = {"name": "From layers to cake", "starts_at_0": DAY, "starts_at_1": "14:00", "minutes": "45"}
    for name, text in slot.items():
        who.type(f"slots-new-{name}", text)
    who.type("slots-new-presenter", "Odette")
    who.press("Add it")
    name = event_of(Event.objects.get()).slots[0].id
    who.type(f"slots-{name}-new_text", "Why the lid carries more coals")
    who.type(f"slots-{name}-new_minutes", "5")
    who.press("Add as a talk")
    who.type(f"slots-{name}-new_step", "Fill and ice the cake")
    who.press("Add this step")
    who.type(f"slots-{name}-new_text", "A sliver")
    who.type(f"slots-{name}-new_minutes", "6")
    who.press("Add as a talk")
    assert [type(item).__name__ for item in event_of(Event.objects.get()).slots[0].live] == ["Talk", "LiveStep", "Talk"]


def plan_it(who: Traveller) -> None:
    who.go("Overview")
    who.press("Plan this event")
    expect(who.page.get_by_role("heading", name="Every serving on time")).to_be_visible(timeout=90_000)
    who.arrived()


def pin_a_task(who: Traveller) -> None:
    """Opened from the timeline, pinned where it stands, seen as before and after, kept."""
    who.go("Timeline")
    assert who.page.locator("svg a:visible").count() > 5
    revision = Revision.objects.get()
    task = next(each for each in revision.payload["tasks"] if each["kind"] == "mix")
    event = Event.objects.get()
    who.page.goto(f"/events/{event.public_id}/tasks/{task['id']}/")
    who.arrived()
    expect(who.page.get_by_role("heading", name=task["name"]).first).to_be_visible()
    who.shown(who.page.locator("[name=pin_time]")).check()
    who.press("Try the pin")
    keep_the_trial(who)
    assert [pin.task for pin in event_of(Event.objects.get()).pins] == [task["id"]]


def keep_the_trial(who: Traveller) -> None:
    expect(who.page.get_by_role("heading", name="What would change")).to_be_visible(timeout=90_000)
    who.arrived()
    before = Revision.objects.count()
    who.press("Keep: make this the plan")
    assert Revision.objects.count() == before + 1


def try_what_if(who: Traveller) -> None:
    who.go("What if")
    before = event_of(Event.objects.get()).servings
    form = who.page.locator("details", has_text="Serve earlier or later").last
    form.locator("summary").click()
    form.locator("[name=minutes]").fill("15")
    form.locator("button").click()
    keep_the_trial(who)
    after = event_of(Event.objects.get()).servings
    assert [late.at - early.at for early, late in zip(before, after, strict=True)] == [15]


def share_it(who: Traveller, other: Traveller) -> None:
    """A co-planner makes an account through the invitation and changes the gear."""
    who.go("Sharing")
    who.type("role", "co-planner")
    who.press("Make the invitation")
    link = who.page.locator("#invitation-address").input_value()
    other.page.goto(link)
    other.page.get_by_role("link", name="Make an account").click()
    sign_up(other, "ivo@cobblersford.example")
    other.press("Take it")
    assert Membership.objects.get().role == "planner"
    other.go("Gear")
    racks = _racks()
    other.press("+ Cooling rack")
    assert _racks() == racks + 1


def _racks() -> int:
    return sum(gear.count for gear in event_of(Event.objects.get()).gear if gear.kind == "rack")


def print_it(who: Traveller) -> None:
    event = Event.objects.get()
    who.page.goto(f"/events/{event.public_id}/paper/")
    who.arrived()
    for kind in MAKERS:
        for size in ("a4", "letter"):
            answer = who.page.request.get(f"/events/{event.public_id}/paper/{kind}.pdf?size={size}")
            assert answer.ok, kind
            assert answer.body().startswith(b"%PDF"), kind
    who.go("Run sheet")
    assert who.page.pdf().startswith(b"%PDF")


def test_a_demonstration_from_an_empty_account_to_paper(open_one: Opener) -> None:
    who = open_one()
    who.page.goto("/sign-up/")
    sign_up(who, "odette@cobblersford.example")
    fill_the_box(who)
    make_the_event(who)
    bring_gear_and_crew(who)
    tell_the_day(who)
    plan_the_demo(who)
    plan_it(who)
    pin_a_task(who)
    try_what_if(who)
    share_it(who, open_one())
    print_it(who)
