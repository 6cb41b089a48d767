"""A recipe's ingredients for more or fewer people, for other pans or ovens, in whole eggs and whole batches."""

import math
from dataclasses import dataclass, replace
from enum import StrEnum

from cookout.core.errors import QuantityError
from cookout.core.kitchen.densities import piece_mass_of, weighed_as
from cookout.core.kitchen.measures import Amount, can_weigh, grams
from cookout.core.kitchen.pans import Pan, same_depth
from cookout.core.kitchen.recipe import Ingredient, Recipe
from cookout.core.kitchen.rounding import USUAL_TOOLS, Measured, Tools, for_person

MOST_FACTOR = 1000.0


class Eggs(StrEnum):
    """What becomes of a part of an egg: to the nearest whole, up, down, or beaten and measured by weight."""

    NEAREST = "nearest"
    UP = "up"
    DOWN = "down"
    BY_WEIGHT = "by_weight"


@dataclass(frozen=True, slots=True)
class Scaled:
    """One ingredient scaled: what it would be exactly, what is measured (None: to taste), and what changed."""

    ingredient: Ingredient
    exact: Amount | None
    measured: Measured | None
    said: str = ""


@dataclass(frozen=True, slots=True)
class Batches:
    """How many batches are made, how many they serve, and how many servings are left over."""

    count: int
    serves: int
    spare: int


@dataclass(frozen=True, slots=True)
class Share:
    """Grams of batter for each pan; `rest` is what rounding leaves in the bowl, in grams."""

    each: tuple[float, ...]
    rest: float


@dataclass(frozen=True, slots=True)
class TimeNote:
    """What becomes of a time when a recipe is scaled."""

    about: str
    text: str


def factor_for_people(recipe: Recipe, people: int) -> float:
    """People divided by what one batch serves; `QuantityError` for nobody."""
    if people < 1:
        raise QuantityError("Scale for at least one person.")
    return people / recipe.serves


def factor_for_ovens(have_inches: float, want_inches: float) -> float:
    """The factor from one lidded oven to another at equal depth, by floor area: 10 to 12 inches is 1.44."""
    return same_depth(Pan(have_inches), Pan(want_inches))


def batches_for(recipe: Recipe, people: int) -> Batches:
    """Whole batches that serve at least so many: 30 people and a recipe for 12 make 3 batches, 6 servings spare."""
    count = math.ceil(factor_for_people(recipe, people) - 1e-9)
    return Batches(count, count * recipe.serves, count * recipe.serves - people)


def scale(
    ingredients: tuple[Ingredient, ...],
    factor: float,
    *,
    units: str,
    eggs: Eggs = Eggs.NEAREST,
    tools: Tools = USUAL_TOOLS,
) -> tuple[Scaled, ...]:
    """Every ingredient times `factor` (above 0, at most 1000) in the person's units, rounded to what can be measured.

    Half a recipe with 5 eggs and `Eggs.NEAREST` takes 3 and says that it is half an egg, some 25 g, more than exact.
    """
    if not 0 < factor <= MOST_FACTOR:
        raise QuantityError(f"A recipe scales by more than 0 and at most {MOST_FACTOR:g}, not by {factor:g}.")
    return tuple(_scaled(ingredient, factor, units, eggs, tools) for ingredient in ingredients)


def scaled_ingredients(scaled: tuple[Scaled, ...]) -> tuple[Ingredient, ...]:
    """The ingredients as measured, for a recipe made that size."""
    return tuple(
        replace(one.ingredient, amount=one.measured.amount.number, unit=one.measured.amount.unit)
        if one.measured
        else one.ingredient
        for one in scaled
    )


def batter_grams(ingredients: tuple[Ingredient, ...]) -> tuple[float, tuple[str, ...]]:
    """Grams of all that can be weighed, and the names of what cannot; what is to taste counts as nothing."""
    weighed, unknown = 0.0, []
    for ingredient in ingredients:
        if ingredient.amount is None:
            continue
        amount = Amount(ingredient.amount, ingredient.unit)
        food = weighed_as(ingredient.name, ingredient.note)
        if can_weigh(amount, food):
            weighed += grams(amount, food)
        else:
            unknown.append(ingredient.name)
    return weighed, tuple(unknown)


def share_batter(total_grams: float, pans: tuple[Pan, ...], *, step: float = 5.0) -> Share:
    """Grams of batter for each pan so that all are equally deep, rounded down to `step` grams of the scale.

    2,000 g in three equal pans are 665 g each with 5 g left in the bowl.
    """
    if not pans or not (math.isfinite(total_grams) and total_grams > 0) or step <= 0:
        raise QuantityError("Sharing batter needs its weight, at least one pan and a step of the scale above 0.")
    area = sum(pan.area for pan in pans)
    each = tuple(math.floor(total_grams * pan.area / area / step + 1e-9) * step for pan in pans)
    return Share(each, total_grams - sum(each))


def time_notes(factor: float, depth_factor: float = 1.0) -> tuple[TimeNote, ...]:
    """What a scaled recipe does to its times: advice, common practice, no source."""
    notes = [TimeNote("prepare", "Peeling, cutting and icing grow with the amount; more hands share it.")]
    if factor > 1:
        notes.append(TimeNote("mix", "Each bowlful mixes as long as before; more bowlfuls follow one another."))
    depth = "Times grow with depth, not with batches: pans as deep as before bake as long as before."
    if abs(depth_factor - 1) > 0.05:
        way = "longer" if depth_factor > 1 else "shorter"
        depth = f"The food stands {depth_factor:.2g} times as deep: it bakes {way}; have its time worked out anew."
    return (*notes, TimeNote("bake", depth))


def _scaled(ingredient: Ingredient, factor: float, units: str, eggs: Eggs, tools: Tools) -> Scaled:
    if ingredient.amount is None:
        return Scaled(ingredient, None, None, "to taste")
    exact = Amount(ingredient.amount * factor, ingredient.unit)
    if not ingredient.unit and piece_mass_of(ingredient.name) is not None:
        return _scaled_eggs(ingredient, exact, units, eggs, tools)
    measured = for_person(exact, units, weighed_as(ingredient.name, ingredient.note), tools)
    return Scaled(ingredient, exact, measured, str(measured) if abs(measured.share) >= 0.005 else "")


def _scaled_eggs(ingredient: Ingredient, exact: Amount, units: str, eggs: Eggs, tools: Tools) -> Scaled:
    part = exact.number - math.floor(exact.number + 1e-9)
    if part < 1e-6:
        whole = Amount(float(round(exact.number)))
        return Scaled(ingredient, exact, Measured(exact, whole, (whole,)))
    if eggs is Eggs.BY_WEIGHT:
        mass = for_person(Amount(grams(exact, ingredient.name), "g"), units, "", tools)
        return Scaled(ingredient, exact, mass, f"Beat {math.ceil(exact.number)} and weigh out {mass.text}.")
    number = max(1.0, float(_whole(exact.number, eggs)))
    whole = Amount(number)
    return Scaled(
        ingredient, exact, Measured(exact, whole, (whole,)), _egg_adjustment(ingredient.name, number - exact.number)
    )


def _whole(number: float, eggs: Eggs) -> int:
    if eggs is Eggs.UP:
        return math.ceil(number)
    return math.floor(number) if eggs is Eggs.DOWN else math.floor(number + 0.5)


def _egg_adjustment(name: str, difference: float) -> str:
    mass = grams(Amount(abs(difference)), name)
    spoons = f"some {mass:.0f} g, about {mass / 15:.0f} Tbsp of liquid"
    if difference > 0:
        return f"{difference:.2g} egg more than exact ({spoons}): take that much less of another liquid."
    return f"{-difference:.2g} egg less than exact ({spoons}): add that much milk or water."
