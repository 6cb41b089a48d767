"""The fuel of a whole event: coals, kilograms and chimney loads."""

from collections.abc import Iterable
from dataclasses import dataclass
from math import ceil

from cookout.core.fire.charcoal import BRIQUETTES, TENDING
from cookout.core.fire.coals import coal_params, top_ups


@dataclass(frozen=True, slots=True)
class BakeFuel:
    """One bake: coals laid on the `lid` and `under`, for `minutes` from laying them to food out.

    `rate` is how fast they burn beside still air (`coals.burn_rate`).
    """

    lid: int
    under: int
    minutes: int
    rate: float = 1.0


@dataclass(frozen=True, slots=True)
class Supply:
    """Fuel to bring: `laid` first, `added` later, `spare`; `kg` and `chimney_loads` are those of all `coals`."""

    laid: int
    added: int
    spare: int
    kg: float
    chimney_loads: int

    @property
    def coals(self) -> int:
        """All coals to bring."""
        return self.laid + self.added + self.spare


@dataclass(frozen=True, slots=True)
class SupplyParams:
    """spare_share: coals beyond those counted, for wind, breakage and a second try; 0.1 to 0.3; our own choice."""

    spare_share: float = 0.15


SUPPLY = SupplyParams()


def fuel_for(
    bakes: Iterable[BakeFuel],
    fuel: str = BRIQUETTES,
    chimney_coals: int = TENDING.chimney_coals,
    params: SupplyParams = SUPPLY,
) -> Supply:
    """The fuel that the bakes want together; pieces of lump are counted by a briquette's size.

    Chimney loads are what lighting all of it takes, each bake's coals and each top-up by themselves being no more than
    a load's part. Worked example: two bakes of 17 and 8 briquettes for 60 min: 50 laid, 30 added, 12 spare, 2.3 kg, 2
    loads of 60.
    """
    if chimney_coals < 1:
        raise ValueError("a chimney lights at least one coal; give its size in coals")
    laid = added = 0
    for bake in bakes:
        laid += bake.lid + bake.under
        added += sum(lot.total for lot in top_ups(bake.lid, bake.under, fuel, bake.minutes, bake.rate))
    spare = ceil((laid + added) * params.spare_share)
    coals = laid + added + spare
    return Supply(laid, added, spare, round(coals * coal_params(fuel).kg_each, 2), ceil(coals / chimney_coals))
