"""Making, saving and deleting events."""

import pytest

from cookout.core.errors import EventFileError
from cookout.services import events
from cookout.services.errors import EventChangedError, NoSuchThingError
from cookout.store.models import Event, Link, PlanRun, Revision
from tests.store.cast import OWNER, STRANGER, a_user, an_event, example_text, the_cast

pytestmark = pytest.mark.django_db


def test_a_new_event_takes_name_zone_and_servings_from_its_file() -> None:
    event = an_event(a_user(OWNER))
    assert (event.key, event.name, event.timezone) == ("supper", "Supper under the box elder", "America/Denver")
    assert [serving["at"] for serving in event.servings] == ["2027-06-12T18:00:00-06:00"]
    assert event.version == 1


def test_a_second_event_with_the_same_id_is_refused_with_a_remedy() -> None:
    owner = a_user(OWNER)
    an_event(owner)
    with pytest.raises(EventFileError, match=r"id of its own") as caught:
        events.create_event(owner_id=owner.pk, document=example_text())
    assert caught.value.faults[0].where == "event.toml: id"
    assert Event.objects.count() == 1


def test_two_people_may_use_the_same_id() -> None:
    an_event(a_user(OWNER))
    an_event(a_user(STRANGER))
    assert Event.objects.count() == 2


def test_every_fault_of_a_file_comes_at_once_and_nothing_is_stored() -> None:
    owner = a_user(OWNER)
    faulty = (
        example_text().replace("America/Denver", "Nowhere/Land").replace('elevation = "5,200 ft"', 'elevation = "x"')
    )
    with pytest.raises(EventFileError) as caught:
        events.create_event(owner_id=owner.pk, document=faulty, file_name="mine.toml")
    said = str(caught.value)
    assert len(caught.value.faults) >= 2
    assert "mine.toml" in said
    assert "timezone" in said
    assert "elevation" in said
    assert not Event.objects.exists()


def test_saving_stores_the_text_and_counts_the_version() -> None:
    event = an_event(a_user(OWNER))
    text = event.document.replace("Supper under the box elder", "Late supper").replace("18:00", "18:15")
    saved = events.save_document(event_id=event.pk, document=text, version=1)
    assert (saved.name, saved.version, saved.document) == ("Late supper", 2, text)
    assert saved.servings[0]["at"] == "2027-06-12T18:15:00-06:00"
    assert saved.changed_at > event.changed_at


def test_a_save_from_an_older_version_is_refused_and_tells_what_is_stored() -> None:
    event = an_event(a_user(OWNER))
    hers = event.document + "# hers\n"
    events.save_document(event_id=event.pk, document=hers, version=1)
    with pytest.raises(EventChangedError) as caught:
        events.save_document(event_id=event.pk, document=event.document + "# his\n", version=1)
    assert (caught.value.stored, caught.value.version) == (hers, 2)
    event.refresh_from_db()
    assert event.document == hers


def test_saving_under_the_id_of_another_own_event_is_refused() -> None:
    owner = a_user(OWNER)
    an_event(owner)
    other_text = example_text().replace('id = "supper"', 'id = "second"', 1)
    other = events.create_event(owner_id=owner.pk, document=other_text)
    with pytest.raises(EventFileError, match="another event"):
        events.save_document(event_id=other.pk, document=example_text(), version=1)
    other.refresh_from_db()
    assert (other.key, other.version) == ("second", 1)


def test_an_example_that_is_there_already_stays_as_its_owner_changed_it() -> None:
    owner = a_user(OWNER)
    event, made = events.load_example(owner_id=owner.pk, document=example_text(), file_name="supper.toml")
    changed = event.document + "# mine now\n"
    events.save_document(event_id=event.pk, document=changed, version=1)
    again, made_again = events.load_example(owner_id=owner.pk, document=example_text(), file_name="supper.toml")
    assert (made, made_again) == (True, False)
    assert again.document == changed
    assert again.is_example


def test_an_example_that_was_thrown_away_is_had_back() -> None:
    owner = a_user(OWNER)
    event, _ = events.load_example(owner_id=owner.pk, document=example_text(), file_name="supper.toml")
    events.delete_event(event_id=event.pk)
    again, made = events.load_example(owner_id=owner.pk, document=example_text(), file_name="supper.toml")
    again.refresh_from_db()
    assert (again.pk, made, again.deleted_at) == (event.pk, False, None)


def test_deleting_an_event_for_good_ends_its_plans_and_links() -> None:
    cast = the_cast()
    events.delete_event(event_id=cast.event.pk)
    with pytest.raises(NoSuchThingError):
        events.delete_event(event_id=cast.event.pk)
    assert Revision.objects.exists()
    events.erase_event(owner_id=cast.owner.pk, public_id=cast.event.public_id)
    assert not any(rows.objects.exists() for rows in (Event, Revision, Link, PlanRun))
