"""Scales, folds, lanes and hour lines."""

from datetime import UTC, datetime, timedelta
from itertools import pairwise
from zoneinfo import ZoneInfo

import pytest
from hypothesis import given
from hypothesis import strategies as st

from cookout.drawing.geometry import (
    Slab,
    Span,
    TimeScale,
    folds_between,
    minutes_between,
    pack,
    pack_in_order,
    quarter_after,
    quarter_before,
    ticks,
)

NOON = datetime(2027, 6, 19, 12, tzinfo=UTC)
KATHMANDU = ZoneInfo("Asia/Kathmandu")  # 5 h 45 min ahead of UTC

spans = st.lists(
    st.tuples(st.integers(0, 500), st.integers(1, 60)).map(lambda pair: Span(pair[0], pair[0] + pair[1])), max_size=40
)


def later(minutes: float) -> datetime:
    """So many minutes after noon."""
    return NOON + timedelta(minutes=minutes)


@given(spans)
def test_spans_in_one_lane_never_overlap_and_lanes_are_as_few_as_can_be(given_spans: list[Span]) -> None:
    lanes = pack(given_spans)
    placed = list(zip(given_spans, lanes, strict=True))
    for place, (span, lane) in enumerate(placed):
        assert not any(lane == other_lane and span.overlaps(other) for other, other_lane in placed[place + 1 :])
    deepest = max((sum(o.begins <= s.begins < o.ends for o in given_spans) for s in given_spans), default=0)
    assert max(lanes, default=-1) + 1 == deepest


@given(spans)
def test_spans_in_one_lane_keep_the_gap(given_spans: list[Span]) -> None:
    lanes = pack(given_spans, gap=7)
    for lane in set(lanes):
        own = sorted((s for s, at in zip(given_spans, lanes, strict=True) if at == lane), key=lambda s: s.begins)
        assert all(second.begins - first.ends >= 7 for first, second in pairwise(own))


def test_a_fitted_scale_puts_both_ends_at_the_ends_of_its_room() -> None:
    scale = TimeScale.fitted(NOON, later(100), Span(50, 250))
    assert (scale.at(NOON), scale.at(later(100)), scale.at(later(25))) == (50, 250, 100)


def test_a_short_task_is_drawn_at_least_so_long_and_never_past_the_end() -> None:
    scale = TimeScale.fitted(NOON, later(100), Span(0, 100))
    assert scale.span(later(10), later(12), least=5) == Span(10, 15)
    assert scale.span(later(99), later(100), least=5) == Span(95, 100)


def test_a_fold_shortens_what_comes_after_it_by_what_it_hides() -> None:
    folds = folds_between([Span(0, 10), Span(110, 120)], least=45, margin=5, shown=20)
    scale = TimeScale(NOON, later(120), 0, 2.0, folds)
    assert [(fold.begins, fold.ends) for fold in folds] == [(15, 105)]
    assert scale.at(later(15)) == 30
    assert scale.at(later(60)) == pytest.approx(40)
    assert scale.at(later(105)) == pytest.approx(50)
    assert scale.at(later(120)) == pytest.approx(80)
    assert scale.is_folded(later(60))
    assert not scale.is_folded(later(110))


@given(st.integers(0, 600), st.integers(0, 600))
def test_later_is_never_drawn_before_earlier_with_folds(first: int, second: int) -> None:
    folds = folds_between([Span(0, 10), Span(200, 220), Span(500, 600)], least=45, margin=8, shown=26)
    scale = TimeScale(NOON, later(600), 0, 1.8, folds)
    low, high = sorted((first, second))
    assert scale.at(later(low)) <= scale.at(later(high)) + 1e-9


def test_busy_stretches_that_overlap_leave_no_fold_between() -> None:
    assert folds_between([Span(0, 200), Span(10, 20), Span(190, 260)], least=45, margin=5, shown=20) == ()


def test_quarters_are_those_of_the_local_clock() -> None:
    moment = datetime(2027, 6, 19, 6, 20, tzinfo=UTC)  # 12:05 in Kathmandu
    assert f"{quarter_before(moment, KATHMANDU):%H:%M}" == "12:00"
    assert f"{quarter_after(moment, KATHMANDU):%H:%M}" == "12:15"
    assert quarter_after(quarter_before(moment, KATHMANDU), KATHMANDU) == quarter_before(moment, KATHMANDU)


def test_hours_are_named_and_quarters_are_not() -> None:
    found = [(tick.text, tick.is_hour) for tick in ticks(later(50), later(95), UTC)]
    assert found == [("13:00", True), ("", False), ("", False)]
    assert [tick.text for tick in ticks(NOON, later(180), UTC, every=60)] == ["12:00", "13:00", "14:00", "15:00"]


def test_minutes_are_counted_by_the_sun_when_clocks_go_forward() -> None:
    # 14 March 2027: in Chicago 01:30 and 03:30 are one hour apart.
    zone = ZoneInfo("America/Chicago")
    assert minutes_between(datetime(2027, 3, 14, 1, 30, tzinfo=zone), datetime(2027, 3, 14, 3, 30, tzinfo=zone)) == 60


@given(spans)
def test_spans_taken_in_order_never_overlap_in_a_lane_and_the_first_stands_first(given_spans: list[Span]) -> None:
    lanes = pack_in_order(given_spans, gap=3)
    placed = list(zip(given_spans, lanes, strict=True))
    for place, (span, lane) in enumerate(placed):
        others = [other for other, at in placed[:place] if at == lane]
        assert all(span.begins - other.ends >= 3 or other.begins - span.ends >= 3 for other in others)
    assert not lanes or lanes[0] == 0


def test_a_scale_with_folds_fills_its_room_as_well() -> None:
    folds = folds_between([Span(0, 60), Span(660, 720)], least=240, margin=30, shown=30)
    scale = TimeScale.fitted(NOON, later(720), Span(10, 310), folds)
    assert scale.at(NOON) == 10
    assert scale.at(later(720)) == pytest.approx(310)
    assert scale.at(later(630)) - scale.at(later(90)) == pytest.approx(30)


def test_what_lies_beyond_the_axis_is_drawn_up_to_its_ends() -> None:
    scale = TimeScale.fitted(NOON, later(100), Span(0, 100))
    assert scale.span(later(-30), later(20)) == Span(0, 20)
    assert scale.span(later(90), later(400)) == Span(90, 100)


@pytest.mark.parametrize("every", [1, 5, 15, 60])
def test_lines_stand_at_full_steps_of_the_local_clock(every: int) -> None:
    found = [tick.at for tick in ticks(later(3.5), later(130), KATHMANDU, every)]
    assert all(at.minute % every == 0 and at.second == 0 for at in found)
    assert len(found) == len(set(found)) >= 2


def test_an_inset_slab_is_never_turned_inside_out() -> None:
    assert Slab(Span(0, 10), Span(0, 2)).inset(3) == Slab(Span(3, 7), Span(1, 1))
