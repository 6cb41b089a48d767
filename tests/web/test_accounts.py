"""Getting in: too many attempts, sign-up open and closed, a forgotten password, invitations, what one chose."""

import re
from collections.abc import Iterator

import pytest
from django.core.cache import cache
from django.test import Client, override_settings
from django.urls import reverse

from config.logs import without_secrets
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
def no_attempts_yet() -> Iterator[None]:
    cache.clear()
    yield
    cache.clear()


def link_in(mailbox: Mailbox) -> str:
    """The path of the link in the newest mail."""
    found = re.search(r"http://testserver(/\S+)", text_of(mailbox.mails[-1]))
    assert found is not None
    return found[1]


def sign_in(client: Client, email: str, password: str = PASSWORD) -> int:
    return client.post(reverse("sign-in"), {"username": email, "password": password}).status_code


def test_after_five_wrong_passwords_even_the_right_one_waits_and_others_do_not() -> None:
    for email in ("asta@meadow.example", "bo@meadow.example"):
        accounts.create_user(email=email, password=PASSWORD)
    client = Client()
    tries = [sign_in(client, "Asta@meadow.example", "wrong") for _ in range(5)]
    assert tries[0] == 200
    assert sign_in(client, "asta@meadow.example") == 429
    assert (
        "Wait a quarter of an hour"
        in client.post(reverse("sign-in"), {"username": "asta@meadow.example", "password": PASSWORD}).content.decode()
    )
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
    assert answers[:20] == [302] * 20
    assert answers[-1] == 429
    assert "Wait an hour" in unmasked(nobody.post(reverse("reset"), {"email": "asta@meadow.example"}))
    assert Client(REMOTE_ADDR="203.0.113.9").post(reverse("reset"), {"email": "asta@meadow.example"}).status_code == 302


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
    assert (
        owner.post(reverse("hint-away", args=["x"]), {"back": "https://elsewhere.example/"}).headers["Location"] == "/"
    )
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


@override_settings(COOKOUT_SIGN_UP=True)
def test_a_link_that_confirms_does_nothing_until_its_button_is_pressed(nobody: Client, mailbox: Mailbox) -> None:
    assert "Look into your mail" in unmasked(nobody.post(reverse("sign-up"), NEW))
    link = link_in(mailbox)
    page = nobody.get(link)
    assert NEW["email"] in unmasked(page)
    assert page.headers["Referrer-Policy"] == "same-origin"
    assert sign_in(Client(), NEW["email"]) == 200
    assert nobody.post(link).headers["Location"] == reverse("sign-in")
    assert sign_in(Client(), NEW["email"]) == 302
    assert (nobody.get(link).status_code, nobody.post(link).status_code) == (404, 404)


@override_settings(COOKOUT_SIGN_UP=True)
def test_signing_up_looks_the_same_for_a_known_address(cast: Cast, mailbox: Mailbox) -> None:
    known = Client().post(reverse("sign-up"), {**NEW, "email": cast.owner.email})
    fresh = Client().post(reverse("sign-up"), NEW)
    assert (known.status_code, fresh.status_code) == (200, 200)
    assert unmasked(known).replace(cast.owner.email, "") == unmasked(fresh).replace(NEW["email"], "")


def test_a_mailed_invitation_is_seen_by_nobody_but_whom_it_is_for(owner: Client, cast: Cast, mailbox: Mailbox) -> None:
    page = owner.post(reverse("invite", args=[cast.event.public_id]), {"role": "planner", "email": NEW["email"]})
    assert "It was mailed" in unmasked(page)
    assert "/i/" not in unmasked(page)
    invited, link = Client(), link_in(mailbox)
    assert invited.get(link).status_code == 200
    assert invited.post(reverse("sign-up"), NEW).headers["Location"] == link
    assert len(mailbox.mails) == 1
    invited.post(link + "take/")
    assert Membership.objects.get(user__email=NEW["email"]).role == "planner"


def test_who_is_invited_and_signs_up_with_another_address_confirms_that_and_comes_back(
    cast: Cast, mailbox: Mailbox
) -> None:
    fresh = sharing.invite(event_id=cast.event.pk, user_id=cast.owner.pk, role="viewer")
    client, back = Client(), reverse("invitation", args=[fresh.token])
    client.get(back)
    assert "Look into your mail" in unmasked(client.post(reverse("sign-up"), NEW))
    place = client.post(link_in(mailbox)).headers["Location"]
    assert place == f"{reverse('sign-in')}?next={back}"
    signed_in = client.post(place, {"username": NEW["email"], "password": PASSWORD, "next": back})
    assert signed_in.headers["Location"] == back


def test_who_takes_an_invitation_signed_out_signs_in_and_is_back_there(cast: Cast) -> None:
    accounts.create_user(email="asta@meadow.example", password=PASSWORD)
    fresh = sharing.invite(event_id=cast.event.pk, user_id=cast.owner.pk, role="viewer")
    client, back = Client(), reverse("invitation", args=[fresh.token])
    place = client.post(reverse("invitation-take", args=[fresh.token])).headers["Location"]
    assert f'name="next" value="{back}"' in client.get(place).content.decode()
    answer = client.post(place, {"username": "asta@meadow.example", "password": PASSWORD, "next": back}, follow=True)
    assert answer.redirect_chain[-1][0] == back
    assert "Take it" in unmasked(answer)
    assert not Membership.objects.filter(user__email="asta@meadow.example").exists()


def test_who_is_signed_in_with_another_address_can_sign_out_and_is_back_at_the_invitation(
    stranger: Client, cast: Cast
) -> None:
    fresh = sharing.invite(event_id=cast.event.pk, user_id=cast.owner.pk, role="viewer", email="else@meadow.example")
    back = reverse("invitation", args=[fresh.token])
    assert 'action="/sign-out/"' in unmasked(stranger.get(back)).split("for else@meadow.example")[1]
    assert stranger.post(reverse("sign-out"), {"next": back}).headers["Location"] == back
    assert "Sign in to take it" in unmasked(stranger.get(back))


def test_invitations_are_not_sent_without_end(owner: Client, cast: Cast) -> None:
    place = reverse("invite", args=[cast.event.public_id])
    given = [owner.post(place, {"role": "viewer", "email": ""}).status_code for _ in range(61)]
    assert given == [200] * 60 + [429]


def test_another_address_asks_for_the_password_and_keeps_what_was_typed(mailbox: Mailbox) -> None:
    user = accounts.create_user(email="asta@meadow.example", password=PASSWORD)
    client = Client()
    client.force_login(user)
    typed = {"email": "moved@meadow.example", "password": "wrong"}
    wrong = client.post(reverse("account-address"), typed)
    assert wrong.status_code == 422
    assert "not your password" in unmasked(wrong)
    assert 'value="moved@meadow.example"' in unmasked(wrong)
    assert mailbox.mails == []
    assert client.post(reverse("account-address"), {**typed, "password": PASSWORD}).status_code == 302
    assert client.post(link_in(mailbox)).headers["Location"] == reverse("start")
    user.refresh_from_db()
    assert user.email == "moved@meadow.example"


@pytest.mark.parametrize(
    ("page", "typed"),
    [
        ("account-address", {"email": "x@meadow.example", "password": "wrong"}),
        ("account-close", {"password": "wrong"}),
        ("password", {"old_password": "wrong"}),
    ],
)
def test_a_password_is_not_guessed_from_inside_an_account(
    owner: Client, cast: Cast, page: str, typed: dict[str, str]
) -> None:
    cast.owner.password = "pbkdf2_sha256$1$salt$hash"
    cast.owner.save()
    owner.force_login(cast.owner)
    tries = [owner.post(reverse(page), typed).status_code for _ in range(21)]
    assert set(tries[:20]) <= {200, 422}
    assert tries[20] == 429


def test_the_language_of_an_account_is_changed_from_any_page(owner: Client, cast: Cast) -> None:
    cast.owner.language = "en"
    cast.owner.save()
    owner.post(reverse("language"), {"language": "es", "next": "/"})
    assert '<html lang="es">' in owner.get(reverse("start")).content.decode()
    owner.post(reverse("language"), {"language": "xx", "next": "/"})
    cast.owner.refresh_from_db()
    assert cast.owner.language == "es"


def test_signing_in_changes_the_session_and_leads_nowhere_else() -> None:
    accounts.create_user(email="asta@meadow.example", password=PASSWORD)
    client = Client()
    client.get(reverse("invitation", args=["made-up"]))
    session = client.session
    session["invited"] = "x"
    session.save()
    before = session.session_key
    typed = {"username": "asta@meadow.example", "password": PASSWORD, "next": "https://elsewhere.example/"}
    assert client.post(reverse("sign-in"), typed).headers["Location"] == reverse("start")
    assert client.session.session_key != before


def test_no_secret_of_these_pages_gets_into_a_log(cast: Cast, mailbox: Mailbox) -> None:
    fresh = sharing.invite(event_id=cast.event.pk, user_id=cast.owner.pk, role="viewer")
    accounts.change_address(user_id=cast.owner.pk, email=NEW["email"], address="http://testserver/confirm/WORD/")
    uid, token = accounts.make_password_entry(user_id=cast.owner.pk)
    back = reverse("invitation", args=[fresh.token])
    for place in (
        back,
        f"{reverse('sign-in')}?next={back}",
        link_in(mailbox),
        reverse("reset-confirm", args=[uid, token]),
    ):
        written = without_secrets(f'"GET {place} HTTP/1.1" 200')
        assert "(left out)" in written
        for secret in (fresh.token, link_in(mailbox).split("/")[2], token):
            assert secret not in written
