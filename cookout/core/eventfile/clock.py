"""Between the local times of an event file and whole minutes from the event's origin.

Minutes are true elapsed minutes, counted in UTC, so that a day on which the clocks change has 23 or 25 hours.
"""

import re
from datetime import UTC, date, datetime, time, timedelta
from zoneinfo import ZoneInfo

from cookout.core.eventfile.faults import quoted
from cookout.core.planning.event import Window

YEARS = range(2000, 2200)
MOST_DAYS_AWAY = 14

_MOMENT = r"(?:(\d{4}-\d{2}-\d{2})[ T]+)?(\d{1,2}):(\d{2})( +again)?"
_ONE_MOMENT = re.compile(_MOMENT, re.ASCII)
_TWO_MOMENTS = re.compile(rf"{_MOMENT}\s*[-\u2013]\s*{_MOMENT}", re.ASCII)


class UnreadableTimeError(Exception):
    """A time that cannot be used; `what` is wrong, and its `remedy`. Becomes a `Fault` with its place in the file."""

    def __init__(self, what: str, remedy: str) -> None:
        self.what = what
        self.remedy = remedy
        super().__init__(f"{what} {remedy}")


class Clock:
    """The local clock of an event on its `day`. `near_day` False leaves out the check that times lie near that day."""

    def __init__(self, zone: ZoneInfo, day: date, *, near_day: bool = True) -> None:
        self._zone = zone
        self._day = day
        self._near_day = near_day
        self._origin_utc = datetime.combine(day, time(0), zone).astimezone(UTC)
        # By way of UTC: where the clocks skip midnight the day starts at the first time that exists.
        self.origin = self._origin_utc.astimezone(zone)

    def minute(self, found: object) -> int:
        """The minute of a time as the file gives it: text, or TOML's own time or date and time.

        Raises `UnreadableTimeError`.
        """
        if isinstance(found, datetime) and found.tzinfo is None:
            return self._minute_at(found, again=False)
        if isinstance(found, time) and found.tzinfo is None:
            return self._minute_at(datetime.combine(self._day, found), again=False)
        match = _ONE_MOMENT.fullmatch(found.strip()) if isinstance(found, str) else None
        if match is None:
            raise UnreadableTimeError(
                "It is not a local time.", 'Write a time as "18:00", or with its date as "2027-05-02 08:00".'
            )
        return self._minute_of(match.groups(), self._day)[0]

    def window(self, found: object) -> Window:
        """The window of a text such as ``14:00-19:30``; raises `UnreadableTimeError`, also where it is reversed."""
        match = _TWO_MOMENTS.fullmatch(found.strip()) if isinstance(found, str) else None
        if match is None:
            raise UnreadableTimeError(
                "It is not a window.", 'Write it as "14:00-19:30", or with its date as "2027-05-02 08:00-12:00".'
            )
        start, day = self._minute_of(match.groups()[:4], self._day)
        end, _ = self._minute_of(match.groups()[4:], day)
        if end <= start:
            raise UnreadableTimeError(
                "The window ends before it starts.",
                'Swap the times; for one past midnight give both dates, as "2027-05-01 22:00 - 2027-05-02 02:00".',
            )
        return Window(start, end)

    def moment_text(self, minute: int) -> str:
        """The text that `minute` reads as this minute."""
        day, text = self._day_and_time(minute)
        return text if day == self._day else f"{day} {text}"

    def window_text(self, window: Window) -> str:
        """The text that `window` reads as this window."""
        start_day, _ = self._day_and_time(window.start)
        end_day, end = self._day_and_time(window.end)
        start = self.moment_text(window.start)
        return f"{start}-{end}" if end_day == start_day else f"{start} - {end_day} {end}"

    def _day_and_time(self, minute: int) -> tuple[date, str]:
        local = (self._origin_utc + timedelta(minutes=minute)).astimezone(self._zone)
        return local.date(), f"{local:%H:%M}" + (" again" if local.fold else "")

    def _minute_of(self, parts: tuple[str | None, ...], default_day: date) -> tuple[int, date]:
        day_text, hour, minute, again = parts
        day = default_day if day_text is None else read_day(day_text)
        hours, minutes = int(hour or 0), int(minute or 0)
        if minutes > 59 or hours > 24 or (hours == 24 and minutes):
            raise UnreadableTimeError(f"There is no time {hours}:{minutes:02}.", "Hours run from 0 to 24.")
        local = datetime.combine(day, time(0)) + timedelta(hours=hours, minutes=minutes)
        return self._minute_at(local, again=again is not None), day

    def _minute_at(self, local: datetime, *, again: bool) -> int:
        self._refuse_far_day(local.date())
        if local.second or local.microsecond:
            raise UnreadableTimeError("It has seconds.", "Write whole minutes.")
        aware = local.replace(tzinfo=self._zone)
        elapsed = aware.astimezone(UTC)
        if elapsed.astimezone(self._zone).replace(tzinfo=None) != local:
            raise UnreadableTimeError(
                f"The clocks skip {local:%H:%M} on {local.date()}.", "Write a time before or after the change."
            )
        if again:
            elapsed = self._second(aware)
        return round((elapsed - self._origin_utc) / timedelta(minutes=1))

    def _second(self, aware: datetime) -> datetime:
        second = aware.replace(fold=1)
        if second.utcoffset() == aware.utcoffset():
            raise UnreadableTimeError(
                f"The clocks show {aware:%H:%M} only once on {aware.date()}.", 'Leave out "again".'
            )
        return second.astimezone(UTC)

    def _refuse_far_day(self, day: date) -> None:
        if day.year not in YEARS or (self._near_day and abs((day - self._day).days) > MOST_DAYS_AWAY):
            raise UnreadableTimeError(
                f"{day} is more than {MOST_DAYS_AWAY} days from the event.", "Check the date here and event.date."
            )


def read_day(text: str) -> date:
    """The date of a text such as ``2027-06-12``; raises `UnreadableTimeError`."""
    try:
        day = date.fromisoformat(text.strip())
    except ValueError:
        raise UnreadableTimeError(f"There is no date {quoted(text)}.", 'Write it as "2027-06-12".') from None
    if day.year not in YEARS:
        raise UnreadableTimeError(f"The year {day.year} is out of range.", f"Use {YEARS.start} to {YEARS.stop - 1}.")
    return day
