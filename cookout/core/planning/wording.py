"""Minutes and times as people say them."""

from datetime import datetime, timedelta
from zoneinfo import ZoneInfo

from cookout.core.planning.event import Event


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
