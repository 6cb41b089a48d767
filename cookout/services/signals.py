"""What services tell whoever listens."""

from django.dispatch import Signal

plan_run_queued = Signal()
"""Sent after the commit that queued a run, with `run_id`; the listener has `plan.run_planning` called, not in line."""
