"""A draft recipe completed: what was read and proposed, as the table of a recipe file, and what a person answers.

The table goes through the reader of recipe files, so that whatever is still missing or wrong is told as a fault with
its place and remedy, by the same rules as a file's.
"""

import re
import unicodedata
from dataclasses import dataclass

from cookout.core.eventfile.faults import FaultList
from cookout.core.eventfile.recipefile import ROOT, recipe_of
from cookout.core.eventfile.recipes import MOST_SERVED
from cookout.core.eventfile.writing_recipes import Table
from cookout.core.kitchen.drafts import DraftRecipe
from cookout.core.kitchen.foodkinds import USUAL, propose_food
from cookout.core.kitchen.proposals import ProposedStep, propose
from cookout.core.kitchen.recipe import BakeMethod, Recipe, StepKind
from cookout.core.quantities import write_temperature

LONGEST_ID = 40
OUR_FIGURE = "usual for this kind of food, our own figure"


@dataclass(frozen=True, slots=True)
class Proposal:
    """A recipe as far as it could be read: `table` is [recipe] of a recipe file.

    `why` says where each proposed value comes from, by its path in the table ("steps[2].minutes"); `left_out` are
    steps of the source that planning has no use for; `cut` what was too long to be read.
    """

    table: Table
    why: dict[str, str]
    left_out: tuple[str, ...] = ()
    cut: tuple[str, ...] = ()


def proposal_of(draft: DraftRecipe, units: str) -> Proposal:
    """What a draft tells and what is proposed for it; temperatures in `units`. Nothing unknown is filled in."""
    found = propose(draft)
    why: dict[str, str] = {}
    table: Table = {"id": id_from(draft.name)}
    if draft.name:
        table["name"] = draft.name
    if draft.serves is not None and draft.serves <= MOST_SERVED:
        table["serves"] = draft.serves
    if found.pans > 1:
        table |= {"pans": found.pans, "pan": found.pan}
        why["pans"] = "read in its steps"
    table |= _food(draft, found.steps, why)
    table["ingredients"] = [line.line for line in draft.ingredients]
    table["steps"] = [_step(step, number, units, why) for number, step in enumerate(found.steps, 1)]
    return Proposal(table, why, found.left_out, draft.cut)


def complete(table: Table, file: str = ROOT) -> Recipe:
    """The recipe in a completed table; `EventFileError` with a fault for each place that is missing or wrong."""
    faults = FaultList(file, {ROOT: table})
    recipe = recipe_of(table, faults)
    faults.raise_if_any()
    return recipe


def id_from(name: str, taken: tuple[str, ...] = ()) -> str:
    """An id made of a name: "Vesper's Apple Cake" is ``vespers-apple-cake``; a number behind it where it is taken."""
    plain = unicodedata.normalize("NFKD", name.replace("'", "").replace("’", ""))
    plain = "".join(sign for sign in plain if not unicodedata.combining(sign)).lower()
    base = re.sub(r"[^a-z0-9]+", "-", plain).strip("-")[:LONGEST_ID].strip("-") or "recipe"
    number, chosen = 2, base
    while chosen in taken:
        chosen, number = f"{base}-{number}", number + 1
    return chosen


def _food(draft: DraftRecipe, steps: tuple[ProposedStep, ...], why: dict[str, str]) -> Table:
    kinds = frozenset(step.kind for step in steps if step.kind is not None)
    simmers = any(step.method is BakeMethod.SIMMER for step in steps)
    proposed = propose_food(tuple(line.line for line in draft.ingredients), kinds, simmers=simmers)
    if proposed is None:
        return {}
    usual = USUAL[proposed.food]
    keeps = {"hot": usual.keeps.hot, "cold": usual.keeps.cold, "air": usual.keeps.air}
    why |= {"food": proposed.why, "held": OUR_FIGURE, "keeps": OUR_FIGURE}
    table: Table = {
        "food": proposed.food.value,
        "held": usual.held,
        "keeps": {way: minutes for way, minutes in keeps.items() if minutes is not None},
    }
    if usual.rests_minutes:
        table["rests_minutes"] = usual.rests_minutes
        why["rests_minutes"] = OUR_FIGURE
    return table


def _step(step: ProposedStep, number: int, units: str, why: dict[str, str]) -> Table:
    path = f"steps[{number}]"
    why |= {f"{path}.{_PLACES.get(key, key)}": reason for key, reason in step.why.items()}
    values: Table = {
        "id": f"step-{number}",
        "name": step.name,
        "note": step.note,
        "kind": None if step.kind is None else step.kind.value,
        "scope": step.scope or None,
        "minutes": None if step.minutes is None else list(step.minutes),
        "bake": _bake(step, units) if step.kind is StepKind.BAKE else None,
        "after": [{"step": f"step-{number - 1}", "most": step.most_wait}] if step.most_wait and number > 1 else None,
    }
    return {key: value for key, value in values.items() if value is not None}


_PLACES = {
    "method": "bake.method",
    "temperature": "bake.temperature",
    "oven": "bake.oven",
    "look_in_from": "bake.look_in_from",
    "most_wait": "after",
}


def _bake(step: ProposedStep, units: str) -> Table:
    values: Table = {
        "oven": None if step.oven_inches is None else f"{step.oven_inches} in",
        "method": None if step.method is None else step.method.value,
        "temperature": None if step.temperature_c is None else write_temperature(step.temperature_c, units),
        "look_in_from": step.look_in_from,
    }
    return {key: value for key, value in values.items() if value is not None}
