"""What stands before every page: who may read it. "Not there" and "not yours" look the same from outside."""

from typing import cast
from uuid import UUID

from django.contrib.auth.decorators import login_required
from django.http import Http404, HttpRequest

from cookout.core.planning.record import PlannedHelper, PlanRecord
from cookout.services import links
from cookout.store.selectors.events import Event, get_owned_event
from cookout.store.selectors.links import Link
from cookout.store.selectors.plan import PlanRun, get_run
from cookout.store.selectors.revisions import Revision, get_current, get_revision, record_of
from cookout.web.reading.tasks import helper_of

signed_in = login_required(login_url="sign-in")
"""For pages of planners: others go to the sign-in page and come back from there."""


def user_id_of(request: HttpRequest) -> int:
    """The signed-in user's id; only behind `signed_in`."""
    return cast("int", request.user.pk)


def own_event(request: HttpRequest, event: UUID) -> Event:
    """The event, if it is the user's own."""
    found = get_owned_event(owner_id=user_id_of(request), public_id=event)
    if found is None:
        raise Http404("no such event")
    return found


def own_run(request: HttpRequest, event: UUID, run: int) -> PlanRun:
    """The run, if it belongs to the user's own event."""
    found = get_run(event_id=own_event(request, event).pk, run_id=run)
    if found is None:
        raise Http404("no such run")
    return found


def own_revision(request: HttpRequest, event: UUID, number: int) -> tuple[Event, Revision]:
    """The event and one of its revisions, if the event is the user's own."""
    owned = own_event(request, event)
    found = get_revision(event_id=owned.pk, number=number)
    if found is None:
        raise Http404("no such revision")
    return owned, found


def own_plan(request: HttpRequest, event: UUID) -> tuple[Event, Revision, PlanRecord]:
    """The user's own event with its current plan."""
    owned = own_event(request, event)
    if owned.current is None:
        raise Http404("no plan yet")
    return owned, owned.current, record_of(owned.current)


def planned_helper(record: PlanRecord, helper: str) -> PlannedHelper:
    """One of the plan's helpers."""
    found = helper_of(record, helper)
    if found is None:
        raise Http404("no such helper")
    return found


def open_link(token: str) -> Link:
    """The link that the token opens."""
    found = links.find_by_token(token)
    if found is None:
        raise Http404("no such link")
    return found


def plan_of_link(link: Link) -> tuple[Revision, PlanRecord]:
    """The current plan of the link's event."""
    found = get_current(event_id=link.event_id)
    if found is None:
        raise Http404("no plan yet")
    return found, record_of(found)
