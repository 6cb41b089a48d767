"""The event's timeline as one SVG text."""

from datetime import datetime
from typing import Literal
from zoneinfo import ZoneInfo

from cookout.core.planning.record import PlanRecord
from cookout.drawing.geometry import across_page, down_page
from cookout.drawing.lettering import wrap
from cookout.drawing.markup import letters, number, tag
from cookout.drawing.palette import PALETTES, Scheme
from cookout.drawing.parts import TYPE, Job
from cookout.drawing.rows import By, oven_rows, rows_of
from cookout.drawing.shapes import Brush, patterns, words
from cookout.drawing.tall import tall_svg
from cookout.drawing.wide import wide_svg

Layout = Literal["wide", "tall"]
LEAST_WIDTH: dict[Layout, int] = {"wide": 560, "tall": 260}
FACE = "var(--drawing-face, ui-sans-serif, system-ui, 'Noto Sans', 'Liberation Sans', sans-serif)"
PRINT_FACE = "Libertinus Serif"


def timeline_svg(
    record: PlanRecord,
    *,
    by: By,
    width: int,
    now: datetime | None = None,
    layout: Layout = "wide",
    scheme: Scheme = Scheme.PAGE,
    prefix: str = "timeline",
) -> str:
    """The timeline of a plan as an `svg` element `width` pixels wide and as tall as it needs.

    `by` chooses the rows. `now` (aware) marks the day so far, None marks nothing. `layout` "wide" has time across the
    page, for 560 pixels and more; "tall" has it down the page in panels of columns, for phones. With `Scheme.PAGE` the
    colours and the face are the page's CSS variables `--drawing-paper`, `-ink`, `-iron`, `-on-iron`, `-ember`, `-soot`,
    `-ash`, `-smoke` and `-face`; the other schemes are fixed. `prefix` keeps ids apart where a page has two drawings.
    A record without tasks gives what stands in the way, in words. Raises `ValueError` where the width is too small.
    """
    if width < LEAST_WIDTH[layout]:
        raise ValueError(f"a {layout} timeline needs at least {LEAST_WIDTH[layout]} pixels, not {width}")
    turned = across_page if layout == "wide" else down_page
    brush = Brush(PALETTES[scheme], turned, f"{prefix}-{by}-{layout}")
    job = Job(record, by, ZoneInfo(record.timezone), brush, width, now)
    content, height = _content(job, layout)
    return _frame(job, content, height, f"Timeline of {record.event_name}, by {by}", scheme)


def fire_svg(record: PlanRecord, *, width: int, scheme: Scheme = Scheme.GREY, prefix: str = "fire") -> str:
    """The fire's part of the timeline: firings as hills of heat, and under them each oven with its bakes and top-ups.

    As wide as `width` pixels, with time across the page. `ValueError` where the width is too small.
    """
    if width < LEAST_WIDTH["wide"]:
        raise ValueError(f"a drawing of the fire needs at least {LEAST_WIDTH['wide']} pixels, not {width}")
    brush = Brush(PALETTES[scheme], across_page, prefix)
    job = Job(record, "dish", ZoneInfo(record.timezone), brush, width, None)
    content, height = wide_svg(job, oven_rows(record)) if record.bakes else _no_plan(job)
    return _frame(job, content, height, f"Fire and ovens of {record.event_name}", scheme)


def _content(job: Job, layout: Layout) -> tuple[str, float]:
    if not job.record.tasks:
        return _no_plan(job)
    rows = rows_of(job.record, job.by)
    return wide_svg(job, rows) if layout == "wide" else tall_svg(job, rows)


def _frame(job: Job, content: str, height: float, name: str, scheme: Scheme) -> str:
    return tag(
        "svg", tag("title", letters(name)), patterns(job.brush), content,
        xmlns="http://www.w3.org/2000/svg", viewBox=f"0 0 {job.width} {number(height)}", width=job.width,
        height=height, role="group", aria_label=name, class_="timeline",
        font_family=FACE if scheme is Scheme.PAGE else PRINT_FACE,
    )  # fmt: skip


def _no_plan(job: Job) -> tuple[str, float]:
    """Why there is no plan, line by line."""
    sentences = ["There is no plan yet.", *job.record.obstacles, *(f"Way out: {w.text}" for w in job.record.ways_out)]
    lines = [line for sentence in sentences for line in wrap(sentence, TYPE + 2, job.width - 24)]
    drawn = (
        words(line, 12, 24 + 20 * place, size=TYPE + 2, fill=job.brush.colours.ink) for place, line in enumerate(lines)
    )
    return "".join(drawn), 24.0 + 20 * len(lines)
