"""A whole recipe as one page of fields: its head, a row for each step, a row for each swap.

Rows come, go and move by buttons that send the whole page and save nothing, so that it works without a script. What was
typed becomes the table of a recipe file, whose reader tells what is missing or wrong; each fault stands by its field.
"""

import re
from collections.abc import Mapping
from typing import Any

from django.utils.html import escape
from django.utils.translation import gettext as _

from cookout.core.errors import EventFileError, Fault
from cookout.core.eventfile.completing import complete
from cookout.core.eventfile.writing_recipes import Table, recipe_table
from cookout.core.kitchen.ingredients import Parsed, Question, parse_line
from cookout.core.kitchen.interchange import ingredient_line
from cookout.core.kitchen.recipe import Ingredient, Recipe
from cookout.web.forms.recipe_steps import BEFORE, StepForm, step_values
from cookout.web.forms.recipes import HeadForm, SwapForm, head_values

MOST_STEPS = 60
MOST_SWAPS = 20

_STEP = re.compile(r"steps\[(\d+)\](?:\.(.+))?")
_SWAP = re.compile(r"swaps\[(\d+)\](?:\.(\w+))?")
_LINE = re.compile(r"ingredients\[(\d+)\]")
_STEP_FIELDS = {
    "minutes": "usual", "bake": "oven", "bake.oven": "oven", "bake.temperature": "temperature",
    "bake.method": "method", "bake.look_in_from": "look_in_from", "bake.preheat_minutes": "preheat_minutes",
    "bake.load": "load", "bake.pan": "pan", "bake.depth": "depth", "bake.start": "start", "bake.done": "done",
    "cool.to": "cool_to", "cool.where": "cool_where", "cool.depth": "cool_depth", "after": "after_0",
}  # fmt: skip
_AFTER = re.compile(r"after\[(\d+)\](?:\.(least|most))?")


class RecipeEditor:
    """The forms of one recipe; `asked` is what planning still needs, as (id of the field, its label, the question)."""

    def __init__(self, head: HeadForm, steps: list[StepForm], swaps: list[SwapForm]) -> None:
        self.head, self.steps, self.swaps = head, steps, swaps
        self.asked: list[tuple[str, str, str]] = []

    @classmethod
    def of_table(cls, table: Table, why: Mapping[str, str] | None = None) -> "RecipeEditor":
        """A recipe that is stored or proposed, to be changed; `why` says where proposed values come from."""
        tables = [each for each in _listed(table.get("steps")) if isinstance(each, dict)]
        names = [(str(each.get("id", "")), str(each.get("name", ""))) for each in tables]
        rows = [step_values(each, names[place - 1][0] if place else None) for place, each in enumerate(tables)]
        swaps = [dict(each) for each in _listed(table.get("swaps")) if isinstance(each, dict)]
        editor = cls._of_rows(head_values(table, ingredients_text(table)), rows, swaps)
        lines = len(_listed(table.get("ingredients")))
        editor.head.fields["ingredients"].widget.attrs["rows"] = min(max(8, lines + 1), 40)
        editor.explain(why or {})
        return editor

    @classmethod
    def blank(cls) -> "RecipeEditor":
        """A recipe with nothing in it but a first step."""
        return cls._of_rows(head_values({}, ""), [_new_row([])], [])

    @classmethod
    def of_post(cls, post: Any) -> "RecipeEditor":
        """What was typed, to be judged."""
        steps, swaps = _count(post, "steps", MOST_STEPS), _count(post, "swaps", MOST_SWAPS)
        names = [(post.get(f"step-{place}-id", ""), post.get(f"step-{place}-name", "")) for place in range(steps)]
        return cls(
            HeadForm(post),
            [StepForm(place, post, before=_others(names, place)) for place in range(steps)],
            [SwapForm(place, post) for place in range(swaps)],
        )

    @classmethod
    def _of_rows(cls, head: dict[str, Any], rows: list[dict[str, Any]], swaps: list[dict[str, Any]]) -> "RecipeEditor":
        names = [(str(row.get("id", "")), str(row.get("name") or "")) for row in rows]
        steps = [StepForm(place, initial=row, before=_others(names, place)) for place, row in enumerate(rows)]
        return cls(HeadForm(initial=head), steps, [SwapForm(n, initial=row) for n, row in enumerate(swaps)])

    @property
    def wrong(self) -> list[tuple[str, str]]:
        """The fields by which something stands as missing or wrong, as (id of the field, its label)."""
        found = []
        for form in (self.head, *self.steps, *self.swaps):
            where = f"{_('Step')} {form.place + 1}: " if isinstance(form, StepForm) else ""
            names = [name for name in form.errors if name in form.fields] if form.is_bound else []
            found += [(form[name].id_for_label, f"{where}{form.fields[name].label}") for name in names]
        return found

    @property
    def head_is_long(self) -> bool:
        """Whether anything is typed in what is folded away at first, beyond what is usual."""
        usual = {"pans": 1, "serve_minutes": 5, "serve_hands": 1}
        folded = ("pans", "pan", "rests_minutes", "best_within", "serve_minutes", "serve_hands", "icing", "allergens")
        return any(str(self.head[key].value() or "") not in ("", str(usual.get(key, ""))) for key in folded)

    @property
    def can_add_step(self) -> bool:
        """Whether there is room for another step."""
        return len(self.steps) < MOST_STEPS

    def pressed(self, do: str) -> "RecipeEditor":
        """The page after one of its row buttons, nothing judged: ``add``, ``up:2``, ``down:2``, ``out:2``, ``swap``."""
        action, _sep, number = do.partition(":")
        place = int(number) if number.isdecimal() and len(number) < 4 else -1
        head, rows, swaps = _typed(self.head), [_typed(step) for step in self.steps], [_typed(s) for s in self.swaps]
        if action == "add" and self.can_add_step:
            rows.insert(place + 1 if number else len(rows), _new_row(rows))
        elif action == "out" and 0 <= place < len(rows):
            _forget(rows, str(rows.pop(place).get("id", "")))
        elif action in ("up", "down"):
            _move(rows, place, -1 if action == "up" else 1)
        elif action == "swap" and len(swaps) < MOST_SWAPS:
            swaps.append({})
        elif action == "swap-out" and 0 <= place < len(swaps):
            swaps.pop(place)
        return RecipeEditor._of_rows(head, rows, swaps)

    def recipe(self, recipe_id: str, kept: tuple[Ingredient, ...] = ()) -> Recipe | None:
        """The recipe that was typed; None where something is missing or wrong, which then stands by its field.

        Lines that show one of the `kept` ingredients unchanged are that ingredient, to the last digit.
        """
        sound = all(
            [self.head.is_valid(), *(step.is_valid() for step in self.steps), *(s.is_valid() for s in self.swaps)]
        )
        try:
            recipe = complete(self.table(recipe_id, kept))
        except EventFileError as error:
            self._tell(error)
            return None
        return recipe if sound else None

    def table(self, recipe_id: str, kept: tuple[Ingredient, ...] = ()) -> Table:
        """What was typed, as the table of a recipe file; only after the forms were judged."""
        known = {ingredient_line(each): _ingredient(each) for each in kept}
        table: Table = {"id": recipe_id, **self.head.table(known)}
        previous, steps = "", []
        for step in self.steps:
            steps.append(step.table(previous))
            previous = str(steps[-1]["id"])
        table["steps"] = steps
        swaps = [found for each in self.swaps if (found := each.table()) is not None]
        return table | ({"swaps": swaps} if swaps else {})

    def ask(self, recipe_id: str) -> None:
        """Mark the fields that planning still needs, as questions; for a page that nobody has answered yet."""
        try:
            complete(_proposed_table(self, recipe_id))
        except EventFileError as error:
            for fault in error.faults:
                self._ask(fault)

    def _tell(self, error: EventFileError) -> None:
        for fault in error.faults:
            form, field = self._place(fault)
            words = _words(fault, field)
            if field and field in form.fields and field in form.errors:
                continue
            form.add_error(field if field in form.fields else None, words)

    def _ask(self, fault: Fault) -> None:
        form, field = self._place(fault)
        words = _words(fault, field)
        label = f"{_('Step')} {form.place + 1}: " if isinstance(form, StepForm) else ""
        if field in form.fields:
            form.fields[field].help_text = escape(words)
            form.fields[field].widget.attrs["class"] = "asked"
            self.asked.append((form[field].id_for_label, f"{label}{form.fields[field].label}", words))
        else:
            self.asked.append(("steps", f"{label}{_('Steps')}", words))

    def explain(self, why: Mapping[str, str]) -> None:
        """Put the reasons of proposed values under their fields."""
        for place, reason in why.items():
            form, field = self._place(Fault(f"recipe: recipe.{place}", "", ""))
            if field in form.fields:
                form.fields[field].help_text = escape(_("Proposed: %(why)s.") % {"why": reason})

    def _place(self, fault: Fault) -> tuple[Any, str]:
        """The form and field that a fault is about."""
        place = fault.where.partition(": ")[2].removeprefix("recipe").removeprefix(".")
        if found := _STEP.match(place):
            number = int(found[1]) - 1
            return (self.steps[number], _step_field(found[2] or "")) if number < len(self.steps) else (self.head, "")
        if found := _SWAP.match(place):
            filled = [swap for swap in self.swaps if not swap.is_bound or swap.table() is not None]
            number = int(found[1]) - 1
            return (filled[number], found[2] or "use") if number < len(filled) else (self.head, "")
        if _LINE.match(place):
            return self.head, "ingredients"
        return self.head, "keeps_hot" if place.startswith("keeps") else place


def ingredients_text(table: Table) -> str:
    """The ingredients of a table, one a line."""
    entries = _listed(table.get("ingredients"))
    return "\n".join(ingredient_line(Ingredient(**each)) if isinstance(each, dict) else str(each) for each in entries)


def editor_of(recipe: Recipe, units: str) -> RecipeEditor:
    """A stored recipe, to be changed; its quantities in `units`."""
    return RecipeEditor.of_table({"id": recipe.id, **recipe_table(recipe, units)})


def understood(text: str) -> list[Parsed | Question]:
    """What every line of a list of ingredients is understood as."""
    return [parse_line(line) for line in text.splitlines() if line.strip()][:200]


def _listed(value: object) -> list[object]:
    return value if isinstance(value, list) else []


def _ingredient(each: Ingredient) -> Table:
    values: Table = {"name": each.name, "amount": each.amount, "unit": each.unit, "note": each.note}
    return {key: value for key, value in values.items() if value not in (None, "")}


def _count(post: Any, what: str, most: int) -> int:
    typed = str(post.get(f"{what}-count", "0"))
    return min(int(typed), most) if typed.isdecimal() and len(typed) < 4 else 0


def _others(names: list[tuple[str, str]], place: int) -> list[tuple[str, str]]:
    """The other steps, as another one may wait for them."""
    return [
        (name, f"{number + 1} {words}"[:60]) for number, (name, words) in enumerate(names) if number != place and name
    ]


def _typed(form: Any) -> dict[str, Any]:
    """What stands in a form's fields."""
    return {name: form[name].value() for name in form.fields}


def _new_row(rows: list[dict[str, Any]]) -> dict[str, Any]:
    taken = {row.get("id") for row in rows}
    number = len(rows) + 1
    while f"step-{number}" in taken:
        number += 1
    return {
        "id": f"step-{number}",
        "kind": "prepare",
        "hands": 1,
        "after_0": BEFORE,
        "scope": "batch",
        "method": "bake",
    }


def _forget(rows: list[dict[str, Any]], gone: str) -> None:
    """Steps that waited for one that is gone wait for the step before."""
    for row in rows:
        for key in [key for key, value in row.items() if key.startswith("after_") and value == gone and gone]:
            row[key] = BEFORE if key == "after_0" else ""


def _move(rows: list[dict[str, Any]], place: int, by: int) -> None:
    if 0 <= place < len(rows) and 0 <= place + by < len(rows):
        rows[place], rows[place + by] = rows[place + by], rows[place]


def _step_field(key: str) -> str:
    if found := _AFTER.match(key):
        part = f"after_{found[2]}" if found[2] else "after"
        return f"{part}_{int(found[1]) - 1}"
    return _STEP_FIELDS.get(key, key)


def _proposed_table(editor: RecipeEditor, recipe_id: str) -> Table:
    """What the fields of a page that nobody has answered yet would send."""
    post = {"steps-count": str(len(editor.steps)), "swaps-count": str(len(editor.swaps))}
    for form in (editor.head, *editor.steps, *editor.swaps):
        for name in form.fields:
            value = form[name].value()
            if value not in (None, False):
                post[form.add_prefix(name)] = "on" if value is True else str(value)
    sent = RecipeEditor.of_post(post)
    for form in (sent.head, *sent.steps, *sent.swaps):
        form.is_valid()
    return sent.table(recipe_id)


def _words(fault: Fault, field: str) -> str:
    """What is wrong, as a person asks for it."""
    missing = fault.what.startswith(("It is missing", "The table is missing", "It is empty"))
    asks = {
        "name": _("What is it called?"),
        "serves": _("How many does one batch serve?"),
        "food": _("Which kind of food is it?"),
        "keeps_hot": _("How long does it keep, one way at least? Give the minutes."),
        "usual": _("How many minutes does it take?"),
        "oven": _("Which oven does it want?"),
        "temperature": _("How hot is the oven? Write it with its scale, as 350 F or 180 C."),
        "look_in_from": _("After how many minutes may the first look-in come?"),
        "pan": _("How wide is the pan? Pan, depth and what bakes go together."),
        "depth": _("How deep is the food in it? Pan, depth and what bakes go together."),
        "load": _("What bakes? Pan, depth and what bakes go together."),
        "cool_to": _("To what temperature does it cool?"),
    }
    if missing and field in asks:
        return asks[field]
    if fault.what.startswith("It does not keep this way"):
        return _("It does not keep this way. Say how long it does, or choose another way to wait.")
    return f"{fault.what} {fault.remedy}"
