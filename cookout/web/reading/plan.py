"""Everything that the page of a plan shows."""

from datetime import datetime
from typing import get_args

from cookout.core.planning.record import PlanRecord
from cookout.services.sheets import By, timelines
from cookout.store.selectors.revisions import Revision, record_of
from cookout.web.reading import status
from cookout.web.reading.tasks import hours

FEW_TASKS = 100
"""Up to so many tasks stand open on the page of the plan; more are folded away."""

VIEWS: dict[By, str] = {"dish": "by dish", "helper": "by helper", "gear": "by gear"}


def plan_page(revision: Revision | None, *, by: str, now: datetime | None) -> dict[str, object]:
    """The template's names for a stored plan; few of them where there is none yet. `now` None marks no time."""
    if revision is None:
        return {"record": None}
    chosen: By = next((each for each in get_args(By) if each == by), "dish")
    record = record_of(revision)
    wide, tall = timelines(record=record, by=chosen, now=now)
    return {
        "record": record,
        "revision": revision,
        "by": chosen,
        "views": VIEWS,
        "wide": wide,
        "tall": tall,
        **plan_words(record),
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
