"""Links for people without an account."""

from dataclasses import dataclass

from django.db import transaction
from django.utils import timezone
from django.utils.translation import gettext as _

from cookout.services.errors import NoSuchThingError
from cookout.services.tokens import fresh_token, hash_of
from cookout.store.models import Event, Link
from cookout.store.selectors import links


@dataclass(frozen=True, slots=True)
class FreshLink:
    """A link just made, with its token, which is not stored and cannot be shown again."""

    link: Link
    token: str


def make_helper_link(*, event_id: int, helper_id: str) -> FreshLink:
    """A new link to one helper's call sheet and calendar; one that the helper had before ends."""
    if not helper_id:
        raise NoSuchThingError(_("Name the helper whom the link is for."))
    return _replace(event_id, helper_id)


def make_event_link(*, event_id: int) -> FreshLink:
    """A new link to the calendar of the whole event; the one before ends."""
    return _replace(event_id, "")


@transaction.atomic
def revoke_link(*, event_id: int, helper_id: str = "") -> bool:
    """End the open link of a helper, or of the whole event; whether there was one."""
    open_links = Link.objects.filter(event_id=event_id, helper=helper_id, revoked_at__isnull=True)
    return open_links.update(revoked_at=timezone.now()) > 0


def find_by_token(token: str) -> Link | None:
    """The open link with that token, or None. Looked up by hash, so timing tells nothing of stored tokens."""
    return links.find_link(token_hash=hash_of(token))


@transaction.atomic
def _replace(event_id: int, helper_id: str) -> FreshLink:
    if not Event.objects.select_for_update().filter(pk=event_id).exists():
        raise NoSuchThingError(_("This event is gone. Go back to the list of events."))
    revoke_link(event_id=event_id, helper_id=helper_id)
    token = fresh_token()
    link = Link.objects.create(
        event_id=event_id, helper=helper_id, token_hash=hash_of(token), created_at=timezone.now()
    )
    return FreshLink(link, token)
