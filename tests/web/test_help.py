"""Help for everybody, the hints for those who are new, and the page with all parts."""

import re
from html import unescape
from pathlib import Path

import pytest
from django.contrib.staticfiles import finders
from django.test import Client
from django.urls import reverse

from cookout.core.planning.expand.cautions import TURN
from cookout.store.models import User
from cookout.web.preferences import Preferences, _current
from cookout.web.reading.help import FOODS, TOPICS, centres, facts, topic_of, word_groups, word_index
from cookout.web.reading.samples import COLOURS, SIZES, SPACES, sample_plan
from cookout.web.reading.words_of_the_trade import GROUPS
from tests.store.cast import Cast

TEMPLATES = Path(__file__).resolve().parents[2] / "cookout" / "web" / "templates" / "cookout"
WORD_LINK = re.compile(r"""(?:\{% url 'help-topic' 'words' %\}|\{\{ words \}\})#([a-z-]+)""")
PUT_AWAY = re.compile(r'action="(/account/hints/[a-z]+/)".*?name="back" value="([^"]*)"', re.DOTALL)
HINTED = ("event", "event-menu", "event-gear", "event-crew", "timeline", "lists", "trials")


def text_of(client: Client, name: str, *parts: object) -> str:
    answer = client.get(reverse(name, args=parts))
    assert answer.status_code == 200
    return unescape(answer.content.decode())


def stylesheet(name: str) -> str:
    found = finders.find(f"cookout/{name}")
    assert isinstance(found, str)
    return Path(found).read_text(encoding="utf-8")


@pytest.mark.parametrize("topic", [topic.name for topic in TOPICS])
def test_help_is_for_everybody_and_leads_from_topic_to_topic(nobody: Client, stranger: Client, topic: str) -> None:
    for client in (nobody, stranger):
        page = text_of(client, "help-topic", topic)
        for other in TOPICS:
            assert f'href="{reverse("help-topic", args=[other.name])}"' in page
    assert f'href="{reverse("help-topic", args=[topic])}" aria-current="page"' in page
    assert f'href="{reverse("help-topic", args=[topic])}"' in text_of(nobody, "help")


def test_an_unknown_topic_and_a_post_are_refused(nobody: Client) -> None:
    assert topic_of("made-up") is None
    assert nobody.get(reverse("help-topic", args=["made-up"])).status_code == 404
    assert nobody.post(reverse("help")).status_code == 405
    assert nobody.post(reverse("help-topic", args=["words"])).status_code == 405


def test_signed_out_people_find_help_from_the_sign_in_page(nobody: Client) -> None:
    assert f'href="{reverse("help")}"' in text_of(nobody, "sign-in")


def test_every_word_can_be_linked_to_and_found_on_one_page_without_opening_anything(nobody: Client) -> None:
    page = text_of(nobody, "help-topic", "words")
    ids = re.findall(r'<div class="word" id="([^"]+)"', page)
    assert len(ids) == len(set(ids)) == sum(len(group.words) for group in GROUPS)
    assert "<details" not in page
    index = text_of(nobody, "help")
    assert re.findall(r"/help/words/#([a-z-]+)", index) == [word.id for word in word_index()]


def test_the_words_of_the_trade_are_all_there() -> None:
    known = {word.id for group in GROUPS for word in group.words}
    assert known >= {
        "event", "serving", "dish", "step", "task", "gear", "crew", "helper", "skill", "call-time", "firing", "top-up",
        "turn", "look-in", "demo-slot", "ready-made", "run-sheet", "call-sheet", "revision", "slack", "held-by", "hold",
        "icing", "cooling", "lid-and-under", "chimney", "trivet", "spot", "proved-best", "ashed-over",
    }  # fmt: skip


def test_links_to_words_lead_to_words_that_exist() -> None:
    known = {word.id for group in GROUPS for word in group.words}
    linked = {found for path in TEMPLATES.rglob("*.html") for found in WORD_LINK.findall(path.read_text("utf-8"))}
    assert "tolerance" in linked
    assert linked <= known


def test_no_place_for_a_number_is_left_empty() -> None:
    for _group, words in word_groups():
        for word, meaning in words:
            assert meaning
            assert "%(" not in meaning, word.id
            assert "None" not in meaning, word.id
    assert "" not in facts().values()


def test_help_tells_the_published_temperatures() -> None:
    """USDA-FSIS, "Safe Minimum Internal Temperature Chart" (2020), read in copies; eggs as egg dishes."""
    told = {key: centre for (key, _words), centre in zip(FOODS, centres(), strict=True)}
    fahrenheit = {key: int(centre.temperature.split("\N{NO-BREAK SPACE}")[0]) for key, centre in told.items()}
    assert fahrenheit == {
        "poultry": 165, "ground_meat": 160, "whole_meat": 145, "fish": 145, "eggs": 160, "stew_and_beans": 165
    }  # fmt: skip
    assert {key for key, centre in told.items() if centre.rest_minutes == 3} == {"whole_meat"}


def test_help_tells_the_published_limits_of_holding(nobody: Client) -> None:
    """USDA-FSIS, "Danger Zone (40 °F - 140 °F)": two hours, one above 90 °F."""
    page = text_of(nobody, "help-topic", "cautions").replace("\N{NO-BREAK SPACE}", " ")
    assert "140 °F (60 °C) or more, cold food at 40 °F (4 °C) or less" in page
    assert "120 minutes at most, for 60 in air above 90 °F (32 °C)" in page


def test_a_turn_is_told_as_the_tasks_of_a_plan_tell_it() -> None:
    meaning = next(text for _group, words in word_groups() for word, text in words if word.id == "turn")
    for part in TURN.lower().removesuffix(".").split(", "):
        assert part.removeprefix("oven ").removeprefix("lid ") in meaning


@pytest.mark.parametrize(("units", "ring"), [("us", "3 ft"), ("metric", "1 m"), (None, "3 ft (1 m)")])
def test_distances_are_told_in_the_readers_units(units: str | None, ring: str) -> None:
    """The clear ring for children of 3 ft is fire-service advice, read in a copy."""
    token = _current.set(Preferences(units=units))
    try:
        assert facts()["ring"] == ring.replace(" ", "\N{NO-BREAK SPACE}")
    finally:
        _current.reset(token)


def test_cautions_begin_with_local_codes_and_say_who_says_so(nobody: Client) -> None:
    page = text_of(nobody, "help-topic", "cautions")
    assert page.index("Local fire bans, fire codes and food codes come before") < page.index("Carbon monoxide")
    assert page.count("Who says so:") == 4
    for danger in ("never in a tent", "48 hours", "cool running water", "not known is not safe"):
        assert danger in page


def test_ten_steps_are_ten(nobody: Client) -> None:
    steps = text_of(nobody, "help-topic", "first-event").partition('<ol class="ten-steps">')[2].partition("</ol>")[0]
    assert steps.count("<li>") == 10


@pytest.mark.parametrize("name", HINTED)
def test_a_hint_can_be_put_away_for_good_and_leads_back_to_its_page(owner: Client, cast: Cast, name: str) -> None:
    place = reverse(name, args=[cast.event.public_id])
    (found,) = PUT_AWAY.findall(owner.get(place).content.decode())
    assert found[1] == place
    answer = owner.post(found[0], {"back": found[1]})
    assert answer.headers["Location"] == place
    assert PUT_AWAY.findall(owner.get(place).content.decode()) == []
    assert User.objects.get(pk=cast.owner.pk).hints_seen == [found[0].split("/")[-2]]
    owner.post(reverse("hints-again"))
    assert PUT_AWAY.findall(owner.get(place).content.decode()) == [found]


def test_each_page_has_a_hint_of_its_own(viewer: Client, cast: Cast) -> None:
    pages = [viewer.get(reverse(name, args=[cast.event.public_id])).content.decode() for name in HINTED]
    assert len({found for page in pages for found, _back in PUT_AWAY.findall(page)}) == len(HINTED)


def test_all_colours_spaces_and_sizes_of_the_stylesheet_are_shown(stranger: Client) -> None:
    style, samples, page = stylesheet("cookout.css"), stylesheet("parts_page.css"), text_of(stranger, "parts")
    root = style.partition(":root {")[2].partition("}")[0]
    colours = re.findall(r"--([a-z-]+): (?:#|var\(--[a-z]+\))", root)
    faces = {"drawing-face"}
    assert set(colours) - faces == set(COLOURS)
    assert re.findall(r"--(s\d):", root) == list(SPACES)
    assert re.findall(r"--(t\d):", root) == list(SIZES)
    for name in (*COLOURS, *SPACES, *SIZES):
        assert f"var(--{name})" in samples
        assert f"part-{name}" in page
        assert f"--{name}<" in page


def test_every_kind_of_field_is_shown_blank_and_wrong(stranger: Client) -> None:
    page = text_of(stranger, "parts")
    for part in (
        'type="date"',
        'type="time"',
        'type="number"',
        'type="radio"',
        'type="checkbox"',
        "<select",
        "<textarea",
    ):
        assert page.count(part) >= 2, part
    assert page.count('class="errorlist"') >= 5
    assert " disabled" in page


def test_all_drawings_are_shown_wide_and_narrow(stranger: Client) -> None:
    page = text_of(stranger, "parts")
    assert [page.count(f'class="drawing drawing-{layout}"') for layout in ("wide", "tall")] == [3, 3]
    assert sample_plan().event_name in page
    assert "<style" not in page
    assert " style=" not in page
