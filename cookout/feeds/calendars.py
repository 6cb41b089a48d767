"""The calendar of a whole event, and the calendar of one helper's own work."""

import json
from collections.abc import Iterable
from dataclasses import dataclass
from datetime import UTC, datetime, timedelta
from enum import StrEnum
from uuid import UUID, uuid5
from zoneinfo import ZoneInfo

from icalendar import Alarm, Calendar, Event, Todo, vUri

from cookout.core.planning.record import PlannedTask, PlanRecord
from cookout.feeds.describe import Wording, cancelled_summary_of
from cookout.feeds.kinds import look_of
from cookout.feeds.stamps import CancelledTask, Stamps, TaskStamp
from cookout.feeds.text import category_value, checked_address, lines_value, one_line, text_value
from cookout.feeds.zones import timezone_component

REFRESH_EVERY = timedelta(minutes=15)
"""How often a reader is asked to look again; many look far less often, so this is no way to remind anyone."""

_UID_SPACE = UUID("9a8a4c1e-6d0b-4f56-8a53-0f6f0a3f1d27")
_EVENT_COLOR, _HELPER_COLOR = "chocolate", "teal"


class Form(StrEnum):
    """What tasks are written as. Phones often pass over VTODO in a subscribed feed, so it is only for those who ask."""

    EVENTS = "events"
    TODOS = "todos"


@dataclass(frozen=True, slots=True)
class _Feed:
    """What one calendar is written from; the public functions are its only makers."""

    record: PlanRecord
    revision: int
    stamped_at: datetime
    address: str
    title: str
    description: tuple[str, ...]
    color: str
    owner: str
    stamps: Stamps
    form: Form
    dependencies: bool = False


def event_calendar(
    record: PlanRecord,
    *,
    revision: int,
    stamped_at: datetime,
    address: str = "",
    name: str = "",
    changes: Stamps | None = None,
    form: Form = Form.EVENTS,
    dependencies: bool = False,
) -> bytes:
    """Every task of the plan, waiting included, as an iCalendar file in UTF-8.

    `revision` and `stamped_at` (aware) are those under which `record` was stored. `address` is where the feed can be
    fetched again ("" for a file that is written once), `name` what readers call it ("" for the event's name). `changes`
    comes from `stamp_changes` or `stamp_history`; a task without a stamp counts as changed by this revision.
    `dependencies` adds RELATED-TO with RELTYPE=DEPENDS-ON (RFC 9253), for planning programs alone: some phones show it
    as sub-tasks. `FeedError` where `address` is no web address.
    """
    feed = _Feed(
        record=record,
        revision=revision,
        stamped_at=stamped_at,
        address=address,
        title=name or record.event_name,
        description=(record.place, record.weather),
        color=_EVENT_COLOR,
        owner="",
        stamps=changes or Stamps(),
        form=form,
        dependencies=dependencies,
    )
    gone = [task for task in feed.stamps.cancelled if task.from_event]
    return _written(feed, record.tasks, gone)


def helper_calendar(
    record: PlanRecord,
    helper_id: str,
    *,
    revision: int,
    stamped_at: datetime,
    address: str = "",
    name: str = "",
    changes: Stamps | None = None,
    form: Form = Form.EVENTS,
) -> bytes:
    """The hands-on tasks of one helper with an alarm before each; arguments as for `event_calendar`.

    A task given to someone else shows as cancelled here. `KeyError` for a helper of whom neither record nor changes
    know.
    """
    stamps = changes or Stamps()
    gone = [task for task in stamps.cancelled if helper_id in task.helpers and task.hands_on]
    helper = next((helper for helper in record.helpers if helper.id == helper_id), None)
    if helper is None and not gone:
        raise KeyError(helper_id)
    feed = _Feed(
        record=record,
        revision=revision,
        stamped_at=stamped_at,
        address=address,
        title=name or (f"{record.event_name}: {helper.name}" if helper else record.event_name),
        description=(record.place, _call(record, helper_id)),
        color=_HELPER_COLOR,
        owner=helper_id,
        stamps=stamps,
        form=form,
    )
    return _written(feed, [task for task in record.tasks if task.hands_on and helper_id in task.helpers], gone)


def _call(record: PlanRecord, helper_id: str) -> str:
    zone = ZoneInfo(record.timezone)
    for helper in record.helpers:
        if helper.id == helper_id and helper.called_at and helper.free_at:
            called, free = _local(helper.called_at, zone), _local(helper.free_at, zone)
            return f"Call time {called:%Y-%m-%d %H:%M}, free from {free:%H:%M}"
    return ""


def _written(feed: _Feed, tasks: Iterable[PlannedTask], gone: Iterable[CancelledTask]) -> bytes:
    shown = sorted(tasks, key=_by_start)
    taken_away = sorted(gone, key=_by_start)
    calendar = _heading(feed)
    years = _years(feed, (*shown, *taken_away))
    calendar.add_component(timezone_component(feed.record.timezone, min(years), max(years)))
    for task in shown:
        calendar.add_component(_task_component(feed, task))
    for cancelled in taken_away:
        calendar.add_component(_cancelled_component(feed, cancelled))
    written: bytes = calendar.to_ical()
    return written


def _years(feed: _Feed, tasks: Iterable[PlannedTask | CancelledTask]) -> set[int]:
    zone = ZoneInfo(feed.record.timezone)
    times = [moment for task in tasks for moment in (task.starts_at, task.ends_at)]
    return {_local(moment, zone).year for moment in times or [feed.stamped_at]}


def _by_start(task: PlannedTask | CancelledTask) -> tuple[datetime, str]:
    return task.starts_at.astimezone(UTC), task.id


def _heading(feed: _Feed) -> Calendar:
    """The calendar's own properties.

    There is no METHOD: PUBLISH would call for an ORGANIZER (RFC 5546 section 3.2.1), and so for somebody's address.
    VALUE is given by hand because the library's own arguments leave it out, which RFC 7986 does not allow.
    """
    calendar = Calendar()
    calendar.add("prodid", "-//cookout//calendars//EN")
    calendar.add("version", "2.0")
    calendar.add("uid", _uid(feed.record, "calendar", feed.owner))
    calendar.add("last-modified", _aware(feed.stamped_at))
    calendar.add("name", text_value(feed.title))
    calendar.add("x-wr-calname", text_value(feed.title))
    calendar.add("description", lines_value(feed.description))
    calendar.add("color", feed.color)
    if feed.address:
        calendar.add("source", vUri(checked_address(feed.address)), parameters={"VALUE": "URI"})
        calendar.add("refresh-interval", REFRESH_EVERY, parameters={"VALUE": "DURATION"})
        calendar.add("x-published-ttl", REFRESH_EVERY, parameters={"VALUE": "DURATION"})
    return calendar


def _task_component(feed: _Feed, task: PlannedTask) -> Event | Todo:
    wording = Wording(feed.record, feed.owner)
    stamp = feed.stamps.tasks.get(task.id) or TaskStamp(feed.revision, feed.stamped_at)
    component = _dated(feed, task, stamp, feed.record.place)
    component.add("summary", text_value(wording.summary(task)))
    if lines := wording.description(task):
        component.add("description", lines_value(lines))
    component.add("categories", category_value(wording.categories(task)))
    component.add("color", look_of(task.kind).color)
    if isinstance(component, Event):
        component.add("status", "CONFIRMED")
        component.add("transp", "OPAQUE" if task.hands_on else "TRANSPARENT")
    else:
        component.add("status", "NEEDS-ACTION")
    if feed.dependencies:
        _add_dependencies(feed.record, task, component)
    if feed.owner:
        component.add_component(_alarm(feed.record, task, wording))
    return component


def _cancelled_component(feed: _Feed, task: CancelledTask) -> Event | Todo:
    component = _dated(feed, task, task.stamp, task.place)
    component.add("summary", text_value(cancelled_summary_of(task.name, task.dish)))
    component.add("categories", category_value((look_of(task.kind).category,)))
    component.add("status", "CANCELLED")
    if isinstance(component, Event):
        component.add("transp", "TRANSPARENT")
    return component


def _dated(feed: _Feed, task: PlannedTask | CancelledTask, stamp: TaskStamp, place: str) -> Event | Todo:
    """A component with identity, stamps, times and place.

    Without a METHOD, DTSTAMP means the same as LAST-MODIFIED (RFC 5545 section 3.8.7.2).
    """
    component = Event() if feed.form is Form.EVENTS else Todo()
    component.add("uid", _uid(feed.record, "task", task.id))
    component.add("sequence", stamp.sequence)
    component.add("dtstamp", _aware(stamp.modified_at))
    component.add("last-modified", _aware(stamp.modified_at))
    _add_times(component, task.starts_at, task.ends_at, ZoneInfo(feed.record.timezone))
    if one_line(place):
        component.add("location", text_value(place))
    return component


def _add_times(component: Event | Todo, starts_at: datetime, ends_at: datetime, zone: ZoneInfo) -> None:
    """Start and end in local time with TZID, or both in UTC where either is a local time that comes twice.

    RFC 5545 section 3.3.5 reads such a time as the first, which leaves no way to write the second; and some readers
    take it for the second. An end must lie after its start (3.8.2.2, 3.8.2.3): a task of no length is written with a
    start alone, or as a to-do with nothing but its due time.
    """
    start, end = _local(starts_at, zone), _local(ends_at, zone)
    write = _in_utc if _comes_twice(start) or _comes_twice(end) else _in_zone
    end_property = "dtend" if isinstance(component, Event) else "due"
    has_length = start.astimezone(UTC) < end.astimezone(UTC)
    if has_length or end_property == "dtend":
        write(component, "dtstart", start)
    if has_length or end_property == "due":
        write(component, end_property, end)


def _comes_twice(local: datetime) -> bool:
    return local.replace(fold=0).utcoffset() != local.replace(fold=1).utcoffset()


def _in_zone(component: Event | Todo, property_name: str, local: datetime) -> None:
    component.add(property_name, local.replace(tzinfo=None), parameters={"TZID": str(local.tzinfo)})


def _in_utc(component: Event | Todo, property_name: str, local: datetime) -> None:
    component.add(property_name, local.astimezone(UTC))


def _add_dependencies(record: PlanRecord, task: PlannedTask, component: Event | Todo) -> None:
    """In the dependent component, where its meaning is beyond doubt (RFC 9253 section 9)."""
    known = {other.id for other in record.tasks}
    for before in sorted({link.before for link in record.links if link.after == task.id} & known):
        component.add("related-to", _uid(record, "task", before), parameters={"RELTYPE": "DEPENDS-ON"})


def _alarm(record: PlanRecord, task: PlannedTask, wording: Wording) -> Alarm:
    alarm = Alarm()
    alarm.add("uid", _uid(record, "alarm", task.id))
    alarm.add("action", "DISPLAY")
    alarm.add("trigger", timedelta(minutes=-wording.lead_minutes(task)))
    alarm.add("description", text_value(wording.summary(task)))
    return alarm


def _uid(record: PlanRecord, what: str, key: str) -> str:
    """The same for the same thing of the same event in every revision, and telling nothing (RFC 7986 section 5.3)."""
    return str(uuid5(_UID_SPACE, json.dumps([record.event_id, what, key])))


def _local(moment: datetime, zone: ZoneInfo) -> datetime:
    """By way of UTC: `astimezone` leaves a local time that the clocks skip as it is if the zone is already the same."""
    return _aware(moment).astimezone(UTC).astimezone(zone)


def _aware(moment: datetime) -> datetime:
    if moment.utcoffset() is None:
        raise ValueError(f"{moment.isoformat()} has no time zone; calendars need aware datetimes")
    return moment
