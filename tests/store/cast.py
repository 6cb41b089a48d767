"""The fixed cast: an owner with a planned event, those who share it, her helpers, a stranger, and nobody.

The plan is the sample of `tests.samples`, stored by the same service that stores real ones.
"""

from dataclasses import dataclass
from pathlib import Path

from cookout.core.planning.record import PlanRecord
from cookout.services import accounts, events, links, revisions, sharing
from cookout.store.models import Event, Revision, User
from tests.samples import sample_record

EXAMPLES = Path(__file__).resolve().parents[2] / "fixtures" / "events"
OWNER, STRANGER = "owner@meadow.example", "stranger@elsewhere.example"
PLANNER, VIEWER = "along@meadow.example", "looker@meadow.example"
HELPER, OTHER_HELPER = "runa", "tomasz"


@dataclass(frozen=True)
class Cast:
    """Who plays, and what they have; the tokens are those of open links."""

    owner: User
    stranger: User
    event: Event
    helper_token: str
    event_token: str
    planner: User
    viewer: User


def example_text(name: str = "supper") -> str:
    """The text of one of the shipped event files."""
    return (EXAMPLES / f"{name}.toml").read_text(encoding="utf-8")


def a_user(email: str) -> User:
    """A planner; without a password, since hashing one well takes half a second."""
    return accounts.create_user(email=email)


def an_event(owner: User) -> Event:
    """The shipped supper, not planned."""
    return events.create_event(owner_id=owner.pk, document=example_text(), file_name="supper.toml")


def a_member(event: Event, email: str, role: str) -> User:
    """Somebody who shares the event."""
    user = a_user(email)
    fresh = sharing.invite(event_id=event.pk, user_id=event.owner_id, role=role)
    sharing.take_invitation(token=fresh.token, user_id=user.pk)
    return user


def plan_it(event: Event, record: PlanRecord | None = None) -> Revision:
    """Store a plan of the event (the sample where none is given) as its newest revision."""
    return revisions.save_revision(event_id=event.pk, record=record or sample_record(), document=event.document)


def the_cast() -> Cast:
    """Everyone, with the owner's event planned and two links handed out."""
    owner, stranger = a_user(OWNER), a_user(STRANGER)
    event = an_event(owner)
    plan_it(event)
    event.refresh_from_db()
    return Cast(
        owner=owner,
        stranger=stranger,
        event=event,
        helper_token=links.make_helper_link(event_id=event.pk, helper_id=HELPER).token,
        event_token=links.make_event_link(event_id=event.pk).token,
        planner=a_member(event, PLANNER, "planner"),
        viewer=a_member(event, VIEWER, "viewer"),
    )
