"""Two people at one event: parts saved side by side, clashes told, changes taken back."""

from dataclasses import replace

import pytest

from cookout.core.errors import EventFileError
from cookout.core.planning.event import Event as CoreEvent
from cookout.core.planning.event import HelperId
from cookout.core.planning.parts import fingerprint
from cookout.services import editing
from cookout.services.editing import Changed
from cookout.services.errors import NoSuchThingError, PartChangedError, UndoTooLateError
from cookout.store.mapping import event_of
from cookout.store.models import Edit, Event
from tests.store.cast import OWNER, STRANGER, a_user, an_event

pytestmark = pytest.mark.django_db


@pytest.fixture
def event() -> Event:
    return an_event(a_user(OWNER))


def core(event: Event) -> CoreEvent:
    event.refresh_from_db()
    return event_of(event)


def renamed(event: Event, place: int, name: str, was: str | None = None) -> Edit | None:
    helper = core(event).crew[place]
    change = Changed(("crew", helper.id), replace(helper, name=name), was)
    return editing.save_parts(event_id=event.pk, user_id=event.owner_id, changes=[change], words=f"{name} renamed")


def test_two_people_who_change_different_helpers_both_keep_their_work(event: Event) -> None:
    opened = core(event)
    marks = [fingerprint(opened, ("crew", helper.id)) for helper in opened.crew]
    renamed(event, 0, "Asta", marks[0])
    renamed(event, 1, "Bo", marks[1])
    assert [helper.name for helper in core(event).crew[:2]] == ["Asta", "Bo"]
    assert event.version == 3


def test_whoever_saves_the_same_helper_second_is_told_and_nothing_is_lost(event: Event) -> None:
    opened = core(event)
    mark = fingerprint(opened, ("crew", opened.crew[0].id))
    renamed(event, 0, "Asta", mark)
    with pytest.raises(PartChangedError) as caught:
        renamed(event, 0, "Bo", mark)
    assert caught.value.value.name == "Asta"
    assert core(event).crew[0].name == "Asta"
    renamed(event, 0, "Bo", caught.value.fingerprint)
    assert core(event).crew[0].name == "Bo"


def test_saving_what_stands_there_makes_no_new_version(event: Event) -> None:
    assert renamed(event, 0, core(event).crew[0].name) is None
    event.refresh_from_db()
    assert event.version == 1


def test_an_event_that_would_have_faults_is_not_saved(event: Event) -> None:
    dish = core(event).dishes[0]
    gone = Changed(("recipes", dish.recipe), None)
    with pytest.raises(EventFileError, match=dish.recipe):
        editing.save_parts(event_id=event.pk, user_id=None, changes=[gone], words="recipe removed")
    assert not Edit.objects.exists()
    assert core(event).recipe(dish.recipe).id == dish.recipe


def test_a_change_is_taken_back_though_others_changed_other_things_since(event: Event) -> None:
    before = core(event).crew[0].name
    edit = renamed(event, 0, "Asta")
    renamed(event, 1, "Bo")
    assert edit is not None
    editing.undo_edit(event_id=event.pk, user_id=event.owner_id, edit_id=edit.pk, words="undone")
    assert [helper.name for helper in core(event).crew[:2]] == [before, "Bo"]


def test_a_removed_helper_comes_back_with_undo(event: Event) -> None:
    helper = core(event).crew[-1]
    gone = Changed(("crew", helper.id), None)
    edit = editing.save_parts(event_id=event.pk, user_id=None, changes=[gone], words="gone")
    assert edit is not None
    assert helper.id not in [each.id for each in core(event).crew]
    editing.undo_edit(event_id=event.pk, user_id=None, edit_id=edit.pk, words="back")
    assert core(event).helper(HelperId(helper.id)) == helper


def test_what_was_changed_again_since_cannot_be_taken_back(event: Event) -> None:
    edit = renamed(event, 0, "Asta")
    renamed(event, 0, "Bo")
    assert edit is not None
    with pytest.raises(UndoTooLateError, match="Asta renamed"):
        editing.undo_edit(event_id=event.pk, user_id=None, edit_id=edit.pk, words="undone")
    assert core(event).crew[0].name == "Bo"


def test_a_change_is_taken_back_once(event: Event) -> None:
    edit = renamed(event, 0, "Asta")
    assert edit is not None
    editing.undo_edit(event_id=event.pk, user_id=None, edit_id=edit.pk, words="undone")
    with pytest.raises(NoSuchThingError):
        editing.undo_edit(event_id=event.pk, user_id=None, edit_id=edit.pk, words="undone")


def test_a_change_of_another_event_cannot_be_taken_back_here(event: Event) -> None:
    edit = renamed(event, 0, "Asta")
    other = an_event(a_user(STRANGER))
    assert edit is not None
    with pytest.raises(NoSuchThingError):
        editing.undo_edit(event_id=other.pk, user_id=None, edit_id=edit.pk, words="undone")


def test_only_so_many_changes_are_kept(event: Event, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(editing, "EDITS_KEPT", 2)
    for name in ("Asta", "Bo", "Cyrus"):
        renamed(event, 0, name)
    assert [edit.words for edit in Edit.objects.all()] == ["Cyrus renamed", "Bo renamed"]
