"""What the printed sheets say, as plain data for their templates."""

from collections.abc import Iterable, Iterator
from datetime import datetime
from zoneinfo import ZoneInfo

from cookout.core.planning.record import PlannedHelper, PlannedServing, PlannedSlot, PlannedTask, PlanRecord
from cookout.drawing.looks import look_of
from cookout.sheets.cautions import CAUTIONS
from cookout.sheets.typesetting import Data, qr_picture


def clock(moment: datetime, record: PlanRecord) -> str:
    """Hours and minutes on the event's own clock."""
    return f"{moment.astimezone(ZoneInfo(record.timezone)):%H:%M}"


def day(moment: datetime, record: PlanRecord) -> str:
    """The day in words, on the event's own calendar."""
    local = moment.astimezone(ZoneInfo(record.timezone))
    return f"{local:%A}, {local.day} {local:%B %Y}"


def stamp_of(record: PlanRecord) -> datetime:
    """A time for the file that the record itself decides: its first start, or the day the calendar of files began."""
    return min((task.starts_at for task in record.tasks), default=datetime(2000, 1, 1, tzinfo=ZoneInfo("UTC")))


def frame(record: PlanRecord, *, address: str | None, revision: int | None) -> dict[str, object]:
    """What every sheet carries: event, place, day, weather, revision, address, warnings, cautions, obstacles."""
    days = (day(record.tasks[0].starts_at, record),) if record.tasks else ()
    return {
        "title": record.event_name,
        "event": record.event_name,
        "about": tuple(line for line in (*days, record.place, record.weather) if line),
        "revision": f"revision {revision}" if revision is not None else "",
        "address": address,
        "qr": qr_picture(address) if address else None,
        "warnings": tuple({"text": w.text, "remedy": w.remedy} for w in record.warnings),
        "cautions": tuple({"name": name, "text": text} for name, text in CAUTIONS.items()),
        "obstacles": record.obstacles if not record.tasks else (),
        "ways": tuple(way.text for way in record.ways_out),
        "rows": (),
        "drawing": None,
    }


def task_row(task: PlannedTask, record: PlanRecord, *, but_for: str = "") -> Data:
    """A task as a row; `but_for` is the helper whose own sheet it is, who need not be told that they do it."""
    return {
        "sort": "task",
        "starts": clock(task.starts_at, record),
        "ends": clock(task.ends_at, record),
        "name": task.name,
        "look": look_of(task).value,
        "hands_on": task.hands_on,
        "tag": "LIVE" if task.live_in else "FIRE" if task.hot else "",
        "dish": record.dishes.get(task.dish, ""),
        "who": _who(task, record, but_for),
        "units": ", ".join(task.units),
        "detail": " ".join(task.detail.split()),
        "caution": task.caution,
        "reasons": tuple(held.brief for held in task.held_by if held.direction == "later") if but_for else (),
    }


def _who(task: PlannedTask, record: PlanRecord, but_for: str) -> str:
    names = {helper.id: helper.name for helper in record.helpers}
    others = " and ".join(names.get(id, id) for id in task.helpers if id != but_for)
    if but_for:
        return f"with {others}" if others else ""
    return others or "nobody needed, it waits"


def serving_row(servings: Iterable[PlannedServing], record: PlanRecord) -> Data:
    """What is on the table together, as a banner."""
    served = tuple(servings)
    first = served[0]
    dishes = ", ".join(_with_lateness(serving) for serving in served)
    name = f"{first.serving_name} for {record.people_at(first.serving)}"
    return {"sort": "serving", "starts": clock(first.due_at, record), "name": name, "detail": dishes}


def _with_lateness(serving: PlannedServing) -> str:
    late = f" ({serving.late_minutes} min late)" if serving.late_minutes else ""
    return serving.dish_name + late


def slot_row(slot: PlannedSlot, record: PlanRecord) -> Data:
    """A demo slot as a banner, with its presenter and what must stand ready."""
    names = {helper.id: helper.name for helper in record.helpers}
    ready = (f"{record.dishes.get(dish, dish)} by {clock(by, record)}" for dish, _, by in slot.ready_made)
    until = f"until {clock(slot.ends_at, record)}, {names.get(slot.presenter, slot.presenter)}"
    standing = ", ".join(ready)
    detail = f"{until}; ready-made: {standing}" if standing else until
    return {"sort": "slot", "starts": clock(slot.starts_at, record), "name": slot.name, "detail": detail}


def served_together(record: PlanRecord) -> list[list[PlannedServing]]:
    """The dishes of each serving, in time order."""
    groups: dict[tuple[datetime, str], list[PlannedServing]] = {}
    for serving in record.servings:
        groups.setdefault((serving.due_at, serving.serving), []).append(serving)
    return [groups[key] for key in sorted(groups)]


def timed_rows(tasks: Iterable[PlannedTask], record: PlanRecord, *, but_for: str = "") -> list[tuple[datetime, Data]]:
    """Tasks, servings and demo slots with their times, in time order."""
    found = [(slot.starts_at, 0, slot_row(slot, record)) for slot in record.slots]
    found += [(group[0].due_at, 1, serving_row(group, record)) for group in served_together(record)]
    found += [(task.starts_at, 2, task_row(task, record, but_for=but_for)) for task in tasks]
    return [(at, row) for at, _, row in sorted(found, key=lambda entry: entry[:2])]


def with_hours(rows: Iterable[tuple[datetime, Data]], record: PlanRecord) -> Iterator[Data]:
    """The rows with a line at the first of every hour."""
    before = ""
    for at, row in rows:
        local = at.astimezone(ZoneInfo(record.timezone))
        if (hour := f"{local:%H}:00") != before:
            yield {"sort": "hour", "name": hour}
            before = hour
        yield row


def calls(record: PlanRecord) -> list[Data]:
    """Who comes when, in order of their call."""
    called = [(helper.called_at, helper) for helper in record.helpers if helper.called_at is not None]
    return [
        {"called": clock(at, record), "name": helper.name, "note": call_note(helper, record)}
        for at, helper in sorted(called, key=lambda pair: (pair[0], pair[1].name))
    ]


def call_note(helper: PlannedHelper, record: PlanRecord) -> str:
    """Until when a helper is needed, and how much of it is work."""
    if helper.free_at is None:
        return "not needed in this plan"
    return f"until {clock(helper.free_at, record)}, {helper.work_minutes} min of work"
