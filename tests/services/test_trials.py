"""What if: tried beside the plan with the real planner, kept or dropped."""

import pytest

from cookout.core.planning.changes import ChangeError
from cookout.core.planning.record import PlanRecord
from cookout.core.planning.result import Limits
from cookout.services import events, plan, revisions, trials
from cookout.services.errors import AlreadyPlanningError, NoSuchThingError, StaleTrialError
from cookout.store.mapping import event_of, record_of, refusal_of, trial_record_of
from cookout.store.models import Event, PlanRun, Revision
from tests.services.impossible import nobody_for_the_fire
from tests.store.cast import OWNER, a_user, an_event

pytestmark = pytest.mark.django_db

LIMITS = Limits(seconds=10, workers=2, seed=1)


@pytest.fixture
def event() -> Event:
    """The supper with its first plan."""
    event = an_event(a_user(OWNER))
    plan.run_planning(run_id=plan.queue_planning(event_id=event.pk, limits=LIMITS, announce=False).pk)
    event.refresh_from_db()
    return event


def tried(event: Event, **change: str | int) -> PlanRun:
    run = trials.try_change(event_id=event.pk, user_id=event.owner_id, change=change, words="tried")
    ended = plan.run_planning(run_id=run.pk)
    assert ended is not None
    assert ended.state == "done", ended.trouble
    return ended


def earlier(event: Event) -> PlanRun:
    return tried(event, kind="move_servings", minutes=-15)


def test_a_trial_leaves_event_and_plan_as_they_are(event: Event) -> None:
    before = event.current, event.document
    run = earlier(event)
    event.refresh_from_db()
    assert (event.current, event.document) == before
    after = trial_record_of(run)
    assert after is not None
    assert refusal_of(run) is None
    first = record_of(before[0]).servings[0] if before[0] is not None else None
    assert first is not None
    assert (first.due_at - after.servings[0].due_at).total_seconds() == 15 * 60


def test_a_trial_that_is_kept_is_the_plan_and_the_event(event: Event) -> None:
    run = earlier(event)
    revision = trials.keep_trial(event_id=event.pk, run_id=run.pk, user_id=event.owner_id)
    event.refresh_from_db()
    run.refresh_from_db()
    assert event.current == revision
    assert (revision.number, revision.words, revision.made_by_id) == (2, "tried", event.owner_id)
    assert revision.document == event.document
    assert event_of(event).servings[0].at == record_minutes(event, revision)
    assert run.settled_at is not None
    assert record_of(revision) == trial_record_of(run)


def record_minutes(event: Event, revision: Revision) -> int:
    due = record_of(revision).servings[0].due_at
    return round((due - event_of(event).origin).total_seconds() / 60)


def test_a_dropped_trial_changes_nothing_and_cannot_be_kept(event: Event) -> None:
    run = earlier(event)
    trials.drop_trial(event_id=event.pk, run_id=run.pk)
    with pytest.raises(NoSuchThingError):
        trials.keep_trial(event_id=event.pk, run_id=run.pk, user_id=None)
    assert Revision.objects.filter(event=event).count() == 1


def test_a_trial_of_an_event_that_has_changed_since_is_stale(event: Event) -> None:
    run = earlier(event)
    text = event.document.replace('name = "Supper under', 'name = "Late supper under')
    assert text != event.document
    events.save_document(event_id=event.pk, document=text, version=event.version)
    with pytest.raises(StaleTrialError):
        trials.keep_trial(event_id=event.pk, run_id=run.pk, user_id=None)


def test_an_impossible_trial_says_why_and_cannot_be_kept(event: Event) -> None:
    for helper in event_of(event).crew[:-1]:
        event.refresh_from_db()
        run = tried(event, kind="remove_helper", helper=helper.id)
        if refusal_of(run) is not None:
            break
        trials.keep_trial(event_id=event.pk, run_id=run.pk, user_id=None)
    refusal = refusal_of(run)
    assert refusal is not None
    assert refusal.obstacles
    assert trial_record_of(run) is None
    with pytest.raises(NoSuchThingError):
        trials.keep_trial(event_id=event.pk, run_id=run.pk, user_id=None)


def test_a_change_that_does_not_fit_starts_nothing(event: Event) -> None:
    with pytest.raises(ChangeError):
        trials.try_change(
            event_id=event.pk, user_id=None, change={"kind": "remove_helper", "helper": "nobody"}, words=""
        )
    assert PlanRun.objects.filter(purpose="trial").count() == 0


def test_one_run_an_event_at_a_time(event: Event) -> None:
    change: dict[str, str | int] = {"kind": "move_servings", "minutes": -15}
    trials.try_change(event_id=event.pk, user_id=None, change=dict(change), words="one")
    with pytest.raises(AlreadyPlanningError):
        trials.try_change(event_id=event.pk, user_id=None, change=dict(change), words="two")


def test_planning_again_is_a_trial_and_the_first_plan_is_not(event: Event) -> None:
    again = trials.ask_for_plan(event_id=event.pk, user_id=None, words="again")
    assert (again.purpose, again.document) == ("trial", event.document)
    plan.run_planning(run_id=again.pk)
    kept = trials.keep_trial(event_id=event.pk, run_id=again.pk, user_id=None)
    event.refresh_from_db()
    assert (kept.number, event.version) == (2, 1)


def test_planning_from_scratch_pays_no_regard_to_the_plan_before(event: Event) -> None:
    near = trials.ask_for_plan(event_id=event.pk, user_id=None, words="again")
    plan.run_planning(run_id=near.pk)
    fresh = trials.ask_for_plan(event_id=event.pk, user_id=None, words="anew", fresh=True)
    plan.run_planning(run_id=fresh.pk)
    levels = [[level.name for level in found.levels] for run in (near, fresh) if (found := result_of(run))]
    assert [names[-1] for names in levels] == ["changes", "fair_shares"]


def result_of(run: PlanRun) -> PlanRecord | None:
    run.refresh_from_db()
    return trial_record_of(run)


def test_a_run_under_way_puts_down_the_outline_of_its_best_plan(event: Event) -> None:
    run = earlier(event)
    assert run.sketch
    names = [name for name, _ in run.sketch]
    assert {recipe.name for recipe in event_of(event).recipes} <= set(names)
    assert all(start < end and kind in ("work", "heat", "wait") for _, bars in run.sketch for start, end, kind in bars)


def test_an_earlier_revision_comes_back_as_the_newest_with_its_event(event: Event) -> None:
    first, text = event.current, event.document
    assert first is not None
    trials.keep_trial(event_id=event.pk, run_id=earlier(event).pk, user_id=None)
    back = revisions.bring_back(event_id=event.pk, number=1, user_id=event.owner_id, words="brought back")
    event.refresh_from_db()
    assert (back.number, event.current) == (3, back)
    assert back.payload == first.payload
    from cookout.core.eventfile import read_event

    assert event_of(event) == read_event(text, "supper.toml")
    assert Revision.objects.filter(event=event).count() == 3


def test_a_revision_can_be_called_something_and_its_plan_stays(event: Event) -> None:
    revisions.name_revision(event_id=event.pk, number=1, name="  With both tables ")
    named = Revision.objects.get(event=event, number=1)
    assert event.current is not None
    assert (named.name, named.payload) == ("With both tables", event.current.payload)
    with pytest.raises(NoSuchThingError):
        revisions.name_revision(event_id=event.pk, number=9, name="x")


def test_a_way_out_is_taken_with_its_words_and_planned_at_once() -> None:
    event, run = refused()
    fresh = trials.take_way_out(run_id=run.pk, number=0, user_id=event.owner_id, words="planned again")
    event.refresh_from_db()
    assert (fresh.purpose, fresh.document) == (PlanRun.Purpose.PLAN, event.document)
    edit = event.edits.get()
    assert edit.by_id == event.owner_id
    assert edit.words != "Event file saved"


def test_a_way_out_changes_nothing_where_it_cannot_be_planned() -> None:
    event, run = refused()
    plan.queue_planning(event_id=event.pk, announce=False)
    before = event.document
    with pytest.raises(AlreadyPlanningError):
        trials.take_way_out(run_id=run.pk, number=0, user_id=event.owner_id, words="planned again")
    event.refresh_from_db()
    assert event.document == before
    assert not event.edits.exists()


def refused() -> tuple[Event, PlanRun]:
    """An impossible event with the run that said so."""
    event = events.create_event(owner_id=a_user(OWNER).pk, document=nobody_for_the_fire())
    run = plan.queue_planning(event_id=event.pk, limits=LIMITS, announce=False)
    plan.run_planning(run_id=run.pk)
    return event, run
