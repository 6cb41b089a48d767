"""The timeline as plain text for a terminal, grouped by dish, each task with a bar on the event's own clock."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from zoneinfo import ZoneInfo

from cookout.core.planning.record import PlannedTask, PlanRecord
from cookout.core.planning.result import Status
from cookout.drawing.geometry import Span, TimeScale, quarter_after, quarter_before, ticks
from cookout.drawing.lettering import cells
from cookout.drawing.looks import Look, look_of
from cookout.sheets.job import Job
from cookout.sheets.printing import USUAL
from cookout.sheets.rows import served_together, slot_row

LEAST_WIDTH = 40
BARS_FROM = 64  # columns from which there is room for bars
CREW_FROM = 92  # columns from which there is room for the names of helpers
STROKES = {Look.HANDS: "█", Look.FIRE: "▓", Look.WAIT: "·", Look.OVEN: "═", Look.PLATE: "◆"}
STATUSES = {
    Status.PROVED_BEST: "proved best",
    Status.BEST_FOUND: "best found",
    Status.NONE_FOUND: "no plan found in time",
    Status.IMPOSSIBLE: "impossible as it stands",
}


@dataclass(frozen=True, slots=True)
class Columns:
    """Widths of the columns in cells; 0 where there is no room."""

    name: int
    bar: int
    crew: int

    @classmethod
    def for_width(cls, width: int) -> "Columns":
        """How the width is shared out; the times take 13."""
        room = width - 14
        crew = room // 5 if width >= CREW_FROM else 0
        bar = (room - crew) * 9 // 20 if width >= BARS_FROM else 0
        name = room - (bar + 1 if bar else 0) - (crew + 1 if crew else 0)
        return cls(name, bar, crew)


def terminal_timeline(record: PlanRecord, width: int = 100) -> str:
    """The plan in lines of at most `width` columns (at least 40), wide letters counted as two.

    Status, servings and demo slots come first, then every dish with its tasks in time order. A record without tasks
    gives what stands in the way and the ways out. `ValueError` where the width is less than 40.
    """
    if width < LEAST_WIDTH:
        raise ValueError(f"the timeline needs at least {LEAST_WIDTH} columns, not {width}")
    lines = [*_head(record, width), *(_plan(record, width) if record.tasks else _no_plan(record, width))]
    return "\n".join(line.rstrip() for line in lines) + "\n"


def _head(record: PlanRecord, width: int) -> Iterator[str]:
    yield fitted(record.event_name, width)
    yield from folded(f"{record.place}; {record.weather}", width)
    counted = f"{len(record.tasks)} tasks, {len(record.helpers)} helpers, {record.seconds:.1f} s"
    yield from folded(f"{STATUSES[record.status]}: {counted}", width)
    for warning in record.warnings:
        yield from folded(f"! {warning.text} {warning.remedy}", width, indent=2)


def _no_plan(record: PlanRecord, width: int) -> Iterator[str]:
    for obstacle in record.obstacles:
        yield from folded(f"- {obstacle}", width, indent=2)
    for way in record.ways_out:
        yield from folded(f"+ way out: {way.text}", width, indent=2)


def _plan(record: PlanRecord, width: int) -> Iterator[str]:
    yield ""
    yield from _notices(record, width)
    columns = Columns.for_width(width)
    scale = _scale(record, columns)
    if columns.bar:
        yield ""
        yield from _axis(record, columns, scale)
    for name, tasks in _groups(record):
        yield ""
        yield fitted(name, width)
        yield from (_line(task, record, columns, scale) for task in tasks)
    if columns.bar:
        yield ""
        yield from folded(_key(), width)


def _notices(record: PlanRecord, width: int) -> Iterator[str]:
    job = Job(record, USUAL)
    for group in served_together(record):
        first = group[0]
        people = record.people_at(first.serving)
        yield from folded(f"{job.clock(first.due_at)}  {first.serving_name} for {people}", width, indent=7)
        for serving in group:
            late = f", {serving.late_minutes} min late" if serving.late_minutes else ", on time"
            yield from folded(f"       {serving.dish_name}: ready {job.clock(serving.ready_at)}{late}", width, indent=9)
    for slot in record.slots:
        row = slot_row(slot, job)
        yield from folded(f"{row['starts']}  {row['name']}, {row['detail']}", width, indent=7)


def _scale(record: PlanRecord, columns: Columns) -> TimeScale:
    zone = ZoneInfo(record.timezone)
    first = quarter_before(min(task.starts_at for task in record.tasks), zone)
    last = quarter_after(max(task.ends_at for task in record.tasks), zone)
    return TimeScale.fitted(first, last, Span(0, columns.bar))


def _axis(record: PlanRecord, columns: Columns, scale: TimeScale) -> Iterator[str]:
    """The hours over the bars, as many as have room."""
    cells_of_axis = [" "] * columns.bar
    free = 0
    for tick in ticks(scale.first, scale.last, ZoneInfo(record.timezone), 60):
        at = round(scale.at(tick.at))
        if at < free or at + len(tick.text) > columns.bar:
            continue
        cells_of_axis[at : at + len(tick.text)] = tick.text
        free = at + len(tick.text) + 1
    yield " " * (14 + columns.name + 1) + "".join(cells_of_axis)


def _groups(record: PlanRecord) -> Iterator[tuple[str, list[PlannedTask]]]:
    """The whole event's tasks, then each dish's, by when they begin; tasks in time order."""
    groups: dict[str, list[PlannedTask]] = {}
    for task in sorted(record.tasks, key=lambda task: (task.starts_at, task.ends_at, task.id)):
        groups.setdefault(task.dish if task.dish in record.dishes else "", []).append(task)
    for dish in sorted(groups, key=lambda dish: (dish != "", groups[dish][0].starts_at)):
        yield record.dishes.get(dish, "For everyone"), groups[dish]


def _line(task: PlannedTask, record: PlanRecord, columns: Columns, scale: TimeScale) -> str:
    names = {helper.id: helper.name for helper in record.helpers}
    job = Job(record, USUAL)
    parts = [f"  {job.clock(task.starts_at)}-{job.clock(task.ends_at)}", padded(task.name, columns.name)]
    if columns.bar:
        parts.append(_bar(task, columns, scale))
    if columns.crew:
        parts.append(fitted(", ".join(names.get(helper, helper) for helper in task.helpers), columns.crew))
    return " ".join(parts)


def _bar(task: PlannedTask, columns: Columns, scale: TimeScale) -> str:
    first = min(columns.bar - 1, int(scale.at(task.starts_at)))
    last = min(columns.bar, max(first + 1, round(scale.at(task.ends_at))))
    return " " * first + STROKES[look_of(task)] * (last - first) + " " * (columns.bar - last)


def _key() -> str:
    meanings = {
        Look.HANDS: "hands-on",
        Look.FIRE: "hands-on at the fire",
        Look.WAIT: "waiting",
        Look.OVEN: "oven on coals",
        Look.PLATE: "to the table",
    }
    return "   ".join(f"{STROKES[look] * 2} {meaning}" for look, meaning in meanings.items())


def printable(text: str) -> str:
    """One line of text without control characters, which could steer a terminal."""
    return " ".join("".join(letter if letter.isprintable() else " " for letter in text).split())


def fitted(text: str, width: int) -> str:
    """The text on one line, cut with an ellipsis where it is wider than `width` cells."""
    text = printable(text)
    if cells(text) <= width:
        return text
    while text and cells(text) > width - 1:
        text = text[:-1]
    return text + "…"


def padded(text: str, width: int) -> str:
    """`fitted`, then filled up with spaces to `width` cells."""
    short = fitted(text, width)
    return short + " " * (width - cells(short))


def folded(text: str, width: int, indent: int = 0) -> Sequence[str]:
    """The text on lines of at most `width` cells, all but the first indented."""
    lead = text[: len(text) - len(text.lstrip(" "))]
    lines = [lead]
    for word in printable(text).split(" "):
        joined = f"{lines[-1]} {word}" if lines[-1].strip() else lines[-1] + word
        if cells(joined) <= width:
            lines[-1] = joined
        else:
            lines.append(" " * indent + fitted(word, width - indent))
    return lines
