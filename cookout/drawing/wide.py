"""The timeline with time across the page: rows with their labels at the left, lanes below one another."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from cookout.drawing.backdrop import across_axis, across_notices, backdrop, now_edge
from cookout.drawing.geometry import Slab, Span, TimeScale, pack
from cookout.drawing.key import key
from cookout.drawing.lettering import text_width, wrap
from cookout.drawing.looks import Look, look_of
from cookout.drawing.markup import tag
from cookout.drawing.parts import (
    LEAST_BAR,
    SMALL,
    TYPE,
    Job,
    draw_firing_with_tasks,
    draw_mark,
    draw_ticks,
    firing_text,
    heat_of,
    moments_of,
    needs_head_room,
    stretch,
)
from cookout.drawing.rows import FEW, Mark, Row
from cookout.drawing.shapes import TICK_ROOM, Heat, rectangle, words

GUTTER = 150.0  # room for the labels of the rows
EDGE = 12.0
BAR = 17.0  # height of a task
LANE_GAP = 5.0
ROW_PAD = 5.0
GAP = 7.0  # least room between two tasks, or a task's words and the next task, in one lane
BESIDE = 6.0  # between a bar and the words beside it
LONGEST_BESIDE = {True: 420.0, False: 230.0}  # longer words are not written beside a task; True where tasks are few
AXIS = 18.0
FIRING = 26.0
AXIS_AGAIN = 620.0  # after so many pixels of rows the hours are written again


@dataclass(frozen=True, slots=True)
class Written:
    """A mark along the axis: its bar, what it and its words take up, the words and where they begin ("": none)."""

    mark: Mark
    bar: Span
    footprint: Span
    text: str = ""
    words_from: float = 0.0

    @property
    def inside(self) -> bool:
        """Whether the words stand in the bar."""
        return self.bar.begins < self.words_from < self.bar.ends


@dataclass(frozen=True, slots=True)
class Band:
    """A row laid out: its stretch down the page, and for each mark the top of its bar."""

    row: Row
    across: Span
    placed: tuple[tuple[Written, float], ...]


def wide_svg(job: Job, rows: Iterable[Row]) -> tuple[str, float]:
    """The drawing's content and its height in pixels."""
    scale = TimeScale.fitted(*stretch(moments_of(job.record), job.zone), Span(GUTTER, job.width - EDGE))
    head, top = across_notices(job, scale)
    fires, below = _fires(job, scale, top + AXIS)
    bands, axes, bottom = _stack(rows, scale, below, LONGEST_BESIDE[len(job.record.tasks) <= FEW])
    plot = Span(top, bottom)
    signs, height = key(job, bottom + 12)
    content = [
        backdrop(job, scale, plot),
        head,
        *(across_axis(job, scale, y) for y in (top, *axes)),
        fires,
        *(_row(band, job, scale) for band in bands),
        now_edge(job, scale, plot),
        signs,
    ]
    return "".join(content), height


def _fires(job: Job, scale: TimeScale, top: float) -> tuple[str, float]:
    """The firings in lanes of their own, and where the next row begins."""
    if not job.record.firings:
        return "", top
    heats = [heat_of(firing, scale) for firing in job.record.firings]
    lanes = pack([Span(heat.lit, heat.gone) for heat in heats], gap=GAP)
    drawn = []
    for firing, heat, lane in zip(job.record.firings, heats, lanes, strict=True):
        base = top + ROW_PAD + lane * (FIRING + LANE_GAP)
        label = firing_text(firing, job)
        fitting = next((t for t in (label, f"{firing.coals} coals", str(firing.coals)) if _fits(t, heat)), "")
        text = words(
            fitting, heat.ready + 4, base + FIRING - 8, size=TYPE, fill=job.brush.colours.ink,
            halo=job.brush.colours.paper,
        )  # fmt: skip
        drawn.append(draw_firing_with_tasks(firing, Span(base, base + FIRING), scale, job, text))
    bottom = top + 2 * ROW_PAD + (max(lanes) + 1) * (FIRING + LANE_GAP)
    return _label("Coals", "lit, ashed over, fading", Span(top, bottom), job) + "".join(drawn), bottom


def _fits(text: str, heat: Heat) -> bool:
    return text_width(text, TYPE) + 8 <= heat.fading - heat.ready


def _stack(rows: Iterable[Row], scale: TimeScale, top: float, longest: float) -> tuple[list[Band], list[float], float]:
    """The rows below one another, where the hours are written again, and where it all ends."""
    bands: list[Band] = []
    axes: list[float] = []
    axis_at = top
    for row in rows:
        if top - axis_at > AXIS_AGAIN:
            axes.append(top)
            axis_at, top = top, top + AXIS
        bands.append(_band(row, scale, top, longest))
        top = bands[-1].across.ends
    return bands, axes, top


def _band(row: Row, scale: TimeScale, top: float, longest: float) -> Band:
    written = [_written(mark, scale, longest) for mark in row.marks]
    lanes = pack([one.footprint for one in written], gap=GAP)
    tops, bottom = _lane_tops(written, lanes, top + ROW_PAD)
    placed = tuple((one, tops[lane]) for one, lane in zip(written, lanes, strict=True))
    return Band(row, Span(top, max(bottom + ROW_PAD - LANE_GAP, top + _label_height(row))), placed)


def _lane_tops(written: Sequence[Written], lanes: Sequence[int], top: float) -> tuple[list[float], float]:
    """The top of the bars of each lane, with head room where something stands on them, and the bottom of all."""
    tops: list[float] = []
    for lane in range(max(lanes) + 1):
        tall = any(needs_head_room(one.mark) for one, at in zip(written, lanes, strict=True) if at == lane)
        tops.append(top + (TICK_ROOM if tall else 0.0))
        top = tops[-1] + BAR + LANE_GAP
    return tops, top


def _written(mark: Mark, scale: TimeScale, longest: float) -> Written:
    """The mark with the longest of its texts that fits in its bar; else beside it, after or before; else none."""
    bar = scale.span(mark.task.starts_at, mark.task.ends_at, LEAST_BAR)
    for text in mark.texts:
        if text_width(text, TYPE) + 10 <= bar.length:
            return Written(mark, bar, bar, text, bar.begins + 5)
    for text in mark.texts:
        if (width := text_width(text, TYPE)) > longest:
            continue
        if (ends := bar.ends + BESIDE + width) <= scale.room.ends:
            return Written(mark, bar, Span(bar.begins, ends), text, bar.ends + BESIDE)
        if (begins := bar.begins - BESIDE - width) >= scale.room.begins:
            return Written(mark, bar, Span(begins, bar.ends), text, begins)
    return Written(mark, bar, bar)


def _row(band: Band, job: Job, scale: TimeScale) -> str:
    rail = _presence(band, job, scale)
    drawn = (_task(one, top, job, scale) for one, top in band.placed)
    return tag("g", _label(band.row.label, band.row.note, band.across, job), rail, *drawn, class_="row")


def _task(one: Written, top: float, job: Job, scale: TimeScale) -> str:
    slab = Slab(one.bar, Span(top, top + BAR))
    signs = draw_ticks(one.mark, top, scale, job)
    return draw_mark(one.mark, slab, job, _words(one, top, job)) + signs


def _words(one: Written, top: float, job: Job) -> str:
    if not one.text:
        return ""
    colours = job.brush.colours
    look = look_of(one.mark.task)
    on_iron = one.inside and look in {Look.HANDS, Look.FIRE}
    baseline = top + (11.5 if look in {Look.FIRE, Look.OVEN} else 12.5)
    halo = None if on_iron else colours.smoke if look is Look.OVEN and one.inside else colours.paper
    fill = colours.on_iron if on_iron else colours.ink
    return words(one.text, one.words_from, baseline, size=TYPE, fill=fill, halo=halo)


def _presence(band: Band, job: Job, scale: TimeScale) -> str:
    """A rail along the top of a helper's row for as long as the helper is there."""
    spans = [scale.clipped(scale.span(begins, ends)) for begins, ends in band.row.present]
    slabs = (Slab(span, Span(band.across.begins - 1, band.across.begins + 1)) for span in spans if span.length)
    return "".join(rectangle(slab, job.brush, fill=job.brush.colours.ink, class_="present") for slab in slabs)


def _label_lines(row_label: str, note: str) -> tuple[tuple[str, ...], tuple[str, ...]]:
    room = GUTTER - 14
    return wrap(row_label, TYPE + 0.5, room, bold=True), wrap(note, SMALL, room)


def _label_height(row: Row) -> float:
    label, note = _label_lines(row.label, row.note)
    return 10 + 14 * len(label) + 12 * len(note)


def _label(label: str, note: str, across: Span, job: Job) -> str:
    """A row's name in the gutter, under the line that parts it from the row above."""
    colours = job.brush.colours
    line = job.brush.line((0, across.begins), (job.width, across.begins), stroke=colours.ash, stroke_width=0.8)
    bold, plain = _label_lines(label, note)
    y = across.begins + 15
    written = []
    for text in bold:
        written.append(words(text, 2, y, size=TYPE + 0.5, fill=colours.ink, font_weight="bold"))
        y += 14
    for text in plain:
        written.append(words(text, 2, y - 1, size=SMALL, fill=colours.soot))
        y += 12
    return line + "".join(written)
