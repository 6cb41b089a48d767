"""The timeline as a page looks at it: which rows, how near, which hours, and where each other look is."""

from dataclasses import dataclass, replace
from datetime import datetime, timedelta
from typing import Literal, get_args
from urllib.parse import urlencode
from zoneinfo import ZoneInfo

from django.http import QueryDict
from django.urls import reverse
from django.utils.translation import gettext as _

from cookout.core.planning.record import PlanRecord
from cookout.drawing import Links, Window, Zoom, timeline_svg
from cookout.drawing.rows import By, rows_of
from cookout.drawing.voice import Voice
from cookout.drawing.zoom import around, whole, window_at
from cookout.web import preferences
from cookout.web.reading.drawn import drawn_words

Layout = Literal["wide", "narrow"]
WIDTHS: dict[Layout, int] = {"wide": 1180, "narrow": 366}
"""Pixels across: what a page of 1280 leaves beside its margins, and what a phone of 390 does."""

LAYOUTS: tuple[Layout, ...] = get_args(Layout)
BYS: tuple[By, ...] = get_args(By)
ZOOMS: tuple[Zoom, ...] = get_args(Zoom)
BEFORE_NOW = timedelta(minutes=15)
PLACE = "TASK"  # stands for a task's id in an address until the drawing puts it in


@dataclass(frozen=True, slots=True)
class Look:
    """How the timeline is looked at.

    `at` is from when on a closer look shows, None for the beginning; `only` the key of one row alone. Closer looks are
    drawn for one layout, by which link they were asked for; a day and a row alone are drawn for both.
    """

    by: By = "dish"
    zoom: Zoom = "day"
    layout: Layout = "wide"
    at: datetime | None = None
    only: str = ""

    @property
    def is_both(self) -> bool:
        """Whether it is drawn for wide and for narrow pages at once."""
        return self.zoom == "day" or bool(self.only)

    def address(self) -> str:
        """The query that asks for it."""
        asked: dict[str, str] = {"by": self.by, "zoom": self.zoom}
        if not self.is_both:
            asked["layout"] = self.layout
        if self.at is not None:
            asked["at"] = f"{self.at:%Y-%m-%dT%H:%M}"
        if self.only:
            asked["only"] = self.only
        return f"?{urlencode(asked)}"


@dataclass(frozen=True, slots=True)
class Choice:
    """A link to another look; `id` keeps the focus where it was when the page is changed in place."""

    id: str
    words: str
    address: str
    is_shown: bool = False


@dataclass(frozen=True, slots=True)
class Drawing:
    """One drawing with the links that go with its layout."""

    layout: Layout
    svg: str
    zooms: tuple[Choice, ...]
    moves: tuple[Choice, ...]


def look_of(query: QueryDict, record: PlanRecord) -> Look:
    """The look that a page was asked for; what it cannot read, it leaves at the usual."""
    by: By = next((each for each in BYS if each == query.get("by")), "dish")
    zoom: Zoom = next((each for each in ZOOMS if each == query.get("zoom")), "day")
    layout: Layout = "narrow" if query.get("layout") == "narrow" else "wide"
    return Look(by, zoom, layout, _moment(query.get("at", ""), record), query.get("only", ""))


def _moment(text: str, record: PlanRecord) -> datetime | None:
    try:
        found = datetime.fromisoformat(text)
    except ValueError:
        return None
    return found if found.tzinfo is not None else found.replace(tzinfo=ZoneInfo(record.timezone))


def timeline_page(record: PlanRecord, look: Look, *, event: object, now: datetime | None) -> dict[str, object]:
    """The template's names for a look at a plan of the event with that public id."""
    layouts = LAYOUTS if look.is_both else (look.layout,)
    marked = now if now is not None and is_on(record, now) else None
    return {
        "look": look,
        "rows": _row_choices(look),
        "drawings": [_drawing(record, replace(look, layout=layout), event, marked) for layout in layouts],
        "row_name": _row_name(record, look),
        "all_rows": replace(look, only="", at=None, zoom="day").address(),
        "other_layout": "" if look.is_both else replace(look, layout=_other(look.layout)).address(),
    }


def overview(
    record: PlanRecord, *, links: Links, by: By = "dish", now: datetime | None = None
) -> list[tuple[Layout, str]]:
    """The day at a glance for both layouts, to be shown among other things."""
    marked = now if now is not None and is_on(record, now) else None
    return [(layout, _svg(record, Look(by, "day", layout), links, marked, None)) for layout in LAYOUTS]


def overview_links(event: object) -> Links:
    """Where an overview on another page leads: tasks to their pages, the rest to the timeline."""
    page = reverse("timeline", args=[event])
    asked = f"{page}?{urlencode({'by': 'dish', 'zoom': 'hour'})}"
    return Links(_task_pattern(event), f"{asked}&at={{at}}#timeline", f"{page}?by=dish&only={{row}}#timeline")


def is_on(record: PlanRecord, now: datetime) -> bool:
    """Whether the plan is being carried out."""
    return bool(record.tasks) and whole(record).begins <= now <= whole(record).ends


def _other(layout: Layout) -> Layout:
    return "narrow" if layout == "wide" else "wide"


def _task_pattern(event: object) -> str:
    return reverse("task", args=[event, PLACE]).replace(PLACE, "{task}")


def _row_choices(look: Look) -> list[Choice]:
    words: dict[By, str] = {"dish": _("by dish"), "helper": _("by helper"), "gear": _("by gear")}
    return [
        Choice(f"look-{by}", said, replace(look, by=by, only="").address(), by == look.by) for by, said in words.items()
    ]


def _row_name(record: PlanRecord, look: Look) -> str:
    """What the one row that is shown alone is called; empty where all are shown, or none of that name is there."""
    if not look.only:
        return ""
    rows = rows_of(record, look.by, Voice(ZoneInfo(record.timezone), words=drawn_words()), only=look.only)
    return rows[0].label if len(rows) == 1 else look.only


def _drawing(record: PlanRecord, look: Look, event: object, now: datetime | None) -> Drawing:
    window = None
    if look.zoom != "day" and not look.only and record.tasks:
        window = window_at(record, look.zoom, WIDTHS[look.layout], look.at)
    svg = _svg(record, replace(look, zoom="minute") if look.only else look, _links(look, event), now, window)
    return Drawing(look.layout, svg, _zooms(record, look, window, now), _moves(record, look, window, now))


def _svg(record: PlanRecord, look: Look, links: Links, now: datetime | None, window: Window | None) -> str:
    return timeline_svg(
        record,
        by=look.by,
        width=WIDTHS[look.layout],
        now=now,
        prefix=look.layout[0],
        zoom=look.zoom,
        window=window,
        only=look.only,
        links=links,
        hours=preferences.current().hours,
        words=drawn_words(),
    )


def _links(look: Look, event: object) -> Links:
    closer = f"?{urlencode({'by': look.by, 'zoom': 'hour', 'layout': look.layout})}&at={{at}}#timeline"
    row = f"?{urlencode({'by': look.by})}&only={{row}}#timeline"
    return Links(_task_pattern(event), closer if look.zoom == "day" else "", row)


def _zooms(record: PlanRecord, look: Look, window: Window | None, now: datetime | None) -> tuple[Choice, ...]:
    words: dict[Zoom, str] = {"day": _("day"), "hour": _("hours"), "minute": _("minutes")}
    at = window.begins if window is not None else _first_look(record, now)
    return tuple(
        Choice(
            f"{look.layout}-{zoom}",
            said,
            replace(look, zoom=zoom, at=None if zoom == "day" else at, only="").address(),
            zoom == look.zoom and not look.only,
        )
        for zoom, said in words.items()
    )


def _first_look(record: PlanRecord, now: datetime | None) -> datetime | None:
    """Where a closer look begins: a little before now while the plan is on, else at its beginning."""
    return now.astimezone(ZoneInfo(record.timezone)) - BEFORE_NOW if now is not None else None


def _moves(record: PlanRecord, look: Look, window: Window | None, now: datetime | None) -> tuple[Choice, ...]:
    """Earlier and later, as far as the plan goes, and now while it is on."""
    if window is None:
        return ()
    earlier, later = around(record, window)
    found = [
        (_("earlier"), "earlier", earlier),
        (_("now"), "now", _first_look(record, now)),
        (_("later"), "later", later),
    ]
    return tuple(
        Choice(f"{look.layout}-{key}", words, replace(look, at=at).address())
        for words, key, at in found
        if at is not None
    )
