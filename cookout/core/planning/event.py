"""An event as the planner sees it. All times are whole minutes from `Event.origin`."""

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import datetime
from enum import StrEnum
from typing import NewType, TypeVar

from cookout.core.fire.weather import Weather
from cookout.core.kitchen.recipe import FIRE_SKILL, Recipe, RecipeId, Skill, StepId

Thing = TypeVar("Thing")

HelperId = NewType("HelperId", str)
GearId = NewType("GearId", str)
DishId = NewType("DishId", str)
ServingId = NewType("ServingId", str)
SlotId = NewType("SlotId", str)


def next_or_key_error(found: Iterator[Thing], key: str) -> Thing:
    """The first thing found; `KeyError` naming the key where there is none."""
    for thing in found:
        return thing
    raise KeyError(key)


class GearKind(StrEnum):
    """Kinds of gear. `TABLE` is a cooking table; its spots are what ovens take."""

    OVEN = "oven"
    CHIMNEY = "chimney"
    TABLE = "table"
    TRIVET = "trivet"
    RACK = "rack"
    COOLER = "cooler"
    MIXER = "mixer"
    BOWL = "bowl"
    SKILLET = "skillet"
    OTHER = "other"


@dataclass(frozen=True, slots=True)
class Gear:
    """`count` alike pieces of gear.

    Ovens have `inches` (nominal diameter) and `deep`; chimneys `coals` (how many they light at once); cooking tables
    `spots` and `spot_inches` (the largest oven that stands on a spot without touching its neighbour) and `material`.
    """

    id: GearId
    kind: GearKind
    name: str
    count: int = 1
    inches: int | None = None
    deep: bool = False
    coals: int | None = None
    spots: int | None = None
    spot_inches: int | None = None
    material: str = ""


@dataclass(frozen=True, slots=True)
class Fuel:
    """Fuel on hand: `kind` is ``briquettes`` or ``lump``; `coals` None where nobody counted."""

    kind: str = "briquettes"
    coals: int | None = None


@dataclass(frozen=True, slots=True)
class Window:
    """From `start` to `end`, in minutes from the event's origin."""

    start: int
    end: int


@dataclass(frozen=True, slots=True)
class Helper:
    """One of the crew. Fire tasks go to those with the fire skill who are adult or named by the organiser."""

    id: HelperId
    name: str
    skills: frozenset[Skill]
    windows: tuple[Window, ...]
    adult: bool = True
    fire_allowed: bool = False
    hot_stretch_minutes: int = 60
    contact: str = ""

    @property
    def may_tend_fire(self) -> bool:
        """Whether fire tasks may be given to this helper."""
        return FIRE_SKILL in self.skills and (self.adult or self.fire_allowed)


@dataclass(frozen=True, slots=True)
class Serving:
    """`at` minutes, everything on the table no earlier than `early` before and no later than `late` after."""

    id: ServingId
    name: str
    at: int
    people: int
    early: int = 10
    late: int = 10


@dataclass(frozen=True, slots=True)
class Dish:
    """A recipe made for this event, for a serving or (serving None) only to be shown in a demo slot.

    `people` None means all of the serving's people.
    """

    id: DishId
    recipe: RecipeId
    serving: ServingId | None = None
    people: int | None = None


@dataclass(frozen=True, slots=True)
class LiveStep:
    """A step of a dish done before the audience."""

    dish: DishId
    step: StepId


@dataclass(frozen=True, slots=True)
class ReadyMade:
    """A dish that stands ready at a demo slot, finished up to and including `up_to` (None: wholly) by minute `by`."""

    dish: DishId
    by: int
    up_to: StepId | None = None


@dataclass(frozen=True, slots=True)
class DemoSlot:
    """Time before an audience: `presenter` does the `live` steps in their order."""

    id: SlotId
    name: str
    starts_at: int
    minutes: int
    presenter: HelperId
    live: tuple[LiveStep, ...] = ()
    ready_made: tuple[ReadyMade, ...] = ()

    @property
    def ends_at(self) -> int:
        """The minute at which the slot is over."""
        return self.starts_at + self.minutes


@dataclass(frozen=True, slots=True)
class Place:
    """Where it is: elevation in metres, latitude and longitude in degrees where known."""

    name: str
    elevation_m: float = 0.0
    latitude: float | None = None
    longitude: float | None = None


@dataclass(frozen=True, slots=True)
class Event:
    """All that a plan is made from. `origin` is an aware datetime in `timezone` (an IANA name)."""

    id: str
    name: str
    place: Place
    timezone: str
    origin: datetime
    weather: Weather
    servings: tuple[Serving, ...]
    dishes: tuple[Dish, ...]
    slots: tuple[DemoSlot, ...]
    gear: tuple[Gear, ...]
    fuel: Fuel
    crew: tuple[Helper, ...]
    recipes: tuple[Recipe, ...]
    break_minutes: int = 10
    setup_minutes: int = 20
    wind_limit_mps: float | None = None
    fire_warning: str = ""
    units: str = "us"

    def recipe(self, recipe_id: RecipeId) -> Recipe:
        """The recipe of that id; `KeyError` where there is none."""
        return next_or_key_error((r for r in self.recipes if r.id == recipe_id), recipe_id)

    def serving(self, serving_id: ServingId) -> Serving:
        """The serving of that id; `KeyError` where there is none."""
        return next_or_key_error((s for s in self.servings if s.id == serving_id), serving_id)

    def dish(self, dish_id: DishId) -> Dish:
        """The dish of that id; `KeyError` where there is none."""
        return next_or_key_error((d for d in self.dishes if d.id == dish_id), dish_id)

    def helper(self, helper_id: HelperId) -> Helper:
        """The helper of that id; `KeyError` where there is none."""
        return next_or_key_error((h for h in self.crew if h.id == helper_id), helper_id)
