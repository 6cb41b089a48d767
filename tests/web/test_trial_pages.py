"""What if, seen in pages: suggestions, small forms, a trial's difference, keeping and dropping, revisions compared."""

import re

import pytest
from django.test import Client
from django.urls import reverse

from cookout.core.planning.result import Limits
from cookout.services import plan, trials
from cookout.store.models import Event, PlanRun
from tests.store.cast import Cast
from tests.web.looking import unmasked

LIMITS = Limits(seconds=10, workers=2, seed=1)


@pytest.fixture
def planned(cast: Cast) -> Event:
    """The cast's event with a real plan, since trials are held against it."""
    run = plan.queue_planning(event_id=cast.event.pk, limits=LIMITS, announce=False)
    plan.run_planning(run_id=run.pk)
    cast.event.refresh_from_db()
    return cast.event


@pytest.fixture
def tried(planned: Event) -> PlanRun:
    """The supper a quarter of an hour earlier."""
    change: dict[str, str | int] = {"kind": "move_servings", "minutes": -15}
    run = trials.try_change(event_id=planned.pk, user_id=planned.owner_id, change=change, words="15 min earlier")
    ended = plan.run_planning(run_id=run.pk)
    assert ended is not None
    return ended


def place(name: str, event: Event, *rest: object) -> str:
    return reverse(name, args=[event.public_id, *rest])


def test_the_page_suggests_trials_and_each_can_be_started(owner: Client, planned: Event) -> None:
    page = unmasked(owner.get(place("trials", planned)))
    found = re.findall(r'name="kind" value="(\w+)"', page)
    assert {"add_gear", "remove_helper", "more_people", "set_wind", "move_servings"} <= set(found)
    answer = owner.post(place("trial-start", planned), {"kind": "move_servings", "minutes": "-15"})
    run = PlanRun.objects.get(event=planned, purpose="trial")
    assert answer.headers["Location"] == place("trial", planned, run.pk)
    assert run.change == {"kind": "move_servings", "minutes": -15}
    assert run.asked_by_id == planned.owner_id


def test_a_form_that_is_wrong_keeps_what_was_typed_and_says_how_to_mend_it(owner: Client, planned: Event) -> None:
    answer = owner.post(place("trial-start", planned), {"kind": "set_wind", "wind": "quite windy"})
    page = unmasked(answer)
    assert answer.status_code == 422
    assert 'value="quite windy"' in page
    assert "errorlist" in page
    assert not PlanRun.objects.filter(purpose="trial").exists()


def test_an_unknown_kind_of_trial_is_not_there(owner: Client, planned: Event) -> None:
    assert owner.post(place("trial-start", planned), {"kind": "free_beer"}).status_code == 404


def test_a_trial_shows_what_would_change_in_words_in_a_drawing_and_in_tables(
    owner: Client, planned: Event, tried: PlanRun
) -> None:
    for by in ("helper", "dish", "gear"):
        page = unmasked(owner.get(place("trial", planned, tried.pk), {"by": by}))
        assert "15 min earlier" in page
        assert page.count("<svg") >= 2
        assert "Keep: make this the plan" in page
        assert "Task by task" in page


def test_keeping_makes_it_the_plan_and_says_so(owner: Client, planned: Event, tried: PlanRun) -> None:
    answer = owner.post(place("trial-keep", planned, tried.pk), follow=True)
    planned.refresh_from_db()
    assert planned.current is not None
    assert f"revision {planned.current.number} is the plan now" in unmasked(answer)
    assert planned.current.words == "15 min earlier"
    assert "Kept as revision" in unmasked(owner.get(place("trial", planned, tried.pk)))


def test_dropping_changes_nothing(owner: Client, planned: Event, tried: PlanRun) -> None:
    current = planned.current_id
    owner.post(place("trial-drop", planned, tried.pk))
    planned.refresh_from_db()
    assert planned.current_id == current
    assert "Dropped" in unmasked(owner.get(place("trial", planned, tried.pk)))


def test_a_stale_trial_offers_to_be_tried_again(owner: Client, planned: Event, tried: PlanRun) -> None:
    Event.objects.filter(pk=planned.pk).update(document=planned.document + "\n# later\n")
    page = unmasked(owner.get(place("trial", planned, tried.pk)))
    assert "can no longer be kept" in page
    assert "Keep: make this the plan" not in page
    answer = owner.post(place("trial-again", planned, tried.pk))
    newest = PlanRun.objects.filter(purpose="trial").first()
    assert newest is not None
    assert answer.headers["Location"] == place("trial", planned, newest.pk)


def test_planning_again_leads_to_a_trial_and_the_overview_points_at_it(owner: Client, planned: Event) -> None:
    answer = owner.post(place("plan-start", planned))
    run = PlanRun.objects.get(purpose="trial")
    assert answer.headers["Location"] == place("trial", planned, run.pk)
    plan.run_planning(run_id=run.pk)
    assert "A new plan waits to be looked at." in unmasked(owner.get(place("event", planned)))


def test_two_revisions_are_compared_and_one_is_brought_back(owner: Client, planned: Event, tried: PlanRun) -> None:
    owner.post(place("trial-keep", planned, tried.pk))
    planned.refresh_from_db()
    assert planned.current is not None
    last = planned.current.number
    page = unmasked(owner.get(place("revisions-compared", planned), {"before": last - 1, "after": last}))
    assert "What would change" in page
    owner.post(place("revision-name", planned, last), {"name": "Early supper"})
    assert "Early supper" in unmasked(owner.get(place("revisions", planned)))
    answer = owner.post(place("revision-back", planned, last - 1), follow=True)
    assert f"revision {last + 1}" in unmasked(answer)


def test_revisions_that_are_not_there_are_asked_for_again(owner: Client, planned: Event) -> None:
    answer = owner.get(place("revisions-compared", planned), {"before": "x", "after": "99"}, follow=True)
    assert "Choose two revisions to compare." in unmasked(answer)


def test_after_a_dropped_trial_the_event_can_still_be_planned(owner: Client, planned: Event, tried: PlanRun) -> None:
    owner.post(place("trial-drop", planned, tried.pk))
    page = unmasked(owner.get(place("event", planned)))
    assert f'action="{place("plan-start", planned)}"' in page
    assert "waits to be looked at" not in page


def test_a_trial_without_a_plan_can_be_dropped_tried_again_or_tried_with_a_way_out(
    owner: Client, planned: Event
) -> None:
    change: dict[str, str | int] = {"kind": "move_servings", "minutes": -300}
    run = trials.try_change(event_id=planned.pk, user_id=planned.owner_id, change=change, words="5 h earlier")
    plan.run_planning(run_id=run.pk)
    page = unmasked(owner.get(place("trial", planned, run.pk)))
    assert "What stands in the way" in page
    assert place("trial-drop", planned, run.pk) in page
    assert place("trial-again", planned, run.pk) in page
    assert "A trial ended without a plan." in unmasked(owner.get(place("event", planned)))
    way = place("way-out", planned, run.pk, 0)
    assert way in page
    answer = owner.post(way)
    second = PlanRun.objects.filter(purpose="trial").first()
    assert second is not None
    assert answer.headers["Location"] == place("trial", planned, second.pk)
    assert second.words.startswith("5 h earlier ")
    ended = plan.run_planning(run_id=second.pk)
    assert ended is not None
    assert owner.post(place("trial-keep", planned, second.pk)).headers["Location"] == place("event", planned)
