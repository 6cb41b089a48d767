"""The way of a dish's food through time: worked on, waiting, in the oven, held; from the recipe or from a plan."""

from collections.abc import Callable, Iterator
from dataclasses import dataclass

from cookout.core.kitchen.recipe import FoodKind, Recipe, Step, StepKind
from cookout.core.planning.event import GearKind
from cookout.core.safety.foodpath import FoodPath, Held, Leg
from cookout.core.safety.limits import least_centre
from cookout.core.safety.rules import LimitSet

_HELD = {"hot": Held.HOT, "cold": Held.ICE}
# Food out of a cooler with ice, and food as it goes into an oven where the recipe does not say; our own choice.
_COLD_C, _WARM_C = 4.0, 21.0


@dataclass(frozen=True, slots=True)
class Stay:
    """One step of a dish as its food meets it: from `start` to `end`, in minutes of the event."""

    step: Step
    start: int
    end: int


def in_cooler(step: Step) -> bool:
    """Whether the step's food stands in a cooler."""
    return any(use.kind == GearKind.COOLER for use in step.gear)


def chain(recipe: Recipe) -> tuple[Step, ...]:
    """The steps from the first to the last that the food itself goes through: from the last one back along the bakes.

    Of several steps that one waits for, the way goes to the one with a bake behind it, else to the first named.
    """
    way = [recipe.last_steps()[0]]
    while way[-1].after:
        befores = [recipe.step(after.step) for after in way[-1].after]
        way.append(next((step for step in befores if _bakes_behind(recipe, step)), befores[0]))
    return tuple(reversed(way))


def _bakes_behind(recipe: Recipe, step: Step) -> bool:
    return step.bake is not None or any(_bakes_behind(recipe, recipe.step(after.step)) for after in step.after)


def food_path(
    recipe: Recipe,
    stays: tuple[Stay, ...],
    used_at: int,
    held: str,
    air: Callable[[int, int], float],
    code: LimitSet,
    *,
    marked: bool,
    about: str,
) -> FoodPath:
    """The path of those stays until the food is used; `air` gives the warmest air between two minutes.

    A bake brings the middle to what its load asks for, or else to what the code wants of that food: looking in sees to
    it. A cake counts from when it bears its icing.
    """
    legs = tuple(_legs(recipe, stays, used_at, held, air, code))
    cooks = any(leg.held is Held.OVEN for leg in legs)
    return FoodPath(recipe.name, recipe.food.value, legs, cooks=cooks, marked=marked, about=about)


def _legs(
    recipe: Recipe, stays: tuple[Stay, ...], used_at: int, held: str, air: Callable[[int, int], float], code: LimitSet
) -> Iterator[Leg]:
    if recipe.food is FoodKind.CREAM_ICING:
        stays = _from_icing(stays)
    before: Stay | None = None
    for stay in stays:
        if before is not None and stay.start > before.end:
            cold = in_cooler(before.step) or in_cooler(stay.step)
            yield Leg(stay.start - before.end, Held.ICE if cold else Held.AIR, air(before.end, stay.start))
        yield _leg(recipe, stay, air, code)
        before = stay
    if before is not None and used_at > before.end:
        # Food that is really held hot or cold is as warm as the code asks for; in the air it follows no known curve.
        held_c = {"hot": code.hot_c, "cold": code.cold_c}.get(held)
        way = _HELD.get(held, Held.AIR)
        yield Leg(used_at - before.end, way, air(before.end, used_at), start_c=held_c, end_c=held_c)


def _from_icing(stays: tuple[Stay, ...]) -> tuple[Stay, ...]:
    places = [place for place, stay in enumerate(stays) if stay.step.kind is StepKind.ICE]
    return stays[places[0] :] if places else stays


def _leg(recipe: Recipe, stay: Stay, air: Callable[[int, int], float], code: LimitSet) -> Leg:
    minutes, air_c = stay.end - stay.start, air(stay.start, stay.end)
    if stay.step.bake is not None:
        load = stay.step.bake.load
        start_c = _WARM_C if load is None or load.start_c is None else load.start_c
        return Leg(minutes, Held.OVEN, air_c, start_c=start_c, end_c=_done_c(recipe, stay.step, code))
    if in_cooler(stay.step):
        return Leg(minutes, Held.ICE, air_c, start_c=_COLD_C, end_c=_COLD_C)
    if stay.step.kind is StepKind.COOL:
        return Leg(minutes, Held.AIR, air_c)
    return Leg(minutes, Held.WORK if stay.step.hands else Held.AIR, air_c)


def _done_c(recipe: Recipe, step: Step, code: LimitSet) -> float:
    centre = least_centre(recipe.food.value, code)
    wanted = code.hot_c if centre is None else max(centre.usual_c, code.hot_c)
    load = step.bake.load if step.bake is not None else None
    return wanted if load is None or load.done_c is None else load.done_c
