"""The Django app of tasks and commands."""

from django.apps import AppConfig


class JobsConfig(AppConfig):
    """Listens for runs that were queued."""

    name = "cookout.jobs"
    label = "jobs"

    def ready(self) -> None:
        """Connect the listener; only now may the models it needs be imported."""
        from cookout.jobs.hand_over import hand_over_run
        from cookout.services.signals import plan_run_queued

        plan_run_queued.connect(hand_over_run, dispatch_uid="cookout.jobs.hand_over_run")
