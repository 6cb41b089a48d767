"""A kit as a file of its own: TOML with the tables [[gear]] and [fuel] of an event file.

Faults name a key by its path, as ``kit.toml: gear[2].size``.
"""

from cookout.core.eventfile.faults import FaultList
from cookout.core.eventfile.fields import Fields
from cookout.core.eventfile.gear import read_gear
from cookout.core.eventfile.heading import read_fuel
from cookout.core.eventfile.reading import parse
from cookout.core.planning.event import Fuel, Gear


def read_kit(text: str, file: str) -> tuple[tuple[Gear, ...], Fuel]:
    """The gear and the fuel that a kit's text holds; `EventFileError` with all of its faults at once."""
    data = parse(text, file)
    faults = FaultList(file, data)
    root = Fields("", data, (), faults)
    gear = tuple(read_gear(fields) for fields in root.tables("gear", "gear"))
    fuel = root.table("fuel", "fuel")
    found = Fuel() if fuel is None else read_fuel(fuel)
    faults.raise_if_any()
    return gear, found
