"""Sharing an event: asked, taken once, revoked, left, handed over; mail through a real listener on loopback."""

from collections.abc import Iterator
from dataclasses import dataclass, field
from datetime import timedelta
from email import message_from_bytes
from email.message import Message
from email.policy import default
from typing import Any

import pytest
from aiosmtpd.controller import Controller
from django.db import connection
from django.test import override_settings
from django.utils import timezone

from cookout.services import accounts, mail, sharing
from cookout.services.errors import AddressTakenError, InvitationError, NoSuchThingError
from cookout.store.models import Event, Invitation, Membership, User
from cookout.store.selectors.events import get_event_for
from tests.servers import free_port
from tests.store.cast import OWNER, STRANGER, a_member, a_user, an_event

pytestmark = pytest.mark.django_db


@dataclass
class Mailbox:
    """What the listener was given."""

    mails: list[Message] = field(default_factory=list)

    async def handle_DATA(self, _server: Any, _session: Any, envelope: Any) -> str:
        self.mails.append(message_from_bytes(envelope.content, policy=default))
        return "250 taken"


@pytest.fixture
def mailbox() -> Iterator[Mailbox]:
    """A real SMTP listener on loopback, with the service set up to send there."""
    box = Mailbox()
    port = free_port()
    listener = Controller(box, hostname="127.0.0.1", port=port)
    listener.start()
    try:
        with override_settings(
            COOKOUT_SENDS_MAIL=True,
            EMAIL_BACKEND="django.core.mail.backends.smtp.EmailBackend",
            EMAIL_HOST="127.0.0.1",
            EMAIL_PORT=port,
        ):
            yield box
    finally:
        listener.stop()


@pytest.fixture
def event() -> Event:
    return an_event(a_user(OWNER))


def text_of(mail: Message) -> str:
    return str(mail.get_content())  # type: ignore[attr-defined]


def test_an_invitation_is_stored_as_a_hash_and_serves_once(event: Event) -> None:
    fresh = sharing.invite(event_id=event.pk, user_id=event.owner_id, role="planner")
    assert fresh.token not in str(vars(fresh.invitation))
    first, second = a_user(STRANGER), a_user("third@elsewhere.example")
    assert sharing.take_invitation(token=fresh.token, user_id=first.pk) == event
    with pytest.raises(InvitationError, match="no longer open"):
        sharing.take_invitation(token=fresh.token, user_id=second.pk)
    assert [(m.user, m.role) for m in Membership.objects.all()] == [(first, "planner")]


def test_an_invitation_for_one_address_is_for_no_other_account(event: Event) -> None:
    fresh = sharing.invite(event_id=event.pk, user_id=event.owner_id, role="viewer", email="Looker@Meadow.example")
    with pytest.raises(InvitationError, match=r"looker@meadow\.example"):
        sharing.take_invitation(token=fresh.token, user_id=a_user(STRANGER).pk)
    meant = a_user("looker@meadow.example")
    sharing.take_invitation(token=fresh.token, user_id=meant.pk)
    found = get_event_for(user_id=meant.pk, public_id=event.public_id)
    assert found is not None
    assert (found.role, found.may_edit) == ("viewer", False)


def test_old_and_revoked_invitations_open_nothing(event: Event) -> None:
    old = sharing.invite(event_id=event.pk, user_id=event.owner_id, role="viewer")
    Invitation.objects.update(expires_at=timezone.now() - timedelta(seconds=1))
    revoked = sharing.invite(event_id=event.pk, user_id=event.owner_id, role="viewer")
    sharing.revoke_invitation(event_id=event.pk, invitation_id=revoked.invitation.pk)
    assert sharing.find_invitation(old.token) is None
    assert sharing.find_invitation(revoked.token) is None


def test_whoever_may_do_more_keeps_that(event: Event) -> None:
    member = a_member(event, STRANGER, "planner")
    fresh = sharing.invite(event_id=event.pk, user_id=event.owner_id, role="viewer")
    sharing.take_invitation(token=fresh.token, user_id=member.pk)
    assert Membership.objects.get(user=member).role == "planner"
    own = sharing.invite(event_id=event.pk, user_id=event.owner_id, role="viewer")
    sharing.take_invitation(token=own.token, user_id=event.owner_id)
    assert not Membership.objects.filter(user_id=event.owner_id).exists()


def test_a_removed_member_and_one_who_left_see_nothing_any_more(event: Event) -> None:
    removed, left = a_member(event, STRANGER, "planner"), a_member(event, "third@elsewhere.example", "viewer")
    sharing.remove_member(event_id=event.pk, membership_id=Membership.objects.get(user=removed).pk)
    sharing.leave(event_id=event.pk, user_id=left.pk)
    for user in (removed, left):
        assert get_event_for(user_id=user.pk, public_id=event.public_id) is None


def hand_over(event: Event, membership_id: int) -> None:
    """As the one who owned the event when it was read."""
    sharing.hand_over(event_id=event.pk, owner_id=event.owner_id, membership_id=membership_id)


def test_a_co_planner_becomes_the_owner_and_the_owner_a_co_planner(event: Event) -> None:
    before, member = event.owner, a_member(event, STRANGER, "planner")
    hand_over(event, Membership.objects.get(user=member).pk)
    event.refresh_from_db()
    assert event.owner == member
    assert [(m.user, m.role) for m in Membership.objects.all()] == [(before, "planner")]


def test_an_owner_who_presses_twice_hands_over_once(event: Event) -> None:
    member = a_member(event, STRANGER, "planner")
    membership_id = Membership.objects.get(user=member).pk
    hand_over(event, membership_id)
    with pytest.raises(NoSuchThingError):
        hand_over(event, membership_id)
    event.refresh_from_db()
    assert event.owner == member


def test_a_viewer_cannot_be_made_the_owner_at_once(event: Event) -> None:
    member = a_member(event, STRANGER, "viewer")
    with pytest.raises(NoSuchThingError, match="co-planner"):
        hand_over(event, Membership.objects.get(user=member).pk)


def test_handing_over_to_somebody_with_an_event_of_that_id_is_refused(event: Event) -> None:
    member = a_member(event, STRANGER, "planner")
    an_event(member)
    with pytest.raises(InvitationError, match="same id"):
        hand_over(event, Membership.objects.get(event=event).pk)
    event.refresh_from_db()
    assert event.owner.email == OWNER


def test_the_owner_is_not_asked(event: Event) -> None:
    with pytest.raises(InvitationError, match="owner"):
        sharing.invite(event_id=event.pk, user_id=event.owner_id, role="viewer", email=OWNER.upper())


@pytest.mark.django_db(transaction=True)
def test_nobody_waits_for_the_mail_server(monkeypatch: pytest.MonkeyPatch, settings: Any) -> None:
    event, waits = an_event(a_user(OWNER)), list[bool]()
    settings.COOKOUT_SENDS_MAIL = True

    def send(**_given: object) -> None:
        waits.append(connection.in_atomic_block)
        raise OSError("no server there")

    monkeypatch.setattr(mail, "send", send)
    with pytest.raises(OSError, match="no server"):
        sharing.invite(event_id=event.pk, user_id=event.owner_id, role="viewer", email="asked@meadow.example")
    assert waits == [False]
    assert not Invitation.objects.exists()


def test_an_invitation_is_mailed_with_its_link(event: Event, mailbox: Mailbox) -> None:
    fresh = sharing.invite(
        event_id=event.pk,
        user_id=event.owner_id,
        role="planner",
        email="asked@meadow.example",
        address="https://cookout.example/i/TOKEN/",
    )
    assert fresh.mailed
    (mail,) = mailbox.mails
    assert mail["To"] == "asked@meadow.example"
    assert f"{OWNER} asks you" in text_of(mail)
    assert event.name in str(mail["Subject"])
    assert f"https://cookout.example/i/{fresh.token}/" in text_of(mail)


def test_a_name_of_an_event_cannot_write_headers(event: Event, mailbox: Mailbox) -> None:
    Event.objects.filter(pk=event.pk).update(name="Supper\r\nBcc: all@elsewhere.example\r\n\r\nhello")
    sharing.invite(event_id=event.pk, user_id=event.owner_id, role="viewer", email="asked@meadow.example")
    (mail,) = mailbox.mails
    assert mail["Bcc"] is None
    assert mail["Subject"].startswith("You are asked to help plan")


def test_an_invitation_that_cannot_be_mailed_is_not_made(event: Event) -> None:
    with (
        override_settings(
            COOKOUT_SENDS_MAIL=True,
            EMAIL_BACKEND="django.core.mail.backends.smtp.EmailBackend",
            EMAIL_HOST="127.0.0.1",
            EMAIL_PORT=1,
        ),
        pytest.raises(OSError, match=r"refused|Errno"),
    ):
        sharing.invite(event_id=event.pk, user_id=event.owner_id, role="viewer", email="asked@meadow.example")
    assert not Invitation.objects.exists()


def test_a_new_account_is_opened_by_the_link_in_its_mail(mailbox: Mailbox) -> None:
    address = "https://cookout.example/confirm/WORD/"
    made = accounts.sign_up(email="new@meadow.example", password="plenty of charcoal", confirmed=False, address=address)
    assert made is None
    assert not User.objects.get(email="new@meadow.example").is_active
    word = text_of(mailbox.mails[0]).split("/confirm/")[1].split("/")[0]
    confirmed = accounts.confirm_address(word=word)
    assert confirmed is not None
    assert confirmed.is_active
    assert confirmed.check_password("plenty of charcoal")
    assert accounts.confirm_address(word=word + "x") is None


def test_signing_up_with_a_known_address_looks_the_same_and_tells_its_owner_alone(mailbox: Mailbox) -> None:
    a_user(OWNER)
    made = accounts.sign_up(email=OWNER, password="plenty of charcoal", confirmed=False, address="x/WORD/")
    assert made is None
    assert User.objects.count() == 1
    assert "account already" in str(mailbox.mails[0]["Subject"])


def test_without_mail_an_account_is_open_at_once_and_an_address_serves_once() -> None:
    made = accounts.sign_up(email="new@meadow.example", password="plenty of charcoal", confirmed=False, address="")
    assert made is not None
    assert made.password.startswith("argon2")
    with pytest.raises(AddressTakenError, match="sign in"):
        accounts.sign_up(email="NEW@meadow.example", password="plenty of charcoal", confirmed=False, address="")


def test_a_new_address_counts_once_it_is_confirmed(mailbox: Mailbox) -> None:
    user = a_user(OWNER)
    done = accounts.change_address(user_id=user.pk, email="Else@meadow.example", address="x/confirm/WORD/")
    user.refresh_from_db()
    assert (done, user.email) == (False, OWNER)
    told, asked = mailbox.mails
    assert (told["To"], asked["To"]) == (OWNER, "else@meadow.example")
    assert "else@meadow.example" in text_of(told)
    assert "/confirm/" not in text_of(told)
    accounts.confirm_address(word=text_of(asked).split("/confirm/")[1].split("/")[0])
    user.refresh_from_db()
    assert user.email == "else@meadow.example"
