"""Recipes written as the tables of an event file."""

from cookout.core.eventfile.steps import UNATTENDED, usual_kind
from cookout.core.kitchen.recipe import (
    After,
    Bake,
    BakeMethod,
    Cool,
    CoolPlace,
    GearUse,
    Ingredient,
    Load,
    Minutes,
    Recipe,
    Scope,
    Step,
)
from cookout.core.kitchen.replacement import Swap
from cookout.core.quantities import write_length, write_temperature

Table = dict[str, object]


def without_defaults(values: Table, defaults: Table) -> Table:
    """The values that a reader would not put there by itself; None is never written."""
    return {key: value for key, value in values.items() if value is not None and defaults.get(key) != value}


def recipe_table(recipe: Recipe, units: str) -> Table:
    """The table [recipes.ID] of a recipe; temperatures in `units`."""
    keeps: Table = {"hot": recipe.keeps.hot, "cold": recipe.keeps.cold, "air": recipe.keeps.air}
    values: Table = {
        "name": recipe.name,
        "serves": recipe.serves,
        "pans": recipe.pans,
        "pan": recipe.pan,
        "food": recipe.food.value,
        "keeps": without_defaults(keeps, {}),
        "held": recipe.held,
        "rests_minutes": recipe.rests_minutes,
        "best_within": recipe.best_within,
        "serve_minutes": recipe.serve_minutes,
        "serve_hands": recipe.serve_hands,
        "allergens": list(recipe.allergens),
        "icing": None if recipe.icing is None else recipe.icing.value,
        "ingredients": [_ingredient_table(ingredient) for ingredient in recipe.ingredients],
        "swaps": [_swap_table(swap) for swap in recipe.swaps],
        "steps": _step_tables(recipe.steps, units),
    }
    return without_defaults(values, _RECIPE_DEFAULTS)


_RECIPE_DEFAULTS: Table = {
    "pans": 1,
    "pan": "",
    "held": "air",
    "rests_minutes": 0,
    "best_within": 0,
    "serve_minutes": 5,
    "serve_hands": 1,
    "allergens": [],
    "ingredients": [],
    "swaps": [],
}


def _ingredient_table(ingredient: Ingredient) -> Table:
    values: Table = {
        "name": ingredient.name,
        "amount": ingredient.amount,
        "unit": ingredient.unit,
        "note": ingredient.note,
    }
    return without_defaults(values, {"unit": "", "note": ""})


def _swap_table(swap: Swap) -> Table:
    values: Table = {
        "id": swap.id,
        "instead_of": swap.instead_of,
        "use": swap.use,
        "ratio": swap.ratio,
        "unit": swap.unit,
        "note": swap.note,
    }
    return without_defaults(values, {"ratio": 1.0, "note": ""})


def _step_tables(steps: tuple[Step, ...], units: str) -> list[Table]:
    previous: tuple[After, ...] = ()
    tables: list[Table] = []
    for step in steps:
        tables.append(_step_table(step, previous, units))
        previous = (After(step.id),)
    return tables


def _step_table(step: Step, usual_after: tuple[After, ...], units: str) -> Table:
    values: Table = {
        "id": step.id,
        "name": step.name,
        "kind": step.kind.value,
        "scope": step.scope.value,
        "minutes": _minutes_value(step.minutes),
        "hands": step.hands,
        "skills": sorted(step.skills),
        "hot": step.hot,
        "gear": [_gear_use_table(use) for use in step.gear],
        "after": [_after_value(after) for after in step.after],
        "bake": _bake_table(step.bake, units) if step.bake else None,
        "note": step.note,
        "cool": _cool_table(step.cool, units) if step.cool else None,
    }
    defaults: Table = {
        "kind": usual_kind(bakes=step.bake is not None, cools=step.cool is not None).value,
        "scope": Scope.BATCH.value,
        "hands": 0 if step.kind in UNATTENDED else 1,
        "skills": [],
        "hot": False,
        "gear": [],
        "after": [_after_value(after) for after in usual_after],
        "note": "",
    }
    return without_defaults(values, defaults)


def _minutes_value(minutes: Minutes) -> int | list[int]:
    if minutes.least == minutes.usual == minutes.most:
        return minutes.usual
    return [minutes.least, minutes.usual, minutes.most]


def _gear_use_table(use: GearUse) -> Table:
    return without_defaults({"kind": use.kind, "count": use.count}, {"count": 1})


def _after_value(after: After) -> str | Table:
    if after.least == 0 and after.most is None:
        return after.step
    return without_defaults({"step": after.step, "least": after.least, "most": after.most}, {"least": 0})


def _bake_table(bake: Bake, units: str) -> Table:
    values: Table = {
        "oven": f"{bake.oven_inches} in",
        "method": bake.method.value,
        "temperature": write_temperature(bake.temperature_c, units),
        "look_in_from": bake.look_in_from,
        "preheat_minutes": bake.preheat_minutes,
        "trivet": bake.trivet,
        "stand": bake.stand,
        **_load_entries(bake.load, units),
    }
    return without_defaults(
        values, {"method": BakeMethod.BAKE.value, "preheat_minutes": 0, "trivet": False, "stand": False}
    )


def _load_entries(load: Load | None, units: str) -> Table:
    if load is None:
        return {}
    return {
        "pan": write_length(load.pan_m, units),
        "depth": write_length(load.depth_m, units),
        "load": load.food.value,
        "start": None if load.start_c is None else write_temperature(load.start_c, units),
        "done": None if load.done_c is None else write_temperature(load.done_c, units),
    }


def _cool_table(cool: Cool, units: str) -> Table:
    values: Table = {"to": write_temperature(cool.to_c, units), "where": cool.where.value}
    values["depth"] = None if cool.depth_m is None else write_length(cool.depth_m, units)
    return without_defaults(values, {"where": CoolPlace.RACK.value})
