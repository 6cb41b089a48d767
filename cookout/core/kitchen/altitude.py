"""Baking and boiling high above the sea: advice with its source, applied only where the user says so.

Sources:
  [1] Colorado State University Extension, high-elevation cooking: changes begin at 3,000 ft; a braise may need a
      quarter more time at 5,000 ft; the oven at most 25 °F hotter for cakes.
  [2] Table for cakes at 3,000, 5,000 and 7,000 ft as extension services pass it on (secondary).
Above 10,000 ft there is no table: the last column holds, and a trial bake is advised.
"""

from dataclasses import dataclass, replace
from enum import StrEnum

from cookout.core.kitchen.measures import CUP, TABLESPOON, TEASPOON, Amount, Kind, convert, kind_of
from cookout.core.kitchen.recipe import FoodKind, Ingredient
from cookout.core.kitchen.words import plain_name
from cookout.core.quantities import METRES_IN_FOOT, celsius_to_fahrenheit

STARTS_FEET = 3000.0
"""Below this nothing changes [1]."""
HOTTEST_STEP_F = 25.0
"""Most degrees Fahrenheit by which the oven is raised for cakes [1]."""
SLOWER_AT_5000_FEET = 0.25
EXTENSION = "Colorado State University Extension, high-elevation cooking"
CAKE_TABLE = "table for cakes at 3,000, 5,000 and 7,000 ft, as extension services pass it on (secondary)"
ATMOSPHERE = "US Standard Atmosphere 1976 and IAPWS-97"
"""Where the boiling point that the caller gives comes from."""


class Change(StrEnum):
    """What a piece of advice changes."""

    LIQUID = "liquid"
    LEAVENING = "leavening"
    SUGAR = "sugar"
    OVEN = "oven"
    TIME = "time"
    BOILING = "boiling"


@dataclass(frozen=True, slots=True)
class Advice:
    """One change: from `least` to `most` of `unit` for each `per` ("cup", "tsp"); below 0 is taken away.

    Only liquid, leavening and sugar change ingredients; the others are told (`unit` is then ``°F`` or ``share``).
    """

    change: Change
    text: str
    source: str
    least: float = 0.0
    most: float = 0.0
    unit: str = ""
    per: str = ""


@dataclass(frozen=True, slots=True)
class Dish:
    """What altitude asks of a dish: its kind, and whether it is baked with leavening (cakes, quick breads)."""

    food: FoodKind
    leavened: bool = False
    simmered: bool = False


@dataclass(frozen=True, slots=True)
class Applied:
    """Ingredients after advice was applied, and in words what was changed in which."""

    ingredients: tuple[Ingredient, ...]
    changes: tuple[str, ...]


# (feet, from, to) [2]: Tbsp of liquid for each cup; tsp of baking powder taken from each tsp; Tbsp of sugar from a cup.
_LIQUID = ((3000.0, 1.0, 2.0), (5000.0, 2.0, 3.0), (7000.0, 3.0, 4.0))
_LEAVENING = ((3000.0, 0.125, 0.125), (5000.0, 0.125, 0.25), (7000.0, 0.25, 0.5))
_SUGAR = ((3000.0, 0.0, 0.0), (5000.0, 0.0, 0.0), (7000.0, 1.0, 2.0))
_LIQUIDS = frozenset({"water", "milk", "whole milk", "buttermilk", "warm water", "cold water", "hot water", "coffee"})
_LEAVENINGS = frozenset({"baking powder", "baking soda"})
_SUGARS = frozenset(
    {"sugar", "granulated sugar", "white sugar", "brown sugar", "light brown sugar", "dark brown sugar"}
)
_TARGETS = {Change.LIQUID: _LIQUIDS, Change.LEAVENING: _LEAVENINGS, Change.SUGAR: _SUGARS}


def advice(dish: Dish, elevation_m: float, boiling_c: float | None = None) -> tuple[Advice, ...]:
    """What to change for a dish at an elevation in metres (0 to about 3,000; nothing below 914 m, 3,000 ft).

    `boiling_c` is the local boiling point in degrees Celsius, where it is known (`core.air.boiling_c`). A leavened cake
    at 1,524 m (5,000 ft) gets 2 to 3 Tbsp more liquid a cup, 1/8 to 1/4 tsp less powder a tsp, and an oven up to 25 °F
    hotter.
    """
    feet = elevation_m / METRES_IN_FOOT
    if feet < STARTS_FEET - 0.5:
        return ()
    found = list(_for_cakes(feet)) if dish.leavened else []
    if dish.simmered:
        found.append(_for_simmering(feet))
    if boiling_c is not None:
        found.append(_boiling(boiling_c))
    return tuple(found)


def dish_of(food: FoodKind, ingredients: tuple[Ingredient, ...], *, simmered: bool = False) -> Dish:
    """The dish as altitude sees it: leavened where its ingredients have baking powder or soda."""
    names = {plain_name(ingredient.name) for ingredient in ingredients}
    return Dish(food, food is FoodKind.BREAD_AND_CAKE and bool(names & _LEAVENINGS), simmered)


def apply(ingredients: tuple[Ingredient, ...], chosen: tuple[Advice, ...]) -> Applied:
    """The ingredients with the chosen advice applied, at the middle of its range, and what was changed.

    Advice on oven, time and boiling changes no ingredient. Every liquid, leavening and sugar that is known by its name
    is changed; where there is none, or an amount is no volume, that is said instead of guessed.
    """
    changed, said = list(ingredients), []
    for one in chosen:
        if one.change in _TARGETS and one.most:
            said += _apply_one(changed, one)
    return Applied(tuple(changed), tuple(said))


def _for_cakes(feet: float) -> tuple[Advice, ...]:
    liquid, powder, sugar = _row(_LIQUID, feet), _row(_LEAVENING, feet), _row(_SUGAR, feet)
    found = [
        Advice(
            Change.LIQUID, f"Add {_span(*liquid)} Tbsp to each cup of liquid.", CAKE_TABLE, *liquid, TABLESPOON, CUP
        ),
        Advice(
            Change.LEAVENING,
            f"Take {_span(*powder)} tsp from each tsp of baking powder or soda.",
            CAKE_TABLE, -powder[0], -powder[1], TEASPOON, TEASPOON,
        ),
    ]  # fmt: skip
    if sugar[1]:
        text = f"Take {_span(*sugar)} Tbsp from each cup of sugar."
        found.append(Advice(Change.SUGAR, text, CAKE_TABLE, -sugar[0], -sugar[1], TABLESPOON, CUP))
    text = f"Raise the oven by at most {HOTTEST_STEP_F:g} °F (14 °C) and look in sooner."
    found.append(Advice(Change.OVEN, text, EXTENSION, 0.0, HOTTEST_STEP_F, "°F"))
    return tuple(found)


def _for_simmering(feet: float) -> Advice:
    share = SLOWER_AT_5000_FEET * feet / 5000.0
    text = f"Braises and stews may take up to {share:.0%} longer, since water boils cooler; beans even more."
    return Advice(
        Change.TIME, text, f"{EXTENSION}; a quarter at 5,000 ft, in proportion elsewhere", 0.0, share, "share"
    )


def _boiling(boiling_c: float) -> Advice:
    fahrenheit = celsius_to_fahrenheit(boiling_c)
    text = (
        f"Water boils at {boiling_c:.1f} °C ({fahrenheit:.0f} °F) here: no moist centre gets hotter, so a cake is done "
        "below that. Safe inner temperatures stay what they are."
    )
    return Advice(Change.BOILING, text, ATMOSPHERE)


def _row(table: tuple[tuple[float, float, float], ...], feet: float) -> tuple[float, float]:
    """The column that holds from its elevation up to the next."""
    least, most = next((low, high) for start, low, high in reversed(table) if feet >= start - 0.5)
    return least, most


def _span(least: float, most: float) -> str:
    low, high = (
        f"{number:g}".replace("0.125", "1/8").replace("0.25", "1/4").replace("0.5", "1/2") for number in (least, most)
    )
    return low if low == high else f"{low} to {high}"


def _apply_one(ingredients: list[Ingredient], one: Advice) -> list[str]:
    targets = [at for at, have in enumerate(ingredients) if plain_name(have.name) in _TARGETS[one.change]]
    if not targets:
        return [f"No {one.change.value} was found among the ingredients: {one.text}"]
    return [_changed(ingredients, at, one) for at in targets]


def _changed(ingredients: list[Ingredient], at: int, one: Advice) -> str:
    have = ingredients[at]
    if have.amount is None or kind_of(have.unit) is not Kind.VOLUME:
        return f"{have.name} has no volume to change: {one.text}"
    measure = Amount(have.amount, have.unit)
    times = convert(measure, one.per).number
    step = convert(Amount(abs(one.least + one.most) / 2 * times, one.unit), have.unit).number
    more = one.most > 0
    ingredients[at] = replace(have, amount=have.amount + step if more else have.amount - step)
    return f"{have.name}: {step:.3g} {have.unit} {'more' if more else 'less'}, from {have.amount:.3g} {have.unit}"
