"""Calendar readers of other people, each made to give the same simple answer: the moments of each event by UID.

With the zone `renamed` to one that no time-zone data has, a reader must go by the VTIMEZONE that we wrote.
"""

import json
import subprocess
from collections.abc import Callable
from datetime import UTC, datetime, tzinfo
from pathlib import Path
from typing import Any
from zlib import crc32

import icalendar
import recurring_ical_events  # type: ignore[import-untyped]
import vobject
from ical.calendar_stream import IcsCalendarStream

Moments = dict[str, tuple[datetime, datetime]]
SCRIPT = Path(__file__).with_name("read_calendar.mjs")


def renamed(data: bytes, zone: str) -> bytes:
    """The calendar with its zone under a name that no reader can look up.

    It is another name for other rules, since some readers remember zones by name from one calendar to the next.
    """
    return data.replace(zone.encode(), f"Nowhere/{crc32(data):08x}".encode())


def by_ical(data: bytes) -> Moments:
    calendar = IcsCalendarStream.calendar_from_ics(data.decode())
    return {str(e.uid): _in_utc(e.dtstart, e.end) for e in calendar.events}


def by_vobject(data: bytes) -> Moments:
    calendar = vobject.readOne(data.decode(), validate=True)
    return {e.uid.value: _in_utc(e.dtstart.value, e.dtend.value) for e in calendar.vevent_list}


def by_icalendar(data: bytes) -> Moments:
    calendar = icalendar.Calendar.from_ical(data)
    return {str(e["uid"]): _in_utc(e.start, e.end) for e in calendar.events}


def by_recurring_ical_events(data: bytes) -> Moments:
    events = recurring_ical_events.of(icalendar.Calendar.from_ical(data)).all()
    return {str(e["uid"]): _in_utc(e.start, e.end) for e in events}


def run_ical_js(data: bytes, node: str, node_modules: Path, *task: str) -> Any:
    """The script's answer about a calendar."""
    command = [node, str(SCRIPT), str(node_modules / "ical.js"), *task]
    done = subprocess.run(command, input=data, capture_output=True, check=False, timeout=60)
    assert done.returncode == 0, done.stderr.decode()
    return json.loads(done.stdout)


def by_ical_js(data: bytes, node: str, node_modules: Path) -> Moments:
    events = run_ical_js(data, node, node_modules, "events")["events"]
    return {
        e["uid"]: (datetime.fromtimestamp(e["starts"], UTC), datetime.fromtimestamp(e["ends"], UTC)) for e in events
    }


PYTHON_READERS: tuple[Callable[[bytes], Moments], ...] = (by_ical, by_vobject, by_icalendar, by_recurring_ical_events)


def zone_by_vobject(data: bytes) -> tzinfo:
    calendar = vobject.readOne(data.decode(), validate=True)
    found: tzinfo = calendar.vtimezone.tzinfo
    return found


def _in_utc(start: Any, end: Any) -> tuple[datetime, datetime]:
    return start.astimezone(UTC), end.astimezone(UTC)
