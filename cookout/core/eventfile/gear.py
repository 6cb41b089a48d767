"""The tables [[gear]]."""

from cookout.core.eventfile.faults import quoted
from cookout.core.eventfile.fields import Fields
from cookout.core.planning.event import Gear, GearId, GearKind
from cookout.core.quantities import METRES_IN_INCH, parse_inches

# Ovens are sold from 5 to 22 inches; what lies outside is a slip of the pen. Common practice, no source.
SMALLEST_INCHES, LARGEST_INCHES = 4, 24
MOST_PIECES = 200

_ONLY_FOR = {
    "size": GearKind.OVEN,
    "deep": GearKind.OVEN,
    "coals": GearKind.CHIMNEY,
    "spots": GearKind.TABLE,
    "spot_size": GearKind.TABLE,
    "material": GearKind.TABLE,
}


def read_gear(fields: Fields) -> Gear:
    """One kind of gear."""
    gear_id = fields.id()
    kind = fields.choice("kind", GearKind)
    if kind is not None:
        _refuse_foreign_keys(fields, kind)
    return Gear(
        id=GearId(gear_id),
        kind=kind or GearKind.OTHER,
        name=fields.text("name", gear_id),
        count=fields.whole("count", 1, least=1, most=MOST_PIECES),
        inches=read_inches(fields, "size") if kind is GearKind.OVEN else None,
        deep=fields.flag("deep", default=False),
        coals=fields.whole("coals", least=1, most=1000) if kind is GearKind.CHIMNEY else None,
        spots=fields.whole("spots", least=1, most=MOST_PIECES) if kind is GearKind.TABLE else None,
        spot_inches=read_inches(fields, "spot_size") if fields.has("spot_size") else None,
        material=fields.text("material", ""),
    )


def read_inches(fields: Fields, key: str) -> int:
    """The nominal diameter of an oven, in whole inches."""
    least, most = (inches * METRES_IN_INCH for inches in (SMALLEST_INCHES, LARGEST_INCHES))
    metres = fields.quantity(key, lambda text: parse_inches(text) * METRES_IN_INCH, '"12 in"', least=least, most=most)
    return round(metres / METRES_IN_INCH)


def _refuse_foreign_keys(fields: Fields, kind: GearKind) -> None:
    for key, owner in _ONLY_FOR.items():
        if fields.has(key) and kind is not owner:
            fields.fault(key, f"It is for the kind {quoted(owner)} only.", "Leave it out or mend the kind.")
