"""A copy of an event on another day, at the same times by the clock."""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from datetime import UTC, date, datetime, time, timedelta
from itertools import pairwise
from zoneinfo import ZoneInfo

from cookout.core.planning.event import DemoSlot, Event, Helper, ReadyMade, WeatherFrom, Window
from cookout.core.planning.expand.crew import merged
from cookout.core.planning.wording import moment


def moved_to(event: Event, day: date, *, id: str, name: str) -> Event:
    """The same event on another day, under another id and name, all of its times as the clock showed them.

    What lay on the next day lies on the next day again. A time that the clocks skip on the new day is as much later as
    they skip; one that they show twice there is the first, unless it was the second before. Lengths of time (slots,
    tolerances, recipes) stay as they are. Weather and a fire warning are copied too, until somebody looks anew.
    """
    moving = _Moving(event, day)
    return replace(
        event,
        id=id,
        name=name,
        origin=moving.origin,
        servings=tuple(replace(serving, at=moving.minute(serving.at)) for serving in event.servings),
        slots=tuple(moving.slot(slot) for slot in event.slots),
        crew=tuple(moving.helper(helper) for helper in event.crew),
        hours=tuple(moving.hours()),
        pins=tuple(pin if pin.at is None else replace(pin, at=moving.minute(pin.at)) for pin in event.pins),
    )


@dataclass(frozen=True, slots=True)
class _Moving:
    event: Event
    day: date

    @property
    def zone(self) -> ZoneInfo:
        return ZoneInfo(self.event.timezone)

    @property
    def origin(self) -> datetime:
        """The start of the new day, by way of UTC: where the clocks skip midnight, the first time that exists."""
        return datetime.combine(self.day, time(0), self.zone).astimezone(UTC).astimezone(self.zone)

    def minute(self, minute: int) -> int:
        """The minute of the new event at which the clock shows what it showed at that minute of the old one."""
        old = moment(self.event, minute)
        away = self.day - self.event.origin.astimezone(self.zone).date()
        shown = old.replace(tzinfo=None, fold=0) + away
        new = shown.replace(tzinfo=self.zone, fold=old.fold).astimezone(UTC)
        if new.astimezone(self.zone).replace(tzinfo=None, fold=0) != shown:
            new = shown.replace(tzinfo=self.zone).astimezone(UTC)
        return round((new - self.origin.astimezone(UTC)) / timedelta(minutes=1))

    def helper(self, helper: Helper) -> Helper:
        """Hours that the clocks leave nothing of keep their length, and those that now overlap are one."""
        windows = tuple(self.window(window) for window in helper.windows)
        in_order = sorted(windows, key=lambda window: window.start)
        overlap = any(later.start < earlier.end for earlier, later in pairwise(in_order))
        return replace(helper, windows=merged(windows) if overlap else windows)

    def window(self, window: Window) -> Window:
        start, end = self.minute(window.start), self.minute(window.end)
        return Window(start, end if end > start else start + window.end - window.start)

    def slot(self, slot: DemoSlot) -> DemoSlot:
        starts_at = self.minute(slot.starts_at)
        ready_made = tuple(self.ready(ready, starts_at + slot.minutes) for ready in slot.ready_made)
        return replace(slot, starts_at=starts_at, ready_made=ready_made)

    def ready(self, ready: ReadyMade, ends_at: int) -> ReadyMade:
        """What stands ready does so before the slot is over, however the clocks change in it."""
        return replace(ready, by=min(self.minute(ready.by), ends_at))

    def hours(self) -> Iterator[WeatherFrom]:
        """Changes of the weather in their order; one that now starts no earlier than the next never holds."""
        before: list[WeatherFrom] = []
        for hour in sorted(self.event.hours, key=lambda hour: hour.start):
            start = self.minute(hour.start)
            before = [*(earlier for earlier in before if earlier.start < start), WeatherFrom(start, hour.weather)]
        yield from before
