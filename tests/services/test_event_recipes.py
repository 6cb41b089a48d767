"""Recipes of the box in events: put in, followed when they move on, taken anew, taken back, and kept."""

from dataclasses import replace

import pytest

from cookout.core.kitchen.recipe import GearUse
from cookout.core.planning.event import Event as CoreEvent
from cookout.services import event_recipes, recipes
from cookout.services.editing import undo_edit
from cookout.services.errors import NoSuchThingError
from cookout.store.models import Event, EventRecipe, Recipe, User
from cookout.store.selectors.events import event_of
from cookout.store.selectors.recipes import recipe_of
from tests.core.starter_box import starter
from tests.store.cast import a_user, an_event

pytestmark = pytest.mark.django_db


@pytest.fixture
def cook() -> User:
    """The owner of box and event."""
    return a_user("cook@meadow.example")


@pytest.fixture
def event(cook: User) -> Event:
    """The supper."""
    return an_event(cook)


@pytest.fixture
def row(cook: User) -> Recipe:
    """A recipe in the box."""
    return recipes.create_recipe(owner_id=cook.pk, recipe=starter("camp-cornbread"), units="us")


def core(event: Event) -> CoreEvent:
    """The event as it stands."""
    event.refresh_from_db()
    return event_of(event)


def put_in(event: Event, row: Recipe, people: int | None = None) -> str:
    """Put the recipe on the supper's table; the id of the dish."""
    _edit, dish = event_recipes.add_recipe_to_event(
        event_id=event.pk, user_id=row.owner_id, recipe_id=row.pk, serving_id="table", people=people
    )
    assert dish is not None
    return dish


def changed(row: Recipe, name: str) -> None:
    """Save the recipe under another name."""
    row.refresh_from_db()
    assert row.current is not None
    recipe = replace(recipe_of(row.current), name=name)
    recipes.save_recipe(recipe_id=row.pk, recipe=recipe, units="us", was=row.current.number)


def moved(event: Event, user: User) -> list[tuple[str, int | None, int]]:
    """Which recipes of the event have moved on, from which version to which."""
    found = event_recipes.moved_on(event=event, core=core(event), user_id=user.pk)
    return [(each.key, each.taken, each.number) for each in found]


def test_a_recipe_put_into_an_event_is_there_with_a_dish_of_the_serving(event: Event, row: Recipe) -> None:
    dish = put_in(event, row, people=20)
    there = core(event)
    assert there.dish(dish).people == 20  # type: ignore[arg-type]
    assert there.dish(dish).serving == "table"  # type: ignore[arg-type]
    assert there.recipes[-1] == replace(starter("camp-cornbread"), id=there.recipes[-1].id)


def test_a_second_dish_of_it_uses_the_recipe_that_is_there(event: Event, row: Recipe) -> None:
    put_in(event, row)
    changed(row, "Other cornbread")
    put_in(event, row)
    assert [recipe.name for recipe in core(event).recipes].count("Camp cornbread") == 1
    assert len([dish for dish in core(event).dishes if dish.recipe == "camp-cornbread"]) == 2


def test_a_recipe_whose_id_is_taken_by_another_gets_one_of_its_own(event: Event, cook: User) -> None:
    namesake = replace(starter("camp-cornbread"), name="Cucumber salad")
    row = recipes.create_recipe(owner_id=cook.pk, recipe=namesake, units="us")
    put_in(event, row)
    assert core(event).recipes[-1].id == "cucumber-salad-2"


def test_a_recipe_can_go_into_an_event_without_a_serving(event: Event, row: Recipe) -> None:
    edit, dish = event_recipes.add_recipe_to_event(event_id=event.pk, user_id=row.owner_id, recipe_id=row.pk)
    assert edit is not None
    assert dish is None
    assert core(event).recipes[-1].name == "Camp cornbread"


def test_an_event_says_when_a_recipe_has_moved_on_and_takes_the_new_version(
    event: Event, row: Recipe, cook: User
) -> None:
    put_in(event, row)
    assert moved(event, cook) == []
    changed(row, "Better cornbread")
    assert moved(event, cook) == [("camp-cornbread", 1, 2)]
    edit = event_recipes.take_new_version(event_id=event.pk, user_id=cook.pk, key="camp-cornbread")
    assert core(event).recipes[-1].name == "Better cornbread"
    assert moved(event, cook) == []
    assert edit is not None
    undo_edit(event_id=event.pk, user_id=cook.pk, edit_id=edit.pk, words="taken back")
    assert moved(event, cook) == [("camp-cornbread", 1, 2)]


def test_a_recipe_brought_back_to_what_the_event_has_has_not_moved_on(event: Event, row: Recipe, cook: User) -> None:
    put_in(event, row)
    changed(row, "Better cornbread")
    recipes.bring_back_version(recipe_id=row.pk, number=1, units="us")
    assert moved(event, cook) == []


def test_a_recipe_changed_in_the_event_itself_is_told_apart(event: Event, row: Recipe, cook: User) -> None:
    put_in(event, row)
    Event.objects.filter(pk=event.pk).update(document=event_text(event).replace("Mix the cornbread", "Stir it"))
    assert moved(event, cook) == [("camp-cornbread", None, 1)]


def event_text(event: Event) -> str:
    """The event's file as it stands."""
    event.refresh_from_db()
    return event.document


def test_nobody_puts_the_recipe_of_another_into_an_event_or_hears_of_its_versions(event: Event, row: Recipe) -> None:
    other = a_user("other@elsewhere.example")
    with pytest.raises(NoSuchThingError):
        event_recipes.add_recipe_to_event(event_id=event.pk, user_id=other.pk, recipe_id=row.pk)
    put_in(event, row)
    changed(row, "Better cornbread")
    assert moved(event, other) == []
    with pytest.raises(NoSuchThingError):
        event_recipes.take_new_version(event_id=event.pk, user_id=other.pk, key="camp-cornbread")


def test_what_was_thrown_away_cannot_be_put_in_and_moves_nothing_on(event: Event, row: Recipe, cook: User) -> None:
    put_in(event, row)
    changed(row, "Better cornbread")
    recipes.delete_recipe(recipe_id=row.pk)
    assert moved(event, cook) == []
    with pytest.raises(NoSuchThingError):
        put_in(event, row)


def test_a_recipe_of_an_event_can_be_kept_in_the_box_and_the_event_knows_it_from_then_on(
    event: Event, cook: User
) -> None:
    kept = event_recipes.keep_in_box(event=event, user_id=cook.pk, key="peach-cobbler", units="us")
    assert kept.origin == "out of the event Supper under the box elder"
    assert moved(event, cook) == []
    changed(kept, "Peach cobbler, crisper")
    assert moved(event, cook) == [("peach-cobbler", 1, 2)]
    assert EventRecipe.objects.filter(event=event).count() == 1


def test_gear_of_one_event_is_named_by_its_kind_in_the_box(event: Event) -> None:
    there = core(event)
    salad = next(recipe for recipe in there.recipes if recipe.id == "cucumber-salad")
    own = replace(salad, steps=(replace(salad.steps[0], gear=(GearUse("ice-chest"),)),))
    assert event_recipes.without_own_gear(there, own).steps[0].gear == (GearUse("cooler"),)


def test_what_an_event_lacks_for_a_recipe_is_told(event: Event) -> None:
    found = event_recipes.lacking(core(event), starter("cocoa-layer-cake"))
    assert (found.skills, found.gear, found.ovens) == (("icing",), ("mixer", "rack", "trivet"), ())
    assert event_recipes.lacking(core(event), starter("camp-cornbread")).nothing
