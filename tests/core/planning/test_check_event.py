"""The check of an event's rules: silent on a sound plan, and it notices each rule broken in turn.

A rule is broken either in the plan (a task moved, another helper) or in the event (fewer ovens, a shorter window), with
the other held as it is.
"""

from dataclasses import replace
from typing import Any

import pytest

from cookout.core.kitchen.recipe import Cool, Load, LoadKind, Recipe, RecipeId, StepId
from cookout.core.planning.check import Breach, check, check_event
from cookout.core.planning.event import Event, HelperId, Pin, ReadyMade, Switches, Talk, Taste, Window
from cookout.core.planning.expand import expand
from cookout.core.planning.expanded import Expanded, Firing, TaskKind
from cookout.core.planning.pieces import name_pieces
from cookout.core.planning.problem import Resource, ResourceId, TaskId
from cookout.core.planning.quick import quick_plan
from cookout.core.planning.result import Plan
from tests.sample_event import LIV, MARET, PIP, TWIN, sample_event


class Case:
    """An expanded event and its plan, with ways to spoil either. Each gives a new case."""

    def __init__(self, expanded: Expanded, plan: Plan) -> None:
        self.expanded, self.plan = expanded, plan

    def start(self, task: str) -> int:
        return self.plan.start(TaskId(task))

    def end(self, task: str) -> int:
        return self.plan.end(self.expanded.problem.task_by_id[TaskId(task)])

    def helper(self, task: str) -> HelperId:
        """Who does the task, or one of them."""
        picked = [one for picks in self.plan.placed[TaskId(task)].picks for one in picks]
        owners = [self.expanded.problem.resource_by_id[one].helper for one in picked]
        return HelperId(next(owner for owner in owners if owner is not None))

    def helpers(self, task: str) -> tuple[HelperId, ...]:
        """All who do the task."""
        picked = [one for picks in self.plan.placed[TaskId(task)].picks for one in picks]
        owners = [self.expanded.problem.resource_by_id[one].helper for one in picked]
        return tuple(HelperId(owner) for owner in owners if owner is not None)

    def move(self, task: str, start: int) -> "Case":
        placed = replace(self.plan.placed[TaskId(task)], start=start)
        return Case(self.expanded, Plan(self.plan.placed | {TaskId(task): placed}))

    def give(self, task: str, *helpers: str) -> "Case":
        """The task to these helpers (the shifts that hold it), where hands come first among its needs."""
        placed = self.plan.placed[TaskId(task)]
        shifts = tuple(self._shift(helper, placed.start).id for helper in helpers)
        placed = replace(placed, picks=(shifts, *placed.picks[1:]))
        return Case(self.expanded, Plan(self.plan.placed | {TaskId(task): placed}))

    def _shift(self, helper: str, minute: int) -> Resource:
        shifts = [each for each in self.expanded.problem.resources if each.helper == helper]
        return next(each for each in shifts if (each.opens or 0) <= minute < (each.closes or 0))

    def expanding(self, **changes: Any) -> "Case":
        return Case(replace(self.expanded, **changes), self.plan)

    def event(self, **changes: Any) -> "Case":
        return self.expanding(event=replace(self.expanded.event, **changes))

    def crew(self, helper: str, **changes: Any) -> "Case":
        crew = self.expanded.event.crew
        return self.event(crew=tuple(replace(each, **changes) if each.id == helper else each for each in crew))

    def gear(self, gear: str, **changes: Any) -> "Case":
        event = self.expanded.event
        return self.event(gear=tuple(replace(each, **changes) if each.id == gear else each for each in event.gear))

    def recipe(self, recipe: str, **changes: Any) -> "Case":
        event = self.expanded.event
        recipes = tuple(replace(each, **changes) if each.id == recipe else each for each in event.recipes)
        return self.event(recipes=recipes)

    def info(self, task: str, **changes: Any) -> "Case":
        info = self.expanded.info
        return self.expanding(info=info | {TaskId(task): replace(info[TaskId(task)], **changes)})

    def firing_of(self, task: str) -> Firing:
        return next(firing for firing in self.expanded.firings if task in firing.feeds)

    def firing(self, old: Firing, **changes: Any) -> "Case":
        firings = tuple(replace(each, **changes) if each == old else each for each in self.expanded.firings)
        return self.expanding(firings=firings)

    def breaches(self, rule: str) -> list[Breach]:
        return [breach for breach in check_event(self.expanded, self.plan) if breach.rule == rule]

    def rules(self) -> set[str]:
        return {breach.rule for breach in check_event(self.expanded, self.plan)}


@pytest.fixture(scope="module")
def case() -> Case:
    expanded = expand(sample_event())
    plan = quick_plan(expanded.problem, seed=1, tries=3)
    assert plan is not None
    return Case(expanded, plan)


LAY, LOAD, BAKE, OUT = "twin.b1.p1.bake.lay", "twin.b1.p1.bake.load", "twin.b1.p1.bake", "twin.b1.p1.bake.out"
LOOK, TURN, TOP_UP = "twin.b1.p1.bake.look", "twin.b1.p1.bake.turn1", "twin.b1.p1.bake.topup1"
LIGHT = f"coals.{LAY}.light"
STEW_OUT, STEW_SERVED = "stew.b1.simmer.out", "stew.supper.serve"


def test_a_sound_plan_passes_both_readings(case: Case) -> None:
    assert check(case.expanded.problem, case.plan) == ()
    assert check_event(case.expanded, case.plan) == ()


def test_a_plan_that_lacks_a_task_is_told_so_and_nothing_else(case: Case) -> None:
    less = Plan({task: placed for task, placed in case.plan.placed.items() if task != "drown"})
    assert [(breach.rule, breach.text) for breach in check_event(case.expanded, less)] == [
        ("plan_whole", "Drown the coals has no time")
    ]


def test_a_task_left_out_of_the_problem_is_noticed(case: Case) -> None:
    info = case.expanded.info
    more = case.expanding(info=info | {TaskId("x"): replace(info[TaskId("drown")], id=TaskId("x"))})
    assert more.rules() == {"plan_whole"}


def test_a_hand_too_few_is_noticed(case: Case) -> None:
    assert case.give("cake.ice", PIP).rules() == {"hands_and_skills"}


def test_the_recipe_rather_than_the_planner_says_how_many_hands(case: Case) -> None:
    assert case.give("cake.ice", PIP).info("cake.ice", hands=1).rules() == {"hands_and_skills"}


def test_a_missing_skill_is_noticed(case: Case) -> None:
    broken = case.crew(LIV, skills=frozenset()).breaches("hands_and_skills")
    assert "Liv lacks baking for Mix (Iced layer cake)" in [breach.text for breach in broken]


def test_work_after_somebody_left_is_noticed(case: Case) -> None:
    helper, end = case.helper(STEW_SERVED), case.end(STEW_SERVED)
    assert case.crew(helper, windows=(Window(0, end - 1),)).rules() >= {"within_windows"}


def test_windows_that_touch_are_one_but_a_gap_is_none(case: Case) -> None:
    helper, minute = case.helper(STEW_SERVED), case.start(STEW_SERVED) + 2
    assert case.crew(helper, windows=(Window(minute, 800), Window(0, minute))).rules() == set()
    assert case.crew(helper, windows=(Window(0, minute), Window(minute + 1, 800))).rules() == {"within_windows"}


def test_two_places_at_once_are_noticed(case: Case) -> None:
    both = case.give("cake.supper.serve", LIV).give(STEW_SERVED, LIV).move("cake.supper.serve", case.start(STEW_SERVED))
    (broken,) = both.breaches("nobody_in_two_places")
    hours, minutes = divmod(8 * 60 + case.start(STEW_SERVED), 60)
    served = "Serve Iced layer cake (Iced layer cake) and Serve Bean stew (Bean stew)"
    assert broken.text == f"Liv would be at {served} at {hours:02}:{minutes:02}"


@pytest.mark.parametrize("task", [LIGHT, LAY, TOP_UP, "drown"])
def test_fire_in_the_hands_of_a_child_is_noticed_unless_the_organiser_named_it(case: Case, task: str) -> None:
    child = case.give(task, PIP)
    assert "fire_only_by_those_allowed" in child.rules()
    assert "fire_only_by_those_allowed" not in child.crew(PIP, fire_allowed=True).rules()


def test_fire_without_the_fire_skill_is_noticed(case: Case) -> None:
    assert "fire_only_by_those_allowed" in case.give("drown", LIV).rules()


def test_fire_with_nobody_is_noticed(case: Case) -> None:
    assert "fire_only_by_those_allowed" in case.give("drown").rules()


def test_hot_iron_in_the_hands_of_a_child_is_noticed(case: Case) -> None:
    assert "hot_iron_only_by_those_allowed" in case.give(TURN, PIP).rules()


def test_hot_work_without_a_break_is_noticed(case: Case) -> None:
    helper = case.helper("drown")
    minutes = case.end("drown") - case.start("drown")
    assert "breaks_taken" in case.crew(helper, hot_stretch_minutes=minutes - 1).rules()


def test_longer_breaks_make_longer_stretches(case: Case) -> None:
    assert case.event(break_minutes=700).rules() == {"breaks_taken"}


@pytest.mark.parametrize(
    ("gear", "change"),
    [("oven10", {"count": 1}), ("table", {"spots": 1}), ("rack", {"count": 1}), ("bowl", {"count": 0})],
)
def test_gear_used_more_often_than_it_is_there_is_noticed(case: Case, gear: str, change: dict[str, int]) -> None:
    broken = case.gear(gear, **change)
    assert broken.rules() == {"gear_counts"}
    assert "in use at" in broken.breaches("gear_counts")[0].text


def test_tables_count_as_spots_times_tables(case: Case) -> None:
    assert case.gear("table", spots=1, count=3).rules() == set()


@pytest.mark.parametrize(
    ("gear", "change"), [("oven10", {"inches": 8}), ("oven10", {"inches": 12}), ("table", {"spot_inches": 11})]
)
def test_an_oven_of_another_size_or_too_near_its_neighbour_is_noticed(
    case: Case, gear: str, change: dict[str, int]
) -> None:
    assert case.gear(gear, **change).rules() == {"ovens_fit"}


def test_a_bake_that_gives_its_oven_away_before_taking_out_is_noticed(case: Case) -> None:
    runs = case.expanded.bake_runs
    short = replace(runs[0], holds=runs[0].holds[:-1])
    assert "ovens_fit" in case.expanding(bake_runs=(short, *runs[1:])).rules()


def test_too_few_ovens_for_the_people_are_noticed(case: Case) -> None:
    servings = tuple(replace(serving, people=9) for serving in case.expanded.event.servings)
    broken = case.event(servings=servings)
    assert broken.rules() == {"enough_ovens_for_all"}
    assert [breach.text for breach in broken.breaches("enough_ovens_for_all")] == [
        "Iced layer cake wants 3 ovens for Bake and has 2",
        "Bean stew wants 2 ovens for Simmer and has 1",
    ]


def test_icing_before_the_last_layer_is_cool_is_noticed(case: Case) -> None:
    cooled = max(case.end("cake.b1.p1.cool"), case.end("cake.b1.p2.cool"))
    assert "steps_in_order" in case.move("cake.ice", cooled + 4).rules()
    assert "steps_in_order" not in case.move("cake.ice", cooled + 5).rules()


def test_icing_later_than_the_recipe_allows_is_noticed(case: Case) -> None:
    cooled = min(case.end("cake.b1.p1.cool"), case.end("cake.b1.p2.cool"))
    assert "steps_in_order" in case.move("cake.ice", cooled + 101).rules()
    assert "steps_in_order" not in case.move("cake.ice", cooled + 100).rules()


def test_each_layer_cools_after_its_own_bake(case: Case) -> None:
    assert "steps_in_order" in case.move("cake.b1.p2.cool", case.end("cake.b1.p2.bake.out") + 30).rules()


def test_food_out_before_its_least_time_is_noticed(case: Case) -> None:
    assert "bakes_long_enough" in case.move(OUT, case.start(BAKE) + 27).rules()


def test_food_in_before_the_oven_is_hot_is_noticed(case: Case) -> None:
    assert "bakes_long_enough" in case.move(BAKE, case.end(LAY) + 9).rules()


@pytest.mark.parametrize("minute", [19, 28])
def test_a_look_in_too_early_or_after_the_least_time_is_noticed(case: Case, minute: int) -> None:
    both = case
    for pan in ("p1", "p2"):
        both = both.move(f"twin.b1.{pan}.bake.look", case.start(f"twin.b1.{pan}.bake") + minute)
    assert "look_ins_in_time" in both.rules()


def test_a_look_in_at_the_first_moment_allowed_passes(case: Case) -> None:
    assert "look_ins_in_time" not in case.move(LOOK, case.start(BAKE) + 20).rules()


def test_two_ovens_want_two_look_ins(case: Case) -> None:
    assert "look_ins_in_time" in case.info(LOOK, kind=TaskKind.TURN).rules()


@pytest.mark.parametrize("task", [LOOK, TURN, TOP_UP])
def test_care_of_an_oven_outside_its_bake_is_noticed(case: Case, task: str) -> None:
    assert "inside_the_bake" in case.move(task, case.start(BAKE) - 20).rules()
    assert "inside_the_bake" in case.move(task, case.end(BAKE)).rules()


def test_food_that_rests_too_short_or_waits_too_long_is_noticed(case: Case) -> None:
    out = case.end(STEW_OUT)
    broken = {wait: "food_kept_safe" in case.move(STEW_SERVED, out + wait).rules() for wait in (4, 5, 90, 91)}
    assert broken == {4: True, 5: False, 90: False, 91: True}


def test_perishable_food_may_stand_two_hours_and_one_in_heat(case: Case) -> None:
    out = case.end(STEW_OUT)
    keeps = next(recipe for recipe in case.expanded.event.recipes if recipe.id == "stew").keeps
    long_kept = case.recipe("stew", keeps=replace(keeps, air=600))
    hot = long_kept.event(weather=replace(case.expanded.event.weather, air_c=33.0))
    mild = {wait: bool(long_kept.move(STEW_SERVED, out + wait).breaches("food_kept_safe")) for wait in (120, 121)}
    heat = {wait: bool(hot.move(STEW_SERVED, out + wait).breaches("food_kept_safe")) for wait in (60, 61)}
    assert (mild, heat) == ({120: False, 121: True}, {60: False, 61: True})


def test_food_held_hot_is_bound_by_what_it_keeps(case: Case) -> None:
    recipe = next(recipe for recipe in case.expanded.event.recipes if recipe.id == "stew")
    held = case.recipe("stew", held="hot", keeps=replace(recipe.keeps, hot=200))
    assert not held.move(STEW_SERVED, case.end(STEW_OUT) + 200).breaches("food_kept_safe")
    assert held.move(STEW_SERVED, case.end(STEW_OUT) + 201).breaches("food_kept_safe")


def test_perishable_food_standing_between_two_steps_is_noticed(case: Case) -> None:
    free = case.recipe("stew", steps=_without_most_waits(case.expanded.event, "stew"))
    load = case.start("stew.b1.simmer.load")
    broken = {w: bool(free.move("stew.chop", load - 15 - w).breaches("food_safe_on_the_way")) for w in (120, 121)}
    assert broken == {120: False, 121: True}


def _without_most_waits(event: Event, recipe_id: str) -> Any:
    recipe: Recipe = event.recipe(RecipeId(recipe_id))
    return tuple(replace(step, after=tuple(replace(after, most=None) for after in step.after)) for step in recipe.steps)


def test_fire_before_water_and_shovel_stand_ready_is_noticed(case: Case) -> None:
    assert "set_up_first" in case.move("set_up", case.start(LIGHT) - 19).rules()


def test_no_set_up_or_one_too_short_is_noticed(case: Case) -> None:
    assert case.info("set_up", kind=TaskKind.FINISH).rules() == {"set_up_first"}
    assert case.event(setup_minutes=21).rules() == {"set_up_first"}


def test_fire_on_dry_grass_that_nobody_rakes_away_is_noticed(case: Case) -> None:
    dry = replace(case.expanded.event.place, dry_grass=True)
    assert case.event(place=dry).rules() == {"no_fire_on_dry_grass"}
    assert case.event(place=replace(dry, dry_grass=False)).rules() == set()


def test_layers_that_are_iced_before_they_can_be_cool_are_noticed(case: Case) -> None:
    # The plan cools them for as long as the recipe says; with a load the model says how long it takes to come to 24 °C.
    cake = next(recipe for recipe in case.expanded.event.recipes if any(step.id == "cool" for step in recipe.steps))
    load = Load(LoadKind.CAKE, 0.2286, 0.045)
    steps = tuple(
        replace(step, cool=Cool(24.0))
        if step.id == "cool"
        else replace(step, bake=replace(step.bake, load=load))
        if step.bake
        else step
        for step in cake.steps
    )
    assert "cooled_enough" in case.recipe(cake.id, steps=steps).rules()
    off = case.recipe(cake.id, steps=steps).event(switches=Switches(use_models=False))
    assert off.rules() == set()


def test_coals_drowned_before_the_last_food_is_out_or_never_are_noticed(case: Case) -> None:
    last = max(case.end(run.takes_out) for run in case.expanded.bake_runs)
    assert "drowned_last" in case.move("drown", last - 1).rules()
    assert "drowned_last" not in case.move("drown", last).rules()
    assert "drowned_last" in case.info("drown", kind=TaskKind.FINISH).rules()


def test_coals_laid_before_they_ash_over_or_once_they_fade_are_noticed(case: Case) -> None:
    firing = case.firing_of(LAY)
    ready, window = case.end(firing.ashes), firing.window_minutes
    broken = {
        shift: "fed_while_usable" in case.move(LAY, ready + shift).rules() for shift in (-1, 0, window, window + 1)
    }
    assert broken == {-1: True, 0: False, window: False, window + 1: True}


def test_coals_that_nobody_lit_are_noticed(case: Case) -> None:
    assert "fed_while_usable" in case.firing(case.firing_of(TOP_UP), feeds=()).rules()


def test_coals_that_ash_over_before_they_are_lit_are_noticed(case: Case) -> None:
    firing = case.firing_of(LAY)
    assert "fed_while_usable" in case.move(firing.ashes, case.start(firing.lights) - 1).rules()


def test_a_coal_too_few_is_noticed(case: Case) -> None:
    firing = case.firing_of(LAY)
    assert case.firing(firing, coals=firing.coals - 1).rules() == {"coals_enough"}


def test_a_chimney_overfilled_is_noticed(case: Case) -> None:
    most = max(firing.coals for firing in case.expanded.firings)
    assert case.gear("chimney", coals=most).rules() == set()
    assert case.gear("chimney", coals=most - 1).rules() == {"chimney_room"}


def test_two_firings_in_one_chimney_are_noticed(case: Case) -> None:
    first, second = case.expanded.firings[:2]
    meanwhile = case.move(second.lights, case.start(first.ashes) + 1)
    assert "chimney_room" in meanwhile.rules()


@pytest.mark.parametrize(("minutes", "kept"), [(-11, False), (-10, True), (10, True), (11, False)])
def test_a_dish_outside_the_tolerance_of_its_serving_is_noticed(case: Case, minutes: int, kept: bool) -> None:
    served = case.move("cake.supper.serve", 600 + minutes - 5)
    assert ("served_in_time" not in served.rules()) is kept


def test_a_dish_that_nobody_serves_is_noticed(case: Case) -> None:
    assert [breach.text for breach in case.expanding(serves={}).breaches("served_in_time")] == [
        "nobody serves Iced layer cake at Supper",
        "nobody serves Bean stew at Supper",
    ]


@pytest.mark.parametrize(("task", "start"), [("cake.sift", 329), ("cake.mix", 361)])
def test_a_live_step_outside_its_slot_is_noticed(case: Case, task: str, start: int) -> None:
    assert "live_steps_in_slot" in case.move(task, start).rules()


def test_a_live_step_by_somebody_else_is_noticed(case: Case) -> None:
    assert "live_steps_in_slot" in case.give("cake.mix", MARET).rules()


def test_live_steps_in_another_order_are_noticed(case: Case) -> None:
    assert "live_steps_in_slot" in case.move("cake.sift", 340).move("cake.mix", 330).rules()


def test_a_live_step_that_is_not_shown_is_noticed(case: Case) -> None:
    assert [breach.text for breach in case.info("cake.sift", live_in=None).breaches("live_steps_in_slot")] == [
        "sift of Iced layer cake is not shown in A cake from the bowl"
    ]


@pytest.fixture(scope="module")
def talked() -> Case:
    """The sample with a talk before the live steps and a tasting of the finished twin after them, from 330 to 382."""
    event = sample_event()
    (slot,) = event.slots
    live = (Talk("Sifting", 4), *slot.live, Taste("The twin", 6, TWIN))
    expanded = expand(replace(event, slots=(replace(slot, minutes=52, live=live),)))
    plan = quick_plan(expanded.problem, seed=1, tries=3)
    assert plan is not None
    return Case(expanded, plan)


TALK, TASTE = "show.talk.1", "show.taste.1"


def test_pins_that_a_plan_does_not_keep_are_noticed_and_those_to_what_is_gone_are_not(case: Case) -> None:
    ice = "cake.ice"
    idle = next(each for each in (MARET, LIV, PIP) if each not in case.helpers(ice))
    broken = (Pin(ice, at=case.start(ice) + 1), Pin(ice, helpers=(idle,)), Pin(BAKE, units=("12-inch oven",)))
    for pin in broken:
        assert [breach.tasks for breach in case.event(pins=(pin,)).breaches("pins_kept")] == [(pin.task,)]
    units = name_pieces(case.expanded, case.plan)[TaskId(BAKE)]
    kept = (Pin(ice, case.start(ice), case.helpers(ice)), Pin(BAKE, units=units))
    gone = (Pin("lost", at=1), Pin(LAY, helpers=(HelperId("lost"),), units=("lost",)))
    assert case.event(pins=(*kept, *gone)).breaches("pins_kept") == []


def test_one_piece_of_gear_in_two_places_or_without_a_name_is_noticed(case: Case) -> None:
    resource = ResourceId("gear.oven10")
    labels = case.expanded.labels
    same = case.expanding(labels={**labels, resource: ("10-inch oven A", "10-inch oven A")})
    fewer = case.expanding(labels={**labels, resource: ()})
    assert "pieces_in_one_place" in fewer.rules()
    assert "pieces_in_one_place" in same.rules()


def test_a_talk_and_a_tasting_among_live_steps_pass_both_readings(talked: Case) -> None:
    assert check(talked.expanded.problem, talked.plan) == ()
    assert check_event(talked.expanded, talked.plan) == ()
    assert talked.start(TALK) < talked.start("cake.sift") < talked.start("cake.mix") < talked.start(TASTE)


def test_talks_and_tastings_out_of_order_or_out_of_their_slot_are_noticed(talked: Case) -> None:
    for moved in (talked.move(TALK, talked.end("cake.mix")), talked.move(TASTE, 329), talked.move(TALK, 329)):
        assert "live_steps_in_slot" in moved.rules()


def test_a_talk_by_somebody_else_or_of_another_length_is_noticed(talked: Case) -> None:
    assert "live_steps_in_slot" in talked.give(TALK, MARET).rules()
    (slot,) = talked.expanded.event.slots
    longer = replace(slot, live=(Talk("Sifting", 5), *slot.live[1:]))
    assert [breach.text for breach in talked.event(slots=(longer,)).breaches("live_steps_in_slot")] == [
        "Sifting is not shown in A cake from the bowl"
    ]


def test_of_two_talks_alike_both_are_wanted(talked: Case) -> None:
    (slot,) = talked.expanded.event.slots
    twice = talked.event(slots=(replace(slot, live=(slot.live[0], *slot.live)),))
    assert [breach.text for breach in twice.breaches("live_steps_in_slot")] == [
        "Sifting is not shown in A cake from the bowl"
    ]


def test_food_that_is_tasted_before_it_is_done_or_after_it_is_safe_is_noticed(talked: Case) -> None:
    # Cream icing keeps 120 min here, and may stand as long.
    iced = talked.end("twin.ice")
    assert "tasted_when_done" in talked.move(TASTE, iced - 1).rules()
    assert "tasted_when_done" not in talked.move(TASTE, iced + 120).rules()
    assert "tasted_when_done" in talked.move(TASTE, iced + 121).rules()


def test_other_work_of_the_presenter_during_the_slot_is_noticed(case: Case) -> None:
    away = case.give("cake.supper.serve", LIV)
    assert "presenter_only_presents" in away.move("cake.supper.serve", 326).rules()
    assert "presenter_only_presents" not in away.move("cake.supper.serve", 325).rules()
    assert "presenter_only_presents" not in away.move("cake.supper.serve", 370).rules()


def test_a_ready_made_that_is_not_ready_is_noticed(case: Case) -> None:
    assert "ready_made_by_then" in case.move("twin.b1.p2.cool", 291).rules()
    assert "ready_made_by_then" not in case.move("twin.b1.p2.cool", 290).rules()


def test_a_ready_made_is_read_from_the_event_where_the_planner_forgets_it(case: Case) -> None:
    assert "ready_made_by_then" in case.expanding(ready={}).move("twin.b1.p2.cool", 291).rules()


def test_a_ready_made_that_nobody_makes_is_noticed(case: Case) -> None:
    slot = case.expanded.event.slots[0]
    asked = replace(slot, ready_made=(ReadyMade(TWIN, 330, StepId("ice")),))
    broken = case.event(slots=(asked,)).expanding(ready={}).breaches("ready_made_by_then")
    assert [(breach.text, breach.minute) for breach in broken] == [
        ("nothing makes Iced layer cake ready for A cake from the bowl", 330)
    ]


def test_every_rule_that_the_check_lists_is_broken_somewhere_above() -> None:
    from pathlib import Path

    from cookout.core.planning.check.events import RULES

    text = Path(__file__).read_text(encoding="utf-8")
    assert [rule.__name__ for rule in RULES if f'"{rule.__name__}"' not in text] == []
