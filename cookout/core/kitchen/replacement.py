"""A swap as a recipe declares it; `swaps` makes it."""

from dataclasses import dataclass
from typing import NewType

from cookout.core.errors import QuantityError
from cookout.core.kitchen.words import plain_name

SwapId = NewType("SwapId", str)

MOST_RATIO = 100.0


@dataclass(frozen=True, slots=True)
class Swap:
    """`use` instead of `instead_of`, `ratio` times its amount (3/4: three quarters of it); in `unit` where it differs.

    With a unit, the ratio is the amount in that unit for one unit of the old: 1/4 cup of applesauce for an egg is
    ``Swap(SwapId("no-egg"), "egg", "applesauce", 0.25, "cup")``.
    """

    id: SwapId
    instead_of: str
    use: str
    ratio: float = 1.0
    unit: str | None = None
    note: str = ""

    def __post_init__(self) -> None:
        if not 0 < self.ratio <= MOST_RATIO:
            raise QuantityError(f"A swap's ratio is above 0 and at most {MOST_RATIO:g}, not {self.ratio:g}.")
        if not plain_name(self.use) or plain_name(self.use) == plain_name(self.instead_of):
            raise QuantityError(f'A swap names two ingredients; "{self.use}" does not replace "{self.instead_of}".')
