"""What stands in the calendars, read with the byte-level reader alone."""

from dataclasses import replace
from datetime import datetime, timedelta
from zoneinfo import ZoneInfo

import pytest

from cookout.core.planning.record import PlanRecord
from cookout.feeds.calendars import Form, event_calendar, helper_calendar
from cookout.feeds.errors import FeedError
from cookout.feeds.stamps import Revision, Stamps, TaskStamp, stamp_history
from tests.feeds.bytecheck import Part, faults, read, unescape
from tests.feeds.records import ADDRESS, SAVED_AT, record_with, task_at, utc
from tests.samples import TRICKY_NAME, sample_record, sample_record_without_plan

HOUR = timedelta(hours=1)


def event_feed(record: PlanRecord, **options: object) -> Part:
    data = event_calendar(record, revision=3, stamped_at=SAVED_AT, address=ADDRESS, **options)  # type: ignore[arg-type]
    assert faults(data) == []
    return read(data)


def helper_feed(record: PlanRecord, helper: str, **options: object) -> Part:
    data = helper_calendar(record, helper, revision=3, stamped_at=SAVED_AT, address=ADDRESS, **options)  # type: ignore[arg-type]
    assert faults(data) == []
    return read(data)


def tasks_of(calendar: Part) -> list[Part]:
    return [part for part in calendar.parts if part.name in {"VEVENT", "VTODO"}]


def named(calendar: Part, words: str) -> Part:
    (found,) = (part for part in tasks_of(calendar) if words in unescape(part.value("SUMMARY")))
    return found


def test_every_task_of_the_plan_is_in_the_events_feed_by_start_and_then_by_id() -> None:
    starts = [part.value("DTSTART") for part in tasks_of(event_feed(sample_record()))]
    assert len(starts) == len(sample_record().tasks)
    assert starts == sorted(starts)


def test_a_helpers_feed_has_that_helpers_hands_on_tasks_and_no_others() -> None:
    summaries = [unescape(part.value("SUMMARY")) for part in tasks_of(helper_feed(sample_record(), "ilse"))]
    dish = "Apple crumble à la Brandão"
    assert summaries == [
        f"{dish}: {TRICKY_NAME}",
        f"{dish}: Layer apples and crumb",
        f"{dish}: Serve the crumble",
    ]


def test_waiting_leaves_the_day_free_and_hands_on_work_takes_it() -> None:
    calendar = event_feed(sample_record())
    assert named(calendar, "Simmer").value("TRANSP") == "TRANSPARENT"
    assert named(calendar, "Light 25 coals").value("TRANSP") == "OPAQUE"


def test_the_calendars_own_properties_bear_the_value_types_that_rfc_7986_asks_for() -> None:
    calendar = event_feed(sample_record())
    (refresh,), (source,) = calendar.all("REFRESH-INTERVAL"), calendar.all("SOURCE")
    assert (refresh.params, refresh.value) == ({"VALUE": "DURATION"}, "PT15M")
    assert (source.params, source.value) == ({"VALUE": "URI"}, ADDRESS)
    assert unescape(calendar.value("NAME")) == "Supper by the old boathouse"
    assert calendar.value("LAST-MODIFIED") == "20270601T123000Z"
    assert calendar.value("COLOR") == "chocolate"
    assert len(calendar.value("UID")) == 36


def test_a_file_written_once_names_no_source_and_asks_for_no_refresh() -> None:
    data = event_calendar(sample_record(), revision=1, stamped_at=SAVED_AT)
    assert faults(data) == []
    assert read(data).all("SOURCE") == read(data).all("REFRESH-INTERVAL") == []


def test_a_name_of_the_callers_own_is_used() -> None:
    assert event_feed(sample_record(), name="Boathouse, all hands").value("NAME") == "Boathouse\\, all hands"


def test_the_description_has_detail_caution_gear_and_the_other_helpers() -> None:
    lay = named(helper_feed(sample_record(), "runa"), "8 on the lid")
    assert unescape(lay.value("DESCRIPTION")).split("\n") == [
        "8 on the lid, 17 under; 22 to 28 in all.",
        "Caution: Leather gloves and a lid lifter; keep children outside the 3-foot ring.",
        "Gear: 12-inch oven A; cooking table, spot 1",
    ]
    set_up = named(helper_feed(sample_record(), "runa"), "Set up table")
    assert "With: Tomasz Okoro-Lind" in unescape(set_up.value("DESCRIPTION"))
    assert "Helpers: Runa Velde; Tomasz Okoro-Lind" in unescape(
        named(event_feed(sample_record()), "Set up table").value("DESCRIPTION")
    )


def test_counted_gear_and_the_demo_slot_are_named() -> None:
    task = replace(sample_record().tasks[0], gear={"bowl": 2, "rack": 1}, units=(), live_in="crumb-show", id="x")
    record = replace(sample_record(), tasks=(task,))
    lines = unescape(tasks_of(event_feed(record))[0].value("DESCRIPTION")).split("\n")
    assert "Gear: mixing bowl (2); cooling rack" in lines
    assert "Shown live in: How a crumble goes together" in lines


def test_no_feed_says_how_to_reach_anyone() -> None:
    for data in (
        event_calendar(sample_record(), revision=1, stamped_at=SAVED_AT),
        helper_calendar(sample_record(), "runa", revision=1, stamped_at=SAVED_AT),
    ):
        names = {found.name for part in read(data).walk() for found in part.properties}
        assert names.isdisjoint({"ATTENDEE", "ORGANIZER", "CONTACT", "METHOD"})
        assert b"mailto:" not in data.lower()


def test_each_task_of_a_helper_has_one_alarm_whose_lead_depends_on_the_kind() -> None:
    leads = {
        unescape(part.value("SUMMARY")).split(": ")[-1]: part.parts[0].value("TRIGGER")
        for part in tasks_of(helper_feed(sample_record(), "runa"))
    }
    assert leads["Set up table, water and shovel"] == "-PT30M"
    assert leads["Turn oven and lid"] == "-PT2M"
    assert leads["Look in"] == "-PT2M"
    assert leads["Drown and stir the coals"] == "-PT5M"
    assert len(leads) == 10
    assert all(part.parts == [] for part in tasks_of(event_feed(sample_record())))


def test_before_an_audience_the_alarm_sounds_earlier() -> None:
    assert named(helper_feed(sample_record(), "ilse"), "Layer apples").parts[0].value("TRIGGER") == "-PT15M"


def test_categories_tell_kind_hot_work_and_live() -> None:
    calendar = event_feed(sample_record())
    assert named(calendar, "Turn oven and lid").value("CATEGORIES") == "Turning,Hot work"
    assert named(calendar, "Layer apples").value("CATEGORIES") == "Preparing,Live"
    assert named(calendar, "Simmer").value("CATEGORIES") == "Baking"


def test_a_kind_nobody_listed_shows_under_its_own_name() -> None:
    record = record_with(replace(task_at(SAVED_AT), kind="wash,_dry"))
    assert tasks_of(event_feed(record))[0].value("CATEGORIES") == "Wash\\, dry"


def test_a_helpers_feed_tells_the_call_time() -> None:
    text = unescape(helper_feed(sample_record(), "ilse").value("DESCRIPTION"))
    assert text == "Boathouse meadow, Lake Ellery\nCall time 2027-06-19 16:50, free from 18:30"


def test_dependencies_stay_out_unless_a_planning_program_asks_for_them() -> None:
    plain = event_feed(sample_record()), helper_feed(sample_record(), "runa")
    assert all(part.all("RELATED-TO") == [] for calendar in plain for part in calendar.walk())
    asked = event_feed(sample_record(), dependencies=True)
    chop, load = named(asked, "Chop onions"), named(asked, "Put the pot together")
    lay = named(asked, "8 on the lid")
    assert {(found.params["RELTYPE"], found.value) for found in load.all("RELATED-TO")} == {
        ("DEPENDS-ON", chop.value("UID")),
        ("DEPENDS-ON", lay.value("UID")),
    }


def test_to_dos_are_written_on_request_and_have_a_due_time() -> None:
    todo = named(helper_feed(sample_record(), "runa", form=Form.TODOS), "Turn oven and lid")
    assert (todo.name, todo.value("STATUS"), todo.all("TRANSP")) == ("VTODO", "NEEDS-ACTION", [])
    assert todo.value("DUE") == "20270619T174300"
    assert todo.parts[0].name == "VALARM"


def test_the_same_revision_gives_the_same_bytes_whatever_order_the_record_is_in() -> None:
    record = sample_record()
    turned = replace(record, tasks=record.tasks[::-1], links=record.links[::-1])
    for form in Form:
        first = event_calendar(record, revision=3, stamped_at=SAVED_AT, form=form, dependencies=True)
        assert first == event_calendar(record, revision=3, stamped_at=SAVED_AT, form=form, dependencies=True)
        assert first == event_calendar(turned, revision=3, stamped_at=SAVED_AT, form=form, dependencies=True)


def test_a_record_whose_times_bear_a_fixed_offset_or_utc_gives_the_same_bytes() -> None:
    local = task_at(datetime(2027, 6, 19, 16, 0, tzinfo=ZoneInfo("America/Chicago")))
    fixed = replace(
        local, starts_at=datetime.fromisoformat("2027-06-19T16:00:00-05:00"), ends_at=utc("2027-06-19 21:30")
    )
    feeds = {event_calendar(record_with(task), revision=1, stamped_at=SAVED_AT) for task in (local, fixed)}
    assert len(feeds) == 1


def test_uids_are_those_of_event_and_task_alone() -> None:
    record = sample_record()
    later = (replace(t, starts_at=t.starts_at + HOUR, ends_at=t.ends_at + HOUR, name="!") for t in record.tasks)
    moved = replace(record, tasks=tuple(later))
    assert uids(event_feed(record)) == uids(event_feed(moved))
    assert uids(event_feed(record)).isdisjoint(uids(event_feed(replace(record, event_id="other"))))
    assert uids(helper_feed(record, "runa")) < uids(event_feed(record))
    assert helper_feed(record, "runa").value("UID") != helper_feed(record, "ilse").value("UID")


def uids(calendar: Part) -> set[str]:
    return {part.value("UID") for part in tasks_of(calendar)}


def test_ids_that_run_together_still_give_different_uids() -> None:
    one = replace(record_with(task_at(SAVED_AT, id="c")), event_id='a","task","b')
    other = replace(record_with(task_at(SAVED_AT, id='b","task","c')), event_id="a")
    assert uids(event_feed(one)).isdisjoint(uids(event_feed(other)))


def test_stamps_become_sequence_dtstamp_and_last_modified() -> None:
    stamps = Stamps({"beans.bake": TaskStamp(2, utc("2027-05-20 08:00"))})
    calendar = event_feed(sample_record(), changes=stamps)
    simmer, turn = named(calendar, "Simmer"), named(calendar, "Turn oven")
    assert (simmer.value("SEQUENCE"), simmer.value("DTSTAMP")) == ("2", "20270520T080000Z")
    assert simmer.value("LAST-MODIFIED") == simmer.value("DTSTAMP")
    assert (turn.value("SEQUENCE"), turn.value("DTSTAMP")) == ("3", "20270601T123000Z")


def test_a_task_taken_away_shows_as_cancelled_with_a_higher_sequence_and_no_alarm() -> None:
    record = sample_record()
    without = replace(record, tasks=tuple(task for task in record.tasks if task.id != "crumble.turn"))
    changes = stamp_history([Revision(1, SAVED_AT, record), Revision(3, SAVED_AT + timedelta(hours=1), without)])
    for calendar in (event_feed(without, changes=changes), helper_feed(without, "runa", changes=changes)):
        gone = named(calendar, "Turn oven and lid")
        assert unescape(gone.value("SUMMARY")).startswith("Cancelled: ")
        assert (gone.value("STATUS"), gone.value("TRANSP"), gone.value("SEQUENCE")) == ("CANCELLED", "TRANSPARENT", "3")
        assert gone.value("UID") in uids(event_feed(record))
        assert gone.parts == []
        assert gone.value("DTSTART") == "20270619T174000"
    assert all(
        "Turn oven" not in part.value("SUMMARY") for part in tasks_of(helper_feed(without, "ilse", changes=changes))
    )


def test_a_task_given_to_another_helper_is_cancelled_for_the_first_and_stands_for_the_event() -> None:
    record = sample_record()
    given = tuple(replace(t, helpers=("tomasz",)) if t.id == "crumble.turn" else t for t in record.tasks)
    after = replace(record, tasks=given)
    changes = stamp_history([Revision(1, SAVED_AT, record), Revision(3, SAVED_AT, after)])
    assert named(helper_feed(after, "runa", changes=changes), "Turn oven").value("STATUS") == "CANCELLED"
    assert named(helper_feed(after, "tomasz", changes=changes), "Turn oven").value("STATUS") == "CONFIRMED"
    assert named(event_feed(after, changes=changes), "Turn oven").value("STATUS") == "CONFIRMED"


def test_a_cancelled_to_do_is_good_too() -> None:
    record, bare = sample_record(), sample_record_without_plan()
    changes = stamp_history([Revision(1, SAVED_AT, record), Revision(3, SAVED_AT, bare)])
    calendar = event_feed(bare, changes=changes, form=Form.TODOS)
    assert {part.value("STATUS") for part in tasks_of(calendar)} == {"CANCELLED"}
    assert len(tasks_of(calendar)) == len(record.tasks)


def test_a_plan_with_no_task_still_is_a_calendar() -> None:
    assert [part.name for part in event_feed(sample_record_without_plan()).parts] == ["VTIMEZONE"]


def test_a_helper_nobody_knows_is_a_key_error() -> None:
    with pytest.raises(KeyError, match="nobody"):
        helper_calendar(sample_record(), "nobody", revision=1, stamped_at=SAVED_AT)


def test_a_helper_who_left_the_crew_still_sees_what_was_cancelled() -> None:
    record = sample_record()
    left = replace(
        record,
        helpers=tuple(helper for helper in record.helpers if helper.id != "ilse"),
        tasks=tuple(replace(t, helpers=tuple(h for h in t.helpers if h != "ilse") or ("runa",)) for t in record.tasks),
    )
    changes = stamp_history([Revision(1, SAVED_AT, record), Revision(3, SAVED_AT, left)])
    calendar = helper_feed(left, "ilse", changes=changes)
    assert [part.value("STATUS") for part in tasks_of(calendar)] == ["CANCELLED"] * 3


def test_a_task_of_no_length_has_a_start_and_no_end() -> None:
    record = record_with(task_at(utc("2027-06-19 20:00"), minutes=0))
    (event,) = tasks_of(event_feed(record))
    assert (event.value("DTSTART"), event.all("DTEND")) == ("20270619T150000", [])
    (todo,) = tasks_of(event_feed(record, form=Form.TODOS))
    assert (todo.value("DUE"), todo.all("DTSTART")) == ("20270619T150000", [])


@pytest.mark.parametrize(
    "address",
    ["feeds/1.ics", "javascript:alert(1)", "https://example.org/a b", "https://example.org/\r\nATTENDEE:x", "https://", "https://exämple.org/"],
)  # fmt: skip
def test_an_address_that_could_break_the_file_is_refused(address: str) -> None:
    with pytest.raises(FeedError, match="give one such as https://"):
        event_calendar(sample_record(), revision=1, stamped_at=SAVED_AT, address=address)


def test_a_moment_without_a_zone_is_refused() -> None:
    with pytest.raises(ValueError, match="aware"):
        event_calendar(sample_record(), revision=1, stamped_at=SAVED_AT.replace(tzinfo=None))
