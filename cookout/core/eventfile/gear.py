"""The tables [[gear]]."""

from cookout.core.eventfile.faults import quoted
from cookout.core.eventfile.fields import Fields
from cookout.core.fire.iron import Surface
from cookout.core.planning.event import Gear, GearId, GearKind
from cookout.core.quantities import METRES_IN_INCH, parse_inches, parse_length, parse_mass

# Ovens are sold from 5 to 22 inches; what lies outside is a slip of the pen. Common practice, no source.
SMALLEST_INCHES, LARGEST_INCHES = 4, 24
MOST_PIECES = 200
LIGHTEST_KG, HEAVIEST_KG = 0.5, 100.0
LOWEST_TRIVET_M, HIGHEST_TRIVET_M = 0.003, 0.3
MOST_PLACES = 50

_ONLY_FOR = {
    "size": GearKind.OVEN,
    "deep": GearKind.OVEN,
    "coals": GearKind.CHIMNEY,
    "spots": GearKind.TABLE,
    "spot_size": GearKind.TABLE,
    "material": GearKind.TABLE,
    "surface": GearKind.TABLE,
    "iron": GearKind.OVEN,
    "height": GearKind.TRIVET,
    "ice": GearKind.COOLER,
    "places": GearKind.COOLER,
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
        iron_kg=_read_iron(fields) if fields.has("iron") else None,
        surface=fields.choice("surface", Surface, Surface.METAL) or Surface.METAL,
        height_m=_read_height(fields) if fields.has("height") else None,
        ice=fields.flag("ice", default=True),
        places=fields.whole("places", 6, least=1, most=MOST_PLACES),
    )


def _read_iron(fields: Fields) -> float:
    return fields.quantity("iron", parse_mass, '"20 lb"', least=LIGHTEST_KG, most=HEAVIEST_KG)


def _read_height(fields: Fields) -> float:
    return fields.quantity("height", parse_length, '"1 in"', least=LOWEST_TRIVET_M, most=HIGHEST_TRIVET_M)


def read_inches(fields: Fields, key: str) -> int:
    """The nominal diameter of an oven, in whole inches."""
    least, most = (inches * METRES_IN_INCH for inches in (SMALLEST_INCHES, LARGEST_INCHES))
    metres = fields.quantity(key, lambda text: parse_inches(text) * METRES_IN_INCH, '"12 in"', least=least, most=most)
    return round(metres / METRES_IN_INCH)


def _refuse_foreign_keys(fields: Fields, kind: GearKind) -> None:
    for key, owner in _ONLY_FOR.items():
        if fields.has(key) and kind is not owner:
            fields.fault(key, f"It is for the kind {quoted(owner)} only.", "Leave it out or mend the kind.")
