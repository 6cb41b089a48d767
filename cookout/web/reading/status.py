"""What a plan is worth, in words."""

from dataclasses import dataclass
from datetime import datetime
from itertools import groupby

from django.utils.functional import Promise
from django.utils.translation import gettext_lazy as _

from cookout.core.planning.record import PlannedLevel, PlannedServing, PlanRecord
from cookout.core.planning.result import Status
from cookout.web.templatetags.plainly import span

Words = str | Promise

HEADLINES: dict[Status, Words] = {
    Status.PROVED_BEST: _("Proved best"),
    Status.BEST_FOUND: _("Good, not proved best"),
    Status.NONE_FOUND: _("No plan found in time"),
    Status.IMPOSSIBLE: _("Cannot be done as it stands"),
}
MEANINGS: dict[Status, Words] = {
    Status.PROVED_BEST: _("Every rule holds, and with these firings and ovens no other plan does better."),
    Status.BEST_FOUND: _("Every rule holds. A better plan may exist; the aims below say how much better at most."),
    Status.NONE_FOUND: _("The run ended before a plan was found. There may be one: try again, or ease the event."),
    Status.IMPOSSIBLE: _("No plan was found that keeps every rule. Below is what stands in the way."),
}
AIMS: dict[str, tuple[Words, Words]] = {
    "lateness": (_("Late at the table"), _("How long people wait past the serving times, all dishes added up.")),
    "freshness": (_("Waiting food"), _("How long finished food stands beyond what its recipe wants.")),
    "crew_day": (
        _("The crew's day"),
        _("From the first call to the end of the crew's hours, and presence with nothing to do."),
    ),
    "fair_shares": (_("Uneven work"), _("Work above an even share, all helpers added up.")),
    "changes": (_("Changed from before"), _("A task at another minute counts 1, one in other hands 2.")),
}


@dataclass(frozen=True, slots=True)
class Aim:
    """One level for reading: `gap` is how many minutes a better plan could save at most."""

    title: Words
    meaning: Words
    value: int
    bound: int
    proved: bool
    gap: int


@dataclass(frozen=True, slots=True)
class Served:
    """One serving with its dishes.

    `margin` is how many minutes the tightest dish could still slip before it is too late, `late` how many minutes the
    latest is past its time already. `people` are those of the dish that feeds most.
    """

    name: str
    due_at: datetime
    people: int
    dishes: tuple[PlannedServing, ...]
    margin: int
    late: int


def headline(record: PlanRecord) -> Words:
    """The status in a few words."""
    return HEADLINES[record.status]


def meaning(record: PlanRecord) -> Words:
    """The status in a sentence or two."""
    return MEANINGS[record.status]


def aims(record: PlanRecord) -> tuple[Aim, ...]:
    """The levels in the order of their importance, without what was to stay as it was: trials tell of that."""
    return tuple(_aim(level) for level in record.levels if level.name != "changes")


def served(record: PlanRecord) -> tuple[Served, ...]:
    """The servings in order of their time, the dishes of each by name."""
    in_order = sorted(record.servings, key=lambda each: (each.due_at, each.serving, each.dish_name))
    return tuple(_served(tuple(dishes)) for _, dishes in groupby(in_order, key=lambda each: each.serving))


def _served(dishes: tuple[PlannedServing, ...]) -> Served:
    return Served(
        name=dishes[0].serving_name,
        due_at=dishes[0].due_at,
        people=max(dish.people for dish in dishes),
        dishes=dishes,
        margin=min(int((dish.latest_at - dish.ready_at).total_seconds()) // 60 for dish in dishes),
        late=max(dish.late_minutes for dish in dishes),
    )


def worth(level: str, value: int | None) -> str | None:
    """A level's value for reading: a length of time, but for the count of what was changed."""
    if value is None:
        return None
    return str(value) if level == "changes" else span(value)


def _aim(level: PlannedLevel) -> Aim:
    title, words = AIMS.get(level.name, (level.name.replace("_", " "), ""))
    gap = max(0, level.value - level.bound)
    return Aim(title, words, level.value, level.bound, gap == 0, gap)
