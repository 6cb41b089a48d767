"""The three events on paper: coals, top-ups, minutes and the figures of food safety, in the user's units."""

from functools import cache
from pathlib import Path

import pytest

from cookout.core.eventfile import read_event
from cookout.core.planning.event import Event
from cookout.core.planning.lists import allergen_card, leftovers, measure_out, packing, shopping
from cookout.core.planning.pipeline import plan_event
from cookout.core.planning.record import PlanRecord
from cookout.core.planning.result import Limits
from cookout.core.planning.wording import HourStyle
from cookout.sheets import Paper, Printing, coal_plan_pdf, run_sheet_pdf
from tests.sheets.printed import SHEETS, Lists, codes_on, drawn, pages_of, squeezed, text_of

EVENTS = Path(__file__).parents[2] / "fixtures" / "events"
NAMES = ("supper", "demonstration", "festival")


def the_event(name: str) -> Event:
    """One of the events that come along."""
    return read_event((EVENTS / f"{name}.toml").read_text(encoding="utf-8"), name)


@cache
def planned(name: str) -> PlanRecord:
    """A plan of it."""
    return plan_event(the_event(name), Limits(seconds=2, workers=1, seed=1)).record


@cache
def lists_of(name: str) -> Lists:
    """What its lists hold."""
    event, record = the_event(name), planned(name)
    return Lists(
        shopping(event, record.units),
        packing(event, record, record.units),
        measure_out(event, record.units),
        leftovers(event, record, record.units),
        allergen_card(event, record),
    )


@cache
def on_paper(name: str) -> tuple[str, str]:
    """The words of its run sheet and of its coal plan."""
    record = planned(name)
    return text_of(run_sheet_pdf(record)), text_of(coal_plan_pdf(record))


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


@pytest.mark.parametrize("sheet", SHEETS)
@pytest.mark.parametrize("name", NAMES)
@pytest.mark.parametrize(("paper", "hours"), [("a4", "24"), ("letter", "12")])
def test_every_sheet_of_every_event_is_printed_with_its_code(
    name: str, sheet: str, paper: Paper, hours: HourStyle
) -> None:
    address = f"https://cookout.example/events/{name}/{sheet.replace(' ', '-')}/"
    pdf = SHEETS[sheet](planned(name), Printing(paper=paper, hours=hours, address=address, revision=7), lists_of(name))
    assert 1 <= len(pages_of(pdf)) <= 60
    assert squeezed("revision 7, printed from cookout.example") in text_of(pdf)
    assert codes_on(drawn(pdf, dpi=120, last=1)[0]) == [address]


@pytest.mark.parametrize("name", NAMES)
def test_everything_to_buy_and_to_bring_stands_on_its_list(name: str) -> None:
    lists = lists_of(name)
    for sheet, wanted in (
        ("shopping", [f"{line.text} {line.name}" for aisle in lists.aisles for line in aisle.lines if not line.also]),
        ("packing", [item.name for group in lists.groups for item in group.items]),
        ("measuring", [f"{m.text} {m.name}" for dish in lists.measures for bag in dish.bags for m in bag.measures]),
        ("leftovers", [dish.name for dish in lists.left.dishes]),
        ("table cards", [dish.name for serving in lists.card.servings for dish in serving.dishes]),
    ):
        text = text_of(SHEETS[sheet](planned(name), Printing(), lists))
        assert wanted
        assert [words for words in wanted if squeezed(words) not in text] == []
