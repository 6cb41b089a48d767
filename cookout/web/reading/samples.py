"""Made-up content for the page that shows all components: colours, sizes, a small plan to draw."""

from collections.abc import Iterator
from dataclasses import replace
from datetime import UTC, datetime, timedelta
from functools import partial

from django.utils.functional import Promise

from cookout.core.planning.compare import compare
from cookout.core.planning.record import (
    PlannedBake,
    PlannedFiring,
    PlannedGear,
    PlannedHelper,
    PlannedServing,
    PlannedTask,
    PlanRecord,
)
from cookout.core.planning.result import Status
from cookout.drawing import Scheme, comparison_svg, fire_svg, timeline_svg
from cookout.web import preferences
from cookout.web.navigation import STATIONS
from cookout.web.reading.drawn import drawn_words

_PLAIN = ("paper", "sheet", "ink", "iron", "on-iron", "on-iron-soft", "ember", "glow", "soot", "ash", "line", "smoke")
_DRAWN = ("paper", "ink", "iron", "on-iron", "ember", "soot", "ash", "smoke")
COLOURS = (*_PLAIN, "good", *(f"drawing-{name}" for name in _DRAWN))
SPACES = ("s0", "s1", "s2", "s3", "s4", "s5", "s6")
SIZES = ("t0", "t1", "t2", "t3", "t4", "t5", "t6")
WIDE, NARROW = 1120, 360
_BEGIN = datetime(2027, 6, 19, 15, tzinfo=UTC)

# id (that of the dish before the stop), name, kind, from and until minute, helper, gear
_TASKS = (
    ("set-up", "Set up table, water and shovel", "set_up", (0, 20), "ilse", ""),
    ("light", "Light 24 coals", "light", (20, 24), "ilse", "chimney"),
    ("ash", "Coals ash over", "ash_over", (24, 45), "", "chimney"),
    ("bread.mix", "Knead the dough", "mix", (5, 25), "joris", ""),
    ("bread.rest", "Let it rise", "rest", (25, 45), "", ""),
    ("bread.lay", "Lay 24 coals", "lay_coals", (45, 49), "ilse", "oven"),
    ("bread.load", "Put the bread in", "load", (49, 51), "joris", "oven"),
    ("bread.bake", "Bread bakes", "bake", (51, 91), "", "oven"),
    ("bread.turn1", "Turn: bread", "turn", (63, 65), "ilse", "oven"),
    ("bread.look", "Look in: bread", "look_in", (80, 81), "joris", "oven"),
    ("bread.out", "Take the bread out", "take_out", (91, 93), "ilse", "oven"),
    ("bread.serve", "Serve bread", "serve", (115, 120), "joris", ""),
    ("drown", "Drown the coals", "drown", (120, 130), "ilse", ""),
)
_HOT = frozenset({"light", "lay_coals", "load", "turn", "look_in", "take_out", "drown"})


def sample_stations() -> list[tuple[str | Promise, list[tuple[str, str | Promise, bool]]]]:
    """The stations of an event as the page shows them, leading nowhere."""
    return [(group, [("#stations", each.words, each.tab == "plan") for each in row]) for group, row in STATIONS]


def sample_drawings() -> Iterator[tuple[str, str]]:
    """Each drawing as (layout, SVG): timeline, fire, what changes; wide and narrow."""
    before = sample_plan()
    after = replace(before, tasks=tuple(map(_later, before.tasks)))
    draw_timeline = partial(timeline_svg, before, by="dish")
    draw_changes = partial(comparison_svg, before, after, compare(before, after), by="dish")
    hours, words = preferences.current().hours, drawn_words()
    for layout, width in (("wide", WIDE), ("narrow", NARROW)):
        for name, draw in (("timeline", draw_timeline), ("fire", partial(fire_svg, before)), ("changes", draw_changes)):
            prefix = f"{name}-{layout}"
            yield layout, draw(width=width, scheme=Scheme.PAGE, prefix=prefix, hours=hours, words=words)


def sample_plan() -> PlanRecord:
    """A plan of one bread for a made-up supper."""
    crew = (_helper("ilse", "Ilse Tavernel", 0, 130), _helper("joris", "Joris Ademar", 5, 120))
    due = _at(120)
    return PlanRecord(
        event_id="sample", event_name="Supper at the ford", place="Ford meadow", timezone="UTC", weather="22 °C",
        units="metric", status=Status.PROVED_BEST, seconds=0.1, levels=(),
        servings=(PlannedServing("supper", "Supper", "bread", "Bread", due, _at(110), _at(130), due, 0, 8),),
        slots=(), dishes={"bread": "Bread"}, tasks=tuple(_task(*row) for row in _TASKS), links=(), helpers=crew,
        gear=(
            PlannedGear("oven", "oven", "12-inch oven", 1, inches=12),
            PlannedGear("chimney", "chimney", "Chimney", 1, coals=60),
        ),
        firings=(PlannedFiring("coals", _at(20), _at(45), _at(65), 24, ("bread.lay",), "light", 1),),
        bakes=(
            PlannedBake(
                "bread.bake", "bread", "Bread", "12-inch oven A", 12, 16, 8, 21, 28, "175 °C", _at(45), _at(51), _at(91)
            ),
        ),
        warnings=(), obstacles=(), ways_out=(),
    )  # fmt: skip


def _task(id: str, name: str, kind: str, minutes: tuple[int, int], helper: str, gear: str) -> PlannedTask:
    return PlannedTask(
        id=id,
        dish=id.partition(".")[0] if "." in id else "",
        name=name,
        kind=kind,
        starts_at=_at(minutes[0]),
        ends_at=_at(minutes[1]),
        helpers=(helper,) if helper else (),
        gear={gear: 1} if gear else {},
        hands_on=bool(helper),
        slack_minutes=0,
        held_by=(),
        hot=kind in _HOT,
    )


def _helper(id: str, name: str, called: int, free: int) -> PlannedHelper:
    return PlannedHelper(
        id=id,
        name=name,
        skills=("fire",),
        windows=((_at(-60), _at(180)),),
        adult=True,
        fire_allowed=True,
        hot_stretch_minutes=60,
        called_at=_at(called),
        free_at=_at(free),
        work_minutes=30,
    )


def _later(task: PlannedTask) -> PlannedTask:
    """The kneading goes to the other helper, the turn comes five minutes later, all else stays."""
    if task.id == "bread.turn1":
        wait = timedelta(minutes=5)
        return replace(task, starts_at=task.starts_at + wait, ends_at=task.ends_at + wait)
    return replace(task, helpers=("ilse",)) if task.id == "bread.mix" else task


def _at(minute: int) -> datetime:
    return _BEGIN + timedelta(minutes=minute)
