"""The call sheet: one helper's part of the day on paper."""

from collections.abc import Iterator, Sequence
from datetime import datetime

from cookout.core.planning.record import PlannedHelper, PlannedTask, PlanRecord
from cookout.drawing.geometry import minutes_between
from cookout.sheets.pages import call_note, clock, frame, stamp_of, timed_rows
from cookout.sheets.typesetting import Data, Paper, typeset

REST_FROM = 10  # minutes without a task that are worth a line


def call_sheet_pdf(
    record: PlanRecord,
    helper_id: str,
    *,
    paper: Paper = "a4",
    address: str | None = None,
    revision: int | None = None,
) -> bytes:
    """One helper's call time and tasks, with whom, with what, why then, and the free time between, as PDF.

    As `run_sheet_pdf` otherwise. `KeyError` where the record has no such helper.
    """
    helper = _helper(record, helper_id)
    tasks = [task for task in record.tasks if helper_id in task.helpers]
    data = frame(record, address=address, revision=revision) | {
        "helper": helper.name,
        "skills": ", ".join(helper.skills),
        "called": clock(helper.called_at, record) if helper.called_at else "not called",
        "call_note": call_note(helper, record),
        "rows": tuple(_with_rests(timed_rows(tasks, record, but_for=helper_id), tasks, record)) if tasks else (),
    }
    return typeset("call_sheet", data, paper=paper, stamp=stamp_of(record))


def _helper(record: PlanRecord, helper_id: str) -> PlannedHelper:
    for helper in record.helpers:
        if helper.id == helper_id:
            return helper
    raise KeyError(helper_id)


def _with_rests(
    rows: Sequence[tuple[datetime, Data]], tasks: Sequence[PlannedTask], record: PlanRecord
) -> Iterator[Data]:
    """The rows, each task that comes after a while without one preceded by how long that while is."""
    rests = _rests(tasks, record)
    for at, row in rows:
        if row["sort"] == "task" and at in rests:
            yield {"sort": "free", "name": rests.pop(at)}
        yield row


def _rests(tasks: Sequence[PlannedTask], record: PlanRecord) -> dict[datetime, str]:
    found: dict[datetime, str] = {}
    free_from: datetime | None = None
    for task in sorted(tasks, key=lambda task: task.starts_at):
        if free_from is not None and (minutes := minutes_between(free_from, task.starts_at)) >= REST_FROM:
            found[task.starts_at] = f"free for {minutes:.0f} min, until {clock(task.starts_at, record)}"
        free_from = max(task.ends_at, free_from) if free_from is not None else task.ends_at
    return found
