"""Demo slots: what is shown, in which order, by whom, and what stands ready."""

from dataclasses import replace

from cookout.core.fire.weather import Weather
from cookout.core.kitchen.recipe import FoodKind, IcingKind, Scope, StepKind
from cookout.core.planning.event import DishId, Event, GearKind, Talk, Taste
from cookout.core.planning.expand import expand
from cookout.core.planning.expanded import TaskKind
from cookout.core.planning.problem import Freshness, TaskId
from tests.core.planning.build import (
    BAKER,
    bake,
    bake_step,
    dish,
    event,
    gear,
    helper,
    layer_cake,
    ready_made,
    recipe,
    serving,
    slot,
    step,
    usual_crew,
    usual_gear,
)
from tests.core.planning.reading import hands, ids, info, linked, task, waits


def shown(*live: str, served: bool = False, up_to: str | None = None, twin: bool = False) -> Event:
    """A layer cake whose `live` steps are shown from 240 to 300, with a twin that stands ready by 240."""
    dishes = [dish("cake", serving="s" if served else None)]
    if twin:
        dishes.append(dish("twin", "cake", None))
    ready = (ready_made("twin", up_to=up_to),) if twin else ()
    return event(
        (layer_cake(),), tuple(dishes), slots=(slot(live=tuple(("cake", each) for each in live), ready=ready),)
    )


def test_a_dish_that_is_only_shown_has_its_live_steps_and_what_they_wait_for() -> None:
    made = expand(shown("cool"))
    assert {each.split(".")[-1] for each in ids(made) if each.startswith("cake.")} == {
        "mix", "load", "lay", "bake", "turn1", "turn2", "look", "out", "cool",
    }  # fmt: skip
    assert made.serves == {}


def test_a_dish_shown_at_its_first_step_alone_goes_no_further() -> None:
    assert ids(expand(shown("mix"))) == ["cake.b1.mix"]


def test_a_dish_that_is_shown_and_served_has_all_its_steps() -> None:
    made = expand(shown("mix", served=True))
    assert "cake.ice" in ids(made)
    assert info(made, "cake.b1.mix").live_in == "demo"
    assert info(made, "cake.ice").live_in is None


def test_live_tasks_stand_inside_their_slot_and_belong_to_the_presenter() -> None:
    made = expand(shown("ice"))
    ice = task(made, "cake.ice")
    assert (ice.earliest, ice.latest) == (240, 300)
    assert hands(made, "cake.ice") == [{"olu"}]
    assert [made.problem.resource_by_id[each].opens for each in ice.needs[0].options] == [240]


def test_what_leads_up_to_a_live_step_is_not_live() -> None:
    made = expand(shown("ice"))
    assert [each for each in ids(made) if info(made, each).live_in] == ["cake.ice"]
    assert task(made, "cake.b1.mix").latest is None


def test_live_steps_follow_one_another_in_the_order_of_the_slot() -> None:
    live = (("b", "mix"), ("a", "mix"))
    dishes = (dish("a", "bread", None), dish("b", "bread", None))
    made = expand(event((recipe(),), dishes, slots=(slot(live=live),)))
    assert linked(made, "b.mix") == {"a.mix"}
    assert linked(made, "a.mix") == set()


def test_all_copies_of_a_live_step_come_before_all_of_the_next() -> None:
    rolls = recipe("rolls", (step("roll", scope=Scope.PAN), step("glaze", scope=Scope.PAN)), pans=2)
    made = expand(
        event((rolls,), (dish("rolls", serving=None),), slots=(slot(live=(("rolls", "roll"), ("rolls", "glaze"))),))
    )
    for roll in ("rolls.b1.p1.roll", "rolls.b1.p2.roll"):
        assert linked(made, roll) == {"rolls.b1.p1.glaze", "rolls.b1.p2.glaze"}


def test_a_presenter_is_cut_into_shifts_around_the_slot_and_does_nothing_else_in_it() -> None:
    made = expand(shown("mix", served=True))
    shifts = made.problem.shifts_by_helper["olu"]
    assert [(made.problem.resource_by_id[s].opens, made.problem.resource_by_id[s].closes) for s in shifts] == [
        (0, 240),
        (240, 300),
        (300, 480),
    ]
    others = [each for each in made.problem.tasks if info(made, each.id).live_in is None]
    assert all(shifts[1] not in need.options for each in others for need in each.needs)


def test_extra_hands_of_a_live_step_come_from_the_others() -> None:
    pull = recipe("candy", (step("pull", StepKind.PREPARE, hands=3),))
    made = expand(event((pull,), (dish("candy", serving=None),), slots=(slot(live=(("candy", "pull"),)),)))
    assert hands(made, "candy.pull") == [{"olu"}, {"ines", "tam"}]
    assert [need.picks for need in task(made, "candy.pull").needs] == [1, 2]


def test_a_presenter_without_the_skill_leaves_the_need_open() -> None:
    carve = recipe("ham", (step("carve", StepKind.FINISH, skills=("knife",)),))
    made = expand(event((carve,), (dish("ham", serving=None),), slots=(slot(live=(("ham", "carve"),)),)))
    assert hands(made, "ham.carve") == [set()]


def test_a_presenter_who_is_not_there_at_the_slot_leaves_the_need_open() -> None:
    crew = (helper("olu", BAKER, window=(0, 200)), helper("ines", "fire"))
    made = expand(event((recipe(),), (dish(serving=None),), slots=(slot(live=(("bread", "mix"),)),), crew=crew))
    assert hands(made, "bread.mix") == [set()]


def test_a_live_bake_is_loaded_and_taken_out_by_the_presenter_while_others_may_see_to_the_coals() -> None:
    pie = recipe("pie", (bake_step(25, after=()),))
    made = expand(event((pie,), (dish("pie", serving=None),), slots=(slot(live=(("pie", "bake"),)),)))
    assert hands(made, "pie.b1.bake.load") == hands(made, "pie.b1.bake.out") == [{"olu"}]
    assert hands(made, "pie.b1.bake.lay") == [{"ines"}]
    assert hands(made, "pie.b1.bake.turn1") == [{"olu", "ines"}]
    assert task(made, "pie.b1.bake").latest == 300
    assert info(made, "coals.pie.b1.bake.lay.light").live_in is None


def test_a_live_bake_is_preheated_before_the_show() -> None:
    pie = recipe("pie", (bake_step(25, oven=bake(preheat=20), after=()),))
    made = expand(event((pie,), (dish("pie", serving=None),), slots=(slot(live=(("pie", "bake"),)),)))
    assert [info(made, f"pie.b1.bake.{part}").live_in for part in ("lay", "preheat", "load")] == [None, None, "demo"]


def test_a_ready_made_is_wholly_made_by_its_minute_and_fresh_for_it() -> None:
    made = expand(shown("mix", twin=True))
    assert task(made, "twin.ice").latest == 240
    assert made.ready == {("demo", "twin"): ("twin.ice",)}
    assert made.problem.freshness == (Freshness(TaskId("twin.ice"), by=240, free=30),)


def test_a_finished_ready_made_is_made_no_sooner_than_it_may_stand() -> None:
    # Cream icing stands out 120 min at most (USDA-FSIS), the 15 min of icing among them.
    assert task(expand(shown("mix", twin=True)), "twin.ice").earliest == 240 - 120


def test_a_half_finished_ready_made_stops_at_its_step_in_all_its_copies() -> None:
    made = expand(shown("mix", twin=True, up_to="cool"))
    assert "twin.ice" not in ids(made)
    assert made.ready == {("demo", "twin"): ("twin.b1.p1.cool", "twin.b1.p2.cool")}
    assert [task(made, f"twin.b1.p{pan}.cool").latest for pan in (1, 2)] == [240, 240]
    assert task(made, "twin.b1.p1.cool").earliest is None


def test_a_ready_made_that_goes_on_live_is_made_in_both_parts() -> None:
    ready = (ready_made("cake", up_to="cool"),)
    made = expand(
        event((layer_cake(),), (dish("cake", serving=None),), slots=(slot(live=(("cake", "ice"),), ready=ready),))
    )
    assert task(made, "cake.b1.p1.cool").latest == 240
    assert info(made, "cake.ice").live_in == "demo"


def test_a_step_shown_in_two_slots_belongs_to_the_first_and_is_warned_of() -> None:
    slots = (slot("one", 120, live=(("bread", "mix"),)), slot("two", 240, live=(("bread", "mix"),)))
    made = expand(event((recipe(),), (dish(serving=None),), slots=slots))
    assert info(made, "bread.mix").live_in == "one"
    assert [warning.about for warning in made.warnings] == ["bread"]


def test_a_dish_that_is_neither_served_nor_shown_is_not_made_and_is_warned_of() -> None:
    made = expand(event((recipe(),), (dish(serving=None),)))
    assert ids(made) == []
    assert "neither served nor shown" in made.warnings[0].text


def test_talks_and_tastings_are_the_presenters_tasks_between_the_live_steps_in_the_order_written() -> None:
    live = (Talk("Flour", 5), ("bread", "mix"), Taste("Crumbs", 3), Talk("Salt", 2))
    made = expand(event((recipe(),), (dish(serving=None),), slots=(slot(live=live),)))
    chain = ["demo.talk.1", "bread.mix", "demo.taste.1", "demo.talk.2"]
    assert [linked(made, before) for before in chain] == [{after} for after in chain[1:]] + [set()]
    assert [(task(made, each).minutes, info(made, each).name) for each in chain if each != "bread.mix"] == [
        (5, "Talk: Flour"),
        (3, "Taste: Crumbs"),
        (2, "Talk: Salt"),
    ]
    for each in chain:
        assert (task(made, each).earliest, task(made, each).latest) == (240, 300)
        assert hands(made, each) == [{"olu"}]
        assert info(made, each).live_in == "demo"
    assert info(made, "demo.talk.2").kind is TaskKind.TALK
    assert "Ask about allergies" in info(made, "demo.taste.1").caution


def test_a_dish_that_is_only_tasted_is_wholly_made_fresh_and_no_longer_out_than_is_safe() -> None:
    tasting = slot(live=(Taste("Cake", 5, DishId("cake")),))
    made = expand(event((layer_cake(),), (dish("cake", serving=None),), slots=(tasting,)))
    assert "cake.ice" in ids(made)
    # Cream icing stands out 120 min at most (USDA-FSIS), the 15 min of icing among them.
    assert waits(made, "cake.ice", "demo.taste.1") == (0, 105)
    assert made.problem.freshness == (Freshness(TaskId("cake.ice"), TaskId("demo.taste.1"), free=30),)
    assert info(made, "demo.taste.1").dish == "cake"
    assert "Contains" in info(made, "demo.taste.1").detail or "NOT KNOWN" in info(made, "demo.taste.1").detail
    assert made.warnings == ()
    assert len(made.firings) == 1


def test_a_dish_that_stands_ready_or_is_served_is_not_counted_as_stale_for_its_tasting_too() -> None:
    tasting = slot(live=(Taste("Cake", 5, DishId("cake")),), ready=(ready_made("cake"),))
    made = expand(event((layer_cake(),), (dish("cake", serving=None),), slots=(tasting,)))
    assert made.problem.freshness == (Freshness(TaskId("cake.ice"), by=240, free=30),)
    assert linked(made, "cake.ice") == {"demo.taste.1"}


def test_the_next_part_does_not_wait_for_what_is_chilled_behind_the_scene() -> None:
    cake = replace(layer_cake(), icing=IcingKind.CREAM_CHEESE)
    kit = (*usual_gear(), gear("chest", GearKind.COOLER))
    live = (("cake", "ice"), Talk("Slices", 5))
    hot = event((cake,), slots=(slot(live=live),), kit=kit, weather=Weather(air_c=35))
    made = expand(hot)
    assert "demo.talk.1" in linked(made, "cake.ice")
    assert linked(made, "cake.ice.chill") == {"cake.s.serve"}


def test_a_presenter_who_is_away_leaves_a_talk_open() -> None:
    crew = (helper("olu", BAKER, window=(0, 200)), helper("ines", "fire"))
    made = expand(event((), (), servings=(), slots=(slot(live=(Talk("Flour", 5),)),), crew=crew))
    assert hands(made, "demo.talk.1") == [set()]


def test_bakes_for_the_same_slot_share_a_firing() -> None:
    made = expand(shown("ice"))
    assert len(made.firings) == 1
    assert ids(made, TaskKind.SERVE) == []


def test_shown_food_that_is_served_later_is_put_out_within_its_limit() -> None:
    ham = recipe("ham", (step("carve", StepKind.FINISH),), food=FoodKind.WHOLE_MEAT)
    made = expand(event((ham,), servings=(serving(),), slots=(slot(live=(("ham", "carve"),)),), crew=usual_crew()))
    assert linked(made, "ham.carve") == {"ham.s.serve"}
    # 120 min out at most, 10 of them spent carving.
    assert made.problem.links[0].most == 110
