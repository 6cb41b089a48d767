"""VTIMEZONE components (RFC 5545 section 3.6.5) derived from `zoneinfo`.

The library's own `add_missing_timezones` writes the onset of daylight time an hour late, so the rules are derived here:
clock changes are found in the zone, those that repeat each year become an RRULE, the rest an RDATE.
"""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from datetime import UTC, datetime, timedelta
from functools import lru_cache
from itertools import groupby
from zoneinfo import ZoneInfo

from icalendar import Timezone, TimezoneDaylight, TimezoneStandard, vRecur

from cookout.feeds.text import text_value

_LOOK_BACK_TO = 2000
"""Rules are followed back to this year: some readers look at past years to tell a zone from UTC."""

_RULE_YEARS_AHEAD = 10
"""A rule is written only if the zone keeps it this many years past the last one asked for."""

_WEEKDAYS = ("MO", "TU", "WE", "TH", "FR", "SA", "SU")
_LAST_WEEK = -1
_DAY = timedelta(days=1)
_ZERO = timedelta(0)


@dataclass(frozen=True, slots=True)
class Onset:
    """The moment at which a zone's clocks go from one offset to another; `local` is read off the clock before it."""

    local: datetime
    offset_from: timedelta
    offset_to: timedelta
    name: str
    daylight: bool

    @property
    def weeks(self) -> frozenset[int]:
        """Which of its weekday in the month the day is: counted from the start, and -1 if it is the last."""
        nth = (self.local.day - 1) // 7 + 1
        is_last = (self.local + timedelta(days=7)).month != self.local.month
        return frozenset({nth, _LAST_WEEK} if is_last else {nth})


@dataclass(frozen=True, slots=True)
class Observance:
    """One STANDARD or DAYLIGHT part: its first onset, and the `week` of a yearly rule or else every onset `listed`."""

    first: Onset
    week: int | None = None
    listed: tuple[datetime, ...] = ()


def timezone_component(key: str, first_year: int, last_year: int) -> Timezone:
    """The VTIMEZONE of an IANA zone, true for every moment of the years `first_year` to `last_year`."""
    component = Timezone()
    component.add("tzid", text_value(key))
    for observance in observances(key, first_year, last_year):
        component.add_component(_observance_component(observance))
    return component


@lru_cache(maxsize=64)
def observances(key: str, first_year: int, last_year: int) -> tuple[Observance, ...]:
    """The parts of a zone's VTIMEZONE, ordered by first onset."""
    zone = ZoneInfo(key)
    horizon = last_year + _RULE_YEARS_AHEAD
    found = tuple(_onsets(zone, min(_LOOK_BACK_TO, first_year - 1), horizon))
    runs = tuple(run for run in _yearly_runs(found, horizon) if run[0].local.year <= last_year + 1)
    covered = {onset for run in runs for onset in run}
    odd = [o for o in found if o not in covered and first_year - 1 <= o.local.year <= last_year + 1]
    if not any(onset.local.year < first_year for onset in (*covered, *odd)):
        odd.insert(0, _standing(zone, first_year - 1))
    ruled = (Observance(run[0], week=min(_common_weeks(run))) for run in runs)
    return tuple(sorted((*ruled, *_listed(odd)), key=lambda part: (part.first.local, part.first.daylight)))


def _onsets(zone: ZoneInfo, first_year: int, last_year: int) -> Iterator[Onset]:
    """Every clock change of these years: looked for day by day, then narrowed down to the second."""
    moment = datetime(first_year, 1, 1, tzinfo=UTC)
    end = datetime(last_year + 1, 1, 1, tzinfo=UTC)
    while moment < end:
        if _state(zone, moment) != _state(zone, moment + _DAY):
            yield _onset(zone, _change_after(zone, moment))
        moment += _DAY


def _state(zone: ZoneInfo, moment: datetime) -> tuple[timedelta, timedelta, str]:
    local = moment.astimezone(zone)
    return local.utcoffset() or _ZERO, local.dst() or _ZERO, local.tzname() or zone.key


def _change_after(zone: ZoneInfo, moment: datetime) -> datetime:
    before, after = 0, 24 * 60 * 60
    old = _state(zone, moment)
    while after - before > 1:
        middle = (before + after) // 2
        if _state(zone, moment + timedelta(seconds=middle)) == old:
            before = middle
        else:
            after = middle
    return moment + timedelta(seconds=after)


def _onset(zone: ZoneInfo, change: datetime) -> Onset:
    offset_from, saved_before, _ = _state(zone, change - timedelta(seconds=1))
    offset_to, saved, name = _state(zone, change)
    # Ireland's winter is written as negative daylight time; readers expect DAYLIGHT on the side with the later clock.
    daylight = saved > _ZERO or (saved == _ZERO and saved_before < _ZERO)
    return Onset((change + offset_from).replace(tzinfo=None), offset_from, offset_to, name, daylight)


def _standing(zone: ZoneInfo, year: int) -> Onset:
    """What is in force when a year begins, as an onset that changes nothing."""
    begins = datetime(year, 1, 1, tzinfo=zone)
    offset, saved, name = _state(zone, begins.astimezone(UTC))
    return Onset(begins.replace(tzinfo=None), offset, offset, name, saved > _ZERO)


def _alike(onset: Onset) -> tuple[timedelta, timedelta, str, bool, int, int, str]:
    """What a yearly rule must keep the same, beside the week in the month."""
    local = onset.local
    kind = (onset.offset_from, onset.offset_to, onset.name, onset.daylight)
    return (*kind, local.month, local.weekday(), local.time().isoformat())


def _yearly_runs(onsets: Iterable[Onset], horizon: int) -> Iterator[tuple[Onset, ...]]:
    """Onsets that come once a year in the same week of the same month, each year up to the horizon."""
    for _, alike in groupby(sorted(onsets, key=lambda o: (_alike(o), o.local)), key=_alike):
        run: tuple[Onset, ...] = ()
        for onset in reversed(tuple(alike)):
            longer = (onset, *run)
            if onset.local.year != horizon - len(run) or not _common_weeks(longer):
                break
            run = longer
        if len(_common_weeks(run)) == 1:
            yield run


def _common_weeks(run: tuple[Onset, ...]) -> frozenset[int]:
    return frozenset.intersection(*(onset.weeks for onset in run)) if run else frozenset()


def _listed(onsets: Iterable[Onset]) -> Iterator[Observance]:
    def kind(onset: Onset) -> tuple[timedelta, timedelta, str, bool]:
        return onset.offset_from, onset.offset_to, onset.name, onset.daylight

    for _, alike in groupby(sorted(onsets, key=lambda o: (kind(o), o.local)), key=kind):
        group = tuple(alike)
        yield Observance(group[0], listed=tuple(onset.local for onset in group))


def _observance_component(part: Observance) -> TimezoneStandard | TimezoneDaylight:
    component = TimezoneDaylight() if part.first.daylight else TimezoneStandard()
    component.add("dtstart", part.first.local)
    component.add("tzoffsetfrom", part.first.offset_from)
    component.add("tzoffsetto", part.first.offset_to)
    component.add("tzname", text_value(part.first.name))
    if part.week is not None:
        local = part.first.local
        day = f"{part.week}{_WEEKDAYS[local.weekday()]}"
        component.add("rrule", vRecur({"FREQ": "YEARLY", "BYMONTH": local.month, "BYDAY": day}))
    # DTSTART is listed again, and each date by itself: by RFC 5545 neither matters, but some readers overlook a DTSTART
    # without a rule, or all dates of an RDATE but its first.
    for local in part.listed:
        component.add("rdate", [local])
    return component
