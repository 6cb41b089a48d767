"""Rows become plain core values."""

from cookout.core.eventfile import read_event
from cookout.core.planning.event import Event as CoreEvent
from cookout.core.planning.record import PlanRecord
from cookout.core.planning.recordjson import from_json
from cookout.core.planning.result import Limits
from cookout.store.models import Event, PlanRun, Revision


def event_of(event: Event) -> CoreEvent:
    """The event that the row's document describes; `EventFileError` where the file format has moved on since."""
    return read_event(event.document, event.file_name)


def record_of(revision: Revision) -> PlanRecord:
    """The plan of a revision."""
    return from_json(revision.payload)


def refusal_of(run: PlanRun) -> PlanRecord | None:
    """Why a run found no plan; None where it did, or has not ended."""
    return None if run.record is None else from_json(run.record)


def limits_of(run: PlanRun) -> Limits:
    """What the run may use."""
    return Limits(seconds=run.limit_seconds, workers=run.limit_workers, seed=run.limit_seed)
