"""Recipes as their pages show them."""

from collections.abc import Iterable
from dataclasses import dataclass
from difflib import SequenceMatcher

from django.utils.translation import gettext as _
from django.utils.translation import ngettext

from cookout.core.eventfile.recipes import Held
from cookout.core.kitchen.course import Course, course_of
from cookout.core.kitchen.ingredients import Parsed, Question
from cookout.core.kitchen.interchange import ingredient_line
from cookout.core.kitchen.recipe import After, Recipe, Step
from cookout.core.kitchen.rounding import write_amount
from cookout.core.kitchen.scaling import Batches, batches_for, factor_for_people, scale
from cookout.core.quantities import Units, show_inches, show_temperature
from cookout.core.safety.allergens import DishAllergens, dish_allergens, tell
from cookout.services.recipe_pictures import Coals, StripRow, coals_of, strip_of
from cookout.services.starters import ORIGIN
from cookout.store.selectors.recipes import Recipe as Row
from cookout.store.selectors.recipes import recipe_of
from cookout.web import preferences
from cookout.web.forms.recipe_words import FOODS, GEAR, HELDS, KINDS, METHODS, SCOPES
from cookout.web.templatetags.plainly import span

MOST_PEOPLE = 1000


@dataclass(frozen=True, slots=True)
class BoxRow:
    """A recipe in the list; `minutes` from its first step to the end of its last, `ovens` as their sizes in words."""

    row: Row
    food: str
    minutes: int
    ovens: str


@dataclass(frozen=True, slots=True)
class IngredientRow:
    """An ingredient for so many people; `said` tells of what rounding changed."""

    amount: str
    name: str
    note: str
    said: str


@dataclass(frozen=True, slots=True)
class StepRow:
    """A step with its place on the strip, its waits and its heat in words."""

    strip: StripRow
    kind: str
    minutes: str
    who: str
    waits: str
    heat: str

    @property
    def step(self) -> Step:
        """The step itself."""
        return self.strip.step


@dataclass(frozen=True, slots=True)
class RecipePage:
    """All that the page of a recipe shows."""

    recipe: Recipe
    people: int
    batches: Batches
    food: str
    keeps: str
    ingredients: list[IngredientRow]
    course: Course
    steps: list[StepRow]
    coals: list[Coals]
    allergens: DishAllergens


@dataclass(frozen=True, slots=True)
class LineRead:
    """What one line of a list of ingredients is understood as; `ask` is what to write instead where it is not."""

    line: str
    amount: str
    name: str
    note: str
    ask: str
    allergens: str
    known: bool


@dataclass(frozen=True, slots=True)
class DiffLine:
    """A line of two versions: `sign` is "+", "−" or empty where both have it."""

    sign: str
    text: str


def readers_units() -> str:
    """The units in which the reader reads and writes recipes."""
    return preferences.current().units or Units.US.value


def box_rows(rows: Iterable[Row]) -> list[BoxRow]:
    """The recipes of a box."""
    units = readers_units()
    found = []
    for row in rows:
        assert row.current is not None
        recipe = recipe_of(row.current)
        found.append(BoxRow(row, str(FOODS[recipe.food]), course_of(recipe).minutes, ovens_of(recipe, units)))
    return found


def origin_words(row: Row) -> str:
    """Where a recipe of the box came from."""
    return _("from the starter box") if row.origin.startswith(ORIGIN) else row.origin


def ovens_of(recipe: Recipe, units: str) -> str:
    """The sizes of the ovens that a recipe wants, in words."""
    sizes = sorted({step.bake.oven_inches for step in recipe.steps if step.bake is not None})
    return ", ".join(show_inches(size, units) for size in sizes)


def people_asked(text: str, usual: int) -> int:
    """How many the page is to reckon for; the usual number where the text is none."""
    return min(max(int(text), 1), MOST_PEOPLE) if text.isdecimal() and len(text) < 6 else usual


def recipe_page(recipe: Recipe, people: int) -> RecipePage:
    """The page of a recipe for so many people, in the reader's units."""
    units = readers_units()
    course, rows = strip_of(recipe=recipe)
    return RecipePage(
        recipe=recipe,
        people=people,
        batches=batches_for(recipe, people),
        food=str(FOODS[recipe.food]),
        keeps=keeps_words(recipe),
        ingredients=_ingredients(recipe, people, units),
        course=course,
        steps=[_step_row(recipe, row, units) for row in rows],
        coals=coals_of(recipe=recipe),
        allergens=dish_allergens(((each.name, each.note) for each in recipe.ingredients), recipe.allergens),
    )


def keeps_words(recipe: Recipe) -> str:
    """How the finished dish waits and how long it keeps."""
    keeps = {"hot": recipe.keeps.hot, "cold": recipe.keeps.cold, "air": recipe.keeps.air}
    parts = [f"{HELDS[Held(way)]} {span(minutes)}" for way, minutes in keeps.items() if minutes is not None]
    return ", ".join(parts)


def lines_read(lines: Iterable[Parsed | Question]) -> list[LineRead]:
    """What every line of a list of ingredients is understood as."""
    return [_line_read(line) for line in lines]


def recipe_text(recipe: Recipe, units: str) -> list[str]:
    """A recipe line by line, for two of them to be held side by side."""
    lines = [
        recipe.name,
        _("serves %(number)d") % {"number": recipe.serves},
        str(FOODS[recipe.food]),
        keeps_words(recipe),
        _("stands %(minutes)d min before it is served") % {"minutes": recipe.rests_minutes},
        ngettext("in %(count)d pan", "in %(count)d pans", recipe.pans) % {"count": recipe.pans},
        *([recipe.pan] if recipe.pan else []),
        *(ingredient_line(ingredient) for ingredient in recipe.ingredients),
        *(f"{swap.use} ← {swap.instead_of}" for swap in recipe.swaps),
    ]
    _course, rows = strip_of(recipe=recipe)
    for row in (_step_row(recipe, row, units) for row in rows):
        said = (row.kind, row.minutes, row.who, row.waits, row.heat, row.step.note)
        lines.append(" · ".join([f"{row.strip.number}. {row.step.name}", *(part for part in said if part)]))
    return lines


def difference(before: Recipe, after: Recipe) -> list[DiffLine]:
    """The lines of two versions: what both have, what the first has alone, what the second has alone."""
    units = readers_units()
    first, second = recipe_text(before, units), recipe_text(after, units)
    found: list[DiffLine] = []
    for what, a, b, c, d in SequenceMatcher(None, first, second, autojunk=False).get_opcodes():
        if what == "equal":
            found += [DiffLine("", line) for line in first[a:b]]
        else:
            found += [DiffLine("−", line) for line in first[a:b]] + [DiffLine("+", line) for line in second[c:d]]
    return found


def gear_words(kinds: Iterable[str]) -> str:
    """Kinds of gear in words."""
    return ", ".join(str(GEAR.get(kind, kind)) for kind in kinds)


def minutes_words(step: Step) -> str:
    """The minutes of a step: "30 min", or "usually 32, from 30 to 35 min"."""
    minutes = step.minutes
    if minutes.least == minutes.most:
        return _("%(usual)d min") % {"usual": minutes.usual}
    span = {"usual": minutes.usual, "least": minutes.least, "most": minutes.most}
    return _("usually %(usual)d, from %(least)d to %(most)d min") % span


def _ingredients(recipe: Recipe, people: int, units: str) -> list[IngredientRow]:
    scaled = scale(recipe.ingredients, factor_for_people(recipe, people), units=units)
    return [
        IngredientRow(
            "" if each.measured is None else each.measured.text, each.ingredient.name, each.ingredient.note,
            each.said if each.measured is not None else "",
        )
        for each in scaled
    ]  # fmt: skip


def _step_row(recipe: Recipe, row: StripRow, units: str) -> StepRow:
    step = row.step
    scope = "" if step.scope.value == "batch" else str(SCOPES[step.scope])
    kind = str(KINDS[step.kind]) + (f", {scope}" if scope else "")
    return StepRow(row, kind, minutes_words(step), _who(step), _waits(recipe, step, row.number), _heat(step, units))


def _who(step: Step) -> str:
    if not step.hands:
        return _("nobody needed") if step.bake is None else ""
    words = ngettext("%(count)d helper", "%(count)d helpers", step.hands) % {"count": step.hands}
    return f"{words} ({', '.join(sorted(step.skills))})" if step.skills else words


def _waits(recipe: Recipe, step: Step, number: int) -> str:
    """What it waits for, where that is not just the step before."""
    before = recipe.steps[number - 2].id if number > 1 else None
    if not step.after:
        return "" if number == 1 else _("waits for nothing")
    if step.after == (After(before),) if before is not None else False:
        return ""
    return "; ".join(_wait(recipe, after, alone=after.step == before and len(step.after) == 1) for after in step.after)


def _wait(recipe: Recipe, after: After, *, alone: bool) -> str:
    name = _("the step before") if alone else f"“{recipe.step(after.step).name}”"
    if after.least and after.most is not None:
        return _("%(least)d to %(most)d min after %(step)s") % {"least": after.least, "most": after.most, "step": name}
    if after.most is not None:
        return _("at most %(most)d min after %(step)s") % {"most": after.most, "step": name}
    if after.least:
        return _("at least %(least)d min after %(step)s") % {"least": after.least, "step": name}
    return _("after %(step)s") % {"step": name}


def _heat(step: Step, units: str) -> str:
    if step.bake is None:
        return ""
    oven, heat = show_inches(step.bake.oven_inches, units), show_temperature(step.bake.temperature_c, units)
    words = _("%(oven)s oven, %(heat)s, %(method)s; look in after %(minutes)d min") % {
        "oven": oven, "heat": heat, "method": METHODS[step.bake.method], "minutes": step.bake.look_in_from,
    }  # fmt: skip
    if step.bake.preheat_minutes:
        words += "; " + _("heated up empty for %(minutes)d min") % {"minutes": step.bake.preheat_minutes}
    return words + ("; " + _("on a trivet") if step.bake.trivet else "")


def _line_read(line: Parsed | Question) -> LineRead:
    if isinstance(line, Question):
        return LineRead(line.line, "", "", "", f"“{line.unclear}”: {line.ask}", "", known=False)
    told = tell(line.ingredient)
    allergens = ", ".join(sorted(str(each.value) for each in told.contains))
    amount = "" if line.amount is None else write_amount(line.amount)
    return LineRead(line.line, amount, line.ingredient, line.note, "", allergens, known=told.known)
