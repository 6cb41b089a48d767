"""The timeline as a drawing, read back as XML."""

import re
from dataclasses import asdict, replace
from datetime import UTC, datetime, timedelta
from itertools import combinations, pairwise
from zoneinfo import ZoneInfo

import pytest

from cookout.core.planning.record import PlannedTask, PlanRecord
from cookout.drawing import Links, Scheme, Window, Words, Zoom, fire_svg, timeline_svg
from cookout.drawing.rows import By
from cookout.drawing.zoom import part_of
from tests.drawing.made_up import made_up_record, moment
from tests.drawing.svg_reading import (
    SVG,
    all_boxes,
    by_class,
    drawn_tasks,
    parse,
    task_links,
    tasks_in_rows,
    texts,
    view_box,
)
from tests.samples import TRICKY_TASK, at, sample_record, sample_record_without_plan

RECORDS = {"24 tasks": sample_record(), "60 tasks": made_up_record(60), "400 tasks": made_up_record(400)}
WIDTHS = (1240, 900, 390, 320)
HOSTILE = "<script>alert('1')</script> & \"quoted\" ]]> \x00\x1b[31m {{ x }} \N{RIGHT-TO-LEFT OVERRIDE}"

every_record = pytest.mark.parametrize("record", RECORDS.values(), ids=RECORDS.keys())
every_width = pytest.mark.parametrize("width", WIDTHS)
every_zoom = pytest.mark.parametrize("zoom", ["day", "hour", "minute"])
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
@every_width
@every_way
def test_every_task_is_drawn_as_a_link_that_says_what_it_is(record: PlanRecord, width: int, by: By) -> None:
    drawn = drawn_tasks(parse(timeline_svg(record, by=by, width=width)))
    assert expected(record, by) <= {one.task for one in drawn}
    names = {task.id: task.name for task in record.tasks}
    for one in drawn:
        assert " ".join(names[one.task].split()) in one.label
        assert one.address == f"#task-{one.task}"


@every_record
@every_width
@every_way
def test_no_two_tasks_in_the_rows_overlap_and_no_words_cover_another_task(
    record: PlanRecord, width: int, by: By
) -> None:
    drawn = [one for one in tasks_in_rows(parse(timeline_svg(record, by=by, width=width))) if not one.is_sign]
    assert len(drawn) > 5
    for one, other in combinations(drawn, 2):
        assert not one.shape.overlaps(other.shape), (one.label, other.label)
        for text in one.texts:
            assert not text.overlaps(other.shape), (one.label, other.label)
            assert not any(text.overlaps(beside) for beside in other.texts), (one.label, other.label)


@every_record
@every_width
@every_way
def test_everything_lies_on_the_page(record: PlanRecord, width: int, by: By) -> None:
    root = parse(timeline_svg(record, by=by, width=width))
    page = view_box(root)
    assert page.right == width
    boxes = all_boxes(root)
    assert len(boxes) > 50
    assert [box for box in boxes if not page.holds(box, slack=4)] == []


@every_record
@every_way
@pytest.mark.parametrize("width", [1240, 366])
def test_a_part_of_the_day_lies_on_the_page_too_and_has_just_its_tasks(
    record: PlanRecord, width: int, by: By
) -> None:  # fmt: skip
    middle = sorted(record.tasks, key=lambda task: task.starts_at)[len(record.tasks) // 2].starts_at
    window = Window(middle - timedelta(minutes=20), middle + timedelta(minutes=25))
    root = parse(timeline_svg(record, by=by, width=width, zoom="minute", window=window))
    assert [box for box in all_boxes(root) if not view_box(root).holds(box, slack=4)] == []
    drawn = {one.task for one in drawn_tasks(root)}
    assert drawn
    assert drawn <= {task.id for task in record.tasks if window.touches(task.starts_at, task.ends_at)}
    whole = {task.id for task in record.tasks if window.begins <= task.starts_at and task.ends_at <= window.ends}
    assert expected(record, by) & whole <= drawn


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
    links = {link.attrib["href"].removeprefix("#task-"): link for link in task_links(root)}
    signatures = {
        task: tuple(path.get("class") for path in links[task].findall(f"{SVG}path"))
        for task in ("crumble.slice", "beans.lay", "crumble.cool", "beans.bake", "supper.beans")
    }
    assert signatures == {
        "crumble.slice": ("iron",),
        "beans.lay": ("iron", "teeth"),
        "crumble.cool": ("wait",),
        "beans.bake": ("pot", "coals", "lid"),
        "supper.beans": ("plate", "rim"),
    }


@pytest.mark.parametrize("width", [900, 366])
def test_every_firing_is_drawn_with_its_coals(width: int) -> None:
    root = parse(timeline_svg(sample_record(), by="gear", width=width))
    firings = by_class(root, "firing")
    assert len(firings) == 2
    assert "25 coals" in "".join(firings[0].itertext())
    assert {"rise", "glow", "fade", "base"} <= {path.get("class") for path in firings[0].iter(f"{SVG}path")}


def test_a_firing_is_cut_off_where_the_shown_time_ends() -> None:
    window = Window(at("16:20"), at("16:40"))
    root = parse(timeline_svg(sample_record(), by="dish", width=900, window=window))
    assert by_class(root, "firing")
    assert [box for box in all_boxes(root) if not view_box(root).holds(box, slack=4)] == []


@pytest.mark.parametrize("width", [900, 366])
@every_zoom
def test_servings_and_demo_slots_are_named_with_their_time(width: int, zoom: Zoom) -> None:
    text = " ".join(parse(timeline_svg(sample_record(), by="dish", width=width, zoom=zoom)).itertext())
    assert "18:30 Supper for 8" in text
    assert "16:50 How a crumble goes together" in text


def test_a_late_serving_says_how_late_it_is() -> None:
    record = sample_record()
    late = replace(record, servings=(replace(record.servings[0], late_minutes=7), record.servings[1]))
    text = " ".join(parse(timeline_svg(late, by="dish", width=1240)).itertext())
    assert "18:30 Supper for 8, 7 min late" in text
    assert "7 min late, 18:30" in text


@pytest.mark.parametrize("width", [900, 366])
@every_zoom
def test_now_is_marked_at_its_place_whatever_zone_it_is_told_in(width: int, zoom: Zoom) -> None:
    local = timeline_svg(sample_record(), by="dish", width=width, zoom=zoom, now=at("17:12"))
    elsewhere = timeline_svg(sample_record(), by="dish", width=width, zoom=zoom, now=at("17:12").astimezone(UTC))
    assert local == elsewhere
    assert "now 17:12" in local
    assert 'class="charred"' in local.split('class="key"', maxsplit=1)[0]


def test_now_outside_the_day_and_no_now_mark_nothing() -> None:
    for now in (None, at("17:12") + timedelta(days=2), at("17:12") - timedelta(days=2)):
        drawn = timeline_svg(sample_record(), by="dish", width=900, now=now)
        assert 'class="charred"' not in drawn.split('class="key"', maxsplit=1)[0]


def test_hours_are_those_of_the_events_own_clock_and_evenly_spaced_when_clocks_go_back() -> None:
    # 7 November 2027: clocks in Chicago go from 02:00 back to 01:00, so the hour from 01:00 comes twice.
    zone = ZoneInfo("America/Chicago")
    first = datetime(2027, 11, 7, 5, tzinfo=UTC)
    tasks = tuple(_plain_task(f"t{n}", first + timedelta(minutes=45 * n), zone) for n in range(6))
    record = replace(sample_record(), tasks=tasks, links=(), firings=(), bakes=(), servings=(), slots=())
    root = parse(timeline_svg(record, by="dish", width=900))
    hours = [(text.text, float(text.attrib["x"])) for text in by_class(root, "t-hour")]
    assert [hour for hour, _ in hours] == ["Sun 7", "01:00", "01:00", "02:00", "03:00"]
    gaps = [right - left for (_, left), (_, right) in pairwise(hours)]
    assert max(gaps) - min(gaps) < 0.3


def _plain_task(id: str, starts: datetime, zone: ZoneInfo) -> PlannedTask:
    begins, ends = starts.astimezone(zone), (starts + timedelta(minutes=30)).astimezone(zone)
    return PlannedTask(id, "beans", "Chop", "prepare", begins, ends, ("runa",), {}, True, 0, ())


@every_width
@every_zoom
def test_hostile_words_stay_words(width: int, zoom: Zoom) -> None:
    record = sample_record()
    tasks = tuple(
        replace(task, name=HOSTILE, detail=HOSTILE) if task.id == TRICKY_TASK else task for task in record.tasks
    )
    hostile = replace(record, event_name=HOSTILE, tasks=tasks, dishes={"beans": HOSTILE, "crumble": HOSTILE})
    svg = timeline_svg(hostile, by="dish", width=width, zoom=zoom)
    root = parse(svg)
    assert "<script" not in svg
    assert {element.tag.removeprefix(SVG) for element in root.iter()} <= {
        "svg", "title", "defs", "pattern", "path", "circle", "rect", "text", "g", "a",
    }  # fmt: skip


@pytest.mark.parametrize("zoom", ["day", "hour"])
def test_hostile_addresses_stay_addresses(zoom: Zoom) -> None:
    links = Links('/x"><script>{task}', "/?at={at}&<", "/row/{row}")
    record = replace(sample_record(), dishes={"beans": HOSTILE, "crumble": HOSTILE})
    root = parse(timeline_svg(record, by="dish", width=900, zoom=zoom, links=links))
    assert not list(root.iter(f"{SVG}script"))
    assert "/row/beans" in {link.attrib["href"] for link in root.iter(f"{SVG}a")}


def test_task_ids_are_quoted_in_addresses() -> None:
    record = sample_record()
    odd = replace(record, tasks=(replace(record.tasks[0], id='set "up"#1 é'),), links=(), firings=(), bakes=())
    svg = timeline_svg(odd, by="dish", width=900, links=Links("/tasks/{task}/"))
    assert "/tasks/set%20%22up%22%231%20%C3%A9/" in {link.attrib["href"] for link in parse(svg).iter(f"{SVG}a")}


def test_a_page_may_forbid_inline_styles() -> None:
    svg = timeline_svg(made_up_record(60), by="dish", width=900, now=moment(300))
    assert "<style" not in svg
    assert " style=" not in svg


def test_colours_are_the_pages_or_fixed() -> None:
    on_page = timeline_svg(sample_record(), by="dish", width=900)
    assert not re.search("#[0-9a-f]{6}", on_page)
    for scheme in (Scheme.DAY, Scheme.NIGHT, Scheme.GREY):
        assert "var(" not in timeline_svg(sample_record(), by="dish", width=900, scheme=scheme)


def test_grey_has_no_colour_in_it() -> None:
    svg = timeline_svg(made_up_record(60), by="gear", width=900, scheme=Scheme.GREY)
    colours = set(re.findall(r":#([0-9a-f]{6})", svg))
    assert colours
    assert all(colour[:2] == colour[2:4] == colour[4:] for colour in colours)


def test_drawings_of_one_page_share_no_id() -> None:
    drawings = [timeline_svg(sample_record(), by="dish", width=900, prefix=prefix) for prefix in ("wide", "narrow")]
    ids = [found for svg in drawings for found in re.findall(r' id="([^"]+)"', svg)]
    assert len(ids) == len(set(ids)) == 6


def test_every_pattern_that_is_used_is_there() -> None:
    svg = timeline_svg(sample_record(), by="dish", width=900)
    assert set(re.findall(r"url\(#([^)]+)\)", svg)) <= set(re.findall(r' id="([^"]+)"', svg))


@pytest.mark.parametrize("width", [900, 320])
@every_zoom
def test_an_event_without_a_plan_says_what_stands_in_the_way(width: int, zoom: Zoom) -> None:
    svg = timeline_svg(sample_record_without_plan(), by="dish", width=width, zoom=zoom)
    text = " ".join(" ".join(parse(svg).itertext()).split())
    assert "Nobody with the fire skill is there from 15:50 to 16:30" in text
    assert "Have someone with the fire skill there" in text


def test_a_part_of_the_day_without_a_task_says_so() -> None:
    window = Window(at("10:00"), at("10:30"))
    svg = timeline_svg(sample_record(), by="helper", width=900, window=window)
    assert "Nothing to do between 10:00 and 10:30." in texts(parse(svg))


def test_a_width_that_cannot_be_read_is_refused() -> None:
    with pytest.raises(ValueError, match="at least"):
        timeline_svg(sample_record(), by="dish", width=259)


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


def test_times_are_said_in_the_readers_hours() -> None:
    svg = timeline_svg(sample_record(), by="dish", width=900, hours="12", now=at("17:12"))
    root = parse(svg)
    assert "now 5:12 pm" in texts(root)
    assert {"4 pm", "5 pm", "6 pm"} <= {text.text for text in by_class(root, "t-hour")}
    assert "on the table 6:30 pm" in texts(root)
    assert not re.search(r"\b1[3-9]:\d\d", svg)


def marked_words() -> Words:
    """Every word with a mark before it."""
    marked = {name: f"¤{value}" for name, value in asdict(Words()).items() if isinstance(value, str)}
    return replace(Words(), weekdays=tuple(f"¤{day}" for day in Words().weekdays), **marked)


def test_every_word_can_be_another_language() -> None:
    # Whatever is written without a mark is from the record or a number.
    marked = marked_words()
    record = sample_record()
    own = {task.name for task in record.tasks} | set(record.dishes.values()) | {h.name for h in record.helpers}
    for zoom in ("day", "hour", "minute"):
        for by in ("dish", "helper", "gear"):
            svg = timeline_svg(record, by=by, width=900, zoom=zoom, words=marked, now=at("17:12"))
            told = [text for text in texts(parse(svg)) if re.search("[a-z]{3}", text) and "¤" not in text]
            assert [text for text in told if not _is_of(text, own, record)] == []


def _is_of(text: str, own: set[str], record: PlanRecord) -> bool:
    gear = {unit for task in record.tasks for unit in task.units} | {gear.name for gear in record.gear}
    names = [*own, *gear, *(f"{unit[:1].upper()}{unit[1:]}" for unit in gear)]
    return any(text.rstrip("…") in name or name in text for name in names)


def test_a_task_that_goes_on_beyond_the_shown_time_is_marked() -> None:
    window = Window(at("17:20"), at("17:40"))
    root = parse(timeline_svg(sample_record(), by="dish", width=900, window=window))
    bake = next(link for link in task_links(root) if link.attrib["href"] == "#task-beans.bake")
    assert "lifted" in {path.get("class") for path in bake.iter(f"{SVG}path")}


def test_a_pinned_task_is_marked_by_a_sign_and_by_a_word() -> None:
    record = sample_record()
    pinned = replace(
        record, tasks=tuple(replace(t, pinned=("time",)) if t.id == "crumble.slice" else t for t in record.tasks)
    )
    for zoom in ("day", "hour", "minute"):
        root = parse(timeline_svg(pinned, by="dish", width=900, zoom=zoom))
        marked = [link for link in task_links(root) if [c for c in link if c.get("class") == "pin"]]
        assert [link.attrib["href"] for link in marked] == ["#task-crumble.slice"]
        assert "pinned" in (marked[0].findtext(f"{SVG}title") or "")
        assert "pinned by hand" in texts(root)
    assert "pinned" not in timeline_svg(record, by="dish", width=900)


def test_one_row_alone_shows_its_own_tasks_and_fires_and_fits_its_own_hours() -> None:
    record = made_up_record(400)
    dish = next(iter(record.dishes))
    root = parse(timeline_svg(record, by="dish", width=900, only=dish))
    drawn = {one.task for one in drawn_tasks(root)}
    own = {task.id for task in record.tasks if task.dish == dish}
    assert own <= drawn
    assert {task.dish for task in record.tasks if task.id in drawn} <= {dish, ""}
    assert len(by_class(root, "firing")) == 1


def test_links_lead_where_they_are_told_to() -> None:
    links = Links("/t/{task}", "/look?at={at}", "/row/{row}")
    root = parse(timeline_svg(made_up_record(400), by="helper", width=900, zoom="day", links=links))
    addresses = {link.attrib["href"] for link in root.iter(f"{SVG}a")}
    assert any(re.fullmatch(r"/look\?at=2027-08-14T\d\d%3A\d\d", address) for address in addresses)
    assert "/row/h0" in addresses
    assert any(address.startswith("/t/") for address in addresses)


def test_a_part_of_a_record_keeps_no_link_to_what_it_left_out() -> None:
    part = part_of(sample_record(), Window(at("17:20"), at("17:40")))
    ids = {task.id for task in part.tasks}
    assert ids
    assert all(link.before in ids and link.after in ids for link in part.links)
