"""What a calendar says of a task in words. Helpers are named to one another; how to reach them is never in a feed."""

from collections.abc import Iterator
from dataclasses import dataclass

from cookout.core.planning.event import GearKind
from cookout.core.planning.record import PlannedTask, PlanRecord
from cookout.feeds.kinds import LIVE_LEAD_MINUTES, look_of

_NAMED_PIECE_BY_PIECE = frozenset({GearKind.OVEN, GearKind.CHIMNEY, GearKind.TABLE})


def summary_of(name: str, dish: str) -> str:
    """The task's title: the dish's name (or "") before its own."""
    return f"{dish}: {name}" if dish else name


def cancelled_summary_of(name: str, dish: str) -> str:
    """The title of a task that was taken away, said in words since many readers show STATUS nowhere."""
    return f"Cancelled: {summary_of(name, dish)}"


@dataclass(frozen=True, slots=True)
class Wording:
    """The words for the tasks of one record, spoken to `reader` (a helper id) or to everyone ("")."""

    record: PlanRecord
    reader: str = ""

    def summary(self, task: PlannedTask) -> str:
        """The task's title."""
        return summary_of(task.name, self.record.dishes.get(task.dish, ""))

    def description(self, task: PlannedTask) -> tuple[str, ...]:
        """Detail, caution, gear, people and demo slot; each a line of its own, or several for a long detail."""
        return tuple(self._lines(task))

    def categories(self, task: PlannedTask) -> tuple[str, ...]:
        """The kind of work, then whether it is hot and whether it is shown live."""
        marks = (("Hot work", task.hot), ("Live", bool(task.live_in)))
        return (look_of(task.kind).category, *(word for word, holds in marks if holds))

    def lead_minutes(self, task: PlannedTask) -> int:
        """Minutes from the alarm to the start."""
        lead = look_of(task.kind).lead_minutes
        return max(lead, LIVE_LEAD_MINUTES) if task.live_in else lead

    def _lines(self, task: PlannedTask) -> Iterator[str]:
        if task.detail:
            yield task.detail
        if task.caution:
            yield f"Caution: {task.caution}"
        if gear := (*task.units, *self._counted_gear(task)):
            yield f"Gear: {'; '.join(gear)}"
        if people := self._people(task):
            yield f"{'With' if self.reader else 'Helpers'}: {'; '.join(people)}"
        if task.live_in:
            yield f"Shown live in: {self._slot_name(task.live_in)}"

    def _counted_gear(self, task: PlannedTask) -> Iterator[str]:
        for gear in self.record.gear:
            count = task.gear.get(gear.id, 0)
            if count and not (task.units and gear.kind in _NAMED_PIECE_BY_PIECE):
                yield gear.name if count == 1 else f"{gear.name} ({count})"

    def _people(self, task: PlannedTask) -> tuple[str, ...]:
        others = set(task.helpers) - {self.reader}
        return tuple(helper.name for helper in self.record.helpers if helper.id in others)

    def _slot_name(self, slot_id: str) -> str:
        return next((slot.name for slot in self.record.slots if slot.id == slot_id), slot_id)
