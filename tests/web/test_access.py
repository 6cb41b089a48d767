"""Every address against everyone: owner, co-planner, viewer, a helper with a link, a stranger with an account, nobody.

An address without a row here fails the first test.
"""

from dataclasses import dataclass
from uuid import uuid4

import pytest
from django.http import HttpResponse
from django.test import Client
from django.urls import reverse
from django.utils import timezone

from cookout.core.planning.recordjson import to_json
from cookout.services.events import delete_event
from cookout.store.models import PlanRun
from cookout.web.urls import urlpatterns
from tests.samples import sample_record_without_plan
from tests.store.cast import HELPER, Cast
from tests.web.looking import unmasked
from tests.web.recipe_addresses import BOX_PAGES, RECIPE_PAGES, SHARED_PAGES


@dataclass(frozen=True)
class Address:
    """A page of an event: how it is asked for, what its owner gets, and who else gets the same.

    `for_` "all": every member; "planners": owner and co-planners, a viewer is told 403; "owner": the owner alone.
    A stranger gets 404, and nobody (a helper with a link among them) is sent to sign in. `members` is for pages on
    which members get something else than the owner.
    """

    method: str = "get"
    owner: int = 200
    takes: tuple[str, ...] = ("event",)
    number: int = 1
    name: str = "shopping"
    kind: str = "wall"
    for_: str = "all"
    members: int | None = None

    def expected(self, role: str) -> int:
        """The status that somebody of that role gets."""
        allowed = {"all": {"owner", "planner", "viewer"}, "planners": {"owner", "planner"}, "owner": {"owner"}}
        if role not in allowed[self.for_]:
            return 403
        return self.owner if role == "owner" or self.members is None else self.members


GET, POST = Address(), Address(method="post", owner=302, for_="planners")
EDITED = Address(for_="planners")
OWN_POST = Address(method="post", owner=302, for_="owner")
NUMBERED = Address(takes=("event", "number"))
NUMBERED_POST = Address(method="post", owner=302, takes=("event", "number"), for_="planners")
OF_HELPER = Address(takes=("event", "helper"))
OF_RECIPE = Address(takes=("event", "key"))
OF_LIST = Address(takes=("event", "name"))
OF_RUN = Address(method="post", owner=302, takes=("event", "run"), for_="planners")
OF_TRIAL = Address(method="post", owner=302, takes=("event", "trial"), for_="planners")
OF_MEMBER = Address(method="post", owner=302, takes=("event", "member"), for_="owner")

OWNERS_PAGES = {
    "event": GET,
    "event-document": EDITED,
    "event-file": GET,
    "event-delete": Address(for_="owner"),
    "event-day": GET,
    "event-menu": GET,
    "event-gear": GET,
    "event-crew": GET,
    "event-show": GET,
    "event-edits": GET,
    "event-undo": NUMBERED_POST,
    "event-recipe": OF_RECIPE,
    "event-recipe-renew": Address(method="post", owner=302, takes=("event", "key"), for_="planners"),
    "event-recipe-keep": Address(method="post", owner=302, takes=("event", "key")),
    "event-template": Address(method="post", owner=302),
    "plan-start": POST,
    "plan-json": GET,
    "plan-csv": GET,
    "run": Address(owner=302, takes=("event", "run")),
    "run-stop": OF_RUN,
    "run-cancel": OF_RUN,
    "way-out": Address(method="post", owner=302, takes=("event", "run", "number"), number=0, for_="planners"),
    "trials": GET,
    "trial-start": Address(method="post", owner=404, for_="planners"),
    "trial": Address(takes=("event", "trial")),
    "trial-keep": OF_TRIAL,
    "trial-drop": OF_TRIAL,
    "trial-again": OF_TRIAL,
    "revisions-compared": Address(owner=302),
    "revision-name": NUMBERED_POST,
    "revision-back": NUMBERED_POST,
    "sharing": GET,
    "invite": Address(method="post", owner=422, for_="owner"),
    "leave": Address(method="post", owner=302),
    "invitation-revoke": Address(method="post", owner=302, takes=("event", "invitation"), for_="owner"),
    "member-role": OF_MEMBER,
    "member-owner": OF_MEMBER,
    "member-remove": OF_MEMBER,
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
    "helper-link": Address(method="post", takes=("event", "helper"), for_="planners"),
    "helper-link-end": Address(method="post", owner=302, takes=("event", "helper"), for_="planners"),
    "timeline": GET,
    "tasks": GET,
    "task": Address(takes=("event", "task")),
    "task-pin": Address(method="post", owner=422, takes=("event", "task"), for_="planners"),
    "task-unpin": Address(method="post", owner=409, takes=("event", "task"), for_="planners"),
    "lists": GET,
    "list": OF_LIST,
    "list-tick": Address(method="post", owner=302, takes=("event", "name"), for_="planners"),
    "list-news": OF_LIST,
    "list-card": GET,
    "paper": GET,
    "paper-pdf": Address(takes=("event", "kind")),
    "paper-linked": Address(method="post", for_="planners"),
    "calendar": GET,
    "calendar-link": Address(method="post", for_="planners"),
    "calendar-link-end": POST,
}
THROWN_AWAY = {"event-back", "event-erase"}
"""For events that were thrown away: whatever is there is not among them, not even for its owner."""
MEMBERS_PAGES = {"start", "event-new", "keeping", "parts"}
OF_ONES_OWN = {
    "account": "get",
    "password": "get",
    "account-address": "post",
    "hints-again": "post",
    "account-close": "post",
    "keeping-back": "post",
}
OPEN_PAGES = {
    "sign-in",
    "sign-out",
    "sign-up",
    "confirm",
    "reset",
    "reset-sent",
    "reset-done",
    "reset-confirm",
    "language",
    "invitation",
    "invitation-take",
    "demo-enter",
    "hint-away",
    "help",
    "help-topic",
}
LINKED_PAGES = {"call-sheet", "call-sheet-pdf", "feed"}


@pytest.fixture
def run(cast: Cast) -> PlanRun:
    """A run that ended without a plan, with one way out."""
    return PlanRun.objects.create(
        event=cast.event,
        document=cast.event.document,
        base_document=cast.event.document,
        purpose="trial",
        base=cast.event.current,
        state="done",
        record=to_json(sample_record_without_plan()),
        limit_seconds=1,
        limit_workers=1,
        limit_seed=1,
        queued_at=timezone.now(),
    )


def place_of(name: str, run: PlanRun, event: object) -> str:
    page = OWNERS_PAGES[name]
    known = {
        "event": event,
        "run": run.pk,
        "trial": run.pk,
        "helper": HELPER,
        "key": "peach-cobbler",
        "task": "crumble.slice",
        "number": page.number,
        "name": page.name,
        "kind": page.kind,
        "member": 1,
        "invitation": 1,
    }
    return reverse(name, args=[known[key] for key in page.takes])


def asked(client: Client, name: str, cast: Cast, run: PlanRun, *, event: object = None) -> HttpResponse:
    place = place_of(name, run, event or cast.event.public_id)
    answer: HttpResponse = getattr(client, OWNERS_PAGES[name].method)(place)
    return answer


def test_every_address_has_its_row_here() -> None:
    names = [pattern.name for pattern in urlpatterns]
    assert sorted(map(str, names)) == sorted(
        [
            *OWNERS_PAGES,
            *THROWN_AWAY,
            *MEMBERS_PAGES,
            *OF_ONES_OWN,
            *OPEN_PAGES,
            *LINKED_PAGES,
            *BOX_PAGES,
            *RECIPE_PAGES,
            *SHARED_PAGES,
        ]
    )


@pytest.mark.parametrize("role", ["owner", "planner", "viewer"])
@pytest.mark.parametrize("name", OWNERS_PAGES)
def test_a_member_gets_what_their_part_allows(
    request: pytest.FixtureRequest, cast: Cast, run: PlanRun, name: str, role: str
) -> None:
    answer = asked(request.getfixturevalue(role), name, cast, run)
    assert answer.status_code == OWNERS_PAGES[name].expected(role)
    assert "sign-in" not in answer.headers.get("Location", "")


@pytest.mark.parametrize("name", OWNERS_PAGES)
def test_a_helper_with_a_link_gets_no_further_than_nobody(cast: Cast, run: PlanRun, name: str) -> None:
    helper = Client()
    assert helper.get(reverse("call-sheet", args=[cast.helper_token])).status_code == 200
    answer = asked(helper, name, cast, run)
    assert answer.status_code == 302
    assert answer.headers["Location"].startswith(reverse("sign-in"))


@pytest.mark.parametrize("name", OF_ONES_OWN)
def test_an_account_is_for_whoever_is_signed_in(stranger: Client, nobody: Client, name: str) -> None:
    ask = OF_ONES_OWN[name]
    place = reverse(name, args=[uuid4()] if name == "keeping-back" else [])
    assert getattr(stranger, ask)(place).status_code in (200, 302, 422)
    refused = getattr(nobody, ask)(place)
    assert (refused.status_code, refused.headers["Location"].startswith(reverse("sign-in"))) == (302, True)


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


@pytest.mark.parametrize("name", THROWN_AWAY)
def test_an_event_thrown_away_answers_to_its_owner_alone(
    request: pytest.FixtureRequest, cast: Cast, nobody: Client, name: str
) -> None:
    place = reverse(name, args=[cast.event.public_id])
    for role in ("owner", "planner", "viewer", "stranger"):
        assert request.getfixturevalue(role).post(place).status_code == 404
    delete_event(event_id=cast.event.pk)
    for role in ("planner", "viewer", "stranger"):
        assert request.getfixturevalue(role).post(place).status_code == 404
    owner = request.getfixturevalue("owner")
    assert owner.get(place).status_code == 405
    assert nobody.post(place).headers["Location"].startswith(reverse("sign-in"))
    assert owner.post(place).status_code == 302


@pytest.mark.parametrize("name", MEMBERS_PAGES)
def test_pages_of_ones_own_need_an_account(stranger: Client, nobody: Client, cast: Cast, name: str) -> None:
    seen = stranger.get(reverse(name))
    assert seen.status_code == 200
    assert str(cast.event.public_id) not in seen.content.decode()
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
    assert nobody.get(reverse("sign-up")).status_code == 403
    assert nobody.get(reverse("confirm", args=["made-up"])).status_code == 404
    assert nobody.get(reverse("invitation", args=["made-up"])).status_code == 404
    back = reverse("sign-in") + "?next=" + reverse("invitation", args=["made-up"])
    assert nobody.post(reverse("invitation-take", args=["made-up"])).headers["Location"] == back
    for name in ("reset", "reset-sent", "reset-done"):
        assert nobody.get(reverse(name)).status_code == 200
    assert nobody.get(reverse("reset-confirm", args=["x", "y"])).status_code == 200
    assert (
        nobody.post(reverse("language"), {"language": "es", "next": "//elsewhere.example/"}).headers["Location"] == "/"
    )
    assert nobody.get(reverse("help")).status_code == 200
    assert nobody.get(reverse("help-topic", args=["words"])).status_code == 200
    assert nobody.get(reverse("help-topic", args=["made-up"])).status_code == 404
    assert nobody.post(reverse("hint-away", args=["menu"])).headers["Location"].startswith(reverse("sign-in"))
