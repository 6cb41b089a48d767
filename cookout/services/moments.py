"""Minutes from an event's origin as moments on the clock."""

from datetime import UTC, datetime, timedelta
from zoneinfo import ZoneInfo

from cookout.core.planning.event import Event


def moment(event: Event, minute: int) -> datetime:
    """The aware datetime, in the event's zone, that lies `minute` elapsed minutes after its origin."""
    instant = event.origin.astimezone(UTC) + timedelta(minutes=minute)
    return instant.astimezone(ZoneInfo(event.timezone))
