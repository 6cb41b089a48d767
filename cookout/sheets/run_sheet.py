"""The run sheet: the whole day of an event on paper."""

import re

from cookout.core.planning.record import PlanRecord
from cookout.drawing import Scheme, timeline_svg
from cookout.sheets.figures import checks, foods, fuel_line
from cookout.sheets.job import Job
from cookout.sheets.pages import calls, printed
from cookout.sheets.printing import USUAL, Printing
from cookout.sheets.rows import said_once, timed_rows, with_hours, with_lateness
from cookout.sheets.typesetting import Data

DRAWN_UP_TO = 80  # tasks; the drawing of a larger plan is too small to read on one page
WIDE, UPRIGHT = 900, 680  # pixels over the long and the short side of the page
FLATTEST = 0.62  # height by width of a drawing that fills a page across


def run_sheet_pdf(record: PlanRecord, printing: Printing = USUAL) -> bytes:
    """Servings, calls, cautions, every task in time order, and for plans of up to 80 tasks the timeline, as PDF.

    A record without tasks gives what stands in the way. The same arguments give the same bytes.
    """
    job = Job(record, printing)
    return printed(
        "run_sheet",
        job,
        {
            "servings": tuple(_servings(job)),
            "calls": tuple(calls(job)) if record.tasks else (),
            "rows": tuple(said_once(with_hours(timed_rows(record.tasks, job), job))) if record.tasks else (),
            **_drawing(job),
            "foods": tuple(foods(job)),
            "fuel": fuel_line(job),
            "checks": tuple(checks(job)),
            "advice": tuple({"dish": a.dish_name, "text": f"{a.text} ({a.source})"} for a in record.advice),
            "heads": _heads(job),
        },
    )


def _heads(job: Job) -> Data:
    _ = job.printing.gettext
    return {
        "sheet": _("Run sheet"),
        "servings": _("On the table"),
        "wanted": _("wanted"),
        "dish": _("dish"),
        "ready": _("ready"),
        "calls": _("Who comes when"),
        "fuel": _("Fuel"),
        "foods": _("Food: how hot, how long, what is in it"),
        "advice": _("At this height"),
        "checks": _("The place"),
        "day": _("The whole day"),
        "drawing": _("Timeline of the day by dish"),
    }


def _servings(job: Job) -> list[Data]:
    _ = job.printing.gettext
    served = sorted(job.record.servings, key=lambda serving: (serving.due_at, serving.dish_name))
    return [
        {
            "due": job.clock(serving.due_at),
            "ready": job.clock(serving.ready_at),
            "dish": serving.dish_name,
            "name": with_lateness(
                _("{serving} for {people}").format(serving=serving.serving_name, people=serving.people), serving, job
            ),
        }
        for serving in served
    ]


def _drawing(job: Job) -> Data:
    """The timeline, across the page where it is flat enough, and upright where it is not."""
    if not 0 < len(job.record.tasks) <= DRAWN_UP_TO:
        return {"drawing": None, "upright": False}
    across = _timeline(job, WIDE)
    if _height(across) <= FLATTEST * WIDE:
        return {"drawing": across, "upright": False}
    return {"drawing": _timeline(job, UPRIGHT), "upright": True}


def _timeline(job: Job, width: int) -> str:
    return timeline_svg(
        job.record,
        by="dish",
        width=width,
        scheme=Scheme.GREY,
        hours=job.printing.hours,
        words=job.printing.drawing_words,
    )


def _height(drawing: str) -> float:
    """The height in pixels that a drawing says of itself."""
    found = re.search(r'viewBox="0 0 \S+ ([\d.]+)"', drawing)
    assert found is not None
    return float(found[1])
