"""What stands before every page: who may read it. "Not there" and "not yours" look the same from outside."""

from collections.abc import Callable
from functools import wraps
from typing import Any, cast
from uuid import UUID

from django.contrib.auth.decorators import login_required
from django.core.exceptions import PermissionDenied
from django.http import Http404, HttpRequest, HttpResponse

from cookout.core.planning.record import PlannedHelper, PlanRecord
from cookout.services import links
from cookout.store.selectors.accounts import User
from cookout.store.selectors.events import Event, get_event_for, get_event_head_for
from cookout.store.selectors.links import Link
from cookout.store.selectors.plan import PlanRun, get_run
from cookout.store.selectors.revisions import Revision, get_current, get_revision, record_of
from cookout.web import answers, preferences
from cookout.web.reading.numbered import numbered
from cookout.web.reading.tasks import helper_of


def signed_in(view: Callable[..., HttpResponse]) -> Callable[..., HttpResponse]:
    """For pages of planners: others go to the sign-in page and come back from there. No cache shares such a page."""

    @wraps(view)
    def answered(request: HttpRequest, *args: Any, **kwargs: Any) -> HttpResponse:
        response = view(request, *args, **kwargs)
        response.headers.setdefault("Cache-Control", answers.PRIVATE)
        return response

    return login_required(answered, login_url="sign-in")


def user_id_of(request: HttpRequest) -> int:
    """The signed-in user's id; only behind `signed_in`."""
    return cast("int", request.user.pk)


def user_of(request: HttpRequest) -> User:
    """The signed-in user; only behind `signed_in`."""
    return cast("User", request.user)


def seen_event(request: HttpRequest, event: UUID) -> Event:
    """The event, if it is shared with the user in whatever part."""
    found = get_event_for(user_id=user_id_of(request), public_id=event)
    if found is None:
        raise Http404("no such event")
    return found


def seen_event_head(request: HttpRequest, event: UUID) -> Event:
    """The same without its documents and its plan, for what a page asks for again and again."""
    found = get_event_head_for(user_id=user_id_of(request), public_id=event)
    if found is None:
        raise Http404("no such event")
    return found


def edited_event(request: HttpRequest, event: UUID) -> Event:
    """The event, if the user may change it; whoever may only look is told so."""
    found = seen_event(request, event)
    if not found.may_edit:
        raise PermissionDenied("look only")
    return found


def own_event(request: HttpRequest, event: UUID) -> Event:
    """The event, if it is the user's own; members are told that it is not."""
    found = seen_event(request, event)
    if not found.is_own:
        raise PermissionDenied("owner only")
    return found


def seen_run(request: HttpRequest, event: UUID, run: int) -> PlanRun:
    """A run of an event that is shared with the user."""
    return _run_of(seen_event(request, event), run)


def edited_run(request: HttpRequest, event: UUID, run: int) -> PlanRun:
    """A run of an event that the user may change."""
    return _run_of(edited_event(request, event), run)


def _run_of(event: Event, run: int) -> PlanRun:
    found = get_run(event_id=event.pk, run_id=run)
    if found is None:
        raise Http404("no such run")
    found.event = event
    return found


def seen_revision(request: HttpRequest, event: UUID, number: int) -> tuple[Event, Revision]:
    """An event that is shared with the user, and one of its revisions."""
    shared = seen_event(request, event)
    found = get_revision(event_id=shared.pk, number=number)
    if found is None:
        raise Http404("no such revision")
    return shared, found


def seen_plan(request: HttpRequest, event: UUID) -> tuple[Event, Revision, PlanRecord]:
    """An event that is shared with the user, with its current plan in the units that they read."""
    return _plan_of(seen_event(request, event))


def edited_plan(request: HttpRequest, event: UUID) -> tuple[Event, Revision, PlanRecord]:
    """The same, if the user may change the event."""
    return _plan_of(edited_event(request, event))


def _plan_of(event: Event) -> tuple[Event, Revision, PlanRecord]:
    if event.current is None:
        raise Http404("no plan yet")
    return event, event.current, numbered(record_of(event.current, units=preferences.current().units))


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
    return found, numbered(record_of(found))
