"""What the day is planned for: servings and demo slots, as lines with labels."""

from dataclasses import dataclass
from datetime import datetime

from cookout.core.planning.record import PlannedServing
from cookout.drawing.geometry import TimeScale
from cookout.drawing.job import Job


@dataclass(frozen=True, slots=True)
class Notice:
    """A serving or a demo slot: from and until, the line that matters, and its label."""

    begins: datetime
    line: datetime
    ends: datetime
    text: str
    is_slot: bool

    def is_on(self, scale: TimeScale) -> bool:
        """Whether any of it lies on the axis."""
        return self.begins < scale.last and scale.first < self.ends


def notices(job: Job) -> list[Notice]:
    """Servings (one for all dishes on the table together) and demo slots, in time order."""
    groups: dict[tuple[str, datetime], list[PlannedServing]] = {}
    for serving in job.record.servings:
        groups.setdefault((serving.serving, serving.due_at), []).append(serving)
    found = [_serving_notice(served, job) for served in groups.values()]
    for slot in job.record.slots:
        text = job.voice.words.slot.format(time=job.voice.clock(slot.starts_at), slot=slot.name)
        found.append(Notice(slot.starts_at, slot.starts_at, slot.ends_at, text, is_slot=True))
    return sorted(found, key=lambda notice: (notice.line, notice.text))


def _serving_notice(served: list[PlannedServing], job: Job) -> Notice:
    first, words = served[0], job.voice.words
    late = max(serving.late_minutes for serving in served)
    people = job.record.people_at(first.serving)
    text = words.serving.format(time=job.voice.clock(first.due_at), serving=first.serving_name, people=people)
    text += f", {words.late.format(minutes=late)}" if late else ""
    earliest = min(serving.earliest_at for serving in served)
    latest = max(serving.latest_at for serving in served)
    return Notice(earliest, first.due_at, latest, text, is_slot=False)
