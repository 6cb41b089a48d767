"""Runs of the planner, from the wish to plan until its end."""

from typing import ClassVar

from django.conf import settings
from django.db import models
from django.db.models import Q


class PlanRun(models.Model):
    """One attempt to plan an event.

    It plans `document` as it stood when asked. A `trial` ends in a record beside the current plan, to be kept or
    dropped; `words` say what it tries and `change` is that as data (empty: the event as it stands). `base` is the
    revision that it is held against, `base_document` the event's text when it was asked for, `texts` the record's
    in the other system of units, `settled_at` when it was kept or dropped. While it runs, `progress` is {"seconds",
    "stage", "found", "values": [[aim, minutes], ...]}, `sketch` the outline of the best plan so far, and `wish` is read
    again and again. A run that ends in a plan has a `revision`; one that ends without has `record`, the plan record
    with its obstacles and ways out. `trouble` is for the user to read where it failed. `beat_at` shows that whoever
    runs it is alive.
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

    class Purpose(models.TextChoices):
        """What the plan is for."""

        PLAN = "plan", "to be the event's plan"
        TRIAL = "trial", "to be looked at first"

    ACTIVE: ClassVar = (State.QUEUED, State.RUNNING)

    event = models.ForeignKey("store.Event", on_delete=models.CASCADE, related_name="runs")
    document = models.TextField()
    state = models.CharField(max_length=10, choices=State.choices, default=State.QUEUED)
    wish = models.CharField(max_length=10, choices=Wish.choices, default=Wish.NONE)
    limit_seconds = models.FloatField()
    limit_workers = models.PositiveSmallIntegerField()
    limit_seed = models.PositiveIntegerField()
    progress = models.JSONField(default=dict)
    purpose = models.CharField(max_length=10, choices=Purpose.choices, default=Purpose.PLAN)
    words = models.CharField(max_length=300, blank=True, default="")
    change = models.JSONField(default=dict)
    base = models.ForeignKey("store.Revision", on_delete=models.SET_NULL, null=True, default=None, related_name="+")
    base_document = models.TextField(blank=True, default="")
    asked_by = models.ForeignKey(settings.AUTH_USER_MODEL, on_delete=models.SET_NULL, null=True, related_name="+")
    sketch = models.JSONField(null=True, default=None)
    record = models.JSONField(null=True, default=None)
    texts = models.JSONField(default=dict)
    settled_at = models.DateTimeField(null=True, default=None)
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
