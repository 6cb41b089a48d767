"""A plan and how it is printed: what every row of every sheet is made with."""

from dataclasses import dataclass
from datetime import datetime
from zoneinfo import ZoneInfo

from cookout.core.planning.record import PlannedHelper, PlanRecord
from cookout.core.planning.wording import clock_text, in_hours
from cookout.sheets.printing import Printing, gettext_noop

WEEKDAYS = (
    gettext_noop("Monday"),
    gettext_noop("Tuesday"),
    gettext_noop("Wednesday"),
    gettext_noop("Thursday"),
    gettext_noop("Friday"),
    gettext_noop("Saturday"),
    gettext_noop("Sunday"),
)
MONTHS = (
    gettext_noop("January"),
    gettext_noop("February"),
    gettext_noop("March"),
    gettext_noop("April"),
    gettext_noop("May"),
    gettext_noop("June"),
    gettext_noop("July"),
    gettext_noop("August"),
    gettext_noop("September"),
    gettext_noop("October"),
    gettext_noop("November"),
    gettext_noop("December"),
)


@dataclass(frozen=True, slots=True)
class Job:
    """One record and the way to print it."""

    record: PlanRecord
    printing: Printing

    def local(self, moment: datetime) -> datetime:
        """A moment on the event's own clock."""
        return moment.astimezone(ZoneInfo(self.record.timezone))

    def clock(self, moment: datetime) -> str:
        """Hours and minutes on the event's own clock, as the reader is used to."""
        return clock_text(self.local(moment), self.printing.hours)

    def told(self, text: str) -> str:
        """A text of the plan on one line, its times of day as the reader is used to."""
        return in_hours(" ".join(text.split()), self.printing.hours)

    def word(self, text: str) -> str:
        """A fixed word of the core, such as the name of an allergen, in the reader's language where it is known."""
        return self.printing.gettext(text) if text else ""

    def day(self, moment: datetime) -> str:
        """The day in words, on the event's own calendar."""
        _, local = self.printing.gettext, self.local(moment)
        return _("{weekday}, {day} {month} {year}").format(
            weekday=_(WEEKDAYS[local.weekday()]), day=local.day, month=_(MONTHS[local.month - 1]), year=local.year
        )

    def first_day(self) -> str:
        """The day of the first task; empty without a plan."""
        return self.day(min(task.starts_at for task in self.record.tasks)) if self.record.tasks else ""

    def name(self, helper: str) -> str:
        """The name of a helper by id, or the id where the record does not know it."""
        return next((each.name for each in self.record.helpers if each.id == helper), helper)

    def dish(self, dish: str) -> str:
        """The name of a dish by id, or the id where the record does not know it."""
        return self.record.dishes.get(dish, dish)

    def helper(self, helper: str) -> PlannedHelper:
        """A helper by id; `KeyError` where the record has none."""
        for each in self.record.helpers:
            if each.id == helper:
                return each
        raise KeyError(helper)
