"""Kits as their page shows them."""

from dataclasses import dataclass

from cookout.core.errors import EventFileError
from cookout.core.eventfile.kitfile import read_kit
from cookout.core.planning.event import Fuel, Gear
from cookout.store.selectors.keeping import Kit


@dataclass(frozen=True, slots=True)
class KitRow:
    """A kit with its gear; None where its text is of an older format that cannot be read any more."""

    kit: Kit
    gear: tuple[Gear, ...] | None
    fuel: Fuel | None


def kit_row(kit: Kit) -> KitRow:
    """A kit, read."""
    try:
        gear, fuel = read_kit(kit.document, "kit.toml")
    except EventFileError:
        return KitRow(kit, None, None)
    return KitRow(kit, gear, fuel)
