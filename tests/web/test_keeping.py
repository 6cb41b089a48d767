"""Kits and people: kept, changed, deleted, had back; nobody else's."""

from typing import Any

import pytest
from django.test import Client
from django.urls import reverse

from cookout.services import gear, making
from cookout.store.models import Kit, Person, Template
from tests.store.cast import Cast
from tests.web.filling import form_of

KEEPING = reverse("keeping")


@pytest.fixture
def kit(cast: Cast) -> Kit:
    return gear.save_kit(event_id=cast.event.pk, user_id=cast.owner.pk, name="Trailer")


def test_somebody_is_put_into_the_address_book_and_changed(owner: Client, cast: Cast) -> None:
    form = form_of(owner.get(KEEPING), "person", "")
    typed = {"name": "Asta Vik", "contact": "asta@ford.example", "more_skills": "Icing", "note": "brings bowls"}
    owner.post(KEEPING, form.filled("person", skills=["fire"], **typed))
    person = Person.objects.get(owner=cast.owner)
    assert (person.name, person.skills, person.adult) == ("Asta Vik", ["fire", "icing"], True)
    form = form_of(owner.get(KEEPING), "person", str(person.public_id))
    owner.post(KEEPING, form.filled("person", skills=["icing"], adult=[], hot_stretch_minutes="20"))
    person.refresh_from_db()
    assert (person.skills, person.adult, person.hot_stretch_minutes, person.note) == (
        ["icing"],
        False,
        20,
        "brings bowls",
    )


def test_a_nameless_person_is_told_and_what_was_typed_stays(owner: Client, cast: Cast) -> None:
    form = form_of(owner.get(KEEPING), "person", "")
    answer = owner.post(KEEPING, form.filled("person", note="brings bowls"))
    assert answer.status_code == 422
    assert "brings bowls" in answer.content.decode()


@pytest.mark.parametrize("kind", ["kit", "person", "template"])
def test_what_is_deleted_comes_back_as_it_was(owner: Client, cast: Cast, kit: Kit, kind: str) -> None:
    Person.objects.create(owner=cast.owner, name="Asta Vik", skills=["fire"], note="brings bowls")
    making.save_template(owner_id=cast.owner.pk, event=cast.event, name="Small supper")
    model: Any = {"kit": Kit, "person": Person, "template": Template}[kind]
    before = model.objects.get()
    page = owner.post(KEEPING, {"do": f"{kind}-out", "thing": str(before.public_id)}, follow=True).content.decode()
    assert not model.objects.exists()
    assert f"{before.name} is deleted." in page
    back = reverse("keeping-back", args=[before.public_id])
    assert back in page
    owner.post(back)
    after = model.objects.get()
    kept = [field.name for field in model._meta.fields if field.name not in ("id", "changed_at", "made_at")]
    assert [getattr(after, name) for name in kept] == [getattr(before, name) for name in kept]
    assert "cannot be had back" in owner.post(back, follow=True).content.decode()


def test_a_name_that_is_taken_is_refused_in_words(owner: Client, cast: Cast, kit: Kit) -> None:
    gear.save_kit(event_id=cast.event.pk, user_id=cast.owner.pk, name="Barn")
    sent = {"do": "kit", "thing": str(kit.public_id), "name": "Barn"}
    assert "You have another one of that name." in owner.post(KEEPING, sent, follow=True).content.decode()
    owner.post(KEEPING, {**sent, "name": "Old trailer"})
    kit.refresh_from_db()
    assert kit.name == "Old trailer"


def test_things_kept_are_their_owners_alone(stranger: Client, cast: Cast, kit: Kit) -> None:
    assert "Trailer" not in stranger.get(KEEPING).content.decode()
    for do in ("kit", "kit-out"):
        answer = stranger.post(KEEPING, {"do": do, "thing": str(kit.public_id), "name": "Mine"}, follow=True)
        assert "It is not there any more." in answer.content.decode()
    kit.refresh_from_db()
    assert kit.name == "Trailer"
    person = Person.objects.create(owner=cast.owner, name="Asta Vik")
    assert stranger.post(KEEPING, {"do": "person", "thing": str(person.public_id)}).status_code == 404
