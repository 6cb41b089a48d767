"""Every address against everyone: the owner, a stranger with an account, nobody, and a helper with a link."""

from dataclasses import dataclass
from uuid import uuid4

import pytest
from django.http import HttpResponse
from django.test import Client
from django.urls import reverse
from django.utils import timezone

from cookout.core.planning.recordjson import to_json
from cookout.store.models import PlanRun
from cookout.web.urls import urlpatterns
from tests.samples import sample_record_without_plan
from tests.store.cast import HELPER, Cast
from tests.web.looking import unmasked


@dataclass(frozen=True)
class Address:
    """A page: how it is asked for, and what the event's owner gets. `public` pages are listed apart."""

    method: str = "get"
    owner: int = 200
    takes: tuple[str, ...] = ("event",)
    number: int = 1


GET, POST = Address(), Address(method="post", owner=302)
NUMBERED = Address(takes=("event", "number"))
OF_HELPER = Address(takes=("event", "helper"))

OWNERS_PAGES = {
    "event": GET,
    "event-document": GET,
    "event-file": GET,
    "event-delete": GET,
    "plan-start": POST,
    "plan-json": GET,
    "run": Address(owner=302, takes=("event", "run")),
    "run-stop": Address(method="post", owner=302, takes=("event", "run")),
    "run-cancel": Address(method="post", owner=302, takes=("event", "run")),
    "way-out": Address(method="post", owner=302, takes=("event", "run", "number"), number=0),
    "revisions": GET,
    "revision": NUMBERED,
    "revision-json": NUMBERED,
    "revision-file": NUMBERED,
    "run-sheet": GET,
    "run-sheet-pdf": GET,
    "fire": GET,
    "fire-pdf": GET,
    "helpers": GET,
    "helper": OF_HELPER,
    "helper-pdf": OF_HELPER,
    "helper-link": Address(method="post", takes=("event", "helper")),
    "helper-link-end": Address(method="post", owner=302, takes=("event", "helper")),
    "calendar": GET,
    "calendar-link": Address(method="post"),
    "calendar-link-end": POST,
}
MEMBERS_PAGES = {"start", "event-new"}
OPEN_PAGES = {"sign-in", "sign-out", "demo-enter"}
LINKED_PAGES = {"call-sheet", "call-sheet-pdf", "feed"}


@pytest.fixture
def run(cast: Cast) -> PlanRun:
    """A run that ended without a plan, with one way out."""
    return PlanRun.objects.create(
        event=cast.event,
        document=cast.event.document,
        state="done",
        record=to_json(sample_record_without_plan()),
        limit_seconds=1,
        limit_workers=1,
        limit_seed=1,
        queued_at=timezone.now(),
    )


def place_of(name: str, run: PlanRun, event: object) -> str:
    page = OWNERS_PAGES[name]
    known = {"event": event, "run": run.pk, "helper": HELPER, "number": page.number}
    return reverse(name, kwargs={key: known[key] for key in page.takes})


def asked(client: Client, name: str, cast: Cast, run: PlanRun, *, event: object = None) -> HttpResponse:
    place = place_of(name, run, event or cast.event.public_id)
    answer: HttpResponse = getattr(client, OWNERS_PAGES[name].method)(place)
    return answer


def test_every_address_has_its_row_here() -> None:
    names = [pattern.name for pattern in urlpatterns]
    assert sorted(map(str, names)) == sorted([*OWNERS_PAGES, *MEMBERS_PAGES, *OPEN_PAGES, *LINKED_PAGES])


@pytest.mark.parametrize("name", OWNERS_PAGES)
def test_the_owner_gets_the_page(owner: Client, cast: Cast, run: PlanRun, name: str) -> None:
    answer = asked(owner, name, cast, run)
    assert answer.status_code == OWNERS_PAGES[name].owner
    assert "sign-in" not in answer.headers.get("Location", "")


@pytest.mark.parametrize("name", OWNERS_PAGES)
def test_a_stranger_is_refused_as_if_nothing_were_there(stranger: Client, cast: Cast, run: PlanRun, name: str) -> None:
    refused = asked(stranger, name, cast, run)
    missing = asked(stranger, name, cast, run, event=uuid4())
    assert (refused.status_code, missing.status_code) == (404, 404)
    assert unmasked(refused) == unmasked(missing)


@pytest.mark.parametrize("name", OWNERS_PAGES)
def test_nobody_is_sent_to_sign_in(nobody: Client, cast: Cast, run: PlanRun, name: str) -> None:
    answer = asked(nobody, name, cast, run)
    assert answer.status_code == 302
    assert answer.headers["Location"].startswith(reverse("sign-in") + "?next=/events/")


@pytest.mark.parametrize("name", OWNERS_PAGES)
def test_the_owner_is_refused_the_wrong_way_of_asking(owner: Client, cast: Cast, run: PlanRun, name: str) -> None:
    place = place_of(name, run, cast.event.public_id)
    assert owner.put(place).status_code == 405
    if OWNERS_PAGES[name].method == "post":
        assert owner.get(place).status_code == 405


@pytest.mark.parametrize("name", MEMBERS_PAGES)
def test_pages_of_ones_own_need_an_account(stranger: Client, nobody: Client, cast: Cast, name: str) -> None:
    seen = stranger.get(reverse(name))
    assert seen.status_code == 200
    assert cast.event.name not in seen.content.decode()
    assert nobody.get(reverse(name)).status_code == 302


@pytest.mark.parametrize("person", ["owner", "stranger", "nobody"])
def test_a_helpers_link_opens_for_whoever_has_it(person: str, cast: Cast, request: pytest.FixtureRequest) -> None:
    client = request.getfixturevalue(person)
    for name in LINKED_PAGES:
        assert client.get(reverse(name, args=[cast.helper_token])).status_code == 200


@pytest.mark.parametrize("name", LINKED_PAGES)
def test_a_made_up_link_opens_nothing(nobody: Client, cast: Cast, owner: Client, name: str) -> None:
    for client in (nobody, owner):
        assert client.get(reverse(name, args=["made-up"])).status_code == 404


def test_the_link_of_the_whole_calendar_opens_no_helpers_page(nobody: Client, cast: Cast) -> None:
    assert nobody.get(reverse("feed", args=[cast.event_token])).status_code == 200
    assert nobody.get(reverse("call-sheet", args=[cast.event_token])).status_code == 404
    assert nobody.get(reverse("call-sheet-pdf", args=[cast.event_token])).status_code == 404


def test_a_helpers_link_tells_nothing_of_the_planners_pages(nobody: Client, cast: Cast) -> None:
    page = nobody.get(reverse("call-sheet", args=[cast.helper_token])).content.decode()
    assert str(cast.event.public_id) not in page
    assert "/events/" not in page
    assert cast.owner.email not in page


def test_pages_without_a_guard_are_few_and_known(nobody: Client) -> None:
    assert nobody.get(reverse("sign-in")).status_code == 200
    assert nobody.post(reverse("sign-out")).status_code == 302
    assert nobody.get(reverse("demo-enter", args=["x:y:z"])).status_code == 404
