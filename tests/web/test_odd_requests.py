"""Requests that no page of ours sends, and what stands between a page and whoever keeps copies of it."""

import pytest
from django.test import Client
from django.urls import reverse

from cookout.services.lists import set_tick
from cookout.web.views import lists
from tests.store.cast import Cast

TOO_LONG = "9" * 5000
"""More digits than Python reads as a number."""


@pytest.mark.parametrize("number", [TOO_LONG, "²", "-1", ""])
def test_numbers_that_are_none_are_told_and_break_nothing(owner: Client, cast: Cast, number: str) -> None:
    place = reverse("revisions-compared", args=[cast.event.public_id])
    answer = owner.get(place, {"before": number, "after": "1"})
    assert answer.status_code == 302
    assert answer.headers["Location"] == reverse("revisions", args=[cast.event.public_id])


@pytest.mark.parametrize("name", ["start", "event", "event-menu", "sharing", "recipes", "account"])
def test_no_cache_shares_a_page_of_somebody_who_is_signed_in(owner: Client, cast: Cast, name: str) -> None:
    takes = [] if name in ("start", "recipes", "account") else [cast.event.public_id]
    assert owner.get(reverse(name, args=takes)).headers["Cache-Control"] == "private, no-cache"


def test_taking_a_change_back_never_leads_off_the_site(owner: Client, cast: Cast) -> None:
    place = reverse("event-undo", args=[cast.event.public_id, 1])
    answer = owner.post(place, headers={"Referer": "http://testserver//elsewhere.example/?a=1"})
    assert answer.headers["Location"] == "/elsewhere.example/?a=1"


def test_what_was_typed_is_not_left_for_another_language(owner: Client, cast: Cast) -> None:
    place = reverse("invite", args=[cast.event.public_id])
    switch = f'action="{reverse("language")}"'
    assert switch in owner.get(reverse("sharing", args=[cast.event.public_id])).content.decode()
    assert switch not in owner.post(place, {"role": "viewer", "email": "no address"}).content.decode()
    assert owner.get(place).status_code == 405


def test_a_tick_set_while_a_list_is_made_is_told_afterwards(
    owner: Client, cast: Cast, monkeypatch: pytest.MonkeyPatch
) -> None:
    listed, place = lists.Planned.listed, reverse("list", args=[cast.event.public_id, "shopping"])

    def listed_before_a_tick(planned: lists.Planned, name: str) -> object:
        found = listed(planned, name)
        key = found.lines[0].line.key
        set_tick(event_id=cast.event.pk, user_id=cast.planner.pk, list_name=name, key=key, state="done")
        return found

    with monkeypatch.context() as patched:
        patched.setattr(lists.Planned, "listed", listed_before_a_tick)
        page = owner.get(place)
    asked = {"seen": page.context["stamp"], "plan": cast.event.current_id, "at": page.context["asked_at"].isoformat()}
    news = owner.get(reverse("list-news", args=[cast.event.public_id, "shopping"]), asked)
    assert news.status_code == 200
    assert len(news.context["changed"]) == 1
