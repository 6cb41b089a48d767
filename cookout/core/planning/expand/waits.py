"""Safety and quality as waits: how long food may stand between steps and before it is served."""

from dataclasses import dataclass

from cookout.core.kitchen.recipe import After, FoodKind, Recipe, Step, StepKind
from cookout.core.planning.event import GearKind
from cookout.core.safety.limits import Wait, longest_wait

_ICED = frozenset({StepKind.ICE, StepKind.FINISH})


@dataclass(frozen=True, slots=True)
class Standing:
    """How long a finished dish stands before it is used: `least` to `most` minutes (None: any), and why."""

    least: int
    most: int | None
    why: str
    cut_short: bool = False


def keeps_minutes(recipe: Recipe) -> int | None:
    """Minutes that the dish keeps its quality the way it is held; None where the recipe gives none."""
    return {"hot": recipe.keeps.hot, "cold": recipe.keeps.cold}.get(recipe.held, recipe.keeps.air)


def standing(recipe: Recipe, air_c: float) -> Standing:
    """The wait between a dish's last step and its use, by the recipe and by safety; safety cuts a rest short."""
    limits = []
    keeps = keeps_minutes(recipe)
    if keeps is not None:
        limits.append(Wait(keeps, f"{recipe.name} keeps {keeps} min {_held_in_words(recipe.held)}"))
    safe = longest_wait(recipe.food.value, recipe.held, air_c)
    if safe is not None:
        limits.append(safe)
    rest = f"{recipe.name} rests {recipe.rests_minutes} min" if recipe.rests_minutes else ""
    if not limits:
        return Standing(recipe.rests_minutes, None, rest)
    most = min(limits, key=lambda limit: limit.minutes)
    why = "; ".join(part for part in (rest, most.reason) if part)
    return Standing(min(recipe.rests_minutes, most.minutes), most.minutes, why, recipe.rests_minutes > most.minutes)


def _held_in_words(held: str) -> str:
    return {"hot": "held hot", "cold": "held cold"}.get(held, "at air temperature")


def free_minutes(recipe: Recipe) -> int:
    """Minutes that the finished dish may stand at no cost to freshness."""
    return max(recipe.rests_minutes, recipe.best_within)


def limit_between(recipe: Recipe, earlier: Step, later: Step, after: After, air_c: float) -> Wait | None:
    """A most wait by safety between two steps of a food that needs temperature control, where the recipe gives none.

    It limits each wait by itself, not their sum, and speaks only where nothing says that the food is kept cold: no
    limit where either step uses a cooler, where the recipe itself asks for a longer wait, or before a plain cake
    bears its icing.
    """
    if after.most is not None or _is_cold(earlier) or _is_cold(later):
        return None
    if recipe.food is FoodKind.CREAM_ICING and earlier.kind not in _ICED:
        return None
    limit = longest_wait(recipe.food.value, "air", air_c)
    return None if limit is None or limit.minutes < after.least else limit


def _is_cold(step: Step) -> bool:
    return any(use.kind == GearKind.COOLER for use in step.gear)
