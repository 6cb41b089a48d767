"""Minutes and times as people say them."""

import re
from datetime import datetime, timedelta
from typing import Literal
from zoneinfo import ZoneInfo

from cookout.core.planning.event import Event

HourStyle = Literal["12", "24"]
"""How a person reads the time of day: 2:05 pm or 14:05."""

_TIME_OF_DAY = re.compile(r"(?<![\d:.])([01]\d|2[0-3]):([0-5]\d)(?![\d:])")


def clock_text(at: datetime, hours: HourStyle) -> str:
    """The time of day of a moment in the zone it carries: "14:05" or "2:05 pm"."""
    if hours == "24":
        return f"{at:%H:%M}"
    return f"{at.hour % 12 or 12}:{at:%M} {'am' if at.hour < 12 else 'pm'}"


def in_hours(text: str, hours: HourStyle) -> str:
    """A text of a plan, whose times of day are written as 14:05, with them as the reader is used to."""
    if hours == "24":
        return text
    return _TIME_OF_DAY.sub(lambda found: _twelve(int(found[1]), found[2]), text)


def _twelve(hour: int, minute: str) -> str:
    return f"{hour % 12 or 12}:{minute} {'am' if hour < 12 else 'pm'}"


def moment(event: Event, minute: int) -> datetime:
    """A minute of the event as an aware datetime in its zone; minutes are true elapsed ones, across clock changes."""
    zone = ZoneInfo(event.timezone)
    utc = ZoneInfo("UTC")
    return (event.origin.astimezone(utc) + timedelta(minutes=minute)).astimezone(zone)


def clock(event: Event, minute: int) -> str:
    """The time of day, with the weekday where it is not the event's first day."""
    at = moment(event, minute)
    first = event.origin.astimezone(ZoneInfo(event.timezone)).date()
    return f"{at:%H:%M}" if at.date() == first else f"{at:%a %H:%M}"


def span(minutes: int) -> str:
    """A length of time: "35 min", "2 h", "2 h 05 min"."""
    hours, rest = divmod(abs(minutes), 60)
    if not hours:
        return f"{rest} min"
    return f"{hours} h {rest:02d} min" if rest else f"{hours} h"
