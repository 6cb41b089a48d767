"""Pieces of gear that somebody pinned, taken apart from those like them.

Alike pieces are one counted resource, dealt out after solving. That would not do for a piece that is pinned: what else
uses it must leave it free then. So it becomes a resource of its own, which everything that wants such gear has for an
option beside the rest of them, and keeps for as long as it holds it. Chimneys, of which a firing may take several, are
taken apart one by one.
"""

from collections.abc import Mapping
from dataclasses import dataclass, replace

from cookout.core.planning.event import GearId, GearKind
from cookout.core.planning.expand.gear import Kit
from cookout.core.planning.pieces import NAMED_KINDS, piece_labels
from cookout.core.planning.problem import Need, Resource, ResourceId, Task, TaskId


@dataclass(frozen=True, slots=True)
class Apart:
    """The resources of an event's gear after taking apart. `parts` are what a whole resource became, the rest first."""

    kit: Kit
    labels: Mapping[ResourceId, tuple[str, ...]]
    parts: Mapping[ResourceId, tuple[ResourceId, ...]]

    @property
    def resources(self) -> tuple[Resource, ...]:
        """Every resource; a part counts its pieces."""
        return tuple(
            Resource(part, len(self.labels[part]) if whole in self.parts else capacity)
            for whole, capacity in self.kit.capacity.items()
            for part in self.parts.get(whole, (whole,))
        )

    @property
    def gear_of(self) -> dict[ResourceId, GearId]:
        """The gear that each resource stands for."""
        return {part: gear for whole, gear in self.kit.gear_of.items() for part in self.parts.get(whole, (whole,))}

    def task(self, task: Task, holder: TaskId, taken: tuple[str, ...]) -> Task:
        """A task with needs of the parts; `holder` names the occupation it belongs to, which has `taken` pieces."""
        if not any(option in self.parts for need in task.needs for option in need.options):
            return task
        return replace(task, needs=tuple(part for need in task.needs for part in self._needs(need, holder, taken)))

    def _needs(self, need: Need, holder: TaskId, taken: tuple[str, ...]) -> tuple[Need, ...]:
        """The need as needs of parts: each piece that is taken for itself, and of the others as many as are lacking."""
        if not any(option in self.parts for option in need.options):
            return (need,)
        options = tuple(part for option in need.options for part in self.parts.get(option, (option,)))
        own = [part for part in options if len(self.labels[part]) == 1 and self.labels[part][0] in taken]
        others = tuple(part for part in options if part not in own)
        lacking = need.amount - len(own)
        kept_as = f"{need.options[0]} of {holder}" if len(others) > lacking else ""
        rest = (Need(others, 1, lacking, kept_as),) if lacking > 0 else ()
        return (*(Need((part,)) for part in own), *rest)


def take_apart(kit: Kit, taken: Mapping[TaskId, tuple[str, ...]]) -> Apart:
    """The kit with the pieces apart that any occupation is pinned to."""
    pinned = {label for labels in taken.values() for label in labels}
    labels: dict[ResourceId, tuple[str, ...]] = {}
    parts: dict[ResourceId, tuple[ResourceId, ...]] = {}
    for whole in kit.capacity:
        gear = kit.gear(whole)
        names = piece_labels(gear, gear.pieces) if gear.kind in NAMED_KINDS else []
        alone = [name for name in names if name in pinned]
        if not alone or len(names) == 1:
            labels[whole] = tuple(names)
            continue
        alone = names if gear.kind is GearKind.CHIMNEY else alone
        rest = tuple(name for name in names if name not in alone)
        found = {whole: rest} if rest else {}
        found |= {ResourceId(f"{whole}#{name}"): (name,) for name in alone}
        labels |= found
        parts[whole] = tuple(found)
    return Apart(kit, {resource: names for resource, names in labels.items() if names}, parts)
