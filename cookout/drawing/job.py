"""One drawing in the making: what it is of, and how it is drawn."""

from dataclasses import dataclass
from datetime import datetime

from cookout.core.planning.record import PlannedTask, PlanRecord
from cookout.drawing.geometry import Slab, Span, TimeScale
from cookout.drawing.looks import TickLook, kindling_of, look_of
from cookout.drawing.markup import letters, tag
from cookout.drawing.rows import By, Mark
from cookout.drawing.shapes import TICK_ROOM, Brush, draw, draw_lamp, draw_onward, draw_pin, draw_tick, rectangle
from cookout.drawing.voice import Voice
from cookout.drawing.words import Links
from cookout.drawing.zoom import Window

LEAST_BAR = 5.0  # a task is never drawn shorter


@dataclass(frozen=True, slots=True)
class Job:
    """The record (what of it is shown), which rows, brush, voice, width in pixels, the moment to mark as now or None.

    `window` is the stretch that is shown, None for all.
    """

    record: PlanRecord
    by: By
    brush: Brush
    voice: Voice
    width: int
    now: datetime | None
    links: Links
    window: Window | None = None

    def linked(self, task: PlannedTask, *inner: str) -> str:
        """A task as a link, which says in one line what it is."""
        said = self.voice.task(task, self.record)
        return link(self.links.to_task(task.id), said, *inner)


def link(address: str | None, said: str, *inner: str) -> str:
    """A part of the drawing with its name, as a link where it leads anywhere; the title is name and tooltip in one."""
    title = f"<title>{letters(said)}</title>"
    if address is None:
        return tag("g", title, *inner, role="img")
    return tag("a", title, *inner, href=address)


def draw_mark(mark: Mark, slab: Slab, scale: TimeScale, job: Job, *lettering: str) -> str:
    """A task with its shape, its signs and its lettering, as one link."""
    task = mark.task
    signs = [
        draw_lamp(slab, job.brush) if task.live_in else "",
        draw_onward(slab.along.begins, slab.across, job.brush, later=False) if task.starts_at < scale.first else "",
        draw_onward(slab.along.ends, slab.across, job.brush, later=True) if task.ends_at > scale.last else "",
        draw_pin(slab, job.brush) if task.pinned else "",
    ]
    return job.linked(task, draw(look_of(task), slab, job.brush), *signs, *lettering)


def draw_ticks(mark: Mark, lid: float, scale: TimeScale, job: Job) -> str:
    """The signs on the lid of a bake, each a link of its own with room for a finger."""
    return "".join(
        _tick(task, lid, scale, job) for task in mark.ticks if scale.holds(task.starts_at) and scale.holds(task.ends_at)
    )


def _tick(task: PlannedTask, lid: float, scale: TimeScale, job: Job) -> str:
    along = (scale.at(task.starts_at) + scale.at(task.ends_at)) / 2
    along = min(max(along, scale.room.begins + 5), scale.room.ends - 5)
    touch = Slab(Span(along - 5, along + 5), Span(lid - TICK_ROOM, lid + 3))
    room = rectangle(touch, "clear")
    return job.linked(task, room, draw_tick(TickLook(task.kind), along, lid, job.brush))


def needs_head_room(mark: Mark) -> bool:
    """Whether something stands on top of the task's shape."""
    return bool(mark.ticks or mark.task.live_in or mark.task.pinned)


def kindled(job: Job) -> dict[str, tuple[PlannedTask, ...]]:
    """The tasks to draw on each firing's hill: only by dish, for elsewhere they have a row of their own."""
    return kindling_of(job.record) if job.by == "dish" else {}
