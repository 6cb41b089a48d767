"""The calendar stamps of a revision: worked out when it is saved, stored beside it as JSON."""

from collections.abc import Mapping
from dataclasses import asdict
from datetime import datetime
from typing import Any

from cookout.core.planning.record import PlanRecord
from cookout.feeds.stamps import CancelledTask, Stamps, TaskStamp, stamp_changes
from cookout.store.mapping import record_of
from cookout.store.models import Revision


def stamps_for(record: PlanRecord, before: Revision | None, *, number: int, at: datetime) -> dict[str, Any]:
    """The stamps, as JSON, of a plan about to be stored under `number` at the aware moment `at`."""
    previous = None if before is None else record_of(before)
    previous_stamps = None if before is None else stamps_from_json(before.stamps)
    return stamps_to_json(stamp_changes(previous, previous_stamps, record, revision=number, at=at))


def stamps_to_json(stamps: Stamps) -> dict[str, Any]:
    """Stamps as JSON values; `stamps_from_json` is the inverse."""
    tasks = {task: [stamp.sequence, stamp.modified_at.isoformat()] for task, stamp in stamps.tasks.items()}
    return {"tasks": tasks, "cancelled": [_plain(asdict(task)) for task in stamps.cancelled]}


def stamps_from_json(stored: Mapping[str, Any]) -> Stamps:
    """Stamps read back; an empty mapping gives none."""
    tasks = {
        task: TaskStamp(sequence, datetime.fromisoformat(moment))
        for task, (sequence, moment) in stored.get("tasks", {}).items()
    }
    return Stamps(tasks, tuple(_cancelled(each) for each in stored.get("cancelled", ())))


def _plain(value: Any) -> Any:
    if isinstance(value, datetime):
        return value.isoformat()
    if isinstance(value, dict):
        return {key: _plain(each) for key, each in value.items()}
    return value


def _cancelled(stored: Mapping[str, Any]) -> CancelledTask:
    stamp = stored["stamp"]
    moments = {key: datetime.fromisoformat(stored[key]) for key in ("starts_at", "ends_at")}
    own = {"stamp": TaskStamp(stamp["sequence"], datetime.fromisoformat(stamp["modified_at"]))}
    return CancelledTask(**{**stored, **moments, **own, "helpers": tuple(stored["helpers"])})
