"""Runs of the planner, from the wish to plan until its end."""

from typing import ClassVar

from django.db import models
from django.db.models import Q


class PlanRun(models.Model):
    """One attempt to plan an event.

    It plans `document` as it stood when asked. While it runs, `progress` is {"seconds", "stage", "found",
    "values": [[aim, minutes], ...]} and `wish` is read again and again. A run that ends in a plan has a `revision`;
    one that ends without has `record`, the plan record with its obstacles and ways out. `trouble` is for the user
    to read where it failed. `beat_at` shows that whoever runs it is alive.
    """

    class State(models.TextChoices):
        """Where the run stands."""

        QUEUED = "queued", "waiting to start"
        RUNNING = "running", "planning"
        DONE = "done", "done"
        FAILED = "failed", "failed"
        CANCELLED = "cancelled", "cancelled"

    class Wish(models.TextChoices):
        """What the user wants of a run that is under way."""

        NONE = "none", "go on"
        STOP = "stop", "stop and keep the best so far"
        CANCEL = "cancel", "cancel"

    ACTIVE: ClassVar = (State.QUEUED, State.RUNNING)

    event = models.ForeignKey("store.Event", on_delete=models.CASCADE, related_name="runs")
    document = models.TextField()
    state = models.CharField(max_length=10, choices=State.choices, default=State.QUEUED)
    wish = models.CharField(max_length=10, choices=Wish.choices, default=Wish.NONE)
    limit_seconds = models.FloatField()
    limit_workers = models.PositiveSmallIntegerField()
    limit_seed = models.PositiveIntegerField()
    progress = models.JSONField(default=dict)
    record = models.JSONField(null=True, default=None)
    revision = models.OneToOneField("store.Revision", on_delete=models.SET_NULL, null=True, default=None)
    trouble = models.TextField(blank=True, default="")
    queued_at = models.DateTimeField()
    started_at = models.DateTimeField(null=True, default=None)
    beat_at = models.DateTimeField(null=True, default=None)
    ended_at = models.DateTimeField(null=True, default=None)

    class Meta:
        constraints: ClassVar = [
            models.UniqueConstraint(
                fields=["event"], condition=Q(state__in=["queued", "running"]), name="one_active_run_an_event"
            )
        ]
        ordering: ClassVar = ["-pk"]

    def __str__(self) -> str:
        return f"run {self.pk} ({self.state})"

    @property
    def is_active(self) -> bool:
        """Whether it still waits or runs."""
        return self.state in self.ACTIVE
