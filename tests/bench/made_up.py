"""Events made by rule and seed, of about as many tasks as asked, for measuring how the planner grows.

Every dish has a recipe of its own with its own minutes, so that no two are alike; crew, ovens and tables grow with what
must be ready at once. All names, times and numbers are invented.
"""

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from datetime import datetime
from math import ceil
from random import Random
from zoneinfo import ZoneInfo

from cookout.core.fire.weather import Weather
from cookout.core.kitchen.recipe import FIRE_SKILL, Recipe, Skill
from cookout.core.planning.event import (
    Dish,
    DishId,
    Event,
    Fuel,
    Gear,
    GearId,
    GearKind,
    Helper,
    HelperId,
    Place,
    Serving,
    ServingId,
    Window,
)
from tests.bench.made_up_recipes import BAKING, ICING, KINDS, KNIFE

ZONE = "America/Denver"
FIRST_SERVING = 10 * 60
BETWEEN_SERVINGS = 100
DISHES_A_SERVING = 8
MOST_SERVINGS = 8
PEOPLE = 24
TASKS_A_DISH = 14


@dataclass(frozen=True, slots=True)
class Scale:
    """How much there is of everything, for a number of dishes."""

    dishes: int

    @property
    def servings(self) -> int:
        """Servings in the day."""
        return max(1, min(MOST_SERVINGS, round(self.dishes / DISHES_A_SERVING)))

    @property
    def at_once(self) -> int:
        """Dishes of the fullest serving."""
        return ceil(self.dishes / self.servings)

    @property
    def opens(self) -> int:
        """The minute at which the first helpers can come."""
        return FIRST_SERVING - 5 * 60

    @property
    def closes(self) -> int:
        """The minute at which the last helpers leave."""
        return FIRST_SERVING + (self.servings - 1) * BETWEEN_SERVINGS + 2 * 60


def event_of(dishes: int, seed: int = 1) -> Event:
    """An event of so many dishes; the same seed gives the same event."""
    chance = Random(seed * 10_007 + dishes)
    scale = Scale(dishes)
    recipes = tuple(_recipe(number, chance) for number in range(dishes))
    return Event(
        id=f"made-up-{dishes}-{seed}",
        name=f"Made-up day with {dishes} dishes",
        place=Place("Field behind the mill", elevation_m=900),
        timezone=ZONE,
        origin=datetime(2027, 7, 10, tzinfo=ZoneInfo(ZONE)),
        weather=Weather(air_c=24, wind_mps=2, gust_mps=4, sunny=True),
        servings=tuple(_servings(scale)),
        dishes=tuple(
            Dish(DishId(f"dish-{number}"), recipe.id, ServingId(f"serving-{number % scale.servings}"))
            for number, recipe in enumerate(recipes)
        ),
        slots=(),
        gear=_gear(scale, recipes),
        fuel=Fuel(),
        crew=tuple(_crew(scale, chance)),
        recipes=recipes,
    )


def event_with_tasks(tasks: int, count: Callable[[Event], int], seed: int = 1) -> Event:
    """The event of about `tasks` tasks as `count` counts them; a dish more or fewer would not come nearer."""
    dishes = max(2, round(tasks / TASKS_A_DISH))
    for _ in range(4):
        nearer = max(2, round(dishes * tasks / count(event_of(dishes, seed))))
        if nearer == dishes:
            break
        dishes = nearer
    around = (event_of(number, seed) for number in range(max(2, dishes - 1), dishes + 2))
    return min(around, key=lambda event: abs(count(event) - tasks))


def _recipe(number: int, chance: Random) -> Recipe:
    make = KINDS[number % len(KINDS)]
    return make(f"recipe-{number}", chance.choice((PEOPLE, PEOPLE, PEOPLE // 2)), chance)


def _servings(scale: Scale) -> Iterator[Serving]:
    for number in range(scale.servings):
        at = FIRST_SERVING + number * BETWEEN_SERVINGS
        yield Serving(ServingId(f"serving-{number}"), f"Serving {number + 1}", at, PEOPLE, early=15, late=15)


def _gear(scale: Scale, recipes: tuple[Recipe, ...]) -> tuple[Gear, ...]:
    """Ovens for a serving and half of the next, the rest in proportion."""
    bakes = [(step.bake.oven_inches, recipe) for recipe in recipes for step in recipe.steps if step.bake is not None]
    ovens = tuple(_ovens(inches, [r for size, r in bakes if size == inches], scale) for inches in (10, 12))
    spots = sum(gear.count for gear in ovens)
    return (
        *ovens,
        Gear(GearId("tables"), GearKind.TABLE, "Steel cooking table", ceil(spots / 3), spots=3, spot_inches=12),
        Gear(GearId("chimneys"), GearKind.CHIMNEY, "Chimney", 2 + scale.at_once // 2, coals=100),
        Gear(GearId("trivets"), GearKind.TRIVET, "Trivet", spots),
        Gear(GearId("racks"), GearKind.RACK, "Rack", 4 + 2 * scale.at_once),
        Gear(GearId("mixers"), GearKind.MIXER, "Hand mixer", 1 + scale.at_once // 3),
        Gear(GearId("bowls"), GearKind.BOWL, "Bowl", 3 + 2 * scale.at_once),
    )


def _ovens(inches: int, recipes: list[Recipe], scale: Scale) -> Gear:
    """As many as bake for a serving, and half as many again for its neighbours."""
    runs = sum(recipe.pans * ceil(PEOPLE / recipe.serves) for recipe in recipes)
    return Gear(
        GearId(f"ovens-{inches}"), GearKind.OVEN, f"{inches}-inch oven", 1 + ceil(1.5 * runs / scale.servings), inches
    )


def _crew(scale: Scale, chance: Random) -> Iterator[Helper]:
    """Every third tends the fire; each has one or two of the other skills, and every fourth takes a long rest."""
    for number in range(3 + scale.at_once):
        skills = {Skill(skill) for skill in chance.sample((BAKING, ICING, KNIFE), k=2)}
        if number % 3 == 0:
            skills |= {FIRE_SKILL, BAKING}
        yield Helper(
            HelperId(f"helper-{number}"),
            f"Helper {number + 1}",
            frozenset(skills),
            _windows(scale, number, chance),
            hot_stretch_minutes=chance.choice((60, 90)),
        )


def _windows(scale: Scale, number: int, chance: Random) -> tuple[Window, ...]:
    rests_from = (scale.opens + scale.closes) // 2 + chance.randrange(-60, 61, 5)
    if number % 4 == 3:
        return (Window(scale.opens, rests_from), Window(rests_from + 45, scale.closes))
    return (Window(scale.opens, scale.closes),)
