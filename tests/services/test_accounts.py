"""The way in that the demo prints."""

import pytest
from django.core import signing
from pytest_django import Settings

from cookout.services import accounts
from tests.store.cast import OWNER, a_user

pytestmark = pytest.mark.django_db


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
