"""The allergen card. The nine allergens: FALCPA 2004 and the FASTER Act of 2021."""

from dataclasses import replace

from cookout.core.kitchen.recipe import Ingredient
from cookout.core.planning.event import DishId, Event, Taste
from cookout.core.planning.lists import allergen_card
from cookout.core.planning.lists.table_card import CardDish
from cookout.core.planning.record import PlanRecord


def dishes(event: Event, record: PlanRecord) -> dict[str, CardDish]:
    """Every dish of the card by its id."""
    return {dish.dish: dish for serving in allergen_card(event, record).servings for dish in serving.dishes}


def with_more(event: Event, dish_id: str, more: Ingredient) -> Event:
    """The event with one more ingredient in the recipe of a dish."""
    recipe_id = next(dish.recipe for dish in event.dishes if dish.id == dish_id)
    return replace(
        event,
        recipes=tuple(
            replace(each, ingredients=(*each.ingredients, more)) if each.id == recipe_id else each
            for each in event.recipes
        ),
    )


def test_the_card_of_the_supper_says_what_each_dish_holds_and_what_nobody_knows(
    supper: Event, supper_plan: PlanRecord
) -> None:
    card = allergen_card(supper, supper_plan)
    assert [(each.name, f"{each.at:%H:%M}") for each in card.servings] == [("Supper", "18:00")]
    found = dishes(supper, supper_plan)
    assert found["cobbler"].contains == ("milk", "wheat")
    assert found["salad"].contains == ("milk",)
    assert found["bean-pot"].unknown_ingredients == ("smoked sausage",)
    assert {"eggs", "sesame"} <= set(found["bean-pot"].not_known)
    assert found["bean-pot"].others == ("mustard",)
    assert not any(each.changed for each in found.values())
    assert "No dish here is free of anything" in card.note


def test_the_cooks_are_those_who_put_the_dish_together(supper: Event, supper_plan: PlanRecord) -> None:
    for dish in ("bean-pot", "cobbler", "salad"):
        at_work = {
            helper
            for task in supper_plan.tasks
            if task.dish == dish and task.kind in ("prepare", "mix")
            for helper in task.helpers
        }
        names = {helper.name for helper in supper_plan.helpers if helper.id in at_work}
        assert set(dishes(supper, supper_plan)[dish].cooks) == names != set()


def test_an_allergen_that_came_in_after_the_plan_is_told_at_once(supper: Event, supper_plan: PlanRecord) -> None:
    changed = dishes(with_more(supper, "cobbler", Ingredient("pecans", 1, "cup")), supper_plan)["cobbler"]
    assert changed.contains == ("milk", "tree nuts", "wheat")
    assert "Plan again" in changed.changed


def test_an_allergen_that_left_after_the_plan_is_still_told(supper: Event, supper_plan: PlanRecord) -> None:
    """The food on the table may be that of the plan."""
    bare = replace(supper, recipes=tuple(replace(each, ingredients=(), allergens=()) for each in supper.recipes))
    told = dishes(bare, supper_plan)["cobbler"]
    assert told.contains == ("milk", "wheat")
    assert "its ingredients are not listed" in told.unknown_ingredients
    assert "eggs" in told.not_known


def test_a_dish_that_left_the_menu_after_the_plan_is_still_told(supper: Event, supper_plan: PlanRecord) -> None:
    fewer = replace(supper, dishes=tuple(dish for dish in supper.dishes if dish.id != "cobbler"))
    told = dishes(fewer, supper_plan)["cobbler"]
    assert told.contains == ("milk", "wheat")
    assert "Plan again" in told.changed


def test_allergens_beyond_the_nine_are_told_from_plan_and_event_alike(supper: Event, supper_plan: PlanRecord) -> None:
    """Mustard is in the plan's bean pot alone, celery in the event's alone."""
    pot = next(each for each in supper.recipes if each.id == supper.dish(DishId("bean-pot")).recipe)
    without = tuple(each for each in pot.ingredients if "mustard" not in each.name)
    other = replace(pot, ingredients=(*without, Ingredient("celery", 2)))
    changed = replace(supper, recipes=tuple(other if each.id == pot.id else each for each in supper.recipes))
    assert dishes(changed, supper_plan)["bean-pot"].others == ("celery", "mustard")
    fewer = replace(supper, dishes=tuple(dish for dish in supper.dishes if dish.id != "bean-pot"))
    assert dishes(fewer, supper_plan)["bean-pot"].others == ("mustard",)


def test_a_serving_that_was_called_off_after_the_plan_still_has_its_card(
    supper: Event, supper_plan: PlanRecord
) -> None:
    bare = replace(supper, servings=(), dishes=())
    (called_off,) = allergen_card(bare, supper_plan).servings
    assert (called_off.name, f"{called_off.at:%H:%M}") == ("Supper", "18:00")
    assert {dish.dish for dish in called_off.dishes} == {"bean-pot", "cobbler", "salad"}
    assert all("Plan again" in dish.changed for dish in called_off.dishes)


def test_without_a_plan_the_event_alone_tells(supper: Event, supper_plan: PlanRecord) -> None:
    bare = replace(supper_plan, allergens=(), tasks=(), bakes=())
    told = dishes(supper, bare)["cobbler"]
    assert (told.contains, told.cooks, told.changed) == (("milk", "wheat"), (), "")


def test_what_is_only_shown_is_on_no_card_and_two_cakes_of_one_kind_stand_there_once(
    demonstration: Event, demonstration_plan: PlanRecord
) -> None:
    servings = allergen_card(demonstration, demonstration_plan).servings
    (tasting,) = (each for each in servings if each.serving == "tasting")
    assert [dish.dish for dish in tasting.dishes] == ["show-cake", "chili", "slaw"]
    assert {"Odette Brann", "Pell Okafor"} & set(tasting.dishes[0].cooks)


def test_what_an_audience_tastes_has_a_card_of_its_own(demonstration: Event, demonstration_plan: PlanRecord) -> None:
    """The raw batch stands for any dish that no serving lists."""
    (slot,) = demonstration.slots
    tasted = replace(slot, live=(*slot.live, Taste("A slice for everybody", 5, DishId("raw-batch"))))
    card = allergen_card(replace(demonstration, slots=(tasted,)), demonstration_plan)
    assert (card.servings[0].name, f"{card.servings[0].at:%H:%M}") == (slot.name, "14:00")
    assert card.servings[0].dishes[0].contains == ("milk", "eggs", "tree nuts", "wheat")


def test_dishes_that_share_an_oven_say_so(supper: Event, supper_plan: PlanRecord) -> None:
    first = supper_plan.bakes[0]
    same = replace(supper_plan, bakes=tuple(replace(bake, unit=first.unit) for bake in supper_plan.bakes))
    found = dishes(supper, same)
    assert found["bean-pot"].same_oven == ("Peach cobbler",)
    assert found["cobbler"].same_oven == ("Sausage and bean pot",)
    assert found["salad"].same_oven == ()


def test_a_dish_of_the_same_name_that_holds_something_else_is_told_beside_it(
    supper: Event, supper_plan: PlanRecord
) -> None:
    """One cobbler with pecans and one without, baked one after the other in one oven."""
    cobbler = supper.dish(DishId("cobbler"))
    plain = supper.recipe_of(cobbler)
    nutty = replace(plain, id=type(plain.id)("nutty"), ingredients=(*plain.ingredients, Ingredient("pecan", 1, "cup")))
    second = replace(cobbler, id=DishId("cobbler-2"), recipe=nutty.id)
    event = replace(supper, recipes=(*supper.recipes, nutty), dishes=(*supper.dishes, second))
    bake = next(each for each in supper_plan.bakes if each.dish == "cobbler")
    plan = replace(supper_plan, bakes=(bake, replace(bake, dish="cobbler-2")))
    assert dishes(event, plan)["cobbler"].same_oven == (plain.name,)
    assert dishes(event, plan)["cobbler-2"].same_oven == (plain.name,)
