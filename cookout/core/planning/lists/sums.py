"""Amounts of one food from many dishes added up: exactly within volume, mass and like pieces, else by known density.

What cannot be added stands side by side and is never guessed: 4 onions and 600 g of onions are both bought.
"""

from dataclasses import dataclass

from cookout.core.kitchen.densities import density_of, piece_mass_of, weighed_as
from cookout.core.kitchen.measures import DASH, GRAM, MILLILITRE, MOST_DASHES, PINCH, Amount, Kind, can_weigh, convert
from cookout.core.kitchen.recipe import Ingredient
from cookout.core.planning.lists.foods import size_of_each


@dataclass(frozen=True, slots=True)
class Asked:
    """An amount that a dish asks for, of food that is weighed by the name `food`; `each` is the size of one piece."""

    amount: Amount
    food: str
    each: str = ""


@dataclass(frozen=True, slots=True)
class Sum:
    """An exact total in mL, g or pieces; `food` is the name that it has a density by, empty where it has none."""

    total: Amount
    food: str = ""
    each: str = ""


def asked_of(ingredient: Ingredient, factor: float) -> Asked | None:
    """What `factor` times an ingredient asks for; None for one to taste."""
    if ingredient.amount is None:
        return None
    weighed = weighed_as(ingredient.name, ingredient.note)
    return Asked(Amount(ingredient.amount * factor, ingredient.unit), weighed, size_of_each(ingredient.note))


def add_up(asked: tuple[Asked, ...]) -> tuple[Sum, ...]:
    """The totals, as few as may be; measures before pieces.

    2 cups of flour (125 g a cup, USDA SR28) and 400 g of flour are 650 g; 4 onions and 600 g of onions stay two.
    """
    pieces = [one for one in asked if one.amount.kind is Kind.COUNT]
    measured = [one for one in asked if one.amount.kind is not Kind.COUNT]
    if measured and pieces and _are_eggs([*pieces, *measured]):
        return (Sum(Amount(sum(_eggs(one) for one in asked)), pieces[0].food),)
    return (*_measures(measured), *_counts(pieces))


def _measures(asked: list[Asked]) -> list[Sum]:
    volumes = [one for one in asked if one.amount.kind is Kind.VOLUME]
    masses = [one for one in asked if one.amount.kind is Kind.MASS]
    if not (volumes and masses):
        return [_total(part, unit) for part, unit in ((volumes, MILLILITRE), (masses, GRAM)) if part]
    weighed = [one for one in volumes if can_weigh(one.amount, one.food)]
    unknown = [one for one in volumes if one not in weighed]
    found = [_total([*masses, *weighed], GRAM)]
    return [*found, _total(unknown, MILLILITRE)] if unknown else found


def _total(asked: list[Asked], unit: str) -> Sum:
    if dashes := _dashes(asked):
        return dashes
    total = sum(convert(one.amount, unit, one.food).number for one in asked)
    return Sum(Amount(total, unit), _one_density(asked))


def _dashes(asked: list[Asked]) -> Sum | None:
    """A few pinches stay pinches; more of them are a spoonful."""
    units = {one.amount.unit for one in asked}
    if units not in ({DASH}, {PINCH}):
        return None
    total = sum(one.amount.number for one in asked)
    return Sum(Amount(total, units.pop()), _one_density(asked)) if total <= MOST_DASHES else None


def _one_density(asked: list[Asked]) -> str:
    """The name by which all of it weighs the same, or which the rest of it can go by; empty where that is not sure."""
    known = {row: one.food for one in asked if (row := density_of(one.food)) is not None}
    unweighed = any(density_of(one.food) is None and one.amount.kind is Kind.VOLUME for one in asked)
    return next(iter(known.values())) if len(known) == 1 and not unweighed else ""


def _counts(asked: list[Asked]) -> list[Sum]:
    totals: dict[tuple[str, str], Sum] = {}
    for one in asked:
        key = (one.amount.unit, one.each)
        before = totals[key].total.number if key in totals else 0.0
        totals[key] = Sum(Amount(before + one.amount.number, one.amount.unit), one.food, one.each)
    return list(totals.values())


def _are_eggs(asked: list[Asked]) -> bool:
    """Whether all of it is food of which one piece has a known weight."""
    return all(
        piece_mass_of(one.food) is not None and (one.amount.kind is Kind.MASS or not one.amount.unit) for one in asked
    )


def _eggs(one: Asked) -> float:
    return one.amount.number if one.amount.kind is Kind.COUNT else convert(one.amount, "", one.food).number
