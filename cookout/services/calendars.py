"""Calendar files of the current plan. The same revision and link give the same bytes, so a look-up can answer 304."""

from django.utils.translation import gettext as _

from cookout.feeds.calendars import Form, event_calendar, helper_calendar
from cookout.services.errors import NoSuchThingError
from cookout.services.stamps import stamps_from_json
from cookout.store.mapping import record_of
from cookout.store.models import Link, Revision
from cookout.store.selectors.revisions import get_current


def calendar_for_link(*, link: Link, address: str, todos: bool = False) -> bytes:
    """What a subscriber of the link gets; `NoSuchThingError` where the event has no plan, or the plan not the helper.

    `address` is where the calendar can be fetched again.
    """
    return calendar(event_id=link.event_id, helper_id=link.helper, address=address, todos=todos)


def calendar(*, event_id: int, helper_id: str = "", address: str = "", todos: bool = False) -> bytes:
    """The calendar of the whole event, or with `helper_id` that of a helper's own work."""
    revision = get_current(event_id=event_id)
    if revision is None:
        raise NoSuchThingError(_("This event has no plan yet. Plan it first."))
    form = Form.TODOS if todos else Form.EVENTS
    return _helper(revision, helper_id, address, form) if helper_id else _whole(revision, address, form)


def _whole(revision: Revision, address: str, form: Form) -> bytes:
    return event_calendar(
        record_of(revision),
        revision=revision.number,
        stamped_at=revision.made_at,
        address=address,
        changes=stamps_from_json(revision.stamps),
        form=form,
    )


def _helper(revision: Revision, helper_id: str, address: str, form: Form) -> bytes:
    try:
        return helper_calendar(
            record_of(revision),
            helper_id,
            revision=revision.number,
            stamped_at=revision.made_at,
            address=address,
            changes=stamps_from_json(revision.stamps),
            form=form,
        )
    except KeyError as error:
        raise NoSuchThingError(_("This plan has no part for that helper.")) from error
