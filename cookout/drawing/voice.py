"""How a drawing says times, lengths and tasks, in the reader's hours and words."""

from collections.abc import Iterable
from dataclasses import dataclass, field
from datetime import datetime
from zoneinfo import ZoneInfo

from cookout.core.planning.record import PlannedFiring, PlannedTask, PlanRecord
from cookout.core.planning.wording import HourStyle, clock_text
from cookout.drawing.words import Words

FEW_NAMES = 3  # names of tasks that a bar of many tells


@dataclass(frozen=True, slots=True)
class Voice:
    """The event's zone, the hours that the reader is used to, and the words."""

    zone: ZoneInfo
    hours: HourStyle = "24"
    words: Words = field(default_factory=Words)

    def clock(self, moment: datetime) -> str:
        """The time on the event's own clock."""
        return clock_text(moment.astimezone(self.zone), self.hours)

    def tick(self, moment: datetime) -> str:
        """The time at a line of the axis: short for whole hours, the day at midnight."""
        local = moment.astimezone(self.zone)
        if local.hour == local.minute == 0:
            return self.words.day.format(weekday=self.words.weekdays[local.weekday()], day=local.day)
        text = clock_text(local, self.hours)
        return text.replace(":00", "") if self.hours == "12" else text

    def length(self, minutes: float) -> str:
        """A length of time: "35 min", "2 h", "2 h 05 min"."""
        hours, rest = divmod(round(abs(minutes)), 60)
        if not hours:
            return self.words.minutes.format(minutes=rest)
        whole = self.words.whole_hours if not rest else self.words.hours_and_minutes
        return whole.format(hours=hours, minutes=rest)

    def stretch(self, begins: datetime, ends: datetime) -> str:
        """From and until."""
        return self.words.from_to.format(start=self.clock(begins), end=self.clock(ends))

    def lasting(self, task: PlannedTask) -> str:
        """How long a task takes."""
        return self.length((task.ends_at - task.starts_at).total_seconds() / 60)

    def named(self, task: PlannedTask, record: PlanRecord) -> str:
        """A task with the dish it belongs to."""
        dish = record.dishes.get(task.dish, "")
        name = " ".join(task.name.split())
        return f"{name}, {dish}" if dish and dish.casefold() not in name.casefold() else name

    def crew(self, helpers: Iterable[str], record: PlanRecord) -> str:
        """Who does a task."""
        names = {helper.id: helper.name for helper in record.helpers}
        return ", ".join(names.get(helper, helper) for helper in helpers)

    def task(self, task: PlannedTask, record: PlanRecord) -> str:
        """A task in one line, for a tooltip and for a screen reader: what, who, when."""
        parts = [
            self.named(task, record),
            self.crew(task.helpers, record) or self.words.nobody_needed,
            f"{self.stretch(task.starts_at, task.ends_at)}, {self.lasting(task)}",
            self.words.pinned if task.pinned else "",
        ]
        return "; ".join(part for part in parts if part)

    def several(self, tasks: tuple[PlannedTask, ...], record: PlanRecord) -> str:
        """Some tasks in one line: how many, when, the first of them, who."""
        names = list(dict.fromkeys(" ".join(task.name.split()) for task in tasks))
        told = ", ".join(names[:FEW_NAMES])
        if len(names) > FEW_NAMES:
            told += f" {self.words.more.format(count=len(names) - FEW_NAMES)}"
        crew = self.crew(dict.fromkeys(helper for task in tasks for helper in task.helpers), record)
        begins, ends = min(task.starts_at for task in tasks), max(task.ends_at for task in tasks)
        count = f"{self.words.tasks.format(count=len(tasks))}, {self.stretch(begins, ends)}"
        return "; ".join(part for part in (count, told, crew or self.words.nobody_needed) if part)

    def firing(self, firing: PlannedFiring) -> str:
        """A firing in a few words."""
        ready, until = self.clock(firing.ready_from), self.clock(firing.ready_until)
        return self.words.firing.format(coals=firing.coals, ready=ready, until=until)

    def firing_in_full(self, firing: PlannedFiring) -> str:
        """A firing in one sentence, for a tooltip."""
        return self.words.firing_in_full.format(
            lit=self.clock(firing.lit_at), firing=self.firing(firing), chimneys=firing.chimneys
        )
