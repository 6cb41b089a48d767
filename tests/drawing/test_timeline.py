"""The timeline as a drawing, read back as XML."""

import re
from dataclasses import replace
from datetime import UTC, datetime, timedelta
from itertools import combinations, pairwise
from typing import Literal
from zoneinfo import ZoneInfo

import pytest

from cookout.core.planning.record import PlannedTask, PlanRecord
from cookout.drawing import Scheme, fire_svg, timeline_svg
from cookout.drawing.rows import By
from cookout.drawing.timeline import Layout
from tests.drawing.made_up import made_up_record, moment
from tests.drawing.svg_reading import SVG, all_boxes, drawn_tasks, parse, tasks_in_rows, view_box
from tests.samples import TRICKY_TASK, at, sample_record, sample_record_without_plan

RECORDS = {"24 tasks": sample_record(), "60 tasks": made_up_record(60), "400 tasks": made_up_record(400)}
SHAPES: tuple[tuple[Layout, int], ...] = (("wide", 1240), ("wide", 900), ("tall", 390), ("tall", 320))
HOSTILE = "<script>alert('1')</script> & \"quoted\" ]]> \x00\x1b[31m {{ x }} \N{RIGHT-TO-LEFT OVERRIDE}"

every_record = pytest.mark.parametrize("record", RECORDS.values(), ids=RECORDS.keys())
every_shape = pytest.mark.parametrize(("layout", "width"), SHAPES)
every_way = pytest.mark.parametrize("by", ["dish", "helper", "gear"])


def expected(record: PlanRecord, by: By) -> set[str]:
    """The tasks that rows of that kind must show, worked out from the record alone."""
    chosen = {
        "dish": [task.id for task in record.tasks],
        "helper": [task.id for task in record.tasks if task.helpers],
        "gear": [task.id for task in record.tasks if task.gear or task.units],
    }
    return set(chosen[by])


@every_record
@every_shape
@every_way
def test_every_task_is_drawn_as_a_link_that_says_what_it_is(
    record: PlanRecord, layout: Layout, width: int, by: By
) -> None:
    drawn = drawn_tasks(parse(timeline_svg(record, by=by, width=width, layout=layout)))
    assert expected(record, by) <= {one.task for one in drawn}
    names = {task.id: task.name for task in record.tasks}
    for one in drawn:
        assert " ".join(names[one.task].split()) in one.label
        assert one.label == one.tooltip
        assert one.address == f"#task-{one.task}"


@every_record
@every_shape
@every_way
def test_no_two_tasks_in_the_rows_overlap_and_no_words_cover_another_task(
    record: PlanRecord, layout: Layout, width: int, by: By
) -> None:
    drawn = [
        one for one in tasks_in_rows(parse(timeline_svg(record, by=by, width=width, layout=layout))) if not one.is_sign
    ]
    assert len(drawn) > 5
    for one, other in combinations(drawn, 2):
        assert not one.shape.overlaps(other.shape), (one.label, other.label)
        for text in one.texts:
            assert not text.overlaps(other.shape), (one.label, other.label)
            assert not any(text.overlaps(beside) for beside in other.texts), (one.label, other.label)


@every_record
@every_shape
@every_way
def test_everything_lies_on_the_page(record: PlanRecord, layout: Layout, width: int, by: By) -> None:
    root = parse(timeline_svg(record, by=by, width=width, layout=layout))
    page = view_box(root)
    assert page.right == width
    boxes = all_boxes(root)
    assert len(boxes) > 50
    assert [box for box in boxes if not page.holds(box, slack=4)] == []


@every_record
def test_words_that_begin_in_a_bar_end_in_it(record: PlanRecord) -> None:
    drawn = tasks_in_rows(parse(timeline_svg(record, by="dish", width=1240)))
    inside = [(one, text) for one in drawn for text in one.texts if one.shape.left < text.left < one.shape.right]
    assert inside
    assert all(text.right <= one.shape.right for one, text in inside)


def test_bars_are_as_long_as_their_tasks_and_begin_at_their_time() -> None:
    record = sample_record()
    drawn = {one.task: one for one in tasks_in_rows(parse(timeline_svg(record, by="dish", width=1240)))}
    set_up, slicing = drawn["set_up"].shape, drawn["crumble.slice"].shape
    per_minute = (set_up.right - set_up.left) / 20
    assert slicing.right - slicing.left == pytest.approx(20 * per_minute, abs=0.3)
    assert slicing.left - set_up.left == pytest.approx(55 * per_minute, abs=0.3)


def test_turns_look_ins_and_top_ups_stand_on_the_lid_of_their_bake() -> None:
    drawn = {one.task: one for one in drawn_tasks(parse(timeline_svg(sample_record(), by="dish", width=1240)))}
    for tick, bake in (
        ("crumble.turn", "crumble.bake"),
        ("crumble.look_in", "crumble.bake"),
        ("beans.top_up", "beans.bake"),
    ):
        assert drawn[tick].is_sign
        assert drawn[bake].shape.left < drawn[tick].shape.left < drawn[tick].shape.right < drawn[bake].shape.right
        assert drawn[tick].shape.bottom == pytest.approx(drawn[bake].shape.top + 3, abs=1)


def test_each_kind_of_work_has_a_look_that_does_not_need_colour() -> None:
    root = parse(timeline_svg(sample_record(), by="dish", width=1240, scheme=Scheme.GREY))
    links = {link.attrib["data-task"]: link for link in root.iter(f"{SVG}a")}
    signatures = {}
    for task in ("crumble.slice", "beans.lay", "crumble.cool", "beans.bake", "supper.beans"):
        paths = links[task].findall(f"{SVG}path")
        signatures[task] = tuple(
            (path.get("stroke-dasharray"), path.get("fill", "")[:4], len(path.attrib["d"].split("L")) > 8)
            for path in paths
        )
    assert len(set(signatures.values())) == 5


@pytest.mark.parametrize("layout", ["wide", "tall"])
def test_every_firing_is_drawn_with_its_coals(layout: Layout) -> None:
    record = sample_record()
    root = parse(timeline_svg(record, by="gear", width=900, layout=layout))
    firings = [group for group in root.iter(f"{SVG}g") if group.get("class") == "firing"]
    assert [group.get("data-firing") for group in firings] == ["fire1", "fire2"]
    assert "25 coals" in "".join(firings[0].itertext())
    assert {"lighting", "ashed-over", "fading"} <= {path.get("class") for path in firings[0].iter(f"{SVG}path")}


@pytest.mark.parametrize("layout", ["wide", "tall"])
def test_servings_and_demo_slots_are_named_with_their_time(layout: Layout) -> None:
    text = " ".join(parse(timeline_svg(sample_record(), by="dish", width=900, layout=layout)).itertext())
    assert "18:30 Supper for 8" in text
    assert "16:50 How a crumble goes together" in text


def test_a_late_serving_says_how_late_it_is() -> None:
    record = sample_record()
    late = replace(record, servings=(replace(record.servings[0], late_minutes=7), record.servings[1]))
    text = " ".join(parse(timeline_svg(late, by="dish", width=1240)).itertext())
    assert "18:30 Supper for 8, 7 min late" in text
    assert "7 min late, 18:30" in text


@pytest.mark.parametrize("layout", ["wide", "tall"])
def test_now_is_marked_at_its_place_whatever_zone_it_is_told_in(layout: Layout) -> None:
    local = timeline_svg(sample_record(), by="dish", width=900, layout=layout, now=at("17:12"))
    elsewhere = timeline_svg(sample_record(), by="dish", width=900, layout=layout, now=at("17:12").astimezone(UTC))
    assert local == elsewhere
    assert "now 17:12" in local
    assert 'class="now"' in local


def test_now_outside_the_day_and_no_now_mark_nothing() -> None:
    for now in (None, at("17:12") + timedelta(days=2), at("17:12") - timedelta(days=2)):
        assert 'class="now"' not in timeline_svg(sample_record(), by="dish", width=900, now=now).split('class="key"')[0]


def test_hours_are_those_of_the_events_own_clock_and_evenly_spaced_when_clocks_go_back() -> None:
    # 7 November 2027: clocks in Chicago go from 02:00 back to 01:00, so the hour from 01:00 comes twice.
    zone = ZoneInfo("America/Chicago")
    first = datetime(2027, 11, 7, 5, tzinfo=UTC)
    tasks = tuple(_plain_task(f"t{n}", first + timedelta(minutes=45 * n), zone) for n in range(6))
    record = replace(sample_record(), tasks=tasks, links=(), firings=(), bakes=(), servings=(), slots=())
    root = parse(timeline_svg(record, by="dish", width=900))
    axis = next(group for group in root.iter(f"{SVG}g") if group.get("class") == "axis")
    hours = [(text.text, float(text.attrib["x"])) for text in axis.iter(f"{SVG}text")]
    assert [hour for hour, _ in hours] == ["00:00", "01:00", "01:00", "02:00", "03:00"]
    gaps = [right - left for (_, left), (_, right) in pairwise(hours)]
    assert max(gaps) - min(gaps) < 0.3


def _plain_task(id: str, starts: datetime, zone: ZoneInfo) -> PlannedTask:
    begins, ends = starts.astimezone(zone), (starts + timedelta(minutes=30)).astimezone(zone)
    return PlannedTask(id, "beans", "Chop", "prepare", begins, ends, ("runa",), {}, True, 0, ())


@every_shape
def test_hostile_words_stay_words(layout: Layout, width: int) -> None:
    record = sample_record()
    tasks = tuple(
        replace(task, name=HOSTILE, detail=HOSTILE) if task.id == TRICKY_TASK else task for task in record.tasks
    )
    hostile = replace(record, event_name=HOSTILE, tasks=tasks, dishes={"beans": HOSTILE, "crumble": HOSTILE})
    svg = timeline_svg(hostile, by="dish", width=width, layout=layout)
    root = parse(svg)
    assert "<script" not in svg
    assert {element.tag.removeprefix(SVG) for element in root.iter()} <= {
        "svg", "title", "defs", "pattern", "path", "circle", "rect", "text", "g", "a",
    }  # fmt: skip


def test_task_ids_are_quoted_in_addresses() -> None:
    record = sample_record()
    odd = replace(record, tasks=(replace(record.tasks[0], id='set "up"#1 é'),), links=(), firings=(), bakes=())
    assert drawn_tasks(parse(timeline_svg(odd, by="dish", width=900)))[0].address == "#task-set%20%22up%22%231%20%C3%A9"


def test_a_page_may_forbid_inline_styles() -> None:
    svg = timeline_svg(made_up_record(60), by="dish", width=900, now=moment(300))
    assert "<style" not in svg
    assert " style=" not in svg


def test_colours_are_the_pages_variables_or_fixed() -> None:
    on_page = timeline_svg(sample_record(), by="dish", width=900)
    assert "var(--drawing-ink, #211e1b)" in on_page
    for scheme in (Scheme.DAY, Scheme.NIGHT, Scheme.GREY):
        assert "var(" not in timeline_svg(sample_record(), by="dish", width=900, scheme=scheme)


def test_grey_has_no_colour_in_it() -> None:
    svg = timeline_svg(made_up_record(60), by="gear", width=900, scheme=Scheme.GREY)
    colours = set(re.findall(r'"#([0-9a-f]{6})"', svg))
    assert colours
    assert all(colour[:2] == colour[2:4] == colour[4:] for colour in colours)


def test_drawings_of_one_page_share_no_id() -> None:
    drawings: list[tuple[By, Layout]] = [("dish", "wide"), ("dish", "tall"), ("helper", "wide"), ("gear", "wide")]
    ids = [
        found
        for by, layout in drawings
        for found in re.findall(r' id="([^"]+)"', timeline_svg(sample_record(), by=by, width=900, layout=layout))
    ]
    assert len(ids) == len(set(ids)) == 12


def test_every_pattern_that_is_used_is_there() -> None:
    svg = timeline_svg(sample_record(), by="dish", width=900)
    assert set(re.findall(r"url\(#([^)]+)\)", svg)) <= set(re.findall(r' id="([^"]+)"', svg))


@pytest.mark.parametrize(("layout", "width"), [("wide", 900), ("tall", 320)])
def test_an_event_without_a_plan_says_what_stands_in_the_way(layout: Literal["wide", "tall"], width: int) -> None:
    svg = timeline_svg(sample_record_without_plan(), by="dish", width=width, layout=layout)
    text = " ".join(" ".join(parse(svg).itertext()).split())
    assert "Nobody with the fire skill is there from 15:50 to 16:30" in text
    assert "Have someone with the fire skill there" in text


@pytest.mark.parametrize(("layout", "width"), [("wide", 559), ("tall", 259)])
def test_a_width_that_cannot_be_read_is_refused(layout: Literal["wide", "tall"], width: int) -> None:
    with pytest.raises(ValueError, match="at least"):
        timeline_svg(sample_record(), by="dish", width=width, layout=layout)


def test_the_tall_drawing_folds_long_empty_stretches_away() -> None:
    svg = timeline_svg(made_up_record(60), by="dish", width=390, layout="tall")
    assert re.search(r"\d h \d+ min without a task here", svg)
    assert "without a task here" not in timeline_svg(made_up_record(60), by="dish", width=900)


def test_the_same_record_gives_the_same_drawing() -> None:
    assert timeline_svg(made_up_record(60), by="gear", width=900) == timeline_svg(
        made_up_record(60), by="gear", width=900
    )


def test_the_drawing_of_the_fire_has_each_oven_and_its_coals() -> None:
    root = parse(fire_svg(sample_record(), width=1000))
    text = " ".join(root.itertext())
    assert "12-inch oven A" in text
    assert "Smoky bean pot: 8 on the lid, 17 under" in text
    assert {"beans.bake", "beans.top_up", "crumble.bake"} <= {one.task for one in drawn_tasks(root)}
