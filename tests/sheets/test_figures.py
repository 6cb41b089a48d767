"""The three events on paper: coals, top-ups, minutes and the figures of food safety, in the user's units."""

from functools import cache
from io import BytesIO
from pathlib import Path

import pytest
from pypdf import PdfReader

from cookout.core.eventfile import read_event
from cookout.core.planning.pipeline import plan_event
from cookout.core.planning.record import PlanRecord
from cookout.core.planning.result import Limits
from cookout.sheets import coal_plan_pdf, run_sheet_pdf

EVENTS = Path(__file__).parents[2] / "fixtures" / "events"
NAMES = ("supper", "demonstration", "festival")


@cache
def planned(name: str) -> PlanRecord:
    """A plan of one of the events that come along."""
    event = read_event((EVENTS / f"{name}.toml").read_text(encoding="utf-8"), name)
    return plan_event(event, Limits(seconds=2, workers=1, seed=1)).record


def squeezed(text: str) -> str:
    """Without spaces and hyphens, which the typesetter puts where lines break."""
    return "".join(text.split()).replace("-", "").replace("\u200b", "").replace("\xad", "")


@cache
def on_paper(name: str) -> tuple[str, str]:
    """The words of its run sheet and of its coal plan."""
    record = planned(name)
    sheets = (PdfReader(BytesIO(make(record))) for make in (run_sheet_pdf, coal_plan_pdf))
    run, coals = (squeezed("".join(page.extract_text() for page in sheet.pages)) for sheet in sheets)
    return run, coals


@pytest.mark.parametrize("name", NAMES)
def test_every_count_of_coals_and_every_top_up_stands_on_the_run_sheet(name: str) -> None:
    run, _ = on_paper(name)
    record = planned(name)
    tasks = {task.id: task for task in record.tasks}
    assert record.bakes
    for bake in record.bakes:
        where = f"{bake.lid} coals on the lid, {bake.under} under" if bake.lid else f"{bake.under} coals under"
        assert squeezed(where) in run
        assert all(squeezed(tasks[task].detail) in run for task, _ in bake.top_ups)


@pytest.mark.parametrize("name", NAMES)
def test_the_figures_of_every_dish_and_its_allergens_stand_on_the_run_sheet(name: str) -> None:
    run, _ = on_paper(name)
    record = planned(name)
    assert record.safety
    for figures in record.safety:
        assert squeezed(figures.held[1:]) in run
        assert squeezed(figures.centre) in run
    assert all(squeezed(allergens.text) in run for allergens in record.allergens)


@pytest.mark.parametrize(("name", "ours", "theirs"), [("supper", "°F", "°C"), ("festival", "°C", "°F")])
def test_figures_are_in_the_users_units_and_in_no_other(name: str, ours: str, theirs: str) -> None:
    record = planned(name)
    texts = [figures.centre + figures.held for figures in record.safety]
    texts += [text for bake in record.bakes for text in (bake.temperature, bake.weather)]
    assert any(ours in text for text in texts)
    assert not any(theirs in text for text in texts)


@pytest.mark.parametrize("name", NAMES)
def test_the_fuel_of_the_whole_event_stands_on_both_sheets(name: str) -> None:
    record = planned(name)
    assert record.fuel is not None
    unit = "kg" if record.units == "metric" else "lb"
    assert record.fuel.mass.endswith(unit)
    for text in on_paper(name):
        assert squeezed(f"{record.fuel.mass} of {record.fuel.kind}") in text
        assert squeezed(f"{record.fuel.chimney_loads} chimney load") in text


@pytest.mark.parametrize("name", NAMES)
def test_the_coal_plan_says_where_coals_go_and_for_how_long(name: str) -> None:
    _, coals = on_paper(name)
    for bake in planned(name).bakes:
        assert squeezed(bake.pattern) in coals
        assert squeezed(f"{bake.least_minutes} to {bake.most_minutes} min, usually {bake.usual_minutes}") in coals
        assert all(squeezed(trouble) in coals for trouble in bake.troubles)


@pytest.mark.parametrize("name", NAMES)
def test_the_checklist_of_the_place_stands_on_the_run_sheet(name: str) -> None:
    run, _ = on_paper(name)
    assert len(planned(name).checklist) >= 10
    assert all(squeezed(check.text) in run for check in planned(name).checklist)
