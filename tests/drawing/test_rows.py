"""What stands in which row."""

from dataclasses import replace
from zoneinfo import ZoneInfo

from cookout.drawing.rows import EVERYONE, most_at_once, oven_rows, rows_of, steps_of
from cookout.drawing.voice import Voice
from tests.samples import ZONE_NAME, at, sample_record

VOICE = Voice(ZoneInfo(ZONE_NAME))


def test_by_dish_the_whole_events_tasks_come_first_and_dishes_follow() -> None:
    rows = rows_of(sample_record(), "dish", VOICE)
    assert [row.label for row in rows] == ["For everyone", "Smoky bean pot", "Apple crumble à la Brandão"]
    assert rows[1].note == "on the table 18:30"


def test_by_dish_lighting_and_ashing_over_are_left_to_the_firings() -> None:
    shown = {mark.task.id for row in rows_of(sample_record(), "dish", VOICE) for mark in row.marks}
    assert not shown & {"fire1.light", "fire1.ash", "fire2.light", "fire2.ash"}
    assert {"set_up", "drown"} <= shown


def test_by_helper_a_row_has_all_that_the_helper_does_and_when_they_are_there() -> None:
    rows = {row.label: row for row in rows_of(sample_record(), "helper", VOICE)}
    tomasz = rows["Tomasz Okoro-Lind"]
    assert len(tomasz.marks) == 7
    assert len(tomasz.present) == 2
    assert tomasz.note == "15:30 to 18:30"


def test_by_gear_each_named_piece_has_a_row_and_counted_gear_one_for_all() -> None:
    labels = [row.label for row in rows_of(sample_record(), "gear", VOICE)]
    assert labels == [
        "12-inch oven A", "10-inch oven A", "Chimney A", "Cooking table, spot 1", "Cooking table, spot 2",
        "Mixing bowl", "Cooling rack",
    ]  # fmt: skip


def test_ticks_find_their_bake_without_links_by_dish_and_time() -> None:
    rows = rows_of(replace(sample_record(), links=()), "dish", VOICE)
    bakes = {mark.task.id: [tick.id for tick in mark.ticks] for row in rows for mark in row.marks if mark.ticks}
    assert bakes == {"beans.bake": ["beans.top_up"], "crumble.bake": ["crumble.turn", "crumble.look_in"]}


def test_a_tick_outside_any_bake_stands_on_its_own() -> None:
    record = sample_record()
    bake = next(task for task in record.tasks if task.id == "crumble.bake")
    without = replace(record, tasks=tuple(task for task in record.tasks if task is not bake), links=(), bakes=())
    shown = {mark.task.id for row in rows_of(without, "dish", VOICE) for mark in row.marks}
    assert {"crumble.turn", "crumble.look_in"} <= shown


def test_each_oven_has_its_bakes_and_top_ups() -> None:
    rows = oven_rows(sample_record(), VOICE)
    assert [(row.label, [mark.task.id for mark in row.marks]) for row in rows] == [
        ("12-inch oven A", ["beans.bake"]),
        ("10-inch oven A", ["crumble.bake"]),
    ]
    assert [tick.id for tick in rows[0].marks[0].ticks] == ["beans.top_up"]


def test_rows_have_keys_by_which_one_alone_can_be_asked_for() -> None:
    record = sample_record()
    assert [row.key for row in rows_of(record, "dish", VOICE)] == [EVERYONE, "beans", "crumble"]
    assert [row.label for row in rows_of(record, "dish", VOICE, only="crumble")] == ["Apple crumble à la Brandão"]
    assert [row.label for row in rows_of(record, "helper", VOICE, only="tomasz")] == ["Tomasz Okoro-Lind"]
    assert rows_of(record, "dish", VOICE, only="nothing-of-that-name") == ()


def test_the_key_of_a_kind_of_gear_asks_for_all_its_pieces() -> None:
    table = next(gear.id for gear in sample_record().gear if gear.kind == "table")
    labels = [row.label for row in rows_of(sample_record(), "gear", VOICE, only=table)]
    assert labels == ["Cooking table, spot 1", "Cooking table, spot 2"]


def test_from_afar_pieces_that_are_no_ovens_are_counted_together() -> None:
    rows = {row.label: row for row in rows_of(sample_record(), "gear", VOICE, "day")}
    assert rows["Cooking table"].capacity == 2
    assert rows["Cooking table"].note == "at most 2 of 2 in use"
    assert "12-inch oven A" in rows
    assert "Cooking table, spot 1" not in rows


def test_pieces_in_use_are_counted_moment_by_moment() -> None:
    uses = [(at("16:00"), at("17:00"), 2), (at("16:30"), at("17:30"), 1), (at("17:00"), at("17:10"), 1)]
    steps = [(f"{moment:%H:%M}", count) for moment, count in steps_of(uses)]
    # 16:00 two; 16:30 three; 17:00 two go and one comes; 17:10 one; 17:30 none.
    assert steps == [("16:00", 2), ("16:30", 3), ("17:00", 2), ("17:10", 1), ("17:30", 0)]
    assert most_at_once(uses) == 3


def test_from_near_by_a_task_says_how_long_it_takes_and_who_does_it_but_no_row_names_its_own_helper() -> None:
    by_dish = {
        mark.task.id: mark.texts[0] for row in rows_of(sample_record(), "dish", VOICE, "minute") for mark in row.marks
    }
    assert by_dish["set_up"] == "Set up table, water and shovel, 20 min; Runa Velde, Tomasz Okoro-Lind"
    runa = rows_of(sample_record(), "helper", VOICE, "minute", only="runa")[0]
    assert runa.marks[0].texts[0] == "Set up table, water and shovel, 20 min; Tomasz Okoro-Lind"


def test_a_pinned_task_says_so() -> None:
    record = sample_record()
    pinned = replace(record, tasks=tuple(replace(task, pinned=("time",)) for task in record.tasks))
    texts = [text for row in rows_of(pinned, "dish", VOICE) for mark in row.marks for text in mark.texts]
    assert texts
    assert all(text.endswith(", pinned") for text in texts)
