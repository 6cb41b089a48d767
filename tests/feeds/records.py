"""Small plans for the feeds' tests: the sample supper with other tasks, zones and names."""

from dataclasses import replace
from datetime import UTC, datetime, timedelta
from zoneinfo import ZoneInfo

from cookout.core.planning.record import PlannedTask, PlanRecord
from tests.samples import sample_record

SAVED_AT = datetime(2027, 6, 1, 12, 30, tzinfo=UTC)
ADDRESS = "https://example.org/feeds/of,one;kind.ics?key=a1b2"
FIVE_ZONES = ("America/New_York", "America/Denver", "Europe/Dublin", "Australia/Lord_Howe", "Asia/Kolkata")


def utc(text: str) -> datetime:
    """``2027-03-14 06:30`` as a moment in UTC."""
    return datetime.fromisoformat(text).replace(tzinfo=UTC)


def task_at(
    start: datetime, *, minutes: int = 30, id: str = "stir", helpers: tuple[str, ...] = ("runa",)
) -> PlannedTask:
    """A task of that many minutes, hands-on if somebody does it."""
    return PlannedTask(
        id=id,
        dish="beans",
        name=f"Do {id}",
        kind="prepare",
        starts_at=start,
        ends_at=start.astimezone(UTC) + timedelta(minutes=minutes),
        helpers=helpers,
        gear={},
        hands_on=bool(helpers),
        slack_minutes=0,
        held_by=(),
    )


def record_with(*tasks: PlannedTask, timezone: str = "America/Chicago") -> PlanRecord:
    """The sample supper with these tasks alone."""
    return replace(sample_record(), tasks=tasks, timezone=timezone, links=(), slots=(), firings=(), bakes=())


def record_around_changes(timezone: str, year: int) -> PlanRecord:
    """A task at each quarter hour within two hours of each clock change of a year, or of its middle if it has none."""
    zone = ZoneInfo(timezone)
    hours = [datetime(year, 1, 1, tzinfo=UTC) + timedelta(hours=n) for n in range(366 * 24)]
    changes = [
        hour
        for hour in hours
        if hour.astimezone(zone).utcoffset() != (hour + timedelta(hours=1)).astimezone(zone).utcoffset()
    ] or [datetime(year, 7, 1, tzinfo=UTC)]
    starts = [change + timedelta(minutes=15 * n) for change in changes for n in range(-8, 13)]
    tasks = (task_at(start.astimezone(zone), id=f"{start:%m%dT%H%M}", minutes=20) for start in starts)
    return record_with(*tasks, timezone=timezone)
