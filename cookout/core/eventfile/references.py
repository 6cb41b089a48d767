"""Whether the parts of an event fit one another: ids, references, the order of steps, and the demo slots."""

from collections.abc import Iterable, Sequence
from itertools import combinations

from cookout.core.errors import QuantityError
from cookout.core.eventfile.faults import FaultList, Path, did_you_mean, quoted
from cookout.core.kitchen.recipe import Recipe, Step, StepId
from cookout.core.kitchen.swaps import offered, swap
from cookout.core.planning.event import DemoSlot, Dish, Event, GearKind, LiveStep, Taste

_BAKE_GEAR = (GearKind.OVEN, GearKind.CHIMNEY, GearKind.TABLE)
_STEP_GEAR = [kind.value for kind in GearKind if kind not in _BAKE_GEAR]


def check_references(event: Event, faults: FaultList) -> None:
    """Note every fault between the parts of an event whose own fields have been read already."""
    _refuse_repeats(event, faults)
    gear = [gear.id for gear in event.gear if gear.kind.value in _STEP_GEAR]
    for recipe in event.recipes:
        check_recipe(recipe, ("recipes", recipe.id), gear, faults)
    for position, slot in enumerate(event.slots):
        _check_slot(event, slot, ("demo_slots", position), faults)
    _check_dishes(event, faults)
    _refuse_repeated_live_steps(event, faults)
    _refuse_overlapping_slots(event, faults)
    _check_pins(event, faults)


def check_recipe(recipe: Recipe, path: Path, gear: Sequence[str], faults: FaultList) -> None:
    """Note every fault between the parts of a recipe that stands at `path`; steps may name gear by the ids `gear`."""
    _refuse_repeated_ids([step.id for step in recipe.steps], (*path, "steps"), faults)
    _check_steps(recipe, (*path, "steps"), faults)
    _check_gear(recipe, (*path, "steps"), gear, faults)
    _check_swaps(recipe, path, faults)


def _refuse_repeats(event: Event, faults: FaultList) -> None:
    _refuse_repeated_ids([gear.id for gear in event.gear], ("gear",), faults)
    _refuse_repeated_ids([helper.id for helper in event.crew], ("crew",), faults)
    _refuse_repeated_ids([serving.id for serving in event.servings], ("servings",), faults)
    _refuse_repeated_ids([dish.id for dish in event.dishes], ("dishes",), faults)
    _refuse_repeated_ids([slot.id for slot in event.slots], ("demo_slots",), faults)


def _refuse_repeated_ids(ids: Sequence[str], path: Path, faults: FaultList) -> None:
    for position, name in enumerate(ids):
        if name and name in ids[:position]:
            faults.add((*path, position, "id"), f"The id {quoted(name)} is taken.", "Give each an id of its own.")


def _check_dishes(event: Event, faults: FaultList) -> None:
    recipes = [recipe.id for recipe in event.recipes]
    servings = [serving.id for serving in event.servings]
    for position, dish in enumerate(event.dishes):
        _check_one(dish.recipe, "recipe", recipes, ("dishes", position, "recipe"), faults)
        _check_one(dish.serving or "", "serving", servings, ("dishes", position, "serving"), faults)
        _check_chosen(event, dish, ("dishes", position, "swaps"), faults)
    # A slip in another list may be why a dish is not in it.
    if not faults.has_within(("servings",)) and not faults.has_within(("demo_slots",)):
        _refuse_idle_dishes(event, faults)


def _refuse_idle_dishes(event: Event, faults: FaultList) -> None:
    shown: set[str] = {dish for slot in event.slots for dish in slot.dishes}
    for position, dish in enumerate(event.dishes):
        path = ("dishes", position)
        if dish.id and dish.serving is None and dish.id not in shown and not faults.has_within((*path, "serving")):
            remedy = "Name its serving, or show it in a demo slot."
            faults.add(path, f"{quoted(dish.id)} is neither served nor shown.", remedy)


def _check_chosen(event: Event, dish: Dish, path: Path, faults: FaultList) -> None:
    """The swaps that a dish chooses are its recipe's, and two of them do not replace the same thing."""
    recipe = _recipe_of(event, dish.recipe)
    if recipe is None or faults.has_within(("recipes", recipe.id)):
        return
    known = [swap.id for swap in recipe.swaps]
    if all(_check_one(name, "swap", known, (*path, place), faults) for place, name in enumerate(dish.swaps)):
        try:
            swap(recipe.ingredients, tuple(each for each in recipe.swaps if each.id in dish.swaps))
        except QuantityError as error:
            faults.add(path, "These swaps do not go together.", str(error))


def _check_swaps(recipe: Recipe, recipe_path: Path, faults: FaultList) -> None:
    path = (*recipe_path, "swaps")
    _refuse_repeated_ids([each.id for each in recipe.swaps], path, faults)
    if faults.has_within(path) or faults.has_within((*recipe_path, "ingredients")):
        return
    offers = offered(recipe.swaps, recipe.ingredients)
    for position, each in enumerate(recipe.swaps):
        if each not in offers:
            names = (ingredient.name for ingredient in recipe.ingredients)
            what = f"The recipe has no ingredient {quoted(each.instead_of)}."
            faults.add((*path, position, "instead_of"), what, did_you_mean(each.instead_of, names))


def _check_one(name: str, what: str, known: Iterable[str], path: Path, faults: FaultList) -> bool:
    choices = [choice for choice in known if choice]
    if name and name not in choices:
        faults.add(path, f"There is no {what} {quoted(name)}.", did_you_mean(name, choices))
    return name in choices


def _check_steps(recipe: Recipe, path: Path, faults: FaultList) -> None:
    ids = [step.id for step in recipe.steps]
    for position, step in enumerate(recipe.steps):
        for place, after in enumerate(step.after):
            _check_one(after.step, "step", ids, (*path, position, "after", place), faults)
    for circle in _circles(recipe.steps):
        position = ids.index(circle[0].id)
        names = " -> ".join(step.id for step in (*circle, circle[0]))
        faults.add((*path, position, "after"), f"The steps wait in a circle: {names}.", "Take one of these waits out.")


def _check_gear(recipe: Recipe, steps: Path, gear: Sequence[str], faults: FaultList) -> None:
    known = [*_STEP_GEAR, *gear]
    for position, step in enumerate(recipe.steps):
        for place, use in enumerate(step.gear):
            path = (*steps, position, "gear", place, "kind")
            if use.kind in _BAKE_GEAR:
                what = f"The planner counts {quoted(use.kind)} by itself, from the bakes."
                faults.add(path, what, "Leave it out; write bake = { ... } where the step wants an oven.")
            else:
                _check_one(use.kind, "gear", known, path, faults)


def _circles(steps: Sequence[Step]) -> list[list[Step]]:
    """Circles of steps that wait for one another, each told once, from whichever of its steps is written first."""
    by_id = {step.id: step for step in reversed(steps) if step.id}
    found: list[list[Step]] = []
    in_circle: set[str] = set()
    for step in steps:
        if step.id and step.id not in in_circle:
            circle = _circle_from(step, by_id)
            found += [circle] if circle else []
            in_circle |= {each.id for each in circle}
    return found


def _circle_from(start: Step, by_id: dict[StepId, Step]) -> list[Step]:
    """The shortest way from a step along its waits back to itself; empty where there is none."""
    ways: list[list[Step]] = [[by_id[start.id]]]
    seen: set[str] = set()
    for way in ways:
        for after in way[-1].after:
            if after.step == start.id:
                return way
            if after.step in by_id and after.step not in seen:
                seen.add(after.step)
                ways.append([*way, by_id[after.step]])
    return []


def _check_slot(event: Event, slot: DemoSlot, path: Path, faults: FaultList) -> None:
    _check_one(slot.presenter, "helper", (helper.id for helper in event.crew), (*path, "presenter"), faults)
    for position, item in enumerate(slot.live):
        if isinstance(item, LiveStep):
            _check_shown(event, item.dish, item.step, (*path, "live", position), "step", faults)
        elif isinstance(item, Taste) and item.dish is not None:
            _check_shown(event, item.dish, "", (*path, "live", position), "step", faults)
            _refuse_early_taste(slot, position, item, (*path, "live", position), faults)
    for position, ready in enumerate(slot.ready_made):
        _check_shown(event, ready.dish, ready.up_to or "", (*path, "ready_made", position), "up_to", faults)


def _refuse_early_taste(slot: DemoSlot, position: int, item: Taste, path: Path, faults: FaultList) -> None:
    """Nobody tastes a dish of which a step is still to be shown."""
    later = slot.live[position + 1 :]
    if any(isinstance(each, LiveStep) and each.dish == item.dish for each in later):
        what = f"{quoted(item.dish or '')} is tasted before it is done: a step of it is shown after that."
        faults.add((*path, "taste"), what, "Move the tasting behind the step, or taste a second dish of it.")


def _check_shown(event: Event, dish_id: str, step_id: str, path: Path, step_key: str, faults: FaultList) -> None:
    dishes: dict[str, Dish] = {dish.id: dish for dish in event.dishes}
    if not _check_one(dish_id, "dish", dishes, (*path, "dish"), faults):
        return
    recipe = _recipe_of(event, dishes[dish_id].recipe)
    if recipe is not None:
        _check_one(step_id, "step", (step.id for step in recipe.steps), (*path, step_key), faults)


def _recipe_of(event: Event, recipe_id: str) -> Recipe | None:
    return next((recipe for recipe in event.recipes if recipe.id == recipe_id), None)


def _refuse_repeated_live_steps(event: Event, faults: FaultList) -> None:
    shown: set[tuple[str, str]] = set()
    for position, slot in enumerate(event.slots):
        for place, live in enumerate(slot.live):
            if not isinstance(live, LiveStep):
                continue
            if live.dish and live.step and (live.dish, live.step) in shown:
                what = f"The step {quoted(live.step)} of {quoted(live.dish)} is shown live before."
                remedy = "Show it once; for a second time make a second dish."
                faults.add(("demo_slots", position, "live", place, "step"), what, remedy)
            shown.add((live.dish, live.step))


def _refuse_overlapping_slots(event: Event, faults: FaultList) -> None:
    for (first, earlier), (position, later) in combinations(enumerate(event.slots), 2):
        times = [("demo_slots", place, key) for place in (first, position) for key in ("starts", "minutes")]
        if earlier.presenter != later.presenter or not later.presenter or any(map(faults.has_within, times)):
            continue
        if earlier.starts_at < later.ends_at and later.starts_at < earlier.ends_at:
            what = f"{quoted(later.presenter)} presents {quoted(earlier.id)} at the same time."
            faults.add(("demo_slots", position, "starts"), what, "Move one of the slots or name another presenter.")


def _check_pins(event: Event, faults: FaultList) -> None:
    """Pins name helpers of the crew, and each task has one at most."""
    crew = [helper.id for helper in event.crew]
    pinned: set[str] = set()
    for position, pin in enumerate(event.pins):
        path = ("pins", position)
        for place, helper in enumerate(pin.helpers):
            _check_one(helper, "helper", crew, (*path, "helpers", place), faults)
        if pin.task and pin.task in pinned:
            remedy = "Put both into one pin, or take one of them out."
            faults.add((*path, "task"), f"{quoted(pin.task)} is pinned before.", remedy)
        pinned.add(pin.task)
