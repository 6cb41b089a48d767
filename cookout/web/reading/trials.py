"""Trials and their differences, for reading."""

from dataclasses import dataclass, replace
from typing import get_args

from cookout.core.planning.compare import compare
from cookout.core.planning.comparison import Comparison
from cookout.core.planning.event import Event as CoreEvent
from cookout.core.planning.record import PlanRecord
from cookout.core.planning.whatif import describe, suggestions
from cookout.drawing.rows import By
from cookout.services import pictures
from cookout.store.selectors.plan import PlanRun
from cookout.store.selectors.revisions import record_of
from cookout.store.selectors.trials import trial_record_of
from cookout.web import preferences
from cookout.web.reading.drawn import drawn_words
from cookout.web.reading.numbered import numbered
from cookout.web.reading.status import AIMS, Words, worth

FEW_CHANGES = 40
"""Up to so many changed tasks stand open on the page; more are folded away."""


@dataclass(frozen=True, slots=True)
class Suggestion:
    """Something worth trying: its words, and the change as fields of a form."""

    words: str
    fields: tuple[tuple[str, str | int], ...]


def suggested(event: CoreEvent) -> tuple[Suggestion, ...]:
    """What this event could be tried with, in the reader's units."""
    shown = replace(event, units=preferences.current().units or event.units)
    return tuple(Suggestion(describe(shown, change), tuple(change.items())) for change in suggestions(shown))


def trial_page(run: PlanRun, *, by: str) -> dict[str, object]:
    """The names of the template for a trial that has ended in a plan; few of them where it has not."""
    units = preferences.current().units
    after = trial_record_of(run, units)
    if after is None or run.base is None:
        return {"after": after}
    return {"after": after, **difference(record_of(run.base, units), after, by=by)}


def difference(before: PlanRecord, after: PlanRecord, *, by: str) -> dict[str, object]:
    """The names of the template for how one plan differs from another."""
    before, after = numbered(before), numbered(after)
    found = compare(before, after)
    chosen: By = next((each for each in get_args(By) if each == by), "helper")
    wide, narrow = pictures.before_and_after(
        before=before, after=after, comparison=found, by=chosen, hours=preferences.current().hours, words=drawn_words()
    )
    names = {helper.id: helper.name for record in (before, after) for helper in record.helpers}
    return {
        "comparison": found,
        "wide": wide,
        "narrow": narrow,
        "by": chosen,
        "aims": _aims(found),
        "rows": [(change, _names(change.before, names), _names(change.after, names)) for change in found.tasks],
        "is_short": len(found.tasks) <= FEW_CHANGES,
    }


def _aims(found: Comparison) -> list[tuple[Words, str | None, str | None]]:
    return [
        (AIMS[level.name][0], worth(level.name, level.before), worth(level.name, level.after))
        for level in found.levels
        if level.name in AIMS
    ]


def _names(stand: object, names: dict[str, str]) -> str:
    return ", ".join(names.get(each, each) for each in getattr(stand, "helpers", ()))
