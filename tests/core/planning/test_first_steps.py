"""An event with little in it yet is told what to add first, in order, and at once."""

from dataclasses import replace
from datetime import date
from pathlib import Path
from zoneinfo import ZoneInfo

from cookout.core.eventfile import read_event, write_event
from cookout.core.eventfile.clock import Clock
from cookout.core.fire.weather import Weather
from cookout.core.planning.event import Event, Fuel, Place, Talk
from cookout.core.planning.first_steps import first_steps
from cookout.core.planning.pipeline import plan_event
from cookout.core.planning.record import PlanRecord
from cookout.core.planning.recordjson import from_json, to_json
from cookout.core.planning.result import Limits, Status
from tests.core.planning.build import dish, event, recipe, slot

LIMITS = Limits(seconds=2, workers=2, seed=1)
SHOW = Path(__file__).parents[3] / "fixtures" / "events" / "demonstration.toml"


def blank() -> Event:
    """An event of which nothing is known but its name, place and day."""
    return Event(
        id="new",
        name="Something new",
        place=Place("Somewhere"),
        timezone="America/Denver",
        origin=Clock(ZoneInfo("America/Denver"), date(2027, 7, 3)).origin,
        weather=Weather(),
        servings=(),
        dishes=(),
        slots=(),
        gear=(),
        fuel=Fuel(),
        crew=(),
        recipes=(),
    )


def planned(made: Event) -> PlanRecord:
    record = plan_event(made, LIMITS).record
    assert from_json(to_json(record)) == record
    return record


def test_a_blank_event_can_be_written_and_is_told_everything_to_add_in_its_order() -> None:
    assert read_event(write_event(blank()), "new.toml") == blank()
    record = planned(blank())
    assert (record.status, record.tasks, record.ways_out) == (Status.IMPOSSIBLE, (), ())
    assert [text.split(":")[0] for text in record.obstacles] == [
        "There is nothing to be ready for yet",
        "There is nothing to cook yet",
        "Nobody helps yet",
        "There is no gear yet",
    ]


def test_what_is_there_already_is_not_asked_for_again() -> None:
    full = read_event(SHOW.read_text(encoding="utf-8"), SHOW.name)
    assert first_steps(full) == ()
    (told,) = planned(replace(full, crew=(), slots=())).obstacles
    assert told.startswith("Nobody helps yet")
    (told,) = planned(replace(full, dishes=(), slots=())).obstacles
    assert told == "There is nothing to cook yet: add a dish for Tasting, made by a recipe of yours."
    assert [text.split(":")[0] for text in first_steps(replace(full, servings=(), dishes=(), slots=(), gear=()))] == [
        "There is nothing to be ready for yet",
        "There is nothing to cook yet",
        "There is no gear yet",
    ]


def test_dishes_that_nobody_is_to_eat_or_see_are_asked_about() -> None:
    (told,) = planned(event((recipe(),), (dish(serving=None),))).obstacles
    assert told == "No dish is to be served or shown yet: choose a serving for each dish."


def test_a_talk_alone_is_something_to_plan() -> None:
    record = planned(event((), (), servings=(), slots=(slot(live=(Talk("Fires", 10),)),)))
    assert [task.id for task in record.tasks] == ["demo.talk.1"]


def test_gear_that_is_missing_alone_is_told_by_what_the_recipes_ask_for() -> None:
    bare = replace(event(), gear=())
    assert first_steps(bare) == ()
    assert any("12-inch oven" in text for text in planned(bare).obstacles)
