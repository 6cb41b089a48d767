"""The running order of each demo slot: what happens in which minute, who does it, and how many minutes are left."""

from collections.abc import Iterator, Sequence
from datetime import datetime

from cookout.core.planning.record import PlannedSlot, PlannedTask, PlanRecord
from cookout.drawing.geometry import minutes_between
from cookout.sheets.job import Job
from cookout.sheets.pages import printed
from cookout.sheets.printing import USUAL, Printing
from cookout.sheets.typesetting import Data


def running_order_pdf(record: PlanRecord, printing: Printing = USUAL) -> bytes:
    """Each demo slot from a page of its own: what stands ready, and live steps, talks and tastings to the minute.

    As `run_sheet_pdf` otherwise; an event without demo slots gets a sheet that says so.
    """
    job = Job(record, printing)
    slots = sorted(record.slots, key=lambda slot: (slot.starts_at, slot.id))
    data = {
        "slots": tuple(_slot(slot, job) for slot in slots),
        "about": tuple(filter(None, (job.first_day(), record.place))),
        "none": printing.gettext("This plan has no demo slot.") if record.tasks else "",
        "heads": _heads(job),
    }
    return printed("running_order", job, data)


def _heads(job: Job) -> Data:
    _ = job.printing.gettext
    return {
        "sheet": _("Running order"),
        "ready": _("Must stand ready"),
        "ready_by": _("by"),
        "order": _("Minute by minute"),
        "minute": _("minute"),
        "at": _("at"),
        "what": _("what"),
        "left": _("left"),
        "meanwhile": _("Meanwhile, away from the audience"),
    }


def _slot(slot: PlannedSlot, job: Job) -> Data:
    _ = job.printing.gettext
    minutes = _minutes(slot.starts_at, slot.ends_at)
    text = _("{start} to {end}, {minutes} min").format(
        start=job.clock(slot.starts_at), end=job.clock(slot.ends_at), minutes=minutes
    )
    live = _live(slot, job.record)
    return {
        "name": slot.name,
        "times": text,
        "starts": job.clock(slot.starts_at),
        "presenter": job.name(slot.presenter),
        "ready": tuple(_ready(slot, job)),
        "items": tuple(_items(slot, live, job)),
        "meanwhile": tuple(_meanwhile(slot, job)),
    }


def _live(slot: PlannedSlot, record: PlanRecord) -> list[PlannedTask]:
    tasks = {task.id: task for task in record.tasks}
    return sorted((tasks[id] for id in slot.live if id in tasks), key=lambda task: (task.starts_at, task.ends_at))


def _minutes(first: datetime, second: datetime) -> int:
    return round(minutes_between(first, second))


def _ready(slot: PlannedSlot, job: Job) -> Iterator[Data]:
    """What must stand ready, in the order in which it is wanted."""
    _ = job.printing.gettext
    tasks = {task.id: task for task in job.record.tasks}
    for dish, up_to, by in sorted(slot.ready_made, key=lambda ready: (ready[2], ready[0], ready[1])):
        task = tasks.get(up_to)
        done = ""
        if task is not None:
            done = _("done: {task}, at {time}").format(task=task.name, time=job.clock(task.ends_at))
        yield {"dish": job.dish(dish), "by": job.clock(by), "done": done}


def _items(slot: PlannedSlot, live: Sequence[PlannedTask], job: Job) -> Iterator[Data]:
    """What is shown, and the minutes between that nothing is planned for."""
    free_from = slot.starts_at
    for task in live:
        if free_from < task.starts_at:
            yield _open(slot, free_from, task.starts_at, job)
        yield _item(slot, task, job)
        free_from = max(free_from, task.ends_at)
    if free_from < slot.ends_at:
        yield _open(slot, free_from, slot.ends_at, job)


def _item(slot: PlannedSlot, task: PlannedTask, job: Job) -> Data:
    names = {"talk": job.printing.gettext("TALK"), "taste": job.printing.gettext("TASTE")}
    facts = (job.record.dishes.get(task.dish, ""), ", ".join(map(job.name, task.helpers)), ", ".join(task.units))
    return _timed(slot, task.starts_at, task.ends_at, job) | {
        "sort": task.kind if task.kind in names else "live",
        "tag": names.get(task.kind, job.printing.gettext("LIVE")),
        "name": task.name,
        "facts": "; ".join(fact for fact in facts if fact),
        "detail": job.told(task.detail),
        "caution": job.told(task.caution),
    }


def _open(slot: PlannedSlot, begins: datetime, ends: datetime, job: Job) -> Data:
    """Minutes without a step: for questions, or to catch up."""
    text = job.printing.gettext("Open: questions, or time to catch up")
    return _timed(slot, begins, ends, job) | {"sort": "open", "name": text}


def _timed(slot: PlannedSlot, begins: datetime, ends: datetime, job: Job) -> dict[str, object]:
    _ = job.printing.gettext
    return {
        "minute": str(_minutes(slot.starts_at, begins)),
        "at": job.clock(begins),
        "takes": _("{minutes} min").format(minutes=_minutes(begins, ends)),
        "left": _("{minutes} left").format(minutes=_minutes(ends, slot.ends_at)),
    }


def _meanwhile(slot: PlannedSlot, job: Job) -> Iterator[Data]:
    """Hands-on work that begins while the slot is on and is not part of it."""
    for task in sorted(job.record.tasks, key=lambda task: (task.starts_at, task.id)):
        if task.hands_on and task.live_in != slot.id and slot.starts_at <= task.starts_at < slot.ends_at:
            yield {
                "at": job.clock(task.starts_at),
                "name": task.name,
                "dish": job.record.dishes.get(task.dish, ""),
                "who": ", ".join(map(job.name, task.helpers)),
            }
