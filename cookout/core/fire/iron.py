"""Lidded iron ovens: how large, how heavy, and what they stand on."""

from dataclasses import dataclass
from enum import StrEnum
from math import pi

import numpy as np

from cookout.core.quantities import METRES_IN_INCH

# Usual three-legged iron ovens, from memory, no source: nominal inches, inside depth in inches (shallow, deep), kg
# in all (shallow, deep). Makers differ by about 10 in 100.
_USUAL = (
    (8.0, 3.0, 3.5, 5.0, 5.5),
    (10.0, 3.5, 4.5, 7.0, 7.8),
    (12.0, 3.75, 5.0, 9.0, 10.2),
    (14.0, 4.0, 5.0, 12.0, 13.2),
    (16.0, 4.25, 5.5, 15.5, 17.0),
)
_INCHES, _SHALLOW_IN, _DEEP_IN, _SHALLOW_KG, _DEEP_KG = zip(*_USUAL, strict=True)
LEAST_INCHES, MOST_INCHES = 5.0, 24.0

IRON_DENSITY = 7200.0  # kg/m3, grey cast iron; textbook value, from memory
IRON_CONDUCTIVITY = 50.0  # W/(m K), the same
IRON_HEAT = 500.0  # J/(kg K), mean from 20 to 250 degrees Celsius, the same
LID_SHARE_OF_MASS = 0.38  # weighed lids lie between a third and two fifths; from memory


class Surface(StrEnum):
    """What the lower coals lie on."""

    GROUND = "ground"
    METAL = "metal"
    GRATE = "grate"


@dataclass(frozen=True, slots=True)
class OvenBuild:
    """An iron oven of nominal `inches` across, shallow or `deep`; 5 to 24 inches, `ValueError` outside.

    `iron_kg` and `depth_in` None are those of a usual oven of that size (from memory, no source). Lengths in metres,
    areas in m2, masses in kg. Worked example: 12 inches is 0.305 m across, 0.095 m deep and weighs 9 kg.
    """

    inches: float
    deep: bool = False
    iron_kg: float | None = None
    depth_in: float | None = None

    def __post_init__(self) -> None:
        if not LEAST_INCHES <= self.inches <= MOST_INCHES:
            raise ValueError(f"an oven is from 5 to 24 inches across, not {self.inches:g}; give its nominal width")
        if (self.iron_kg is not None and self.iron_kg <= 0) or (self.depth_in is not None and self.depth_in <= 0):
            raise ValueError("iron and depth of an oven must be above 0; leave them out for a usual oven")

    @property
    def wide_m(self) -> float:
        """Width inside."""
        return self.inches * METRES_IN_INCH

    @property
    def depth_m(self) -> float:
        """Depth inside, from the rim to the base."""
        if self.depth_in is not None:
            return self.depth_in * METRES_IN_INCH
        return _usual(self.inches, _DEEP_IN if self.deep else _SHALLOW_IN, 1.0) * METRES_IN_INCH

    @property
    def mass_kg(self) -> float:
        """Iron in all."""
        if self.iron_kg is not None:
            return self.iron_kg
        return _usual(self.inches, _DEEP_KG if self.deep else _SHALLOW_KG, 2.0)

    @property
    def plate_m2(self) -> float:
        """Area of the lid, and of the base."""
        return pi * self.wide_m * self.wide_m / 4

    @property
    def wall_m2(self) -> float:
        """Area of the wall."""
        return pi * self.wide_m * self.depth_m

    @property
    def masses_kg(self) -> tuple[float, float, float]:
        """Iron of lid, wall and base; wall and base share the pot by their areas."""
        lid = LID_SHARE_OF_MASS * self.mass_kg
        pot = self.mass_kg - lid
        wall = pot * self.wall_m2 / (self.wall_m2 + self.plate_m2)
        return lid, wall, pot - wall

    @property
    def thick_m(self) -> float:
        """Thickness of the pot's iron."""
        _, wall, base = self.masses_kg
        return (wall + base) / IRON_DENSITY / (self.wall_m2 + self.plate_m2)

    @property
    def wall_to_base_w_k(self) -> float:
        """Conductance, in W/K, of the iron between the middle of the wall and the ring that halves the base."""
        way = self.depth_m / 2 + self.wide_m / 8
        return IRON_CONDUCTIVITY * self.thick_m * pi * self.wide_m / way


def _usual(inches: float, column: tuple[float, ...], power: float) -> float:
    """Between the usual sizes on straight lines; outside in proportion to a power of the width."""
    at = min(max(inches, _INCHES[0]), _INCHES[-1])
    return float(np.interp(at, _INCHES, column) * (inches / at) ** power)
