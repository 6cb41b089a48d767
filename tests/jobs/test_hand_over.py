"""A queued run is carried out: in a thread without a broker, by a worker with one."""

import os
import subprocess
import sys
import threading
import time
from collections.abc import Callable, Iterator
from datetime import datetime, timedelta
from pathlib import Path

import pytest
from django.conf import settings as project
from django.utils import timezone
from kombu import pools
from pytest_django import Settings

from config import celery_app
from cookout.core.planning.result import Limits
from cookout.jobs.hand_over import THREAD_NAME, hand_over_run
from cookout.jobs.tasks import carry_out_plan_run, end_silent_plan_runs, forget_deleted
from cookout.services import accounts, events, plan
from cookout.store.models import Event, PlanRun
from tests.jobs.events import ROOT, SUPPER
from tests.servers import free_port

pytestmark = pytest.mark.django_db(transaction=True)

BRIEF = Limits(seconds=5.0, workers=1, seed=3)


def wait_until(true: Callable[[], bool], seconds: float = 60.0) -> None:
    """Return once it is true; fail after that long."""
    until = time.monotonic() + seconds
    while not true():
        assert time.monotonic() < until, f"not true within {seconds} s"
        time.sleep(0.05)


def join_runs() -> None:
    """Wait for every thread that carries out a run."""
    for thread in threading.enumerate():
        if thread.name.startswith(THREAD_NAME.format("")):
            thread.join(timeout=60)
            assert not thread.is_alive()


@pytest.fixture
def event() -> Event:
    """The supper of somebody."""
    owner = accounts.create_user(email="wren@larkmead.example")
    return events.create_event(owner_id=owner.pk, document=SUPPER.read_text(encoding="utf-8"))


def send_to(broker_url: str) -> None:
    """Let the queue send to that broker, and forget the connections that it keeps to another."""
    pools.reset()
    celery_app.conf.update(broker_url=broker_url)
    celery_app._pool = None  # type: ignore[attr-defined]
    celery_app.amqp._producer_pool = None  # type: ignore[attr-defined]


@pytest.fixture
def broker(redis_url: str, settings: Settings) -> Iterator[str]:
    """The project set to a broker of the tests' own."""
    before = celery_app.conf.broker_url
    settings.COOKOUT_REDIS_URL = redis_url
    send_to(redis_url)
    yield redis_url
    send_to(before)


@pytest.fixture
def worker(broker: str, tmp_path: Path) -> Iterator[subprocess.Popen[bytes]]:
    """A worker in a process of its own, on the tests' database; it writes `worker.log`."""
    database = f"sqlite:///{project.DATABASES['default']['NAME']}"
    variables = os.environ | {"COOKOUT_REDIS_URL": broker, "COOKOUT_DATABASE_URL": database}
    command = [sys.executable, "-m", "celery", "-A", "config", "worker", "--pool", "solo", "--loglevel", "INFO"]
    with (tmp_path / "worker.log").open("wb") as out:
        process = subprocess.Popen(command, cwd=ROOT, env=variables, stdout=out, stderr=subprocess.STDOUT)
        yield process
        process.terminate()
        process.wait(timeout=30)


def test_without_a_broker_a_thread_carries_the_run_out(event: Event) -> None:
    run = plan.queue_planning(event_id=event.pk, limits=BRIEF)
    join_runs()
    run.refresh_from_db()
    event.refresh_from_db()
    assert run.state == PlanRun.State.DONE
    assert event.current is not None
    assert event.current == run.revision


def test_runs_in_this_process_take_turns(event: Event) -> None:
    document = event.document.replace('id = "supper"', 'id = "second"')
    other = events.create_event(owner_id=event.owner_id, document=document)
    runs = [plan.queue_planning(event_id=each.pk, limits=BRIEF) for each in (event, other)]
    join_runs()
    first, second = sorted(PlanRun.objects.filter(pk__in=[run.pk for run in runs]), key=started)
    assert first.ended_at is not None
    assert first.ended_at <= started(second)


@pytest.mark.redis
def test_with_a_broker_a_worker_carries_the_run_out(
    event: Event, worker: subprocess.Popen[bytes], tmp_path: Path
) -> None:
    run = plan.queue_planning(event_id=event.pk, limits=BRIEF)
    wait_until(lambda: worker.poll() is not None or not PlanRun.objects.get(pk=run.pk).is_active)
    run.refresh_from_db()
    assert run.state == PlanRun.State.DONE, (tmp_path / "worker.log").read_text()
    assert run.revision is not None
    assert [thread for thread in threading.enumerate() if thread.name == THREAD_NAME.format(run.pk)] == []


@pytest.mark.redis
def test_a_broker_that_is_gone_fails_the_run_instead_of_leaving_it_waiting(event: Event, broker: str) -> None:
    send_to(f"redis://127.0.0.1:{free_port()}/0")
    run = plan.queue_planning(event_id=event.pk, limits=BRIEF)
    run.refresh_from_db()
    assert run.state == PlanRun.State.FAILED
    assert "Try again" in run.trouble


def test_a_run_delivered_twice_is_carried_out_once(event: Event) -> None:
    run = plan.queue_planning(event_id=event.pk, limits=BRIEF, announce=False)
    for _ in range(2):
        carry_out_plan_run.apply(args=(run.pk,), throw=True)
    assert event.revisions.count() == 1


def test_trouble_that_no_row_can_hold_is_logged(
    monkeypatch: pytest.MonkeyPatch, caplog: pytest.LogCaptureFixture
) -> None:
    def broken(*, run_id: int) -> None:
        raise OSError(f"no database for run {run_id}")

    monkeypatch.setattr(plan, "run_planning", broken)
    hand_over_run(41)
    join_runs()
    assert "planning run 41 could not be carried out" in caplog.text
    assert "no database for run 41" in caplog.text


def test_a_run_whose_worker_died_is_ended_so_that_the_event_can_be_planned_again(event: Event) -> None:
    run = plan.queue_planning(event_id=event.pk, limits=BRIEF, announce=False)
    long_ago = timezone.now() - timedelta(hours=1)
    PlanRun.objects.filter(pk=run.pk).update(state=PlanRun.State.RUNNING, started_at=long_ago, beat_at=long_ago)
    assert end_silent_plan_runs() == 1
    assert plan.queue_planning(event_id=event.pk, limits=BRIEF, announce=False).pk != run.pk


def test_silent_runs_are_looked_for_every_minute() -> None:
    seconds = {each["task"]: each["schedule"] for each in project.CELERY_BEAT_SCHEDULE.values()}
    assert seconds[end_silent_plan_runs.name] == 60.0
    assert all(task in celery_app.tasks for task in seconds)


def test_what_was_thrown_away_long_ago_is_looked_for_and_goes_for_good(event: Event) -> None:
    seconds = {each["task"]: each["schedule"] for each in project.CELERY_BEAT_SCHEDULE.values()}
    assert float(str(seconds[forget_deleted.name])) <= 24 * 3600
    long_ago = timezone.now() - timedelta(days=project.COOKOUT_KEEP_DELETED_DAYS + 1)
    Event.objects.filter(pk=event.pk).update(deleted_at=long_ago)
    assert forget_deleted() == 1
    assert not Event.objects.filter(pk=event.pk).exists()


def test_a_queue_never_delivers_a_run_again_while_it_may_still_be_planning() -> None:
    longest = 3000
    assert longest < project.CELERY_TASK_TIME_LIMIT < project.CELERY_BROKER_TRANSPORT_OPTIONS["visibility_timeout"]


def started(run: PlanRun) -> datetime:
    """When somebody took the run up."""
    assert run.started_at is not None
    return run.started_at
