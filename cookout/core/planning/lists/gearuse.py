"""What the plan does with each piece of gear: which ovens by name, and how much of the rest at once."""

from collections import defaultdict
from dataclasses import dataclass
from datetime import datetime

from cookout.core.planning.event import Event, Gear, GearKind
from cookout.core.planning.pieces import NAMED_KINDS, piece_labels
from cookout.core.planning.record import PlannedTask, PlanRecord


@dataclass(frozen=True, slots=True)
class GearUse:
    """An item of gear and its use: the names of the pieces that the plan takes and of those that it does not.

    Gear without names of its own (bowls, racks, mixers) has `at_once`, the most of it in use at one time.
    """

    gear: Gear
    taken: tuple[str, ...] = ()
    left: tuple[str, ...] = ()
    at_once: int = 0

    @property
    def is_used(self) -> bool:
        """Whether the plan takes any of it."""
        return bool(self.taken) or self.at_once > 0


def gear_uses(event: Event, record: PlanRecord) -> tuple[GearUse, ...]:
    """Every item of the event's gear, in the event's order, with what the plan does with it."""
    named = {unit for task in record.tasks for unit in task.units}
    at_once = _most_at_once(record.tasks)
    return tuple(_use(gear, named, at_once) for gear in event.gear)


def _use(gear: Gear, named: set[str], at_once: dict[str, int]) -> GearUse:
    if gear.kind not in NAMED_KINDS:
        return GearUse(gear, at_once=at_once.get(gear.id, 0))
    labels = piece_labels(gear, gear.pieces)
    taken = tuple(label for label in labels if label in named)
    return GearUse(gear, taken, tuple(label for label in labels if label not in named))


def _most_at_once(tasks: tuple[PlannedTask, ...]) -> dict[str, int]:
    """For each gear id the most of it in use at one time; a task that ends as another starts makes room for it."""
    changes: dict[str, list[tuple[datetime, int]]] = defaultdict(list)
    for task in tasks:
        for gear, amount in task.gear.items():
            changes[gear] += [(task.starts_at, amount), (task.ends_at, -amount)]
    return {gear: _peak(sorted(moments)) for gear, moments in changes.items()}


def _peak(moments: list[tuple[datetime, int]]) -> int:
    most = now = 0
    for _, change in moments:
        now += change
        most = max(most, now)
    return most


def tables_taken(use: GearUse) -> int:
    """How many cooking tables the spots in use need: spots are dealt out from the first table on."""
    spots = use.gear.spots or 1
    return -(-len(use.taken) // spots) if use.gear.kind is GearKind.TABLE else 0
