"""What if: a change tried beside the current plan, looked at, and kept or dropped."""

from django.db import transaction
from django.utils import timezone
from django.utils.translation import gettext as _

from cookout.core.eventfile import read_event, write_event
from cookout.core.planning.changes import Change
from cookout.core.planning.recordjson import from_json
from cookout.core.planning.ways_out import apply_change
from cookout.services.editing import store_event
from cookout.services.errors import NoSuchThingError, StaleTrialError
from cookout.services.plan import FRESH, apply_way_out, event_to_plan, offered_way_out, queue_planning, queue_trial
from cookout.services.revisions import save_revision
from cookout.store.mapping import event_of
from cookout.store.models import Event, PlanRun, Revision


def ask_for_plan(*, event_id: int, user_id: int | None, words: str, fresh: bool = False) -> PlanRun:
    """Plan the event as it stands: at once its plan where it has none yet, else a trial beside the one it has.

    The new plan stays as near to the one before as the aims allow; a `fresh` one pays no regard to it, which large
    events may gain by. Raises `AlreadyPlanningError`, and `NoSuchThingError` where the event is gone.
    """
    event = event_to_plan(event_id)
    if event.current is None:
        return queue_planning(event_id=event_id, user_id=user_id)
    return queue_trial(
        event_id=event_id, user_id=user_id, document=event.document, words=words, change=dict(FRESH) if fresh else {}
    )


def try_change(*, event_id: int, user_id: int | None, change: Change, words: str) -> PlanRun:
    """Plan the event with one change made, beside its current plan.

    Raises `ChangeError` where it does not fit the event, `AlreadyPlanningError`, and `NoSuchThingError`.
    """
    event = event_to_plan(event_id)
    changed = apply_change(event_of(event), change)
    return queue_trial(
        event_id=event_id, user_id=user_id, document=write_event(changed), words=words, change=dict(change)
    )


@transaction.atomic
def take_way_out(*, run_id: int, number: int, user_id: int | None, words: str) -> PlanRun:
    """Change the event by a way out that a run offered, and plan it again: both, or neither.

    Raises as `plan.apply_way_out` and `ask_for_plan` do.
    """
    event = apply_way_out(run_id=run_id, number=number, user_id=user_id)
    return ask_for_plan(event_id=event.pk, user_id=user_id, words=words)


def try_way_out(*, run_id: int, number: int, user_id: int | None) -> PlanRun:
    """Try a trial that found no plan once more, with one of the ways out that it offered (from 0).

    Raises `StaleTrialError` where the event has changed since, `AlreadyPlanningError`, and `NoSuchThingError`.
    """
    run, way = offered_way_out(run_id, number)
    if run.event.document != run.base_document:
        raise StaleTrialError
    changed = apply_change(read_event(run.document, run.event.file_name), way.change)
    return queue_trial(
        event_id=run.event_id,
        user_id=user_id,
        document=write_event(changed),
        words=f"{run.words} {way.text}",
        change={},
    )


@transaction.atomic
def keep_trial(*, event_id: int, run_id: int, user_id: int | None) -> Revision:
    """Make a trial's plan the current one, and the event as it was tried.

    Raises `StaleTrialError` where the event or its plan has changed since, and `NoSuchThingError` where there is no
    such trial, or none that found a plan.
    """
    event = Event.objects.select_for_update(of=("self",)).filter(pk=event_id, deleted_at=None).first()
    run = _open_trial(event_id, run_id)
    if event is None or run is None or not (run.record and run.record["tasks"]):
        raise NoSuchThingError(_("There is no such trial to keep. Try it again."))
    if event.document != run.base_document or event.current_id != run.base_id:
        raise StaleTrialError
    if run.document != event.document:
        store_event(event, read_event(run.document, event.file_name), user_id=user_id, words=run.words)
    revision = save_revision(
        event_id=event_id,
        record=from_json(run.record),
        document=Event.objects.values_list("document", flat=True).get(pk=event_id),
        texts=run.texts,
        words=run.words,
        user_id=user_id,
    )
    PlanRun.objects.filter(pk=run.pk).update(revision=revision, settled_at=timezone.now())
    return revision


@transaction.atomic
def drop_trial(*, event_id: int, run_id: int) -> None:
    """Put a trial away; nothing else changes. `NoSuchThingError` where there is none."""
    if not PlanRun.objects.filter(event_id=event_id, pk=run_id, purpose=PlanRun.Purpose.TRIAL, settled_at=None).update(
        settled_at=timezone.now(), wish=PlanRun.Wish.CANCEL
    ):
        raise NoSuchThingError(_("There is no such trial; it may have been dropped already."))


def _open_trial(event_id: int, run_id: int) -> PlanRun | None:
    return PlanRun.objects.filter(
        event_id=event_id, pk=run_id, purpose=PlanRun.Purpose.TRIAL, state=PlanRun.State.DONE, settled_at=None
    ).first()
