"""Planning from the wish to its end, with the real planner."""

import threading
from collections.abc import Callable
from datetime import timedelta

import pytest
from django.db import connection
from django.utils import timezone
from pytest_django import DjangoCaptureOnCommitCallbacks

from cookout.core.errors import EventFileError
from cookout.core.planning.result import Limits, Progress, Status
from cookout.services import events, plan
from cookout.services.errors import AlreadyPlanningError, NoSuchThingError, StaleOfferError
from cookout.services.signals import plan_run_queued
from cookout.store.mapping import record_of, refusal_of
from cookout.store.models import Event, PlanRun
from tests.services.impossible import nobody_for_the_fire
from tests.store.cast import OWNER, a_user, an_event, example_text

pytestmark = pytest.mark.django_db

LIMITS = Limits(seconds=10, workers=2, seed=1)


@pytest.fixture
def event() -> Event:
    return an_event(a_user(OWNER))


@pytest.fixture
def slow_event() -> Event:
    """One that takes the planner all the time that it is given."""
    text = example_text("festival")
    return events.create_event(owner_id=a_user(OWNER).pk, document=text, file_name="festival.toml")


def queued(event: Event, limits: Limits = LIMITS) -> PlanRun:
    return plan.queue_planning(event_id=event.pk, limits=limits, announce=False)


def carried_out(event: Event, limits: Limits = LIMITS, tell: Callable[[Progress], None] | None = None) -> PlanRun:
    run = plan.run_planning(run_id=queued(event, limits).pk, tell=tell)
    assert run is not None
    return run


def test_a_run_ends_in_a_revision_that_pages_can_read(event: Event) -> None:
    run = carried_out(event)
    assert (run.state, run.trouble, run.record) == ("done", "", None)
    assert run.revision is not None
    record = record_of(run.revision)
    assert record.status is Status.PROVED_BEST
    assert (run.revision.number, run.revision.document) == (1, event.document)
    event.refresh_from_db()
    assert event.current == run.revision
    assert run.progress["found"] >= 1


def test_revisions_are_numbered_within_their_event(event: Event) -> None:
    numbers = [run.revision.number for run in (carried_out(event), carried_out(event)) if run.revision]
    assert numbers == [1, 2]


def test_an_event_is_planned_once_at_a_time(event: Event) -> None:
    first = queued(event)
    with pytest.raises(AlreadyPlanningError):
        queued(event)
    plan.cancel_planning(run_id=first.pk)
    assert queued(event).pk != first.pk


def test_a_run_plans_the_event_as_it_stood_when_asked(event: Event) -> None:
    run = queued(event)
    events.save_document(event_id=event.pk, document=event.document + "# later\n", version=1)
    ended = plan.run_planning(run_id=run.pk)
    assert ended is not None
    assert ended.revision is not None
    assert ended.revision.document == event.document


@pytest.mark.django_db(transaction=True)
def test_of_two_workers_with_the_same_run_one_plans_and_the_other_leaves_it(event: Event) -> None:
    run, answers = queued(event), list[PlanRun | None]()
    gate = threading.Barrier(2)

    def work() -> None:
        try:
            gate.wait(timeout=10)
            answers.append(plan.run_planning(run_id=run.pk))
        finally:
            connection.close()

    workers = [threading.Thread(target=work) for _ in range(2)]
    for worker in workers:
        worker.start()
    for worker in workers:
        worker.join(timeout=60)
    assert sorted(answer is None for answer in answers) == [False, True]
    assert event.revisions.count() == 1


def test_stopping_keeps_the_best_so_far(slow_event: Event) -> None:
    def stop(_: Progress) -> None:
        plan.stop_planning(run_id=PlanRun.objects.get().pk)

    run = carried_out(slow_event, Limits(seconds=60, workers=1, seed=1), tell=stop)
    assert run.state == "done"
    assert run.revision is not None
    assert run.started_at is not None
    assert run.ended_at is not None
    assert run.ended_at - run.started_at < timedelta(seconds=30)


def test_cancelling_throws_the_plan_away(slow_event: Event) -> None:
    def cancel(_: Progress) -> None:
        plan.cancel_planning(run_id=PlanRun.objects.get().pk)

    run = carried_out(slow_event, Limits(seconds=60, workers=1, seed=1), tell=cancel)
    assert (run.state, run.revision) == ("cancelled", None)
    assert not slow_event.revisions.exists()


def test_a_run_cancelled_while_it_waits_is_never_started(event: Event) -> None:
    run = queued(event)
    plan.cancel_planning(run_id=run.pk)
    assert plan.run_planning(run_id=run.pk) is None
    run.refresh_from_db()
    assert (run.state, run.started_at) == ("cancelled", None)


def test_a_finished_run_cannot_be_stopped_or_cancelled(event: Event) -> None:
    run = carried_out(event)
    plan.cancel_planning(run_id=run.pk)
    plan.stop_planning(run_id=run.pk)
    run.refresh_from_db()
    assert (run.state, run.wish) == ("done", "none")


def test_an_impossible_event_gives_reasons_and_a_way_out_that_works() -> None:
    event = events.create_event(owner_id=a_user(OWNER).pk, document=nobody_for_the_fire())
    run = carried_out(event)
    refusal = refusal_of(run)
    assert (run.state, run.revision) == ("done", None)
    assert refusal is not None
    assert refusal.status is Status.IMPOSSIBLE
    assert refusal.obstacles
    assert refusal.ways_out
    changed = plan.apply_way_out(run_id=run.pk, number=0)
    assert changed.version == 2
    assert carried_out(changed).revision is not None


def test_a_way_out_of_an_event_that_has_changed_is_refused() -> None:
    event = events.create_event(owner_id=a_user(OWNER).pk, document=nobody_for_the_fire())
    run = carried_out(event)
    events.save_document(event_id=event.pk, document=event.document + "\n# changed\n", version=1)
    with pytest.raises(StaleOfferError):
        plan.apply_way_out(run_id=run.pk, number=0)
    with pytest.raises(NoSuchThingError):
        plan.apply_way_out(run_id=run.pk, number=99)


def test_a_document_that_cannot_be_read_any_more_fails_with_its_faults(event: Event) -> None:
    run = queued(event)
    PlanRun.objects.update(document=event.document.replace("America/Denver", "Nowhere/Land"))
    ended = plan.run_planning(run_id=run.pk)
    assert ended is not None
    assert ended.state == "failed"
    assert "Nowhere/Land" in ended.trouble


def test_an_unexpected_error_is_logged_and_the_user_is_told(
    event: Event, monkeypatch: pytest.MonkeyPatch, caplog: pytest.LogCaptureFixture
) -> None:
    def broken(*_: object) -> None:
        raise ZeroDivisionError("inside the planner")

    monkeypatch.setattr("cookout.services.runner.plan_event", broken)
    run = carried_out(event)
    assert (run.state, run.trouble) == ("failed", plan.UNEXPECTED)
    assert "ZeroDivisionError: inside the planner" in caplog.text
    monkeypatch.undo()
    assert carried_out(event).state == "done"


def test_a_run_whose_worker_died_is_ended_and_frees_its_event(event: Event) -> None:
    run = queued(event)
    now = timezone.now()
    PlanRun.objects.update(state="running", beat_at=now - timedelta(minutes=3))
    assert plan.end_silent_runs(silent_minutes=5) == 0
    assert plan.end_silent_runs(silent_minutes=2) == 1
    run.refresh_from_db()
    assert (run.state, run.trouble) == ("failed", plan.SILENT)
    assert queued(event).state == "queued"


def test_asking_for_a_plan_ends_a_run_whose_process_is_gone_so_that_it_bars_the_way_no_longer(event: Event) -> None:
    lost = queued(event)
    PlanRun.objects.filter(pk=lost.pk).update(state="running", beat_at=timezone.now() - timedelta(minutes=3))
    taken = queued(event)
    assert taken.state == "queued"
    PlanRun.objects.filter(pk=taken.pk).update(queued_at=timezone.now() - timedelta(minutes=plan.QUEUED_MINUTES + 1))
    assert queued(event).state == "queued"
    assert list(PlanRun.objects.filter(state="failed").order_by("pk")) == [lost, taken]


def test_listeners_hear_of_a_run_after_the_commit(
    event: Event, django_capture_on_commit_callbacks: DjangoCaptureOnCommitCallbacks, monkeypatch: pytest.MonkeyPatch
) -> None:
    heard: list[int] = []

    def listen(run_id: int, **_: object) -> None:
        heard.append(run_id)

    monkeypatch.setattr(plan_run_queued, "receivers", [])
    monkeypatch.setattr(plan_run_queued, "sender_receivers_cache", {})
    plan_run_queued.connect(listen)
    with django_capture_on_commit_callbacks(execute=True):
        run = plan.queue_planning(event_id=event.pk)
        assert heard == []
    assert heard == [run.pk]
    usual = plan.usual_limits()
    assert (run.limit_seconds, run.limit_workers, run.limit_seed) == (usual.seconds, usual.workers, usual.seed)


def test_a_listener_that_fails_does_not_leave_the_run_waiting(
    event: Event, django_capture_on_commit_callbacks: DjangoCaptureOnCommitCallbacks, monkeypatch: pytest.MonkeyPatch
) -> None:
    def fail(**_: object) -> None:
        raise ConnectionError("no broker")

    monkeypatch.setattr(plan_run_queued, "receivers", [])
    monkeypatch.setattr(plan_run_queued, "sender_receivers_cache", {})
    plan_run_queued.connect(fail, weak=False)
    with django_capture_on_commit_callbacks(execute=True):
        run = plan.queue_planning(event_id=event.pk)
    run.refresh_from_db()
    assert (run.state, run.trouble) == ("failed", plan.UNHEARD)


def test_an_event_file_is_planned_without_a_row() -> None:
    outcome = plan.plan_file(text=example_text(), file_name="supper.toml", limits=LIMITS)
    assert outcome.record.status is Status.PROVED_BEST
    assert not PlanRun.objects.exists()
    with pytest.raises(EventFileError, match=r"supper\.toml"):
        plan.plan_file(text="nothing = [", file_name="supper.toml", limits=LIMITS)


def test_a_deleted_event_cannot_be_planned(event: Event) -> None:
    gone = event.pk
    event.delete()
    with pytest.raises(NoSuchThingError):
        plan.queue_planning(event_id=gone)
