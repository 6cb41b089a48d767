"""Dishes of the same recipe told apart: numbered as on the menu, wherever a plan is read."""

from collections.abc import Mapping
from dataclasses import replace
from typing import TypeVar

from cookout.core.planning.record import (
    PlannedAdvice,
    PlannedAllergens,
    PlannedBake,
    PlannedSafety,
    PlannedServing,
    PlanRecord,
)

Part = TypeVar("Part", PlannedServing, PlannedBake, PlannedSafety, PlannedAllergens, PlannedAdvice)


def numbered(record: PlanRecord) -> PlanRecord:
    """The plan with a number behind the name of each dish that shares it; the plan itself where none does."""
    names = _names(record.dishes)
    if names == record.dishes:
        return record
    return replace(
        record,
        dishes=names,
        servings=_named(record.servings, names),
        bakes=_named(record.bakes, names),
        safety=_named(record.safety, names),
        allergens=_named(record.allergens, names),
        advice=_named(record.advice, names),
    )


def _names(dishes: Mapping[str, str]) -> dict[str, str]:
    alike: dict[str, list[str]] = {}
    for dish, name in dishes.items():
        alike.setdefault(name, []).append(dish)
    return {
        dish: name if len(alike[name]) == 1 else f"{name} ({alike[name].index(dish) + 1})"
        for dish, name in dishes.items()
    }


def _named(parts: tuple[Part, ...], names: Mapping[str, str]) -> tuple[Part, ...]:
    return tuple(replace(part, dish_name=names.get(part.dish, part.dish_name)) for part in parts)
