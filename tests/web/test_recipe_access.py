"""The recipe box against everyone: its owner, members of a shared event, a stranger, nobody, and who has a link."""

from uuid import uuid4

import pytest
from django.test import Client
from django.urls import reverse

from cookout.services import recipe_sharing, recipes
from cookout.store.models import Recipe
from tests.core.starter_box import starter
from tests.store.cast import Cast
from tests.web.looking import unmasked
from tests.web.recipe_addresses import BOX_PAGES, RECIPE_PAGES, SHARED_PAGES


@pytest.fixture
def row(cast: Cast) -> Recipe:
    """A recipe of the owner's box."""
    return recipes.create_recipe(owner_id=cast.owner.pk, recipe=starter("beef-stew"), units="us")


def place_of(name: str, public_id: object) -> str:
    """The address of a page of a recipe."""
    numbered = name in ("recipe-version", "recipe-version-back")
    return reverse(name, args=[public_id, 1] if numbered else [public_id])


def box_place(name: str) -> str:
    """The address of a page of the box."""
    return reverse(name, args=["beef-stew"] if name == "recipe-starter" else [])


@pytest.mark.parametrize("name", RECIPE_PAGES)
def test_the_owner_gets_the_page(owner: Client, row: Recipe, name: str) -> None:
    method, status = RECIPE_PAGES[name]
    assert getattr(owner, method)(place_of(name, row.public_id)).status_code == status


@pytest.mark.parametrize("name", RECIPE_PAGES)
@pytest.mark.parametrize("role", ["planner", "viewer", "stranger"])
def test_everybody_else_is_refused_as_if_nothing_were_there(
    request: pytest.FixtureRequest, row: Recipe, name: str, role: str
) -> None:
    client, (method, _status) = request.getfixturevalue(role), RECIPE_PAGES[name]
    refused = getattr(client, method)(place_of(name, row.public_id))
    missing = getattr(client, method)(place_of(name, uuid4()))
    assert (refused.status_code, missing.status_code) == (404, 404)
    assert unmasked(refused) == unmasked(missing)
    row.refresh_from_db()
    assert row.deleted_at is None


@pytest.mark.parametrize("name", [*RECIPE_PAGES, *BOX_PAGES])
def test_nobody_is_sent_to_sign_in(nobody: Client, row: Recipe, name: str) -> None:
    method = {**RECIPE_PAGES, **BOX_PAGES}[name][0]
    place = box_place(name) if name in BOX_PAGES else place_of(name, row.public_id)
    answer = getattr(nobody, method)(place)
    assert answer.status_code == 302
    assert answer.headers["Location"].startswith(reverse("sign-in") + "?next=/recipes/")


@pytest.mark.parametrize("name", BOX_PAGES)
def test_everyone_with_an_account_has_a_box_of_their_own(stranger: Client, row: Recipe, name: str) -> None:
    method, status = BOX_PAGES[name]
    answer = getattr(stranger, method)(box_place(name))
    assert answer.status_code == status
    assert str(row.public_id) not in answer.content.decode()


@pytest.mark.parametrize("name", [*RECIPE_PAGES, *BOX_PAGES])
def test_the_wrong_way_of_asking_is_refused(owner: Client, row: Recipe, name: str) -> None:
    method = {**RECIPE_PAGES, **BOX_PAGES}[name][0]
    place = box_place(name) if name in BOX_PAGES else place_of(name, row.public_id)
    assert owner.put(place).status_code == 405
    if method == "post":
        assert owner.get(place).status_code == 405


def test_a_recipe_thrown_away_comes_back_for_its_owner_alone(owner: Client, stranger: Client, row: Recipe) -> None:
    recipes.delete_recipe(recipe_id=row.pk)
    place = place_of("recipe-restore", row.public_id)
    assert stranger.post(place).status_code == 404
    assert owner.get(place_of("recipe", row.public_id)).status_code == 404
    assert owner.post(place).status_code == 302
    assert owner.get(place_of("recipe", row.public_id)).status_code == 200


@pytest.mark.parametrize("role", ["owner", "planner", "stranger", "nobody"])
def test_a_link_shows_the_recipe_to_whoever_has_it_and_nothing_of_its_owner(
    request: pytest.FixtureRequest, cast: Cast, row: Recipe, role: str
) -> None:
    token = recipe_sharing.share_recipe(recipe_id=row.pk)
    answer = request.getfixturevalue(role).get(reverse("recipe-shared", args=[token]))
    page = answer.content.decode()
    assert answer.status_code == 200
    assert "Beef and root stew" in page
    assert str(row.public_id) not in page
    assert role == "owner" or cast.owner.email not in page
    assert answer.headers["X-Robots-Tag"] == "noindex, nofollow"
    assert answer.headers["Referrer-Policy"] == "same-origin"


def test_a_copy_behind_a_link_is_for_those_with_an_account(nobody: Client, stranger: Client, row: Recipe) -> None:
    token = recipe_sharing.share_recipe(recipe_id=row.pk)
    place = reverse("recipe-shared-take", args=[token])
    assert nobody.post(place).headers["Location"].startswith(reverse("sign-in"))
    taken = stranger.post(place)
    assert taken.status_code == 302
    assert stranger.get(taken.headers["Location"]).status_code == 200
    assert Recipe.objects.count() == 2


@pytest.mark.parametrize("name", SHARED_PAGES)
def test_a_made_up_link_opens_nothing(owner: Client, row: Recipe, name: str) -> None:
    place = reverse(name, args=["made-up"])
    assert getattr(owner, SHARED_PAGES[name])(place).status_code == 404
    assert owner.put(place).status_code == 405


def test_events_of_others_cannot_be_chosen(stranger: Client, viewer: Client, cast: Cast) -> None:
    for client, user in ((stranger, cast.stranger), (viewer, cast.viewer)):
        own = recipes.create_recipe(owner_id=user.pk, recipe=starter("beef-stew"), units="us")
        place = reverse("recipe-into-event", args=[own.public_id])
        for event in (cast.event.public_id, uuid4(), "made-up"):
            assert client.get(f"{place}?event={event}").status_code == 404
            assert client.post(place, {"event": event, "serving_id": "table"}).status_code == 404
