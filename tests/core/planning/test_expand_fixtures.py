"""The three events that ship with the program: large enough to show the job, and with all they need."""

from pathlib import Path

import pytest

from cookout.core.eventfile import read_event
from cookout.core.planning.expand import expand

EVENTS = Path(__file__).parents[3] / "fixtures" / "events"


@pytest.mark.parametrize(
    ("name", "least", "most"), [("supper", 15, 25), ("demonstration", 50, 75), ("festival", 350, 500)]
)
def test_each_event_has_the_size_it_is_meant_to_have(name: str, least: int, most: int) -> None:
    file = EVENTS / f"{name}.toml"
    made = expand(read_event(file.read_text(encoding="utf-8"), file.name))
    assert least <= len(made.problem.tasks) <= most
    assert all(len(need.options) >= need.picks for task in made.problem.tasks for need in task.needs)
    assert made.warnings == ()
