"""What is left when all have eaten: portions beyond those eating, what each food needs then, fuel, and the fire.

Limits are those of the event's own rules of food safety, cited; the rest says how it is founded.
"""

from dataclasses import dataclass
from datetime import datetime, timedelta
from enum import StrEnum

from cookout.core.kitchen.recipe import FoodKind
from cookout.core.planning.event import Event
from cookout.core.planning.lists.items import Item
from cookout.core.planning.lists.portions import Portion, portions
from cookout.core.planning.record import PlannedSafety, PlannedServing, PlanRecord
from cookout.core.quantities import show_mass, show_temperature
from cookout.core.safety.finding import show_minutes
from cookout.core.safety.limits import needs_control
from cookout.core.safety.rules import Cooling, LimitSet, Standing, TimeControl

# Eaten as it is, so that nobody heats it again.
_EATEN_COLD = frozenset({FoodKind.RAW_VEGETABLES, FoodKind.FRUIT, FoodKind.CREAM_ICING, FoodKind.BREAD_AND_CAKE})
_PRACTICE, _MEMORY = Standing.PRACTICE.value, Standing.MEMORY.value
_AFTER = {"drown": "Drown the coals", "metal_can": "Ash into the lidded metal can"}


class Afterwards(StrEnum):
    """What becomes of what is left: one kind of advice for each.

    COOL: cooked food, cooled fast; ICE: eaten cold, onto ice; TIMED: thrown away in time; WRAP: needs no cold;
    RAW and SHOWN: made for an audience, raw or finished.
    """

    COOL = "cool"
    ICE = "ice"
    TIMED = "timed"
    WRAP = "wrap"
    RAW = "raw"
    SHOWN = "shown"


@dataclass(frozen=True, slots=True)
class Advice:
    """What to do with food, and who says so."""

    text: str
    source: str


@dataclass(frozen=True, slots=True)
class LeftDish:
    """A dish with the portions made, those eating and those to spare; `advice` is that of `after`.

    `eating` is None where the dish is only shown, or nobody said how many eat of it.
    `by` is when what is left must be cold, hot or thrown away; None where nothing limits it or no plan says when it is
    served.
    """

    dish: str
    name: str
    made: int
    eating: int | None
    spare: int
    after: Afterwards
    advice: tuple[Advice, ...]
    by: datetime | None = None


@dataclass(frozen=True, slots=True)
class Leftovers:
    """What is left of food, in the event's order, and of fuel and fire; `general` holds for every food."""

    dishes: tuple[LeftDish, ...]
    fire: tuple[Item, ...]
    general: tuple[Advice, ...]


def leftovers(event: Event, record: PlanRecord, units: str) -> Leftovers:
    """What is left of the event for a reader with these units; times of day only where there is a plan."""
    served = {each.dish: each for each in record.servings}
    safety = {each.dish: each for each in record.safety}
    return Leftovers(
        dishes=tuple(
            _left(event, portion, served.get(portion.dish.id), safety.get(portion.dish.id), units)
            for portion in portions(event)
        ),
        fire=fire_left(event, record, units),
        general=(
            Advice("What was on a plate, or has stood for a time that nobody knows, is thrown away.", _PRACTICE),
            Advice("Write on each box what is in it and when it was made.", _PRACTICE),
        ),
    )


def _left(
    event: Event, portion: Portion, served: PlannedServing | None, safety: PlannedSafety | None, units: str
) -> LeftDish:
    code = event.food_rules.limits
    after = _afterwards(code, portion, safety)
    return LeftDish(
        dish=portion.dish.id,
        name=portion.name,
        made=portion.made,
        eating=portion.people,
        spare=portion.spare,
        after=after,
        advice=_advice(after, code, units),
        by=_until(portion, served, safety),
    )


def _until(portion: Portion, served: PlannedServing | None, safety: PlannedSafety | None) -> datetime | None:
    """When its time out is over: from being served, less what it has been out before."""
    if served is None or safety is None or safety.most_out_minutes is None or not needs_control(portion.recipe.food):
        return None
    return served.ready_at + timedelta(minutes=max(0, safety.most_out_minutes - (safety.out_minutes or 0)))


def _afterwards(code: LimitSet, portion: Portion, safety: PlannedSafety | None) -> Afterwards:
    food = portion.recipe.food
    if not portion.is_eaten:
        return Afterwards.RAW if portion.is_raw else Afterwards.SHOWN
    if not needs_control(food.value):
        return Afterwards.WRAP
    if code.time_control is not None and safety is not None and _is_out(safety):
        return Afterwards.TIMED
    return Afterwards.ICE if food in _EATEN_COLD else Afterwards.COOL


def _is_out(safety: PlannedSafety) -> bool:
    return "cold" not in safety.held and "hot" not in safety.held


def _advice(after: Afterwards, code: LimitSet, units: str) -> tuple[Advice, ...]:
    if after in _ADVICE:
        return (_ADVICE[after],)
    stood_out = (_stood_out(code.time_control),) if code.time_control is not None else ()
    if after is Afterwards.TIMED:
        return stood_out
    if after is Afterwards.ICE:
        return (*stood_out, _on_ice(code, units))
    return (*stood_out, _chilled(code, units), _heated_again(code, units))


_ADVICE = {
    Afterwards.WRAP: Advice("Wrap it when it is cold. It needs no cooler.", _MEMORY),
    Afterwards.RAW: Advice(
        "Nobody tastes it. Bake it through at once, or throw it away.",
        "raw egg and raw flour; extension advice, from memory",
    ),
    Afterwards.SHOWN: Advice(
        "Planned for nobody: eat of it only if its time out is known and within the limit.", Standing.OWN.value
    ),
}


def _stood_out(control: TimeControl) -> Advice:
    text = (
        "What stood out has time as its only control: when that is over it is thrown away, and never put back on ice."
    )
    return Advice(text, str(control.rule))


def _on_ice(code: LimitSet, units: str) -> Advice:
    """Food that is eaten cold; where time is a control, only what was never out goes on being kept."""
    cold = show_temperature(code.cold_c, units)
    if code.time_control is not None:
        return Advice(f"What never left the ice stays there, {cold} or colder.", str(code.cold_rule))
    return Advice(f"Onto ice, {cold} or colder, before its time out is over; else throw it away.", str(code.out_rule))


def _chilled(code: LimitSet, units: str) -> Advice:
    """Hot food to keep: shallow boxes on ice, by the stages of the code where it has any."""
    cold = show_temperature(code.cold_c, units)
    if code.cooling is not None:
        return Advice(_in_stages(code.cooling, units), f"{code.cooling.first_rule}, {code.cooling.last_rule}")
    text = f"Into shallow boxes and on ice, {cold} or colder, before its time out is over; else throw it away."
    return Advice(text, str(code.out_rule))


def _in_stages(cooling: Cooling, units: str) -> str:
    hot, last = show_temperature(cooling.from_c, units), show_temperature(cooling.last_c, units)
    first, within = show_temperature(cooling.first_c, units), show_minutes(cooling.first_minutes)
    return (
        f"What was held hot all along goes into shallow boxes on ice: from {hot} to {first} within {within}, to {last} "
        f"within {show_minutes(cooling.last_minutes)} in all. What cannot be cooled so fast is thrown away."
    )


def _heated_again(code: LimitSet, units: str) -> Advice:
    again = code.reheating
    held = f" for {again.seconds:g} s" if again.seconds else ""
    return Advice(f"Eaten again only heated to {show_temperature(again.centre_c, units)}{held}.", str(again.rule))


def fire_left(event: Event, record: PlanRecord, units: str) -> tuple[Item, ...]:
    """What is done with fire and fuel when the last food is out; nothing where none was lit."""
    asked = tuple(
        Item(f"fire.{check.id}", _AFTER[check.id], None, check.text, check.source)
        for check in record.checklist
        if check.id in _AFTER
    )
    if not asked:
        return ()
    return (
        *asked,
        Item("fire.move", "Nothing of it into a car", None, "neither coals nor ovens until they are cold", _PRACTICE),
        *_unlit(event, record, units),
        Item("fire.ovens", "Ovens emptied, wiped, dried and oiled", None, "while they are warm, not hot", _PRACTICE),
    )


def _unlit(event: Event, record: PlanRecord, units: str) -> tuple[Item, ...]:
    if record.fuel is None:
        return ()
    brought = max(record.fuel.coals, event.fuel.coals or 0)
    left = brought - record.fuel.laid - record.fuel.added
    mass = show_mass(record.fuel.kilograms * left / record.fuel.coals, units) if record.fuel.coals else ""
    detail = f"{mass}, if none to spare was lit; dry, in a closed bag, and never beside lit coals"
    return (Item("fire.unlit", "Coals left that were never lit", left, detail, _PRACTICE),)
