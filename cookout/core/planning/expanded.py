"""What `expand` makes of an event: a scheduling problem, and what each of its tasks means to the people."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from enum import StrEnum
from typing import NewType

from cookout.core.fire.weather import Weather
from cookout.core.kitchen.recipe import Minutes, Skill, StepId
from cookout.core.planning.event import DishId, Event, GearId, ServingId, SlotId
from cookout.core.planning.problem import Problem, ResourceId, TaskId
from cookout.core.planning.record import Warning

FiringId = NewType("FiringId", str)


class TaskKind(StrEnum):
    """What sort of task it is; fire tasks are those of `FIRE_KINDS`."""

    SET_UP = "set_up"
    PREPARE = "prepare"
    MIX = "mix"
    REST = "rest"
    LIGHT = "light"
    ASH_OVER = "ash_over"
    LAY_COALS = "lay_coals"
    PREHEAT = "preheat"
    LOAD = "load"
    BAKE = "bake"
    TURN = "turn"
    LOOK_IN = "look_in"
    TOP_UP = "top_up"
    TAKE_OUT = "take_out"
    COOL = "cool"
    ICE = "ice"
    FINISH = "finish"
    SERVE = "serve"
    DROWN = "drown"
    TALK = "talk"
    TASTE = "taste"


FIRE_KINDS = frozenset({TaskKind.LIGHT, TaskKind.LAY_COALS, TaskKind.TOP_UP, TaskKind.DROWN})


@dataclass(frozen=True, slots=True)
class TaskInfo:
    """The meaning of a task: `dish` None for tasks of the whole event, `hands` 0 for waiting."""

    id: TaskId
    name: str
    kind: TaskKind
    dish: DishId | None = None
    step: StepId | None = None
    hands: int = 0
    skills: frozenset[Skill] = frozenset()
    hot: bool = False
    detail: str = ""
    caution: str = ""
    live_in: SlotId | None = None


@dataclass(frozen=True, slots=True)
class Firing:
    """Coals lit together, usable from the end of `ashes` for `window_minutes`; they feed lay-coals and top-up tasks."""

    id: FiringId
    lights: TaskId
    ashes: TaskId
    feeds: tuple[TaskId, ...]
    coals: int
    chimneys: int
    window_minutes: int


@dataclass(frozen=True, slots=True)
class BakeRun:
    """One oven from cold iron to empty iron. `holds` are its tasks that occupy oven and table spot, in order.

    `minutes` over the coals are the heat model's where it was asked (`modelled`), else the recipe's.
    """

    dish: DishId
    lays: TaskId
    loads: TaskId
    bakes: TaskId
    takes_out: TaskId
    holds: tuple[TaskId, ...]
    inches: int
    temperature_c: float
    lid: int
    under: int
    least_coals: int
    most_coals: int
    minutes: Minutes
    modelled: bool = False
    top_ups: tuple[tuple[TaskId, int], ...] = ()


@dataclass(frozen=True, slots=True)
class PinFault:
    """Why pins of these tasks cannot be kept, whatever else is planned; `text` is the rule, without its full stop.

    `hours` where other hours of the pinned helper might do.
    """

    tasks: tuple[TaskId, ...]
    text: str
    hours: bool = False


@dataclass(frozen=True, slots=True)
class Expanded:
    """An event with its problem. `serves` gives the serve task of each (serving, dish).

    `gear_of` gives the gear that a counted resource stands for; shifts are not in it.
    `ready` gives, for each ready-made of a slot, the last tasks that make it. `weather_of` is the weather that each
    bake and each cooling was reckoned for; dishes `on_ice` stand in a cooler when finished, whatever their recipe is.
    `share_firings` and `expected` are what `expand` was told, so that the same can be made again.
    `labels` are the names of the pieces that a resource stands for, of gear whose pieces have names. `pinned` says what
    is pinned by hand of which task ("time", "helpers", "units"); where there are `pin_faults` there is no plan.
    `near_units` are the pieces that tasks had in an earlier plan, which they keep where they can.
    """

    event: Event
    problem: Problem
    info: dict[TaskId, TaskInfo]
    firings: tuple[Firing, ...]
    bake_runs: tuple[BakeRun, ...]
    serves: dict[tuple[ServingId, DishId], TaskId]
    ready: dict[tuple[SlotId, DishId], tuple[TaskId, ...]]
    gear_of: dict[ResourceId, GearId]
    warnings: tuple[Warning, ...] = ()
    weather_of: dict[TaskId, Weather] = field(default_factory=dict)
    on_ice: frozenset[DishId] = frozenset()
    share_firings: bool = True
    expected: Mapping[TaskId, int] = field(default_factory=dict)
    labels: Mapping[ResourceId, tuple[str, ...]] = field(default_factory=dict)
    pinned: Mapping[TaskId, tuple[str, ...]] = field(default_factory=dict)
    pin_faults: tuple[PinFault, ...] = ()
    near_units: Mapping[TaskId, tuple[str, ...]] = field(default_factory=dict)

    def full_name(self, task: TaskId) -> str:
        """A task's name with its dish, and with the dish's id where several are made by the same recipe."""
        info = self.info[task]
        if info.dish is None:
            return info.name
        recipe = self.event.recipe(self.event.dish(info.dish).recipe)
        name = info.name if recipe.name in info.name else f"{info.name}, {recipe.name}"
        alone = sum(dish.recipe == recipe.id for dish in self.event.dishes) == 1
        return name if alone else f"{name} ({info.dish})"

    def outdated(self, starts: Mapping[TaskId, int]) -> tuple[TaskId, ...]:
        """The bakes and coolings that, with these starts, fall into other weather than they were reckoned for."""
        return tuple(task for task, w in self.weather_of.items() if self.event.weather_at(starts[task]) != w)
