"""What both layouts of the timeline share: linked tasks, the stretch of time shown, marks for servings and slots."""

from dataclasses import dataclass
from datetime import UTC, datetime, timedelta
from zoneinfo import ZoneInfo

from cookout.core.planning.record import PlannedFiring, PlannedServing, PlannedTask, PlanRecord
from cookout.drawing.geometry import Slab, Span, TimeScale, quarter_after, quarter_before
from cookout.drawing.looks import TickLook, kindling_of, look_of, spoken
from cookout.drawing.markup import letters, tag, task_address
from cookout.drawing.rows import By, Mark
from cookout.drawing.shapes import (
    TICK_ROOM,
    Brush,
    Heat,
    draw,
    draw_firing,
    draw_kindling,
    draw_lamp,
    draw_tick,
    rectangle,
)

# How far the dashed slope after a firing is drawn. It shows that heat goes on falling and promises no time:
# coals were weak after 65 and nearly out after 105 minutes from lighting in the one log at hand (weak source).
FADING_TAIL = timedelta(minutes=30)
TYPE = 11.5  # size of the labels, pixels
SMALL = 10.0
LEAST_BAR = 5.0  # a task is never drawn shorter


@dataclass(frozen=True, slots=True)
class Job:
    """One drawing in the making: the record, its zone, the brush, and the moment to mark as now (or None)."""

    record: PlanRecord
    by: By
    zone: ZoneInfo
    brush: Brush
    width: int
    now: datetime | None

    def local(self, moment: datetime) -> datetime:
        """The moment on the event's own clock."""
        return moment.astimezone(self.zone)


@dataclass(frozen=True, slots=True)
class Notice:
    """A serving or a demo slot: from and until, the line that matters, and its label."""

    begins: datetime
    line: datetime
    ends: datetime
    text: str
    is_slot: bool


def notices(job: Job) -> list[Notice]:
    """Servings (one for all dishes on the table together) and demo slots, in time order."""
    groups: dict[tuple[str, datetime], list[PlannedServing]] = {}
    for serving in job.record.servings:
        groups.setdefault((serving.serving, serving.due_at), []).append(serving)
    found = [_serving_notice(served, job) for served in groups.values()]
    for slot in job.record.slots:
        text = f"{job.local(slot.starts_at):%H:%M} {slot.name}"
        found.append(Notice(slot.starts_at, slot.starts_at, slot.ends_at, text, is_slot=True))
    return sorted(found, key=lambda notice: (notice.line, notice.text))


def _serving_notice(served: list[PlannedServing], job: Job) -> Notice:
    first = served[0]
    late = max(serving.late_minutes for serving in served)
    text = f"{job.local(first.due_at):%H:%M} {first.serving_name} for {job.record.people_at(first.serving)}"
    text += f", {late} min late" if late else ""
    earliest = min(serving.earliest_at for serving in served)
    latest = max(serving.latest_at for serving in served)
    return Notice(earliest, first.due_at, latest, text, is_slot=False)


def stretch(moments: list[datetime], zone: ZoneInfo) -> tuple[datetime, datetime]:
    """From the quarter before the first to the quarter after the last of the moments."""
    return quarter_before(min(moments), zone), quarter_after(max(moments), zone)


def moments_of(record: PlanRecord) -> list[datetime]:
    """All that the time axis of the whole event must hold."""
    found = [moment for task in record.tasks for moment in (task.starts_at, task.ends_at)]
    found += [moment for firing in record.firings for moment in (firing.lit_at, tail_of(firing))]
    found += [moment for slot in record.slots for moment in (slot.starts_at, slot.ends_at)]
    return found + [moment for serving in record.servings for moment in (serving.earliest_at, serving.latest_at)]


def tail_of(firing: PlannedFiring) -> datetime:
    """Where the drawing of a firing ends."""
    return (firing.ready_until.astimezone(UTC) + FADING_TAIL).astimezone(firing.ready_until.tzinfo)


def heat_of(firing: PlannedFiring, scale: TimeScale) -> Heat:
    """A firing on the scale."""
    times = (firing.lit_at, firing.ready_from, firing.ready_until, tail_of(firing))
    return Heat(*(scale.at(moment) for moment in times))


def firing_text(firing: PlannedFiring, job: Job) -> str:
    """A firing in a few words."""
    ready, until = job.local(firing.ready_from), job.local(firing.ready_until)
    return f"{firing.coals} coals, {ready:%H:%M} to {until:%H:%M}"


def firing_sentence(firing: PlannedFiring, job: Job) -> str:
    """A firing in one sentence, for a tooltip."""
    text = firing_text(firing, job)
    return f"lit at {job.local(firing.lit_at):%H:%M}: {text} (ashed over until fading); chimneys: {firing.chimneys}"


def draw_firing_with_tasks(firing: PlannedFiring, across: Span, scale: TimeScale, job: Job, *lettering: str) -> str:
    """A firing's hill with its lettering; by dish, the tasks that light it are links on its rising side."""
    heat = heat_of(firing, scale)
    title = tag("title", letters(firing_sentence(firing, job)))
    hill = tag("g", title, draw_firing(heat, across, job.brush), *lettering)
    links = []
    for task in kindling_of(job.record)[firing.id] if job.by == "dish" else ():
        slab = Slab(scale.span(task.starts_at, task.ends_at), across)
        links.append(linked(task, job, draw_kindling(slab, heat, job.brush, hands_on=task.hands_on)))
    return tag("g", hill, *links, class_="firing", data_firing=firing.id)


def linked(task: PlannedTask, job: Job, *inner: str) -> str:
    """A task as a link to where it stands on the page, with tooltip and spoken label."""
    said = spoken(task, job.record)
    slack = {"data_slack": str(task.slack_minutes)} if task.slack_minutes else {}
    return tag(
        "a", tag("title", letters(said)), *inner, href=task_address(task.id), aria_label=said,
        class_=f"task {look_of(task).value}", data_task=task.id, **slack,
    )  # fmt: skip


def draw_mark(mark: Mark, slab: Slab, job: Job, *lettering: str) -> str:
    """A task with its shape, lamp and lettering, as one link."""
    lamp = draw_lamp(slab, job.brush) if mark.task.live_in else ""
    return linked(mark.task, job, draw(look_of(mark.task), slab, job.brush), lamp, *lettering)


def draw_ticks(mark: Mark, lid: float, scale: TimeScale, job: Job) -> str:
    """The signs on the lid of a bake, each a link of its own with room for a finger."""
    return "".join(_tick(task, lid, scale, job) for task in mark.ticks)


def _tick(task: PlannedTask, lid: float, scale: TimeScale, job: Job) -> str:
    along = (scale.at(task.starts_at) + scale.at(task.ends_at)) / 2
    touch = Slab(Span(along - 5, along + 5), Span(lid - TICK_ROOM, lid + 3))
    room = rectangle(touch, job.brush, fill="transparent")
    return linked(task, job, room, draw_tick(TickLook(task.kind), along, lid, job.brush))


def needs_head_room(mark: Mark) -> bool:
    """Whether something stands on top of the task's shape."""
    return bool(mark.ticks or mark.task.live_in)
