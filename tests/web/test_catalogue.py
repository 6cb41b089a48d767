"""The second language says everything that the first does."""

import re

import pytest
from babel.messages.catalog import Message
from django.test import Client
from django.urls import reverse

from tests.store.cast import Cast
from tests.web.catalogue import SECOND, catalogue, compiled, stored, translated

PLACES = re.compile(r"%\(\w+\)[sd]|%%|<[^>]+>|\{\w*\}")


def messages() -> list[Message]:
    return [message for message in translated() if message.id]


def texts(message: Message) -> list[str]:
    return [message.string] if isinstance(message.string, str) else list(message.string or ())


def test_every_text_of_the_pages_is_in_the_catalogue_and_no_other() -> None:
    ours = {(message.id, message.context) for message in catalogue() if message.id}
    theirs = {(message.id, message.context) for message in messages()}
    assert ours == theirs, "run `python -m tests.web.catalogue` and translate what is new"


def test_no_text_lacks_its_translation() -> None:
    missing = [message.id for message in messages() if not all(texts(message)) or message.fuzzy]
    assert missing == []


def test_translations_keep_what_is_filled_in_and_the_markup() -> None:
    wrong = []
    for message in messages():
        asked = set(PLACES.findall(message.id if isinstance(message.id, str) else message.id[-1]))
        wrong += [(message.id, text) for text in texts(message)[-1:] if set(PLACES.findall(text)) != asked]
    assert wrong == []


def test_what_pages_read_is_compiled_from_what_translators_write() -> None:
    assert stored() == compiled(), "run `python -m tests.web.catalogue`"


@pytest.mark.django_db
def test_a_browser_that_asks_for_it_gets_the_second_language(cast: Cast) -> None:
    answer = Client().get(reverse("sign-in"), headers={"Accept-Language": SECOND})
    assert answer.headers["Content-Language"] == SECOND
    assert f'<html lang="{SECOND}">' in answer.content.decode()
