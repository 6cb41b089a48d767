"""The table beside the timeline: the same tasks as lines, all of them or those of a dish or a helper."""

from dataclasses import dataclass
from datetime import datetime
from itertools import groupby

from django.utils.translation import gettext as _

from cookout.core.planning.record import PlanRecord
from cookout.drawing.rows import EVERYONE
from cookout.web.reading.tasks import Row, rows


@dataclass(frozen=True, slots=True)
class Filter:
    """Something that the table can be narrowed to: its name in the address, and what can be chosen."""

    name: str
    words: str
    choices: tuple[tuple[str, str], ...]
    chosen: str


@dataclass(frozen=True, slots=True)
class Hour:
    """The tasks that start within one hour; `new_day` on the first of its day."""

    starts_at: datetime
    new_day: bool
    rows: tuple[Row, ...]


def task_list(record: PlanRecord, *, dish: str, helper: str) -> dict[str, object]:
    """The template's names for the table, narrowed to a dish and a helper where they are given."""
    shown = [row for row in rows(record) if _is_of(row, record, dish, helper)]
    return {
        "filters": (_dishes(record, dish), _helpers(record, helper)),
        "hours": _by_hour(shown),
        "count": len(shown),
        "is_narrowed": bool(dish or helper),
    }


def _is_of(row: Row, record: PlanRecord, dish: str, helper: str) -> bool:
    of_dish = row.task.dish not in record.dishes if dish == EVERYONE else row.task.dish == dish
    return (not dish or of_dish) and (not helper or helper in row.task.helpers)


def _dishes(record: PlanRecord, chosen: str) -> Filter:
    dishes = sorted(record.dishes.items(), key=lambda item: item[1])
    choices = (("", _("every dish")), (EVERYONE, _("what is for everyone")), *dishes)
    return Filter("dish", _("Dish"), choices, chosen)


def _helpers(record: PlanRecord, chosen: str) -> Filter:
    helpers = sorted(((helper.id, helper.name) for helper in record.helpers), key=lambda item: item[1])
    return Filter("helper", _("Helper"), (("", _("everybody")), *helpers), chosen)


def _by_hour(shown: list[Row]) -> tuple[Hour, ...]:
    hours: list[Hour] = []
    for start, group in groupby(shown, key=lambda row: row.task.starts_at.replace(minute=0)):
        new_day = not hours or hours[-1].starts_at.date() != start.date()
        hours.append(Hour(start, new_day, tuple(group)))
    return tuple(hours)
