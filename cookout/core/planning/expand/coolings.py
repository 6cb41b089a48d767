"""Cooling what was baked, and keeping iced cakes cold: in the air where it does, in a cooler with ice where not."""

from dataclasses import dataclass, replace

from cookout.core.fire.weather import Weather
from cookout.core.kitchen.recipe import Cool, GearUse, Load, Minutes, Recipe, Step, StepKind
from cookout.core.planning.event import Event, GearKind
from cookout.core.planning.expand.copies import Copy, Order, copy_id
from cookout.core.planning.expand.draft import Draft
from cookout.core.planning.expand.gear import Kit
from cookout.core.planning.expanded import TaskInfo, TaskKind
from cookout.core.planning.heat import cooling_for
from cookout.core.planning.problem import Need, TaskId
from cookout.core.quantities import show_temperature
from cookout.core.safety.finding import Severity
from cookout.core.safety.icing import Icing, icing_holds, icing_of

# An iced cake stands in the cold for at least so long before it is served; our own choice, no source.
CHILL_MINUTES = 15


@dataclass(frozen=True, slots=True)
class Cooled:
    """How a cooling step is done: for how long, with which gear, and what is said of it."""

    minutes: Minutes
    needs: tuple[Need, ...]
    detail: str


def load_before(recipe: Recipe, step: Step) -> Load | None:
    """What a cooling step cools: the load of the bake that it waits for, where the recipe says."""
    bakes = (recipe.step(after.step).bake for after in step.after)
    return next((bake.load for bake in bakes if bake is not None and bake.load is not None), None)


def cool_down(draft: Draft, kit: Kit, order: Order, step: Step, copy: Copy) -> Cooled | None:
    """How the step is done by the model; None where the recipe does not say what is cooled, or models are left out."""
    load = load_before(order.recipe, step)
    if step.cool is None or load is None or not draft.event.switches.use_models:
        return None
    weather = draft.weather_for(copy_id(order.dish.id, step.id, copy), order.dish.id)
    cooling = cooling_for(draft.event, step.cool, load, weather)
    to = show_temperature(step.cool.to_c, draft.event.units)
    if cooling.in_air is not None:
        minutes = cooling.in_air
        return Cooled(minutes, kit.needs(step.gear), _said(step, f"{to} in the middle, {_span(minutes)} in this air."))
    cold = kit.cold_places()
    if cooling.on_ice is not None and cold.options:
        detail = f"In a cooler with ice, lid shut: {to} in the middle, {_span(cooling.on_ice)}."
        return Cooled(cooling.on_ice, (Need(cold.options), *kit.needs(_without_rack(step))), _said(step, detail))
    _warn_too_warm(draft, order, step, step.cool, weather)
    return None


def _span(minutes: Minutes) -> str:
    return f"{minutes.least} to {minutes.most} min"


def _said(step: Step, detail: str) -> str:
    return f"{step.note} {detail}".strip()


def _without_rack(step: Step) -> tuple[GearUse, ...]:
    return tuple(use for use in step.gear if use.kind not in (GearKind.RACK, GearKind.COOLER))


def _warn_too_warm(draft: Draft, order: Order, step: Step, cool: Cool, weather: Weather) -> None:
    units = draft.event.units
    air, to = show_temperature(weather.air_c, units), show_temperature(cool.to_c, units)
    text = f"{order.recipe.name}: in air of {air} it does not cool to {to}, which “{step.name}” asks for."
    remedy = "Bring a cooler with ice and cool it in there, or bake in the cool of the day."
    draft.warn(order.dish.id, text, remedy, step.id)


def icing_on(recipe: Recipe) -> Icing | None:
    """The icing of a recipe: as it says, or by its ingredients where a step ices; None where there is none."""
    if recipe.icing is not None:
        return Icing(recipe.icing.value)
    if all(step.kind is not StepKind.ICE for step in recipe.steps):
        return None
    return icing_of(recipe.food.value, (ingredient.name for ingredient in recipe.ingredients))


def slides(event: Event, recipe: Recipe, weather: Weather) -> bool:
    """Whether the recipe's icing will not hold in the open in that weather."""
    icing = icing_on(recipe)
    if icing is None or not event.switches.use_models:
        return False
    found = icing_holds(icing, weather.air_c, sunny=weather.sunny)
    return found is not None and found.severity is Severity.WARNING


def on_ice(draft: Draft, kit: Kit, order: Order, steps: tuple[Step, ...]) -> Order:
    """The order as those steps make it: kept in a cooler with ice where the icing would slide and there is one."""
    dish = order.dish
    ices = next((step for step in steps if step.kind is StepKind.ICE), None)
    if ices is None or order.recipe.held == "cold" or not kit.cold_places().options:
        return order
    first = order.amount.copies(ices.scope)[0]
    if not slides(draft.event, order.recipe, draft.weather_for(copy_id(dish.id, ices.id, first), dish.id)):
        return order
    draft.on_ice.add(dish.id)
    return replace(order, recipe=replace(order.recipe, held="cold"), chilled=ices.id)


def chill(draft: Draft, kit: Kit, order: Order, copy: Copy, iced: TaskId) -> TaskId:
    """Add the iced cake's first minutes in the cooler, right after it is iced."""
    info = TaskInfo(
        TaskId(f"{iced}.chill"),
        f"Into the cooler: {order.recipe.name}{order.amount.label(copy)}",
        TaskKind.COOL,
        order.dish.id,
        detail="In a cooler with ice until it is served, lid shut: the air is too warm for the icing.",
    )
    task = draft.add(info, CHILL_MINUTES, (Need(kit.cold_places().options),))
    draft.link(iced, task, 0, 5, why="the icing is too soft for this air")
    return task
