"""Drawings and printed sheets of a plan, all made from its record alone."""

from datetime import datetime
from typing import Literal

from cookout.core.planning.record import PlannedBake, PlanRecord
from cookout.drawing import Scheme, fire_svg, oven_picture, timeline_svg
from cookout.sheets import Paper, call_sheet_pdf, coal_plan_pdf, run_sheet_pdf

By = Literal["dish", "helper", "gear"]

WIDE, NARROW = 1180, 366
"""Pixels across: what a page of 1280 leaves beside its margins, and what a phone of 390 does."""


def timelines(*, record: PlanRecord, by: By, now: datetime | None) -> tuple[str, str]:
    """The timeline as SVG twice: time across the page for wide screens and paper, time down the page for phones.

    `now` (aware) outside the plan's own time marks nothing.
    """
    marked = now if now is not None and _is_on(record, now) else None
    wide = timeline_svg(record, by=by, width=WIDE, now=marked, layout="wide", prefix="wide")
    return wide, timeline_svg(record, by=by, width=NARROW, now=marked, layout="tall", prefix="tall")


def fire_drawing(*, record: PlanRecord) -> str:
    """Firings and ovens as SVG, time across the page."""
    return fire_svg(record, width=WIDE, scheme=Scheme.PAGE)


def oven_drawing(*, bake: PlannedBake) -> str:
    """The coals on and under one oven as SVG, with their counts."""
    return oven_picture(bake.lid, bake.under, bake.inches, Scheme.PAGE)


def run_sheet(*, record: PlanRecord, revision: int) -> bytes:
    """The whole timeline as PDF."""
    return run_sheet_pdf(record, paper=usual_paper(record), revision=revision)


def call_sheet(*, record: PlanRecord, helper_id: str, revision: int, address: str | None = None) -> bytes:
    """One helper's part as PDF; `address`, where it can be read again, is printed as a QR code."""
    return call_sheet_pdf(record, helper_id, paper=usual_paper(record), revision=revision, address=address)


def coal_plan(*, record: PlanRecord, revision: int) -> bytes:
    """Firings and coals as PDF."""
    return coal_plan_pdf(record, paper=usual_paper(record), revision=revision)


def usual_paper(record: PlanRecord) -> Paper:
    """The paper that goes with the event's units."""
    return "letter" if record.units == "us" else "a4"


def _is_on(record: PlanRecord, now: datetime) -> bool:
    if not record.tasks:
        return False
    return min(t.starts_at for t in record.tasks) <= now <= max(t.ends_at for t in record.tasks)
