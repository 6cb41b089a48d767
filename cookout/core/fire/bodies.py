"""Round bodies of food on a grid of height and radius, and what is around them.

Arrays have the bodies last: (height, radius, body). Units are SI, temperatures degrees Celsius.

Sources:
[1] Incropera, DeWitt, Bergman, Lavine: Fundamentals of Heat and Mass Transfer, 6th edition (2007), sections 2.4 and
    5.10, from memory.
"""

from collections.abc import Sequence
from dataclasses import dataclass, fields, replace
from functools import lru_cache
from typing import Self

import numpy as np
from numpy.typing import NDArray

Array = NDArray[np.float64]
Places = NDArray[np.intp]
Which = NDArray[np.intp] | NDArray[np.bool_]


@dataclass(frozen=True, slots=True)
class Grid:
    """Nodes over the height and the radius, and the matrices of a body of height 1 and radius 1.

    `across` and `rings` give what conduction brings to each node; `ends` and `rim` turn a face's flux [per area] into a
    rate at its node; `weights` are shares of the volume.
    """

    across: Array
    rings: Array
    ends: float
    rim: float
    weights: Array


@lru_cache(maxsize=16)
def grid(heights: int, radii: int) -> Grid:
    """The grid of `heights` x `radii` nodes, at least 3 each, both faces and the axis included [1]."""
    tall, wide = heights - 1, radii - 1
    across = (np.eye(heights, k=1) - 2 * np.eye(heights) + np.eye(heights, k=-1)) * tall**2
    across[0, 1] = across[-1, -2] = 2 * tall**2
    edges = np.array([0.0, *((np.arange(wide) + 0.5) / wide), 1.0])
    rings_volume = (edges[1:] ** 2 - edges[:-1] ** 2) / 2
    flow = np.diff(np.eye(radii), axis=0) * (edges[1:-1] * wide)[:, None]
    rings = -np.diff(np.eye(radii), axis=0).T @ flow / rings_volume[:, None]
    slices = np.full(heights, 1.0 / tall)
    slices[[0, -1]] /= 2
    return Grid(across, rings, 2.0 * tall, float(1 / rings_volume[-1]), np.outer(slices, rings_volume * 2))


@dataclass(frozen=True, slots=True)
class Bodies:
    """Bodies to march, each field an array over them.

    Conductivities follow ``moist + vapour x^2``, x from 0 at `vapour_from_c` to 1 at `boil_c`; `dry` is past boiling.
    `plateau_k` is latent heat of the water over the heat capacity [K]. `film_*` are convection [W/m2 K] or contact,
    `glow_*` emissivities, of top, bottom and side. `mass_film` [m/s] lets vapour out of the top (0: covered) against
    a dried layer: `dried` [kg/m s] is its diffusivity times the water it held; `vapour_pa` is what stands in the oven.
    `crust_kg_m2` is water already gone from the top at the start.
    """

    height_m: Array
    radius_m: Array
    heat_j_m3k: Array
    moist: Array
    vapour: Array
    dry: Array
    vapour_from_c: Array
    boil_c: Array
    plateau_k: Array
    pressure_pa: Array
    film_top: Array
    film_bottom: Array
    film_side: Array
    glow_top: Array
    glow_bottom: Array
    glow_side: Array
    mass_film: Array
    dried: Array
    vapour_pa: Array
    crust_kg_m2: Array
    start_c: Array

    @property
    def count(self) -> int:
        """How many bodies."""
        return int(self.height_m.size)

    def take(self, which: Which) -> Self:
        """Some of the bodies."""
        return type(self)(**{each.name: getattr(self, each.name)[which] for each in fields(self)})

    @classmethod
    def joined(cls, parts: Sequence[Self]) -> Self:
        """Several lots of bodies as one, in order."""
        return cls(**{each.name: np.concatenate([getattr(part, each.name) for part in parts]) for each in fields(cls)})

    def changed(self, **to: Array) -> Self:
        """The same bodies with some fields changed."""
        return replace(self, **to)


@dataclass(frozen=True, slots=True)
class Around:
    """Temperatures around the bodies [degrees Celsius], (body, time) at every `step_s` from 0; the last one stays."""

    top: Array
    bottom: Array
    side: Array
    step_s: float = 60.0

    @property
    def changes(self) -> bool:
        """Whether any of them changes with time."""
        return int(self.top.shape[1]) > 1

    @classmethod
    def joined(cls, parts: Sequence["Around"]) -> "Around":
        """Several lots as one, in order; shorter ones keep their last temperature."""
        knots = max(part.top.shape[1] for part in parts)
        columns = [np.minimum(np.arange(knots), part.top.shape[1] - 1) for part in parts]
        top, bottom, side = (
            np.concatenate([getattr(part, name)[:, own] for part, own in zip(parts, columns, strict=True)])
            for name in ("top", "bottom", "side")
        )
        return cls(top, bottom, side, parts[0].step_s)

    @property
    def rests_s(self) -> float:
        """When the last of them has come to rest [s]."""
        return (int(self.top.shape[1]) - 1) * self.step_s

    def take(self, which: Which) -> "Around":
        """What is around some of the bodies."""
        return Around(self.top[which], self.bottom[which], self.side[which], self.step_s)

    def at(self, seconds: Array) -> tuple[Array, Array, Array]:
        """(top, bottom, side) at a time of each body's own, linear between the knots."""
        if not self.changes:
            return self.top[:, 0], self.bottom[:, 0], self.side[:, 0]
        place = np.minimum(seconds / self.step_s, self.top.shape[1] - 1.0)
        left = np.minimum(place.astype(np.intp), self.top.shape[1] - 2)
        part, each = place - left, np.arange(len(left))
        top, bottom, side = (
            curve[each, left] * (1 - part) + curve[each, left + 1] * part
            for curve in (self.top, self.bottom, self.side)
        )
        return top, bottom, side
