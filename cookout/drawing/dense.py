"""A row in which much changes, told as a whole: all that changes as it stood, over all as it would stand."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from cookout.core.planning.record import PlannedTask, PlanRecord
from cookout.drawing.bouts import Bout, bouts_of
from cookout.drawing.geometry import Slab, Span, TimeScale, pack
from cookout.drawing.job import Job, link
from cookout.drawing.looks import Look
from cookout.drawing.rows import Mark
from cookout.drawing.shapes import corners, draw, draw_work
from cookout.drawing.shifts import ChangedRow, Role

GHOST, BAR, GAP = 8.0, 12.0, 3.0


@dataclass(frozen=True, slots=True)
class Run:
    """Tasks of one plan drawn as one bar at a height; `record` is the plan, `was` whether it is the one before."""

    bout: Bout
    top: float
    record: PlanRecord
    was: bool


def dense_runs(
    row: ChangedRow, before: PlanRecord, after: PlanRecord, scale: TimeScale, top: float
) -> tuple[tuple[Run, ...], float]:  # fmt: skip
    """What changes in a row as it stood and below that as it would stand, from a height on; and where it ends."""
    old = {change.task for shift in row.shifts if shift.role is not Role.CAME for change in shift.changes}
    new = {change.task for shift in row.shifts if shift.role is not Role.LEFT for change in shift.changes}
    ghosts, top = _runs(_bouts(before.tasks, old, scale), before, top, GHOST, was=True)
    bars, top = _runs(_bouts(after.tasks, new, scale), after, top, BAR, was=False)
    return (*ghosts, *bars), top


def _bouts(tasks: Iterable[PlannedTask], ids: set[str], scale: TimeScale) -> list[Bout]:
    return bouts_of([Mark(task, ()) for task in tasks if task.id in ids], scale)


def _runs(
    bouts: Sequence[Bout], record: PlanRecord, top: float, height: float, *, was: bool
) -> tuple[list[Run], float]:
    lanes = pack([bout.span for bout in bouts])
    pitch = height + GAP
    runs = [Run(bout, top + lane * pitch, record, was) for bout, lane in zip(bouts, lanes, strict=True)]
    return runs, top + (max(lanes, default=-1) + 1) * pitch


def draw_run(run: Run, job: Job) -> str:
    """A ghost with its name, or a bar that leads to its first task."""
    span, words = run.bout.span, job.voice.words
    slab = Slab(span, Span(run.top, run.top + (GHOST if run.was else BAR)))
    told = words.told_before if run.was else words.told_after
    said = told.format(told=_said(run, job))
    if run.was:
        return link(None, said, job.brush.shape(corners(slab.inset(0.5)), "ghost"))
    is_work = run.bout.look is Look.HANDS
    shape = draw_work(slab, run.bout.hot, job.brush) if is_work else draw(run.bout.look, slab, job.brush)
    return link(job.links.to_task(run.bout.marks[0].task.id), said, shape)


def _said(run: Run, job: Job) -> str:
    tasks = run.bout.tasks
    return job.voice.task(tasks[0], run.record) if len(tasks) == 1 else job.voice.several(tasks, run.record)
