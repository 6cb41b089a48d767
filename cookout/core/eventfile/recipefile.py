"""One recipe as a file of its own: TOML with one table, [recipe].

It has the keys of [recipes.ID] in an event file (`schema` documents them) and besides them `id`, which must be there.
Faults name a key by its path, as ``loaf.toml: recipe.steps[2].minutes``.
"""

from cookout.core.eventfile.faults import FaultList, did_you_mean
from cookout.core.eventfile.fields import Fields, is_id
from cookout.core.eventfile.reading import parse
from cookout.core.eventfile.recipes import read_recipe as read_recipe_table
from cookout.core.eventfile.references import check_recipe
from cookout.core.eventfile.writing import as_toml
from cookout.core.eventfile.writing_recipes import recipe_table
from cookout.core.kitchen.recipe import Recipe

ROOT = "recipe"
_WHERE = (ROOT,)


def read_recipe(text: str, file: str) -> Recipe:
    """The recipe that a recipe file's text holds.

    `file` names the file in what is told of its faults. Raises `EventFileError` with all of them at once.
    """
    data = parse(text, file)
    faults = FaultList(file, data)
    for key in data:
        if key != ROOT:
            faults.add((key,), "There is no such table in a recipe file.", did_you_mean(key, _WHERE))
    if ROOT not in data:
        faults.add(_WHERE, "The table is missing.", "Write the recipe as the table [recipe].")
        faults.raise_if_any()
    recipe = recipe_of(data[ROOT], faults)
    faults.raise_if_any()
    return recipe


def recipe_of(value: object, faults: FaultList) -> Recipe:
    """The recipe in the value of [recipe]; what is wrong is noted in `faults`, and only without any does it count."""
    table = dict(value) if isinstance(value, dict) else value
    recipe_id = _id(table, faults)
    recipe = read_recipe_table(recipe_id, Fields("recipes.ID", table, _WHERE, faults))
    check_recipe(recipe, _WHERE, (), faults)
    return recipe


def write_recipe_file(recipe: Recipe, units: str) -> str:
    """The text of a recipe file, temperatures and lengths in `units`; `read_recipe` makes an equal recipe of it."""
    return as_toml({ROOT: {"id": recipe.id, **recipe_table(recipe, units)}})


def _id(table: object, faults: FaultList) -> str:
    """The id, taken out of the table; empty where it is faulty."""
    if not isinstance(table, dict):
        return ""
    found = table.pop("id", None)
    if isinstance(found, str) and found:
        return found if is_id(found, _WHERE, "id", faults) else ""
    what = "It is missing." if found is None else "It is no text, or an empty one."
    faults.add((*_WHERE, "id"), what, 'Write id = "a-short-id".')
    return ""
