"""Which stretch of time a look shows, and where earlier and later lie."""

from datetime import timedelta
from itertools import pairwise

import pytest

from cookout.drawing.zoom import Window, Zoom, around, whole, window_at
from tests.drawing.made_up import made_up_record, moment
from tests.samples import at, sample_record, sample_record_without_plan


def test_all_of_a_plan_is_from_quarter_to_quarter() -> None:
    window = whole(sample_record())
    assert (window.begins, window.begins.minute % 15, window.ends.minute % 15) == (at("15:30"), 0, 0)
    assert all(window.begins <= task.starts_at and task.ends_at <= window.ends for task in sample_record().tasks)


def test_a_record_without_tasks_has_no_stretch_of_time() -> None:
    with pytest.raises(ValueError, match="without tasks"):
        whole(sample_record_without_plan())


def test_a_look_at_a_day_is_the_whole_plan() -> None:
    record = made_up_record(60)
    assert window_at(record, "day", 1180, moment(300)) == whole(record)


@pytest.mark.parametrize(
    ("zoom", "width", "minutes"), [("hour", 1180, 180), ("hour", 366, 90), ("minute", 1180, 45), ("minute", 366, 30)]
)
def test_a_closer_look_shows_less_on_a_narrow_page(zoom: Zoom, width: int, minutes: int) -> None:
    window = window_at(made_up_record(60), zoom, width, moment(300))
    assert (window.begins, window.length) == (moment(300), timedelta(minutes=minutes))


def test_a_look_beyond_the_plan_is_moved_into_it() -> None:
    record = made_up_record(60)
    day = whole(record)
    assert window_at(record, "minute", 1180, moment(-10_000)).begins == day.begins
    assert window_at(record, "minute", 1180, moment(10_000)).ends == day.ends
    assert window_at(record, "minute", 1180).begins == day.begins


@pytest.mark.parametrize("zoom", ["hour", "minute"])
def test_going_later_again_and_again_passes_all_of_the_plan_and_ends(zoom: Zoom) -> None:
    record = made_up_record(60)
    seen, window = [], window_at(record, zoom, 1180)
    for _ in range(100):
        seen.append(window)
        _, later = around(record, window)
        if later is None:
            break
        window = window_at(record, zoom, 1180, later)
    assert (seen[0].begins, seen[-1].ends) == (whole(record).begins, whole(record).ends)
    assert all(second.begins <= first.ends for first, second in pairwise(seen))
    assert len(seen) < 100


def test_the_first_look_has_nothing_earlier() -> None:
    record = made_up_record(60)
    assert around(record, window_at(record, "hour", 1180))[0] is None


def test_a_window_ends_after_it_begins() -> None:
    with pytest.raises(ValueError, match="end after"):
        Window(at("17:00"), at("17:00"))
