"""Swaps that a recipe declares: this instead of that, at this ratio, chosen for an event.

A swap changes what is in the dish. What it does to allergens is told by safety, which reads the ingredients that come
out of here.
"""

from dataclasses import dataclass, replace

from cookout.core.errors import QuantityError
from cookout.core.kitchen.recipe import Ingredient
from cookout.core.kitchen.replacement import Swap
from cookout.core.kitchen.words import plain_name


@dataclass(frozen=True, slots=True)
class Swapped:
    """The ingredients after swaps were made, which were made, and in words what changed."""

    ingredients: tuple[Ingredient, ...]
    made: tuple[Swap, ...]
    changes: tuple[str, ...]


def offered(declared: tuple[Swap, ...], ingredients: tuple[Ingredient, ...]) -> tuple[Swap, ...]:
    """The declared swaps whose ingredient is in the recipe."""
    names = {plain_name(ingredient.name) for ingredient in ingredients}
    return tuple(swap for swap in declared if plain_name(swap.instead_of) in names)


def swap(ingredients: tuple[Ingredient, ...], chosen: tuple[Swap, ...]) -> Swapped:
    """The ingredients with every chosen swap made once, none upon another; `QuantityError` where one cannot be made.

    Butter for oil at 3/4 makes of 1 cup of butter 0.75 cup of oil. Two swaps of one ingredient contradict each other.
    """
    by_name = {plain_name(one.instead_of): one for one in chosen}
    if len(by_name) < len(chosen):
        raise QuantityError("Two swaps replace the same ingredient; choose one of them.")
    missing = by_name.keys() - {plain_name(ingredient.name) for ingredient in ingredients}
    if missing:
        raise QuantityError(f"No such ingredient to replace: {', '.join(sorted(missing))}.")
    pairs = [(have, by_name.get(plain_name(have.name))) for have in ingredients]
    return Swapped(
        tuple(_made(have, one) if one else have for have, one in pairs),
        tuple(one for _, one in pairs if one),
        tuple(_told(have, _made(have, one)) for have, one in pairs if one),
    )


def _made(have: Ingredient, one: Swap) -> Ingredient:
    note = one.note or f"instead of {have.name}"
    amount = None if have.amount is None else have.amount * one.ratio
    return replace(have, name=one.use, amount=amount, unit=have.unit if one.unit is None else one.unit, note=note)


def _told(have: Ingredient, now: Ingredient) -> str:
    return f"{_words(now)} instead of {_words(have)}"


def _words(ingredient: Ingredient) -> str:
    amount = "" if ingredient.amount is None else f"{ingredient.amount:.3g}"
    return " ".join(part for part in (amount, ingredient.unit, ingredient.name) if part)
