"""The tables [[recipes.ID.steps]], with the ovens, gear and waits of each step."""

from cookout.core.eventfile.faults import quoted
from cookout.core.eventfile.fields import DAY_MINUTES, Fields, described
from cookout.core.eventfile.gear import read_inches
from cookout.core.kitchen.recipe import (
    After,
    Bake,
    BakeMethod,
    Cool,
    CoolPlace,
    GearUse,
    Load,
    LoadKind,
    Minutes,
    Scope,
    Skill,
    Step,
    StepId,
    StepKind,
)
from cookout.core.quantities import parse_length, parse_temperature

MOST_MINUTES = 2 * DAY_MINUTES
MOST_HANDS = 50
# Below this nothing bakes, above it the iron's seasoning burns off. Common practice, no source.
COOLEST_C, HOTTEST_C = 50.0, 320.0

# What fits into the smallest and the largest oven, and what food is when it goes in, comes out, and has cooled.
NARROWEST_M, WIDEST_M = 0.04, 0.6
SHALLOWEST_M, DEEPEST_M = 0.005, 0.25
FROZEN_C, COOKED_C = -25.0, 110.0

_LOAD_MUST = ("pan", "depth", "load")

UNATTENDED = (StepKind.REST, StepKind.BAKE, StepKind.COOL)


def read_steps(recipe: Fields) -> tuple[Step, ...]:
    """The steps of a recipe in the order of the file."""
    found = recipe.value("steps", "one [[recipes.ID.steps]] a step, or a list of tables")
    tables = recipe.tables("steps", "recipes.ID.steps")
    if isinstance(found, list) and not tables:
        recipe.fault("steps", "The list is empty.", "Write one step at least.")
    steps: list[Step] = []
    for fields in tables:
        steps.append(_read_step(fields, steps[-1].id if steps else None))
    return tuple(steps)


def _read_step(fields: Fields, previous: StepId | None) -> Step:
    minutes = _read_minutes(fields)
    bake = _read_bake(fields, minutes)
    kind = _read_kind(fields)
    return Step(
        id=StepId(fields.id()),
        name=fields.text("name"),
        kind=kind,
        scope=fields.choice("scope", Scope, Scope.BATCH) or Scope.BATCH,
        minutes=minutes,
        hands=fields.whole("hands", 0 if kind in UNATTENDED else 1, most=MOST_HANDS),
        skills=frozenset(Skill(word) for word in fields.words("skills")),
        gear=tuple(_read_gear_use(entry) for entry in fields.tables("gear", "recipes.ID.steps.gear")),
        after=_read_after(fields, previous),
        bake=bake,
        hot=fields.flag("hot", default=False),
        note=fields.text("note", ""),
        cool=_read_cool(fields),
    )


def usual_kind(*, bakes: bool, cools: bool) -> StepKind:
    """The kind of a step whose file gives none."""
    if bakes:
        return StepKind.BAKE
    return StepKind.COOL if cools else StepKind.PREPARE


def _read_kind(fields: Fields) -> StepKind:
    usual = usual_kind(bakes=fields.has("bake"), cools=fields.has("cool"))
    kind = fields.choice("kind", StepKind, usual) or usual
    if fields.has("bake") and kind is not StepKind.BAKE:
        fields.fault("kind", f"A step with a bake is not of the kind {quoted(kind)}.", "Leave the kind out.")
    if fields.has("cool") and kind is not StepKind.COOL:
        fields.fault(
            "kind", f"A step with a cool is not of the kind {quoted(kind)}.", "Leave the kind or the cool out."
        )
    if kind is StepKind.BAKE and not fields.has("bake"):
        remedy = 'Write bake = { oven = "12 in", temperature = "350 F", look_in_from = 20 }.'
        fields.fault("bake", "It is missing: a bake names its oven.", remedy)
    return kind


def _read_minutes(fields: Fields) -> Minutes:
    """Least, usual and most; (1, 1, 1) where they are faulty."""
    found = fields.value("minutes", "[20, 25, 30]")
    if found is None:
        return Minutes(1, 1, 1)
    entries = found if isinstance(found, list) else [found] * 3
    numbers = [entry for entry in entries if isinstance(entry, int) and not isinstance(entry, bool)]
    if len(entries) != 3 or len(numbers) != 3:
        fields.fault("minutes", "These are not minutes.", "Write [least, usual, most] in whole minutes, or one number.")
        return Minutes(1, 1, 1)
    least, usual, most = numbers
    if not 0 < least <= usual <= most <= MOST_MINUTES:
        what = "The minutes do not rise from least to most, or are out of range."
        fields.fault("minutes", what, f"Write [least, usual, most], from 1 to {MOST_MINUTES}.")
        return Minutes(1, 1, 1)
    return Minutes(least, usual, most)


def _read_bake(step: Fields, minutes: Minutes) -> Bake | None:
    fields = step.table("bake", "recipes.ID.steps.bake")
    if fields is None:
        return None
    look_in_from = fields.whole("look_in_from", least=0, most=MOST_MINUTES)
    if step.sound("minutes") and fields.sound("look_in_from") and look_in_from >= minutes.least:
        what = f"The first look-in comes no earlier than the least minutes, {minutes.least}."
        fields.fault("look_in_from", what, f"Write a number below {minutes.least}.")
    return Bake(
        oven_inches=read_inches(fields, "oven"),
        method=fields.choice("method", BakeMethod, BakeMethod.BAKE) or BakeMethod.BAKE,
        temperature_c=fields.quantity("temperature", parse_temperature, '"350 F"', least=COOLEST_C, most=HOTTEST_C),
        look_in_from=look_in_from,
        preheat_minutes=fields.whole("preheat_minutes", 0, most=DAY_MINUTES),
        trivet=fields.flag("trivet", default=False),
        load=_read_load(fields),
        stand=fields.flag("stand", default=False),
    )


def _read_load(fields: Fields) -> Load | None:
    """What stands in the oven, where the file says it whole; a part of it alone is a fault."""
    given = [key for key in _LOAD_MUST if fields.has(key)]
    if not given:
        for key in ("start", "done"):
            if fields.has(key):
                fields.fault(key, "It says nothing without pan, depth and load.", f"Give those, or leave {key} out.")
        return None
    return Load(
        food=fields.choice("load", LoadKind) or LoadKind.CAKE,
        pan_m=fields.quantity("pan", parse_length, '"9 in"', least=NARROWEST_M, most=WIDEST_M),
        depth_m=fields.quantity("depth", parse_length, '"1.25 in"', least=SHALLOWEST_M, most=DEEPEST_M),
        start_c=_maybe_food_temperature(fields, "start"),
        done_c=_maybe_food_temperature(fields, "done"),
    )


def _maybe_food_temperature(fields: Fields, key: str) -> float | None:
    if not fields.has(key):
        return None
    return fields.quantity(key, parse_temperature, '"70 F"', least=FROZEN_C, most=COOKED_C)


def _read_cool(step: Fields) -> Cool | None:
    fields = step.table("cool", "recipes.ID.steps.cool")
    if fields is None:
        return None
    return Cool(
        to_c=fields.quantity("to", parse_temperature, '"80 F"', least=FROZEN_C, most=COOKED_C),
        where=fields.choice("where", CoolPlace, CoolPlace.RACK) or CoolPlace.RACK,
        depth_m=fields.quantity("depth", parse_length, '"1.5 in"', least=SHALLOWEST_M, most=DEEPEST_M)
        if fields.has("depth")
        else None,
    )


def _read_gear_use(fields: Fields) -> GearUse:
    return GearUse(kind=fields.reference("kind"), count=fields.whole("count", 1, least=1, most=200))


def _read_after(fields: Fields, previous: StepId | None) -> tuple[After, ...]:
    if not fields.has("after"):
        return (After(previous),) if previous else ()
    return tuple(_read_wait(fields, position, entry) for position, entry in enumerate(fields.entries("after")))


def _read_wait(step: Fields, position: int, entry: object) -> After:
    if isinstance(entry, str):
        return After(StepId(entry.strip()))
    if not isinstance(entry, dict):
        remedy = 'Write the id of a step, or { step = "mix", least = 10, most = 30 }.'
        step.fault_in("after", position, f"Here stands {described(entry)}.", remedy)
        return After(StepId(""))
    fields = step.entry_table("after", position, entry, "recipes.ID.steps.after")
    least = fields.whole("least", 0, most=MOST_MINUTES)
    most = fields.maybe_whole("most", most=MOST_MINUTES)
    if most is not None and most < least and fields.sound("least", "most"):
        fields.fault("most", f"It is below the least, {least}.", "Write a larger number or lower the least.")
    return After(StepId(fields.reference("step")), least, most)
