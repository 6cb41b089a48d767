"""The byte-level check itself: it passes a good calendar and notices each kind of fault."""

import pytest

from cookout.feeds.calendars import Form, helper_calendar
from tests.feeds.bytecheck import faults
from tests.feeds.records import ADDRESS, SAVED_AT
from tests.samples import sample_record

GOOD = helper_calendar(sample_record(), "ilse", revision=3, stamped_at=SAVED_AT, address=ADDRESS)
TODOS = helper_calendar(sample_record(), "ilse", revision=3, stamped_at=SAVED_AT, form=Form.TODOS)

# Each row: what is broken in the good calendar, the bytes it is replaced by, and what the check must say.
BREAKS = [
    (b"VERSION:2.0\r\n", b"VERSION:2.0\n", "bare CR or LF"),
    (b"TRANSP:OPAQUE\r\n", b"TRANSP:OPAQUE\r\r\n", "bare CR or LF"),
    (b"COLOR:teal", b"COLOR:" + b"t" * 80, "has 86 octets"),
    (b"NAME:", b"NAME:\x07", "control character"),
    ("ã".encode(), b"\xc3\r\n \xa3", "cut within a character"),
    (b"meadow\\,", b"meadow,", "bare comma or semicolon"),
    (b"fingers\\;", b"fingers;", "bare comma or semicolon"),
    (b"fingers\\;", b"fingers\\q", "an escape that does not exist"),
    (b"REFRESH-INTERVAL;VALUE=DURATION:", b"REFRESH-INTERVAL:", "lacks VALUE=DURATION"),
    (b"SOURCE;VALUE=URI:", b"SOURCE:", "lacks VALUE=URI"),
    (b"PT15M", b"15M", "has the value '15M'"),
    (b"VERSION:2.0\r\n", b"", "VERSION is missing"),
    (b"DTSTAMP:20270601T123000Z\r\n", b"", "DTSTAMP is missing"),
    (b"ACTION:DISPLAY\r\n", b"", "ACTION is missing"),
    (b"TZOFFSETTO:-0500\r\n", b"", "TZOFFSETTO is missing"),
    (b"TZOFFSETTO:-0500", b"TZOFFSETTO:-0000", "has the value '-0000'"),
    (b"SEQUENCE:3\r\n", b"SEQUENCE:3\r\nSEQUENCE:4\r\n", "SEQUENCE comes 2 times"),
    (b"SEQUENCE:3", b"SEQUENCE:three", "has the value 'three'"),
    (b"STATUS:CONFIRMED", b"STATUS:DONE", "STATUS:DONE is not allowed"),
    (b"DTSTAMP:20270601T123000Z", b"DTSTAMP:20270601T123000", "DTSTAMP has the value"),
    (b"DTSTART;TZID=America/Chicago:20270619T165000", b"DTSTART:20270619T165000", "floats"),
    (b":20270619T165000", b":20270619T165000Z", "DTSTART has the value"),
    (b":20270619T170500\r\n", b":20270619T165000\r\n", "not later than DTSTART"),
    (b"TZID:America/Chicago", b"TZID:America/Denver", "TZID America/Chicago has no VTIMEZONE"),
    (b"END:VALARM\r\n", b"", "closes nothing"),
    (b"END:VCALENDAR\r\n", b"", "never closed"),
    (b"STATUS:CONFIRMED", b"STATUS CONFIRMED", "no content line"),
    (b"BEGIN:VCALENDAR", b"BEGIN:VCARD", "not one VCALENDAR"),
    (b"END:VCALENDAR\r\n", b"END:VCALENDAR", "does not end with CRLF"),
]


def test_good_calendars_have_no_fault() -> None:
    assert faults(GOOD) == faults(TODOS) == []


@pytest.mark.parametrize(("good", "bad", "said"), BREAKS, ids=[f"{n} {row[2]}" for n, row in enumerate(BREAKS)])
def test_every_kind_of_fault_is_noticed(good: bytes, bad: bytes, said: str) -> None:
    assert good in GOOD
    found = faults(GOOD.replace(good, bad, 1))
    assert any(said in fault for fault in found), found


def test_a_uid_that_comes_twice_is_noticed() -> None:
    start, end = GOOD.index(b"BEGIN:VEVENT"), GOOD.index(b"END:VEVENT\r\n") + len(b"END:VEVENT\r\n")
    assert any(
        "UID" in fault and "comes 2 times" in fault for fault in faults(GOOD[:end] + GOOD[start:end] + GOOD[end:])
    )


def test_a_calendar_with_nothing_in_it_is_noticed() -> None:
    assert faults(b"BEGIN:VCALENDAR\r\nPRODID:x\r\nVERSION:2.0\r\nEND:VCALENDAR\r\n") == ["VCALENDAR has no component"]


def test_a_due_time_before_the_start_is_noticed() -> None:
    assert any(
        "DUE is not later" in fault
        for fault in faults(TODOS.replace(b":20270619T170500\r\n", b":20270619T100000\r\n", 1))
    )
