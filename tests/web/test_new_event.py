"""New events: from blank, from one before, from a template, from a worked example; and throwing them away."""

from datetime import timedelta

import pytest
from django.test import Client
from django.urls import reverse
from django.utils import timezone

from cookout.core.planning.wording import moment
from cookout.services import events
from cookout.store.mapping import event_of
from cookout.store.models import Event, Template
from tests.store.cast import STRANGER, Cast
from tests.web.filling import form_of

NEW = reverse("event-new")


def newest() -> Event:
    event = Event.objects.order_by("-pk").first()
    assert event is not None
    return event


def test_an_event_from_blank_leads_on_to_its_menu(stranger: Client, cast: Cast) -> None:
    form = form_of(stranger.get(NEW), "blank")
    typed = {"name": "First supper", "day": "2027-08-01", "place": "By the ford", "timezone": "Europe/Oslo"}
    answer = stranger.post(NEW, form.filled("blank", **typed, units="metric", at="17:30", people="12"))
    made = newest()
    assert answer.headers["Location"] == reverse("event-menu", args=[made.public_id])
    event = event_of(made)
    assert (event.id, event.name, event.place.name, event.units) == (
        "first-supper",
        "First supper",
        "By the ford",
        "metric",
    )
    assert [(f"{moment(event, each.at):%Y-%m-%d %H:%M}", each.people) for each in event.servings] == [
        ("2027-08-01 17:30", 12)
    ]
    for page in ("event-menu", "event-day", "event-gear", "event-crew", "event-show", "event"):
        assert stranger.get(reverse(page, args=[made.public_id])).status_code == 200


def test_what_is_wrong_is_said_by_the_field_and_stays_as_typed(stranger: Client, cast: Cast) -> None:
    form = form_of(stranger.get(NEW), "blank")
    typed = {"name": "First supper", "day": "1905-08-01", "place": "By the ford", "timezone": "Middle/Earth"}
    answer = stranger.post(NEW, form.filled("blank", **typed, at="17:30"))
    page = answer.content.decode()
    assert answer.status_code == 422
    for words in ("Write a year from 2000", "There is no such time zone.", "Say for how many people", "Middle/Earth"):
        assert words in page
    assert not Event.objects.filter(owner=cast.stranger).exists()


def test_a_copy_is_made_on_another_day_under_an_id_of_its_own(owner: Client, cast: Cast) -> None:
    form = form_of(owner.get(NEW), "copy")
    source = f"event:{cast.event.public_id}"
    owner.post(NEW, form.filled("copy", source=source, day="2027-09-05", name=""))
    copied, old = event_of(newest()), event_of(cast.event)
    assert (copied.id, copied.name) == ("supper-under-the-box-elder", old.name)
    assert [f"{moment(copied, each.at):%Y-%m-%d %H:%M}" for each in copied.servings] == ["2027-09-05 18:00"]
    assert (copied.dishes, copied.gear, copied.recipes) == (old.dishes, old.gear, old.recipes)
    assert newest().owner_id == cast.owner.pk


def test_whoever_sees_an_event_may_make_one_like_it_and_others_may_not(
    viewer: Client, stranger: Client, cast: Cast
) -> None:
    sent = {"do": "copy", "copy-source": f"event:{cast.event.public_id}", "copy-day": "2027-09-05"}
    assert stranger.post(NEW, sent).status_code == 422
    assert viewer.post(NEW, sent).status_code == 302
    assert newest().owner_id == cast.viewer.pk


def test_an_event_is_kept_as_a_template_and_made_again_from_it(owner: Client, stranger: Client, cast: Cast) -> None:
    owner.post(reverse("event-template", args=[cast.event.public_id]), {"name": "Small supper"})
    template = Template.objects.get(owner=cast.owner)
    sent = {"do": "copy", "copy-source": f"template:{template.public_id}", "copy-day": "2028-02-29"}
    assert stranger.post(NEW, sent).status_code == 422
    owner.post(NEW, {**sent, "copy-name": "Leap supper"})
    made = event_of(newest())
    assert (made.id, made.name, f"{moment(made, made.servings[0].at):%Y-%m-%d}") == (
        "leap-supper",
        "Leap supper",
        "2028-02-29",
    )


@pytest.mark.parametrize("example", ["supper", "demonstration", "festival"])
def test_a_worked_example_is_one_click_away_and_ones_own(owner: Client, cast: Cast, example: str) -> None:
    for _again in range(2):
        assert owner.post(NEW, {"do": "example", "example": example}).status_code == 302
        assert (newest().owner_id, newest().is_example) == (cast.owner.pk, True)
    assert len({event.key for event in Event.objects.filter(owner=cast.owner)}) == 3


def test_an_example_that_there_is_not_is_told(owner: Client, cast: Cast) -> None:
    answer = owner.post(NEW, {"do": "example", "example": "../../secret"}, follow=True)
    assert "There is no such example." in answer.content.decode()


def test_an_event_thrown_away_is_gone_for_everyone_and_comes_back_with_its_links(
    owner: Client, planner: Client, nobody: Client, cast: Cast
) -> None:
    page, sheet = reverse("event", args=[cast.event.public_id]), reverse("call-sheet", args=[cast.helper_token])
    feed = reverse("feed", args=[cast.event_token])
    start = owner.post(reverse("event-delete", args=[cast.event.public_id]), follow=True).content.decode()
    assert f"{cast.event.name} is thrown away." in start
    assert reverse("event-back", args=[cast.event.public_id]) in start
    assert [owner.get(page).status_code, planner.get(page).status_code] == [404, 404]
    assert [nobody.get(sheet).status_code, nobody.get(feed).status_code] == [404, 404]
    owner.post(reverse("event-back", args=[cast.event.public_id]))
    assert [owner.get(page).status_code, planner.get(page).status_code] == [200, 200]
    assert [nobody.get(sheet).status_code, nobody.get(feed).status_code] == [200, 200]


def test_an_event_thrown_away_can_be_deleted_for_good(owner: Client, cast: Cast) -> None:
    owner.post(reverse("event-delete", args=[cast.event.public_id]))
    owner.post(reverse("event-erase", args=[cast.event.public_id]))
    assert not Event.objects.filter(pk=cast.event.pk).exists()


def test_what_was_thrown_away_goes_for_good_after_its_days(cast: Cast, settings: pytest.FixtureRequest) -> None:
    settings.COOKOUT_KEEP_DELETED_DAYS = 3  # type: ignore[attr-defined]
    events.delete_event(event_id=cast.event.pk)
    assert events.purge_deleted(now=timezone.now() + timedelta(days=2)) == 0
    assert events.purge_deleted(now=timezone.now() + timedelta(days=4)) == 1
    assert not Event.objects.filter(pk=cast.event.pk).exists()


def test_the_start_page_tells_whose_an_event_is(planner: Client, viewer: Client, cast: Cast) -> None:
    for client, words in ((planner, "you plan along"), (viewer, "you may look")):
        page = client.get(reverse("start")).content.decode()
        assert words in page
        assert cast.owner.email in page


def test_a_first_run_hint_is_put_away(owner: Client, cast: Cast) -> None:
    assert "From the hour of eating, backward" in owner.get(reverse("start")).content.decode()
    owner.post(reverse("hint-away", args=["start"]))
    assert "From the hour of eating, backward" not in owner.get(reverse("start")).content.decode()


def test_changes_are_listed_with_who_made_them_and_taken_back_once(owner: Client, planner: Client, cast: Cast) -> None:
    gear = reverse("event-gear", args=[cast.event.public_id])
    planner.post(gear, {"do": "usual", "what": "oven-14"})
    log = owner.get(reverse("event-edits", args=[cast.event.public_id])).content.decode()
    assert "14-inch oven added" in log
    assert cast.planner.email in log
    edit = cast.event.edits.get()
    undo = reverse("event-undo", args=[cast.event.public_id, edit.pk])
    back = owner.post(undo, headers={"referer": f"http://testserver{gear}"})
    assert back.headers["Location"] == gear
    again = owner.post(undo, headers={"referer": "http://elsewhere.example/x"}, follow=True)
    assert "There is no such change to take back" in again.content.decode()
    assert STRANGER not in log


def test_a_saved_event_file_is_among_the_changes_and_is_taken_back(owner: Client, cast: Cast) -> None:
    before = event_of(cast.event)
    text = cast.event.document.replace(before.name, "Supper, renamed")
    owner.post(
        reverse("event-document", args=[cast.event.public_id]), {"document": text, "version": cast.event.version}
    )
    cast.event.refresh_from_db()
    assert event_of(cast.event).name == "Supper, renamed"
    edit = cast.event.edits.get()
    assert (edit.by, edit.words) == (cast.owner, "Event file saved")
    owner.post(reverse("event-undo", args=[cast.event.public_id, edit.pk]))
    cast.event.refresh_from_db()
    assert event_of(cast.event) == before
