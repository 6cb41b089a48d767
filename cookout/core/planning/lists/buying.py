"""Totals rounded up to what can be bought or measured, in the reader's units. Never less than was asked.

The steps are our own choice, no source: coarse enough to read in a shop. What dishes ask for by weight is bought by
weight. What they ask for by volume is told in the reader's measures, and besides in that of the shop: foods of known
density by weight, much of a liquid in quarts.
"""

import math
from dataclasses import dataclass

from cookout.core.kitchen.densities import density_of
from cookout.core.kitchen.measures import (
    CUP,
    DASH,
    GRAM,
    KILOGRAM,
    LITRE,
    MILLILITRE,
    OUNCE,
    PINCH,
    POUND,
    TABLESPOON,
    TEASPOON,
    Amount,
    Kind,
    convert,
    in_units,
)
from cookout.core.kitchen.rounding import Steps, write_amount
from cookout.core.planning.lists.sums import Sum
from cookout.core.quantities import Units

# (below this many, to this step) in the unit named.
_METRIC: Steps = ((30.0, 2.5), (100.0, 5.0), (250.0, 10.0), (1000.0, 25.0), (5000.0, 100.0), (math.inf, 250.0))
_TEASPOONS: Steps = ((0.5, 0.125), (math.inf, 0.25))
_TABLESPOONS: Steps = ((math.inf, 0.5),)
_CUPS: Steps = ((4.0, 0.25), (16.0, 0.5), (math.inf, 1.0))
_QUARTS: Steps = ((math.inf, 0.5),)
_OUNCES: Steps = ((4.0, 0.5), (math.inf, 1.0))
_POUNDS: Steps = ((4.0, 0.25), (math.inf, 0.5))
_QUART = "qt"
_MUCH_CUPS = 4
_TEASPOONS_IN_CUP = 48
_UNSURE_WEIGHT = 0.005
"""Share by which the weight of a cupful is not known; less than that takes nobody to the next step. Our own choice."""
_HAIR = 1e-9
"""A share that only the arithmetic of a computer adds; it takes nobody to the next step."""


@dataclass(frozen=True, slots=True)
class Buy:
    """What to buy of one total: `amount` is at least the `exact` one, and in one unit; `text` says it.

    `also` is the same in the measure that shops use; empty where there is no other, or where it is not known. `each` is
    the size of one piece, as the total has it.
    """

    exact: Amount
    amount: Amount
    text: str
    also: str = ""
    each: str = ""


def buy(total: Sum, units: str) -> Buy:
    """A total for a reader with these units: 6.1 cups of flour are "6 1/2 cups", also "1 3/4 lb"; or 775 g."""
    if total.total.kind is Kind.COUNT or total.total.unit in (DASH, PINCH):
        whole = Amount(_up(total.total.number, ((math.inf, 1.0),)), total.total.unit)
        return Buy(total.total, whole, _pieces(whole, total.each), each=total.each)
    amount = _rounded(_read_in(total, units))
    also = _also(total, amount, units)
    return Buy(total.total, amount, write_amount(amount), "" if also is None else write_amount(also))


def _read_in(total: Sum, units: str) -> Amount:
    """The total in the reader's kind of unit, unrounded."""
    metric = Units(units) is Units.METRIC
    if total.total.kind is Kind.MASS:
        return convert(total.total, GRAM if metric else OUNCE)
    return in_units(convert(total.total, TEASPOON), units, total.food) if metric else convert(total.total, TEASPOON)


def _rounded(amount: Amount) -> Amount:
    if amount.kind is Kind.MASS:
        return _mass(amount)
    if amount.unit == MILLILITRE:
        return _thousands(Amount(_up(amount.number, _METRIC), MILLILITRE), LITRE)
    return _cups_and_spoons(convert(amount, TEASPOON).number)


def _cups_and_spoons(spoons: float) -> Amount:
    """A plain quarter cup is one; what else is less than half a cup is told in spoons."""
    cups = spoons / _TEASPOONS_IN_CUP
    if cups >= 0.5 or abs(cups - 0.25) < _HAIR:
        return Amount(_up(cups, _CUPS), CUP)
    if spoons >= 3 - _HAIR:
        return Amount(_up(spoons / 3, _TABLESPOONS), TABLESPOON)
    return Amount(_up(spoons, _TEASPOONS), TEASPOON)


def _mass(amount: Amount) -> Amount:
    if amount.unit == GRAM:
        return _thousands(Amount(_up(amount.number, _METRIC), GRAM), KILOGRAM)
    pounds = convert(amount, POUND).number
    if pounds > 15 / 16:
        return Amount(_up(pounds, _POUNDS), POUND)
    return Amount(_up(convert(amount, OUNCE).number, _OUNCES), OUNCE)


def _thousands(amount: Amount, larger: str) -> Amount:
    return amount if amount.number < 1000 else Amount(amount.number / 1000, larger)


def _also(total: Sum, amount: Amount, units: str) -> Amount | None:
    """The total in the measure that shops use, where that is another one and known."""
    if Units(units) is Units.METRIC or amount.unit != CUP:
        return None
    density = density_of(total.food) if total.food else None
    if density is not None and not density.pours:
        return _mass(Amount(convert(total.total, OUNCE, total.food).number * (1 - _UNSURE_WEIGHT), OUNCE))
    return Amount(_up(convert(total.total, _QUART).number, _QUARTS), _QUART) if amount.number >= _MUCH_CUPS else None


def _pieces(whole: Amount, each: str) -> str:
    return f"{write_amount(whole)} of {each}" if each else write_amount(whole)


def _up(number: float, steps: Steps) -> float:
    step = next(step for below, step in steps if number < below or below == math.inf)
    return max(step, math.ceil(number / step * (1 - _HAIR)) * step)
