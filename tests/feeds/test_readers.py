"""The calendars read back by independent readers, across every clock change of five zones.

Readers: `ical`, `vobject` (validating), `icalendar`, `recurring-ical-events`, and ical.js 2.2 under node.
"""

from collections.abc import Callable
from dataclasses import replace
from datetime import UTC, datetime
from pathlib import Path
from zoneinfo import ZoneInfo

import icalendar
import pytest
import vobject
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from ical.calendar_stream import IcsCalendarStream

from cookout.core.planning.record import PlanRecord
from cookout.feeds.calendars import Form, event_calendar, helper_calendar
from cookout.feeds.stamps import Revision, stamp_history
from cookout.feeds.text import one_line
from tests.feeds.bytecheck import faults, read, unescape
from tests.feeds.readers import PYTHON_READERS, Moments, by_ical_js, renamed, run_ical_js
from tests.feeds.records import ADDRESS, FIVE_ZONES, SAVED_AT, record_around_changes, record_with, task_at, utc
from tests.samples import TRICKY_NAME, sample_record

Reader = Callable[[bytes], Moments]


def written(record: PlanRecord) -> bytes:
    return event_calendar(record, revision=4, stamped_at=SAVED_AT, address=ADDRESS)


def moments_of(record: PlanRecord) -> list[tuple[datetime, datetime]]:
    return sorted((task.starts_at.astimezone(UTC), task.ends_at.astimezone(UTC)) for task in record.tasks)


@pytest.mark.parametrize("read_moments", PYTHON_READERS, ids=lambda reader: reader.__name__)
@pytest.mark.parametrize("zone", FIVE_ZONES)
def test_every_moment_around_a_clock_change_is_read_back(zone: str, read_moments: Reader) -> None:
    record = record_around_changes(zone, 2027)
    assert faults(written(record)) == []
    assert sorted(read_moments(written(record)).values()) == moments_of(record)


@pytest.mark.parametrize("read_moments", PYTHON_READERS, ids=lambda reader: reader.__name__)
@pytest.mark.parametrize("zone", FIVE_ZONES)
def test_they_are_read_back_from_the_written_zone_alone(zone: str, read_moments: Reader) -> None:
    record = record_around_changes(zone, 2027)
    assert sorted(read_moments(renamed(written(record), zone)).values()) == moments_of(record)


@pytest.mark.node
@pytest.mark.parametrize("zone", FIVE_ZONES)
def test_ical_js_reads_every_moment_around_a_clock_change(zone: str, node: str, node_modules: Path) -> None:
    record = record_around_changes(zone, 2027)
    for data in (written(record), renamed(written(record), zone)):
        assert sorted(by_ical_js(data, node, node_modules).values()) == moments_of(record)


@pytest.mark.node
def test_ical_js_reads_words_numbers_and_alarms(node: str, node_modules: Path) -> None:
    feed = helper_calendar(sample_record(), "ilse", revision=4, stamped_at=SAVED_AT, address=ADDRESS)
    answer = run_ical_js(feed, node, node_modules, "events")
    rub = answer["events"][0]
    assert rub["summary"] == f"Apple crumble à la Brandão: {TRICKY_NAME}"
    assert rub["description"].startswith("Cold butter, quick fingers;\nstop at pea size.\nGear: mixing bowl\n")
    assert (rub["sequence"], rub["status"], rub["transp"]) == (4, "CONFIRMED", "OPAQUE")
    assert (rub["categories"], rub["leads"]) == (["Mixing", "Live"], [-15 * 60])
    assert rub["location"] == "Boathouse meadow, Lake Ellery"
    # ical.js does not know NAME as text and hands it over with its escapes.
    assert unescape(answer["name"]) == "Supper by the old boathouse: Ilse Brandão; „Illy“, the younger"
    assert (answer["refresh"], answer["refreshType"]) == (15 * 60, "duration")
    assert (answer["source"], answer["sourceType"]) == (ADDRESS, "uri")


def test_ical_reads_words_numbers_and_alarms() -> None:
    feed = helper_calendar(sample_record(), "ilse", revision=4, stamped_at=SAVED_AT, address=ADDRESS)
    rub = IcsCalendarStream.calendar_from_ics(feed.decode()).events[0]
    assert rub.summary == f"Apple crumble à la Brandão: {TRICKY_NAME}"
    assert (rub.sequence, rub.status, rub.transparency, rub.categories) == (
        4,
        "CONFIRMED",
        "OPAQUE",
        ["Mixing", "Live"],
    )
    (alarm,) = rub.alarm
    assert (alarm.action, str(alarm.trigger)) == ("DISPLAY", "-1 day, 23:45:00")


@pytest.mark.parametrize("form", Form)
def test_every_feed_of_the_sample_passes_vobjects_validation_and_ical(form: Form) -> None:
    record = sample_record()
    shorter = replace(record, tasks=record.tasks[3:])
    changes = stamp_history([Revision(1, SAVED_AT, record), Revision(4, SAVED_AT, shorter)])
    feeds = [event_calendar(shorter, revision=4, stamped_at=SAVED_AT, address=ADDRESS, changes=changes, form=form)] + [
        helper_calendar(shorter, h.id, revision=4, stamped_at=SAVED_AT, address=ADDRESS, changes=changes, form=form)
        for h in record.helpers
    ]
    for feed in feeds:
        assert faults(feed) == []
        assert vobject.readOne(feed.decode()).validate(raiseException=True)
        calendar = IcsCalendarStream.calendar_from_ics(feed.decode())
        parts = [part for part in read(feed).parts if part.name != "VTIMEZONE"]
        assert len(calendar.events) + len(calendar.todos) == len(parts)


def test_a_local_time_that_comes_twice_is_written_in_utc() -> None:
    # RFC 5545 section 3.3.5: 01:30 on 4 November 2007 in New York means the first, at UTC-4; ical.js takes the second.
    zone = "America/New_York"
    record = record_with(
        task_at(utc("2007-11-04 05:30"), id="first", minutes=10),
        task_at(utc("2007-11-04 06:30"), id="second", minutes=10),
        task_at(utc("2007-11-04 04:30"), id="until", minutes=45),
        task_at(utc("2007-11-04 07:00"), id="after", minutes=45),
        timezone=zone,
    )
    events = [part for part in read(written(record)).parts if part.name == "VEVENT"]
    assert [(event.value("DTSTART"), event.value("DTEND")) for event in events] == [
        ("20071104T043000Z", "20071104T051500Z"),
        ("20071104T053000Z", "20071104T054000Z"),
        ("20071104T063000Z", "20071104T064000Z"),
        ("20071104T020000", "20071104T024500"),
    ]
    assert [event.all("DTSTART")[0].params for event in events] == [{}, {}, {}, {"TZID": zone}]


def test_a_time_that_the_clocks_skip_is_written_as_the_hour_after() -> None:
    # RFC 5545 section 3.3.5: 02:30 on 11 March 2007 in New York means 03:30 EDT.
    zone = "America/New_York"
    skipped = datetime(2007, 3, 11, 2, 30, tzinfo=ZoneInfo(zone))
    event = read(written(record_with(task_at(skipped), timezone=zone))).parts[1]
    assert event.value("DTSTART") == "20070311T033000"


def test_a_task_through_the_night_of_the_change_keeps_its_length() -> None:
    record = record_with(task_at(utc("2027-11-07 03:00"), minutes=8 * 60), timezone="America/New_York")
    for read_moments in PYTHON_READERS:
        ((start, end),) = read_moments(written(record)).values()
        assert (end - start).total_seconds() == 8 * 3600


def test_a_party_over_new_year_has_a_zone_true_for_both_years() -> None:
    record = record_with(task_at(utc("2027-12-31 12:00"), minutes=24 * 60), timezone="Australia/Lord_Howe")
    for read_moments in PYTHON_READERS:
        moments = read_moments(renamed(written(record), "Australia/Lord_Howe"))
        assert list(moments.values()) == moments_of(record)


# What ends a line, escapes, quotes, joins, turns text round or is no character at all, and all else besides.
SHARP = list("\\;,:\"\r\n\t\x00\x0b\x1b\x7f\x85\u2028\u2029\u202e\ufeff\ud800\u200d^'nN= é🧑🌾")
WHOLE = ["x\r\nEND:VEVENT\r\nBEGIN:VALARM", "a\\Nb", "\\n", "a\\", "é" * 60, "BEGIN:VEVENT", "👩‍🌾" * 30]
hostile = st.text(st.sampled_from(SHARP) | st.characters(), max_size=120) | st.sampled_from(WHOLE)


def hostile_record(words: str) -> PlanRecord:
    record = sample_record()
    task = replace(
        record.tasks[0], id=words, name=words, detail=words, caution=words, units=(words,), live_in=words, kind=words
    )
    return replace(
        record,
        event_id=words,
        event_name=words,
        place=words,
        weather=words,
        tasks=(replace(task, dish="d"), replace(record.tasks[1], id="other")),
        dishes={"d": words},
        helpers=tuple(replace(helper, name=words) for helper in record.helpers),
        links=(),
    )


@given(hostile)
@settings(deadline=None, max_examples=60, suppress_health_check=[HealthCheck.too_slow])
def test_no_name_can_break_out_of_its_property(words: str) -> None:
    for feed in (
        written(hostile_record(words)),
        helper_calendar(hostile_record(words), "runa", revision=1, stamped_at=SAVED_AT),
    ):
        assert faults(feed) == []
        shape = [(part.name, [inner.name for inner in part.parts]) for part in read(feed).parts]
        assert [name for name, _ in shape] == ["VTIMEZONE", "VEVENT", "VEVENT"]
        assert vobject.readOne(feed.decode()).validate(raiseException=True)
        assert len(IcsCalendarStream.calendar_from_ics(feed.decode()).events) == 2
        assert len(icalendar.Calendar.from_ical(feed).events) == 2


@given(hostile.filter(lambda words: one_line(words) != ""))
@settings(deadline=None, max_examples=150)
def test_ical_reads_a_hostile_name_as_it_was_cleaned(words: str) -> None:
    record = replace(sample_record(), tasks=(replace(sample_record().tasks[0], name=words),))
    (event,) = IcsCalendarStream.calendar_from_ics(written(record).decode()).events
    assert event.summary == one_line(words)


@pytest.mark.node
@pytest.mark.parametrize(
    "words",
    [
        "x\r\nEND:VEVENT\r\nBEGIN:VALARM",
        "a\\Nb \\n c\\",
        "é" * 60 + "👩‍🌾" * 30,
        "\";:,^n'",
        "\x00\x1b[31m\u202ered\u2028x",
    ],
)
def test_ical_js_reads_a_hostile_name_as_it_was_cleaned(words: str, node: str, node_modules: Path) -> None:
    answer = run_ical_js(written(hostile_record(words)), node, node_modules, "events")
    assert answer["events"][1 if answer["events"][0]["summary"].endswith("Light 25 coals") else 0][
        "summary"
    ] == one_line(f"{words}: {words}")
    assert len(answer["events"]) == 2
