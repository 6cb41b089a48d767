"""Sharing an event: invitations, members and their roles, handing the event over."""

from dataclasses import dataclass
from datetime import timedelta

from django.db import IntegrityError, transaction
from django.utils import timezone
from django.utils.translation import gettext as _

from cookout.services import mail
from cookout.services.errors import InvitationError, NoSuchThingError
from cookout.services.tokens import fresh_token, hash_of
from cookout.store.models import Event, Invitation, Membership, Role, User
from cookout.store.selectors import sharing

OPEN_DAYS = 14
GIVEN = (Role.PLANNER, Role.VIEWER)


@dataclass(frozen=True, slots=True)
class FreshInvitation:
    """An invitation just made, with its token, which is not stored and cannot be shown again.

    A `mailed` one is for whoever reads that mailbox, and is shown to nobody else: who takes it has shown that the
    address is theirs.
    """

    invitation: Invitation
    token: str
    mailed: bool = False


def invite(*, event_id: int, user_id: int, role: str, email: str = "", address: str = "") -> FreshInvitation:
    """Ask somebody to share an event, as whoever opens the link or (with an `email`) that account alone.

    With an email the invitation is sent there where mail is set up; `address` is the link with ``TOKEN`` in its place.
    Raises `InvitationError` for the owner's own address, and what the mail server refused; then none is made.
    """
    event = Event.objects.select_related("owner").get(pk=event_id)
    email = email.strip().lower()
    if email == event.owner.email:
        raise InvitationError(_("That is the address of the owner, who has the event already. Write another."))
    token, now, mailed = fresh_token(), timezone.now(), bool(email) and mail.can_send()
    invitation = Invitation.objects.create(
        event=event,
        role=Role(role),
        email=email,
        token_hash=hash_of(token),
        made_by_id=user_id,
        made_at=now,
        expires_at=now + timedelta(days=OPEN_DAYS),
    )
    if mailed:
        _mail(invitation, event, address.replace("TOKEN", token))
    return FreshInvitation(invitation, token, mailed)


def find_invitation(token: str) -> Invitation | None:
    """The open invitation of that token with its event; None where it was taken, revoked, or is too old."""
    return sharing.get_open_invitation(token_hash=hash_of(token), now=timezone.now())


@transaction.atomic
def take_invitation(*, token: str, user_id: int) -> Event:
    """Make somebody a member; an invitation serves once.

    Raises `InvitationError` where it is not open, or is for another address. Whoever has the event already, or a
    part that may do more, keeps that.
    """
    found = find_invitation(token)
    user = User.objects.get(pk=user_id)
    if found is None:
        raise InvitationError(_("This invitation is no longer open. Ask for a new one."))
    if found.email and found.email != user.email:
        told = _("This invitation is for %(email)s. Sign in with that address to take it.") % {"email": found.email}
        raise InvitationError(told)
    if not Invitation.objects.filter(pk=found.pk, taken_at=None, revoked_at=None).update(taken_at=timezone.now()):
        raise InvitationError(_("This invitation was taken just now. Ask for a new one."))
    if found.event.owner_id != user_id:
        _join(found.event_id, user_id, Role(found.role))
    return found.event


def revoke_invitation(*, event_id: int, invitation_id: int) -> None:
    """Close an invitation that nobody took; one that is closed stays so."""
    open_ones = Invitation.objects.filter(event_id=event_id, pk=invitation_id, taken_at=None, revoked_at=None)
    open_ones.update(revoked_at=timezone.now())


def change_role(*, event_id: int, membership_id: int, role: str) -> None:
    """Give a member another role. `NoSuchThingError` where they have left."""
    if not Membership.objects.filter(event_id=event_id, pk=membership_id).update(role=Role(role)):
        raise NoSuchThingError(_("They no longer share this event. Invite them again."))


def remove_member(*, event_id: int, membership_id: int) -> None:
    """Let a member see the event no longer."""
    Membership.objects.filter(event_id=event_id, pk=membership_id).delete()


def leave(*, event_id: int, user_id: int) -> None:
    """Share an event no longer."""
    Membership.objects.filter(event_id=event_id, user_id=user_id).delete()


@transaction.atomic
def hand_over(*, event_id: int, owner_id: int, membership_id: int) -> None:
    """Make a co-planner the owner; the owner, who `owner_id` is, becomes a co-planner.

    Raises `NoSuchThingError` where that member is no co-planner or the event is no longer the owner's (a button pressed
    twice would hand it back), and `InvitationError` where the new owner has an event with the same id.
    """
    event = Event.objects.select_for_update().get(pk=event_id)
    member = Membership.objects.filter(event_id=event_id, pk=membership_id, role=Role.PLANNER).first()
    if member is None or event.owner_id != owner_id:
        raise NoSuchThingError(_("Only a co-planner can become the owner. Make them one first."))
    before = event.owner_id
    try:
        with transaction.atomic():
            Event.objects.filter(pk=event_id).update(owner_id=member.user_id)
    except IntegrityError as error:
        told = _("They have an event with the same id in its file. One of the two needs another.")
        raise InvitationError(told) from error
    Membership.objects.filter(pk=member.pk).update(user_id=before)


def _mail(invitation: Invitation, event: Event, link: str) -> None:
    """Send it with no transaction open, which a slow mail server would make all others wait for."""
    values = {"event": event, "invitation": invitation, "link": link}
    try:
        mail.send(to=invitation.email, template="cookout/mail/invitation.txt", values=values)
    except Exception:
        invitation.delete()
        raise


def _join(event_id: int, user_id: int, role: Role) -> None:
    member, made = Membership.objects.get_or_create(event_id=event_id, user_id=user_id, defaults={"role": role})
    if not made and role == Role.PLANNER:
        Membership.objects.filter(pk=member.pk).update(role=role)
