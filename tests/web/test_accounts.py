"""Getting in: too many attempts, sign-up open and closed, a forgotten password, invitations, what one chose."""

import re

import pytest
from django.core.cache import cache
from django.test import Client, override_settings
from django.urls import reverse

from cookout.services import accounts, sharing
from cookout.store.models import Membership, User
from tests.services.test_sharing import Mailbox, mailbox, text_of
from tests.store.cast import Cast
from tests.web.looking import unmasked

__all__ = ["mailbox"]

pytestmark = pytest.mark.django_db

PASSWORD = "plenty of charcoal"
NEW = {"email": "new@meadow.example", "password": PASSWORD, "again": PASSWORD}


@pytest.fixture(autouse=True)
def no_attempts_yet() -> None:
    cache.clear()


def sign_in(client: Client, email: str, password: str = PASSWORD) -> int:
    return client.post(reverse("sign-in"), {"username": email, "password": password}).status_code


def test_after_five_wrong_passwords_even_the_right_one_waits_and_others_do_not() -> None:
    for email in ("asta@meadow.example", "bo@meadow.example"):
        accounts.create_user(email=email, password=PASSWORD)
    client = Client()
    tries = [sign_in(client, "Asta@meadow.example", "wrong") for _ in range(5)]
    assert tries[0] == 200
    assert sign_in(client, "asta@meadow.example") == 429
    assert "Wait a quarter of an hour" in client.post(
        reverse("sign-in"), {"username": "asta@meadow.example", "password": PASSWORD}
    ).content.decode()
    assert sign_in(Client(), "bo@meadow.example") == 302
    assert sign_in(Client(REMOTE_ADDR="203.0.113.9"), "asta@meadow.example") == 302


def test_a_made_up_address_is_told_the_same_as_a_wrong_password() -> None:
    accounts.create_user(email="asta@meadow.example", password=PASSWORD)
    known = Client().post(reverse("sign-in"), {"username": "asta@meadow.example", "password": "wrong"})
    unknown = Client().post(reverse("sign-in"), {"username": "asta@meadow.examplo", "password": "wrong"})
    said = [re.search(r'role="alert">([^<]+)<', unmasked(answer)) for answer in (known, unknown)]
    assert said[0] is not None
    assert said[1] is not None
    assert said[0][1] == said[1][1]


def test_sign_up_is_closed_until_it_is_opened(nobody: Client) -> None:
    assert nobody.post(reverse("sign-up"), NEW).status_code == 403
    with override_settings(COOKOUT_SIGN_UP=True):
        assert nobody.post(reverse("sign-up"), NEW).headers["Location"] == reverse("start")
    assert nobody.get(reverse("start")).status_code == 200


@override_settings(COOKOUT_SIGN_UP=True)
@pytest.mark.parametrize(
    ("typed", "said"),
    [
        ({"email": "not an address"}, "valid email"),
        ({"password": "short", "again": "short"}, "too short"),
        ({"again": "something else entirely"}, "not the same"),
        ({"email": "charcoalplenty@m.example", "password": "charcoalplenty", "again": "charcoalplenty"}, "similar"),
    ],
)
def test_what_is_wrong_with_a_new_account_is_said_by_the_field(
    nobody: Client, typed: dict[str, str], said: str
) -> None:
    page = unmasked(nobody.post(reverse("sign-up"), {**NEW, **typed}))
    assert said in page
    assert f'value="{typed.get("email", NEW["email"])}"' in page
    assert not User.objects.filter(email__contains="new@").exists()


def test_who_is_invited_can_make_an_account_and_take_it(cast: Cast) -> None:
    fresh = sharing.invite(event_id=cast.event.pk, user_id=cast.owner.pk, role="planner", email=NEW["email"])
    client = Client()
    page = unmasked(client.get(reverse("invitation", args=[fresh.token])))
    assert cast.event.name in page
    assert 'value="new@meadow.example"' in unmasked(client.get(reverse("sign-up")))
    assert client.post(reverse("sign-up"), NEW).headers["Location"] == reverse("invitation", args=[fresh.token])
    answer = client.post(reverse("invitation-take", args=[fresh.token]))
    assert answer.headers["Location"] == reverse("event", args=[cast.event.public_id])
    assert Membership.objects.get(user__email=NEW["email"]).role == "planner"
    assert client.get(reverse("event", args=[cast.event.public_id])).status_code == 200


def test_an_invitation_for_another_address_is_not_offered(stranger: Client, cast: Cast) -> None:
    fresh = sharing.invite(event_id=cast.event.pk, user_id=cast.owner.pk, role="planner", email="else@meadow.example")
    page = unmasked(stranger.get(reverse("invitation", args=[fresh.token])))
    assert "This invitation is for else@meadow.example" in page
    stranger.post(reverse("invitation-take", args=[fresh.token]))
    assert not Membership.objects.filter(user=cast.stranger).exists()


def test_the_owner_sees_a_fresh_invitation_once(owner: Client, cast: Cast) -> None:
    answer = owner.post(reverse("invite", args=[cast.event.public_id]), {"role": "viewer", "email": ""})
    found = re.search(r'value="http://testserver/i/([\w-]+)/"', unmasked(answer))
    assert found is not None
    assert answer.headers["Cache-Control"] == "no-store"
    assert sharing.find_invitation(found[1]) is not None
    assert found[1] not in unmasked(owner.get(reverse("sharing", args=[cast.event.public_id])))


def test_members_are_seen_by_all_and_changed_by_the_owner(owner: Client, viewer: Client, cast: Cast) -> None:
    place = reverse("sharing", args=[cast.event.public_id])
    seen = unmasked(viewer.get(place))
    assert cast.planner.email in seen
    assert "Ask somebody" not in seen
    member = Membership.objects.get(user=cast.viewer)
    owner.post(reverse("member-role", args=[cast.event.public_id, member.pk]), {"role": "planner"})
    member.refresh_from_db()
    assert member.role == "planner"
    owner.post(reverse("member-remove", args=[cast.event.public_id, member.pk]))
    assert viewer.get(place).status_code == 404


def test_a_member_leaves_and_the_owner_cannot(owner: Client, planner: Client, cast: Cast) -> None:
    place = reverse("leave", args=[cast.event.public_id])
    planner.post(place)
    assert planner.get(reverse("event", args=[cast.event.public_id])).status_code == 404
    assert "Hand it over first" in unmasked(owner.post(place, follow=True))


@override_settings(COOKOUT_SENDS_MAIL=True)
def test_a_forgotten_password_is_chosen_anew_by_the_link_in_a_mail(nobody: Client, mailbox: Mailbox) -> None:
    accounts.create_user(email="asta@meadow.example", password=PASSWORD)
    answer = nobody.post(reverse("reset"), {"email": "asta@meadow.example"}, follow=True)
    unknown = nobody.post(reverse("reset"), {"email": "nobody@meadow.example"}, follow=True)
    assert unmasked(answer) == unmasked(unknown)
    (mail,) = mailbox.mails
    link = re.search(r"http://testserver(/reset/\S+)", text_of(mail))
    assert link is not None
    form = nobody.get(link[1], follow=True)
    place = form.redirect_chain[-1][0]
    saved = nobody.post(place, {"new_password1": "embers and ash 7", "new_password2": "embers and ash 7"}, follow=True)
    assert "is saved" in unmasked(saved)
    assert sign_in(Client(), "asta@meadow.example", "embers and ash 7") == 302


def test_asking_again_and_again_for_a_new_password_is_stopped(nobody: Client) -> None:
    answers = [nobody.post(reverse("reset"), {"email": "asta@meadow.example"}).status_code for _ in range(21)]
    assert answers[0] == 302
    assert answers[-1] == 429


def test_what_somebody_chooses_is_in_force_on_the_next_page(owner: Client, cast: Cast) -> None:
    chosen = {"name": "Runa", "units": "metric", "hours": "12", "paper": "a4", "language": ""}
    assert owner.post(reverse("account"), chosen).headers["Location"] == reverse("account")
    page = unmasked(owner.get(reverse("event", args=[cast.event.public_id])))
    assert "6:30 pm" in page
    assert "18:30" not in re.sub(r'(datetime|data-\w+|href|id)="[^"]*"', "", page)


def test_a_hint_that_was_put_away_stays_away_and_leads_back(owner: Client, cast: Cast) -> None:
    answer = owner.post(reverse("hint-away", args=["menu"]), {"back": "/account/"})
    assert answer.headers["Location"] == "/account/"
    cast.owner.refresh_from_db()
    assert cast.owner.hints_seen == ["menu"]
    assert owner.post(reverse("hint-away", args=["x"]), {"back": "https://elsewhere.example/"}).headers["Location"] == "/"
    owner.post(reverse("hints-again"))
    cast.owner.refresh_from_db()
    assert cast.owner.hints_seen == []


def test_closing_an_account_asks_for_the_password_and_takes_everything_along(cast: Cast) -> None:
    user = accounts.create_user(email="asta@meadow.example", password=PASSWORD)
    client = Client()
    client.force_login(user)
    wrong = client.post(reverse("account-close"), {"password": "wrong"})
    assert wrong.status_code == 422
    assert "not your password" in unmasked(wrong)
    client.post(reverse("account-close"), {"password": PASSWORD})
    assert not User.objects.filter(email="asta@meadow.example").exists()
    assert client.get(reverse("start")).status_code == 302


def test_the_language_is_changed_for_strangers_too(nobody: Client) -> None:
    nobody.post(reverse("language"), {"language": "es", "next": reverse("sign-in")})
    assert '<html lang="es">' in nobody.get(reverse("sign-in")).content.decode()
