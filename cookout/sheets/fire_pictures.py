"""The fire's day as drawings, each of a part of the day that is large enough to be read on a page."""

from collections.abc import Iterator, Sequence
from dataclasses import replace
from datetime import timedelta

from cookout.core.planning.record import PlannedBake, PlanRecord
from cookout.drawing import Scheme, fire_svg
from cookout.sheets.job import Job
from cookout.sheets.typesetting import Data

WIDTH, NARROW = 900, 640  # pixels over the long and the short side of a page
FEW_BAKES = 6  # as many on a drawing fit the short side, beside the words
MOST_BAKES = 12  # more on one drawing make its lettering too small
LEAST_GAP = timedelta(minutes=20)
"""Between two bakes so far apart the day is parted rather than elsewhere."""


def fire_pictures(job: Job) -> Iterator[Data]:
    """Each part of the day: from when to when, its drawing as SVG, and whether that goes on an upright page."""
    record = job.record
    parts = _parts(sorted(record.bakes, key=lambda bake: (bake.laid_at, bake.unit)))
    upright = len(record.bakes) <= FEW_BAKES
    for part in parts:
        text = job.printing.gettext("{first} to {last}").format(
            first=job.clock(part[0].laid_at), last=job.clock(max(bake.out_at for bake in part))
        )
        yield {
            "name": text if len(parts) > 1 else "",
            "upright": upright,
            "picture": fire_svg(
                _only(record, part),
                width=NARROW if upright else WIDTH,
                scheme=Scheme.GREY,
                hours=job.printing.hours,
                words=job.printing.drawing_words,
            ),
        }


def _parts(bakes: Sequence[PlannedBake]) -> list[Sequence[PlannedBake]]:
    """The bakes by the order of their coals, parted where the longest time lies between two, until each part fits."""
    if len(bakes) <= MOST_BAKES:
        return [bakes] if bakes else []
    places = range(1, len(bakes))
    at = max(places, key=lambda place: (_gap(bakes, place), -abs(place - len(bakes) // 2)))
    return [*_parts(bakes[:at]), *_parts(bakes[at:])]


def _gap(bakes: Sequence[PlannedBake], place: int) -> int:
    """How many of the least gaps lie between the bakes before a place and the first after it."""
    return max(0, (bakes[place].laid_at - bakes[place - 1].laid_at) // LEAST_GAP)


def _only(record: PlanRecord, bakes: Sequence[PlannedBake]) -> PlanRecord:
    """The record with the fire of these bakes alone."""
    first, last = min(bake.laid_at for bake in bakes), max(bake.out_at for bake in bakes)
    wanted = {bake.task for bake in bakes} | {task for bake in bakes for task, _ in bake.top_ups}
    units = {bake.unit for bake in bakes}
    tasks = tuple(
        task
        for task in record.tasks
        if task.id in wanted or (units & set(task.units) and first <= task.starts_at and task.ends_at <= last)
    )
    kept = {task.id for task in tasks}
    firings = tuple(firing for firing in record.firings if kept & set(firing.feeds))
    lighting = {firing.lit_by for firing in firings}
    return replace(
        record,
        bakes=tuple(bakes),
        firings=firings,
        tasks=tasks + tuple(task for task in record.tasks if task.id in lighting - kept),
        links=tuple(link for link in record.links if {link.before, link.after} <= kept),
        servings=tuple(serving for serving in record.servings if first <= serving.due_at <= last),
        slots=tuple(slot for slot in record.slots if slot.starts_at < last and first < slot.ends_at),
    )
