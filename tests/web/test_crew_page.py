"""The crew's page: helpers added, changed, taken out; two planners at once; the address book."""

import pytest
from django.test import Client
from django.urls import reverse

from cookout.core.planning.event import HelperId, Window
from cookout.services.crew import keep_person
from cookout.store.models import Edit, Person
from tests.store.cast import Cast
from tests.web.filling import form_of
from tests.web.form_pages import FormPage, core

HELPER, OTHER_HELPER = HelperId("wren"), HelperId("tobias")


PAGE = FormPage("event-crew")
place, opened = PAGE.place, PAGE.opened


def test_a_helper_is_added_with_skills_hours_and_an_id_of_their_own(owner: Client, cast: Cast) -> None:
    form = form_of(opened(owner, cast), "helper", "")
    sent = form.filled("helper", name="Asta Vik", skills=["fire"], more_skills="Singing, baking")
    sent[form.name_of("stretch_0_1")] = "14:30"
    sent[form.name_of("stretch_0_2")] = "19:15"
    answer = owner.post(place(cast), sent)
    assert answer.status_code == 302
    added = core(cast).crew[-1]
    assert (added.id, added.name) == ("asta-vik", "Asta Vik")
    assert added.skills == {"fire", "singing", "baking"}
    assert added.windows == (Window(14 * 60 + 30, 19 * 60 + 15),)
    assert "Asta Vik added to the crew" in owner.get(answer.headers["Location"]).content.decode()


def test_hours_past_midnight_end_on_the_next_day(owner: Client, cast: Cast) -> None:
    form = form_of(opened(owner, cast), "helper", HELPER)
    sent = form.filled("helper")
    sent[form.name_of("stretch_0_1")] = "20:00"
    sent[form.name_of("stretch_0_2")] = "01:30"
    owner.post(place(cast), sent)
    assert core(cast).helper(HELPER).windows == (Window(20 * 60, 25 * 60 + 30),)


def test_a_page_saved_as_it_stands_changes_nothing(owner: Client, cast: Cast) -> None:
    before = core(cast)
    for helper in before.crew:
        owner.post(place(cast), form_of(opened(owner, cast), "helper", helper.id).filled("helper"))
    assert core(cast) == before
    assert not Edit.objects.exists()


def test_what_is_wrong_is_said_by_the_field_and_what_was_typed_stays(owner: Client, cast: Cast) -> None:
    form = form_of(opened(owner, cast), "helper", HELPER)
    answer = owner.post(place(cast), form.filled("helper", contact="by the gate", stretch_0_1="", stretch_0_2=""))
    page = answer.content.decode()
    assert answer.status_code == 422
    assert "by the gate" in page
    assert "Say when they are there: a day, from when, until when." in page
    assert core(cast).helper(HELPER).contact != "by the gate"


def test_two_stretches_that_overlap_are_told_by_the_hours(owner: Client, cast: Cast) -> None:
    form = form_of(opened(owner, cast), "helper", HELPER)
    hours = {"stretch_0_1": "10:00", "stretch_0_2": "12:00", "stretch_1_0": "2027-06-12", "stretch_1_1": "11:00"}
    answer = owner.post(place(cast), form.filled("helper", **hours, stretch_1_2="13:00"))
    page = answer.content.decode()
    assert answer.status_code == 422
    assert "Two windows overlap." in page
    assert "11:00" in page


def test_two_planners_who_save_different_helpers_both_keep_their_work(
    owner: Client, planner: Client, cast: Cast
) -> None:
    hers, his = opened(owner, cast), opened(planner, cast)
    owner.post(place(cast), form_of(hers, "helper", HELPER).filled("helper", contact="hers"))
    planner.post(place(cast), form_of(his, "helper", OTHER_HELPER).filled("helper", contact="his"))
    assert [core(cast).helper(name).contact for name in (HELPER, OTHER_HELPER)] == ["hers", "his"]


def test_two_planners_who_save_the_same_helper_are_told_and_neither_loses_anything(
    owner: Client, planner: Client, cast: Cast
) -> None:
    hers, his = opened(owner, cast), opened(planner, cast)
    owner.post(place(cast), form_of(hers, "helper", HELPER).filled("helper", contact="at the gate, says she"))
    clashed = planner.post(place(cast), form_of(his, "helper", HELPER).filled("helper", contact="at the barn, says he"))
    page = clashed.content.decode()
    assert clashed.status_code == 422
    assert "Somebody else changed this after you opened it." in page
    assert "at the gate, says she" in page
    assert "at the barn, says he" in page
    assert core(cast).helper(HELPER).contact == "at the gate, says she"
    planner.post(place(cast), form_of(clashed, "helper", HELPER).filled("helper"))
    assert core(cast).helper(HELPER).contact == "at the barn, says he"


def test_whoever_saves_a_helper_that_was_taken_out_meanwhile_is_told_and_can_put_them_back(
    owner: Client, planner: Client, cast: Cast
) -> None:
    his = opened(planner, cast)
    owner.post(place(cast), {"do": "helper-out", "thing": OTHER_HELPER})
    told = planner.post(place(cast), form_of(his, "helper", OTHER_HELPER).filled("helper", contact="at the barn"))
    page = told.content.decode()
    assert told.status_code == 422
    assert "It was taken out. Saving again puts it back." in page
    assert "at the barn" in page
    planner.post(place(cast), form_of(told, "helper", OTHER_HELPER).filled("helper"))
    assert core(cast).helper(OTHER_HELPER).contact == "at the barn"


def test_a_helper_taken_out_comes_back_by_undo(owner: Client, cast: Cast) -> None:
    before = core(cast).helper(OTHER_HELPER)
    owner.post(place(cast), {"do": "helper-out", "thing": OTHER_HELPER})
    assert OTHER_HELPER not in [helper.id for helper in core(cast).crew]
    edit = Edit.objects.get()
    owner.post(reverse("event-undo", args=[cast.event.public_id, edit.pk]))
    assert core(cast).helper(OTHER_HELPER) == before
    assert core(cast).crew[1].id == OTHER_HELPER


def test_a_helper_goes_into_the_address_book_and_comes_from_it_to_another_event(owner: Client, cast: Cast) -> None:
    owner.post(place(cast), {"do": "keep", "thing": HELPER})
    person = Person.objects.get(owner=cast.owner)
    assert person.skills == sorted(core(cast).helper(HELPER).skills)
    form = form_of(opened(owner, cast), "from-book")
    owner.post(place(cast), form.filled("from-book", people=[str(person.public_id)]))
    added = core(cast).crew[-1]
    assert (added.name, added.skills) == (person.name, frozenset(person.skills))
    assert len({helper.id for helper in core(cast).crew}) == len(core(cast).crew)


def test_an_address_book_is_its_owners_alone(planner: Client, cast: Cast) -> None:
    person = keep_person(event_id=cast.event.pk, user_id=cast.owner.pk, helper_id=HELPER)
    assert person.name not in planner.get(reverse("keeping")).content.decode()
    sent = {"do": "from-book", "book-people": str(person.public_id), "book-hours_0": "2027-06-12"}
    crew = core(cast).crew
    answer = planner.post(place(cast), {**sent, "book-hours_1": "10:00", "book-hours_2": "12:00"})
    assert answer.status_code == 422
    assert core(cast).crew == crew


@pytest.mark.parametrize("do", ["helper", "helper-out", "from-book", "keep"])
def test_whoever_may_only_look_changes_nothing(viewer: Client, cast: Cast, do: str) -> None:
    before = core(cast)
    assert viewer.post(place(cast), {"do": do, "thing": HELPER}).status_code == 403
    assert core(cast) == before
    page = opened(viewer, cast).content.decode()
    assert '<fieldset class="looking" disabled>' in page


def test_a_button_that_there_is_not_is_not_found(owner: Client, cast: Cast) -> None:
    assert owner.post(place(cast), {"do": "everything"}).status_code == 404
