"""The event's timeline as one SVG text."""

from collections.abc import Iterable
from dataclasses import dataclass, replace
from datetime import datetime
from zoneinfo import ZoneInfo

from cookout.core.planning.record import PlanRecord
from cookout.core.planning.wording import HourStyle
from cookout.drawing import shapes
from cookout.drawing.detail import detail_svg
from cookout.drawing.job import Job
from cookout.drawing.lettering import wrap
from cookout.drawing.markup import letters, number, tag
from cookout.drawing.overview import overview_svg
from cookout.drawing.palette import PALETTES, Scheme
from cookout.drawing.rows import By, Row, oven_rows, record_of_rows, rows_of
from cookout.drawing.shapes import Brush, patterns
from cookout.drawing.style import ROOT, TEXTS, rules
from cookout.drawing.voice import Voice
from cookout.drawing.words import Links, Words
from cookout.drawing.zoom import LEAST_WIDTH, Window, Zoom, part_of, whole

FACE = "var(--drawing-face, ui-sans-serif, system-ui, 'Noto Sans', 'Liberation Sans', sans-serif)"
PRINT_FACE = "Libertinus Serif"
ENGLISH = Words()
ON_PAGE = Links()


def timeline_svg(
    record: PlanRecord,
    *,
    by: By,
    width: int,
    now: datetime | None = None,
    scheme: Scheme = Scheme.PAGE,
    prefix: str = "timeline",
    zoom: Zoom = "hour",
    window: Window | None = None,
    only: str = "",
    links: Links = ON_PAGE,
    hours: HourStyle = "24",
    words: Words = ENGLISH,
) -> str:
    """The timeline of a plan as an `svg` element `width` pixels wide and as tall as it needs.

    `by` chooses the rows, `only` the key of one row alone. `now` (aware) marks the day so far, None marks nothing.
    `zoom` "day" draws short tasks that follow one another as one, "hour" every task, "minute" says also how long each
    takes and who does it. `window` is the stretch of time shown, None for all of the plan. From 560 pixels on the names
    of the rows stand at their left, below that above them. `links` say where tasks, times and rows lead to. With
    `Scheme.PAGE` looks are classes of the page's stylesheet, see `style`; the other schemes are fixed. `prefix` keeps
    ids apart where a page has two drawings. A record without tasks gives what stands in the way, in words. Raises
    `ValueError` where the width is too small.
    """
    refuse_too_narrow(width)
    voice = Voice(ZoneInfo(record.timezone), hours, words)
    shown = record if window is None else part_of(record, window)
    job = Job(shown, by, Brush(prefix), voice, width, now, links, window)
    frame = Frame(words.timeline_of.format(event=record.event_name, by=words.by(by)), scheme)
    if not record.tasks:
        return frame.around(job, *_no_plan(job))
    rows = rows_of(shown, by, voice, zoom, only)
    if only:
        job = replace(job, record=record_of_rows(shown, rows))
    # A row alone takes the hours of its own work, which may be fewer than those in which its dishes may be served.
    alone = replace(job.record, servings=(), slots=()) if only and rows else record
    return frame.around(job, *_content(job, rows, zoom, window or whole(alone)))


def fire_svg(
    record: PlanRecord,
    *,
    width: int,
    scheme: Scheme = Scheme.GREY,
    prefix: str = "fire",
    links: Links = ON_PAGE,
    hours: HourStyle = "24",
    words: Words = ENGLISH,
) -> str:
    """The fire's part of the timeline: firings as hills of heat, and under them each oven with its bakes and top-ups.

    As wide as `width` pixels, with time across the page. `ValueError` where the width is too small.
    """
    refuse_too_narrow(width)
    voice = Voice(ZoneInfo(record.timezone), hours, words)
    job = Job(record, "dish", Brush(prefix), voice, width, None, links)
    content = detail_svg(job, oven_rows(record, voice), whole(record)) if record.bakes else _no_plan(job)
    return Frame(words.fire_of.format(event=record.event_name), scheme).around(job, *content)


@dataclass(frozen=True, slots=True)
class Frame:
    """What stands around every drawing: its name, its colours, its hatchings."""

    name: str
    scheme: Scheme

    def around(self, job: Job, content: str, height: float) -> str:
        """The whole `svg` element."""
        is_page = self.scheme is Scheme.PAGE
        style = "" if is_page else tag("style", rules(PALETTES[self.scheme]))
        return tag(
            "svg", tag("title", letters(self.name)), style, patterns(job.brush), content,
            xmlns="http://www.w3.org/2000/svg", viewBox=f"0 0 {job.width} {number(height)}", width=job.width,
            height=height, role="group", aria_label=self.name, class_=ROOT,
            font_family=FACE if is_page else PRINT_FACE,
        )  # fmt: skip


def _content(job: Job, rows: tuple[Row, ...], zoom: Zoom, shown: Window) -> tuple[str, float]:
    if not rows:
        return _nothing(job, shown)
    return (overview_svg if zoom == "day" else detail_svg)(job, rows, shown)


def refuse_too_narrow(width: int) -> None:
    """Raises `ValueError` for a width in which nothing could be read."""
    if width < LEAST_WIDTH:
        raise ValueError(f"a drawing needs at least {LEAST_WIDTH} pixels, not {width}")


def _nothing(job: Job, shown: Window) -> tuple[str, float]:
    voice = job.voice
    text = voice.words.nothing_here.format(start=voice.clock(shown.begins), end=voice.clock(shown.ends))
    return lines_of(job, [text])


def _no_plan(job: Job) -> tuple[str, float]:
    """Why there is no plan, line by line."""
    said, record = job.voice.words, job.record
    return lines_of(
        job, [said.no_plan, *record.obstacles, *(said.way_out.format(text=w.text) for w in record.ways_out)]
    )


def lines_of(job: Job, sentences: Iterable[str]) -> tuple[str, float]:
    """Sentences in place of a drawing, and how high they are."""
    size = TEXTS["t-say"].size
    lines = [line for sentence in sentences for line in wrap(sentence, size, job.width - 24)]
    drawn = (shapes.words(line, 12, 24 + 20 * place, "t-say") for place, line in enumerate(lines))
    return "".join(drawn), 24.0 + 20 * len(lines)
