"""An account made without mail."""

from io import StringIO
from urllib.parse import urlsplit

import pytest
from django.core.management import CommandError, call_command
from django.test import Client

from cookout.store.models import User

pytestmark = pytest.mark.django_db


def made(address: str) -> str:
    out = StringIO()
    call_command("make_account", address, stdout=out)
    return urlsplit(out.getvalue().strip()).path


def test_the_printed_link_lets_somebody_choose_a_password_once() -> None:
    link, client = made("Asta@meadow.example"), Client()
    place = client.get(link, follow=True).redirect_chain[-1][0]
    client.post(place, {"new_password1": "embers and ash 7", "new_password2": "embers and ash 7"})
    user = User.objects.get(email="asta@meadow.example")
    assert user.check_password("embers and ash 7")
    assert "too old" in Client().get(link, follow=True).content.decode()


def test_an_account_that_is_there_stays_and_gets_a_new_way_in() -> None:
    made("asta@meadow.example")
    made("asta@meadow.example")
    assert User.objects.count() == 1


def test_what_is_no_address_is_refused() -> None:
    with pytest.raises(CommandError, match="no e-mail address"):
        made("asta")
