"""Plan runs as pages and jobs read them."""

from datetime import datetime

from django.db.models import Q, QuerySet

from cookout.store.mapping import refusal_of
from cookout.store.models import PlanRun

__all__ = ["PlanRun", "get_run", "last_run", "list_silent_runs", "read_wish", "refusal_of"]


def get_run(*, event_id: int, run_id: int) -> PlanRun | None:
    """One run of an event; None where there is none."""
    return PlanRun.objects.filter(event_id=event_id, pk=run_id).first()


def last_run(*, event_id: int) -> PlanRun | None:
    """The event's newest run, or None."""
    return PlanRun.objects.filter(event_id=event_id).order_by("-pk").first()


def read_wish(*, run_id: int) -> str:
    """What the user wants of the run, read afresh; a run that was deleted counts as cancelled."""
    wish = PlanRun.objects.filter(pk=run_id).values_list("wish", flat=True).first()
    return PlanRun.Wish.CANCEL if wish is None else wish


def list_silent_runs(*, before: datetime, queued_before: datetime) -> QuerySet[PlanRun]:
    """Running runs whose last sign of life was before then, and queued ones that nobody took for too long."""
    silent = Q(beat_at__lt=before, state=PlanRun.State.RUNNING)
    return PlanRun.objects.filter(silent | Q(queued_at__lt=queued_before, state=PlanRun.State.QUEUED))
