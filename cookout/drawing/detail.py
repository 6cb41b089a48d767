"""The timeline from near by: every task a bar of its own with its words, in as many lanes as they need."""

from collections.abc import Sequence
from dataclasses import dataclass

from cookout.drawing.fires import HILL
from cookout.drawing.geometry import Slab, Span, TimeScale, pack_in_order
from cookout.drawing.job import LEAST_BAR, Job, draw_mark, draw_ticks, needs_head_room
from cookout.drawing.key import signs_of
from cookout.drawing.labels import Label, draw_label, label_of
from cookout.drawing.looks import Look, look_of
from cookout.drawing.markup import tag
from cookout.drawing.placing import Placing, place
from cookout.drawing.rows import FEW, Mark, Row
from cookout.drawing.shapes import TICK_ROOM, rectangle, words
from cookout.drawing.sheet import laid_out, scale_of
from cookout.drawing.zoom import Window, has_gutter

BAR = 18.0  # height of a task
LANE_GAP = 6.0
ROW_PAD = 5.0
GAP = 7.0  # least room between two tasks, or a task's words and the next task, in one lane
# Longer words are not written beside a task: where tasks are few, where they are many.
LONGEST_BESIDE = {True: 420.0, False: 230.0}


@dataclass(frozen=True, slots=True)
class Written:
    """A mark with its bar and its words in their places."""

    mark: Mark
    placing: Placing


@dataclass(frozen=True, slots=True)
class Band:
    """A row laid out: its stretch down the page, and for each mark the top of its bar."""

    row: Row
    label: Label
    across: Span
    placed: tuple[tuple[Written, float], ...]


def detail_svg(job: Job, rows: Sequence[Row], shown: Window) -> tuple[str, float]:
    """The drawing's content and its height in pixels."""
    scale = scale_of(job, shown)
    return laid_out(
        job,
        rows,
        scale,
        hill=HILL,
        lay=lambda row, top: _band(row, scale, top, job),
        draw=lambda band: _row(band, job, scale),
        signs=signs_of(job),
    )


def _band(row: Row, scale: TimeScale, top: float, job: Job) -> Band:
    written = [_written(mark, scale, job) for mark in row.marks]
    lanes = pack_in_order([one.placing.footprint for one in written], gap=GAP)
    label = label_of(row.key, row.label, row.note, job.width)
    begins = top + ROW_PAD + label.above
    tops, bottom = _lane_tops(written, lanes, begins)
    placed = tuple((one, tops[lane]) for one, lane in zip(written, lanes, strict=True))
    return Band(row, label, Span(top, max(bottom + ROW_PAD - LANE_GAP, top + label.height)), placed)


def _lane_tops(written: Sequence[Written], lanes: Sequence[int], top: float) -> tuple[list[float], float]:
    """The top of the bars of each lane, with head room where something stands on them, and the bottom of all."""
    tops: list[float] = []
    for lane in range(max(lanes) + 1):
        tall = any(needs_head_room(one.mark) for one, at in zip(written, lanes, strict=True) if at == lane)
        tops.append(top + (TICK_ROOM if tall else 0.0))
        top = tops[-1] + BAR + LANE_GAP
    return tops, top


def _written(mark: Mark, scale: TimeScale, job: Job) -> Written:
    bar = scale.span(mark.task.starts_at, mark.task.ends_at, LEAST_BAR)
    longest = LONGEST_BESIDE[len(job.record.tasks) <= FEW]
    return Written(mark, place(bar, mark.texts, scale.room, longest=longest, may_cut=not has_gutter(job.width)))


def _row(band: Band, job: Job, scale: TimeScale) -> str:
    rail = presence(band.row, band.across.begins, scale)
    drawn = (_task(one, top, job, scale) for one, top in band.placed)
    return tag("g", draw_label(band.label, band.across, job), rail, *drawn, class_="row")


def _task(one: Written, top: float, job: Job, scale: TimeScale) -> str:
    slab = Slab(one.placing.bar, Span(top, top + BAR))
    signs = draw_ticks(one.mark, top, scale, job)
    return draw_mark(one.mark, slab, scale, job, _words(one, top)) + signs


def _words(one: Written, top: float) -> str:
    placing = one.placing
    if not placing.text:
        return ""
    look = look_of(one.mark.task)
    baseline = top + (11.5 if look in {Look.FIRE, Look.OVEN} else 13)
    return words(placing.text, placing.words_from, baseline, ground_look(look, inside=placing.inside))


def ground_look(look: Look, *, inside: bool) -> str:
    """The class of words, by what they stand on."""
    if not inside or look in {Look.WAIT, Look.PLATE}:
        return "t"
    return "t-pot" if look is Look.OVEN else "t-iron"


def presence(row: Row, top: float, scale: TimeScale) -> str:
    """A rail along the top of a helper's row for as long as the helper is there."""
    spans = [scale.clipped(scale.span(begins, ends)) for begins, ends in row.present]
    slabs = (Slab(span, Span(top - 1, top + 1)) for span in spans if span.length > 0)
    return "".join(rectangle(slab, "dark") for slab in slabs)
