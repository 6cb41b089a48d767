"""Sequence and cancellation over a row of revisions."""

from dataclasses import replace
from datetime import datetime, timedelta
from zoneinfo import ZoneInfo

from cookout.core.planning.record import HeldBy, PlanRecord
from cookout.feeds.stamps import KEEP_CANCELLED, Revision, Stamps, TaskStamp, stamp_changes, stamp_history
from tests.feeds.records import SAVED_AT, record_with, task_at
from tests.samples import sample_record

HOUR = timedelta(hours=1)
DAY_START = datetime(2027, 6, 19, 15, 0, tzinfo=ZoneInfo("America/Chicago"))
STIR, SIFT = task_at(DAY_START, id="stir"), task_at(DAY_START + HOUR, id="sift", helpers=("ilse", "runa"))


def after(*records: PlanRecord) -> Stamps:
    """The stamps after these records were saved as revisions 1, 2 ... an hour apart."""
    return stamp_history(Revision(n, SAVED_AT + n * HOUR, record) for n, record in enumerate(records, start=1))


def stamp(revision: int, modified: int | None = None) -> TaskStamp:
    return TaskStamp(revision, SAVED_AT + (modified or revision) * HOUR)


def test_the_first_revision_stamps_every_task_with_itself() -> None:
    assert after(record_with(STIR, SIFT)) == Stamps({"stir": stamp(1), "sift": stamp(1)})


def test_a_re_plan_that_changes_nothing_keeps_every_stamp() -> None:
    assert after(sample_record(), sample_record()).tasks == after(sample_record()).tasks


def test_only_the_task_that_moved_gets_the_new_number() -> None:
    moved = replace(STIR, starts_at=STIR.starts_at + HOUR, ends_at=STIR.ends_at + HOUR)
    assert after(record_with(STIR, SIFT), record_with(moved, SIFT)).tasks == {"stir": stamp(2), "sift": stamp(1)}


def test_a_longer_task_counts_as_moved() -> None:
    longer = replace(STIR, ends_at=STIR.ends_at + HOUR)
    assert after(record_with(STIR), record_with(longer)).tasks == {"stir": stamp(2)}


def test_another_place_or_zone_moves_every_task() -> None:
    first = record_with(STIR)
    assert after(first, replace(first, place="The barn")).tasks == {"stir": stamp(2)}
    assert after(first, replace(first, timezone="America/Denver")).tasks == {"stir": stamp(2)}


def test_the_same_moment_written_in_another_zone_is_no_move() -> None:
    same = replace(STIR, starts_at=STIR.starts_at.astimezone(ZoneInfo("Asia/Kolkata")))
    assert after(record_with(STIR), record_with(same)).tasks == {"stir": stamp(1)}


def test_other_words_are_a_modification_and_no_move() -> None:
    record = record_with(STIR)
    for other in (
        record_with(replace(STIR, detail="slowly")),
        record_with(replace(STIR, name="Stir")),
        record_with(replace(STIR, units=("spoon A",))),
        replace(record, dishes={"beans": "Bean pot"}),
        replace(record, helpers=tuple(replace(helper, name="R. V.") for helper in record.helpers)),
    ):
        assert after(record, other).tasks == {"stir": stamp(1, modified=2)}


def test_slack_and_what_holds_a_task_are_not_shown_and_so_change_nothing() -> None:
    other = replace(STIR, slack_minutes=9, held_by=(HeldBy("later", "sift", "can start no later: sift waits"),))
    assert after(record_with(STIR), record_with(other)).tasks == {"stir": stamp(1)}


def test_numbers_never_fall_when_a_task_moves_away_and_back() -> None:
    moved = replace(STIR, starts_at=STIR.starts_at - HOUR, ends_at=STIR.ends_at - HOUR)
    back = record_with(STIR)
    sequences = [
        after(*row).tasks["stir"].sequence
        for row in ([back], [back, record_with(moved)], [back, record_with(moved), back])
    ]
    assert sequences == [1, 2, 3]


def test_a_task_taken_away_is_remembered_as_it_stood() -> None:
    stamps = after(record_with(STIR, SIFT), record_with(STIR))
    (gone,) = stamps.cancelled
    assert (gone.id, gone.name, gone.dish, gone.from_event) == ("sift", "Do sift", "Smoky bean pot", True)
    assert (gone.starts_at, gone.ends_at, gone.place) == (SIFT.starts_at, SIFT.ends_at, sample_record().place)
    assert (gone.helpers, gone.stamp) == (("ilse", "runa"), stamp(2))
    assert "sift" not in stamps.tasks


def test_a_task_that_comes_back_is_cancelled_no_more_and_outranks_its_cancellation() -> None:
    both, one = record_with(STIR, SIFT), record_with(STIR)
    stamps = after(both, one, both)
    assert stamps.cancelled == ()
    assert stamps.tasks["sift"] == stamp(3)


def test_a_helper_who_loses_a_task_and_gets_it_back_is_told_both_times() -> None:
    both, alone = record_with(SIFT), record_with(replace(SIFT, helpers=("runa",)))
    lost = after(both, alone)
    assert [(gone.id, gone.helpers, gone.from_event) for gone in lost.cancelled] == [("sift", ("ilse",), False)]
    assert lost.tasks["sift"] == stamp(2)
    again = after(both, alone, both)
    assert (again.cancelled, again.tasks["sift"]) == ((), stamp(3))


def test_a_task_lost_by_one_helper_and_then_taken_away_is_cancelled_once_for_each() -> None:
    stamps = after(record_with(SIFT), record_with(replace(SIFT, helpers=("runa",))), record_with())
    seen = [(gone.helpers, gone.from_event, gone.stamp.sequence) for gone in stamps.cancelled]
    assert seen == [(("ilse",), False, 2), (("runa",), True, 3)]


def test_a_cancelled_task_that_returns_for_another_helper_stays_cancelled_for_the_first() -> None:
    for_ilse = record_with(replace(SIFT, helpers=("ilse",)))
    for_runa = record_with(replace(SIFT, helpers=("runa",)))
    (gone,) = after(for_ilse, record_with(), for_runa).cancelled
    assert (gone.helpers, gone.from_event) == (("ilse",), False)


def test_cancellations_are_let_go_after_a_while() -> None:
    both, one = record_with(STIR, SIFT), record_with(STIR)
    stamps = after(both, one)
    last_day = stamps.cancelled[0].stamp.modified_at + KEEP_CANCELLED
    assert stamp_changes(one, stamps, one, revision=3, at=last_day).cancelled == stamps.cancelled
    assert stamp_changes(one, stamps, one, revision=3, at=last_day + timedelta(seconds=1)).cancelled == ()


def test_without_earlier_stamps_an_earlier_record_still_tells_what_was_taken_away() -> None:
    stamps = stamp_changes(record_with(STIR, SIFT), None, record_with(STIR), revision=7, at=SAVED_AT)
    assert stamps.tasks == {"stir": TaskStamp(7, SAVED_AT)}
    assert [gone.id for gone in stamps.cancelled] == ["sift"]
