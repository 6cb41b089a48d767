"""Links: stored as hashes, shown once, replaced, ended."""

import pytest

from cookout.services import links
from cookout.services.errors import NoSuchThingError
from cookout.store.models import Event, Link
from tests.store.cast import OWNER, a_user, an_event

pytestmark = pytest.mark.django_db


@pytest.fixture
def event() -> Event:
    return an_event(a_user(OWNER))


def test_a_token_opens_its_link_and_is_not_stored(event: Event) -> None:
    fresh = links.make_helper_link(event_id=event.pk, helper_id="runa")
    assert links.find_by_token(fresh.token) == fresh.link
    stored = Link.objects.values_list("token_hash", flat=True).get()
    assert fresh.token not in stored
    assert len(fresh.token) >= 43  # 32 bytes of chance in base 64


def test_a_new_link_ends_the_one_before_and_no_other(event: Event) -> None:
    first = links.make_helper_link(event_id=event.pk, helper_id="runa")
    other = links.make_helper_link(event_id=event.pk, helper_id="tomasz")
    second = links.make_helper_link(event_id=event.pk, helper_id="runa")
    assert links.find_by_token(first.token) is None
    assert links.find_by_token(second.token) == second.link
    assert links.find_by_token(other.token) == other.link


def test_an_ended_link_opens_nothing(event: Event) -> None:
    fresh = links.make_event_link(event_id=event.pk)
    assert links.revoke_link(event_id=event.pk) is True
    assert links.find_by_token(fresh.token) is None
    assert links.revoke_link(event_id=event.pk) is False


@pytest.mark.parametrize("token", ["", "x", "runa", "\x00", "ü" * 500])
def test_a_made_up_token_opens_nothing(event: Event, token: str) -> None:
    links.make_helper_link(event_id=event.pk, helper_id="runa")
    assert links.find_by_token(token) is None


def test_a_hash_is_no_token(event: Event) -> None:
    fresh = links.make_helper_link(event_id=event.pk, helper_id="runa")
    assert links.find_by_token(fresh.link.token_hash) is None


def test_links_need_a_helper_and_an_event(event: Event) -> None:
    with pytest.raises(NoSuchThingError):
        links.make_helper_link(event_id=event.pk, helper_id="")
    with pytest.raises(NoSuchThingError):
        links.make_event_link(event_id=event.pk + 1)
