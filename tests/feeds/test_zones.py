"""VTIMEZONE against `zoneinfo` for every hour of a year, by dateutil (in vobject), ical.js, and a reader here."""

import calendar
import re
from collections.abc import Iterator
from datetime import UTC, datetime, timedelta
from pathlib import Path
from zoneinfo import ZoneInfo

import pytest
import vobject

from cookout.feeds.calendars import event_calendar
from tests.feeds.bytecheck import Part, faults, read
from tests.feeds.readers import renamed, run_ical_js
from tests.feeds.records import FIVE_ZONES, SAVED_AT, record_with, task_at

HOUR = timedelta(hours=1)
# Zones without a yearly rule: Ramadan moves Morocco's; Turkey and Jordan dropped theirs then; Samoa skipped a day.
ODD_YEARS = [("Africa/Casablanca", 2027), ("Europe/Istanbul", 2016), ("Asia/Amman", 2022), ("Pacific/Apia", 2011)]
YEARS = [(zone, 2027) for zone in FIVE_ZONES] + [("America/New_York", 2007), *ODD_YEARS]


def hours_of(year: int) -> list[datetime]:
    start = datetime(year, 1, 1, tzinfo=UTC)
    return [start + n * HOUR for n in range((datetime(year + 1, 1, 1, tzinfo=UTC) - start) // HOUR)]


def calendar_of(zone: str, year: int) -> bytes:
    start = datetime(year, 6, 15, 12, tzinfo=ZoneInfo(zone))
    data = event_calendar(record_with(task_at(start), timezone=zone), revision=1, stamped_at=SAVED_AT)
    assert faults(data) == []
    return data


def zone_part(zone: str, year: int) -> Part:
    return next(part for part in read(calendar_of(zone, year)).parts if part.name == "VTIMEZONE")


def onsets(part: Part, until_year: int) -> Iterator[tuple[datetime, timedelta, str]]:
    """Moment in UTC, offset from then on, and name, for one STANDARD or DAYLIGHT read by RFC 5545 section 3.6.5."""
    first = clock_time(part.value("DTSTART"))
    locals_ = [first, *(clock_time(text) for found in part.all("RDATE") for text in found.value.split(","))]
    for rule in part.all("RRULE"):
        fields = dict(pair.split("=") for pair in rule.value.split(";"))
        assert fields.keys() == {"FREQ", "BYDAY", "BYMONTH"}
        locals_ += [day for year in range(first.year + 1, until_year + 1) for day in [nth_day(fields, year, first)]]
    for local in locals_:
        yield (
            (local - offset(part.value("TZOFFSETFROM"))).replace(tzinfo=UTC),
            offset(part.value("TZOFFSETTO")),
            part.value("TZNAME"),
        )


def clock_time(text: str) -> datetime:
    return datetime.strptime(text, "%Y%m%dT%H%M%S")  # noqa: DTZ007


def nth_day(fields: dict[str, str], year: int, first: datetime) -> datetime:
    match = re.fullmatch(r"(-?\d)([A-Z]{2})", fields["BYDAY"])
    assert match is not None
    month, weekday = int(fields["BYMONTH"]), ["MO", "TU", "WE", "TH", "FR", "SA", "SU"].index(match[2])
    days = [week[weekday] for week in calendar.monthcalendar(year, month) if week[weekday]]
    week = int(match[1])
    return datetime.combine(datetime(year, month, days[week - 1 if week > 0 else week]), first.time())  # noqa: DTZ001


def offset(text: str) -> timedelta:
    sign = -1 if text[0] == "-" else 1
    return sign * timedelta(hours=int(text[1:3]), minutes=int(text[3:5]), seconds=int(text[5:] or 0))


@pytest.mark.parametrize(("zone", "year"), YEARS)
def test_offset_and_name_are_right_for_every_hour_of_the_year(zone: str, year: int) -> None:
    changes = sorted(change for part in zone_part(zone, year).parts for change in onsets(part, year))
    info, at = ZoneInfo(zone), 0
    for hour in hours_of(year):
        while at + 1 < len(changes) and changes[at + 1][0] <= hour:
            at += 1
        local = hour.astimezone(info)
        assert changes[at][0] <= hour, "nothing is in force yet"
        assert (hour, changes[at][1], changes[at][2]) == (hour, local.utcoffset(), local.tzname())


# dateutil takes a last change to a new standard time for a repeated hour, and cannot skip a day.
@pytest.mark.parametrize(("zone", "year"), [pair for pair in YEARS if pair not in ODD_YEARS[1:]])
def test_dateutil_agrees_for_every_hour_of_the_year(zone: str, year: int) -> None:
    written = vobject.readOne(renamed(calendar_of(zone, year), zone).decode()).vtimezone.tzinfo
    info = ZoneInfo(zone)
    wrong = [
        h
        for h in hours_of(year)
        if h.astimezone(written).replace(tzinfo=None) != h.astimezone(info).replace(tzinfo=None)
    ]
    assert wrong == []


@pytest.mark.node
@pytest.mark.parametrize(("zone", "year"), YEARS)
def test_ical_js_agrees_for_every_half_hour_on_the_clock(zone: str, year: int, node: str, node_modules: Path) -> None:
    answer = run_ical_js(renamed(calendar_of(zone, year), zone), node, node_modules, "hours", str(year))
    clock = [datetime(year, 1, 1, tzinfo=ZoneInfo(zone)) + n * HOUR / 2 for n in range(len(answer))]
    # It goes its own way for times that the clocks skip or repeat; neither is ever written.
    plain = [(local, moment) for local, moment in zip(clock, answer, strict=True) if comes_once(local)]
    assert len(plain) > len(clock) - 60
    assert [local for local, moment in plain if local.timestamp() != moment] == []


def comes_once(local: datetime) -> bool:
    return local.replace(fold=0).utcoffset() == local.replace(fold=1).utcoffset()


def test_new_york_from_2007_has_the_rules_of_rfc_5545_section_3_6_5() -> None:
    parts = {part.name: part for part in zone_part("America/New_York", 2027).parts}
    written = {
        name: [part.value(wanted) for wanted in ("DTSTART", "RRULE", "TZOFFSETFROM", "TZOFFSETTO", "TZNAME")]
        for name, part in parts.items()
    }
    assert written == {
        "DAYLIGHT": ["20070311T020000", "FREQ=YEARLY;BYDAY=2SU;BYMONTH=3", "-0500", "-0400", "EDT"],
        "STANDARD": ["20071104T020000", "FREQ=YEARLY;BYDAY=1SU;BYMONTH=11", "-0400", "-0500", "EST"],
    }


def test_the_year_in_which_the_rules_changed_has_both_the_old_and_the_new() -> None:
    # The United States moved their clock changes in 2007 (Energy Policy Act of 2005, section 110).
    starts = [part.value("DTSTART") for part in zone_part("America/New_York", 2007).parts]
    assert starts == ["20060402T020000", "20061029T020000", "20070311T020000", "20071104T020000"]


def test_irelands_summer_is_daylight_and_its_winter_standard() -> None:
    # Irish law calls the summer's standard and the winter's an hour behind it; `zoneinfo` follows the law.
    parts = {part.name: part for part in zone_part("Europe/Dublin", 2027).parts}
    assert (parts["DAYLIGHT"].value("TZNAME"), parts["DAYLIGHT"].value("TZOFFSETTO")) == ("IST", "+0100")
    assert (parts["STANDARD"].value("TZNAME"), parts["STANDARD"].value("TZOFFSETTO")) == ("GMT", "+0000")


def test_lord_howe_changes_by_half_an_hour() -> None:
    offsets = {
        part.name: (part.value("TZOFFSETFROM"), part.value("TZOFFSETTO"))
        for part in zone_part("Australia/Lord_Howe", 2027).parts
    }
    assert offsets == {"DAYLIGHT": ("+1030", "+1100"), "STANDARD": ("+1100", "+1030")}


def test_india_has_one_standard_time_and_no_rule() -> None:
    (only,) = zone_part("Asia/Kolkata", 2027).parts
    assert (only.name, only.value("TZOFFSETFROM"), only.value("TZOFFSETTO")) == ("STANDARD", "+0530", "+0530")
    assert [found.value for found in only.all("RDATE")] == [only.value("DTSTART")]
    assert only.all("RRULE") == []


def test_clock_changes_that_follow_no_rule_are_listed_one_by_one() -> None:
    parts = zone_part("Africa/Casablanca", 2027).parts
    assert all(part.all("RRULE") == [] and part.all("RDATE") for part in parts)


def test_a_plan_without_tasks_has_the_zone_of_the_year_in_which_it_was_saved() -> None:
    data = event_calendar(record_with(timezone="America/Denver"), revision=1, stamped_at=SAVED_AT)
    (zone,) = read(data).parts
    assert [part.value("DTSTART")[:4] for part in zone.parts] == ["2007", "2007"]
