"""The recipe box: versions that never change, copies, throwing away with a way back, links, and the starter box."""

from dataclasses import replace
from datetime import timedelta

import pytest
from django.conf import settings
from django.utils import timezone

from cookout.core.kitchen.recipe import Recipe as CoreRecipe
from cookout.core.kitchen.recipe import RecipeId
from cookout.services import recipe_sharing, recipes, starters
from cookout.services.errors import NoSuchThingError, RecipeChangedError, TooMuchError
from cookout.store.models import Recipe, RecipeVersion, User
from cookout.store.models.recipes import RecipeVersionFixedError
from cookout.store.selectors.recipes import (
    get_deleted_recipe,
    get_recipe_for,
    list_deleted_recipes,
    list_recipes,
    list_versions,
    recipe_of,
)
from tests.core.starter_box import NAMES, starter
from tests.store.cast import a_user

pytestmark = pytest.mark.django_db


@pytest.fixture
def cook() -> User:
    """Somebody with an empty box."""
    return a_user("cook@meadow.example")


@pytest.fixture
def row(cook: User) -> Recipe:
    """A recipe in the box."""
    return recipes.create_recipe(owner_id=cook.pk, recipe=starter("beef-stew"), units="us")


def current(row: Recipe) -> CoreRecipe:
    """The recipe as the box has it."""
    row.refresh_from_db()
    assert row.current is not None
    return recipe_of(row.current)


def renamed(row: Recipe, name: str) -> CoreRecipe:
    """The same recipe under another name."""
    return replace(current(row), name=name)


def test_a_recipe_in_the_box_is_the_recipe_that_was_put_there(row: Recipe) -> None:
    assert current(row) == replace(starter("beef-stew"), id=RecipeId("beef-and-root-stew"))
    assert (row.key, row.name, row.serves, row.food) == (
        "beef-and-root-stew",
        "Beef and root stew",
        12,
        "stew_and_beans",
    )


def test_two_recipes_of_one_name_have_ids_of_their_own(cook: User, row: Recipe) -> None:
    second = recipes.create_recipe(owner_id=cook.pk, recipe=starter("beef-stew"), units="us")
    assert second.key == "beef-and-root-stew-2"


def test_each_save_is_a_version_and_the_ones_before_stay_as_they_were(row: Recipe) -> None:
    first = current(row)
    saved = recipes.save_recipe(recipe_id=row.pk, recipe=renamed(row, "Fire stew"), units="us", was=1, note="shorter")
    assert saved is not None
    assert (saved.number, saved.note) == (2, "shorter")
    assert [recipe_of(version).name for version in list_versions(recipe_id=row.pk)] == ["Fire stew", first.name]
    row.refresh_from_db()
    assert (row.name, row.current_id) == ("Fire stew", saved.pk)


def test_a_stored_version_cannot_be_changed(row: Recipe) -> None:
    version = RecipeVersion.objects.get(recipe=row)
    with pytest.raises(RecipeVersionFixedError):
        version.save()


@pytest.mark.parametrize("units", ["us", "metric"])
def test_a_save_without_a_change_makes_no_version(row: Recipe, units: str) -> None:
    assert recipes.save_recipe(recipe_id=row.pk, recipe=current(row), units=units, was=1) is None
    assert list_versions(recipe_id=row.pk).count() == 1


def test_a_save_typed_from_an_older_version_is_told_and_loses_nothing(row: Recipe) -> None:
    recipes.save_recipe(recipe_id=row.pk, recipe=renamed(row, "Hers"), units="us", was=1)
    with pytest.raises(RecipeChangedError) as told:
        recipes.save_recipe(recipe_id=row.pk, recipe=renamed(row, "His"), units="us", was=1)
    assert told.value.number == 2
    assert current(row).name == "Hers"


def test_an_earlier_version_can_be_brought_back_as_the_newest(row: Recipe) -> None:
    first = current(row)
    recipes.save_recipe(recipe_id=row.pk, recipe=renamed(row, "Other"), units="us", was=1)
    back = recipes.bring_back_version(recipe_id=row.pk, number=1, units="us")
    assert back is not None
    assert back.number == 3
    assert current(row) == first
    assert recipes.bring_back_version(recipe_id=row.pk, number=3, units="us") is None
    with pytest.raises(NoSuchThingError):
        recipes.bring_back_version(recipe_id=row.pk, number=9, units="us")


def test_a_copy_is_apart_from_what_it_was_copied_from(cook: User, row: Recipe) -> None:
    copy = recipes.copy_recipe(recipe_id=row.pk, owner_id=cook.pk, units="us")
    recipes.save_recipe(recipe_id=copy.pk, recipe=renamed(copy, "Mine"), units="us", was=1)
    assert current(row).name == "Beef and root stew"
    assert copy.origin == "copied from Beef and root stew"


def test_what_was_thrown_away_can_be_had_back_for_some_days_and_is_then_gone(cook: User, row: Recipe) -> None:
    recipes.delete_recipe(recipe_id=row.pk)
    assert list(list_recipes(owner_id=cook.pk)) == []
    assert get_recipe_for(owner_id=cook.pk, public_id=row.public_id) is None
    assert get_deleted_recipe(owner_id=cook.pk, public_id=row.public_id) == row
    recipes.restore_recipe(recipe_id=row.pk)
    assert list(list_recipes(owner_id=cook.pk)) == [row]
    recipes.delete_recipe(recipe_id=row.pk)
    now = timezone.now()
    assert recipes.forget_deleted(now=now + timedelta(days=settings.COOKOUT_KEEP_DELETED_DAYS - 1)) == 0
    assert recipes.forget_deleted(now=now + timedelta(days=settings.COOKOUT_KEEP_DELETED_DAYS + 1)) == 1
    assert list(list_deleted_recipes(owner_id=cook.pk)) == []


def test_what_is_gone_cannot_be_saved_copied_or_thrown_away_again(cook: User, row: Recipe) -> None:
    recipe = current(row)
    recipes.delete_recipe(recipe_id=row.pk)
    with pytest.raises(NoSuchThingError):
        recipes.save_recipe(recipe_id=row.pk, recipe=recipe, units="us", was=1)
    with pytest.raises(NoSuchThingError):
        recipes.copy_recipe(recipe_id=row.pk, owner_id=cook.pk, units="us")
    with pytest.raises(NoSuchThingError):
        recipes.delete_recipe(recipe_id=row.pk)


def test_a_recipe_of_endless_steps_is_refused_with_the_number_that_is_taken(cook: User) -> None:
    recipe = starter("cabbage-slaw")
    with pytest.raises(TooMuchError, match="60"):
        recipes.create_recipe(owner_id=cook.pk, recipe=replace(recipe, steps=recipe.steps * 61), units="us")


def test_a_full_box_takes_no_more(cook: User, row: Recipe, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(recipes, "MOST_RECIPES", 1)
    with pytest.raises(TooMuchError, match="Throw some away"):
        recipes.create_recipe(owner_id=cook.pk, recipe=starter("beef-stew"), units="us")


@pytest.mark.parametrize(
    ("words", "food", "found"),
    [
        ("stew", "", ["Beef and root stew"]),
        ("TROUT lemon", "", ["Trout fillets with lemon and dill"]),
        ("buttermilk", "", ["Camp cornbread", "Cocoa layer cake with butter icing"]),
        ("", "poultry", ["Lemon and thyme chicken thighs"]),
        ("buttermilk", "poultry", []),
    ],
)
def test_the_box_is_searched_by_name_ingredient_and_kind(cook: User, words: str, food: str, found: list[str]) -> None:
    starters.take_all_starters(owner_id=cook.pk, units="us")
    assert [row.name for row in list_recipes(owner_id=cook.pk, words=words, food=food)] == found


def test_nobody_gets_at_the_recipes_of_another(row: Recipe) -> None:
    other = a_user("other@elsewhere.example")
    assert list(list_recipes(owner_id=other.pk)) == []
    assert get_recipe_for(owner_id=other.pk, public_id=row.public_id) is None


def test_a_link_shows_the_recipe_and_whoever_has_it_may_take_a_copy(row: Recipe) -> None:
    token = recipe_sharing.share_recipe(recipe_id=row.pk)
    assert recipe_sharing.find_shared(token) == row
    other = a_user("other@elsewhere.example")
    taken = recipe_sharing.take_copy(token=token, owner_id=other.pk, units="metric")
    assert replace(current(taken), id=RecipeId(row.key)) == current(row)
    recipes.save_recipe(recipe_id=row.pk, recipe=renamed(row, "Changed since"), units="us", was=1)
    assert current(taken).name == "Beef and root stew"


def test_a_new_link_ends_the_one_before_and_so_does_throwing_away(row: Recipe) -> None:
    first, second = (recipe_sharing.share_recipe(recipe_id=row.pk) for _ in range(2))
    assert recipe_sharing.find_shared(first) is None
    assert recipe_sharing.find_shared(second) == row
    assert recipe_sharing.stop_sharing(recipe_id=row.pk)
    assert not recipe_sharing.stop_sharing(recipe_id=row.pk)
    third = recipe_sharing.share_recipe(recipe_id=row.pk)
    recipes.delete_recipe(recipe_id=row.pk)
    assert [recipe_sharing.find_shared(token) for token in (second, third, "", "made-up")] == [None] * 4
    with pytest.raises(NoSuchThingError, match="ended"):
        recipe_sharing.take_copy(token=third, owner_id=row.owner_id, units="us")


def test_only_the_hash_of_a_link_is_stored(row: Recipe) -> None:
    token = recipe_sharing.share_recipe(recipe_id=row.pk)
    row.refresh_from_db()
    assert token not in row.share_hash
    assert len(row.share_hash) == 64


def test_the_starter_box_is_offered_and_taken_once(cook: User) -> None:
    offered = starters.starters(owner_id=cook.pk)
    assert {each.name for each in offered} == set(NAMES)
    assert not any(each.taken for each in offered)
    one = starters.take_starter(owner_id=cook.pk, name="beef-stew", units="us")
    assert [each.name for each in starters.starters(owner_id=cook.pk) if each.taken] == ["beef-stew"]
    assert starters.take_all_starters(owner_id=cook.pk, units="us") == len(NAMES) - 1
    assert starters.take_all_starters(owner_id=cook.pk, units="us") == 0
    recipes.delete_recipe(recipe_id=one.pk)
    assert starters.take_all_starters(owner_id=cook.pk, units="us") == 1
    with pytest.raises(NoSuchThingError):
        starters.take_starter(owner_id=cook.pk, name="no-such", units="us")
