"""Firings: which coals are lit together, with how many chimneys, ready in which window."""

from cookout.core.kitchen.recipe import After, BakeMethod, StepId
from cookout.core.planning.event import Event, Fuel, Gear, GearKind
from cookout.core.planning.expand import expand
from cookout.core.planning.expanded import Expanded, TaskKind
from tests.core.planning.build import bake, bake_step, dish, event, gear, helper, layer_cake, recipe, serving
from tests.core.planning.reading import gear as gear_of
from tests.core.planning.reading import hands, ids, info, linked, task, waits


def pots(*usual: int, kit: tuple[Gear, ...] | None = None, rests: tuple[int, ...] = ()) -> Event:
    """One pot for each of those bake times, all for the same serving; 24 coals each."""
    dishes = [
        recipe(f"pot{number}", (bake_step(minutes, after=()),), rests=(rests or (0,) * len(usual))[number])
        for number, minutes in enumerate(usual)
    ]
    return event(tuple(dishes), kit=kit)


def kit_of(*chimneys: Gear, ovens: int = 4) -> tuple[Gear, ...]:
    return (gear("oven12", GearKind.OVEN, ovens, inches=12), gear("table", GearKind.TABLE, spots=8), *chimneys)


def feeds(made: Expanded) -> list[set[str]]:
    return [set(firing.feeds) for firing in made.firings]


def test_a_firing_is_lit_in_4_minutes_ashes_over_for_21_and_is_good_for_20() -> None:
    made = expand(event())
    firing = made.firings[0]
    assert (firing.id, firing.coals, firing.chimneys, firing.window_minutes) == ("coals.bread.b1.bake.lay", 24, 1, 20)
    assert (task(made, firing.lights).minutes, task(made, firing.ashes).minutes) == (4, 21)
    assert waits(made, firing.lights, firing.ashes) == (0, 0)
    assert waits(made, firing.ashes, "bread.b1.bake.lay") == (0, 20)
    assert gear_of(made, firing.lights) == gear_of(made, firing.ashes) == [(["chimney"], 1)]


def test_lump_has_the_window_of_lump() -> None:
    made = expand(event(fuel=Fuel("lump")))
    assert waits(made, "coals.bread.b1.bake.lay.ash", "bread.b1.bake.lay") == (0, made.firings[0].window_minutes)
    assert made.firings[0].window_minutes == 16


def test_layers_that_bake_side_by_side_share_a_firing() -> None:
    made = expand(event((layer_cake(),)))
    assert feeds(made) == [{"cake.b1.p1.bake.lay", "cake.b1.p2.bake.lay"}]
    assert made.firings[0].coals == 48


def test_with_sharing_off_every_bake_has_its_own() -> None:
    made = expand(event((layer_cake(),)), share_firings=False)
    assert feeds(made) == [{"cake.b1.p1.bake.lay"}, {"cake.b1.p2.bake.lay"}]


def test_bakes_share_within_10_minutes_and_not_beyond() -> None:
    # Done at the same time, so coals are wanted as far apart as the bake times: 30 and 40 share, 30 and 41 do not.
    assert feeds(expand(pots(30, 40))) == [{"pot0.b1.bake.lay", "pot1.b1.bake.lay"}]
    apart = expand(pots(30, 41), share_firings=True)
    assert [each for each in feeds(apart) if any("lay" in task_id for task_id in each)] == [
        {"pot1.b1.bake.lay"},
        {"pot0.b1.bake.lay"},
    ]


def test_bakes_for_different_servings_do_not_share() -> None:
    servings = (serving("s", 360), serving("t", 365))
    made = expand(event((recipe(),), (dish("a", "bread"), dish("b", "bread", "t")), servings=servings))
    assert len(made.firings) == 2


def test_a_shared_firing_holds_no_more_coals_than_the_chimneys() -> None:
    # Two chimneys of 30 coals: 60 at once, so of three pots of 24 two share.
    made = expand(pots(30, 30, 30, kit=kit_of(gear("chimney", GearKind.CHIMNEY, 2, coals=30))))
    assert [(firing.coals, firing.chimneys) for firing in made.firings] == [(48, 2), (24, 1)]


def test_bakes_share_only_as_far_as_there_are_ovens_for_all_at_once() -> None:
    made = expand(pots(30, 30, 30, kit=kit_of(gear("chimney", GearKind.CHIMNEY, 3, coals=60), ovens=2)))
    assert sorted(len(each) for each in feeds(made)) == [1, 2]


def test_one_pair_of_hands_lays_no_more_ovens_than_the_window_has_time_for() -> None:
    # 20 min of window, 4 min an oven: five.
    kit = kit_of(gear("chimney", GearKind.CHIMNEY, 9, coals=60), ovens=8)
    assert sorted(len(each) for each in feeds(expand(pots(*(30,) * 6, kit=kit)))) == [1, 5]


def test_top_ups_of_bakes_that_share_a_firing_share_one_too() -> None:
    made = expand(pots(50, 50))
    assert feeds(made) == [
        {"pot0.b1.bake.lay", "pot1.b1.bake.lay"},
        {"pot0.b1.bake.topup1", "pot1.b1.bake.topup1"},
    ]
    assert made.firings[1].coals == 28
    assert waits(made, made.firings[1].ashes, "pot0.b1.bake.topup1") == (0, 20)


def test_with_sharing_off_every_top_up_has_its_own_firing() -> None:
    assert len(expand(pots(50, 50), share_firings=False).firings) == 4


def test_every_lot_of_coals_has_exactly_one_firing_with_enough_coals() -> None:
    made = expand(pots(30, 50, 100, 33))
    fed = sorted(task_id for firing in made.firings for task_id in firing.feeds)
    assert fed == sorted(ids(made, TaskKind.LAY_COALS, TaskKind.TOP_UP))
    wanted = {run.lays: run.lid + run.under for run in made.bake_runs}
    wanted |= {task_id: coals for run in made.bake_runs for task_id, coals in run.top_ups}
    assert all(firing.coals == sum(wanted[each] for each in firing.feeds) for firing in made.firings)


def test_the_chimneys_of_which_fewest_do_are_taken() -> None:
    kit = kit_of(gear("small", GearKind.CHIMNEY, 4, coals=15), gear("large", GearKind.CHIMNEY, coals=80))
    assert gear_of(expand(pots(30, kit=kit)), "coals.pot0.b1.bake.lay.light") == [(["large"], 1)]


def test_several_kinds_of_chimney_are_joined_where_no_one_kind_is_enough() -> None:
    kit = kit_of(gear("small", GearKind.CHIMNEY, 2, coals=10), gear("large", GearKind.CHIMNEY, coals=16))
    made = expand(pots(30, kit=kit))
    assert gear_of(made, "coals.pot0.b1.bake.lay.light") == [(["small"], 2), (["large"], 1)]
    assert made.firings[0].chimneys == 3


def test_a_bake_that_wants_more_than_all_chimneys_light_is_fed_by_several_firings_and_warned_of() -> None:
    made = expand(pots(30, kit=kit_of(gear("chimney", GearKind.CHIMNEY, coals=10))))
    assert [firing.coals for firing in made.firings] == [8, 8, 8]
    assert feeds(made) == [{"pot0.b1.bake.lay"}] * 3
    assert "all chimneys together light 10" in made.warnings[0].text


def test_without_a_chimney_the_need_stays_open() -> None:
    made = expand(pots(30, kit=kit_of()))
    assert gear_of(made, "coals.pot0.b1.bake.lay.light") == [([], 1)]
    assert [warning.about for warning in made.warnings] == ["chimney"]


def test_only_those_who_may_tend_fire_light_lay_and_drown() -> None:
    made = expand(event())
    fire = ("coals.bread.b1.bake.lay.light", "bread.b1.bake.lay", "drown")
    assert all(hands(made, each) == [{"ines"}] for each in fire)


def test_the_young_tend_fire_where_the_organiser_names_them() -> None:
    crew = (helper("tam", "fire", adult=False, fire_allowed=True), helper("kit", "fire", adult=False))
    assert hands(expand(event(crew=crew)), "coals.bread.b1.bake.lay.light") == [{"tam"}]


def test_set_up_comes_before_every_fire_and_drowning_after_every_bake() -> None:
    made = expand(pots(30, 50))
    assert linked(made, "set_up") == {firing.lights for firing in made.firings}
    assert task(made, "set_up").minutes == 20
    assert all("drown" in linked(made, run.takes_out) for run in made.bake_runs)


def test_coals_are_drowned_within_an_hour_of_the_last_deadline() -> None:
    # Served by 370 at the latest.
    assert task(expand(event()), "drown").latest == 430


def test_two_set_up_where_there_are_three() -> None:
    assert task(expand(event()), "set_up").needs[0].picks == 2
    assert task(expand(event(crew=(helper("ines", "fire"),))), "set_up").needs[0].picks == 1


def test_without_a_bake_there_is_no_fire_at_all() -> None:
    made = expand(event((recipe(steps=(recipe().steps[0],)),)))
    assert ids(made) == ["bread.mix", "bread.s.serve"]


def test_set_up_that_takes_no_time_is_no_task() -> None:
    assert ids(expand(event(setup_minutes=0)), TaskKind.SET_UP) == []


def test_a_most_wait_before_the_bake_does_not_move_its_nominal_coals() -> None:
    # Both want coals 36 min before they are done, whatever comes before.
    slow = recipe("slow", (recipe().steps[0], bake_step(30, after=(After(StepId("mix"), 0, 5),))))
    quick = recipe("quick", (bake_step(30, after=(), oven=bake(method=BakeMethod.SIMMER)),))
    assert len(expand(event((slow, quick))).firings) == 1


def test_a_firing_keeps_its_ids_when_another_comes_before_it() -> None:
    alone = expand(event((recipe(),), (dish("bread"),)))
    earlier = (serving(), serving("lunch", 200))
    both = expand(event((recipe(),), (dish("bread"), dish("early", "bread", "lunch")), servings=earlier))
    assert len(both.firings) == 2
    assert both.firings[1] == alone.firings[0]
    assert info(both, both.firings[1].lights).name == "Light firing 2"
