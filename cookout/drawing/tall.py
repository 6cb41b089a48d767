"""The timeline with time down the page, for narrow screens: panels of a few columns each, one below the other.

A phone has no room for all rows side by side, and a drawing that scrolls sideways loses the names of its rows. So each
panel holds as many columns as can be read at once, repeats the hours at its left edge, shows only the stretch of time
that its own columns use, and folds away long empty stretches. A task is a bar with its words at its right, wrapped; the
lanes leave room for the words.
"""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from datetime import datetime
from itertools import groupby
from math import ceil

from cookout.core.planning.record import PlannedFiring
from cookout.drawing.backdrop import backdrop, notice_sign, now_edge
from cookout.drawing.geometry import Slab, Span, TimeScale, folds_between, minutes_between, pack, ticks
from cookout.drawing.key import key
from cookout.drawing.lettering import wrap
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
    notices,
    stretch,
    tail_of,
)
from cookout.drawing.rows import Mark, Row
from cookout.drawing.shapes import TICK_ROOM, rectangle, words

GUTTER = 56.0  # room for the hours
LEAST_LANE = 104.0  # narrowest lane that still holds words
BAR_FROM = TICK_ROOM + 3.0  # where in its lane a bar begins: right of the signs that stand on it
BAR = 15.0  # width of a bar
WORDS_FROM = BAR_FROM + BAR + 6.0
LINE = 13.0  # height of a line of words
GAP = 5.0
PER_MINUTE = (
    1.8,
    2.4,
    3.0,
    3.8,
    4.6,
)  # pixels a minute to choose from: a stretched row needs fewer lanes
PANEL_GAP = 26.0
FOLD_FROM, FOLD_MARGIN, FOLD_SHOWN = 45.0, 8.0, 26.0  # empty minutes that are folded, minutes left, pixels shown
MOST_LINES = 4  # longer texts give way to shorter ones where there are any


@dataclass(frozen=True, slots=True)
class Item:
    """Something in a lane: a mark or a firing, from and until, and its words wrapped."""

    what: Mark | PlannedFiring
    begins: datetime
    ends: datetime
    lines: tuple[str, ...]

    def length(self, per_minute: float) -> float:
        """Pixels along that it and its words take."""
        drawn = max(LEAST_BAR, minutes_between(self.begins, self.ends) * per_minute)
        return max(drawn, LINE * len(self.lines))


@dataclass(frozen=True, slots=True)
class Column:
    """A row, or a part of one that fits a panel: its items by lane, and the least pixels a minute that it needs."""

    label: str
    note: str
    lanes: tuple[tuple[Item, ...], ...]
    per_minute: float

    @property
    def items(self) -> tuple[Item, ...]:
        """All its items."""
        return tuple(item for lane in self.lanes for item in lane)


@dataclass(frozen=True, slots=True)
class Page:
    """How the panels are cut: lanes a panel, and the width of each in pixels."""

    lanes: int
    lane_width: float

    @classmethod
    def of_width(cls, width: int) -> "Page":
        """As many lanes as the width holds."""
        lanes = max(1, int((width - GUTTER) / LEAST_LANE))
        return cls(lanes, (width - GUTTER) / lanes)

    def lines(self, *texts: str) -> tuple[str, ...]:
        """The first text that wraps into few lines beside a bar, else the last."""
        wrapped = [wrap(text, TYPE, self.lane_width - WORDS_FROM - 4) for text in texts] or [()]
        return next((lines for lines in wrapped if len(lines) <= MOST_LINES), wrapped[-1])


def tall_svg(job: Job, rows: Iterable[Row]) -> tuple[str, float]:
    """The drawing's content and its height in pixels."""
    page = Page.of_width(job.width)
    columns = [*_firing_columns(job, page), *(column for row in rows for column in _row_columns(row, page))]
    top, drawn = 0.0, []
    for chosen in _panels(columns, page):
        content, bottom = _panel(chosen, job, page, top)
        drawn.append(tag("g", content, class_="panel"))
        top = bottom + PANEL_GAP
    signs, height = key(job, top)
    return "".join([*drawn, signs]), height


def _panels(columns: Iterable[Column], page: Page) -> Iterator[list[Column]]:
    """Columns side by side as long as their lanes fit, in their order."""
    panel: list[Column] = []
    for column in columns:
        if panel and sum(len(one.lanes) for one in (*panel, column)) > page.lanes:
            yield panel
            panel = []
        panel.append(column)
    if panel:
        yield panel


def _row_columns(row: Row, page: Page) -> list[Column]:
    items = [Item(mark, mark.task.starts_at, mark.task.ends_at, page.lines(*mark.texts)) for mark in row.marks]
    return _columns(row.label, row.note, items, page)


def _firing_columns(job: Job, page: Page) -> list[Column]:
    items = [
        Item(firing, firing.lit_at, tail_of(firing), page.lines(firing_text(firing, job)))
        for firing in job.record.firings
    ]
    return _columns("Coals", "lit, ashed over, fading", items, page) if items else []


def _columns(label: str, note: str, items: Sequence[Item], page: Page) -> list[Column]:
    """The items in lanes at the scale that takes the least page; in several columns where one has no room."""
    tried = [(per_minute, _in_lanes(items, per_minute)) for per_minute in PER_MINUTE]
    per_minute, lanes = min(tried, key=lambda pair: pair[0] * ceil(len(pair[1]) / page.lanes))
    return [
        Column(label, note, tuple(lanes[start : start + page.lanes]), per_minute)
        for start in range(0, len(lanes), page.lanes)
    ]


def _in_lanes(items: Sequence[Item], per_minute: float) -> list[tuple[Item, ...]]:
    """The items in as few lanes as keep every item and its words free of the others."""
    origin = min(item.begins for item in items)
    spans = [_extent(item, origin, per_minute) for item in items]
    lanes = pack(spans, gap=GAP)
    ordered = sorted(zip(lanes, spans, items, strict=True), key=lambda triple: (triple[0], triple[1].begins))
    return [tuple(item for _, _, item in group) for _, group in groupby(ordered, lambda triple: triple[0])]


def _extent(item: Item, origin: datetime, per_minute: float) -> Span:
    begins = minutes_between(origin, item.begins) * per_minute
    return Span(begins, begins + item.length(per_minute))


def _scale(items: Sequence[Item], job: Job, top: float, per_minute: float) -> TimeScale:
    """The panel's scale from `top` on, with its empty stretches folded away."""
    first, last = stretch([moment for item in items for moment in (item.begins, item.ends)], job.zone)
    busy = [_extent(item, first, per_minute) for item in items]
    minutes = [Span(span.begins / per_minute, span.ends / per_minute) for span in busy]
    folds = folds_between(minutes, least=FOLD_FROM, margin=FOLD_MARGIN, shown=FOLD_SHOWN)
    return TimeScale(first, last, top, per_minute, folds)


def _panel(columns: Sequence[Column], job: Job, page: Page, top: float) -> tuple[str, float]:
    """One panel from `top` on, and where it ends."""
    items = [item for column in columns for item in column.items]
    per_minute = max(column.per_minute for column in columns)
    named, below = _names(columns, job, page, top)
    listed, below = _listed_notices(_scale(items, job, 0, per_minute), job, below)
    scale = _scale(items, job, below + 8, per_minute)
    across = Span(GUTTER, float(job.width))
    drawn = [backdrop(job, scale, across), _hours(job, scale), _folds(job, scale), listed, named]
    for place, lane in enumerate(lane for column in columns for lane in column.lanes):
        drawn.extend(_item(item, GUTTER + place * page.lane_width, scale, job) for item in lane)
    drawn.append(now_edge(job, scale, across))
    low = max(scale.at(item.begins) + item.length(per_minute) for item in items)
    return "".join(drawn), max(low, scale.room.ends)


def _folds(job: Job, scale: TimeScale) -> str:
    """Where time is folded away, and how much of it."""
    colours = job.brush.colours
    drawn = []
    for fold in scale.folds:
        top = scale.offset + fold.begins * scale.per_minute - sum(
            other.hides(fold.begins, scale.per_minute) for other in scale.folds
        )  # fmt: skip
        slab = Slab(Span(top, top + fold.shown), Span(GUTTER, float(job.width)))
        text = f"{_length(fold.ends - fold.begins)} without a task here"
        crease: dict[str, str | float] = {"stroke": colours.soot, "stroke_width": 1.2, "stroke_dasharray": "10 3 2 3"}
        drawn.append(rectangle(slab, job.brush, fill=colours.paper))
        drawn += [job.brush.line((y, GUTTER), (y, job.width), **crease) for y in (top, top + fold.shown)]
        drawn.append(words(text, GUTTER + 11, top + 17, size=SMALL, fill=colours.soot, font_style="italic"))
    return tag("g", *drawn, class_="folds")


def _length(minutes: float) -> str:
    hours, rest = divmod(round(minutes), 60)
    return f"{hours} h {rest} min" if hours else f"{rest} min"


def _names(columns: Sequence[Column], job: Job, page: Page, top: float) -> tuple[str, float]:
    """The names of the rows over their lanes, and where they end."""
    colours = job.brush.colours
    drawn = [tag("path", d=f"M0 {top + 2:.1f}H{job.width}", stroke=colours.ink, stroke_width=2.5)]
    left, low = GUTTER + 3, top
    for column in columns:
        width, y = len(column.lanes) * page.lane_width, top + 18
        for text, size, weight in _name_lines(column.label, column.note, width - 10):
            fill = colours.ink if weight else colours.soot
            drawn.append(words(text, left, y, size=size, fill=fill, font_weight=weight))
            y += 14
        left, low = left + width, max(low, y)
    return "".join(drawn), low - 6


def _name_lines(label: str, note: str, room: float) -> Iterator[tuple[str, float, str | None]]:
    for text in wrap(label, TYPE + 0.5, room, bold=True):
        yield text, TYPE + 0.5, "bold"
    for text in wrap(note, SMALL, room):
        yield text, SMALL, None


def _listed_notices(scale: TimeScale, job: Job, top: float) -> tuple[str, float]:
    """The servings and slots that this panel's hours hold, one line each, and where the list ends."""
    drawn = []
    for notice in notices(job):
        if not scale.holds(notice.line):
            continue
        for place, line in enumerate(wrap(notice.text, SMALL + 1, job.width - GUTTER - 26)):
            if place == 0:
                drawn.append(notice_sign(GUTTER + 9, top + 8, job, is_slot=notice.is_slot))
            drawn.append(words(line, GUTTER + 20, top + 12, size=SMALL + 1, fill=job.brush.colours.ink))
            top += 16
    return "".join(drawn), top


def _hours(job: Job, scale: TimeScale) -> str:
    """The hours, the quarters between them, and the signs of servings and slots at the left edge."""
    colours = job.brush.colours
    drawn = []
    for tick in ticks(scale.first, scale.last, job.zone):
        if scale.is_folded(tick.at):
            continue
        text, size = (tick.text, TYPE) if tick.is_hour else (f":{tick.at:%M}", SMALL)
        fill, weight = (colours.ink, "bold") if tick.is_hour else (colours.soot, None)
        y = scale.at(tick.at) + 4
        drawn.append(words(text, 42, y, size=size, fill=fill, text_anchor="end", font_weight=weight))
    signs = (
        notice_sign(GUTTER - 5, scale.at(notice.line), job, is_slot=notice.is_slot)
        for notice in notices(job)
        if scale.holds(notice.line)
    )
    return tag("g", *drawn, *signs, class_="axis")


def _item(item: Item, left: float, scale: TimeScale, job: Job) -> str:
    begins = scale.at(item.begins)
    across = Span(left + BAR_FROM, left + BAR_FROM + BAR)
    lettering = "".join(
        words(
            line, left + WORDS_FROM, begins + 10 + LINE * place, size=TYPE, fill=job.brush.colours.ink,
            halo=job.brush.colours.paper,
        )
        for place, line in enumerate(item.lines)
    )  # fmt: skip
    if isinstance(item.what, PlannedFiring):
        return draw_firing_with_tasks(item.what, Span(across.begins - 6, across.ends), scale, job, lettering)
    slab = Slab(scale.span(item.begins, item.ends, LEAST_BAR), across)
    return draw_mark(item.what, slab, job, lettering) + draw_ticks(item.what, across.begins, scale, job)
