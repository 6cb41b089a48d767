"""Gear as counted resources, and which very piece a bake or firing takes."""

from collections.abc import Iterable
from dataclasses import dataclass, replace

from cookout.core.fire.charcoal import TENDING
from cookout.core.kitchen.recipe import GearUse
from cookout.core.planning.event import Event, Gear, GearId, GearKind
from cookout.core.planning.problem import Need, Resource, ResourceId


@dataclass(frozen=True, slots=True)
class Hold:
    """A piece wanted over several tasks on end: one of `options`, `amount` of it, the same throughout."""

    options: tuple[ResourceId, ...]
    amount: int = 1


@dataclass(frozen=True, slots=True)
class Chimneys:
    """One kind of chimney: how many there are and how many coals each lights."""

    resource: ResourceId
    count: int
    coals: int

    @property
    def all_coals(self) -> int:
        """Coals that all of them light at once."""
        return self.count * self.coals


POOLED_KINDS = frozenset({GearKind.OVEN, GearKind.TABLE, GearKind.CHIMNEY})


def pooled(event: Event) -> Event:
    """The event with ovens, tables and chimneys that are alike but for their names taken together under the first id.

    A bake keeps its very oven, and which of several resources that is would have to be settled before solving; alike
    pieces of one resource are dealt out afterwards, so that two entries of one oven are as good as one entry of two.
    """
    together: dict[Gear, list[Gear]] = {}
    for gear in event.gear:
        alike = gear.kind in POOLED_KINDS and gear.pieces > 0
        key = replace(gear, id=GearId(""), name="", count=1) if alike else gear
        together.setdefault(key, []).append(gear)
    return replace(event, gear=tuple(_as_one(entries) for entries in together.values()))


def _as_one(entries: list[Gear]) -> Gear:
    if len(entries) == 1:
        return entries[0]
    names = tuple((gear.name, gear.count) for gear in entries)
    return replace(entries[0], count=sum(gear.count for gear in entries), pooled=names)


class Kit:
    """The event's gear by what it is wanted for. Gear of which there is none is left out."""

    def __init__(self, event: Event) -> None:
        self._gear = {_resource_id(gear): gear for gear in event.gear if gear.pieces > 0}
        self.capacity = {resource: gear.pieces for resource, gear in self._gear.items()}

    @property
    def resources(self) -> tuple[Resource, ...]:
        """One resource for each item of gear."""
        return tuple(Resource(resource, capacity) for resource, capacity in self.capacity.items())

    @property
    def gear_of(self) -> dict[ResourceId, GearId]:
        """The gear that each resource stands for."""
        return {resource: gear.id for resource, gear in self._gear.items()}

    def gear(self, resource: ResourceId) -> Gear:
        """The gear that a resource stands for."""
        return self._gear[resource]

    def resource_of(self, gear: Gear) -> ResourceId:
        """The resource that stands for some gear."""
        return _resource_id(gear)

    @property
    def has_tables(self) -> bool:
        """Whether there is any cooking table; without one, ovens stand on the ground and take no spot."""
        return bool(self._of_kind(GearKind.TABLE))

    @property
    def chimneys(self) -> tuple[Chimneys, ...]:
        """All kinds of chimneys."""
        found = self._of_kind(GearKind.CHIMNEY)
        return tuple(Chimneys(r, self.capacity[r], self._gear[r].coals or TENDING.chimney_coals) for r in found)

    @property
    def chimney_coals(self) -> int:
        """Coals that all chimneys light at once."""
        return sum(chimneys.all_coals for chimneys in self.chimneys)

    def ovens(self, inches: int) -> Hold:
        """An oven of that diameter."""
        return Hold(tuple(r for r in self._of_kind(GearKind.OVEN) if self._gear[r].inches == inches))

    def spots(self, inches: int) -> Hold:
        """A spot on which an oven of that diameter stands without touching its neighbour."""
        return Hold(tuple(r for r in self._of_kind(GearKind.TABLE) if _has_room(self._gear[r], inches)))

    def trivets(self, count: int) -> Hold:
        """So many trivets of one kind."""
        return Hold(tuple(r for r in self._of_kind(GearKind.TRIVET) if self.capacity[r] >= count), count)

    def cold_places(self) -> Hold:
        """A place in a cooler with ice."""
        return Hold(tuple(r for r in self._of_kind(GearKind.COOLER) if self._gear[r].ice))

    def holds(self, uses: Iterable[GearUse]) -> tuple[Hold, ...]:
        """Gear of those kinds (or very ids); options stay empty where there is not enough."""
        return tuple(hold for use in uses for hold in self._holds_of(use))

    def needs(self, uses: Iterable[GearUse]) -> tuple[Need, ...]:
        """What a step's gear asks for, where it matters not which very piece it gets."""
        return tuple(Need(hold.options, hold.amount) for hold in self.holds(uses))

    def _holds_of(self, use: GearUse) -> tuple[Hold, ...]:
        enough = tuple(r for r in self._named(use.kind) if self.capacity[r] >= use.count)
        if enough or sum(self.capacity[r] for r in self._named(use.kind)) < use.count:
            return (Hold(enough, use.count),)
        return tuple(self._gathered(use))

    def _gathered(self, use: GearUse) -> Iterable[Hold]:
        """No item alone has enough, all together have: take from the largest on."""
        wanted = use.count
        for resource in sorted(self._named(use.kind), key=lambda r: -self.capacity[r]):
            taken = min(wanted, self.capacity[resource])
            if taken > 0:
                yield Hold((resource,), taken)
            wanted -= taken

    def _named(self, kind: str) -> tuple[ResourceId, ...]:
        return tuple(r for r, gear in self._gear.items() if kind in (gear.kind.value, gear.id))

    def _of_kind(self, kind: GearKind) -> tuple[ResourceId, ...]:
        return tuple(r for r, gear in self._gear.items() if gear.kind is kind)


def _resource_id(gear: Gear) -> ResourceId:
    return ResourceId(f"gear.{gear.id}")


def _has_room(table: Gear, inches: int) -> bool:
    return table.spot_inches is None or table.spot_inches >= inches


class Busy:
    """How much of each piece is taken when, at nominal times, so that bakes spread over pieces that are alike.

    A problem lets each task pick its own piece. A bake must keep one oven and one spot from first coals to empty
    iron, so the piece is chosen here: the one with the least in use at that time for its size.
    """

    def __init__(self, capacity: dict[ResourceId, int]) -> None:
        self._capacity = capacity
        self._taken: dict[ResourceId, list[tuple[int, int, int]]] = {}

    def take(self, hold: Hold, start: int, end: int) -> Need:
        """Settle on one of the options for `start` to `end`; without options the need stays open."""
        if not hold.options:
            return Need((), hold.amount)
        chosen = min(hold.options, key=lambda option: self._crowding(option, hold.amount, start, end))
        self._taken.setdefault(chosen, []).append((start, end, hold.amount))
        return Need((chosen,), hold.amount)

    def _crowding(self, option: ResourceId, amount: int, start: int, end: int) -> tuple[float, float, int]:
        capacity = self._capacity[option]
        taken = sum((e - s) * used for s, e, used in self._taken.get(option, []))
        return (self._in_use(option, start, end) + amount) / capacity, taken / capacity, -capacity

    def _in_use(self, option: ResourceId, start: int, end: int) -> int:
        return sum(amount for s, e, amount in self._taken.get(option, []) if s < end and start < e)
