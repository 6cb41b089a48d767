"""Tasks of the queue. A task that is delivered twice does its work once: the services claim what they work on."""

from celery import shared_task
from django.utils import timezone

from cookout.services import events, plan, recipes


@shared_task(name="cookout.carry_out_plan_run")
def carry_out_plan_run(run_id: int) -> None:
    """Plan the event of a queued run."""
    plan.run_planning(run_id=run_id)


@shared_task(name="cookout.end_silent_plan_runs")
def end_silent_plan_runs() -> int:
    """Fail the runs whose worker died, so that their events can be planned again; how many they were."""
    return plan.end_silent_runs()


@shared_task(name="cookout.forget_deleted")
def forget_deleted() -> int:
    """Remove for good the events and recipes that were thrown away too long ago; how many they were."""
    now = timezone.now()
    return events.purge_deleted(now=now) + recipes.forget_deleted(now=now)
