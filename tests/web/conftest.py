"""The cast of the pages: who looks at them."""

import pytest
from django.test import Client

from tests.store.cast import Cast, the_cast


@pytest.fixture
def cast(db: None) -> Cast:
    """The fixed cast, stored."""
    return the_cast()


@pytest.fixture
def owner(cast: Cast) -> Client:
    """The browser of the event's owner."""
    return _signed_in(cast.owner.pk)


@pytest.fixture
def stranger(cast: Cast) -> Client:
    """The browser of somebody else with an account."""
    return _signed_in(cast.stranger.pk)


@pytest.fixture
def planner(cast: Cast) -> Client:
    """The browser of a co-planner of the event."""
    return _signed_in(cast.planner.pk)


@pytest.fixture
def viewer(cast: Cast) -> Client:
    """The browser of somebody who may look at the event."""
    return _signed_in(cast.viewer.pk)


@pytest.fixture
def nobody(cast: Cast) -> Client:
    """A browser without an account; with a token, a helper's."""
    return Client()


def _signed_in(user_id: int) -> Client:
    from cookout.store.models import User

    client = Client()
    client.force_login(User.objects.get(pk=user_id))
    return client
