"""Dishes as tasks: batches, pans, the recipe's waits, servings."""

import pytest

from cookout.core.kitchen.recipe import GearUse, Keeps, Scope, StepKind
from cookout.core.planning.event import GearKind
from cookout.core.planning.expand import expand
from cookout.core.planning.expanded import TaskKind
from cookout.core.planning.problem import EVENT_AIMS, Due, Freshness, TaskId
from tests.core.planning.build import (
    after,
    dish,
    event,
    gear,
    layer_cake,
    recipe,
    serving,
    step,
    usual_gear,
)
from tests.core.planning.reading import gear as gear_of
from tests.core.planning.reading import ids, info, linked, task, waits

COLD = recipe("slaw", (step("chop", StepKind.PREPARE, 15),))


@pytest.mark.parametrize(("people", "batches"), [(1, 1), (8, 1), (9, 2), (16, 2), (17, 3)])
def test_headcount_decides_the_batches(people: int, batches: int) -> None:
    made = expand(event(servings=(serving(people=people),)))
    assert ids(made, TaskKind.BAKE) == [f"bread.b{batch}.bake" for batch in range(1, batches + 1)]


def test_a_dishs_own_number_of_people_comes_before_the_servings() -> None:
    made = expand(event(dishes=(dish(people=20),)))
    assert len(made.bake_runs) == 3


def test_each_scope_has_its_copies_and_each_copy_its_own_links() -> None:
    # 16 people, 8 a batch, 2 pans: 2 mixes, 4 bakes, 4 coolings, 1 icing.
    made = expand(event((layer_cake(),), servings=(serving(people=16),)))
    assert ids(made, TaskKind.MIX) == ["cake.b1.mix", "cake.b2.mix"]
    assert ids(made, TaskKind.COOL) == [f"cake.b{b}.p{p}.cool" for b in (1, 2) for p in (1, 2)]
    assert ids(made, TaskKind.ICE) == ["cake.ice"]
    assert linked(made, "cake.b1.mix") == {"cake.b1.p1.bake.load", "cake.b1.p2.bake.load"}
    assert linked(made, "cake.b2.p1.bake.out") == {"cake.b2.p1.cool", "drown"}


def test_icing_waits_for_all_its_layers_to_cool() -> None:
    made = expand(event((layer_cake(),)))
    assert waits(made, "cake.b1.p1.cool", "cake.ice") == (40, 90)
    assert waits(made, "cake.b1.p2.cool", "cake.ice") == (40, 90)


def test_the_names_of_copies_say_batch_and_pan_where_there_are_several() -> None:
    made = expand(event((layer_cake(),), servings=(serving(people=16),)))
    assert info(made, "cake.b2.p1.cool").name == "Cool, batch 2 pan 1"
    assert info(made, "cake.ice").name == "Ice"


def test_a_plain_step_has_its_usual_minutes_its_gear_and_its_note() -> None:
    kit = (*usual_gear(), gear("whisk-1", GearKind.MIXER), gear("whisk-2", GearKind.MIXER, 2))
    batter = recipe(steps=(step("mix", usual=12, least=8, gear=(GearUse("mixer"),)),))
    made = expand(event((batter,), kit=kit))
    assert task(made, "bread.mix").minutes == 12
    assert gear_of(made, "bread.mix") == [(["whisk-1", "whisk-2"], 1)]


def test_gear_that_no_single_item_has_enough_of_is_gathered_from_several() -> None:
    kit = (gear("bowl-a", GearKind.BOWL, 2), gear("bowl-b", GearKind.BOWL, 3))
    batter = recipe(steps=(step("mix", gear=(GearUse("bowl", 4),)),))
    assert gear_of(expand(event((batter,), kit=kit)), "bread.mix") == [(["bowl-b"], 3), (["bowl-a"], 1)]


def test_gear_that_nobody_has_leaves_the_need_open() -> None:
    batter = recipe(steps=(step("mix", gear=(GearUse("mixer"),)),))
    assert gear_of(expand(event((batter,))), "bread.mix") == [([], 1)]


def test_serving_ends_within_its_tolerance_and_is_due_on_time() -> None:
    # Due at 360, 10 min either way, 5 min of serving: starts at 345 or later, ends by 370.
    made = expand(event((COLD,)))
    serves = task(made, "slaw.s.serve")
    assert (serves.minutes, serves.earliest, serves.latest) == (5, 345, 370)
    assert made.problem.dues == (Due(TaskId("slaw.s.serve"), 360),)
    assert made.serves == {("s", "slaw"): "slaw.s.serve"}


def test_a_roast_rests_before_it_is_served_and_its_freshness_counts_from_the_better_minute() -> None:
    made = expand(event((recipe("slaw", COLD.steps, rests=15, best_within=40, keeps=Keeps(air=60)),)))
    assert waits(made, "slaw.chop", "slaw.s.serve") == (15, 60)
    assert made.problem.freshness == (Freshness(TaskId("slaw.chop"), TaskId("slaw.s.serve"), free=40),)


@pytest.mark.parametrize(("held", "most"), [("air", 60), ("hot", 90), ("cold", 240)])
def test_a_dish_waits_no_longer_than_it_keeps_the_way_it_is_held(held: str, most: int) -> None:
    made = expand(event((recipe("slaw", COLD.steps, held=held, keeps=Keeps(hot=90, cold=240, air=60)),)))
    assert waits(made, "slaw.chop", "slaw.s.serve") == (0, most)


def test_every_copy_of_every_last_step_comes_before_serving() -> None:
    parts = (step("roll", scope=Scope.PAN), step("dip", StepKind.FINISH))
    made = expand(event((recipe("rolls", parts, pans=2),)))
    assert {each for each in ids(made) if "rolls.s.serve" in linked(made, each)} == {
        "rolls.b1.p1.roll",
        "rolls.b1.p2.roll",
        "rolls.dip",
    }
    assert len(made.problem.freshness) == 3


def test_waits_are_told_in_words() -> None:
    parts = (
        step("mix"),
        step("rise", StepKind.REST, hands=0, after=("mix",)),
        step("shape", after=(after("rise", 5),)),
    )
    made = expand(event((recipe(steps=parts),)))
    why = {(each.before, each.after): each.why for each in made.problem.links}
    assert why[TaskId("bread.mix"), TaskId("bread.rise")] == "Rise: after Mix"
    assert why[TaskId("bread.rise"), TaskId("bread.shape")] == "Shape: at least 5 min after Rise"


def test_ids_that_would_meet_are_kept_apart() -> None:
    # Dish "a" in batches and dish "a.b1" as a whole both want the id "a.b1.mix".
    batches, whole = recipe("r", (step("mix", scope=Scope.BATCH),)), recipe("w", (step("mix"),))
    made = expand(event((batches, whole), (dish("a", "r"), dish("a.b1", "w"))))
    assert ids(made, TaskKind.MIX) == ["a.b1.mix", "a.b1.mix~2"]
    assert linked(made, "a.b1.mix~2") == {"a.b1.s.serve"}


def test_an_event_is_judged_by_the_four_aims_in_order() -> None:
    assert expand(event()).problem.aims == EVENT_AIMS
