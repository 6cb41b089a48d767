"""Pans and ovens as vessels: area, depth and volume, and the factor from one to another.

At equal depth batter scales by area, and the time in the oven stays. Depths of batter are common practice, no source.
"""

import math
from dataclasses import dataclass

from cookout.core.errors import QuantityError

CUBIC_INCHES_IN_CUP = 14.4375
"""A gallon is 231 cubic inches and 16 cups (NIST Handbook 44, Appendix C)."""


@dataclass(frozen=True, slots=True)
class Pan:
    """A pan: `inches` across if round, or `inches` by `by_inches`; `deep_inches` to the rim (None: not known)."""

    inches: float
    by_inches: float | None = None
    deep_inches: float | None = None

    def __post_init__(self) -> None:
        sizes = [size for size in (self.inches, self.by_inches, self.deep_inches) if size is not None]
        if not all(math.isfinite(size) and size > 0 for size in sizes):
            raise QuantityError("A pan's sizes are above 0; give them in inches.")

    @property
    def area(self) -> float:
        """Square inches of its floor: 63.62 for 9 in round, 117 for 9 by 13."""
        if self.by_inches is None:
            return math.pi / 4 * self.inches**2
        return self.inches * self.by_inches

    @property
    def cups(self) -> float | None:
        """US cups it holds to the rim, or None where its depth is not known."""
        return None if self.deep_inches is None else self.area * self.deep_inches / CUBIC_INCHES_IN_CUP


@dataclass(frozen=True, slots=True)
class Fit:
    """How a batter made for some pans fits others: `factor` times the recipe, `depth_factor` times its depth there."""

    factor: float
    depth_factor: float
    note: str


def same_depth(have: Pan, want: Pan, *, have_count: int = 1, want_count: int = 1) -> float:
    """The factor on a recipe that fills `want_count` other pans as deep as it filled its own: areas, times counts.

    Three 9-inch layers instead of two 8-inch: 3 x 63.62 / (2 x 50.27) = 1.90.
    """
    _counted(have_count, want_count)
    return want_count * want.area / (have_count * have.area)


def same_fill(have: Pan, want: Pan, *, have_count: int = 1, want_count: int = 1) -> float:
    """The factor that fills other pans to the same share of their volume; both depths must be known."""
    _counted(have_count, want_count)
    if have.cups is None or want.cups is None:
        raise QuantityError("Filling by volume needs the depth of both pans; measure it, or scale by area.")
    return want_count * want.cups / (have_count * have.cups)


def fit(have: Pan, want: Pan, factor: float, *, have_count: int = 1, want_count: int = 1) -> Fit:
    """What happens to the depth where `factor` times the recipe goes into the other pans; says if it may run over."""
    depth = factor / same_depth(have, want, have_count=have_count, want_count=want_count)
    if have.deep_inches and want.deep_inches and depth * have.deep_inches > want.deep_inches * 1.001:
        return Fit(factor, depth, "A pan as full as its own was would run over: use more pans, or less batter in each.")
    if abs(depth - 1) <= 0.05:
        return Fit(factor, depth, "As deep as before: the same time in the oven.")
    way = "Deeper, so longer" if depth > 1 else "Shallower, so sooner done"
    return Fit(factor, depth, f"{way}: times grow with depth, not with batches; have the bake worked out anew.")


def baking_time_factor(depth_factor: float) -> tuple[float, float]:
    """Least and most factor on a bake's minutes where only the depth changes; 0.25 to 4 times the depth.

    Between depth to the first power (the surface holds the heat back) and to the second (the batter's inside does):
    twice as deep takes 2 to 4 times as long. Limits of unsteady conduction at small and large Biot number, see
    Incropera and DeWitt, Fundamentals of Heat and Mass Transfer, ch. 5 (from memory); the fire's bake model says more.
    """
    if not 0.25 <= depth_factor <= 4:
        raise QuantityError(f"{depth_factor:g} times the depth is another dish; stay between a quarter and 4 times.")
    low, high = sorted((depth_factor, depth_factor**2))
    return low, high


def _counted(*counts: int) -> None:
    if min(counts) < 1:
        raise QuantityError("There must be at least one pan on either side.")
