"""What stands in which row."""

from dataclasses import replace

from cookout.drawing.rows import oven_rows, rows_of
from tests.samples import sample_record


def test_by_dish_the_whole_events_tasks_come_first_and_dishes_follow() -> None:
    rows = rows_of(sample_record(), "dish")
    assert [row.label for row in rows] == ["For everyone", "Smoky bean pot", "Apple crumble à la Brandão"]
    assert rows[1].note == "on the table 18:30"


def test_by_dish_lighting_and_ashing_over_are_left_to_the_firings() -> None:
    shown = {mark.task.id for row in rows_of(sample_record(), "dish") for mark in row.marks}
    assert not shown & {"fire1.light", "fire1.ash", "fire2.light", "fire2.ash"}
    assert {"set_up", "drown"} <= shown


def test_by_helper_a_row_has_all_that_the_helper_does_and_when_they_are_there() -> None:
    rows = {row.label: row for row in rows_of(sample_record(), "helper")}
    tomasz = rows["Tomasz Okoro-Lind"]
    assert len(tomasz.marks) == 7
    assert len(tomasz.present) == 2
    assert tomasz.note == "15:30 to 18:30"


def test_by_gear_each_named_piece_has_a_row_and_counted_gear_one_for_all() -> None:
    labels = [row.label for row in rows_of(sample_record(), "gear")]
    assert labels == [
        "12-inch oven A", "10-inch oven A", "Chimney A", "Cooking table, spot 1", "Cooking table, spot 2",
        "Mixing bowl", "Cooling rack",
    ]  # fmt: skip


def test_ticks_find_their_bake_without_links_by_dish_and_time() -> None:
    rows = rows_of(replace(sample_record(), links=()), "dish")
    bakes = {mark.task.id: [tick.id for tick in mark.ticks] for row in rows for mark in row.marks if mark.ticks}
    assert bakes == {"beans.bake": ["beans.top_up"], "crumble.bake": ["crumble.turn", "crumble.look_in"]}


def test_a_tick_outside_any_bake_stands_on_its_own() -> None:
    record = sample_record()
    bake = next(task for task in record.tasks if task.id == "crumble.bake")
    without = replace(record, tasks=tuple(task for task in record.tasks if task is not bake), links=(), bakes=())
    shown = {mark.task.id for row in rows_of(without, "dish") for mark in row.marks}
    assert {"crumble.turn", "crumble.look_in"} <= shown


def test_each_oven_has_its_bakes_and_top_ups() -> None:
    rows = oven_rows(sample_record())
    assert [(row.label, [mark.task.id for mark in row.marks]) for row in rows] == [
        ("12-inch oven A", ["beans.bake"]),
        ("10-inch oven A", ["crumble.bake"]),
    ]
    assert [tick.id for tick in rows[0].marks[0].ticks] == ["beans.top_up"]
