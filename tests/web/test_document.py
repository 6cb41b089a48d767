"""The event file on its page: nothing typed is lost."""

import pytest
from django.core.files.uploadedfile import SimpleUploadedFile
from django.test import Client
from django.urls import reverse

from cookout.services import events
from cookout.store.models import Event
from tests.store.cast import Cast, example_text


@pytest.fixture
def address(cast: Cast) -> str:
    return reverse("event-document", args=[cast.event.public_id])


def test_a_saved_text_is_stored_with_plain_line_ends(owner: Client, address: str, cast: Cast) -> None:
    typed = (cast.event.document + "# mine\n").replace("\n", "\r\n")
    answer = owner.post(address, {"document": typed, "version": 1}, follow=True)
    assert "Saved." in answer.content.decode()
    cast.event.refresh_from_db()
    assert cast.event.document == example_text() + "# mine\n"


def test_every_fault_is_listed_and_the_text_stays(owner: Client, address: str, cast: Cast) -> None:
    typed = (
        example_text().replace("America/Denver", "Nowhere/Land").replace('elevation = "5,200 ft"', 'elevation = "x"')
    )
    answer = owner.post(address, {"document": typed, "version": 1})
    shown = answer.content.decode()
    assert answer.status_code == 422
    assert "timezone" in shown.split("<textarea")[0]
    assert "elevation" in shown.split("<textarea")[0]
    assert "Nowhere/Land" in shown.split("<textarea")[1]
    cast.event.refresh_from_db()
    assert cast.event.version == 1


def test_a_save_elsewhere_is_told_and_the_next_save_wins(owner: Client, address: str, cast: Cast) -> None:
    theirs, mine = example_text() + "# theirs\n", example_text() + "# mine\n"
    events.save_document(event_id=cast.event.pk, document=theirs, version=1)
    answer = owner.post(address, {"document": mine, "version": 1})
    shown = answer.content.decode()
    assert "saved elsewhere" in shown
    assert "# theirs" in shown.split("<textarea")[0]
    assert "# mine" in shown.split("<textarea")[1]
    assert 'name="version" value="2"' in shown
    owner.post(address, {"document": mine, "version": 2})
    cast.event.refresh_from_db()
    assert cast.event.document == mine


def test_a_text_with_markup_is_shown_as_letters(owner: Client, address: str) -> None:
    typed = "# </textarea><script>alert(1)</script>"
    shown = owner.post(address, {"document": typed, "version": 1}).content.decode()
    assert "<script>alert" not in shown
    assert "&lt;script&gt;alert" in shown


def test_a_new_event_comes_from_a_file(stranger: Client) -> None:
    file = SimpleUploadedFile("supper.toml", example_text().encode())
    answer = stranger.post(reverse("event-new"), {"file": file, "document": ""})
    event = Event.objects.get(owner__email__startswith="stranger")
    assert answer.headers["Location"] == reverse("event", args=[event.public_id])


def test_a_new_event_that_is_faulty_keeps_the_text_of_the_file(stranger: Client) -> None:
    file = SimpleUploadedFile("supper.toml", example_text().replace("America/Denver", "Nowhere/Land").encode())
    answer = stranger.post(reverse("event-new"), {"file": file, "document": ""})
    assert answer.status_code == 422
    assert "Nowhere/Land" in answer.content.decode().split("<textarea")[1]


@pytest.mark.parametrize(
    ("content", "words"), [(b"\xff\xfe\x00", "not UTF-8"), (b"#" * 500_001, "too large"), (b"", "empty")]
)
def test_a_file_that_cannot_be_an_event_file_is_refused(stranger: Client, content: bytes, words: str) -> None:
    answer = stranger.post(reverse("event-new"), {"file": SimpleUploadedFile("x.toml", content)})
    assert words in answer.content.decode()


def test_an_empty_form_asks_for_something_to_read(stranger: Client) -> None:
    assert "nothing to read yet" in stranger.post(reverse("event-new"), {"document": "  "}).content.decode()


def test_throwing_away_says_first_what_goes_with_it(owner: Client, cast: Cast) -> None:
    address = reverse("event-delete", args=[cast.event.public_id])
    assert "For 14 days you can have it back" in owner.get(address).content.decode()
    assert Event.objects.filter(pk=cast.event.pk).exists()
    assert "is thrown away" in owner.post(address, follow=True).content.decode()
    assert not Event.objects.filter(pk=cast.event.pk, deleted_at=None).exists()
