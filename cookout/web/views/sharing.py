"""Who shares an event: members, roles, invitations."""

from smtplib import SMTPException
from uuid import UUID

from django.http import HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.utils import timezone
from django.utils.translation import gettext as _
from django.views.decorators.http import require_GET, require_POST

from cookout.services import mail, sharing
from cookout.services.errors import ServiceError
from cookout.services.qr import qr_svg
from cookout.store.selectors.events import Event
from cookout.store.selectors.sharing import list_members, list_open_invitations
from cookout.web import answers, visitors
from cookout.web.forms.sharing import InviteForm, RoleForm
from cookout.web.guards import own_event, seen_event, signed_in, user_id_of

WRONG = 422
MOST_INVITATIONS = 60
"""An hour."""


@require_GET
@signed_in
def show(request: HttpRequest, event: UUID) -> HttpResponse:
    """Who shares the event, and as what; the owner asks others here."""
    return _page(request, seen_event(request, event), InviteForm())


@require_POST
@signed_in
def invite(request: HttpRequest, event: UUID) -> HttpResponse:
    """Ask somebody: by mail where an address is given and mail can be sent, else by a link that is shown this once."""
    owned = own_event(request, event)
    if visitors.comes_too_often(request, "invite", most=MOST_INVITATIONS):
        return visitors.turned_away(request)
    form = InviteForm(request.POST)
    if form.is_valid():
        address = answers.address(request, "invitation", token="TOKEN")  # noqa: S106  (stands for one)
        try:
            fresh = sharing.invite(event_id=owned.pk, user_id=user_id_of(request), address=address, **form.cleaned_data)
        except ServiceError as error:
            form.add_error("email", str(error))
        except (OSError, SMTPException):
            form.add_error(
                "email", _("The mail could not be sent. Leave the address out and hand on the link yourself.")
            )
        else:
            return _made(request, owned, fresh)
    return _page(request, owned, form, status=WRONG)


@require_POST
@signed_in
def revoke(request: HttpRequest, event: UUID, invitation: int) -> HttpResponse:
    """Close an invitation."""
    sharing.revoke_invitation(event_id=own_event(request, event).pk, invitation_id=invitation)
    answers.told(request, _("That invitation opens nothing any more."))
    return redirect("sharing", event)


@require_POST
@signed_in
def change_role(request: HttpRequest, event: UUID, member: int) -> HttpResponse:
    """Give a member another role."""
    owned = own_event(request, event)
    form = RoleForm(request.POST)
    if form.is_valid():
        try:
            sharing.change_role(event_id=owned.pk, membership_id=member, role=form.cleaned_data["role"])
        except ServiceError as error:
            answers.refused(request, str(error))
    return redirect("sharing", event)


@require_POST
@signed_in
def remove(request: HttpRequest, event: UUID, member: int) -> HttpResponse:
    """Let a member see the event no longer."""
    sharing.remove_member(event_id=own_event(request, event).pk, membership_id=member)
    answers.told(request, _("They see this event no longer."))
    return redirect("sharing", event)


@require_POST
@signed_in
def hand_over(request: HttpRequest, event: UUID, member: int) -> HttpResponse:
    """Make a co-planner the owner."""
    owned = own_event(request, event)
    try:
        sharing.hand_over(event_id=owned.pk, owner_id=user_id_of(request), membership_id=member)
    except ServiceError as error:
        answers.refused(request, str(error))
    else:
        answers.told(request, _("The event is theirs now; you plan along."))
    return redirect("sharing", event)


@require_POST
@signed_in
def leave(request: HttpRequest, event: UUID) -> HttpResponse:
    """Share the event no longer; its owner cannot leave it."""
    shared = seen_event(request, event)
    if shared.is_own:
        answers.refused(request, _("The event is yours. Hand it over first, or delete it."))
        return redirect("sharing", event)
    sharing.leave(event_id=shared.pk, user_id=user_id_of(request))
    answers.told(request, _("You no longer share “%(event)s”.") % {"event": shared.name})
    return redirect("start")


def _made(request: HttpRequest, event: Event, fresh: sharing.FreshInvitation) -> HttpResponse:
    page = {"event": event, "tab": "sharing", "invitation": fresh.invitation, "mailed": fresh.mailed}
    if not fresh.mailed:
        address = answers.address(request, "invitation", token=fresh.token)
        page |= {"address": address, "qr": qr_svg(address)}
    return answers.shown_once(render(request, "cookout/invitation_made.html", page))


def _page(request: HttpRequest, event: Event, form: InviteForm, *, status: int = 200) -> HttpResponse:
    page = {
        "event": event,
        "tab": "sharing",
        "form": form,
        "members": list_members(event_id=event.pk),
        "invitations": list_open_invitations(event_id=event.pk, now=timezone.now()) if event.is_own else (),
        "sends_mail": mail.can_send(),
    }
    return render(request, "cookout/sharing.html", page, status=status)
