"""A demo slot's running order: added up while it is written, and told in the plan in the order written."""

from dataclasses import replace
from pathlib import Path

import pytest

from cookout.core.eventfile import read_event
from cookout.core.kitchen.recipe import FoodKind, Keeps, StepId
from cookout.core.planning.event import DishId, Event, LiveStep, Talk, Taste
from cookout.core.planning.obstacles import find_obstacles
from cookout.core.planning.pipeline import plan_event
from cookout.core.planning.result import Limits, Status
from cookout.core.planning.running_order import minutes_left, running_order
from cookout.core.planning.ways_out import apply_change
from tests.core.planning.build import dish, event, layer_cake, recipe, slot, step

DEMONSTRATION = Path(__file__).parents[3] / "fixtures" / "events" / "demonstration.toml"
LIMITS = Limits(seconds=5, workers=2, seed=1)


@pytest.fixture(scope="module")
def show() -> Event:
    return read_event(DEMONSTRATION.read_text(encoding="utf-8"), DEMONSTRATION.name)


def test_the_parts_of_a_running_order_follow_one_another_and_are_added_up_against_the_slot(show: Event) -> None:
    # Mixing 12 min, a talk of 4, icing 22, a tasting of 6: 44 of 48.
    lines = running_order(show, show.slots[0])
    assert [(line.begins, line.minutes) for line in lines] == [(0, 12), (12, 4), (16, 22), (38, 6)]
    assert [line.name for line in lines] == [
        "Mix the batter: Carrot layer cake",
        "Talk: Why the lid carries more coals",
        "Fill and ice the cake: Carrot layer cake",
        "Taste: A sliver of the twin",
    ]
    assert minutes_left(show, show.slots[0]) == 4


@pytest.mark.parametrize(("live", "minutes"), [("mix", 30), ("cool", 10)])
def test_a_live_step_takes_the_minutes_of_all_its_batches_and_what_nobody_attends_goes_on_at_once(
    live: str, minutes: int
) -> None:
    # A cake for 8, made for 16 in two batches of two pans: mixing takes 15 min a batch; all four layers cool in 10.
    made = event((layer_cake(),), (dish("cake", serving=None, people=16),), slots=(slot(live=(("cake", live),)),))
    assert running_order(made, made.slots[0])[0].minutes == minutes
    assert minutes_left(made, made.slots[0]) == 60 - minutes


def test_a_step_that_is_not_there_is_a_key_error() -> None:
    made = event((recipe(),), slots=(slot(live=(("bread", "glaze"),)),))
    with pytest.raises(KeyError):
        running_order(made, made.slots[0])


def test_the_plan_shows_everything_in_the_order_written_and_the_demonstration_stays_proved_best(show: Event) -> None:
    record = plan_event(show, LIMITS).record
    assert record.status is Status.PROVED_BEST
    tasks = {task.id: task for task in record.tasks}
    (planned,) = record.slots
    assert planned.live == (
        "raw-batch.b1.mix",
        "show.talk.1",
        "show-cake.b1.fill-and-ice",
        "show.taste.1",
    )
    assert [tasks[each].kind for each in planned.live] == ["mix", "talk", "ice", "taste"]
    assert {tasks[each].helpers for each in planned.live} == {("odette",)}
    for before, after in zip(planned.live, planned.live[1:], strict=False):
        assert tasks[before].ends_at <= tasks[after].starts_at
    iced = max(task.ends_at for task in record.tasks if task.id.startswith("twin-cake.") and task.kind == "ice")
    assert iced <= tasks["show.taste.1"].starts_at


def test_parts_that_do_not_fit_are_told_with_their_sum_and_a_longer_slot_is_the_way_out(show: Event) -> None:
    (first,) = show.slots
    too_full = replace(show, slots=(replace(first, live=(*first.live, Talk("Questions", 15))),))
    assert minutes_left(too_full, too_full.slots[0]) == -11
    found = find_obstacles(too_full, replace(LIMITS, seconds=2))
    said = "What is shown at From batter to iced cake takes 59 min, and the slot lasts 48 min."
    assert found.obstacles[0] == said
    way = found.ways_out[0]
    assert way.change == {"kind": "lengthen_slot", "slot": "show", "minutes": 11}
    assert plan_event(apply_change(too_full, way.change), LIMITS).record.tasks


def test_food_that_is_only_tasted_is_judged_for_safety_like_what_is_served(show: Event) -> None:
    (first,) = show.slots
    only_tasted = tuple(replace(d, serving=None) if d.id == "twin-cake" else d for d in show.dishes)
    record = plan_event(replace(show, dishes=only_tasted), LIMITS).record
    (twin,) = [each for each in record.safety if each.dish == "twin-cake"]
    assert twin.out_minutes is not None
    untasted = tuple(item for item in first.live if not isinstance(item, Taste))
    without = plan_event(replace(show, dishes=only_tasted, slots=(replace(first, live=untasted),)), LIMITS).record
    (twin,) = [each for each in without.safety if each.dish == "twin-cake"]
    assert twin.out_minutes is None


def test_food_that_is_tasted_after_it_was_served_is_judged_until_the_tasting() -> None:
    # Served at six and tasted three quarters of an hour later, at the earliest.
    salad = recipe("salad", (step("mix"),), food=FoodKind.RAW_VEGETABLES, keeps=Keeps(air=120))
    later = slot(starts_at=405, length=20, live=(Taste("Salad", 5, DishId("salad")),))
    out = {}
    for name, slots in (("served", ()), ("tasted", (later,))):
        (told,) = plan_event(event((salad,), (dish("salad"),), slots=slots), LIMITS).record.safety
        assert told.out_minutes is not None
        out[name] = told.out_minutes
    assert out["served"] < 30
    assert out["tasted"] >= 45


def test_a_slot_knows_its_steps_tastings_and_dishes_apart(show: Event) -> None:
    (first,) = show.slots
    assert first.live_steps == (
        LiveStep(DishId("raw-batch"), StepId("mix")),
        LiveStep(DishId("show-cake"), StepId("fill-and-ice")),
    )
    assert first.tasted == {"twin-cake"}
    assert first.dishes == {"raw-batch", "show-cake", "twin-cake"}
