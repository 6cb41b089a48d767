"""The parts of a record that are not about time: fuel, food safety, allergens, the place, the elevation."""

from math import ceil

from cookout.core.air import boiling_c
from cookout.core.fire.coals import coal_params
from cookout.core.fire.supply import SUPPLY
from cookout.core.kitchen.altitude import advice, dish_of
from cookout.core.kitchen.recipe import BakeMethod, Recipe
from cookout.core.planning.event import Event
from cookout.core.planning.expanded import Expanded
from cookout.core.planning.record import (
    PlannedAdvice,
    PlannedAllergens,
    PlannedCheck,
    PlannedFuel,
    PlannedSafety,
    Warning,
)
from cookout.core.quantities import show_mass, show_temperature
from cookout.core.safety.cautions import done_at
from cookout.core.safety.finding import Severity
from cookout.core.safety.limits import needs_control
from cookout.core.safety.review import Review
from cookout.core.safety.rules import LimitSet
from cookout.core.safety.waits import most_minutes


def fuel_of(expanded: Expanded) -> PlannedFuel:
    """The fuel to bring for all bakes and top-ups, with some to spare."""
    event = expanded.event
    laid = sum(run.lid + run.under for run in expanded.bake_runs)
    added = sum(coals for run in expanded.bake_runs for _, coals in run.top_ups)
    spare = ceil((laid + added) * SUPPLY.spare_share)
    kilograms = round((laid + added + spare) * coal_params(event.fuel.kind).kg_each, 2)
    return PlannedFuel(
        kind=event.fuel.kind,
        coals=laid + added + spare,
        laid=laid,
        added=added,
        spare=spare,
        kilograms=kilograms,
        mass=show_mass(kilograms, event.units),
        chimney_loads=sum(firing.chimneys for firing in expanded.firings),
    )


def safety_of(expanded: Expanded, review: Review) -> tuple[PlannedSafety, ...]:
    """Each dish's figures of food safety, in the event's units."""
    event = expanded.event
    code, marked = event.food_rules.limits, event.food_rules.marked
    air_c = event.warmest_c(expanded.problem.opens, expanded.problem.closes)
    found = []
    for dish in event.dishes:
        recipe, report = event.recipe(dish.recipe), review.paths.get(dish.id)
        controlled = needs_control(recipe.food.value)
        most = most_minutes(code, air_c, marked=marked)[0] if controlled else None
        found.append(
            PlannedSafety(
                dish=dish.id,
                dish_name=recipe.name,
                centre=done_at(recipe.food.value, event.units, code) if _is_baked(recipe) else "",
                held=_held(recipe, code, event.units, on_ice=dish.id in expanded.on_ice),
                out_minutes=ceil(report.longest_out) if report is not None and controlled else None,
                most_out_minutes=None if most is None else int(most),
                rules=code.name,
            )
        )
    return tuple(found)


def _is_baked(recipe: Recipe) -> bool:
    return any(step.bake is not None for step in recipe.steps)


def _held(recipe: Recipe, code: LimitSet, units: str, *, on_ice: bool) -> str:
    if on_ice or recipe.held == "cold":
        return f"held cold, {show_temperature(code.cold_c, units)} or colder"
    if recipe.held == "hot":
        return f"held hot, {show_temperature(code.hot_c, units)} or hotter"
    return "stands at air temperature"


def allergens_of(event: Event, review: Review) -> tuple[PlannedAllergens, ...]:
    """Each dish's allergens; what is not known is said so."""
    return tuple(
        PlannedAllergens(
            dish=dish.id,
            dish_name=event.recipe(dish.recipe).name,
            contains=tuple(allergen.value for allergen in told.contains),
            may_be=tuple(allergen.value for allergen in told.may_be),
            not_known=tuple(allergen.value for allergen in told.not_known),
            unknown_ingredients=told.unknown,
            text=told.said,
            others=told.others,
        )
        for dish in event.dishes
        if (told := review.allergens.get(dish.id)) is not None
    )


def checklist_of(review: Review) -> tuple[PlannedCheck, ...]:
    """The checklist of the place, in the order of the day."""
    return tuple(
        PlannedCheck(item.id, item.stage.value, item.state.value, item.text, item.source) for item in review.checklist
    )


def advice_of(event: Event) -> tuple[PlannedAdvice, ...]:
    """What the elevation changes in each dish, where the organiser asks for it."""
    if not event.switches.altitude_advice:
        return ()
    elevation = event.place.elevation_m
    found = []
    for dish in event.dishes:
        recipe = event.recipe_of(dish)
        simmered = any(step.bake is not None and step.bake.method is BakeMethod.SIMMER for step in recipe.steps)
        facts = dish_of(recipe.food, recipe.ingredients, simmered=simmered)
        found += [
            PlannedAdvice(dish.id, recipe.name, each.text, each.source)
            for each in advice(facts, elevation, boiling_c(elevation))
        ]
    return tuple(found)


def warnings_of(review: Review) -> tuple[Warning, ...]:
    """What safety found that must be minded before the event, worst first; notes stand in the lists."""
    return tuple(
        Warning(finding.about, finding.said, finding.remedy)
        for finding in review.findings
        if finding.severity is not Severity.NOTE
    )
