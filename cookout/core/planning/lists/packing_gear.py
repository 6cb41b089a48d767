"""Ovens, tables, bowls and pans to bring, as the plan uses them."""

import re

from cookout.core.planning.event import Event, GearKind
from cookout.core.planning.lists.gearuse import GearUse, gear_uses, tables_taken
from cookout.core.planning.lists.items import Item
from cookout.core.planning.lists.portions import Portion, portions
from cookout.core.planning.record import PlanRecord

_PAN = re.compile(r"\d|\b(?:pan|tin|mold|mould|dish|sheet|ring|springform)s?\b", re.IGNORECASE)
_NO_PAN = re.compile(r"\boven\b|\btrivet\b", re.IGNORECASE)


def gear_items(event: Event, record: PlanRecord) -> tuple[Item, ...]:
    """The gear that the plan takes; all of it where there is no plan."""
    uses = gear_uses(event, record)
    if not record.tasks:
        return tuple(Item(f"gear.{use.gear.id}", use.gear.name, use.gear.count) for use in uses)
    return tuple(_taken(use) for use in uses if use.is_used)


def unused_items(event: Event, record: PlanRecord) -> tuple[Item, ...]:
    """The gear of the event that the plan does without; it may stay at home or come along as spare."""
    if not record.tasks:
        return ()
    why = "the plan does without it: leave it at home, or bring it as a spare"
    return tuple(
        Item(f"gear.{use.gear.id}", use.gear.name, use.gear.count, why)
        for use in gear_uses(event, record)
        if not use.is_used
    )


def pan_items(event: Event) -> tuple[Item, ...]:
    """The pans of each dish that is baked in pans, counted as if none were filled twice."""
    return tuple(_pans(portion) for portion in portions(event) if _is_pan(portion.recipe.pan) and not portion.is_raw)


def _is_pan(pan: str) -> bool:
    """Whether the words speak of a pan by its size or name; "buttered oven" and "on a trivet" bring none."""
    return bool(_PAN.search(pan)) and not _NO_PAN.search(pan)


def _pans(portion: Portion) -> Item:
    count = portion.batches * max(1, portion.recipe.pans)
    return Item(f"pan.{portion.dish.id}", f"Pans for {portion.name}", count, portion.recipe.pan)


def _taken(use: GearUse) -> Item:
    key, name = f"gear.{use.gear.id}", use.gear.name
    if use.gear.kind is GearKind.TABLE:
        spots = f"{len(use.taken)} spots in use" if len(use.taken) > 1 else "1 spot in use"
        return Item(key, name, tables_taken(use), spots)
    if use.gear.kind is GearKind.OVEN:
        return Item(key, name, len(use.taken), _by_letter(use))
    if use.gear.kind is GearKind.CHIMNEY:
        return Item(key, name, len(use.taken), f"{len(use.left)} more, not in the plan" if use.left else "")
    if use.gear.kind is GearKind.COOLER:
        return Item(key, name, use.gear.count, f"up to {use.at_once} of {use.gear.pieces} places in use")
    spare = use.gear.count - use.at_once
    return Item(key, name, use.at_once, f"{spare} more, not in the plan" if spare > 0 else "")


def _by_letter(use: GearUse) -> str:
    """Which ovens of several that are alike: ``A, B; C not in the plan``."""
    if use.gear.count == 1:
        return ""
    left = f"; {_letters(use.left, use.gear.name)} not in the plan" if use.left else ""
    return f"{_letters(use.taken, use.gear.name)}{left}"


def _letters(names: tuple[str, ...], gear: str) -> str:
    return ", ".join(name.removeprefix(gear).strip() for name in names)
