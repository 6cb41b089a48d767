"""The timeline in a terminal."""

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from cookout.drawing.lettering import cells
from cookout.sheets import terminal_timeline
from cookout.sheets.terminal import fitted, folded, padded
from tests.drawing.made_up import made_up_record
from tests.samples import sample_record, sample_record_without_plan


@pytest.mark.parametrize("width", [40, 63, 64, 80, 91, 92, 100, 200])
@pytest.mark.parametrize("tasks", [60, 400])
def test_no_line_is_wider_than_asked_for(tasks: int, width: int) -> None:
    lines = terminal_timeline(made_up_record(tasks), width).splitlines()
    assert max(map(cells, lines)) <= width
    assert all(line == line.rstrip() for line in lines)


def test_every_task_has_a_line_with_its_times() -> None:
    record = sample_record()
    lines = terminal_timeline(record, 140).splitlines()
    for task in record.tasks:
        span = f"{task.starts_at:%H:%M}-{task.ends_at:%H:%M}"
        assert any(line.strip().startswith(span) and task.name[:20] in line for line in lines)


def test_tasks_stand_under_their_dish_in_time_order() -> None:
    text = terminal_timeline(sample_record())
    beans = text.partition("\nSmoky bean pot\n")[2].partition("\n\n")[0].splitlines()
    assert [line.strip()[:5] for line in beans] == ["15:50", "16:15", "16:20", "16:25", "16:55", "17:55", "18:25"]


def test_status_and_servings_come_first() -> None:
    head = terminal_timeline(sample_record()).partition("For everyone")[0]
    assert "proved best: 24 tasks" in head
    assert "18:30  Supper for 8" in head or "18:30 Supper for 8" in head
    assert "Smoky bean pot: ready 18:30, on time" in head


def test_a_late_serving_is_told() -> None:
    record = sample_record()
    late = replace(record, servings=tuple(replace(serving, late_minutes=9) for serving in record.servings))
    assert "9 min late" in terminal_timeline(late)


def test_bars_stand_under_one_another_in_time() -> None:
    lines = terminal_timeline(sample_record(), 100).splitlines()
    simmer = next(line for line in lines if " Simmer " in line)
    lay = next(line for line in lines if "Lay coals: 8" in line)
    serve = next(line for line in lines if "Serve the beans" in line)
    assert lay.index("▓") < simmer.index("═") < simmer.rindex("═") < serve.index("◆")
    assert simmer.count("═") > 10


def test_wide_letters_keep_the_bars_in_line() -> None:
    record = sample_record()
    wide = replace(record.tasks[0], name="火を囲む準備とテーブルの設置をします")
    lines = terminal_timeline(replace(record, tasks=(wide, *record.tasks[1:])), 100).splitlines()
    narrow = terminal_timeline(record, 100).splitlines()
    before, after = (next(line for line in found if "15:30-15:50" in line) for found in (narrow, lines))
    assert cells(before[: before.index("█")]) == cells(after[: after.index("█")])


def test_names_cannot_steer_the_terminal() -> None:
    record = sample_record()
    nasty = replace(record.tasks[0], name="\x1b[31mred\x07\r\n\u202etxet\x9b2J")
    text = terminal_timeline(replace(record, event_name="\x1b]0;title\x07", tasks=(nasty, *record.tasks[1:])))
    assert all(letter == "\n" or letter.isprintable() for letter in text)
    assert "[31mred" in text


def test_an_event_without_a_plan_says_why_and_what_helps() -> None:
    text = terminal_timeline(sample_record_without_plan())
    assert "impossible as it stands" in text
    assert "- Nobody with the fire skill is there" in text
    assert "+ way out: Have someone with the fire skill there" in text


def test_too_narrow_a_terminal_is_refused() -> None:
    with pytest.raises(ValueError, match="at least 40 columns"):
        terminal_timeline(sample_record(), 39)


@given(st.text(max_size=40), st.integers(1, 30))
def test_a_fitted_text_fits_and_a_padded_one_fills(text: str, width: int) -> None:
    assert cells(fitted(text, width)) <= width
    assert cells(padded(text, width)) == width


@given(st.text(max_size=80), st.integers(10, 30))
def test_folded_lines_fit(text: str, width: int) -> None:
    assert all(cells(line) <= width for line in folded(text, width, indent=4))
