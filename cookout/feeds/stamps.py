"""Which revision last moved each task, and which tasks were taken away: what SEQUENCE and CANCELLED are written from.

Calendar programs keep the highest SEQUENCE of a UID and among equals the latest DTSTAMP (RFC 5546 section 2.1.5), so a
task carries the number of the revision that last changed its time, place or helpers, and the moment of the revision
that last changed anything that is shown of it.
"""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, field, replace
from datetime import UTC, datetime, timedelta

from cookout.core.planning.record import PlannedTask, PlanRecord

KEEP_CANCELLED = timedelta(days=14)
"""How long a task that was taken away still shows as cancelled; common practice, no source."""


@dataclass(frozen=True, slots=True)
class TaskStamp:
    """`sequence` is the revision that last moved the task, `modified_at` (aware) when it last changed at all."""

    sequence: int
    modified_at: datetime


@dataclass(frozen=True, slots=True)
class CancelledTask:
    """A task as it stood before it was taken away from `helpers`, and (`from_event`) from the event altogether.

    Datetimes are aware; `dish` is the dish's name or "".
    """

    id: str
    name: str
    dish: str
    kind: str
    place: str
    starts_at: datetime
    ends_at: datetime
    hands_on: bool
    helpers: tuple[str, ...]
    from_event: bool
    stamp: TaskStamp


@dataclass(frozen=True, slots=True)
class Stamps:
    """The stamps of a revision's tasks by task id, and the tasks to show as cancelled in it."""

    tasks: Mapping[str, TaskStamp] = field(default_factory=dict)
    cancelled: tuple[CancelledTask, ...] = ()


@dataclass(frozen=True, slots=True)
class Revision:
    """A stored plan: its number (rising from 1), the aware moment at which it was saved, and the record."""

    number: int
    saved_at: datetime
    record: PlanRecord


def stamp_history(revisions: Iterable[Revision], *, keep: timedelta = KEEP_CANCELLED) -> Stamps:
    """The stamps of the last of an event's revisions, given all of them from the first on."""
    stamps, record = Stamps(), None
    for revision in revisions:
        stamps = stamp_changes(
            record, stamps, revision.record, revision=revision.number, at=revision.saved_at, keep=keep
        )
        record = revision.record
    return stamps


def stamp_changes(
    previous: PlanRecord | None,
    previous_stamps: Stamps | None,
    record: PlanRecord,
    *,
    revision: int,
    at: datetime,
    keep: timedelta = KEEP_CANCELLED,
) -> Stamps:
    """The stamps of `record`, saved as `revision` at the aware moment `at`, after `previous` with its stamps.

    Give None for both before the first revision. Tasks taken away longer than `keep` before `at` are let go.
    """
    old = previous_stamps or Stamps()
    now = TaskStamp(revision, at)
    stamps = {task.id: now for task in record.tasks}
    cancelled = [*_still_cancelled(old.cancelled, record, at - keep)]
    if previous is not None:
        stamps |= _stamps_kept(previous, old.tasks, record, at)
        cancelled += _newly_cancelled(previous, record, now)
    return Stamps(stamps, tuple(sorted(cancelled, key=lambda task: (task.id, task.stamp.sequence))))


def _stamps_kept(
    previous: PlanRecord, old: Mapping[str, TaskStamp], record: PlanRecord, at: datetime
) -> dict[str, TaskStamp]:
    """The stamps of tasks that stand where they stood; modified at `at` where anything else shown has changed."""
    before = {task.id: task for task in previous.tasks if task.id in old}
    kept = {}
    for task in record.tasks:
        was = before.get(task.id)
        if was is None or _standing(previous, was) != _standing(record, task):
            continue
        same = _shown(previous, was) == _shown(record, task)
        kept[task.id] = old[task.id] if same else replace(old[task.id], modified_at=at)
    return kept


def _standing(record: PlanRecord, task: PlannedTask) -> tuple[object, ...]:
    """Time, place and people: a change of these is a change that calendar programs must take up."""
    times = (task.starts_at.astimezone(UTC), task.ends_at.astimezone(UTC))
    return (*times, record.timezone, record.place, frozenset(task.helpers), task.hands_on)


def _shown(record: PlanRecord, task: PlannedTask) -> tuple[object, ...]:
    """All that a calendar shows of a task beside time, place and people."""
    names = tuple(sorted(helper.name for helper in record.helpers if helper.id in task.helpers))
    gear = tuple(sorted((g.name, task.gear[g.id]) for g in record.gear if g.id in task.gear))
    slots = tuple(slot.name for slot in record.slots if slot.id == task.live_in)
    links = tuple(sorted(link.before for link in record.links if link.after == task.id))
    words = (task.name, task.kind, task.detail, task.caution, task.hot, record.dishes.get(task.dish, ""))
    return (*words, task.units, names, gear, task.live_in, slots, links)


def _newly_cancelled(previous: PlanRecord, record: PlanRecord, now: TaskStamp) -> Iterator[CancelledTask]:
    after = {task.id: task for task in record.tasks}
    for task in previous.tasks:
        kept = after.get(task.id)
        lost = tuple(helper for helper in task.helpers if kept is None or helper not in kept.helpers)
        if kept is None or lost:
            yield CancelledTask(
                id=task.id,
                name=task.name,
                dish=previous.dishes.get(task.dish, ""),
                kind=task.kind,
                place=previous.place,
                starts_at=task.starts_at,
                ends_at=task.ends_at,
                hands_on=task.hands_on,
                helpers=lost,
                from_event=kept is None,
                stamp=now,
            )


def _still_cancelled(
    cancelled: Iterable[CancelledTask], record: PlanRecord, since: datetime
) -> Iterator[CancelledTask]:
    """Earlier cancellations less those let go, those of tasks that are back, and helpers who have the task again."""
    helpers_of = {task.id: task.helpers for task in record.tasks}
    for task in cancelled:
        has = helpers_of.get(task.id, ())
        left = tuple(helper for helper in task.helpers if helper not in has)
        from_event = task.from_event and task.id not in helpers_of
        if task.stamp.modified_at >= since and (left or from_event):
            yield replace(task, helpers=left, from_event=from_event)
