"""Accounts: the way in that the demo prints, links that confirm an address, new ways in."""

import pytest
from django.core import signing
from django.utils import timezone
from pytest_django import Settings

from cookout.services import accounts
from cookout.store.models import User
from tests.services.test_sharing import Mailbox, mailbox, text_of
from tests.store.cast import OWNER, STRANGER, a_user

__all__ = ["mailbox"]

pytestmark = pytest.mark.django_db

NEW, PASSWORD, OTHER_PASSWORD = "new@meadow.example", "plenty of charcoal", "embers and ash 7"


def sign_up(email: str = NEW, password: str = PASSWORD) -> User | None:
    return accounts.sign_up(email=email, password=password, confirmed=False, address="https://x.example/confirm/WORD/")


def word_in(mailbox: Mailbox) -> str:
    return text_of(mailbox.mails[-1]).split("/confirm/")[1].split("/")[0]


def test_the_signed_word_lets_its_user_in_while_the_demo_is_on(settings: Settings) -> None:
    owner = a_user(OWNER)
    signed = accounts.make_demo_entry(user_id=owner.pk)
    settings.COOKOUT_DEMO = True
    assert accounts.demo_sign_in(signed=signed) == owner
    settings.COOKOUT_DEMO = False
    assert accounts.demo_sign_in(signed=signed) is None


def test_a_false_old_or_foreign_word_lets_nobody_in(settings: Settings, monkeypatch: pytest.MonkeyPatch) -> None:
    settings.COOKOUT_DEMO = True
    signed = accounts.make_demo_entry(user_id=a_user(OWNER).pk)
    assert accounts.demo_sign_in(signed=signed[:-1] + ("A" if signed[-1] != "A" else "B")) is None
    assert accounts.demo_sign_in(signed=signing.dumps(1, salt="another use")) is None
    monkeypatch.setattr(accounts, "DEMO_SECONDS", -1)
    assert accounts.demo_sign_in(signed=signed) is None


def test_a_closed_account_is_not_let_in(settings: Settings) -> None:
    settings.COOKOUT_DEMO = True
    owner = a_user(OWNER)
    owner.is_active = False
    owner.save()
    assert accounts.demo_sign_in(signed=accounts.make_demo_entry(user_id=owner.pk)) is None


def test_addresses_are_one_person_in_any_case() -> None:
    owner = a_user("Owner@Meadow.Example")
    assert owner.email == OWNER
    assert accounts.get_or_create_user(email="OWNER@meadow.example") == owner


def test_a_user_without_a_password_cannot_sign_in_with_one() -> None:
    assert not accounts.create_user(email=OWNER).has_usable_password()


def test_passwords_are_kept_as_argon2_hashes() -> None:
    owner = accounts.create_user(email=OWNER, password="two ovens and a trivet")
    assert owner.password.startswith("argon2")
    assert owner.check_password("two ovens and a trivet")


def test_a_link_that_confirmed_an_address_serves_once(mailbox: Mailbox) -> None:
    sign_up()
    word = word_in(mailbox)
    assert accounts.find_confirmation(word=word) is not None
    user = accounts.confirm_address(word=word)
    assert user is not None
    assert accounts.confirm_address(word=word) is None
    user.last_login = timezone.now()
    user.is_active = False
    user.save()
    assert accounts.confirm_address(word=word) is None


def test_whoever_signs_up_again_gets_another_mail_and_the_password_typed_last(mailbox: Mailbox) -> None:
    sign_up()
    lost = word_in(mailbox)
    sign_up(NEW.upper(), OTHER_PASSWORD)
    assert len(mailbox.mails) == 2
    assert accounts.confirm_address(word=lost) is None
    user = accounts.confirm_address(word=word_in(mailbox))
    assert user is not None
    assert user.check_password(OTHER_PASSWORD)


def test_a_link_to_a_former_address_does_not_bring_it_back(mailbox: Mailbox) -> None:
    user = a_user(OWNER)
    accounts.change_address(user_id=user.pk, email="first@meadow.example", address="x/confirm/WORD/")
    first = word_in(mailbox)
    accounts.change_address(user_id=user.pk, email="second@meadow.example", address="x/confirm/WORD/")
    assert accounts.confirm_address(word=word_in(mailbox)) is not None
    assert accounts.confirm_address(word=first) is None
    user.refresh_from_db()
    assert user.email == "second@meadow.example"


def test_a_new_password_ends_a_change_of_address_that_waits(mailbox: Mailbox) -> None:
    user = a_user(OWNER)
    accounts.change_address(user_id=user.pk, email="thief@elsewhere.example", address="x/confirm/WORD/")
    user.set_password(OTHER_PASSWORD)
    user.save()
    assert accounts.confirm_address(word=word_in(mailbox)) is None


def test_an_address_that_another_account_took_meanwhile_is_not_confirmed(mailbox: Mailbox) -> None:
    user = a_user(OWNER)
    accounts.change_address(user_id=user.pk, email=STRANGER, address="x/confirm/WORD/")
    a_user(STRANGER)
    assert accounts.confirm_address(word=word_in(mailbox)) is None
    user.refresh_from_db()
    assert user.email == OWNER


def closed_account() -> User:
    user = accounts.create_user(email=NEW, password=PASSWORD)
    user.last_login, user.is_active = timezone.now(), False
    user.save()
    return user


def test_an_account_that_was_closed_is_not_opened_by_signing_up_again(mailbox: Mailbox) -> None:
    user = closed_account()
    assert sign_up(password=OTHER_PASSWORD) is None
    user.refresh_from_db()
    assert user.check_password(PASSWORD)
    assert mailbox.mails == []


def test_signing_up_with_a_known_address_takes_as_much_work_as_with_a_new_one(
    mailbox: Mailbox, monkeypatch: pytest.MonkeyPatch
) -> None:
    a_user(OWNER)
    hashed: list[str] = []
    monkeypatch.setattr(accounts, "make_password", hashed.append)
    sign_up(OWNER)
    assert hashed == [PASSWORD]
    assert not User.objects.get(email=OWNER).has_usable_password()


def test_a_link_to_choose_a_password_opens_an_account_that_waits_and_none_that_was_closed(mailbox: Mailbox) -> None:
    sign_up()
    waiting = User.objects.get(email=NEW)
    accounts.make_password_entry(user_id=waiting.pk)
    waiting.refresh_from_db()
    assert waiting.is_active
    waiting.delete()
    closed = closed_account()
    accounts.make_password_entry(user_id=closed.pk)
    closed.refresh_from_db()
    assert not closed.is_active
