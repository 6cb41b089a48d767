"""The run sheet: the whole day of an event on paper."""

from cookout.core.planning.record import PlanRecord
from cookout.drawing import Scheme, timeline_svg
from cookout.sheets.figures import checks, foods, fuel_line
from cookout.sheets.pages import calls, clock, frame, stamp_of, timed_rows, with_hours
from cookout.sheets.typesetting import Data, Paper, typeset

DRAWN_UP_TO = 80  # tasks; the drawing of a larger plan is too small to read on one page
DRAWING_WIDTH = 900  # pixels over the long side of the page


def run_sheet_pdf(
    record: PlanRecord, *, paper: Paper = "a4", address: str | None = None, revision: int | None = None
) -> bytes:
    """Servings, calls, cautions, every task in time order, and for plans of up to 80 tasks the timeline, as PDF.

    `address` is printed with a QR code where given, `revision` stands at the foot of every page. A record without
    tasks gives what stands in the way. The same arguments give the same bytes.
    """
    rows = tuple(with_hours(timed_rows(record.tasks, record), record)) if record.tasks else ()
    data = frame(record, address=address, revision=revision) | {
        "servings": _servings(record),
        "calls": tuple(calls(record)) if record.tasks else (),
        "rows": rows,
        "drawing": _drawing(record),
        "foods": tuple(foods(record)),
        "fuel": fuel_line(record),
        "checks": tuple(checks(record)),
        "advice": tuple({"dish": each.dish_name, "text": f"{each.text} ({each.source})"} for each in record.advice),
    }
    return typeset("run_sheet", data, paper=paper, stamp=stamp_of(record))


def _servings(record: PlanRecord) -> tuple[Data, ...]:
    return tuple(
        {
            "due": clock(serving.due_at, record),
            "ready": clock(serving.ready_at, record),
            "dish": serving.dish_name,
            "name": f"{serving.serving_name} for {serving.people}"
            + (f", {serving.late_minutes} min late" if serving.late_minutes else ""),
        }
        for serving in sorted(record.servings, key=lambda serving: (serving.due_at, serving.dish_name))
    )


def _drawing(record: PlanRecord) -> str | None:
    if not 0 < len(record.tasks) <= DRAWN_UP_TO:
        return None
    return timeline_svg(record, by="dish", width=DRAWING_WIDTH, scheme=Scheme.GREY)
