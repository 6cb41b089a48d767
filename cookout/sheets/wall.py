"""The wall sheet: what comes next and who does it, to be read from three metres.

Times and initials have digits and capitals of 14 mm or more, an angle of 16 minutes of arc at 3 m, the least that
ISO 9241-303 recommends (from memory); what is to be done stands in letters of two thirds of that.
"""

from collections import Counter
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from datetime import datetime, timedelta

from cookout.core.planning.record import PlannedTask, PlanRecord
from cookout.sheets.initials import initials_of
from cookout.sheets.job import Job
from cookout.sheets.pages import printed, stamp_of
from cookout.sheets.printing import USUAL, Printing
from cookout.sheets.rows import served_together
from cookout.sheets.typesetting import Data

OVEN_KINDS = frozenset({"load", "lay_coals", "turn", "look_in", "top_up", "take_out"})
TOGETHER = {"turn": timedelta(minutes=10), "look_in": timedelta(minutes=10)}
TOGETHER_ELSE = timedelta(minutes=5)
"""Work of one kind that begins within so much stands in one line."""
NAMED = 3  # dishes; more in one line are only counted


@dataclass(frozen=True, slots=True)
class Line:
    """One line of the wall."""

    at: datetime
    text: str
    tasks: tuple[PlannedTask, ...]


def wall_pdf(
    record: PlanRecord, printing: Printing = USUAL, *, start: datetime | None = None, hours: int | None = None
) -> bytes:
    """Pages across, to hang side by side: time, work and initials in very large type, as PDF.

    All of the day, or from `start` (aware) on and for so many `hours`. As `run_sheet_pdf` otherwise.
    """
    job = Job(record, printing)
    initials = initials_of(record.helpers)
    first, last = _span(record, start, hours)
    rows = sorted(_rows(job, initials, first, last), key=lambda row: row[:2])
    _ = printing.gettext
    data = {
        "rows": tuple(row for _at, _order, row in rows),
        "who": tuple({"initials": initials[each.id], "name": each.name} for each in record.helpers),
        "none": _("Nothing is planned for these hours.") if record.tasks else "",
        "heads": {"sheet": _("Wall sheet")},
    }
    return printed("wall", job, data)


def _span(record: PlanRecord, start: datetime | None, hours: int | None) -> tuple[datetime, datetime]:
    """From when to when; what is on at the start belongs to it no more."""
    moments = [task.starts_at for task in record.tasks] + [serving.due_at for serving in record.servings]
    moments += [slot.starts_at for slot in record.slots]
    first = start or min(moments, default=stamp_of(record))
    last = first + timedelta(hours=hours) if hours else max([*moments, first]) + timedelta(minutes=1)
    return first, last


def _rows(
    job: Job, initials: dict[str, str], first: datetime, last: datetime
) -> Iterator[tuple[datetime, int, Data]]:  # fmt: skip
    record, _ = job.record, job.printing.gettext
    for slot in record.slots:
        if first <= slot.starts_at < last:
            text = _("{name}, until {time}").format(name=slot.name, time=job.clock(slot.ends_at))
            yield slot.starts_at, 0, _row("slot", job.clock(slot.starts_at), text, [initials.get(slot.presenter, "")])
    for group in served_together(record):
        if first <= group[0].due_at < last:
            people = record.people_at(group[0].serving)
            text = _("{serving} for {people}").format(serving=group[0].serving_name, people=people)
            yield group[0].due_at, 1, _row("serving", job.clock(group[0].due_at), text, [])
    for line in wall_lines(task for task in record.tasks if first <= task.starts_at < last):
        who = dict.fromkeys(initials[helper] for task in line.tasks for helper in task.helpers)
        yield line.at, 2, _row("work", job.clock(line.at), _text(line, job), list(who))


def _row(sort: str, at: str, text: str, who: Sequence[str]) -> Data:
    return {"sort": sort, "at": at, "text": text, "who": tuple(name for name in who if name)}


def wall_lines(tasks: Iterable[PlannedTask]) -> Iterator[Line]:
    """Hands-on work in time order, work of one kind that begins nearly together in one line."""
    open_groups: dict[object, list[PlannedTask]] = {}
    for task in sorted((task for task in tasks if task.hands_on), key=lambda task: (task.starts_at, task.id)):
        kind = _group_of(task)
        group = open_groups.get(kind)
        if group is None or task.starts_at - group[0].starts_at >= TOGETHER.get(task.kind, TOGETHER_ELSE):
            if group is not None:
                yield _line(group)
            group = open_groups[kind] = []
        group.append(task)
    for group in open_groups.values():
        yield _line(group)


def _group_of(task: PlannedTask) -> object:
    """What a task shares with those that it stands in one line with: the kind of work, else the very work."""
    if task.kind in OVEN_KINDS or task.kind == "serve":
        return task.kind
    return (task.kind, task.dish, _bare(task.name))


def _bare(name: str) -> str:
    """The name without what tells copies apart ("Fry the hash, batch 2")."""
    head, comma, tail = name.rpartition(", ")
    return head if comma and tail[-1:].isdigit() else name


def _line(group: Sequence[PlannedTask]) -> Line:
    return Line(group[0].starts_at, group[0].name if len(group) == 1 else _bare(group[0].name), tuple(group))


def _text(line: Line, job: Job) -> str:
    """What is to be done, in as few words as tell it."""
    kind = line.tasks[0].kind
    if kind == "light":
        return _light(line, job)
    if kind == "serve":
        return _of_dishes(job.printing.gettext("Serve: {dishes}"), line, job)
    if kind in OVEN_KINDS:
        verb = line.text.partition(": ")[0]
        return _of_dishes(f"{verb.replace('{', '').replace('}', '')}: {{dishes}}", line, job)
    return _times(line.text, len(line.tasks))


def _light(line: Line, job: Job) -> str:
    """Firings by their coals, which is what stands in the chimney."""
    tasks = {task.id for task in line.tasks}
    coals = sum(firing.coals for firing in job.record.firings if firing.lit_by in tasks)
    if not coals:
        return line.text
    return job.printing.ngettext("Light {count} coal", "Light {count} coals", coals).format(count=coals)


def _of_dishes(pattern: str, line: Line, job: Job) -> str:
    """The work and the dishes it is for, each with how many times; many dishes are only counted."""
    counted = Counter(job.dish(task.dish) for task in line.tasks)
    if len(counted) > NAMED:
        text = job.printing.ngettext("{count} dish", "{count} dishes", len(counted)).format(count=len(counted))
        return pattern.format(dishes=text)
    return pattern.format(dishes=", ".join(_times(dish, count) for dish, count in counted.items()))


def _times(text: str, count: int) -> str:
    """The text with how many times, which stays on the line of its last word."""
    return f"{text}\u00a0×{count}" if count > 1 else text
