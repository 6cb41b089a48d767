"""The JSON of a plan: inverse both ways, documented key for key, refused with the key's name where it is wrong."""

import json
import re
from collections.abc import Callable
from dataclasses import replace
from datetime import UTC, datetime, timedelta
from typing import Any
from zoneinfo import ZoneInfo

import pytest
from hypothesis import given
from hypothesis import strategies as st

from cookout.core.planning.record import PlannedFiring, PlannedHelper, PlannedTask, PlanRecord, WayOut
from cookout.core.planning.recordjson import JSON_DOC, from_json, to_json
from cookout.core.planning.result import Status
from tests.samples import TRICKY_NAME, TRICKY_TASK, sample_record, sample_record_without_plan

ZONES = ("America/New_York", "Europe/Lisbon", "Australia/Lord_Howe", "Asia/Kathmandu", "UTC", "Pacific/Apia")
TABLES = ("dishes", "gear", "change")
"""Keys whose objects are tables by id rather than fixed keys; `gear` only where it is a table."""

texts = st.text(st.characters(codec="utf-8"), max_size=12)
minutes = st.integers(-500, 500)


def moments(zone: ZoneInfo) -> st.SearchStrategy[datetime]:
    """Instants over twenty years, so that clock changes fall among them, as read off a clock of that zone."""
    start = datetime(2015, 1, 1, tzinfo=UTC)
    return st.integers(0, 20 * 366 * 1440).map(lambda passed: (start + timedelta(minutes=passed)).astimezone(zone))


def tasks(zone: ZoneInfo) -> st.SearchStrategy[PlannedTask]:
    """Tasks with any values at all."""
    return st.builds(
        PlannedTask,
        id=texts,
        dish=texts,
        name=texts,
        kind=texts,
        starts_at=moments(zone),
        ends_at=moments(zone),
        helpers=st.lists(texts, max_size=2).map(tuple),
        gear=st.dictionaries(texts, minutes, max_size=2),
        hands_on=st.booleans(),
        slack_minutes=minutes,
        held_by=st.just(()),
    )


def helpers(zone: ZoneInfo) -> st.SearchStrategy[PlannedHelper]:
    """Helpers with any values at all."""
    some = moments(zone)
    return st.builds(
        PlannedHelper,
        texts,
        texts,
        st.lists(texts, max_size=2).map(tuple),
        st.lists(st.tuples(some, some), max_size=2).map(tuple),
        st.booleans(),
        st.booleans(),
        minutes,
        st.none() | some,
        st.none() | some,
        minutes,
    )


@st.composite
def records(draw: st.DrawFn) -> PlanRecord:
    """Records of any zone, season and text."""
    name = draw(st.sampled_from(ZONES))
    zone = ZoneInfo(name)
    base = sample_record()
    at = moments(zone)
    firings = st.builds(PlannedFiring, texts, at, at, at, minutes, st.just(("a", "b")), texts, minutes)
    return replace(
        base,
        timezone=name,
        event_name=draw(texts),
        status=draw(st.sampled_from(list(Status))),
        seconds=draw(st.floats(0, 1e6)),
        servings=(),
        slots=(),
        bakes=(),
        tasks=tuple(draw(st.lists(tasks(zone), max_size=3))),
        helpers=tuple(draw(st.lists(helpers(zone), max_size=2))),
        firings=tuple(draw(st.lists(firings, max_size=2))),
        dishes=draw(st.dictionaries(texts, texts, max_size=2)),
        ways_out=(WayOut(draw(texts), draw(st.dictionaries(texts, texts | minutes, max_size=3))),),
    )


def full_record() -> PlanRecord:
    """The sample with every list filled, so that every key shows."""
    other = sample_record_without_plan()
    sample = sample_record()
    pinned = replace(sample.tasks[0], pinned=("time", "helpers"))
    beans, *rest = sample.allergens
    return replace(
        sample,
        tasks=(pinned, *sample.tasks[1:]),
        obstacles=other.obstacles,
        ways_out=other.ways_out,
        allergens=(replace(beans, others=("mustard",)), *rest),
    )


def key_paths(value: Any, path: str = "") -> set[str]:
    """Every key in the JSON as a path such as ``tasks[].gear.*``."""
    if isinstance(value, list):
        return {found for item in value for found in key_paths(item, path + "[]")}
    if not isinstance(value, dict):
        return {path}
    if path.rpartition(".")[2] in TABLES:
        return {f"{path}.*"}
    return {found for key, item in value.items() for found in key_paths(item, f"{path}.{key}" if path else key)}


@given(records())
def test_reading_what_was_written_gives_the_same_record(record: PlanRecord) -> None:
    assert from_json(json.loads(json.dumps(to_json(record)))) == record


@given(records())
def test_the_instants_survive_and_not_only_the_clock_faces(record: PlanRecord) -> None:
    again = from_json(to_json(record))
    before = [task.starts_at.astimezone(UTC) for task in record.tasks]
    assert [task.starts_at.astimezone(UTC) for task in again.tasks] == before
    assert [task.starts_at.utcoffset() for task in again.tasks] == [task.starts_at.utcoffset() for task in record.tasks]


@pytest.mark.parametrize("record", [sample_record(), sample_record_without_plan(), full_record()])
def test_the_samples_survive_the_way_there_and_back(record: PlanRecord) -> None:
    assert from_json(json.loads(json.dumps(to_json(record)))) == record


def test_the_documentation_lists_exactly_the_keys_produced() -> None:
    rows = JSON_DOC.splitlines()[2:]
    documented = [re.match(r"\| `([^`]+)` \| .+ \| .+ \|$", row) for row in rows]
    assert all(documented), [row for row, found in zip(rows, documented, strict=True) if not found]
    names = [found[1] for found in documented if found]
    assert len(names) == len(set(names))
    assert set(names) == key_paths(to_json(full_record()))


def test_links_say_from_and_to_and_times_carry_their_offset() -> None:
    data = to_json(sample_record())
    first = data["links"][0]
    assert (first["from"], first["to"], first["kind"]) == ("set_up", "fire1.light", "finish_to_start")
    assert data["tasks"][0]["starts_at"] == "2027-06-19T15:30:00-05:00"
    assert data["helpers"][2]["windows"] == [
        {"from": "2027-06-19T16:00:00-05:00", "until": "2027-06-19T19:30:00-05:00"}
    ]
    assert data["slots"][0]["ready_made"] == [
        {"dish": "crumble", "up_to": "crumble.slice", "by": "2027-06-19T16:50:00-05:00"}
    ]
    assert data["bakes"][0]["top_ups"] == [{"task": "beans.top_up", "coals": 12}]


def test_names_outside_ascii_are_kept_as_they_are() -> None:
    read = from_json(json.loads(json.dumps(to_json(sample_record()), ensure_ascii=True)))
    assert next(task.name for task in read.tasks if task.id == TRICKY_TASK) == TRICKY_NAME


def test_the_second_pass_of_a_repeated_hour_stays_the_second() -> None:
    zone = ZoneInfo("America/New_York")
    second = datetime(2027, 11, 7, 6, 30, tzinfo=UTC).astimezone(zone)
    record = sample_record()
    moved = replace(record, timezone=zone.key, tasks=(replace(record.tasks[0], starts_at=second),))
    data = to_json(moved)
    assert data["tasks"][0]["starts_at"] == "2027-11-07T01:30:00-05:00"
    assert from_json(data).tasks[0].starts_at.fold == 1


def test_a_time_without_a_zone_is_refused() -> None:
    record = sample_record()
    naive = replace(record, tasks=(replace(record.tasks[0], starts_at=record.tasks[0].starts_at.replace(tzinfo=None)),))
    with pytest.raises(ValueError, match="no time zone"):
        to_json(naive)


def _drop_start(data: dict[str, Any]) -> None:
    del data["tasks"][3]["starts_at"]


def _number_as_text(data: dict[str, Any]) -> None:
    data["firings"][1]["coals"] = "33"


def _bad_status(data: dict[str, Any]) -> None:
    data["status"] = "fine"


def _no_offset(data: dict[str, Any]) -> None:
    data["helpers"][0]["windows"][0]["from"] = "2027-06-19T16:00:00"


def _half_a_window(data: dict[str, Any]) -> None:
    del data["helpers"][0]["windows"][0]["until"]


def _bad_zone(data: dict[str, Any]) -> None:
    data["timezone"] = "Middle/Nowhere"


def _other_format(data: dict[str, Any]) -> None:
    data["format"] = 99


@pytest.mark.parametrize(
    ("spoil", "message"),
    [
        (_drop_start, r"tasks\[3\]\.starts_at: is missing"),
        (_number_as_text, r"firings\[1\]\.coals: int is wanted"),
        (_bad_status, "status: one of proved_best"),
        (_no_offset, r"helpers\[0\]\.windows\[0\]\.from: .* lacks its offset"),
        (_half_a_window, r"helpers\[0\]\.windows\[0\]: an object with from, until"),
        (_bad_zone, "timezone: 'Middle/Nowhere' is no IANA time zone"),
        (_other_format, "format: this program reads 1"),
    ],
)
def test_what_cannot_be_read_is_refused_by_its_key(spoil: Callable[[dict[str, Any]], None], message: str) -> None:
    data = to_json(sample_record())
    spoil(data)
    with pytest.raises(ValueError, match=message):
        from_json(data)


def test_keys_of_a_later_program_are_passed_over() -> None:
    data = to_json(sample_record())
    data["tasks"][0]["mood"] = "cheerful"
    assert from_json(data) == sample_record()
