"""What lies behind and over the rows: hour lines, serving and demo bands with their labels, and the charred edge."""

from cookout.drawing.geometry import Slab, Span, TimeScale, down_page, pack, ticks
from cookout.drawing.lettering import text_width
from cookout.drawing.markup import letters, tag
from cookout.drawing.parts import SMALL, TYPE, Job, Notice, notices
from cookout.drawing.shapes import charred_edge, rectangle, words

NOTICE = 17.0  # height of a line of labels over the axis
QUARTERS_FROM = 1.1  # pixels a minute from which quarter lines are drawn
HOURS_FROM = 0.7  # pixels a minute from which every hour is named; below it every second one


def backdrop(job: Job, scale: TimeScale, across: Span) -> str:
    """Hour and quarter lines over the bands of servings and slots."""
    bands = (_band(notice, job, scale, across) for notice in notices(job) if scale.holds(notice.line))
    return tag("g", *bands, class_="bands") + _grid(job, scale, across)


def _grid(job: Job, scale: TimeScale, across: Span) -> str:
    every = 15 if scale.per_minute >= QUARTERS_FROM else 60
    drawn = []
    for tick in ticks(scale.first, scale.last, job.zone, every):
        if scale.is_folded(tick.at):
            continue
        at = scale.at(tick.at)
        dots = None if tick.is_hour else "1 4"
        ends = ((at, across.begins), (at, across.ends))
        drawn.append(job.brush.line(*ends, stroke=job.brush.colours.ash, stroke_width=0.9, stroke_dasharray=dots))
    return tag("g", *drawn, class_="hours")


def _band(notice: Notice, job: Job, scale: TimeScale, across: Span) -> str:
    """A serving's double line in its allowed time, or a slot between two heavy dotted edges."""
    colours, brush = job.brush.colours, job.brush
    span = scale.clipped(scale.span(notice.begins, notice.ends))
    ground = rectangle(Slab(span, across), brush, fill=colours.smoke, fill_opacity=0.6)
    at = scale.at(notice.line)
    sides = (span.begins, span.ends) if notice.is_slot else (at - 1.6, at + 1.6)
    stroke: dict[str, str | float] = {"stroke": colours.soot if notice.is_slot else colours.ink}
    stroke |= (
        {"stroke_width": 2, "stroke_dasharray": "0 5", "stroke_linecap": "round"}
        if notice.is_slot
        else {"stroke_width": 1}
    )
    lines = (brush.line((side, across.begins), (side, across.ends), **stroke) for side in sides)
    title = tag("title", letters(notice.text))
    return tag("g", title, ground, *lines, class_="slot" if notice.is_slot else "serving")


def across_notices(job: Job, scale: TimeScale) -> tuple[str, float]:
    """The labels of servings and slots above the axis, in as many lines as they need, and where the axis begins."""
    shown = notices(job)
    spans = [_notice_span(notice, scale) for notice in shown]
    lanes = pack(spans, gap=10)
    height = (max(lanes, default=-1) + 1) * NOTICE + 2
    drawn = (
        _notice(notice, span.begins, lane * NOTICE, scale.at(notice.line), height, job)
        for notice, span, lane in zip(shown, spans, lanes, strict=True)
    )
    return tag("g", *drawn, class_="notices"), height


def _notice_span(notice: Notice, scale: TimeScale) -> Span:
    width = text_width(notice.text, TYPE, bold=True) + 18
    begins = max(0.0, min(scale.at(notice.line) - 6, scale.room.ends - width))
    return Span(begins, begins + width)


def _notice(notice: Notice, x: float, y: float, line: float, foot: float, job: Job) -> str:
    """A sign (a plate, or a lamp for a slot), the label, and a stem down to the axis."""
    colours = job.brush.colours
    stem = job.brush.line((line, y + 13), (line, foot), stroke=colours.soot, stroke_width=1)
    label = words(
        notice.text, x + 15, y + 12, size=TYPE, fill=colours.ink, halo=colours.paper, font_weight="bold",
    )  # fmt: skip
    return stem + notice_sign(x + 6, y + 8, job, is_slot=notice.is_slot) + label


def notice_sign(x: float, y: float, job: Job, *, is_slot: bool) -> str:
    """The small sign of a serving (a plate from above) or of a demo slot (a lamp), centred on (x, y)."""
    colours = job.brush.colours
    if is_slot:
        return tag("path", d=f"M{x - 6:.1f} {y - 5:.1f}h12l-6 10z", fill=colours.ink)
    rim = tag("circle", cx=x, cy=y, r=5.4, fill=colours.paper, stroke=colours.ink, stroke_width=1.5)
    return rim + tag("circle", cx=x, cy=y, r=2.6, fill="none", stroke=colours.ink, stroke_width=0.8)


def across_axis(job: Job, scale: TimeScale, top: float) -> str:
    """The hours, written along the top of the rows."""
    colours = job.brush.colours
    rail = job.brush.line((scale.room.begins, top + 17), (scale.room.ends, top + 17), stroke=colours.ink)
    drawn = [rail]
    for tick in ticks(scale.first, scale.last, job.zone, 60):
        if scale.per_minute < HOURS_FROM and tick.at.hour % 2:
            continue
        drawn.append(
            words(
                tick.text, scale.at(tick.at), top + 13, size=TYPE, fill=colours.ink, halo=colours.paper,
                text_anchor="middle", font_weight="bold",
            )
        )  # fmt: skip
    return tag("g", *drawn, class_="axis")


def now_edge(job: Job, scale: TimeScale, across: Span) -> str:
    """The burnt part of the day under a veil, its charred edge, and the time at the edge."""
    if job.now is None or not scale.holds(job.now):
        return ""
    at, brush = scale.at(job.now), job.brush
    burnt = Slab(Span(scale.room.begins, at), across)
    veil = rectangle(burnt, brush, fill=brush.colours.ash, fill_opacity=0.22, pointer_events="none")
    text = f"now {job.local(job.now):%H:%M}"
    width = text_width(text, SMALL + 1, bold=True) + 10
    x, y = max(0.0, min(at - width / 2, job.width - width)), across.begins + 1
    if brush.turned is down_page:
        x, y = 0.0, at - 7.5
    plate = tag("rect", x=x, y=y, width=width, height=15, fill=brush.colours.ink)
    label = words(text, x + 5, y + 11.5, size=SMALL + 1, fill=brush.colours.paper, font_weight="bold")
    return tag("g", veil, charred_edge(at, across, brush), plate, label, class_="burnt", pointer_events="none")
