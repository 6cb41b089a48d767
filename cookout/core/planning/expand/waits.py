"""Safety and quality as waits: how long food may stand between steps and before it is served."""

from dataclasses import dataclass

from cookout.core.kitchen.recipe import After, FoodKind, Recipe, Step, StepKind
from cookout.core.planning.event import GearKind
from cookout.core.planning.foodrules import FoodRules
from cookout.core.safety.limits import Wait, longest_wait

_ICED = frozenset({StepKind.ICE, StepKind.FINISH})


@dataclass(frozen=True, slots=True)
class Standing:
    """How long a finished dish stands before it is used: `least` to `most` minutes (None: any), and why.

    A rest that is longer than is safe leaves no wait at all, and so no plan; `refusals` says why.
    """

    least: int
    most: int | None
    why: str


def keeps_minutes(recipe: Recipe) -> int | None:
    """Minutes that the dish keeps its quality the way it is held; None where the recipe gives none."""
    return {"hot": recipe.keeps.hot, "cold": recipe.keeps.cold}.get(recipe.held, recipe.keeps.air)


def standing(recipe: Recipe, air_c: float, rules: FoodRules) -> Standing:
    """The wait between a dish's last step and its use, by the recipe and by safety."""
    limits = []
    keeps = keeps_minutes(recipe)
    if keeps is not None:
        limits.append(Wait(keeps, f"{recipe.name} keeps {keeps} min {_held_in_words(recipe.held)}"))
    safe = safe_wait(recipe, recipe.held, recipe.last_steps(), air_c, rules, wanted=recipe.rests_minutes)
    if safe is not None:
        limits.append(safe)
    rest = f"{recipe.name} rests {recipe.rests_minutes} min" if recipe.rests_minutes else ""
    if not limits:
        return Standing(recipe.rests_minutes, None, rest)
    most = min(limits, key=lambda limit: limit.minutes)
    why = "; ".join(part for part in (rest, most.reason) if part)
    least = recipe.rests_minutes if keeps is None else min(recipe.rests_minutes, keeps)
    return Standing(least, most.minutes, why)


def _held_in_words(held: str) -> str:
    return {"hot": "held hot", "cold": "held cold"}.get(held, "at air temperature")


def free_minutes(recipe: Recipe) -> int:
    """Minutes that the finished dish may stand at no cost to freshness."""
    return max(recipe.rests_minutes, recipe.best_within)


def limit_between(
    recipe: Recipe, earlier: Step, later: Step, after: After, air_c: float, rules: FoodRules
) -> Wait | None:
    """A most wait by safety between two steps of a food that needs temperature control.

    It limits each wait by itself, less the time that the earlier step took out of heat and cold, and speaks only where
    nothing says that the food is kept cold: no limit where either step uses a cooler, or before a plain cake bears its
    icing, or where the recipe allows less.
    """
    if is_cold(earlier) or is_cold(later):
        return None
    if recipe.food is FoodKind.CREAM_ICING and earlier.kind not in _ICED:
        return None
    limit = safe_wait(recipe, "air", (earlier,), air_c, rules, wanted=after.least)
    return None if limit is None or (after.most is not None and after.most <= limit.minutes) else limit


def safe_wait(
    recipe: Recipe, held: str, before: tuple[Step, ...], air_c: float, rules: FoodRules, *, wanted: int
) -> Wait | None:
    """The longest that food may wait after the steps `before`, whose own minutes out of heat and cold count too.

    The least wait that the recipe has `wanted` is left room where the rules alone allow it. Under a code with written
    times, work counts in what the marks allow and not as a wait.
    """
    limit = longest_wait(recipe.food.value, held, air_c, code=rules.limits, marked=rules.marked)
    if limit is None or (rules.limits.time_control is not None and not rules.marked):
        return limit
    spent = max((step.minutes.usual for step in before if step.bake is None and not is_cold(step)), default=0)
    if not spent:
        return limit
    minutes = max(0, limit.minutes - spent, min(wanted, limit.minutes))
    return Wait(minutes, f"{limit.reason}, of which {limit.minutes - minutes} min are spent before")


def is_cold(step: Step) -> bool:
    """Whether the step's food is in a cooler."""
    return any(use.kind == GearKind.COOLER for use in step.gear)
