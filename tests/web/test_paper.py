"""The page of papers, and what it prints: for whom, on which paper, with which code."""

from dataclasses import replace
from typing import cast as as_type
from urllib.parse import urlsplit

import pytest
from django.http import HttpResponse
from django.test import Client
from django.urls import reverse

from cookout.services.paper import MAKERS
from cookout.web.reading.paper import SHEETS
from tests.samples import sample_record
from tests.sheets.printed import A4, LETTER, codes_on, drawn, pages_of, squeezed, text_of
from tests.store.cast import HELPER, Cast, plan_it


def printed(client: Client, cast: Cast, kind: str, **asked: str) -> HttpResponse:
    return as_type("HttpResponse", client.get(reverse("paper-pdf", args=[cast.event.public_id, kind]), asked))


def size_of(pdf: bytes) -> tuple[float, float]:
    box = pages_of(pdf)[0].mediabox
    shorter, longer = sorted((float(box.width), float(box.height)))
    return shorter, longer


def test_every_sheet_that_can_be_printed_is_on_the_page_and_every_one_on_it_can_be_printed(
    owner: Client, cast: Cast
) -> None:
    assert set(MAKERS) == set(SHEETS)
    page = owner.get(reverse("paper", args=[cast.event.public_id])).content.decode()
    for kind in MAKERS:
        assert reverse("paper-pdf", args=[cast.event.public_id, kind]) in page


@pytest.mark.parametrize("kind", SHEETS)
def test_the_code_on_a_sheet_opens_the_page_that_it_was_printed_from(owner: Client, cast: Cast, kind: str) -> None:
    answer = printed(owner, cast, kind)
    assert answer.status_code == 200
    assert answer.headers["Content-Type"] == "application/pdf"
    (code,) = codes_on(drawn(answer.content, dpi=150, last=1)[0])
    sheet = SHEETS[kind]
    there = reverse(sheet.view, args=[cast.event.public_id, *([sheet.word] if sheet.word else [])])
    if kind == "call-sheets":
        first = min((each for each in sample_record().helpers if each.called_at), key=lambda h: (h.called_at, h.name))
        there = reverse("helper", args=[cast.event.public_id, first.id])
    assert urlsplit(code).path == there
    assert urlsplit(code).netloc == "testserver"


@pytest.mark.parametrize("kind", SHEETS)
def test_a_sheet_says_which_revision_it_is_of(owner: Client, cast: Cast, kind: str) -> None:
    text = text_of(printed(owner, cast, kind).content)
    assert squeezed("revision 1, printed from testserver") in text


@pytest.mark.parametrize("who", ["owner", "planner", "viewer"])
def test_owner_co_planner_and_viewer_may_print(who: str, cast: Cast, request: pytest.FixtureRequest) -> None:
    client = request.getfixturevalue(who)
    assert client.get(reverse("paper", args=[cast.event.public_id])).status_code == 200
    assert printed(client, cast, "wall").status_code == 200


@pytest.mark.parametrize("kind", SHEETS)
def test_strangers_get_no_sheet(stranger: Client, nobody: Client, cast: Cast, kind: str) -> None:
    assert printed(stranger, cast, kind).status_code == 404
    assert printed(nobody, cast, kind).status_code == 302


def test_a_sheet_that_nobody_knows_is_not_there(owner: Client, cast: Cast) -> None:
    assert printed(owner, cast, "napkin").status_code == 404


@pytest.mark.parametrize(
    ("asked", "own", "size"),
    [
        ({"size": "a4"}, "units", A4),
        ({"size": "letter"}, "a4", LETTER),
        ({}, "a4", A4),
        ({}, "letter", LETTER),
        ({}, "units", LETTER),
        ({"size": "napkin"}, "a4", A4),
    ],
)
def test_paper_is_what_was_asked_for_else_the_readers_own_else_that_of_the_units(
    owner: Client, cast: Cast, asked: dict[str, str], own: str, size: tuple[float, float]
) -> None:
    cast.owner.paper = own
    cast.owner.save()
    assert size_of(printed(owner, cast, "run-sheet", **asked).content) == pytest.approx(size, abs=0.01)


def test_the_page_offers_the_readers_own_paper_and_prints_on_what_is_chosen(owner: Client, cast: Cast) -> None:
    there = reverse("paper", args=[cast.event.public_id])
    assert "run-sheet.pdf?size=letter" in owner.get(there).content.decode()
    assert "run-sheet.pdf?size=a4" in owner.get(there, {"size": "a4"}).content.decode()


def test_hours_are_those_that_the_reader_chose(owner: Client, cast: Cast) -> None:
    assert "16:15" in text_of(printed(owner, cast, "run-sheet").content)
    cast.owner.hours = "12"
    cast.owner.save()
    text = text_of(printed(owner, cast, "run-sheet").content)
    assert "4:15pm" in text
    assert "16:15" not in text


def test_only_the_hours_asked_for_go_on_the_wall(owner: Client, cast: Cast) -> None:
    whole = text_of(printed(owner, cast, "wall").content)
    part = text_of(printed(owner, cast, "wall", since="2027-06-19T16:00:00-05:00", hours="1").content)
    assert squeezed("15:50 Light 25 coals") in whole
    assert squeezed("Light 25 coals") not in part
    assert squeezed("16:25 Light 33 coals") in part


@pytest.mark.parametrize("wrong", [{"since": "yesterday"}, {"hours": "-4"}, {"hours": "1e9"}])
def test_hours_that_cannot_be_are_told_beside_the_field(owner: Client, cast: Cast, wrong: dict[str, str]) -> None:
    answer = printed(owner, cast, "wall", **wrong)
    assert answer.status_code == 400
    assert "errorlist" in answer.content.decode()


@pytest.mark.parametrize(("name", "kind"), [("run-sheet-pdf", "run-sheet"), ("fire-pdf", "fire")])
def test_addresses_of_before_print_the_same(owner: Client, cast: Cast, name: str, kind: str) -> None:
    assert owner.get(reverse(name, args=[cast.event.public_id])).content == printed(owner, cast, kind).content


def test_one_helper_can_be_printed_alone(owner: Client, cast: Cast) -> None:
    answer = owner.get(reverse("helper-pdf", args=[cast.event.public_id, HELPER]), {"size": "a4"})
    assert size_of(answer.content) == pytest.approx(A4, abs=0.01)
    assert squeezed("Runa Velde") in text_of(answer.content)
    assert squeezed("Slice apples") not in text_of(answer.content)


def test_a_helpers_link_prints_with_its_own_code(nobody: Client, cast: Cast) -> None:
    answer = nobody.get(reverse("call-sheet-pdf", args=[cast.helper_token]), {"size": "a4"})
    assert size_of(answer.content) == pytest.approx(A4, abs=0.01)
    assert answer.headers["Referrer-Policy"] == "no-referrer"
    (code,) = codes_on(drawn(answer.content, dpi=150, last=1)[0])
    assert urlsplit(code).path == reverse("call-sheet", args=[cast.helper_token])


def test_call_sheets_with_links_open_each_helpers_page_without_an_account(
    owner: Client, nobody: Client, cast: Cast
) -> None:
    answer = owner.post(reverse("paper-linked", args=[cast.event.public_id]), {"size": "a4"})
    assert (answer.status_code, answer.headers["Cache-Control"]) == (200, "no-store")
    assert size_of(answer.content) == pytest.approx(A4, abs=0.01)
    codes = [code for picture in drawn(answer.content, dpi=150) for code in codes_on(picture)]
    called = [helper for helper in sample_record().helpers if helper.called_at]
    assert len(set(codes)) == len(called) == 3
    pages = [nobody.get(urlsplit(code).path).content.decode() for code in codes]
    for helper in called:
        assert sum(f"{helper.name.partition(' ')[0]}" in page.partition("</h1>")[0] for page in pages) >= 1


def test_making_new_links_ends_those_of_before(owner: Client, nobody: Client, cast: Cast) -> None:
    there = reverse("call-sheet", args=[cast.helper_token])
    assert nobody.get(there).status_code == 200
    owner.post(reverse("paper-linked", args=[cast.event.public_id]))
    assert nobody.get(there).status_code == 404


def test_whoever_may_only_look_makes_no_links_and_is_not_offered_to(
    viewer: Client, planner: Client, nobody: Client, cast: Cast
) -> None:
    linked = reverse("paper-linked", args=[cast.event.public_id])
    assert viewer.post(linked).status_code == 403
    assert linked not in viewer.get(reverse("paper", args=[cast.event.public_id])).content.decode()
    assert nobody.get(reverse("call-sheet", args=[cast.helper_token])).status_code == 200
    assert planner.post(linked).status_code == 200


def test_an_event_without_a_demo_slot_says_so_where_the_running_order_would_be(owner: Client, cast: Cast) -> None:
    plan_it(cast.event, replace(sample_record(), slots=()))
    page = owner.get(reverse("paper", args=[cast.event.public_id])).content.decode()
    assert "This plan has no demo slot. Add one under Demo, then plan again." in page
    assert reverse("paper-pdf", args=[cast.event.public_id, "running-order"]) not in page


def test_the_page_warns_where_the_event_was_changed_since_it_was_planned(owner: Client, cast: Cast) -> None:
    there = reverse("paper", args=[cast.event.public_id])
    warning = "The event was changed since this plan was made."
    assert warning not in owner.get(there).content.decode()
    cast.event.document += "\n# changed\n"
    cast.event.save()
    assert warning in owner.get(there).content.decode()


def test_what_is_ticked_on_a_phone_is_printed_ticked(owner: Client, cast: Cast) -> None:
    from cookout.services.lists import set_tick

    before = printed(owner, cast, "shopping")
    assert squeezed("on hand") not in text_of(before.content)
    for key in ("onion", "vinegar", "sugar", "salt", "molasses"):
        set_tick(event_id=cast.event.pk, user_id=cast.owner.pk, list_name="shopping", key=key, state="on_hand")
    assert squeezed("on hand") in text_of(printed(owner, cast, "shopping").content)
