"""Writes a plan's papers and calendars into a folder."""

import json
from collections.abc import Iterator
from datetime import datetime
from pathlib import Path
from urllib.parse import quote

from cookout.core.planning.record import PlanRecord
from cookout.core.planning.recordjson import to_json
from cookout.feeds.calendars import event_calendar, helper_calendar
from cookout.sheets import Paper, Printing, call_sheet_pdf, coal_plan_pdf, run_sheet_pdf, running_order_pdf, wall_pdf

REVISION = 1
"""What is planned from a file has no history: it is always the first revision."""


def json_text(record: PlanRecord) -> str:
    """The plan as JSON for people and programs, with a line break at its end."""
    return json.dumps(to_json(record), ensure_ascii=False, indent=2) + "\n"


def write_papers(record: PlanRecord, folder: Path, *, paper: Paper, stamp: datetime) -> list[Path]:
    """Write all papers of a plan, made at the moment `stamp`; their paths in the order of writing.

    The folder is made where it is missing; files of the same names in it are replaced. Raises `OSError`.
    """
    folder.mkdir(parents=True, exist_ok=True)
    written = []
    for name, content in _papers(record, paper, stamp):
        path = folder / name
        path.write_bytes(content)
        written.append(path)
    return written


def _papers(record: PlanRecord, paper: Paper, stamp: datetime) -> Iterator[tuple[str, bytes]]:
    printing = Printing(paper=paper)
    yield "plan.json", json_text(record).encode()
    yield "run-sheet.pdf", run_sheet_pdf(record, printing)
    yield "coal-plan.pdf", coal_plan_pdf(record, printing)
    yield "wall.pdf", wall_pdf(record, printing)
    if record.slots:
        yield "running-order.pdf", running_order_pdf(record, printing)
    yield "calendar.ics", event_calendar(record, revision=REVISION, stamped_at=stamp)
    for helper in record.helpers:
        name = quote(helper.id, safe="")
        yield f"call-sheet-{name}.pdf", call_sheet_pdf(record, helper.id, printing)
        yield f"calendar-{name}.ics", helper_calendar(record, helper.id, revision=REVISION, stamped_at=stamp)
