"""The day at a glance: short tasks drawn together, and still every one of them told of."""

import gzip
import re
from dataclasses import replace
from datetime import timedelta
from itertools import combinations

import pytest

from cookout.core.planning.record import PlanRecord
from cookout.drawing import timeline_svg
from cookout.drawing.rows import By
from tests.drawing.made_up import made_up_record
from tests.drawing.svg_reading import SVG, all_boxes, by_class, drawn_tasks, parse, task_links, view_box
from tests.samples import sample_record

RECORDS = {"24 tasks": sample_record(), "60 tasks": made_up_record(60), "400 tasks": made_up_record(400)}

every_record = pytest.mark.parametrize("record", RECORDS.values(), ids=RECORDS.keys())
every_way = pytest.mark.parametrize("by", ["dish", "helper", "gear"])


@every_record
@pytest.mark.parametrize("by", ["dish", "helper"])
@pytest.mark.parametrize("width", [1180, 366])
def test_from_afar_every_task_is_told_of_once_in_each_row(record: PlanRecord, width: int, by: By) -> None:
    root = parse(timeline_svg(record, by=by, width=width, zoom="day"))
    near = parse(timeline_svg(record, by=by, width=width))
    told = sum(_told(link.findtext(f"{SVG}title") or "") for row in by_class(root, "row") for link in task_links(row))
    assert told == sum(len(task_links(row)) for row in by_class(near, "row"))


def _told(title: str) -> int:
    """How many tasks a bar of an overview stands for, by what it says."""
    several = re.match(r"(\d+) tasks", title)
    ticks = re.search(r"topped up (\d+) times", title)
    return int(several[1]) if several else 1 + (int(ticks[1]) if ticks else 0)


@every_way
def test_two_overviews_of_a_large_event_are_small(by: By) -> None:
    # The first load of a page may hold both, 180 kB as they are and 45 kB packed.
    record = made_up_record(400)
    both = [timeline_svg(record, by=by, width=width, zoom="day").encode() for width in (1180, 366)]
    assert sum(len(svg) for svg in both) < 180_000
    assert sum(len(gzip.compress(svg)) for svg in both) < 45_000


@every_way
@pytest.mark.parametrize("width", [1180, 366])
def test_no_two_bars_of_an_overview_overlap(width: int, by: By) -> None:
    root = parse(timeline_svg(made_up_record(400), by=by, width=width, zoom="day"))
    for row in by_class(root, "row"):
        bars = drawn_tasks(row)
        for one, other in combinations(bars, 2):
            # A lid stands out over its oven, and the nicks upon it over the lid.
            assert not one.shape.overlaps(other.shape, slack=6), (one.label, other.label)


@every_way
@pytest.mark.parametrize("width", [1180, 366])
def test_an_overview_lies_on_the_page(width: int, by: By) -> None:
    root = parse(timeline_svg(made_up_record(400), by=by, width=width, zoom="day"))
    assert [box for box in all_boxes(root) if not view_box(root).holds(box, slack=4)] == []


def test_an_overview_folds_a_night_away() -> None:
    record = sample_record()
    shifted = tuple(
        replace(t, starts_at=t.starts_at + timedelta(days=1), ends_at=t.ends_at + timedelta(days=1))
        if t.id == "drown"
        else t
        for t in record.tasks
    )
    root = parse(timeline_svg(replace(record, tasks=shifted), by="dish", width=900, zoom="day"))
    assert re.search(r"\d+ h( \d+ min)? without a task here", " ".join(root.itertext()))
    assert "without a task here" not in timeline_svg(record, by="dish", width=900, zoom="day")
