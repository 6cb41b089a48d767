"""Local times become true minutes, also on the days on which the clocks change.

Changes in 2027, as the IANA time zone data have them: New York forward on 14 March at 2:00 and back on 7 November at
2:00; Cairo forward on 30 April at 0:00, so that the day begins at 1:00.
"""

from datetime import UTC, date, timedelta
from zoneinfo import ZoneInfo

import pytest
from hypothesis import given
from hypothesis import strategies as st

from cookout.core.eventfile import read_event
from cookout.core.eventfile.clock import Clock, UnreadableTimeError
from cookout.core.planning.event import Window
from tests.core.eventfile.files import SOUND, only_fault, with_change

NEW_YORK = ZoneInfo("America/New_York")
SPRING = Clock(NEW_YORK, date(2027, 3, 14))
AUTUMN = Clock(NEW_YORK, date(2027, 11, 7))
ZONES = ("America/New_York", "Europe/Berlin", "Pacific/Auckland", "Australia/Lord_Howe", "Asia/Kolkata", "Africa/Cairo")


def test_a_spring_day_lacks_an_hour() -> None:
    assert SPRING.minute("01:59") == 119
    assert SPRING.minute("03:00") == 120
    assert SPRING.minute("18:00") == 17 * 60
    assert SPRING.window("00:00-24:00") == Window(0, 23 * 60)


def test_an_autumn_day_has_an_hour_twice_and_means_the_first() -> None:
    assert AUTUMN.minute("01:30") == 90
    assert AUTUMN.minute("01:30 again") == 150
    assert AUTUMN.minute("18:00") == 19 * 60
    assert AUTUMN.window("01:30 again-02:30") == Window(150, 210)


def test_a_time_that_the_clocks_skip_is_refused() -> None:
    with pytest.raises(UnreadableTimeError, match="The clocks skip 02:30 on 2027-03-14"):
        SPRING.minute("02:30")


def test_a_skipped_time_in_a_file_is_a_fault_with_its_place() -> None:
    text = with_change('"2027-06-12"', '"2027-03-14"', with_change('"2027-06-11 18:00-20:00"', '"02:15-04:00"'))
    fault = only_fault(text)
    assert fault.where == "picnic.toml: crew[2].windows[1]"
    assert fault.what == "The clocks skip 02:15 on 2027-03-14."
    assert "before or after the change" in fault.remedy


def test_a_day_whose_midnight_is_skipped_begins_at_its_first_hour() -> None:
    clock = Clock(ZoneInfo("Africa/Cairo"), date(2027, 4, 30))
    assert clock.origin.isoformat() == "2027-04-30T01:00:00+03:00"
    assert clock.minute("02:00") == 60


def test_tomls_own_times_and_dates_do_as_well() -> None:
    text = with_change('"2027-06-12"', "2027-06-12", with_change('at = "18:00"', "at = 18:00:00"))
    text = with_change('starts = "16:00"', "starts = 2027-06-12T16:00:00", text)
    assert read_event(text, "picnic.toml") == read_event(SOUND, "picnic.toml")


def test_windows_may_cross_midnight_with_both_dates() -> None:
    clock = Clock(NEW_YORK, date(2027, 5, 2))
    assert clock.window("2027-05-01 22:00 - 2027-05-02 02:00") == Window(-120, 120)
    assert clock.window("2027-05-01 22:00-24:00") == Window(-120, 0)
    assert clock.window("22:00 \u2013 23:00") == Window(22 * 60, 23 * 60)


@given(st.sampled_from(ZONES), st.dates(date(2026, 1, 1), date(2028, 12, 31)), st.integers(-6000, 6000))
def test_every_minute_can_be_written_and_reads_back(zone: str, day: date, minute: int) -> None:
    clock = Clock(ZoneInfo(zone), day)
    assert clock.minute(clock.moment_text(minute)) == minute


@given(
    st.sampled_from(ZONES),
    st.dates(date(2026, 1, 1), date(2028, 12, 31)),
    st.integers(-3000, 3000),
    st.integers(1, 3000),
)
def test_every_window_can_be_written_and_reads_back(zone: str, day: date, start: int, minutes: int) -> None:
    clock = Clock(ZoneInfo(zone), day)
    window = Window(start, start + minutes)
    assert clock.window(clock.window_text(window)) == window


@given(st.sampled_from(ZONES), st.dates(date(2026, 1, 1), date(2028, 12, 31)), st.integers(0, 6000))
def test_minutes_are_true_elapsed_minutes(zone: str, day: date, minute: int) -> None:
    clock = Clock(ZoneInfo(zone), day)
    instant = clock.origin.astimezone(UTC) + timedelta(minutes=minute)
    assert clock.moment_text(minute).removesuffix(" again").endswith(f"{instant.astimezone(ZoneInfo(zone)):%H:%M}")
