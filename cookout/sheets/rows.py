"""Tasks, servings and demo slots as rows in time order."""

from collections.abc import Iterable, Iterator
from datetime import datetime

from cookout.core.planning.expanded import FIRE_KINDS
from cookout.core.planning.record import PlannedServing, PlannedSlot, PlannedTask, PlanRecord
from cookout.drawing.looks import look_of
from cookout.sheets.job import Job
from cookout.sheets.typesetting import Data

GIST_ENDS = ":;,."
"""What ends the first words of a caution, which are enough where the whole of it has just been read."""
SAME_EVERY_TIME = frozenset({"turn"})
"""Kinds of task whose detail never differs: read once, it is known."""


def task_row(task: PlannedTask, job: Job, *, but_for: str = "") -> Data:
    """A task as a row; `but_for` is the helper whose own sheet it is, who need not be told that they do it."""
    _ = job.printing.gettext
    return {
        "sort": "task",
        "kind": task.kind,
        "starts": job.clock(task.starts_at),
        "until": _("to {time}").format(time=job.clock(task.ends_at)),
        "name": task.name,
        "look": look_of(task).value,
        "hands_on": task.hands_on,
        "tag": _("LIVE") if task.live_in else _fire_or_hot(task, job),
        "dish": job.record.dishes.get(task.dish, ""),
        "who": _who(task, job, but_for),
        "units": ", ".join(task.units),
        "detail": job.told(task.detail),
        "caution": job.told(task.caution),
        "reasons": tuple(job.told(held.brief) for held in task.held_by if held.direction == "later") if but_for else (),
    }


def _fire_or_hot(task: PlannedTask, job: Job) -> str:
    """Work at the fire wants the skill for it, work at hot iron only gloves."""
    _ = job.printing.gettext
    if task.kind in FIRE_KINDS:
        return _("FIRE")
    return _("HOT IRON") if task.hot else ""


def _who(task: PlannedTask, job: Job, but_for: str) -> str:
    _ = job.printing.gettext
    others = ", ".join(job.name(helper) for helper in task.helpers if helper != but_for)
    if but_for:
        return _("with {names}").format(names=others) if others else ""
    return others or _("it waits")


def serving_row(servings: Iterable[PlannedServing], job: Job) -> Data:
    """What is on the table together, as a banner."""
    served = tuple(servings)
    first = served[0]
    people = job.record.people_at(first.serving)
    name = job.printing.gettext("{serving} for {people}").format(serving=first.serving_name, people=people)
    dishes = ", ".join(with_lateness(serving.dish_name, serving, job) for serving in served)
    return {"sort": "serving", "starts": job.clock(first.due_at), "name": name, "detail": dishes}


def with_lateness(text: str, serving: PlannedServing, job: Job) -> str:
    """The text, and after it by how much the dish is late, where it is."""
    if not serving.late_minutes:
        return text
    return job.printing.gettext("{text} ({minutes} min late)").format(text=text, minutes=serving.late_minutes)


def slot_row(slot: PlannedSlot, job: Job) -> Data:
    """A demo slot as a banner, with its presenter and what must stand ready."""
    _ = job.printing.gettext
    detail = _("until {time}, {presenter}").format(time=job.clock(slot.ends_at), presenter=job.name(slot.presenter))
    ready = [
        _("{dish} by {time}").format(dish=job.dish(dish), time=job.clock(by)) for dish, _step, by in slot.ready_made
    ]
    if ready:
        detail = _("{detail}; ready-made: {dishes}").format(detail=detail, dishes=", ".join(dict.fromkeys(ready)))
    return {"sort": "slot", "starts": job.clock(slot.starts_at), "name": slot.name, "detail": detail}


def served_together(record: PlanRecord) -> list[list[PlannedServing]]:
    """The dishes of each serving, in time order."""
    groups: dict[tuple[datetime, str], list[PlannedServing]] = {}
    for serving in record.servings:
        groups.setdefault((serving.due_at, serving.serving), []).append(serving)
    return [groups[key] for key in sorted(groups)]


def timed_rows(tasks: Iterable[PlannedTask], job: Job, *, but_for: str = "") -> list[tuple[datetime, Data]]:
    """Tasks, servings and demo slots with their times, in time order."""
    found = [(slot.starts_at, 0, slot_row(slot, job)) for slot in job.record.slots]
    found += [(group[0].due_at, 1, serving_row(group, job)) for group in served_together(job.record)]
    found += [(task.starts_at, 2, task_row(task, job, but_for=but_for)) for task in tasks]
    return [(at, row) for at, _, row in sorted(found, key=lambda entry: entry[:2])]


def with_hours(rows: Iterable[tuple[datetime, Data]], job: Job) -> Iterator[Data]:
    """The rows with a line at the first of every hour."""
    before = None
    for at, row in rows:
        hour = job.local(at).replace(minute=0)
        if hour != before:
            yield {"sort": "hour", "name": job.clock(hour)}
            before = hour
        yield row


def said_once(rows: Iterable[Data]) -> Iterator[Data]:
    """The rows, each caution in full where it comes first, and again after the turn of the hour; else its first words.

    So are details that never differ, which are left out where they were just read.
    """
    said: set[object] = set()
    for row in rows:
        if row["sort"] == "hour":
            said.clear()
        yield _shortened(row, said) if row["sort"] == "task" else row
        said.update(row.get(key) for key in ("caution", "detail"))


def _shortened(row: Data, said: set[object]) -> Data:
    caution, detail = str(row["caution"]), row["detail"]
    if row["kind"] in SAME_EVERY_TIME and detail in said:
        detail = ""
    gist = caution in said
    return {**row, "caution": _gist(caution) if gist else caution, "gist": gist, "detail": detail}


def _gist(caution: str) -> str:
    ends = [place for mark in GIST_ENDS if (place := caution.find(mark)) > 0]
    return caution[: min(ends, default=len(caution))]
