"""Everything that the page of a plan shows."""

from datetime import datetime
from typing import get_args
from uuid import UUID

from django.urls import reverse
from django.utils.functional import Promise
from django.utils.translation import gettext_lazy as _

from cookout.core.planning.record import PlanRecord
from cookout.drawing import Links
from cookout.drawing.rows import By
from cookout.store.selectors.revisions import Revision, record_of
from cookout.web import preferences
from cookout.web.reading import status
from cookout.web.reading.numbered import numbered
from cookout.web.reading.tasks import hours
from cookout.web.reading.timeline import overview, overview_links

FEW_TASKS = 100
"""Up to so many tasks stand open on the page of the plan; more are folded away."""

VIEWS: dict[By, str | Promise] = {"dish": _("by dish"), "helper": _("by helper"), "gear": _("by gear")}


def current_page(revision: Revision | None, *, event: UUID, now: datetime) -> dict[str, object]:
    """The template's names for the current plan of the event with that id; few of them where there is none yet."""
    if revision is None:
        return {"record": None}
    record = numbered(record_of(revision, units=preferences.current().units))
    return {
        "record": record,
        "revision": revision,
        "to_timeline": reverse("timeline", args=[event]),
        "drawings": overview(record, links=overview_links(event), now=now),
        **plan_words(record),
    }


def earlier_page(revision: Revision, *, by: str) -> dict[str, object]:
    """The same for a revision that may be an earlier one: its tasks have no pages, but lines where they are few."""
    chosen: By = next((each for each in get_args(By) if each == by), "dish")
    record = numbered(record_of(revision, units=preferences.current().units))
    words = plan_words(record)
    return {
        "record": record,
        "revision": revision,
        "by": chosen,
        "views": VIEWS,
        "drawings": overview(record, by=chosen, links=Links() if words["is_short"] else Links(task="")),
        **words,
    }


def plan_words(record: PlanRecord) -> dict[str, object]:
    """The status, the aims, the servings and the tasks, for reading."""
    return {
        "headline": status.headline(record),
        "meaning": status.meaning(record),
        "aims": status.aims(record),
        "served": status.served(record),
        "hours": tuple(hours(record)),
        "is_short": len(record.tasks) <= FEW_TASKS,
        "late": sum(each.late_minutes for each in record.servings),
    }
