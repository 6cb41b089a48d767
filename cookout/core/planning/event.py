"""An event as the planner sees it. All times are whole minutes from `Event.origin`."""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from datetime import datetime
from enum import StrEnum
from typing import NewType, TypeVar

from cookout.core.fire.iron import Surface
from cookout.core.fire.weather import Weather
from cookout.core.kitchen.recipe import FIRE_SKILL, Recipe, RecipeId, Skill, StepId
from cookout.core.kitchen.replacement import SwapId
from cookout.core.kitchen.swaps import swap
from cookout.core.planning.foodrules import HOME_RULES, FoodRules
from cookout.core.safety.site import Enclosure

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

    Ovens have `inches` (nominal diameter), `deep` and `iron_kg` (None: as ovens of that size usually weigh); chimneys
    `coals` (how many they light at once); cooking tables `spots`, `spot_inches` (the largest oven that stands on a spot
    without touching its neighbour), `material` and `surface`; trivets `height_m` (of an
    oven that stands on it, None: as on its legs); coolers `ice` (they hold food cold) and `places` (how many layers,
    cakes or bowls stand in one). `pooled` are names and counts of entries that planning took together.
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
    iron_kg: float | None = None
    surface: Surface = Surface.METAL
    height_m: float | None = None
    ice: bool = True
    places: int = 6
    pooled: tuple[tuple[str, int], ...] = ()

    @property
    def pieces(self) -> int:
        """How many uses it bears at once: a cooking table by its spots, a cooler by its places, all else by count."""
        if self.kind is GearKind.TABLE:
            return self.count * (1 if self.spots is None else self.spots)
        return self.count * self.places if self.kind is GearKind.COOLER else self.count


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

    `people` None means all of the serving's people; `swaps` are those of the recipe's own that are made for this dish.
    """

    id: DishId
    recipe: RecipeId
    serving: ServingId | None = None
    people: int | None = None
    swaps: tuple[SwapId, ...] = ()


@dataclass(frozen=True, slots=True)
class LiveStep:
    """A step of a dish done before the audience."""

    dish: DishId
    step: StepId


@dataclass(frozen=True, slots=True)
class Talk:
    """So many minutes of talking to the audience, about what `text` says."""

    text: str
    minutes: int


@dataclass(frozen=True, slots=True)
class Taste:
    """So many minutes in which the audience tastes; a `dish` is wholly done by then."""

    text: str
    minutes: int
    dish: DishId | None = None


Shown = LiveStep | Talk | Taste
"""What stands in the running order of a demo slot."""


@dataclass(frozen=True, slots=True)
class ReadyMade:
    """A dish that stands ready at a demo slot, finished up to and including `up_to` (None: wholly) by minute `by`."""

    dish: DishId
    by: int
    up_to: StepId | None = None


@dataclass(frozen=True, slots=True)
class DemoSlot:
    """Time before an audience: `presenter` does what is `live` (steps, talks, tastings) in its order."""

    id: SlotId
    name: str
    starts_at: int
    minutes: int
    presenter: HelperId
    live: tuple[Shown, ...] = ()
    ready_made: tuple[ReadyMade, ...] = ()

    @property
    def ends_at(self) -> int:
        """The minute at which the slot is over."""
        return self.starts_at + self.minutes

    @property
    def live_steps(self) -> tuple[LiveStep, ...]:
        """The steps of dishes among what is shown."""
        return tuple(item for item in self.live if isinstance(item, LiveStep))

    @property
    def tasted(self) -> frozenset[DishId]:
        """The dishes that are tasted."""
        return frozenset(item.dish for item in self.live if isinstance(item, Taste) and item.dish is not None)

    @property
    def dishes(self) -> frozenset[DishId]:
        """Every dish that is shown, tasted, or stands ready."""
        return self.tasted | {live.dish for live in self.live_steps} | {ready.dish for ready in self.ready_made}


@dataclass(frozen=True, slots=True)
class Place:
    """Where it is: elevation in metres, latitude and longitude in degrees where known.

    `dry_grass` around the fire, `clear_m` metres to the nearest thing that burns, `water` and a `shovel` by the fire, a
    lidded `metal_can` for the ash, what stands around the fire (`enclosure`) and whether `children` will be there, as
    the organiser found them; None where nobody looked.
    """

    name: str
    elevation_m: float = 0.0
    latitude: float | None = None
    longitude: float | None = None
    dry_grass: bool | None = None
    clear_m: float | None = None
    water: bool | None = None
    shovel: bool | None = None
    metal_can: bool | None = None
    enclosure: Enclosure | None = None
    children: bool | None = None


@dataclass(frozen=True, slots=True)
class WeatherFrom:
    """The weather expected from minute `start` until the next one begins."""

    start: int
    weather: Weather


@dataclass(frozen=True, slots=True)
class Switches:
    """What the organiser decided on for the whole event.

    `use_models` takes coal counts and minutes from the heat model; `altitude_advice` shows what the elevation changes
    in the recipes.
    """

    use_models: bool = True
    altitude_advice: bool = False


@dataclass(frozen=True, slots=True)
class Pin:
    """What a planner fixed by hand for the task of that id: its start `at`, some of its `helpers`, pieces of gear.

    `units` are names of pieces as a plan shows them ("12-inch oven B"). A pin to a task, helper or piece that is not
    there is left out of planning with a warning.
    """

    task: str
    at: int | None = None
    helpers: tuple[HelperId, ...] = ()
    units: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Event:
    """All that a plan is made from. `origin` is an aware datetime in `timezone` (an IANA name).

    `weather` holds until the first of `hours` begins, which are in the order of their start.
    """

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
    hours: tuple[WeatherFrom, ...] = ()
    switches: Switches = Switches()
    food_rules: FoodRules = HOME_RULES
    pins: tuple[Pin, ...] = ()

    def weather_at(self, minute: int) -> Weather:
        """The weather expected at a minute."""
        return next((hour.weather for hour in reversed(self.hours) if hour.start <= minute), self.weather)

    def weather_between(self, start: int, end: int) -> tuple[Weather, ...]:
        """Every weather expected from `start` to `end`."""
        return (self.weather_at(start), *(hour.weather for hour in self.hours if start < hour.start <= end))

    def warmest_c(self, start: int, end: int) -> float:
        """The warmest air expected from `start` to `end`, in degrees Celsius."""
        return max(weather.air_c for weather in self.weather_between(start, end))

    def recipe(self, recipe_id: RecipeId) -> Recipe:
        """The recipe of that id; `KeyError` where there is none."""
        return next_or_key_error((r for r in self.recipes if r.id == recipe_id), recipe_id)

    def recipe_of(self, dish: Dish) -> Recipe:
        """The recipe of a dish with the swaps made that it chose."""
        recipe = self.recipe(dish.recipe)
        chosen = tuple(each for each in recipe.swaps if each.id in dish.swaps)
        return replace(recipe, ingredients=swap(recipe.ingredients, chosen).ingredients) if chosen else recipe

    def serving(self, serving_id: ServingId) -> Serving:
        """The serving of that id; `KeyError` where there is none."""
        return next_or_key_error((s for s in self.servings if s.id == serving_id), serving_id)

    def dish(self, dish_id: DishId) -> Dish:
        """The dish of that id; `KeyError` where there is none."""
        return next_or_key_error((d for d in self.dishes if d.id == dish_id), dish_id)

    def helper(self, helper_id: HelperId) -> Helper:
        """The helper of that id; `KeyError` where there is none."""
        return next_or_key_error((h for h in self.crew if h.id == helper_id), helper_id)
