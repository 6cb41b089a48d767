"""What can be printed of a plan, told by what it is for."""

from collections.abc import Callable
from dataclasses import dataclass

from django.utils.functional import Promise
from django.utils.translation import gettext_lazy as _

from cookout.core.planning.record import PlannedHelper, PlanRecord

Words = str | Promise


def _always(_record: PlanRecord) -> bool:
    return True


@dataclass(frozen=True, slots=True)
class Sheet:
    """A sheet by its `kind`: what it is called and for, and the page that its code opens, with that page's own word.

    `is_there` tells whether a plan has anything for it, `without` what to do where it has not.
    """

    kind: str
    title: Words
    purpose: Words
    view: str
    word: str = ""
    is_there: Callable[[PlanRecord], bool] = _always
    without: Words = ""


GROUPS: tuple[tuple[Words, tuple[Sheet, ...]], ...] = (
    (
        _("For the crew"),
        (
            Sheet(
                "run-sheet",
                _("Run sheet"),
                _("Every task in order of time with its cautions, who comes when, and the figures of food safety."),
                "run-sheet",
            ),
            Sheet(
                "call-sheets",
                _("Call sheets"),
                _("Each helper's own part, with whom and why then. Every helper begins on a fresh page."),
                "helpers",
            ),
            Sheet(
                "wall",
                _("Wall sheet"),
                _("Time, work and initials in letters that are read from three metres. Hang the pages side by side."),
                "timeline",
            ),
            Sheet(
                "fire",
                _("Fire plan"),
                _("Coals by oven and time as a drawing, what to light when, fresh coals, and the fuel to bring."),
                "fire",
                is_there=lambda record: bool(record.firings or record.bakes),
                without=_("Nothing here is cooked over coals."),
            ),
        ),
    ),
    (
        _("Lists"),
        (
            Sheet(
                "shopping",
                _("Shopping list"),
                _("By where it stands in a shop, and which dish wants how much. What is ticked is printed ticked."),
                "list",
                "shopping",
            ),
            Sheet(
                "packing",
                _("Packing list"),
                _("Gear, fuel, and what keeps people safe and clean."),
                "list",
                "packing",
            ),
            Sheet(
                "measuring",
                _("To measure out"),
                _("What is measured before the day, with a box to tick for each batch."),
                "list",
                "measuring",
            ),
            Sheet(
                "leftovers",
                _("What is left"),
                _("Portions to spare, by when they must be cold, and what is done with fire and fuel."),
                "list",
                "leftovers",
            ),
        ),
    ),
    (
        _("For guests and audience"),
        (
            Sheet(
                "allergens",
                _("Allergens"),
                _("Every dish on one sheet for the counter: what it contains, what is not known, whom to ask."),
                "list-card",
            ),
            Sheet(
                "table-cards",
                _("Table cards"),
                _("A card to cut out and fold for each dish, which is read from both sides."),
                "list-card",
            ),
            Sheet(
                "running-order",
                _("Running order"),
                _("Each demo slot minute by minute: what is shown, what must stand ready, how much time is left."),
                "event-show",
                is_there=lambda record: bool(record.slots),
                without=_("This plan has no demo slot. Add one under Demo, then plan again."),
            ),
        ),
    ),
)
SHEETS: dict[str, Sheet] = {sheet.kind: sheet for _words, sheets in GROUPS for sheet in sheets}


@dataclass(frozen=True, slots=True)
class SheetRow:
    """A sheet and whether this plan has anything for it."""

    sheet: Sheet
    is_there: bool


def sheet_groups(record: PlanRecord) -> list[tuple[Words, list[SheetRow]]]:
    """All sheets for a plan, group by group."""
    return [(words, [SheetRow(sheet, sheet.is_there(record)) for sheet in sheets]) for words, sheets in GROUPS]


def called_helpers(record: PlanRecord) -> list[PlannedHelper]:
    """The helpers whom the plan calls, by their call."""
    called = [(helper.called_at, helper.name, helper) for helper in record.helpers if helper.called_at is not None]
    return [helper for _at, _name, helper in sorted(called, key=lambda entry: entry[:2])]
