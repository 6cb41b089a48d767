"""Gear that the recipes ask for, beside what the event has: what is missing, and how many are wanted at once."""

from collections.abc import Iterator
from dataclasses import dataclass

from cookout.core.kitchen.recipe import Step
from cookout.core.planning.event import Event, Gear, GearKind


@dataclass(frozen=True, slots=True)
class Wanted:
    """`count` pieces of a kind, or of the very gear with that id; `inches` of an oven, else 0."""

    kind: str
    inches: int
    count: int

    @property
    def key(self) -> tuple[str, int]:
        """What is wanted, however many of it."""
        return self.kind, self.inches

    def is_met_by(self, gear: Gear) -> bool:
        """Whether some gear is of that kind and size, or the very one."""
        if self.inches:
            return gear.kind.value == self.kind and gear.inches == self.inches
        return self.kind in (gear.kind.value, gear.id)

    def name(self, event: Event) -> str:
        """It in words, as ``12-inch oven`` or ``trivet``; gear that is asked for by its id has its own name."""
        if self.inches:
            return f"{self.inches}-inch {self.kind}"
        if self.kind in {kind.value for kind in GearKind}:
            return self.kind
        return next((gear.name for gear in event.gear if gear.id == self.kind), self.kind)


def wanted_by(step: Step) -> Iterator[Wanted]:
    """What a step takes at once: oven, trivets and a chimney where it bakes, and the gear that it names."""
    if step.bake is not None:
        yield Wanted(GearKind.OVEN.value, step.bake.oven_inches, 1)
        yield Wanted(GearKind.CHIMNEY.value, 0, 1)
        trivets = int(step.bake.trivet) + int(step.bake.stand)
        if trivets:
            yield Wanted(GearKind.TRIVET.value, 0, trivets)
    for use in step.gear:
        yield Wanted(use.kind, 0, use.count)


def pieces_of(event: Event, wanted: Wanted) -> int:
    """How many of it the event has; trivets under one oven must be alike, so there the most of one kind counts."""
    pieces = [gear.pieces for gear in event.gear if wanted.is_met_by(gear)]
    return max(pieces, default=0) if wanted.kind == GearKind.TRIVET.value else sum(pieces)


def lacking(event: Event, step: Step) -> tuple[Wanted, ...]:
    """What a step takes and the event has too few of."""
    return tuple(wanted for wanted in wanted_by(step) if pieces_of(event, wanted) < wanted.count)


def missing_gear(event: Event) -> tuple[Wanted, ...]:
    """What the dishes take and the event has too few of, each with the most of it that one step takes."""
    found: dict[tuple[str, int], Wanted] = {}
    for dish in event.dishes:
        for step in event.recipe(dish.recipe).steps:
            for wanted in lacking(event, step):
                known = found.get(wanted.key, wanted)
                found[wanted.key] = max(known, wanted, key=lambda each: each.count)
    return tuple(found.values())


def say_missing(event: Event, wanted: Wanted) -> str:
    """That there is too little of it, without a full stop: ``There is 1 trivet, and 2 are wanted at once``."""
    have, name = pieces_of(event, wanted), wanted.name(event)
    if wanted.count == 1:
        return f"There is no {name}"
    there = f"There is 1 {name}" if have == 1 else f"There are {have} of “{name}”" if have else f"There is no {name}"
    return f"{there}, and {wanted.count} are wanted at once"
