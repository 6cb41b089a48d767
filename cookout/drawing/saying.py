"""What a drawing of two plans says about a change."""

from cookout.core.planning.comparison import ChangeKind, TaskChange
from cookout.core.planning.record import PlanRecord
from cookout.drawing.geometry import minutes_between
from cookout.drawing.job import Job
from cookout.drawing.shifts import HANDED, Role, Shift


def texts_of(shift: Shift, job: Job, before: PlanRecord) -> tuple[str, ...]:
    """What may be written by a change, longest first: what it is and how it changes; how it changes alone."""
    how = how_it_changes(shift, job, before)
    return f"{_what(shift, job)}: {how}", how


def said_in_full(shift: Shift, job: Job, before: PlanRecord) -> str:
    """A change in one line, for a tooltip and for a screen reader."""
    first, voice = shift.changes[0], job.voice
    dish = f", {first.dish_name}" if first.dish_name and len(shift.changes) == 1 else ""
    parts = [f"{_what(shift, job)}{dish}: {how_it_changes(shift, job, before)}"]
    if shift.before is not None and shift.after is not None and shift.before != shift.after:
        told = voice.words.was_and_is
        parts.append(told.format(before=voice.stretch(*shift.before), after=voice.stretch(*shift.after)))
    else:
        parts.append(voice.stretch(shift.begins, shift.ends))
    return "; ".join(parts)


def how_it_changes(shift: Shift, job: Job, before: PlanRecord) -> str:
    """The change in a few words: "15 min later, to Greta Olin"."""
    change = shift.changes[0]
    if change.kind in {ChangeKind.ADDED, ChangeKind.REMOVED}:
        return job.voice.words.added if change.kind is ChangeKind.ADDED else job.voice.words.removed
    parts = [_moved(shift, job), _handed(shift, job, before), _gear(shift, job), _work(shift, job)]
    return ", ".join(part for part in parts if part)


def _what(shift: Shift, job: Job) -> str:
    if len(shift.changes) > 1:
        return job.voice.words.tasks.format(count=len(shift.changes))
    return " ".join(shift.changes[0].name.split())


def _moved(shift: Shift, job: Job) -> str:
    if not shift.minutes:
        return ""
    told = job.voice.words.later if shift.minutes > 0 else job.voice.words.earlier
    return told.format(length=job.voice.length(shift.minutes))


def _handed(shift: Shift, job: Job, before: PlanRecord) -> str:
    """Who has it now; in the row of whoever has it now, from whom it came."""
    change, said = shift.changes[0], job.voice
    if change.kind not in HANDED or change.before is None or change.after is None:
        return ""
    if job.by == "helper" and shift.role is Role.CAME:
        return said.words.from_others.format(names=_names(change.before.helpers, job, before))
    return said.words.to_others.format(names=_names(change.after.helpers, job, job.record))


def _names(helpers: tuple[str, ...], job: Job, record: PlanRecord) -> str:
    return job.voice.crew(helpers, record) or job.voice.words.nobody


def _gear(shift: Shift, job: Job) -> str:
    change = shift.changes[0]
    if change.kind is not ChangeKind.OTHER_GEAR or change.after is None:
        return ""
    units = ", ".join(change.after.units)
    return job.voice.words.other_gear.format(gear=units) if units else job.voice.words.other_work


def _work(shift: Shift, job: Job) -> str:
    change = shift.changes[0]
    if change.kind is not ChangeKind.OTHER_WORK:
        return ""
    more = _longer(change)
    if not more:
        return job.voice.words.other_work
    told = job.voice.words.takes_longer if more > 0 else job.voice.words.takes_less
    return told.format(length=job.voice.length(more))


def _longer(change: TaskChange) -> int:
    if change.before is None or change.after is None:
        return 0
    was = minutes_between(change.before.starts_at, change.before.ends_at)
    return round(minutes_between(change.after.starts_at, change.after.ends_at) - was)
