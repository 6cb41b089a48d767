"""What is taken along: files out and in again, screens in other units, and files that somebody mangled."""

import copy
import html
import re
import tomllib
from fractions import Fraction
from typing import Any

import pytest
import tomli_w
from django.core.files.uploadedfile import SimpleUploadedFile
from django.test import Client
from django.urls import reverse
from hypothesis import HealthCheck, settings
from hypothesis import given as for_all
from hypothesis import strategies as st

from cookout.core.planning.expand import expand
from cookout.core.planning.recordjson import from_json
from cookout.core.planning.result import Limits
from cookout.services import gear, plan, starters
from cookout.store.mapping import event_of
from cookout.store.models import Event, Kit, Recipe, Revision
from cookout.store.selectors.recipes import recipe_of
from tests.core.eventfile.test_any_input import VALUES
from tests.said_quantities import METRIC, US, said
from tests.store.cast import Cast, example_text

LIMITS = Limits(seconds=30, workers=2, seed=1)
NEW, BRING = reverse("event-new"), reverse("recipe-import")
TEXTS = [example_text(name) for name in ("supper", "demonstration", "festival")]
TAGS = re.compile(r"<(script|style|title)\b.*?</\1>|<[^>]+>", re.DOTALL)
QUANTITY = r"-?\d[\d,.]* (?:°F|°C|ft|mph|m/s|m|lb|kg)"
BOTH = re.compile(rf"{QUANTITY} (?:\({QUANTITY}\)|or {QUANTITY})")
LINE = re.compile(r'<li [^>]*class="tick.*?</li>', re.DOTALL)
KITCHEN = {
    "cup": ("volume", 236.588),
    "cups": ("volume", 236.588),
    "tsp": ("volume", 4.92892),
    "Tbsp": ("volume", 14.7868),
    "qt": ("volume", 946.353),
    "gal": ("volume", 3785.41),
    "mL": ("volume", 1.0),
    "L": ("volume", 1000.0),
    "oz": ("mass", 28.3495),
    "lb": ("mass", 453.592),
    "g": ("mass", 1.0),
    "kg": ("mass", 1000.0),
}
"""Factors: NIST SP 811 (2008), B.8 and B.9; fluid measures of the US."""
LIGHTEST, HEAVIEST = 0.3, 1.5
"""Grams in a millilitre: chopped leaves, and syrup (from memory)."""
AMOUNT = re.compile(rf"(?<![\w./])(\d+ \d+/\d+|\d+/\d+|\d+(?:\.\d+)?) ({'|'.join(KITCHEN)})\b")
PLAN_PAGES = ("event", "event-day", "timeline", "tasks", "fire", "run-sheet", "lists", "list-card")
FAULT = re.compile(r"<li><code>(.*?)</code> <span>(.*?)</span> <b>(.*?)</b></li>", re.DOTALL)


def an_example(name: str, owner: Client, cast: Cast) -> Event:
    """An example of the owner's, its file written anew by changes that end where they began."""
    event = event_at(owner.post(NEW, {"do": "example", "example": name}).headers["Location"])
    _edit, added = gear.add_other(event_id=event.pk, user_id=cast.owner.pk, name="Spare kettle", count=1)
    gear.remove_gear(event_id=event.pk, user_id=cast.owner.pk, gear_id=added)
    event.refresh_from_db()
    return event


def event_at(address: str) -> Event:
    return Event.objects.get(public_id=address.split("/")[2])


def saved(giver: Client, name: str, *parts: object) -> SimpleUploadedFile:
    """A file as the page gives it, to be given to a page again."""
    answer = giver.get(reverse(name, args=parts))
    assert "attachment" in answer.headers["Content-Disposition"]
    return SimpleUploadedFile("taken-along.toml", answer.content, answer.headers["Content-Type"])


def taken_along(giver: Client, taker: Client, event: Event) -> Event:
    """What another makes of the event's file."""
    file = saved(giver, "event-file", event.public_id)
    return event_at(taker.post(NEW, {"do": "file", "document": "", "file": file}).headers["Location"])


def planned(event: Event) -> Revision:
    run = plan.run_planning(run_id=plan.queue_planning(event_id=event.pk, limits=LIMITS, announce=False).pk)
    assert run is not None
    assert run.revision is not None, run.record
    return run.revision


def objective(revision: Revision) -> tuple[str, list[tuple[str, int]]]:
    """How well a plan does: its status and the value of each level."""
    record = from_json(revision.payload)
    return record.status, [(level.name, level.value) for level in record.levels]


@pytest.mark.parametrize("name", ["supper", "demonstration"])
def test_an_event_taken_along_plans_as_well_as_the_one_it_came_from(
    owner: Client, stranger: Client, cast: Cast, name: str
) -> None:
    event = an_example(name, owner, cast)
    again = taken_along(owner, stranger, event)
    assert again.owner == cast.stranger
    assert event_of(again) == event_of(event)
    status, levels = objective(planned(event))
    assert status == "proved_best"
    assert objective(planned(again)) == (status, levels)


def test_a_large_event_taken_along_is_the_same_event_and_the_same_problem(
    owner: Client, stranger: Client, cast: Cast
) -> None:
    event = an_example("festival", owner, cast)
    again = taken_along(owner, stranger, event)
    assert event_of(again) == event_of(event)
    assert expand(event_of(again)).problem == expand(event_of(event)).problem


def test_a_recipe_taken_along_is_the_same_recipe_in_another_box(owner: Client, stranger: Client, cast: Cast) -> None:
    names = [starter.name for starter in starters.starters(owner_id=cast.owner.pk)]
    assert len(names) >= 19
    for name in names:
        row = starters.take_starter(owner_id=cast.owner.pk, name=name, units="us")
        file = saved(owner, "recipe-file", row.public_id)
        answer = stranger.post(BRING, {"text": "", "file": file})
        assert answer.status_code == 302, name
        again = Recipe.objects.get(public_id=answer.headers["Location"].split("/")[2])
        assert again.owner == cast.stranger
        assert row.current is not None
        assert again.current is not None
        assert recipe_of(again.current) == recipe_of(row.current)


def test_a_kit_kept_from_one_event_gives_another_the_same_gear_and_fuel(owner: Client, cast: Cast) -> None:
    event = an_example("demonstration", owner, cast)
    owner.post(reverse("event-gear", args=[event.public_id]), {"do": "keep", "name": "Trailer"})
    blank = {"name": "Bare", "day": "2027-08-01", "place": "By the ford", "timezone": "America/Denver", "units": "us"}
    made = owner.post(NEW, {"do": "blank", **{f"blank-{key}": value for key, value in blank.items()}})
    other = event_at(made.headers["Location"])
    owner.post(
        reverse("event-gear", args=[other.public_id]),
        {"do": "kit", "kit": str(Kit.objects.get(name="Trailer").public_id)},
    )
    other.refresh_from_db()
    assert len(event_of(other).gear) >= 5
    assert event_of(other).gear == event_of(event).gear
    assert event_of(other).fuel == event_of(event).fuel


def words_of(text: str) -> str:
    """What a page says, without its marks; a mark parts words."""
    return re.sub(r"\s+", " ", html.unescape(TAGS.sub(" ", text))).replace("\N{NO-BREAK SPACE}", " ")


def both_ways(address: str, cast: Cast) -> tuple[str, str]:
    """A page as the owner gets it in US units, and a co-planner in metric ones."""
    pages = []
    for user, units in ((cast.owner, "us"), (cast.planner, "metric")):
        user.units = units
        user.save()
        client = Client()
        client.force_login(user)
        answer = client.get(address)
        assert answer.status_code == 200, address
        pages.append(answer.content.decode())
    return pages[0], pages[1]


def in_one_system(text: str) -> str:
    """A text without what it says in both systems at once, such as "10 ft (3 m)"; those two must agree."""
    for pair in BOTH.finditer(text):
        one, other = said(pair[0])
        assert one.agrees_with(other), pair[0]
    return BOTH.sub("", text)


def test_screens_in_us_and_in_metric_units_say_the_same_to_rounding(cast: Cast) -> None:
    planned(cast.event)
    event = cast.event.public_id
    addresses = [
        *(reverse(name, args=[event]) for name in PLAN_PAGES),
        *(reverse("list", args=[event, name]) for name in ("packing", "leftovers")),
        reverse("helper", args=[event, event_of(cast.event).crew[0].id]),
    ]
    compared = 0
    for address in addresses:
        us, metric = (said(in_one_system(words_of(page))) for page in both_ways(address, cast))
        assert {each.unit for each in us} <= US, address
        assert {each.unit for each in metric} <= METRIC, address
        assert [each.kind for each in us] == [each.kind for each in metric], address
        assert all(a.agrees_with(b) for a, b in zip(us, metric, strict=True)), address
        compared += len(us)
    assert compared > 40


def measures(text: str) -> dict[str, float]:
    """The first mass (g) and the first volume (mL) that a line says."""
    found: dict[str, float] = {}
    for number, unit in AMOUNT.findall(text):
        kind, factor = KITCHEN[unit]
        found.setdefault(kind, factor * sum(float(Fraction(part)) for part in number.split()))
    return found


@pytest.mark.parametrize(("name", "fewest"), [("shopping", 10), ("measuring", 8)])
def test_amounts_in_cups_and_pounds_are_those_in_millilitres_and_grams(cast: Cast, name: str, fewest: int) -> None:
    """As near as what can be measured: to a quarter of a teaspoon or an ounce, so to a fifth of small amounts.

    What is a volume in the one and a mass in the other is as heavy as food is.
    """
    planned(cast.event)
    pages = both_ways(reverse("list", args=[cast.event.public_id, name]), cast)
    us, metric = ([words_of(line) for line in LINE.findall(page)] for page in pages)
    compared = 0
    for one, two in zip(us, metric, strict=True):
        ours, theirs = measures(one), measures(two)
        shared = ours.keys() & theirs.keys()
        assert bool(ours) == bool(theirs), (one, two)
        assert all(ours[kind] == pytest.approx(theirs[kind], rel=0.2) for kind in shared), (one, two)
        if ours and not shared:
            assert LIGHTEST < theirs["mass"] / ours["volume"] < HEAVIEST, (one, two)
        compared += bool(ours)
    assert compared >= fewest


@pytest.mark.parametrize("name", ["camp-cornbread", "cocoa-layer-cake", "pork-loin"])
def test_a_recipe_says_the_same_heat_and_sizes_in_both_units(cast: Cast, name: str) -> None:
    us, metric = (said(in_one_system(words_of(page))) for page in both_ways(recipe_page(name), cast))
    assert {each.unit for each in us} <= US
    assert {each.unit for each in metric} <= METRIC
    heat, same_heat = ([each for each in texts if each.kind == "heat"] for texts in (us, metric))
    assert heat
    assert all(a.agrees_with(b) for a, b in zip(heat, same_heat, strict=True))


def recipe_page(name: str) -> str:
    return reverse("recipe-starter", args=[name])


def refusal_is_told(page: str) -> bool:
    """Whether each fault shows its place, what is wrong and a remedy, or a field says what is wrong with it."""
    faults = FAULT.findall(page)
    if faults:
        return all(where.strip() and what.strip() and remedy.strip() for where, what, remedy in faults)
    return 'role="alert"' in page


def test_a_refusal_shows_where_and_what_and_a_remedy_for_each_fault(stranger: Client) -> None:
    spoilt = TEXTS[0].replace("people = ", "people = -", 1)
    assert spoilt != TEXTS[0]
    answer = stranger.post(NEW, {"do": "file", "document": spoilt})
    assert answer.status_code == 422
    ((where, what, remedy),) = FAULT.findall(answer.content.decode())
    assert where.endswith(": servings[1].people")
    assert what.strip()
    assert remedy.strip()


def post_mangled(client: Client, text: str) -> None:
    """Give a text to the page that takes event files: it is taken, or refused with all that was typed."""
    Event.objects.all().delete()
    answer = client.post(NEW, {"do": "file", "document": text})
    assert answer.status_code in (302, 422)
    if answer.status_code == 422:
        page = answer.content.decode()
        assert refusal_is_told(page), page
        typed = html.unescape(page.split('name="document"', 1)[1].split(">", 1)[1].split("</textarea>", 1)[0])
        assert typed.strip() == text.replace("\r\n", "\n").replace("\r", "\n").strip() or "\0" in text


@settings(max_examples=40, deadline=None, suppress_health_check=[*HealthCheck])
@for_all(st.data())
def test_a_file_with_any_value_anywhere_is_taken_or_refused_in_words(stranger: Client, data: st.DataObject) -> None:
    changed = copy.deepcopy(tomllib.loads(data.draw(st.sampled_from(TEXTS))))
    _change_somewhere(data, changed)
    post_mangled(stranger, tomli_w.dumps(changed))


@settings(max_examples=40, deadline=None, suppress_health_check=[*HealthCheck])
@for_all(st.sampled_from(TEXTS), st.data())
def test_a_file_with_a_piece_cut_out_or_put_in_is_taken_or_refused_in_words(
    stranger: Client, text: str, data: st.DataObject
) -> None:
    start = data.draw(st.integers(0, len(text)))
    length = data.draw(st.integers(0, 80))
    put_in = data.draw(st.text(st.characters(exclude_categories=["Cs"]), max_size=20))
    post_mangled(stranger, text[:start] + put_in + text[start + length :])


def _change_somewhere(data: st.DataObject, node: Any) -> None:
    """Go down to some place and take it out or put any value there."""
    while True:
        key = data.draw(st.sampled_from(list(node) if isinstance(node, dict) else list(range(len(node)))))
        if not isinstance(node[key], dict | list) or not node[key] or data.draw(st.integers(0, 3)) == 0:
            break
        node = node[key]
    if data.draw(st.booleans()):
        del node[key]
    else:
        node[key] = data.draw(VALUES)
