"""An event on another day shows the same times on the clock, also where the clocks change in between or on the day.

Changes in 2027, as the IANA time zone data have them: Denver forward on 14 March at 2:00 and back on 7 November
at 2:00.
"""

from dataclasses import replace
from datetime import date, datetime, timedelta
from pathlib import Path
from zoneinfo import ZoneInfo

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from cookout.core.eventfile import read_event, write_event
from cookout.core.eventfile.clock import Clock
from cookout.core.planning.event import (
    DemoSlot,
    DishId,
    Event,
    Helper,
    HelperId,
    Pin,
    Place,
    ReadyMade,
    Serving,
    ServingId,
    SlotId,
    WeatherFrom,
    Window,
)
from cookout.core.planning.moving import moved_to
from cookout.core.planning.wording import moment

EVENTS = Path(__file__).parents[3] / "fixtures" / "events"
DENVER = "America/Denver"
JUNE, SPRING, AUTUMN = date(2027, 6, 12), date(2027, 3, 14), date(2027, 11, 7)
FIXTURES = [read_event(file.read_text(encoding="utf-8"), file.name) for file in sorted(EVENTS.glob("*.toml"))]
NAMED = {"id": "x", "name": "X"}
SUPPER = next(event for event in FIXTURES if event.id == "supper")
SHOW = next(event for event in FIXTURES if event.id == "demonstration")


def night(day: date, *windows: str, at: str = "04:30", starts: str = "03:30") -> Event:
    """A night's cooking in Denver: one helper with those hours, a serving, a slot of 45 min, weather from 01:00."""
    clock = Clock(ZoneInfo(DENVER), day)
    starts_at = clock.minute(starts)
    ready = ReadyMade(DishId("d"), starts_at + 15)
    return replace(
        SUPPER,
        place=Place("Yard"),
        timezone=DENVER,
        origin=clock.origin,
        servings=(Serving(ServingId("s"), "Early", clock.minute(at), 4),),
        slots=(DemoSlot(SlotId("slot"), "Slot", starts_at, 45, HelperId("a"), ready_made=(ready,)),),
        crew=(Helper(HelperId("a"), "A", frozenset(), tuple(clock.window(text) for text in windows)),),
        hours=(WeatherFrom(clock.minute("01:00"), SUPPER.weather),),
    )


def shown(event: Event, minute: int) -> str:
    at = moment(event, minute)
    day = (at.date() - event.origin.date()).days
    return f"{f'{day:+d} ' if day else ''}{at:%H:%M}" + (" again" if at.fold else "")


def hours(event: Event) -> list[str]:
    return [f"{shown(event, w.start)}-{shown(event, w.end)}" for helper in event.crew for w in helper.windows]


def all_minutes(event: Event) -> list[int]:
    return [
        *(serving.at for serving in event.servings),
        *(slot.starts_at for slot in event.slots),
        *(ready.by for slot in event.slots for ready in slot.ready_made),
        *(minute for helper in event.crew for window in helper.windows for minute in (window.start, window.end)),
        *(hour.start for hour in event.hours),
    ]


@pytest.mark.parametrize("event", FIXTURES, ids=lambda event: event.id)
@pytest.mark.parametrize("day", [date(2027, 11, 20), SPRING, AUTUMN, date(2028, 2, 29)])
def test_every_time_of_day_is_the_same_and_the_copy_can_be_written(event: Event, day: date) -> None:
    copy = moved_to(event, day, id="copy", name="A copy")
    assert (copy.id, copy.name, copy.origin.date()) == ("copy", "A copy", day)
    assert [shown(copy, minute) for minute in all_minutes(copy)] == [shown(event, m) for m in all_minutes(event)]
    assert read_event(write_event(copy), "copy.toml") == copy
    assert moved_to(copy, event.origin.date(), id=event.id, name=event.name) == event


@pytest.mark.parametrize("event", FIXTURES, ids=lambda event: event.id)
def test_nothing_but_times_id_and_name_changes(event: Event) -> None:
    copy = moved_to(event, date(2027, 11, 20), id=event.id, name=event.name)
    kept = ("place", "weather", "dishes", "gear", "fuel", "recipes", "units", "food_rules", "switches", "fire_warning")
    assert all(getattr(copy, name) == getattr(event, name) for name in kept)


def test_an_hour_that_the_clocks_skip_shortens_what_lies_over_it_and_moves_nothing_by_the_clock() -> None:
    event = night(JUNE, "00:30-05:00")
    copy = moved_to(event, SPRING, **NAMED)
    # 00:30 to 05:00 lasts 4 h 30 min in June and 3 h 30 min where 02:00 to 03:00 is skipped.
    assert event.crew[0].windows == (Window(30, 300),)
    assert copy.crew[0].windows == (Window(30, 240),)
    assert (shown(copy, copy.servings[0].at), copy.servings[0].at) == ("04:30", 210)


def test_a_skipped_time_becomes_as_much_later_as_the_clocks_skip() -> None:
    event = night(JUNE, "00:30-02:15", starts="02:10", at="02:40")
    copy = moved_to(event, SPRING, **NAMED)
    assert hours(copy) == ["00:30-03:15"]
    assert (shown(copy, copy.servings[0].at), shown(copy, copy.slots[0].starts_at)) == ("03:40", "03:10")
    assert read_times(copy) == copy.crew


def test_a_day_with_an_hour_twice_keeps_the_first_and_lengthens_what_lies_over_it() -> None:
    event = night(JUNE, "00:30-01:30", "01:45-05:00")
    copy = moved_to(event, AUTUMN, **NAMED)
    assert hours(copy) == ["00:30-01:30", "01:45-05:00"]
    assert copy.crew[0].windows == (Window(30, 90), Window(105, 360))


def test_the_second_of_two_like_hours_is_the_second_again_on_such_a_day_and_plain_elsewhere() -> None:
    event = night(AUTUMN, "00:30-01:30 again", at="01:45 again")
    year_on = moved_to(event, date(2028, 11, 5), **NAMED)
    assert (hours(year_on), shown(year_on, year_on.servings[0].at)) == (["00:30-01:30 again"], "01:45 again")
    june = moved_to(event, JUNE, **NAMED)
    assert (hours(june), shown(june, june.servings[0].at)) == (["00:30-01:30"], "01:45")


def test_the_second_of_two_like_hours_is_never_earlier_where_the_clocks_skip_it() -> None:
    zone = ZoneInfo("Pacific/Auckland")  # back on 4 April 2027 at 3:00, forward on 26 September 2027 at 2:00
    clock = Clock(zone, date(2027, 4, 4))
    serving = replace(SUPPER.servings[0], at=clock.minute("02:30 again"))
    event = replace(SUPPER, timezone=zone.key, origin=clock.origin, servings=(serving,), crew=(), hours=(), slots=())
    copy = moved_to(event, date(2027, 9, 26), **NAMED)
    assert shown(copy, copy.servings[0].at) == "03:30"


def test_hours_that_the_clock_shows_as_nothing_keep_their_length_and_overlaps_become_one() -> None:
    only_the_second = night(AUTUMN, "01:30-01:30 again")
    assert moved_to(only_the_second, JUNE, **NAMED).crew[0].windows == (Window(90, 150),)
    both = night(AUTUMN, "01:00-01:45", "01:15 again-05:00")
    assert hours(moved_to(both, JUNE, **NAMED)) == ["01:00-05:00"]


def test_windows_and_weather_of_the_next_day_stay_on_the_next_day() -> None:
    event = night(SPRING - timedelta(days=1), "2027-03-13 22:00 - 2027-03-14 04:00", "2027-03-14 05:00-09:00")
    copy = moved_to(event, JUNE, **NAMED)
    assert hours(event) == hours(copy) == ["22:00-+1 04:00", "+1 05:00-+1 09:00"]
    assert event.crew[0].windows[0] == Window(22 * 60, 27 * 60)
    assert copy.crew[0].windows[0] == Window(22 * 60, 28 * 60)


def test_a_change_of_weather_that_the_clocks_put_behind_the_next_one_never_holds() -> None:
    """02:30 is skipped and becomes 03:30, behind the change at 03:10, which then goes on."""
    clock, windy = Clock(ZoneInfo(DENVER), JUNE), replace(SUPPER.weather, wind_mps=9.0, gust_mps=12.0)
    changes = (WeatherFrom(clock.minute("02:30"), windy), WeatherFrom(clock.minute("03:10"), SUPPER.weather))
    copy = moved_to(replace(night(JUNE, "00:30-05:00"), hours=changes), SPRING, **NAMED)
    assert [(shown(copy, hour.start), hour.weather.wind_mps) for hour in copy.hours] == [
        ("03:10", SUPPER.weather.wind_mps)
    ]


def test_what_stands_ready_does_so_before_a_slot_is_over_in_which_an_hour_comes_twice() -> None:
    # From 00:50 for 130 min, ready at 03:00 as it ends. In the autumn night 03:00 is 190 min after 00:50, and the slot
    # is over by the second 02:00.
    event = night(JUNE, "00:00-06:00", starts="00:50")
    ready = ReadyMade(DishId("d"), 180)
    copy = moved_to(replace(event, slots=(replace(event.slots[0], minutes=130, ready_made=(ready,)),)), AUTUMN, **NAMED)
    assert copy.slots[0].starts_at == 50
    assert copy.slots[0].ready_made[0].by == copy.slots[0].ends_at == 180


def test_pinned_times_move_and_what_is_pinned_without_a_time_stays() -> None:
    pins = (Pin("chili.b1.p1.simmer", 780), Pin("slaw.b1.shred", helpers=(HelperId("pell"),)))
    copy = moved_to(replace(SHOW, pins=pins), date(2027, 12, 4), **NAMED)
    assert copy.pins == pins
    over_the_change = moved_to(replace(night(JUNE, "00:30-05:00"), pins=(Pin("x", 240),)), SPRING, **NAMED)
    assert over_the_change.pins == (Pin("x", 180),)


def test_what_is_shown_moves_with_its_slot() -> None:
    copy = moved_to(SHOW, date(2027, 12, 4), **NAMED)
    assert copy.slots[0].live == SHOW.slots[0].live
    assert moment(copy, copy.slots[0].starts_at) == datetime(2027, 12, 4, 14, tzinfo=ZoneInfo("America/Chicago"))


def read_times(event: Event) -> tuple[Helper, ...]:
    """The crew as it reads back from a file that has nothing else in it that could be amiss."""
    alone = replace(event, servings=(), dishes=(), slots=(), recipes=())
    return read_event(write_event(alone), "moved.toml").crew


_ZONES = st.sampled_from([DENVER, "Europe/Berlin", "Pacific/Auckland", "Australia/Lord_Howe", "Africa/Cairo"])
_DAYS = st.dates(date(2026, 1, 1), date(2028, 12, 31))


@settings(max_examples=200, deadline=None)
@given(
    zone=_ZONES,
    day=_DAYS,
    other=_DAYS,
    spans=st.lists(st.tuples(st.integers(-2000, 4000), st.integers(1, 900)), min_size=1, max_size=3),
)
def test_on_any_two_days_the_copy_can_be_written_and_reads_back(
    zone: str, day: date, other: date, spans: list[tuple[int, int]]
) -> None:
    clock = Clock(ZoneInfo(zone), day)
    helpers = tuple(
        Helper(HelperId(f"h{number}"), "H", frozenset(), (Window(start, start + minutes),))
        for number, (start, minutes) in enumerate(spans)
    )
    starts = sorted({start for start, _ in spans})
    weather = tuple(
        WeatherFrom(start, replace(SUPPER.weather, air_c=float(number))) for number, start in enumerate(starts)
    )
    event = replace(
        SUPPER, timezone=zone, origin=clock.origin, crew=helpers, hours=weather, servings=(), dishes=(), slots=()
    )
    copy = moved_to(event, other, id="copy", name="Copy")
    assert read_event(write_event(copy), "copy.toml") == copy
