"""Two plans in one drawing, read back as XML."""

import re
from dataclasses import replace
from datetime import timedelta

import pytest

from cookout.core.planning.compare import compare
from cookout.core.planning.record import PlannedTask, PlanRecord
from cookout.drawing import Links, Scheme, comparison_svg
from cookout.drawing.rows import By
from tests.drawing.made_up import made_up_record
from tests.drawing.svg_reading import SVG, all_boxes, by_class, parse, texts, view_box
from tests.samples import sample_record

LINKS = Links("/t/{task}")


def later(task: PlannedTask, minutes: int) -> PlannedTask:
    """The task so many minutes later."""
    by = timedelta(minutes=minutes)
    return replace(task, starts_at=task.starts_at + by, ends_at=task.ends_at + by)


def changed(record: PlanRecord, **tasks: PlannedTask | None) -> PlanRecord:
    """The record with some of its tasks replaced, by ids with _ for a dot; None leaves one out."""
    new = {name.replace("_", "."): task for name, task in tasks.items()}
    kept = (new.get(task.id, task) for task in record.tasks)
    return replace(record, tasks=tuple(task for task in kept if task is not None), links=())


def task(record: PlanRecord, id: str) -> PlannedTask:
    """A task of the record."""
    return next(task for task in record.tasks if task.id == id)


def drawn(before: PlanRecord, after: PlanRecord, by: By = "dish", width: int = 1000) -> str:
    """The drawing of how they differ."""
    return comparison_svg(before, after, compare(before, after), by=by, width=width, links=LINKS)


def titles(svg: str) -> list[str]:
    """What each change says of itself."""
    rows = by_class(parse(svg), "row")
    return [title.text or "" for row in rows for title in row.iter(f"{SVG}title")]


def test_a_task_that_moved_has_a_ghost_a_bar_and_an_arrow_and_says_how() -> None:
    record = sample_record()
    after = changed(record, crumble_slice=later(task(record, "crumble.slice"), 12))
    svg = drawn(record, after)
    (row,) = by_class(parse(svg), "row")
    link = next(row.iter(f"{SVG}a"))
    assert link.attrib["href"] == "/t/crumble.slice"
    assert [part.get("class") for part in link if part.tag == f"{SVG}path"] == ["ghost", "iron", "arrow", "arrow"]
    (said,) = titles(svg)
    assert "12 min later" in said
    assert "before, now" in said


def test_only_rows_that_change_are_drawn() -> None:
    record = sample_record()
    after = changed(record, crumble_slice=later(task(record, "crumble.slice"), 12))
    written = " ".join(texts(parse(drawn(record, after))))
    assert "Apple crumble à la Brandão" in written
    assert "Smoky bean pot" not in written


def test_a_task_handed_over_is_told_in_both_helpers_rows() -> None:
    record = sample_record()
    slicing = task(record, "crumble.slice")
    other = next(helper.id for helper in record.helpers if helper.id not in slicing.helpers)
    svg = drawn(record, changed(record, crumble_slice=replace(slicing, helpers=(other,))), by="helper")
    said = titles(svg)
    assert len(by_class(parse(svg), "row")) == 2
    assert len([each for each in said if ": to " in each]) == len([each for each in said if ": from " in each]) == 1


def test_what_is_left_out_is_struck_through_and_leads_nowhere_and_what_is_new_says_so() -> None:
    record = sample_record()
    without = changed(record, crumble_slice=None)
    gone, come = drawn(record, without), drawn(without, record)
    (row,) = by_class(parse(gone), "row")
    assert not list(row.iter(f"{SVG}a"))
    assert by_class(row, "struck")
    assert "left out" in titles(gone)[0]
    assert "new" in titles(come)[0]
    assert "/t/crumble.slice" in come


def test_tasks_that_moved_alike_one_after_another_are_one_bar() -> None:
    record = sample_record()
    all_later = replace(record, tasks=tuple(later(each, 30) for each in record.tasks), links=())
    said = titles(drawn(record, all_later))
    assert any(re.match(r"\d+ tasks: 30 min later", each) for each in said)
    assert len(said) < len(record.tasks)


def test_a_plan_that_does_not_differ_says_so() -> None:
    assert "No task changes its time, its hands or its gear." in texts(parse(drawn(sample_record(), sample_record())))


@pytest.mark.parametrize("by", ["dish", "helper", "gear"])
@pytest.mark.parametrize("width", [1180, 366])
def test_the_drawing_lies_on_the_page_and_every_change_is_in_it(by: By, width: int) -> None:
    record = sample_record()
    after = changed(
        record,
        crumble_slice=later(task(record, "crumble.slice"), 12),
        beans_bake=later(task(record, "beans.bake"), -5),
        drown=None,
    )
    root = parse(drawn(record, after, by, width))
    assert [box for box in all_boxes(root) if not view_box(root).holds(box, slack=4)] == []
    for change in compare(record, after).tasks:
        shown_by = {"dish": True, "helper": bool(change.helpers), "gear": change.task == "beans.bake"}
        named = any(" ".join(change.name.split()) in " ".join((t.text or "").split()) for t in root.iter(f"{SVG}title"))
        assert named is shown_by[by], change.task


@pytest.mark.parametrize("by", ["dish", "helper", "gear"])
def test_a_large_event_in_which_all_changes_stays_small(by: By) -> None:
    record = made_up_record(400)
    moved = tuple(later(each, 1 + number % 13) for number, each in enumerate(record.tasks))
    svg = drawn(record, replace(record, tasks=moved), by, 1180)
    assert len(svg.encode()) < 150_000
    root = parse(svg)
    assert [box for box in all_boxes(root) if not view_box(root).holds(box, slack=4)] == []
    assert by_class(root, "ghost")


def test_paper_has_its_own_looks_and_pages_no_inline_style() -> None:
    record = sample_record()
    after = changed(record, crumble_slice=later(task(record, "crumble.slice"), 12))
    comparison = compare(record, after)
    assert "<style>" not in comparison_svg(record, after, comparison, by="dish", width=900)
    assert "<style>" in comparison_svg(record, after, comparison, by="dish", width=900, scheme=Scheme.GREY)
