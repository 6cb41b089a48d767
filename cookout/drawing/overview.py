"""The whole day at a glance: a row for each dish, helper or piece of gear, its short tasks drawn together.

A day fits a phone's width once only what lasts is told apart.
"""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import datetime

from cookout.drawing.bouts import Bout, bouts_of
from cookout.drawing.detail import ground_look, presence
from cookout.drawing.fires import SHORT_HILL
from cookout.drawing.geometry import Fold, Slab, Span, TimeScale, folds_between, minutes_between, pack
from cookout.drawing.job import Job, link
from cookout.drawing.key import signs_of
from cookout.drawing.labels import Label, draw_label, label_of
from cookout.drawing.lettering import text_width
from cookout.drawing.looks import Look
from cookout.drawing.markup import tag
from cookout.drawing.placing import BESIDE
from cookout.drawing.rows import Row, steps_of
from cookout.drawing.shapes import draw, draw_lamp, draw_nicks, draw_pin, draw_work, words
from cookout.drawing.sheet import laid_out, scale_of
from cookout.drawing.style import TYPE
from cookout.drawing.zoom import Window

BAR = 14.0
LOAD = 26.0  # height of a curve of pieces in use
LANE_GAP = 4.0
PAD = 5.0
HEAD = 7.0  # room above a bar for the strokes on a lid, a lamp, a pin
FOLD_FROM, FOLD_MARGIN, FOLD_SHOWN = 240.0, 30.0, 30.0  # empty minutes that are folded, minutes left, pixels shown


@dataclass(frozen=True, slots=True)
class Placed:
    """A bout in its place: the top of its bar, and what is written by it from where on ("": nothing)."""

    bout: Bout
    top: float
    text: str
    words_from: float


@dataclass(frozen=True, slots=True)
class Band:
    """A row laid out."""

    row: Row
    label: Label
    across: Span
    placed: tuple[Placed, ...]


def overview_svg(job: Job, rows: Sequence[Row], shown: Window) -> tuple[str, float]:
    """The drawing's content and its height in pixels."""
    scale = scale_of(job, shown, _empty(job, shown))
    return laid_out(
        job,
        rows,
        scale,
        hill=SHORT_HILL,
        lay=lambda row, top: _band(row, scale, top, job),
        draw=lambda band: _row(band, job, scale),
        signs=signs_of(job, afar=True),
    )


def _empty(job: Job, shown: Window) -> tuple[Fold, ...]:
    """The long stretches in which nothing is done, a night between two days above all."""
    spans: list[tuple[datetime, datetime]] = [(task.starts_at, task.ends_at) for task in job.record.tasks]
    spans += [(slot.starts_at, slot.ends_at) for slot in job.record.slots]
    busy = [Span(minutes_between(shown.begins, a), minutes_between(shown.begins, b)) for a, b in spans]
    return folds_between(busy, least=FOLD_FROM, margin=FOLD_MARGIN, shown=FOLD_SHOWN)


def _band(row: Row, scale: TimeScale, top: float, job: Job) -> Band:
    label = label_of(row.key, row.label, row.note, job.width)
    if row.capacity:
        return Band(row, label, Span(top, top + max(LOAD + 2 * PAD + label.above, label.height)), ())
    bouts = bouts_of(row.marks, scale)
    lanes = pack([bout.span for bout in bouts])
    placed: list[Placed] = []
    bottom = top + PAD + label.above
    for lane in range(max(lanes) + 1):
        own = [bout for bout, at in zip(bouts, lanes, strict=True) if at == lane]
        bar_top = bottom + (HEAD if any(_needs_head_room(bout) for bout in own) else 0.0)
        placed.extend(_lettered(own, bar_top, scale))
        bottom = bar_top + BAR + LANE_GAP
    return Band(row, label, Span(top, max(bottom + PAD - LANE_GAP, top + label.height)), tuple(placed))


def _needs_head_room(bout: Bout) -> bool:
    return any(mark.ticks or mark.task.live_in or mark.task.pinned for mark in bout.marks)


def _lettered(bouts: Sequence[Bout], top: float, scale: TimeScale) -> Iterable[Placed]:
    """The bouts of a lane, each with the longest text that fits in its bar or between it and the next."""
    ends = [*(bout.span.begins - BESIDE for bout in bouts[1:]), scale.room.ends]
    for bout, limit in zip(bouts, ends, strict=True):
        inside = next((t for t in bout.texts if text_width(t, TYPE) + 8 <= bout.span.length), "")
        beside = next((t for t in bout.texts if bout.span.ends + 5 + text_width(t, TYPE) <= limit), "")
        if inside and len(inside) >= len(beside):
            yield Placed(bout, top, inside, bout.span.begins + 4)
        else:
            yield Placed(bout, top, beside, bout.span.ends + 5)


def _row(band: Band, job: Job, scale: TimeScale) -> str:
    rail = presence(band.row, band.across.begins, scale) + _load(band, job, scale)
    in_order = sorted(band.placed, key=lambda placed: placed.bout.span.begins)
    drawn = (_bout(placed, job, scale) for placed in in_order)
    return tag("g", draw_label(band.label, band.across, job), rail, *drawn, class_="row")


def _load(band: Band, job: Job, scale: TimeScale) -> str:
    """How many pieces are in use: a step up for each that is taken, under a dotted line at all there are."""
    row, base = band.row, band.across.ends - PAD / 2
    if not row.capacity:
        return ""
    points, level = [(scale.room.begins, base)], base
    for at, count in steps_of(row.uses):
        along = scale.at(min(max(at, scale.first), scale.last))
        points.append((along, level))
        level = base - LOAD * count / row.capacity
        points.append((along, level))
    points += [(scale.room.ends, level), (scale.room.ends, base)]
    all_there = job.brush.line("part", (scale.room.begins, base - LOAD), (scale.room.ends, base - LOAD))
    return link(None, f"{row.label}: {row.note}", job.brush.shape(points, "load"), all_there)


def _bout(placed: Placed, job: Job, scale: TimeScale) -> str:
    """A bout as a link: to its task, or to a closer look at its time where it has several."""
    bout = placed.bout
    slab = Slab(bout.span, Span(placed.top, placed.top + BAR))
    shape = draw_work(slab, bout.hot, job.brush) if bout.look is Look.HANDS else draw(bout.look, slab, job.brush)
    ticks = [tick for mark in bout.marks for tick in mark.ticks]
    nicks = draw_nicks(((scale.at(t.starts_at) + scale.at(t.ends_at)) / 2 for t in ticks), placed.top, job.brush)
    signs = [draw_lamp(slab, job.brush)] if any(mark.task.live_in for mark in bout.marks) else []
    signs += [draw_pin(slab, job.brush)] if any(mark.task.pinned for mark in bout.marks) else []
    return link(_address(bout, job), _said(bout, job), shape, nicks, *signs, _words(placed))


def _address(bout: Bout, job: Job) -> str | None:
    first = bout.marks[0].task
    if len(bout.marks) == 1 or not job.links.closer:
        return job.links.to_task(first.id)
    return job.links.to_time(f"{first.starts_at.astimezone(job.voice.zone):%Y-%m-%dT%H:%M}")


def _said(bout: Bout, job: Job) -> str:
    if len(bout.marks) > 1:
        return job.voice.several(bout.tasks, job.record)
    mark = bout.marks[0]
    said = job.voice.task(mark.task, job.record)
    return f"{said}; {job.voice.words.with_ticks.format(count=len(mark.ticks))}" if mark.ticks else said


def _words(placed: Placed) -> str:
    if not placed.text:
        return ""
    inside = placed.words_from < placed.bout.span.ends
    baseline = placed.top + (9.5 if inside and (placed.bout.hot or placed.bout.look is Look.OVEN) else 11)
    return words(placed.text, placed.words_from, baseline, ground_look(placed.bout.look, inside=inside))
