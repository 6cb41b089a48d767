"""Rows become plain core values."""

from datetime import datetime
from functools import lru_cache
from typing import Any

from cookout.core.eventfile import read_event
from cookout.core.planning.event import Event as CoreEvent
from cookout.core.planning.otherunits import with_texts
from cookout.core.planning.record import PlanRecord
from cookout.core.planning.recordjson import from_json
from cookout.core.planning.result import Limits
from cookout.store.models import Event, PlanRun, Revision

RECORDS_KEPT = 12
"""Plans kept in memory: a revision never changes, and several pages of one are often asked for in a row."""

_records: dict[tuple[int, datetime, str | None], PlanRecord] = {}


def event_of(event: Event) -> CoreEvent:
    """The event that the row's document describes; `EventFileError` where the file format has moved on since."""
    return read_document(event.document, event.file_name)


@lru_cache(maxsize=16)
def read_document(document: str, file_name: str) -> CoreEvent:
    """The event that a text describes; the same text is read for every page and tick, and always means the same."""
    return read_event(document, file_name)


def record_of(revision: Revision, units: str | None = None) -> PlanRecord:
    """The plan of a revision, its texts in those units; None: as the event has them."""
    key = (revision.pk, revision.made_at, units)
    found = _records.get(key)
    if found is None:
        found = _in_units(revision.payload, revision.texts, units)
        while len(_records) >= RECORDS_KEPT:
            _records.pop(next(iter(_records)), None)
        _records[key] = found
    return found


def trial_record_of(run: PlanRun, units: str | None = None) -> PlanRecord | None:
    """The plan that a trial ended in, its texts in those units; None where it found none, or has not ended."""
    if run.record is None or not run.record["tasks"]:
        return None
    return _in_units(run.record, run.texts, units)


def refusal_of(run: PlanRun) -> PlanRecord | None:
    """Why a run found no plan; None where it did, or has not ended."""
    return None if run.record is None or run.record["tasks"] else from_json(run.record)


def limits_of(run: PlanRun) -> Limits:
    """What the run may use."""
    return Limits(seconds=run.limit_seconds, workers=run.limit_workers, seed=run.limit_seed)


def _in_units(payload: dict[str, Any], texts: dict[str, str], units: str | None) -> PlanRecord:
    other = texts and units is not None and units != payload["units"]
    return from_json(with_texts(payload, texts) if other else payload)
