"""What lies behind and over the rows: hour lines, serving and demo bands with their labels, and the charred edge."""

from datetime import datetime, timedelta

from cookout.drawing.geometry import Slab, Span, TimeScale, pack, ticks
from cookout.drawing.job import Job, link
from cookout.drawing.lettering import text_width
from cookout.drawing.markup import letters, number, tag
from cookout.drawing.notices import Notice, notices
from cookout.drawing.shapes import charred_edge, rectangle, words
from cookout.drawing.style import TEXTS, TYPE

NOTICE = 17.0  # height of a line of labels over the axis
STEPS = (1, 5, 15, 60)  # minutes between lines to choose from
NAMED = (5, 15, 30, 60, 120, 180, 240, 360)  # minutes between written times to choose from
LEAST_STEP = 15.0  # pixels from line to line, at least
LEAST_APART = 4.0  # pixels between written times
LEAST_NAMED = {"24": 44.0, "12": 56.0}  # pixels from written time to written time, at least


def step_of(scale: TimeScale) -> int:
    """Minutes from line to line, as many as leave room between."""
    return next((step for step in STEPS if step * scale.per_minute >= LEAST_STEP), STEPS[-1])


def named_step_of(scale: TimeScale, job: Job) -> int:
    """Minutes from written time to written time, as many as leave room for the words."""
    least = LEAST_NAMED[job.voice.hours]
    return next((step for step in NAMED if step * scale.per_minute >= least), NAMED[-1])


def backdrop(job: Job, scale: TimeScale, across: Span) -> str:
    """Hour lines and those between over the bands of servings and slots."""
    bands = (_band(notice, job, scale, across) for notice in notices(job) if notice.is_on(scale))
    return tag("g", *bands) + _grid(job, scale, across)


def _grid(job: Job, scale: TimeScale, across: Span) -> str:
    moments = [t.at for t in ticks(scale.first, scale.last, job.voice.zone, step_of(scale))]
    shown = [at for at in moments if not scale.is_folded(at)]
    bold = named_step_of(scale, job) if step_of(scale) < 15 else 60
    full = [at for at in shown if _is_full(at, bold)]
    between = [at for at in shown if not _is_full(at, bold)]
    return "".join(
        job.brush.lines(look, [((scale.at(at), across.begins), (scale.at(at), across.ends)) for at in chosen])
        for look, chosen in (("hour", full), ("part", between))
    )


def _is_full(at: datetime, step: int) -> bool:
    return (at.hour * 60 + at.minute) % step == 0


def _band(notice: Notice, job: Job, scale: TimeScale, across: Span) -> str:
    """A serving's double line in its allowed time, or a slot between two heavy dotted edges."""
    span = scale.span(notice.begins, notice.ends)
    ground = rectangle(Slab(span, across), "band")
    at = scale.at(notice.line)
    moments = (notice.begins, notice.ends) if notice.is_slot else (notice.line,)
    held = [scale.at(moment) for moment in moments if scale.holds(moment)]
    sides = held if notice.is_slot else [side for _ in held for side in (at - 1.6, at + 1.6)]
    lines = job.brush.lines(
        "edge" if notice.is_slot else "due", [((side, across.begins), (side, across.ends)) for side in sides]
    )
    return tag("g", f"<title>{letters(notice.text)}</title>", ground, lines)


def across_notices(job: Job, scale: TimeScale) -> tuple[str, float]:
    """The labels of servings and slots above the axis, in as many lines as they need, and where the axis begins."""
    shown = [notice for notice in notices(job) if _is_labelled(notice, scale)]
    spans = [_notice_span(notice, scale) for notice in shown]
    lanes = pack(spans, gap=10)
    height = (max(lanes, default=-1) + 1) * NOTICE + 2
    drawn = (
        _notice(notice, span.begins, lane * NOTICE, height, scale, job)
        for notice, span, lane in zip(shown, spans, lanes, strict=True)
    )
    return tag("g", *drawn), height


def _is_labelled(notice: Notice, scale: TimeScale) -> bool:
    return notice.is_on(scale) if notice.is_slot else scale.holds(notice.line)


def _place(notice: Notice, scale: TimeScale) -> float:
    return scale.at(max(notice.line, scale.first))


def _notice_span(notice: Notice, scale: TimeScale) -> Span:
    width = text_width(notice.text, TYPE, bold=True) + 18
    begins = max(0.0, min(_place(notice, scale) - 6, scale.room.ends - width))
    return Span(begins, begins + width)


def _notice(notice: Notice, x: float, y: float, foot: float, scale: TimeScale, job: Job) -> str:
    """A sign (a plate, or a lamp for a slot), the label, and a stem down to the axis."""
    line = _place(notice, scale)
    stem = job.brush.line("stem", (line, y + 13), (line, foot))
    return stem + notice_sign(x + 6, y + 8, is_slot=notice.is_slot) + words(notice.text, x + 15, y + 12, "t-notice")


def notice_sign(x: float, y: float, *, is_slot: bool) -> str:
    """The small sign of a serving (a plate from above) or of a demo slot (a lamp), centred on (x, y)."""
    if is_slot:
        return tag("path", class_="dark", d=f"M{number(x - 6)} {number(y - 5)}h12l-6 10z")
    return tag("circle", class_="plate", cx=x, cy=y, r=5.4) + tag("circle", class_="rim", cx=x, cy=y, r=2.6)


def across_axis(job: Job, scale: TimeScale, top: float) -> str:
    """The hours, written along the top of the rows; smaller the times between, where there is room for them."""
    step = named_step_of(scale, job)
    drawn = [job.brush.line("base", (scale.room.begins, top + 17), (scale.room.ends, top + 17))]
    free = 0.0
    for tick in ticks(scale.first, scale.last, job.voice.zone, min(step, 60)):
        if not _is_full(tick.at, step) or scale.is_folded(tick.at):
            continue
        look, text = "t-hour" if tick.is_hour else "t-part", job.voice.tick(tick.at)
        half = text_width(text, TEXTS[look].size, bold=TEXTS[look].bold) / 2
        at = max(half, min(scale.at(tick.at), job.width - half))
        if at - half >= free:  # beside a fold, or pushed in at an edge, a time would run into the one before
            drawn.append(words(text, at, top + 13, look))
            free = at + half + LEAST_APART
    return tag("g", *drawn, class_="axis")


def creases(job: Job, scale: TimeScale, across: Span) -> str:
    """A blank strip between two creases for each stretch of time that is folded away."""
    drawn = []
    for fold in scale.folds:
        begins = scale.at(scale.first + timedelta(minutes=fold.begins))
        slab = Slab(Span(begins, begins + fold.shown), across)
        title = job.voice.words.folded.format(length=job.voice.length(fold.ends - fold.begins))
        edges = [((x, across.begins), (x, across.ends)) for x in (slab.along.begins, slab.along.ends)]
        drawn.append(link(None, title, rectangle(slab, "paper"), job.brush.lines("crease", edges)))
    return "".join(drawn)


def now_edge(job: Job, scale: TimeScale, across: Span) -> str:
    """The charred edge of the day so far: behind the rows, whose words stay clear of it."""
    if job.now is None or not scale.holds(job.now):
        return ""
    return charred_edge(scale.at(job.now), across, job.brush)


def now_veil(job: Job, scale: TimeScale, across: Span) -> str:
    """The burnt part of the day under a veil, and the time at its edge."""
    if job.now is None or not scale.holds(job.now):
        return ""
    at = scale.at(job.now)
    text = job.voice.words.now.format(time=job.voice.clock(job.now))
    width = text_width(text, TEXTS["t-now"].size, bold=True) + 10
    x, y = max(0.0, min(at - width / 2, job.width - width)), across.begins + 1
    plate = tag("rect", class_="dark", x=x, y=y, width=width, height=15)
    label = words(text, x + 5, y + 11.5, "t-now")
    return tag("g", rectangle(Slab(Span(scale.room.begins, at), across), "veil"), plate, label, class_="burnt")
