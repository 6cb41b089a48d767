"""Waits that a recipe itself plans and no code allows: refused before anything is solved, with the section."""

from collections.abc import Iterator

from cookout.core.kitchen.recipe import Recipe, Step, StepKind
from cookout.core.planning.event import Dish, Event
from cookout.core.planning.foodpaths import chain, in_cooler
from cookout.core.safety.finding import Finding, Severity
from cookout.core.safety.limits import needs_control
from cookout.core.safety.waits import judge_wait

_BEFORE_MINUTES = 360


def refusals(event: Event) -> tuple[Finding, ...]:
    """Every dish whose food is to stand out longer than its code allows, however well it is planned."""
    return tuple(finding for dish in event.dishes for finding in _of_dish(event, dish))


def sentences(findings: tuple[Finding, ...]) -> tuple[str, ...]:
    """What was refused as obstacles say it: what, by which section, and what would do instead."""
    return tuple(f"{finding.said} {finding.remedy}" for finding in findings)


def _of_dish(event: Event, dish: Dish) -> Iterator[Finding]:
    recipe = event.recipe(dish.recipe)
    if not needs_control(recipe.food.value):
        return
    steps = chain(recipe)
    for minutes in out_minutes(recipe, steps):
        found = judge_wait(
            recipe.food.value,
            "air",
            _air_c(event, dish),
            minutes,
            code=event.food_rules.limits,
            marked=event.food_rules.marked,
            name=recipe.name,
            about=dish.id,
            units=event.units,
        )
        if found is not None and found.severity is Severity.REFUSED:
            yield found
            return


def _air_c(event: Event, dish: Dish) -> float:
    """The warmest air in which the dish may wait."""
    if dish.serving is None:
        return event.weather.air_c
    serving = event.serving(dish.serving)
    return event.warmest_c(serving.at - _BEFORE_MINUTES, serving.at + serving.late)


def out_minutes(recipe: Recipe, steps: tuple[Step, ...]) -> Iterator[int]:
    """The least minutes that the food waits out of heat and cold, for each stretch between heat or cold.

    Work on it counts as no wait, and a cake counts from when it bears its icing.
    """
    stretch = 0
    plain = recipe.food.value == "cream_icing" and any(step.kind is StepKind.ICE for step in steps)
    before: Step | None = None
    for step in steps:
        if before is not None and not plain and not in_cooler(before) and not in_cooler(step):
            stretch += max((after.least for after in step.after if after.step == before.id), default=0)
        if step.bake is not None or in_cooler(step):
            yield stretch
            stretch = 0
        elif not plain and step.kind in (StepKind.REST, StepKind.COOL) and step.hands == 0:
            stretch += step.minutes.least
        plain = plain and step.kind is not StepKind.ICE
        before = step
    yield stretch + (recipe.rests_minutes if recipe.held == "air" else 0)
