"""Two plans in one drawing: what changes, with a ghost where it stood, and an arrow to where it would stand."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime
from zoneinfo import ZoneInfo

from cookout.core.planning.comparison import Comparison
from cookout.core.planning.record import PlannedTask, PlanRecord
from cookout.core.planning.wording import HourStyle
from cookout.drawing.dense import Run, dense_runs, draw_run
from cookout.drawing.geometry import (
    Slab,
    Span,
    TimeScale,
    folds_between,
    minutes_between,
    pack_in_order,
    quarter_after,
    quarter_before,
)
from cookout.drawing.job import LEAST_BAR, Job, link
from cookout.drawing.key import Sign
from cookout.drawing.labels import Label, draw_label, label_of
from cookout.drawing.looks import Look, look_of
from cookout.drawing.markup import tag
from cookout.drawing.overview import FOLD_FROM, FOLD_MARGIN, FOLD_SHOWN
from cookout.drawing.palette import Scheme
from cookout.drawing.placing import Placing, place
from cookout.drawing.rows import By
from cookout.drawing.saying import said_in_full, texts_of
from cookout.drawing.shapes import Brush, corners, draw, draw_pin, draw_work
from cookout.drawing.shapes import words as lettered
from cookout.drawing.sheet import laid_out, scale_of
from cookout.drawing.shifts import ChangedRow, Shift, changed_rows
from cookout.drawing.timeline import ENGLISH, ON_PAGE, Frame, lines_of, refuse_too_narrow
from cookout.drawing.voice import Voice
from cookout.drawing.words import Links, Words
from cookout.drawing.zoom import Window

GHOST, BAR = 9.0, 12.0  # heights of a place before and of one after
LANE = GHOST + BAR + 6.0
PAD, GAP, FOOT = 6.0, 8.0, 6.0
MANY = 40  # changes of all rows from which only how they change is written, not what does
DENSE = 9  # changes of a row from which they are not drawn one by one
LONGEST = 360.0  # pixels of words beside a bar
LEAST_ARROW = 7.0  # a shorter way is told by words alone


@dataclass(frozen=True, slots=True)
class Moved:
    """A shift laid out: where it stood, where it stands, the words, and the top of its lane."""

    shift: Shift
    ghost: Span | None
    bar: Span | None
    placing: Placing
    top: float


@dataclass(frozen=True, slots=True)
class Band:
    """A row laid out."""

    row: ChangedRow
    label: Label
    across: Span
    moved: tuple[Moved, ...]
    runs: tuple[Run, ...] = ()


def comparison_svg(
    before: PlanRecord,
    after: PlanRecord,
    comparison: Comparison,
    *,
    by: By,
    width: int,
    scheme: Scheme = Scheme.PAGE,
    prefix: str = "changes",
    links: Links = ON_PAGE,
    hours: HourStyle = "24",
    words: Words = ENGLISH,
) -> str:
    """What changes from one plan to another as an `svg` element, a row for each dish, helper or piece that is touched.

    Tasks that change alike one after another are one bar. `links` lead to tasks of the plan `after`; what is left out
    leads nowhere. Other arguments as for `timeline_svg`. Raises `ValueError` where the width is too small.
    """
    refuse_too_narrow(width)
    voice = Voice(ZoneInfo(after.timezone), hours, words)
    job = Job(after, by, Brush(prefix), voice, width, None, links)
    frame = Frame(words.changes_of.format(event=after.event_name, by=words.by(by)), scheme)
    rows = changed_rows(before, after, comparison, by, voice)
    if not rows:
        return frame.around(job, *lines_of(job, [words.nothing_changes]))
    scale = _scale(job, rows)
    drawer = _Drawer(job, scale, before, rows)
    content = laid_out(job, rows, scale, hill=0, lay=drawer.lay, draw=drawer.draw, signs=_signs(job))
    return frame.around(job, *content)


def _scale(job: Job, rows: Sequence[ChangedRow]) -> TimeScale:
    """As much of the day as changes, without the long stretches in which nothing does."""
    shifts = [shift for row in rows for shift in row.shifts]
    first = quarter_before(min(shift.begins for shift in shifts), job.voice.zone)
    last = quarter_after(max(shift.ends for shift in shifts), job.voice.zone)
    spans = [span for shift in shifts for span in (shift.before, shift.after) if span is not None]
    busy = [Span(minutes_between(first, begins), minutes_between(first, ends)) for begins, ends in spans]
    return scale_of(
        job, Window(first, last), folds_between(busy, least=FOLD_FROM, margin=FOLD_MARGIN, shown=FOLD_SHOWN)
    )


class _Drawer:
    """Lays out and draws the rows of one comparison."""

    def __init__(self, job: Job, scale: TimeScale, before: PlanRecord, rows: Sequence[ChangedRow]) -> None:
        self.job = job
        self.scale = scale
        self.before = before
        self.tasks: Mapping[str, PlannedTask] = {task.id: task for task in job.record.tasks}
        self.named = sum(len(row.shifts) for row in rows) < MANY

    def lay(self, row: ChangedRow, top: float) -> Band:
        """A row from a height on: each change in the first lane that has room for it and its words."""
        label = label_of(row.key, row.label, row.note, self.job.width)
        begins = top + PAD + label.above
        if len(row.shifts) >= DENSE and not self.named:
            runs, foot = dense_runs(row, self.before, self.job.record, self.scale, begins)
            return Band(row, label, Span(top, max(foot + FOOT, top + label.height)), (), runs)
        placed = [self.place(shift) for shift in row.shifts]
        lanes = pack_in_order([placing.footprint for _, _, placing in placed], gap=GAP)
        moved = tuple(
            Moved(shift, ghost, bar, placing, begins + lane * LANE)
            for shift, (ghost, bar, placing), lane in zip(row.shifts, placed, lanes, strict=True)
        )
        foot = begins + (max(lanes) + 1) * LANE + FOOT
        return Band(row, label, Span(top, max(foot, top + label.height)), moved)

    def place(self, shift: Shift) -> tuple[Span | None, Span | None, Placing]:
        """Where a shift stood, where it stands, and where its words go."""
        ghost, bar = self.span(shift.before), self.span(shift.after)
        shown = [span for span in (ghost, bar) if span is not None]
        extent = Span(min(span.begins for span in shown), max(span.ends for span in shown))
        texts = texts_of(shift, self.job, self.before)
        wanted = texts if self.named else texts[-1:]
        placing = place(extent, wanted, self.scale.room, longest=LONGEST, may_cut=True, inside=False)
        return ghost, bar, placing

    def span(self, stretch: tuple[datetime, datetime] | None) -> Span | None:
        """Where a stretch of time lies; None for none."""
        return None if stretch is None else self.scale.span(*stretch, LEAST_BAR)

    def draw(self, band: Band) -> str:
        """A row with its name, the changes, and a thin line at its foot for what stays as it is."""
        y = band.across.ends - FOOT / 2
        spans = [self.scale.span(begins, ends) for begins, ends in band.row.still if self.is_shown(begins, ends)]
        still = self.job.brush.lines("still", (((span.begins, y), (span.ends, y)) for span in spans))
        drawn = [*(self.moved(moved) for moved in band.moved), *(draw_run(run, self.job) for run in band.runs)]
        return tag("g", draw_label(band.label, band.across, self.job), still, *drawn, class_="row")

    def is_shown(self, begins: datetime, ends: datetime) -> bool:
        """Whether any of a stretch of time is on the axis."""
        return begins < self.scale.last and self.scale.first < ends

    def moved(self, moved: Moved) -> str:
        """A shift as a link, or a named group where nothing is left to lead to."""
        shift, brush, top = moved.shift, self.job.brush, moved.top
        parts = []
        if moved.ghost is not None:
            parts.append(self.ghost(moved.ghost, moved))
        if moved.bar is not None:
            parts.append(self.bar(Slab(moved.bar, Span(top + GHOST, top + GHOST + BAR)), shift))
        if moved.ghost is not None and moved.bar is not None:
            parts.append(_arrow(moved.ghost.begins, moved.bar.begins, top, brush))
        if moved.placing.text:
            parts.append(lettered(moved.placing.text, moved.placing.words_from, top + GHOST + 9.5))
        first = shift.changes[0]
        address = None if first.after is None else self.job.links.to_task(first.task)
        return link(address, said_in_full(shift, self.job, self.before), *parts)

    def ghost(self, span: Span, moved: Moved) -> str:
        """Where it stood: a dashed outline, struck through where the task is left out of the plan."""
        is_gone = all(change.after is None for change in moved.shift.changes)
        top = moved.top + (GHOST if moved.bar is None else 0.0)
        slab = Slab(span, Span(top, top + (BAR if moved.bar is None else GHOST - 1.0)))
        outline = self.job.brush.shape(corners(slab.inset(0.5)), "ghost")
        a, c = slab.along, slab.across
        cross = [((a.begins - 2, c.ends + 1), (a.ends + 2, c.begins - 1))]
        return outline + (self.job.brush.lines("struck", cross) if is_gone else "")

    def bar(self, slab: Slab, shift: Shift) -> str:
        """Where it stands, in the shape of its work."""
        tasks = [self.tasks[change.task] for change in shift.changes]
        pin = draw_pin(slab, self.job.brush) if any(task.pinned for task in tasks) else ""
        if shift.look is not Look.HANDS:
            return draw(shift.look, slab, self.job.brush) + pin
        hot = [self.scale.span(task.starts_at, task.ends_at, LEAST_BAR) for task in tasks if look_of(task) is Look.FIRE]
        return draw_work(slab, (span.within(slab.along) for span in hot), self.job.brush) + pin


def _arrow(begins: float, ends: float, top: float, brush: Brush) -> str:
    """From the beginning before, over the ghost's foot, down to the beginning after."""
    way = ends - begins
    if abs(way) < LEAST_ARROW:
        return ""
    y, tip, back = top + GHOST, (ends, top + GHOST + 1), 4.0 if way > 0 else -4.0
    line = brush.line("arrow", (begins, top + GHOST / 2), (begins, y), tip)
    return line + brush.line("arrow", (ends - back, y - 3), tip, (ends - back, y + 5))


def _signs(job: Job) -> list[Sign]:
    brush, said = job.brush, job.voice.words
    place_, slab = Slab(Span(2, 24), Span(4, 12)), Slab(Span(12, 34), Span(13, 24))
    ghost = brush.shape(corners(place_), "ghost")
    struck = ghost + brush.lines("struck", [((0, 13), (26, 3))])
    return [
        (said.key_before, ghost),
        (said.key_after, draw(Look.HANDS, slab, brush) + _arrow(2, 12, 4, brush)),
        (said.key_gone, struck),
        (said.key_same, brush.line("still", (2, 14), (32, 14))),
    ]
