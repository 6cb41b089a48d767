"""The pages of the recipe box: looked at, searched, shared, taken along, put into events."""

import json
from dataclasses import replace

import pytest
from django.db import connection
from django.test import Client
from django.test.utils import CaptureQueriesContext
from django.urls import reverse

from cookout.core.eventfile import read_recipe
from cookout.core.kitchen.interchange import read_recipes
from cookout.services import event_recipes, recipes, starters
from cookout.store.models import Event, Recipe
from cookout.store.selectors.events import event_of
from cookout.store.selectors.recipes import recipe_of
from tests.core.starter_box import NAMES, starter
from tests.store.cast import Cast


@pytest.fixture
def row(cast: Cast) -> Recipe:
    """A recipe of the owner's box."""
    return recipes.create_recipe(owner_id=cast.owner.pk, recipe=starter("camp-cornbread"), units="us")


def page_of(client: Client, name: str, *args: object, **asked: str) -> str:
    """The text of a page that is there."""
    answer = client.get(reverse(name, args=args), asked)
    assert answer.status_code == 200
    return answer.content.decode()


def renamed(row: Recipe, name: str) -> None:
    """Save the recipe under another name."""
    row.refresh_from_db()
    assert row.current is not None
    recipe = replace(recipe_of(row.current), name=name)
    recipes.save_recipe(recipe_id=row.pk, recipe=recipe, units="us", was=row.current.number)


def test_an_empty_box_offers_the_starters_and_takes_all_or_one(owner: Client) -> None:
    page = page_of(owner, "recipes")
    assert "Your box is empty." in page
    assert f"Take all {len(NAMES)}" in page
    owner.post(reverse("recipe-starters-take"), {"name": "beef-stew"})
    assert f"Take all {len(NAMES) - 1}" in page_of(owner, "recipes")
    owner.post(reverse("recipe-starters-take"))
    page = page_of(owner, "recipes")
    assert "To start with" not in page
    assert "Pumpkin layer cake" in page
    assert owner.post(reverse("recipe-starters-take"), {"name": "no-such"}, follow=True).status_code == 200


@pytest.mark.parametrize("name", NAMES)
def test_every_starter_can_be_looked_at_before_it_is_taken(owner: Client, name: str) -> None:
    page = page_of(owner, "recipe-starter", name, people="40")
    assert starter(name).name in page
    assert owner.get(reverse("recipe-starter", args=["no-such"])).status_code == 404


def test_the_box_is_searched(owner: Client, row: Recipe) -> None:
    assert "Camp cornbread" in page_of(owner, "recipes", words="buttermilk")
    assert "No recipe of yours is like that." in page_of(owner, "recipes", words="lobster")
    assert "No recipe of yours is like that." in page_of(owner, "recipes", food="poultry")
    assert "Camp cornbread" in page_of(owner, "recipes", food="no such kind")


def test_a_recipe_is_reckoned_for_as_many_as_asked(owner: Client, row: Recipe) -> None:
    # It serves 10 and takes 1 1/2 cups of cornmeal and 2 eggs.
    page = page_of(owner, "recipe", row.public_id, people="20")
    assert '<span class="ingredient-amount">3 cups</span><span>cornmeal' in page
    assert '<span class="ingredient-amount">4</span><span>eggs' in page
    assert "makes 2 whole batches, for 20" in page
    for odd in ("", "0", "-3", "many", "99999999"):
        assert "cornmeal" in page_of(owner, "recipe", row.public_id, people=odd)


def test_amounts_ovens_and_temperatures_are_in_the_units_of_the_reader(owner: Client, cast: Cast, row: Recipe) -> None:
    cast.owner.units = "metric"
    cast.owner.save()
    page = page_of(owner, "recipe", row.public_id)
    assert '<span class="ingredient-amount">183 g</span><span>cornmeal' in page
    assert "25 cm oven, 204 °C" in page
    assert 'value="204.4444' in page_of(owner, "recipe-edit", row.public_id)


def test_the_page_shows_steps_coals_and_allergens(owner: Client, row: Recipe) -> None:
    page = page_of(owner, "recipe", row.public_id)
    assert page.count('class="strip"') == 2
    assert "on the lid" in page
    assert "Contains: milk, eggs, wheat." in page
    assert "style=" not in page


def test_a_recipe_goes_out_as_a_file_and_for_other_programs(owner: Client, row: Recipe) -> None:
    file = owner.get(reverse("recipe-file", args=[row.public_id]))
    assert file.headers["Content-Disposition"] == 'attachment; filename="camp-cornbread.toml"'
    assert read_recipe(file.content.decode(), "out.toml") == starter("camp-cornbread")
    linked = owner.get(reverse("recipe-jsonld", args=[row.public_id])).content.decode()
    assert json.loads(linked)["name"] == "Camp cornbread"
    (draft,) = read_recipes(linked)
    assert draft.questions == ()


def test_a_copy_is_opened_to_be_named(owner: Client, row: Recipe) -> None:
    answer = owner.post(reverse("recipe-copy", args=[row.public_id]), follow=True)
    assert "Camp cornbread, copy" in answer.content.decode()
    assert Recipe.objects.count() == 2


def test_what_is_thrown_away_is_undone_with_one_button(owner: Client, row: Recipe) -> None:
    page = owner.post(reverse("recipe-delete", args=[row.public_id]), follow=True).content.decode()
    assert "is thrown away. Events that have it keep it." in page
    assert f'action="{reverse("recipe-restore", args=[row.public_id])}"' in page
    assert "can be had back for 14 days" in page
    owner.post(reverse("recipe-restore", args=[row.public_id]))
    assert "Camp cornbread" in page_of(owner, "recipe", row.public_id)


def test_two_versions_are_held_side_by_side_and_one_is_brought_back(owner: Client, row: Recipe) -> None:
    renamed(row, "Better cornbread")
    page = page_of(owner, "recipe-versions", row.public_id, first="1", second="2")
    assert '<del><span class="unseen">gone: </span>Camp cornbread</del>' in page
    assert '<ins><span class="unseen">new: </span>Better cornbread</ins>' in page
    assert "Camp cornbread" in page_of(owner, "recipe-version", row.public_id, 1)
    page = owner.post(reverse("recipe-version-back", args=[row.public_id, 1]), follow=True).content.decode()
    assert "Version 1 is back, as version 3." in page
    assert owner.get(reverse("recipe-version", args=[row.public_id, 9])).status_code == 404
    assert "no such" not in page_of(owner, "recipe-versions", row.public_id, first="x", second="99")


def test_a_link_is_shown_once_and_can_be_ended(owner: Client, row: Recipe) -> None:
    answer = owner.post(reverse("recipe-share", args=[row.public_id]))
    page = answer.content.decode()
    assert "/r/" in page
    assert answer.headers["Cache-Control"] == "no-store"
    assert "End the link" in page_of(owner, "recipe", row.public_id)
    owner.post(reverse("recipe-share-end", args=[row.public_id]))
    assert "End the link" not in page_of(owner, "recipe", row.public_id)


def test_a_recipe_goes_into_an_event_in_two_clicks(owner: Client, cast: Cast, row: Recipe) -> None:
    place = reverse("recipe-into-event", args=[row.public_id])
    assert cast.event.name in owner.get(place).content.decode()
    page = owner.get(f"{place}?event={cast.event.public_id}").content.decode()
    assert '<option value="table" selected>' in page
    sent = {"event": str(cast.event.public_id), "serving_id": "table", "people": "6"}
    answer = owner.post(place, sent)
    assert answer.headers["Location"].startswith(reverse("event-menu", args=[cast.event.public_id]) + "#dishes-")
    event = event_of(Event.objects.get(pk=cast.event.pk))
    assert (event.dishes[-1].recipe, event.dishes[-1].people) == ("camp-cornbread", 6)
    assert owner.post(place, sent | {"people": "none"}).status_code == 422


def test_what_the_event_lacks_for_it_is_told_beforehand(owner: Client, cast: Cast) -> None:
    row = recipes.create_recipe(owner_id=cast.owner.pk, recipe=starter("cocoa-layer-cake"), units="us")
    page = owner.get(reverse("recipe-into-event", args=[row.public_id]) + f"?event={cast.event.public_id}")
    text = page.content.decode()
    assert "Nobody in the crew can: icing" in text
    assert "No gear of this kind: mixers, cooling racks, trivets" in text


def test_an_event_shows_its_recipe_for_all_who_eat_of_it(viewer: Client, cast: Cast) -> None:
    page = page_of(viewer, "event-recipe", cast.event.public_id, "peach-cobbler")
    assert 'name="people" inputmode="numeric" min="1" max="1000" value="8"' in page
    assert viewer.get(reverse("event-recipe", args=[cast.event.public_id, "no-such"])).status_code == 404


def test_an_event_says_that_a_recipe_has_moved_on_and_takes_the_new_version(
    owner: Client, planner: Client, cast: Cast, row: Recipe
) -> None:
    event_recipes.add_recipe_to_event(
        event_id=cast.event.pk, user_id=cast.owner.pk, recipe_id=row.pk, serving_id="table"
    )
    renamed(row, "Better cornbread")
    key = "camp-cornbread"
    page = page_of(owner, "event-recipe", cast.event.public_id, key)
    assert "this event has version 1, your box has version 2" in page
    assert "has moved on" not in page_of(planner, "event-recipe", cast.event.public_id, key)
    assert "has moved on" in page_of(owner, "event-menu", cast.event.public_id)
    page = owner.post(reverse("event-recipe-renew", args=[cast.event.public_id, key]), follow=True).content.decode()
    assert "Better cornbread: version 2 taken" in page
    assert "has moved on" not in page_of(owner, "event-recipe", cast.event.public_id, key)


def test_a_member_keeps_a_recipe_of_the_event_in_a_box_of_their_own(viewer: Client, cast: Cast) -> None:
    place = reverse("event-recipe-keep", args=[cast.event.public_id, "peach-cobbler"])
    assert "Peach cobbler is in your box now." in viewer.post(place, follow=True).content.decode()
    assert Recipe.objects.get().owner == cast.viewer


@pytest.mark.parametrize("name", ["recipes", "recipe", "recipe-edit", "recipe-versions", "recipe-into-event"])
def test_a_page_of_a_full_box_asks_the_database_little(owner: Client, cast: Cast, row: Recipe, name: str) -> None:
    starters.take_all_starters(owner_id=cast.owner.pk, units="us")
    place = reverse(name, args=[] if name == "recipes" else [row.public_id])
    with CaptureQueriesContext(connection) as asked:
        assert owner.get(place).status_code == 200
    assert len(asked) <= 12
