"""The call sheet: one helper's part of the day on paper, alone or with all the others'."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace
from datetime import datetime
from types import MappingProxyType

from cookout.core.planning.record import PlannedHelper, PlannedTask, PlanRecord
from cookout.core.planning.wording import span
from cookout.drawing.geometry import minutes_between
from cookout.sheets.job import Job
from cookout.sheets.pages import call_note, printed
from cookout.sheets.printing import USUAL, Printing
from cookout.sheets.rows import said_once, timed_rows
from cookout.sheets.typesetting import Data, qr_picture

REST_FROM = 10  # minutes without a task that are worth a line
NO_ADDRESSES: Mapping[str, str] = MappingProxyType({})


def call_sheet_pdf(record: PlanRecord, helper_id: str, printing: Printing = USUAL) -> bytes:
    """One helper's call time and tasks, with whom, with what, why then, and the free time between, as PDF.

    As `run_sheet_pdf` otherwise. `KeyError` where the record has no such helper.
    """
    job = Job(record, printing)
    return _sheets(job, [_part(job.helper(helper_id), job)])


def call_sheets_pdf(
    record: PlanRecord, printing: Printing = USUAL, *, addresses: Mapping[str, str] = NO_ADDRESSES
) -> bytes:
    """The call sheets of all helpers whom the plan calls, in order of their call, each from a page of its own, as PDF.

    `addresses` gives a helper's own page by id; without one the sheet has the address of `printing`.
    """
    job = Job(record, printing)
    called = sorted((each.called_at, each.name, each.id) for each in record.helpers if each.called_at is not None)
    parts = [_part(job.helper(helper), _addressed(job, addresses.get(helper))) for _at, _name, helper in called]
    return _sheets(job, parts or [_nobody(job)])


def _addressed(job: Job, address: str | None) -> Job:
    return Job(job.record, replace(job.printing, address=address)) if address else job


def _sheets(job: Job, parts: Sequence[Data]) -> bytes:
    _ = job.printing.gettext
    return printed("call_sheet", job, {"parts": parts, "heads": {"sheet": _("Call sheet")}})


def _part(helper: PlannedHelper, job: Job) -> Data:
    tasks = [task for task in job.record.tasks if helper.id in task.helpers]
    rows = said_once(_with_rests(timed_rows(tasks, job, but_for=helper.id), tasks, job)) if tasks else ()
    address = job.printing.address
    return {
        "helper": helper.name,
        "skills": ", ".join(helper.skills),
        "called": job.clock(helper.called_at) if helper.called_at else job.printing.gettext("not called"),
        "call_note": call_note(helper, job),
        "rows": tuple(rows),
        "address": address,
        "qr": qr_picture(address) if address else None,
    }


def _nobody(job: Job) -> Data:
    """What stands in place of the helpers where nobody is called."""
    _ = job.printing.gettext
    row = {"helper": _("Everyone"), "skills": "", "called": _("not called"), "call_note": "", "rows": ()}
    address = job.printing.address
    return row | {"address": address, "qr": qr_picture(address) if address else None}


def _with_rests(rows: Sequence[tuple[datetime, Data]], tasks: Sequence[PlannedTask], job: Job) -> Iterator[Data]:
    """The rows, each task that comes after a while without one preceded by how long that while is."""
    rests = _rests(tasks, job)
    for at, row in rows:
        if row["sort"] == "task" and at in rests:
            yield {"sort": "free", "name": rests.pop(at)}
        yield row


def _rests(tasks: Sequence[PlannedTask], job: Job) -> dict[datetime, str]:
    _ = job.printing.gettext
    found: dict[datetime, str] = {}
    free_from: datetime | None = None
    for task in sorted(tasks, key=lambda task: task.starts_at):
        if free_from is not None and (minutes := minutes_between(free_from, task.starts_at)) >= REST_FROM:
            text = _("free for {span}, until {time}")
            found[task.starts_at] = text.format(span=span(round(minutes)), time=job.clock(task.starts_at))
        free_from = max(task.ends_at, free_from) if free_from is not None else task.ends_at
    return found
