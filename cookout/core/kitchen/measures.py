"""Kitchen measures: an amount and its unit, turned into another unit, and volume into mass and back.

The units are US customary (a cup is 236.5882365 mL) and metric, with the exact factors of NIST Handbook 44, Appendix C,
as `pint` has them. A British pint or a metric cup is another measure: write it in mL. Stick, dash and pinch are common
practice, no source: a stick of butter is a quarter pound, a dash 1/8 tsp, a pinch 1/16 tsp. Words that count pieces
(clove, can, head ...) are no units of measure: they turn into nothing else.
"""

import math
from dataclasses import dataclass
from enum import StrEnum
from functools import cache

import pint

from cookout.core.errors import QuantityError
from cookout.core.kitchen.densities import density_of, piece_mass_of
from cookout.core.quantities import Units


class Kind(StrEnum):
    """What an amount measures."""

    VOLUME = "volume"
    MASS = "mass"
    COUNT = "count"


CUP, TEASPOON, TABLESPOON, MILLILITRE, LITRE = "cup", "tsp", "Tbsp", "mL", "L"
OUNCE, POUND, GRAM, KILOGRAM, STICK = "oz", "lb", "g", "kg", "stick"
DASH, PINCH = "dash", "pinch"

_VOLUMES = {
    PINCH: "kitchen_pinch", DASH: "kitchen_dash", TEASPOON: "teaspoon", TABLESPOON: "tablespoon",
    "fl oz": "fluid_ounce", CUP: "cup", "pt": "liquid_pint", "qt": "quart", "gal": "gallon",
    MILLILITRE: "milliliter", "cL": "centiliter", "dL": "deciliter", LITRE: "liter",
}  # fmt: skip
_MASSES = {OUNCE: "ounce", POUND: "pound", GRAM: "gram", KILOGRAM: "kilogram", STICK: "kitchen_stick"}
_METRIC = frozenset({MILLILITRE, "cL", "dL", LITRE, GRAM, KILOGRAM})
# Volumes below this are measured with spoons in either kind of unit, whatever the food weighs.
SPOON_MILLILITRES = 30.0
# More of them than this is a spoonful.
MOST_DASHES = 3.0


@dataclass(frozen=True, slots=True)
class Amount:
    """`number` of `unit`: a unit of measure, a word that counts (clove, can), or empty for pieces; 0 or more."""

    number: float
    unit: str = ""

    def __post_init__(self) -> None:
        if not (math.isfinite(self.number) and self.number >= 0):
            raise QuantityError(f"{self.number} is no amount; write a number of 0 or more.")

    @property
    def kind(self) -> Kind:
        """What it measures, by its unit."""
        return kind_of(self.unit)

    def times(self, factor: float) -> "Amount":
        """As many times the amount, in the same unit."""
        return Amount(self.number * factor, self.unit)


def kind_of(unit: str) -> Kind:
    """Whether a unit is one of volume, of mass, or counts pieces."""
    if unit in _VOLUMES:
        return Kind.VOLUME
    return Kind.MASS if unit in _MASSES else Kind.COUNT


def convert(amount: Amount, unit: str, ingredient: str = "") -> Amount:
    """The amount in another unit; between volume and mass by the ingredient's density.

    `convert(Amount(1, "cup"), "mL")` is 236.588 mL, and 2 cups of flour are 250 g (USDA SR28). `QuantityError` where
    the density is not known, or pieces are to become a measure; a large egg has one.
    """
    source, target = amount.kind, kind_of(unit)
    if source is target is Kind.COUNT:
        return _same_count(amount, unit)
    if source is target:
        return Amount(amount.number * _in_base(amount.unit) / _in_base(unit), unit)
    return Amount(_from_grams(_grams(amount, ingredient), unit, ingredient), unit)


def grams(amount: Amount, ingredient: str) -> float:
    """Grams of an amount of an ingredient; `QuantityError` where what it weighs is not known."""
    return convert(amount, GRAM, ingredient).number


def can_weigh(amount: Amount, ingredient: str) -> bool:
    """Whether it is known what an amount of the ingredient weighs."""
    if amount.kind is Kind.COUNT:
        return amount.unit == "" and piece_mass_of(ingredient) is not None
    return amount.kind is Kind.MASS or density_of(ingredient) is not None


def in_units(amount: Amount, units: str, ingredient: str = "") -> Amount:
    """The amount as a person with these units measures it; unrounded.

    Metric: solids of known density by weight, all else by volume. US: what has a known density by cup and spoon, all
    else by weight. Below 30 mL it is spoons either way, written in mL or tsp. What already has their unit stays, and so
    do a dash and a pinch.
    """
    if amount.kind is Kind.COUNT or _is_dashes(amount) or (amount.unit in _METRIC) == (Units(units) is Units.METRIC):
        return amount
    density = density_of(ingredient)
    if Units(units) is Units.METRIC:
        by_weight = amount.kind is Kind.MASS or (density is not None and not density.pours)
        return _metric(amount, ingredient, by_weight=by_weight)
    return _customary(amount, ingredient, by_weight=amount.kind is Kind.MASS and density is None)


def _is_dashes(amount: Amount) -> bool:
    return amount.unit in (DASH, PINCH) and amount.number <= MOST_DASHES


def _metric(amount: Amount, ingredient: str, *, by_weight: bool) -> Amount:
    spoonful = amount.kind is Kind.VOLUME and convert(amount, MILLILITRE).number < SPOON_MILLILITRES
    if by_weight and not spoonful:
        return convert(amount, GRAM, ingredient)
    return convert(amount, MILLILITRE, ingredient)


def _customary(amount: Amount, ingredient: str, *, by_weight: bool) -> Amount:
    if by_weight:
        ounces = convert(amount, OUNCE)
        return ounces if ounces.number < 16 else convert(amount, POUND)
    cups = convert(amount, CUP, ingredient)
    if cups.number >= 0.25:
        return cups
    return convert(cups, TABLESPOON if cups.number >= 1 / 16 else TEASPOON)


def _same_count(amount: Amount, unit: str) -> Amount:
    if amount.unit != unit:
        raise QuantityError(
            f'"{amount.unit or "pieces"}" does not turn into "{unit or "pieces"}"; give the amount by weight or volume.'
        )
    return amount


def _grams(amount: Amount, ingredient: str) -> float:
    if amount.kind is Kind.MASS:
        return amount.number * _in_base(amount.unit)
    if amount.kind is Kind.VOLUME:
        return amount.number * _in_base(amount.unit) * _grams_a_millilitre(ingredient)
    piece = piece_mass_of(ingredient) if amount.unit == "" else None
    if piece is None:
        raise QuantityError(
            f'What one {amount.unit or "piece"} of "{ingredient}" weighs is not known; give the amount by weight.'
        )
    return amount.number * piece.grams


def _from_grams(mass: float, unit: str, ingredient: str) -> float:
    kind = kind_of(unit)
    if kind is Kind.MASS:
        return mass / _in_base(unit)
    if kind is Kind.VOLUME:
        return mass / _grams_a_millilitre(ingredient) / _in_base(unit)
    piece = piece_mass_of(ingredient) if unit == "" else None
    if piece is None:
        raise QuantityError(f'What one {unit or "piece"} of "{ingredient}" weighs is not known; keep to weight.')
    return mass / piece.grams


def _grams_a_millilitre(ingredient: str) -> float:
    density = density_of(ingredient)
    if density is None:
        raise QuantityError(
            f'What a cup of "{ingredient}" weighs is not known; weigh it, or keep to one kind of measure.'
        )
    return density.grams_a_cup / _in_base(CUP)


@cache
def _in_base(unit: str) -> float:
    """Millilitres or grams in one of the unit."""
    volume = unit in _VOLUMES
    quantity = _registry().Quantity(1.0, (_VOLUMES if volume else _MASSES)[unit])
    return float(quantity.to("milliliter" if volume else "gram").magnitude)


@cache
def _registry() -> pint.UnitRegistry[float]:
    registry: pint.UnitRegistry[float] = pint.UnitRegistry(cache_folder=None)
    registry.define("kitchen_stick = 0.25 * pound")
    registry.define("kitchen_dash = 0.125 * teaspoon")
    registry.define("kitchen_pinch = 0.0625 * teaspoon")
    return registry
