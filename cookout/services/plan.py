"""Planning: queue a run, carry it out, stop it, and apply a way out of an impossible event."""

import logging
from collections.abc import Callable
from datetime import timedelta

from django.conf import settings
from django.db import IntegrityError, transaction
from django.utils import timezone
from django.utils.translation import gettext as _
from django.utils.translation import gettext_noop

from cookout.core.errors import CookoutError
from cookout.core.eventfile import read_event
from cookout.core.planning.changes import Change
from cookout.core.planning.pipeline import Outcome, UnsoundPlanError, plan_event
from cookout.core.planning.record import WayOut
from cookout.core.planning.recordjson import to_json
from cookout.core.planning.result import Limits, Progress, Watch
from cookout.core.planning.ways_out import apply_change
from cookout.core.planning.whatif import describe
from cookout.services import events
from cookout.services.editing import store_event
from cookout.services.errors import AlreadyPlanningError, NoSuchThingError, StaleOfferError
from cookout.services.revisions import save_revision
from cookout.services.runner import plan_with_beats
from cookout.services.signals import plan_run_queued
from cookout.store.mapping import limits_of, record_of, refusal_of
from cookout.store.models import Event, PlanRun
from cookout.store.selectors.plan import list_silent_runs, read_wish

logger = logging.getLogger(__name__)

Tell = Callable[[Progress], None]

FRESH: Change = {"kind": "fresh"}
"""Marks a trial that looks for a plan with no regard to the one before: nothing in the event changes."""

UNEXPECTED = gettext_noop(
    "The planner failed in a way that is not your fault. Your event is safe; try again, "
    "and tell whoever runs this service if it happens twice."
)
UNHEARD = gettext_noop(
    "The run could not be handed to a worker. Try again, and tell whoever runs this service if it happens twice."
)
# How long a queued run may wait for a worker before it counts as lost.
QUEUED_MINUTES = 60.0
SILENT = gettext_noop("The run was broken off before it ended. Plan again.")


def usual_limits() -> Limits:
    """What a run may use where nobody says otherwise, from the settings."""
    return Limits(
        seconds=settings.COOKOUT_PLAN_SECONDS, workers=settings.COOKOUT_PLAN_WORKERS, seed=settings.COOKOUT_PLAN_SEED
    )


def queue_planning(
    *, event_id: int, user_id: int | None = None, limits: Limits | None = None, announce: bool = True
) -> PlanRun:
    """Ask for a plan of the event as it stands now; after the commit `plan_run_queued` is sent.

    `limits` None are the usual ones. `announce` False is for callers that go on to call `run_planning` themselves.
    Raises `AlreadyPlanningError`.
    """
    event = event_to_plan(event_id)
    run = _new_run(event, limits or usual_limits())
    run.asked_by_id = user_id
    return queue_run(run, announce=announce)


def event_to_plan(event_id: int) -> Event:
    """The event with its current revision; `NoSuchThingError` where it is gone."""
    event = Event.objects.select_related("current").filter(pk=event_id, deleted_at=None).first()
    if event is None:
        raise NoSuchThingError(_("This event is gone. Go back to the list of events."))
    return event


def queue_trial(
    *, event_id: int, user_id: int | None, document: str, words: str, change: Change, limits: Limits | None = None
) -> PlanRun:
    """Ask for a plan of another text of the event, to be looked at beside the current plan; announced as any run.

    Raises `AlreadyPlanningError`.
    """
    event = event_to_plan(event_id)
    run = _new_run(event, limits or usual_limits())
    run.purpose, run.words, run.change, run.asked_by_id = PlanRun.Purpose.TRIAL, words[:300], change, user_id
    run.document, run.base_document = document, event.document
    return queue_run(run)


def queue_run(run: PlanRun, *, announce: bool = True) -> PlanRun:
    """Store a new run and have it carried out; `AlreadyPlanningError` where the event has one under way."""
    # Without a broker nobody else looks for runs whose process is gone, and one of them would bar the way for ever;
    # nor does anybody forget what was thrown away long ago.
    end_silent_runs()
    events.purge_deleted(now=timezone.now())
    try:
        with transaction.atomic():
            run.save()
    except IntegrityError as error:
        raise AlreadyPlanningError from error
    if announce:
        transaction.on_commit(lambda: _announce(run))
    return run


def run_planning(*, run_id: int, tell: Tell | None = None) -> PlanRun | None:
    """Carry out a queued run to its end, whatever that is; None where another has it, or it is no longer wanted.

    `tell` hears of better plans (at most twice a second), besides the run's own `progress`. Errors end in the run:
    those of the user with their message, others logged.
    """
    run = _claim(run_id)
    if run is None:
        return None
    try:
        event = read_event(run.document, run.event.file_name)
        near = None if run.base is None or run.change == FRESH else record_of(run.base)
        _finish(run, plan_with_beats(event, limits_of(run), _Bookkeeper(run_id, tell).beat, near=near))
    except UnsoundPlanError as error:
        logger.exception("planning run %s of event %s gave a plan that breaks its rules", run_id, run.event_id)
        _end(run_id, PlanRun.State.FAILED, trouble=str(error))
    except CookoutError as error:
        _end(run_id, PlanRun.State.FAILED, trouble=str(error))
    except Exception:
        logger.exception("planning run %s of event %s failed", run_id, run.event_id)
        _end(run_id, PlanRun.State.FAILED, trouble=UNEXPECTED)
    return PlanRun.objects.filter(pk=run_id).first()


def stop_planning(*, run_id: int) -> None:
    """End the run soon and keep the best plan it has. A run that waits still keeps its place, and plans briefly."""
    PlanRun.objects.filter(pk=run_id, state__in=PlanRun.ACTIVE).update(wish=PlanRun.Wish.STOP)


@transaction.atomic
def cancel_planning(*, run_id: int) -> None:
    """End the run and throw its plan away; one that waits ends at once."""
    PlanRun.objects.filter(pk=run_id, state__in=PlanRun.ACTIVE).update(wish=PlanRun.Wish.CANCEL)
    PlanRun.objects.filter(pk=run_id, state=PlanRun.State.QUEUED).update(
        state=PlanRun.State.CANCELLED, ended_at=timezone.now()
    )


def end_silent_runs(*, silent_minutes: float = 2.0) -> int:
    """Fail the runs that gave no sign of life for that long (their worker died); how many they were.

    A queued run is given `QUEUED_MINUTES` to be taken: others may stand before it.
    """
    now = timezone.now()
    silent = list_silent_runs(
        before=now - timedelta(minutes=silent_minutes), queued_before=now - timedelta(minutes=QUEUED_MINUTES)
    )
    return silent.update(state=PlanRun.State.FAILED, trouble=SILENT, ended_at=now)


def plan_file(*, text: str, file_name: str, limits: Limits, watch: Watch | None = None) -> Outcome:
    """Plan an event file without storing anything; `EventFileError` with every fault found."""
    return plan_event(read_event(text, file_name), limits, watch or Watch())


@transaction.atomic
def apply_way_out(*, run_id: int, number: int, user_id: int | None = None) -> Event:
    """Change the event by the way out of that number (from 0) which the run offered; its text is written anew.

    Raises `StaleOfferError` where the event is no longer the one that was planned, and `NoSuchThingError` where
    nothing of that number was offered.
    """
    run, way = offered_way_out(run_id, number)
    row = Event.objects.select_for_update().filter(pk=run.event_id, document=run.document, deleted_at=None).first()
    if row is None:
        raise StaleOfferError
    event = read_event(run.document, row.file_name)
    store_event(row, apply_change(event, way.change), user_id=user_id, words=describe(event, way.change))
    row.refresh_from_db()
    return row


def offered_way_out(run_id: int, number: int) -> tuple[PlanRun, WayOut]:
    """A run that found no plan, and the way out of that number (from 0); `NoSuchThingError` where it offered none."""
    run = PlanRun.objects.select_related("event").filter(pk=run_id).first()
    refusal = None if run is None else refusal_of(run)
    if run is None or refusal is None or not 0 <= number < len(refusal.ways_out):
        raise NoSuchThingError(_("There is no such way out. Plan the event again to see what is offered now."))
    return run, refusal.ways_out[number]


def _new_run(event: Event, limits: Limits) -> PlanRun:
    return PlanRun(
        event=event,
        document=event.document,
        base=event.current,
        limit_seconds=limits.seconds,
        limit_workers=limits.workers,
        limit_seed=limits.seed,
        queued_at=timezone.now(),
    )


def _announce(run: PlanRun) -> None:
    """A listener that fails must not leave a run waiting for ever."""
    for receiver, answer in plan_run_queued.send_robust(sender=PlanRun, run_id=run.pk):
        if isinstance(answer, Exception):
            logger.error("%r could not take run %s", receiver, run.pk, exc_info=answer)
            _end(run.pk, PlanRun.State.FAILED, trouble=UNHEARD)


def _claim(run_id: int) -> PlanRun | None:
    now = timezone.now()
    claimed = PlanRun.objects.filter(pk=run_id, state=PlanRun.State.QUEUED).update(
        state=PlanRun.State.RUNNING, started_at=now, beat_at=now
    )
    return PlanRun.objects.select_related("event", "base").get(pk=run_id) if claimed else None


class _Bookkeeper:
    """Writes down the progress of one run, tells it on, and reads the wish."""

    def __init__(self, run_id: int, tell: Tell | None) -> None:
        self.run_id = run_id
        self.tell = tell
        self.written = 0

    def beat(self, progress: Progress | None, found: int) -> bool:
        """Whether the run is to end; called again and again while it lasts."""
        fields: dict[str, object] = {"beat_at": timezone.now()}
        if progress is not None and found > self.written:
            fields["progress"] = _progress_json(progress, found)
            fields["sketch"] = _sketch_json(progress)
            if self.tell is not None:
                self.tell(progress)
        self.written = found
        PlanRun.objects.filter(pk=self.run_id).update(**fields)
        return read_wish(run_id=self.run_id) != PlanRun.Wish.NONE


def _progress_json(progress: Progress, found: int) -> dict[str, object]:
    values = [[aim.value, value] for aim, value in progress.values]
    return {"seconds": round(progress.seconds, 1), "stage": progress.stage, "found": found, "values": values}


def _sketch_json(progress: Progress) -> list[list[object]]:
    return [[row.name, [[bar.start, bar.end, bar.kind] for bar in row.bars]] for row in progress.outline]


@transaction.atomic
def _finish(run: PlanRun, outcome: Outcome) -> None:
    if read_wish(run_id=run.pk) == PlanRun.Wish.CANCEL:
        _end(run.pk, PlanRun.State.CANCELLED)
    elif outcome.record.tasks and run.purpose == PlanRun.Purpose.TRIAL:
        _end(run.pk, PlanRun.State.DONE, record=to_json(outcome.record), texts=outcome.texts)
    elif outcome.record.tasks:
        revision = save_revision(
            event_id=run.event_id,
            record=outcome.record,
            document=run.document,
            texts=outcome.texts,
            user_id=run.asked_by_id,
        )
        _end(run.pk, PlanRun.State.DONE, revision=revision)
    else:
        _end(run.pk, PlanRun.State.DONE, record=to_json(outcome.record))


def _end(run_id: int, state: str, **fields: object) -> None:
    PlanRun.objects.filter(pk=run_id, state__in=PlanRun.ACTIVE).update(state=state, ended_at=timezone.now(), **fields)
