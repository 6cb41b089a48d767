"""Amounts that a spoon, a cup or a scale can measure, never rounded in silence.

What the tools can measure is common practice, no source: sets of spoons of 1/8, 1/4, 1/2 and 1 tsp and 1 Tbsp, cups of
1/4, 1/3, 1/2 and 1, metric spoons of 1.25, 2.5, 5 and 15 mL, jugs marked by 5 mL and coarser, scales that show whole
grams or quarter ounces.
"""

import math
from dataclasses import dataclass
from fractions import Fraction

from cookout.core.kitchen.densities import piece_mass_of
from cookout.core.kitchen.measures import (
    CUP,
    DASH,
    GRAM,
    KILOGRAM,
    LITRE,
    MILLILITRE,
    MOST_DASHES,
    OUNCE,
    PINCH,
    POUND,
    STICK,
    TABLESPOON,
    TEASPOON,
    Amount,
    Kind,
    convert,
    in_units,
)
from cookout.core.kitchen.words import counted

# (below this many, to this step); steps grow with the amount, since what matters is the share.
Steps = tuple[tuple[float, float], ...]


@dataclass(frozen=True, slots=True)
class Tools:
    """What is at hand to measure with; each a table of (below, step) in the unit named. Common practice, no source."""

    grams: Steps = ((250.0, 1.0), (math.inf, 5.0))
    ounces: Steps = ((1.0, 0.125), (16.0, 0.25), (32.0, 0.5), (math.inf, 1.0))
    millilitres: Steps = ((5.0, 1.25), (30.0, 2.5), (250.0, 5.0), (1000.0, 10.0), (math.inf, 50.0))
    teaspoons: Steps = ((1.0, 0.125), (math.inf, 0.25))
    sticks: Steps = ((math.inf, 0.125),)
    pieces: Steps = ((math.inf, 0.5),)
    cup_fractions: tuple[float, ...] = (0.0, 1 / 4, 1 / 3, 1 / 2, 2 / 3, 3 / 4)
    cup_tolerance: float = 0.02
    """Share of the amount (0 to 0.1) that a plain cup measure may be off before tablespoons are added to it."""


USUAL_TOOLS = Tools()
_FRACTIONS = {
    Fraction(n, d): f"{n}/{d}" for d in (2, 3, 4, 8, 16) for n in range(1, d) if math.gcd(n, d) == 1
}  # fmt: skip


@dataclass(frozen=True, slots=True)
class Measured:
    """An amount asked for, the nearest that can be measured, and its parts ("1 Tbsp plus 1/4 tsp")."""

    asked: Amount
    amount: Amount
    parts: tuple[Amount, ...]

    @property
    def difference(self) -> float:
        """Measured less asked, in the unit of both; above 0 where there is more than was asked."""
        return self.amount.number - self.asked.number

    @property
    def share(self) -> float:
        """The difference as a share of what was asked; 0 where nothing was."""
        return self.difference / self.asked.number if self.asked.number else 0.0

    @property
    def text(self) -> str:
        """What to measure: ``2 1/4 cups``, ``1 lb plus 4 oz``, ``350 g``."""
        return " plus ".join(write_amount(part) for part in self.parts)

    def __str__(self) -> str:
        if abs(self.share) < 0.005:
            return self.text
        asked = f"{self.asked.number:.3g} {counted(self.asked.unit, self.asked.number)}".strip()
        way = "more" if self.share > 0 else "less"
        return f"{self.text} ({abs(self.share):.0%} {way} than {asked})"


def for_person(amount: Amount, units: str, ingredient: str = "", tools: Tools = USUAL_TOOLS) -> Measured:
    """The amount in a person's units, rounded to what can be measured; the rounding stands in the result.

    Half a cup of flour is 62.5 g, measured as 63 g; 100 g of it in US units is 0.8 cup, measured as 2/3 cup plus
    2 Tbsp, 1 % less.
    """
    return to_measure(in_units(amount, units, ingredient), ingredient, tools)


def to_measure(amount: Amount, ingredient: str = "", tools: Tools = USUAL_TOOLS) -> Measured:
    """The nearest amount that the tools measure, in its own kind of unit; never nothing where something was asked."""
    if amount.number == 0:
        return Measured(amount, amount, (amount,))
    if amount.kind is Kind.VOLUME:
        parts = _volume_parts(amount, tools)
    elif amount.kind is Kind.MASS:
        parts = _mass_parts(amount, tools)
    else:
        parts = (Amount(_pieces(amount, ingredient, tools), amount.unit),)
    total = sum(convert(part, amount.unit).number for part in parts)
    return Measured(amount, Amount(total, amount.unit), parts)


def write_amount(amount: Amount) -> str:
    """An amount as people write it: US and counts with fractions (``2 1/4 cups``), metric with decimals (``1.25 kg``).

    A number that no usual fraction meets is written with as many decimals as it needs, up to six.
    """
    number = _decimal(amount.number)
    if amount.unit not in (MILLILITRE, "cL", "dL", LITRE, GRAM, KILOGRAM):
        number = _with_fraction(amount.number) or number
    return f"{number} {counted(amount.unit, amount.number)}".strip()


def _with_fraction(number: float) -> str:
    whole = math.floor(number + 1e-9)
    rest = Fraction(number - whole).limit_denominator(16)
    if abs(number - whole - rest) > 1e-6 or (rest and rest not in _FRACTIONS):
        return ""
    return " ".join(part for part in (str(whole) if whole or not rest else "", _FRACTIONS.get(rest, "")) if part)


def _decimal(number: float) -> str:
    text = f"{number:.6f}".rstrip("0").rstrip(".")
    # Three digits behind a point could be thousands to a reader who writes them so.
    return f"{text}0" if text[-4:-3] == "." else text


def _stepped(number: float, steps: Steps) -> float:
    step = next(step for below, step in steps if number < below or below == math.inf)
    return max(step, math.floor(number / step + 0.5) * step)


def _mass_parts(amount: Amount, tools: Tools) -> tuple[Amount, ...]:
    if amount.unit == STICK:
        return (Amount(_stepped(amount.number, tools.sticks), STICK),)
    if amount.unit in (GRAM, KILOGRAM):
        mass = _stepped(convert(amount, GRAM).number, tools.grams)
        return (Amount(mass, GRAM) if mass < 1000 else Amount(mass / 1000, KILOGRAM),)
    ounces = _stepped(convert(amount, OUNCE).number, tools.ounces)
    pounds, rest = divmod(ounces, 16)
    return tuple(part for part in (Amount(pounds, POUND), Amount(rest, OUNCE)) if part.number)


def _volume_parts(amount: Amount, tools: Tools) -> tuple[Amount, ...]:
    if amount.unit in (MILLILITRE, "cL", "dL", LITRE):
        volume = _stepped(convert(amount, MILLILITRE).number, tools.millilitres)
        return (Amount(volume, MILLILITRE) if volume < 1000 else Amount(volume / 1000, LITRE),)
    if amount.unit in (DASH, PINCH) and amount.number <= MOST_DASHES:
        return (Amount(max(1.0, math.floor(amount.number + 0.5)), amount.unit),)
    spoons = convert(amount, TEASPOON).number
    if spoons < 0.75 * tools.teaspoons[0][1]:
        return (Amount(1.0, PINCH),)
    spoons = _stepped(spoons, tools.teaspoons)
    return _spoon_parts(spoons) if spoons < 12 else _cup_parts(convert(amount, CUP).number, tools)


def _spoon_parts(spoons: float) -> tuple[Amount, ...]:
    tablespoons, rest = divmod(spoons, 3)
    return tuple(part for part in (Amount(tablespoons, TABLESPOON), Amount(rest, TEASPOON)) if part.number)


def _cup_parts(cups: float, tools: Tools) -> tuple[Amount, ...]:
    whole = math.floor(cups)
    plain = sorted({whole + fraction for fraction in (*tools.cup_fractions, 1.0)})
    nearest = min(plain, key=lambda number: abs(number - cups))
    if abs(nearest - cups) <= tools.cup_tolerance * cups:
        return (Amount(nearest, CUP),)
    number, spoons = min(
        ((number, spoons) for number in plain for spoons in range(4)),
        key=lambda pair: (round(abs(pair[0] + pair[1] / 16 - cups), 9), pair[1]),
    )
    return tuple(part for part in (Amount(number, CUP), Amount(spoons, TABLESPOON)) if part.number)


def _pieces(amount: Amount, ingredient: str, tools: Tools) -> float:
    if amount.unit == "" and piece_mass_of(ingredient) is not None:
        return max(1.0, math.floor(amount.number + 0.5))
    return _stepped(amount.number, tools.pieces)
