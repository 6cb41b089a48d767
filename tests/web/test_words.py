"""How pages print times and counts, and the parts of a plan as they arrange them."""

from dataclasses import replace
from datetime import timedelta

import pytest

from cookout.core.planning.record import HeldBy
from cookout.web.reading.fire import firing_rows
from cookout.web.reading.status import served
from cookout.web.reading.tasks import call_sheet, helper_of, hours, rows
from cookout.web.templatetags.plainly import clock, counted, day, iso, span
from tests.samples import at, sample_record


@pytest.mark.parametrize(
    ("minutes", "words"),
    [(0, "0 min"), (59, "59 min"), (60, "1 h"), (85, "1 h 25 min"), (47 * 60, "47 h"), (3 * 1440 + 61, "3 days 1 h")],
)
def test_a_length_of_time_is_printed_without_noughts(minutes: int, words: str) -> None:
    assert span(minutes) == words


def test_moments_are_printed_in_the_events_own_zone() -> None:
    assert (clock(at("16:05")), day(at("16:05"))) == ("16:05", "Sat 19 June 2027")
    assert iso(at("16:05")) == "2027-06-19T16:05:00-05:00"


def test_one_is_not_many() -> None:
    assert (counted(1, "coal,coals"), counted(2, "coal,coals")) == ("1 coal", "2 coals")


def test_tasks_are_gathered_by_the_hour_and_days_are_told_once() -> None:
    record = sample_record()
    late = tuple(
        replace(task, starts_at=task.starts_at + timedelta(hours=6), ends_at=task.ends_at + timedelta(hours=6))
        if task.id == "drown"
        else task
        for task in record.tasks
    )
    gathered = list(hours(replace(record, tasks=late)))
    assert [(hour.starts_at.hour, hour.new_day) for hour in gathered] == [
        (15, True), (16, False), (17, False), (18, False), (0, True)
    ]  # fmt: skip
    assert sum(len(hour.rows) for hour in gathered) == len(record.tasks)


def test_a_row_shows_the_first_reason_either_way_and_keeps_the_rest() -> None:
    reasons = tuple(HeldBy(way, "", f"{way} {n}") for n in (1, 2) for way in ("earlier", "later"))
    record = sample_record()
    first, *others = record.tasks
    row = rows(replace(record, tasks=(replace(first, held_by=reasons), *others)))[0]
    assert [reason.text for reason in row.held] == ["earlier 1", "later 1"]
    assert [reason.text for reason in row.also] == ["earlier 2", "later 2"]


def test_dishes_are_gathered_by_serving_with_the_tightest_margin() -> None:
    record = sample_record()
    beans, crumble = record.servings
    slipped = replace(beans, ready_at=at("18:37"), late_minutes=7)
    (supper,) = served(replace(record, servings=(slipped, crumble)))
    assert (supper.margin, supper.late, supper.people) == (3, 7, 8)  # 18:37 to 18:40 at the latest
    assert [dish.dish for dish in supper.dishes] == ["crumble", "beans"]


def test_a_firing_names_who_lights_it_and_what_it_feeds() -> None:
    second = firing_rows(sample_record())[1]
    assert second.lighters == ("Runa Velde",)
    assert second.feeds == (
        "Smoky bean pot: Add 12 fresh coals",
        "Apple crumble à la Brandão: Lay coals: 14 on the lid, 7 under",
    )


def test_what_is_done_what_is_on_and_what_comes_next() -> None:
    record = sample_record()
    runa = helper_of(record, "runa")
    assert runa is not None
    during, between = call_sheet(record, runa, now=at("15:52")), call_sheet(record, runa, now=at("16:00"))
    assert (during.upcoming and during.upcoming.task.id, during.under_way, during.done) == ("fire1.light", True, 1)
    assert (between.upcoming and between.upcoming.task.id, between.under_way, between.done) == ("beans.lay", False, 2)
    assert call_sheet(record, runa, now=at("23:00")).upcoming is None
