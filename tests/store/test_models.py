"""What the rows themselves refuse."""

from datetime import datetime

import pytest
from django.db import IntegrityError, transaction
from django.utils import timezone

from cookout.store.models import Link, PlanRun, Revision, RevisionFixedError, User
from cookout.store.selectors.events import get_event_for, list_events, next_serving
from cookout.store.selectors.plan import read_wish
from tests.store.cast import OWNER, STRANGER, a_user, an_event, plan_it

pytestmark = pytest.mark.django_db


def test_a_stored_revision_never_changes() -> None:
    revision = plan_it(an_event(a_user(OWNER)))
    revision.status = "best_found"
    with pytest.raises(RevisionFixedError):
        revision.save()
    assert Revision.objects.get().status == "proved_best"


def test_two_revisions_cannot_share_a_number() -> None:
    revision = plan_it(an_event(a_user(OWNER)))
    twin = Revision(event=revision.event, number=1, status="x", payload={}, document="", made_at=timezone.now())
    with pytest.raises(IntegrityError), transaction.atomic():
        twin.save()


def test_an_event_has_one_active_run_even_where_nobody_asked_first() -> None:
    event = an_event(a_user(OWNER))
    fields = {"limit_seconds": 1, "limit_workers": 1, "limit_seed": 1, "queued_at": timezone.now(), "document": ""}
    PlanRun.objects.create(event=event, state="running", **fields)
    PlanRun.objects.create(event=event, state="done", **fields)
    with pytest.raises(IntegrityError), transaction.atomic():
        PlanRun.objects.create(event=event, state="queued", **fields)


def test_a_helper_has_one_open_link_even_where_nobody_ended_the_first() -> None:
    event = an_event(a_user(OWNER))
    Link.objects.create(event=event, helper="runa", token_hash="1", created_at=timezone.now())
    with pytest.raises(IntegrityError), transaction.atomic():
        Link.objects.create(event=event, helper="runa", token_hash="2", created_at=timezone.now())


def test_a_user_needs_an_address() -> None:
    with pytest.raises(ValueError, match="e-mail"):
        User.objects.create_user("")
    assert User.objects.create_superuser("Root@Meadow.example", "x").is_staff


def test_an_event_is_found_by_its_owner_alone() -> None:
    owner, stranger = a_user(OWNER), a_user(STRANGER)
    event = an_event(owner)
    assert get_event_for(user_id=owner.pk, public_id=event.public_id) == event
    assert get_event_for(user_id=stranger.pk, public_id=event.public_id) is None
    assert list(list_events(user_id=stranger.pk)) == []


def test_the_next_serving_is_the_first_not_yet_past_else_the_last() -> None:
    event = an_event(a_user(OWNER))
    event.servings = [
        {"name": "Noon", "at": "2027-06-12T12:00:00-06:00"},
        {"name": "Evening", "at": "2027-06-12T18:00:00-06:00"},
    ]
    noon, evening = (next_serving(event, now=datetime.fromisoformat(each["at"])) for each in event.servings)
    assert noon is not None
    assert evening is not None
    assert (noon[0], evening[0]) == ("Noon", "Evening")
    later = next_serving(event, now=datetime.fromisoformat("2028-01-01T00:00:00+00:00"))
    assert later is not None
    assert later[0] == "Evening"
    event.servings = []
    assert next_serving(event, now=timezone.now()) is None


def test_a_deleted_run_counts_as_cancelled() -> None:
    assert read_wish(run_id=12345) == "cancel"
