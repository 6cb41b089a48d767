"""Recipes as planning needs them: steps with times, hands and gear, and the waits between them."""

from dataclasses import dataclass, field
from enum import StrEnum
from typing import NewType

from cookout.core.errors import ProblemError
from cookout.core.kitchen.replacement import Swap

RecipeId = NewType("RecipeId", str)
StepId = NewType("StepId", str)
Skill = NewType("Skill", str)

FIRE_SKILL = Skill("fire")


class FoodKind(StrEnum):
    """What a finished food is, as far as safety cares; limits stand in `core.safety.limits`."""

    BREAD_AND_CAKE = "bread_and_cake"
    CREAM_ICING = "cream_icing"
    EGGS = "eggs"
    FISH = "fish"
    WHOLE_MEAT = "whole_meat"
    GROUND_MEAT = "ground_meat"
    POULTRY = "poultry"
    STEW_AND_BEANS = "stew_and_beans"
    COOKED_VEGETABLES = "cooked_vegetables"
    RAW_VEGETABLES = "raw_vegetables"
    FRUIT = "fruit"
    DAIRY = "dairy"


class Scope(StrEnum):
    """How often a step is done: for each pan (layer), for each batch, or once for the whole dish."""

    PAN = "pan"
    BATCH = "batch"
    DISH = "dish"


class StepKind(StrEnum):
    """What sort of work a step is."""

    PREPARE = "prepare"
    MIX = "mix"
    REST = "rest"
    BAKE = "bake"
    COOL = "cool"
    ICE = "ice"
    FINISH = "finish"


class BakeMethod(StrEnum):
    """How an oven is heated; it decides the share of coals on the lid."""

    BAKE = "bake"
    ROAST = "roast"
    SIMMER = "simmer"
    FRY = "fry"


@dataclass(frozen=True, slots=True)
class Minutes:
    """Least, usual and most minutes of a step; the plan uses the usual."""

    least: int
    usual: int
    most: int

    def __post_init__(self) -> None:
        if not 0 < self.least <= self.usual <= self.most:
            raise ProblemError(
                f"minutes must rise from least to most and be above 0, not {self.least}, {self.usual}, {self.most}"
            )


class LoadKind(StrEnum):
    """What bakes, as the heat model knows it (`fire.foods.FOODS`, which this layer does not import)."""

    CAKE = "cake"
    CARROT_CAKE = "carrot cake"
    QUICK_BREAD = "quick bread"
    ENRICHED_DOUGH = "enriched dough"
    LEAN_BREAD = "lean bread"
    CORNBREAD = "cornbread"
    COBBLER = "cobbler"
    CASSEROLE = "casserole"
    POTATOES = "potatoes"
    BEANS = "beans"
    STEW = "stew"
    FISH = "fish"
    ROAST = "roast"
    POULTRY = "poultry"
    GROUND_MEAT = "ground meat"


class IcingKind(StrEnum):
    """Icings by what holds them up (`safety.icing`, which this layer does not import)."""

    CREAM_CHEESE = "cream_cheese"
    BUTTER = "butter"
    SHORTENING = "shortening"
    WHIPPED_CREAM = "whipped_cream"
    CHOCOLATE_AND_CREAM = "chocolate_and_cream"
    SUGAR_GLAZE = "sugar_glaze"


class CoolPlace(StrEnum):
    """Where baked food stands while it cools."""

    PAN = "pan"
    RACK = "rack"
    COOLER = "cooler"


@dataclass(frozen=True, slots=True)
class Load:
    """What stands in an oven, for the heat model, in a round pan.

    `pan_m` is the pan's diameter and `depth_m` the depth of food in it, both in metres. `start_c` and `done_c` are the
    food's temperature as it goes in and at its centre when done, in degrees Celsius; None is the food's usual.
    """

    food: LoadKind
    pan_m: float
    depth_m: float
    start_c: float | None = None
    done_c: float | None = None


@dataclass(frozen=True, slots=True)
class Bake:
    """The oven a bake step wants.

    `temperature_c` in degrees Celsius; `look_in_from` minutes after the food went in, before the least bake time;
    `preheat_minutes` the oven stands under coals before the food goes in (0: coals and food together). `trivet`: the
    pan stands on a trivet in the oven; `stand`: the oven stands on one in place of its own legs. With a `load`
    the heat model gives the minutes, and the recipe's own are those of a house oven.
    """

    oven_inches: int
    method: BakeMethod
    temperature_c: float
    look_in_from: int
    preheat_minutes: int = 0
    trivet: bool = False
    load: Load | None = None
    stand: bool = False


@dataclass(frozen=True, slots=True)
class Cool:
    """What a cooling step cools to, `to_c` degrees Celsius, and where it stands meanwhile.

    `depth_m` is its depth as baked, in metres; None: as deep as it went into the oven.

    With it the heat model gives the minutes, where the layers that cool come from a bake with a load.
    """

    to_c: float
    where: CoolPlace = CoolPlace.RACK
    depth_m: float | None = None


@dataclass(frozen=True, slots=True)
class GearUse:
    """`count` pieces of gear of a kind (``mixer``, ``bowl``, ``rack``, ``cooler`` ...) in use during a step."""

    kind: str
    count: int = 1


@dataclass(frozen=True, slots=True)
class After:
    """A step waits for another: at least `least` and at most `most` minutes (None: any) from end to start."""

    step: StepId
    least: int = 0
    most: int | None = None


@dataclass(frozen=True, slots=True)
class Step:
    """One step of a recipe. `hands` helpers with every one of `skills`; 0 hands is unattended."""

    id: StepId
    name: str
    kind: StepKind
    scope: Scope
    minutes: Minutes
    hands: int = 1
    skills: frozenset[Skill] = frozenset()
    gear: tuple[GearUse, ...] = ()
    after: tuple[After, ...] = ()
    bake: Bake | None = None
    hot: bool = False
    note: str = ""
    cool: Cool | None = None


@dataclass(frozen=True, slots=True)
class Ingredient:
    """An ingredient for one batch: `amount` (None: to taste) of `unit` (empty: pieces)."""

    name: str
    amount: float | None = None
    unit: str = ""
    note: str = ""


@dataclass(frozen=True, slots=True)
class Keeps:
    """Minutes the finished dish keeps its quality hot, cold, or at air temperature; None: not kept that way."""

    hot: int | None = None
    cold: int | None = None
    air: int | None = None


@dataclass(frozen=True, slots=True)
class Recipe:
    """A recipe for one batch that serves `serves` people out of `pans` pans.

    `icing` None: none, or whatever the ingredients of an iced recipe make. `rests_minutes` is how long the finished
    dish should stand before it is served (a roast rests, a loaf cools);
    waiting longer than `best_within` minutes costs freshness, waiting longer than it keeps is not allowed.
    """

    id: RecipeId
    name: str
    serves: int
    steps: tuple[Step, ...]
    food: FoodKind
    keeps: Keeps
    pans: int = 1
    pan: str = ""
    ingredients: tuple[Ingredient, ...] = ()
    rests_minutes: int = 0
    best_within: int = 0
    serve_minutes: int = 5
    serve_hands: int = 1
    held: str = "air"
    allergens: tuple[str, ...] = field(default=())
    icing: IcingKind | None = None
    swaps: tuple[Swap, ...] = ()

    def step(self, step_id: StepId) -> Step:
        """The step of that id; `KeyError` where there is none."""
        for step in self.steps:
            if step.id == step_id:
                return step
        raise KeyError(step_id)

    def last_steps(self) -> tuple[Step, ...]:
        """The steps that nothing else in the recipe waits for."""
        waited_for = {after.step for step in self.steps for after in step.after}
        return tuple(step for step in self.steps if step.id not in waited_for)
