"""The pages of lists: what stands on them, ticking with and without a script, and news of what others tick."""

import re
from dataclasses import replace
from datetime import timedelta
from typing import cast

import pytest
from django.http import HttpResponse
from django.test import Client
from django.urls import reverse
from django.utils import timezone
from pytest_django import DjangoAssertNumQueries

from cookout.core.eventfile import write_event
from cookout.services.lists import set_tick
from cookout.services.revisions import save_revision
from cookout.store.models import Event, Membership, Tick
from cookout.web.reading.lists import has_grown
from tests.core.planning.lists.conftest import planned, shipped
from tests.store.cast import Cast, a_user, example_text, plan_it

HTMX = {"HX-Request": "true"}


@pytest.fixture
def supper(cast: Cast) -> Event:
    """The owner's event with the plan that the planner makes of it."""
    plan_it(cast.event, planned("supper"))
    cast.event.refresh_from_db()
    return cast.event


@pytest.fixture
def viewer(supper: Event) -> Client:
    """The browser of somebody who may look."""
    return _member(supper, "viewer@meadow.example", "viewer")


@pytest.fixture
def planner(supper: Event) -> Client:
    """The browser of somebody who plans along."""
    return _member(supper, "planner@meadow.example", "planner")


def _member(event: Event, email: str, role: str) -> Client:
    user, client = a_user(email), Client()
    Membership.objects.create(event=event, user=user, role=role)
    client.force_login(user)
    return client


def page(client: Client, event: Event, name: str = "shopping", **asked: str) -> str:
    """The text of a list's page."""
    answer = client.get(reverse("list", args=[event.public_id, name]), asked)
    assert answer.status_code == 200
    return answer.content.decode()


def press(
    client: Client, event: Event, tick: str, name: str = "shopping", *, headers: dict[str, str] | None = None
) -> HttpResponse:
    """What comes back for a press on a line."""
    place = reverse("list-tick", args=[event.public_id, name])
    return cast("HttpResponse", client.post(place, {"tick": tick}, headers=headers))


def news(client: Client, event: Event, text: str) -> HttpResponse:
    """What comes back where a page asks for news."""
    found = re.search(r'id="list-news"[^>]*hx-get="([^"]+)"', text)
    assert found
    return cast("HttpResponse", client.get(found[1].replace("&amp;", "&"), headers=HTMX))


def line(text: str, key: str) -> str:
    """The one line of that key."""
    start = text.index(f'<li id="line-{key}"')
    return re.split(r'<li id="line-|</section>|<div id="list-progress"', text[start + 1 :])[0]


def pressed(text: str, key: str) -> tuple[str, ...]:
    """How the buttons of a line stand: done, and on hand where the list has that."""
    return tuple(re.findall(r'aria-pressed="(\w+)"', line(text, key)))


def test_the_overview_tells_how_far_each_list_is(owner: Client, supper: Event) -> None:
    set_tick(
        event_id=supper.pk, user_id=supper.owner_id, list_name="shopping", key="onion", state="on_hand", told="piece=2"
    )
    text = owner.get(reverse("lists", args=[supper.public_id])).content.decode()
    assert "<b>1 of 19</b> bought or on hand" in text
    assert text.count("<progress") == 4
    for name in ("shopping", "measuring", "packing", "leftovers"):
        assert reverse("list", args=[supper.public_id, name]) in text
    assert reverse("list-card", args=[supper.public_id]) in text


def test_the_shopping_list_is_in_the_readers_units(owner: Client, supper: Event, cast: Cast) -> None:
    assert "2 lb" in line(page(owner, supper), "smoked-sausage")
    cast.owner.units = "metric"
    cast.owner.save()
    assert "925 g" in line(page(owner, supper), "smoked-sausage")


@pytest.mark.parametrize(
    ("name", "key", "words"),
    [
        ("shopping", "white-bean--can", "4 cans"),
        ("measuring", "cobbler.dry", "cornstarch <b>2 Tbsp</b>"),
        ("packing", "safety.shovel", "forest-service tips"),
        ("packing", "gear.oven-12", "× 1"),
        ("leftovers", "fire.drown", "48 hours"),
        ("leftovers", "dish.salad", "8 portions made, 8 eating"),
    ],
)
def test_each_list_has_its_lines(owner: Client, supper: Event, name: str, key: str, words: str) -> None:
    assert words in line(page(owner, supper, name), key)


def test_leftovers_tell_by_when_in_the_readers_hours(owner: Client, supper: Event, cast: Cast) -> None:
    assert re.search(r"by <b>19:\d\d</b>", line(page(owner, supper, "leftovers"), "dish.bean-pot"))
    cast.owner.hours = "12"
    cast.owner.save()
    assert re.search(r"by <b>7:\d\d pm</b>", line(page(owner, supper, "leftovers"), "dish.bean-pot"))


def test_the_card_names_allergens_and_whom_to_ask(owner: Client, supper: Event) -> None:
    text = owner.get(reverse("list-card", args=[supper.public_id])).content.decode()
    cobbler = text[text.index("Peach cobbler") : text.index("Cucumber salad")]
    assert re.findall(r'class="card-word has">(\w+)<', cobbler) == ["milk", "wheat"]
    assert "Ask the cook: " in cobbler
    assert "smoked sausage" in text
    assert "No dish here is free of anything" in text


def test_an_allergen_added_after_the_plan_stands_on_the_card_at_once(owner: Client, supper: Event) -> None:
    Event.objects.filter(pk=supper.pk).update(
        document=supper.document.replace('{ name = "butter", amount = 6', '{ name = "pecan butter", amount = 6')
    )
    text = owner.get(reverse("list-card", args=[supper.public_id])).content.decode()
    assert "tree nuts" in text
    assert "were changed since the plan was made" in text


def test_a_press_without_a_script_goes_back_to_its_line(owner: Client, supper: Event) -> None:
    answer = press(owner, supper, "done onion piece=2")
    assert answer.status_code == 302
    assert answer.headers["Location"].endswith("/lists/shopping/#line-onion")
    text = page(owner, supper)
    assert pressed(text, "onion") == ("true", "false")
    assert "<b>1 of 19</b> bought or on hand" in text
    assert 'value="open onion piece=2"' in line(text, "onion")


def test_on_hand_and_bought_are_told_apart_and_both_count(owner: Client, supper: Event) -> None:
    press(owner, supper, "on_hand onion piece=2")
    assert pressed(page(owner, supper), "onion") == ("false", "true")
    assert "<b>1 of 19</b>" in page(owner, supper)
    press(owner, supper, "done onion piece=2")
    assert pressed(page(owner, supper), "onion") == ("true", "false")
    press(owner, supper, "open onion piece=2")
    assert pressed(page(owner, supper), "onion") == ("false", "false")


def test_only_shopping_has_things_on_hand(owner: Client, supper: Event) -> None:
    assert pressed(page(owner, supper, "packing"), "safety.shovel") == ("false",)


def test_a_press_with_a_script_brings_the_line_and_the_count(owner: Client, supper: Event) -> None:
    text = press(owner, supper, "done onion piece=2", headers=HTMX).content.decode()
    assert pressed(text, "onion") == ("true", "false")
    assert '<div id="list-progress" class="list-progress" hx-swap-oob="true">' in text
    assert "<html" not in text
    assert "line-salt" not in text


def test_who_ticked_it_stands_under_the_line(owner: Client, planner: Client, supper: Event) -> None:
    press(planner, supper, "done onion piece=2")
    assert "planner@meadow.example" in line(page(owner, supper), "onion")


def test_two_who_tick_different_lines_both_keep_their_ticks(owner: Client, planner: Client, supper: Event) -> None:
    """Neither page was loaded anew in between."""
    press(owner, supper, "done onion piece=2", headers=HTMX)
    press(planner, supper, "on_hand salt", headers=HTMX)
    press(owner, supper, "done dill mL=59.1471", headers=HTMX)
    assert dict(Tick.objects.values_list("key", "state")) == {"onion": "done", "salt": "on_hand", "dill": "done"}


def test_two_who_tick_the_same_line_do_not_untick_it(owner: Client, planner: Client, supper: Event) -> None:
    for client in (owner, planner):
        press(client, supper, "done onion piece=2", headers=HTMX)
    assert pressed(page(owner, supper), "onion")[0] == "true"


@pytest.mark.parametrize(
    "tick", ["", "done", "gone onion", "done no-such-line", "done onion " + "9" * 200, "done\tonion"]
)
def test_a_press_on_nothing_changes_nothing_and_says_so(owner: Client, supper: Event, tick: str) -> None:
    answer = owner.post(reverse("list-tick", args=[supper.public_id, "shopping"]), {"tick": tick}, follow=True)
    assert "not on the list any more" in answer.content.decode()
    assert press(owner, supper, tick, headers=HTMX).headers["HX-Refresh"] == "true"
    assert not Tick.objects.exists()


def test_a_list_that_there_is_not_is_not_there(owner: Client, supper: Event) -> None:
    assert owner.get(reverse("list", args=[supper.public_id, "wishes"])).status_code == 404
    assert owner.get(reverse("list-news", args=[supper.public_id, "wishes"])).status_code == 404
    assert press(owner, supper, "done onion", "wishes").status_code == 404


def test_whoever_may_only_look_sees_ticks_and_cannot_set_them(viewer: Client, owner: Client, supper: Event) -> None:
    press(owner, supper, "done onion piece=2")
    text = page(viewer, supper)
    assert "is-done" in line(text, "onion")
    assert 'name="tick"' not in text
    assert press(viewer, supper, "open onion").status_code == 403
    assert Tick.objects.get().state == "done"


def test_more_guests_open_a_line_that_was_ticked_for_fewer(owner: Client, supper: Event) -> None:
    press(owner, supper, "done onion piece=2")
    press(owner, supper, "done salt")
    core = shipped("supper")
    more = replace(core, servings=tuple(replace(each, people=16) for each in core.servings))
    save_revision(event_id=supper.pk, record=planned("supper"), document=write_event(more))
    text = page(owner, supper)
    assert "More is wanted now" in line(text, "onion")
    assert pressed(text, "onion") == ("false", "false")
    assert pressed(text, "salt")[0] == "true"
    assert "<b>1 of 19</b>" in text
    press(owner, supper, "done onion piece=4")
    assert pressed(page(owner, supper), "onion")[0] == "true"


@pytest.mark.parametrize(
    ("told", "now", "grown"),
    [
        ("piece=2", "piece=2", False),
        ("piece=5", "piece=2", False),
        ("piece=2", "piece=5", True),
        ("g=650", "g=650,piece=4", True),
        ("mL=100", "g=100", True),
        ("can_14_oz=2", "can_28_oz=2", True),
        ("", "", False),
        ("", "g=5", True),
        ("g=many", "g=5", True),
    ],
)
def test_what_is_more_or_another_measure_has_grown(told: str, now: str, grown: bool) -> None:
    assert has_grown(told, now) is grown


def test_what_is_left_can_be_shown_alone(owner: Client, supper: Event) -> None:
    press(owner, supper, "done onion piece=2")
    text = page(owner, supper, left="")
    assert "line-onion" not in text
    assert "line-salt" in text
    assert "<b>1 of 19</b>" in text
    for key, told in re.findall(r'value="done ([^\s"]+) ?([^"]*)"', text):
        press(owner, supper, f"done {key} {told}")
    assert "Nothing is left to do" in page(owner, supper, left="")


def test_no_news_is_an_empty_answer(owner: Client, supper: Event) -> None:
    press(owner, supper, "done onion piece=2")
    answer = news(owner, supper, page(owner, supper))
    assert (answer.status_code, answer.content) == (204, b"")


def test_news_bring_the_lines_that_others_ticked(owner: Client, planner: Client, supper: Event) -> None:
    press(owner, supper, "done dill mL=59.1471")
    Tick.objects.update(at=timezone.now() - timedelta(hours=1))
    text = page(owner, supper)
    press(planner, supper, "done onion piece=2")
    brought = news(owner, supper, text).content.decode()
    assert 'id="line-onion"' in brought
    assert 'id="line-dill"' not in brought
    assert brought.count("hx-swap-oob") == 2
    assert news(owner, supper, brought).status_code == 204


def test_news_of_a_new_plan_offer_the_new_list(owner: Client, supper: Event) -> None:
    text = page(owner, supper)
    plan_it(supper, planned("supper"))
    assert "There is a new plan" in news(owner, supper, text).content.decode()


@pytest.mark.parametrize("at", ["", "yesterday", "2027-06-12T10:00:00"])
def test_a_page_that_forgot_when_it_asked_gets_all_ticks(owner: Client, supper: Event, at: str) -> None:
    press(owner, supper, "done onion piece=2")
    answer = owner.get(reverse("list-news", args=[supper.public_id, "shopping"]), {"at": at})
    assert 'id="line-onion"' in answer.content.decode()


def test_asking_for_news_is_cheap(
    owner: Client, supper: Event, django_assert_max_num_queries: DjangoAssertNumQueries
) -> None:
    """Session, user, event, ticks."""
    text = page(owner, supper)
    with django_assert_max_num_queries(4) as asked:
        assert news(owner, supper, text).status_code == 204
    assert not any("payload" in query["sql"] or '"store_event"."document"' in query["sql"] for query in asked)


@pytest.mark.parametrize("name", ["lists", "list-card", "shopping", "measuring", "packing", "leftovers"])
def test_the_lists_of_a_festival_take_few_queries(
    owner: Client, cast: Cast, name: str, django_assert_max_num_queries: DjangoAssertNumQueries
) -> None:
    Event.objects.filter(pk=cast.event.pk).update(document=example_text("festival"))
    cast.event.refresh_from_db()
    plan_it(cast.event, planned("festival"))
    place = (
        reverse(name, args=[cast.event.public_id])
        if name.startswith("list")
        else reverse("list", args=[cast.event.public_id, name])
    )
    with django_assert_max_num_queries(8):
        assert owner.get(place).status_code == 200


def test_an_event_changed_since_its_plan_says_so_on_its_lists(owner: Client, supper: Event) -> None:
    assert "changed after this plan" not in page(owner, supper)
    Event.objects.filter(pk=supper.pk).update(document=supper.document + "\n# later\n")
    assert "changed after this plan" in page(owner, supper)


def test_an_event_without_a_plan_has_no_lists(cast: Cast) -> None:
    other, client = a_user("second@meadow.example"), Client()
    client.force_login(other)
    bare = Event.objects.create(owner=other, key="bare", name="Bare", document=example_text(), timezone="UTC")
    assert client.get(reverse("lists", args=[bare.public_id])).status_code == 404
    assert client.get(reverse("list-news", args=[bare.public_id, "shopping"])).status_code == 404


@pytest.mark.parametrize("name", ["list", "list-tick", "list-news"])
def test_strangers_see_none_of_it(stranger: Client, supper: Event, name: str) -> None:
    place = reverse(name, args=[supper.public_id, "shopping"])
    answer = stranger.post(place) if name == "list-tick" else stranger.get(place)
    assert answer.status_code == 404
