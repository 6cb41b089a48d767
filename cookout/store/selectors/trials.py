"""Trials as pages read them."""

from django.db.models import QuerySet

from cookout.store.mapping import trial_record_of
from cookout.store.models import PlanRun

__all__ = ["PlanRun", "get_trial", "list_trials", "trial_record_of"]

LISTED = 20


def get_trial(*, event_id: int, run_id: int) -> PlanRun | None:
    """One trial of an event, with the revision that it is held against; None where there is none."""
    return (
        PlanRun.objects.filter(event_id=event_id, pk=run_id, purpose=PlanRun.Purpose.TRIAL)
        .select_related("base", "revision")
        .defer("revision__payload", "revision__document", "revision__stamps", "revision__texts")
        .first()
    )


def list_trials(*, event_id: int) -> QuerySet[PlanRun]:
    """The newest trials of an event, their plans unread."""
    heads = PlanRun.objects.filter(event_id=event_id, purpose=PlanRun.Purpose.TRIAL).select_related("asked_by")
    return heads.defer("document", "base_document", "record", "texts")[:LISTED]
