"""Demo slots: which steps a dish is made for, what is shown live and in what order, what stands ready."""

from cookout.core.kitchen.recipe import Recipe, Step, StepId
from cookout.core.planning.event import DemoSlot, Dish, DishId, Event, LiveStep, ReadyMade, SlotId
from cookout.core.planning.expand.copies import Made, Span
from cookout.core.planning.expand.draft import Draft
from cookout.core.planning.expand.hours import warmest_before
from cookout.core.planning.expand.waits import free_minutes, standing
from cookout.core.planning.problem import Freshness, TaskId


def wanted_steps(event: Event, dish: Dish) -> tuple[Step, ...]:
    """The steps that are made: all of a dish that is served, else those shown or made ready and all they wait for."""
    recipe = event.recipe(dish.recipe)
    if dish.serving is not None or _is_wholly_ready(event, dish):
        return recipe.steps
    shown = {live.step for slot in event.slots for live in slot.live if live.dish == dish.id}
    ready = {r.up_to for slot in event.slots for r in slot.ready_made if r.dish == dish.id and r.up_to is not None}
    wanted = with_forerunners(recipe, shown | ready)
    return tuple(step for step in recipe.steps if step.id in wanted)


def _is_wholly_ready(event: Event, dish: Dish) -> bool:
    return any(r.dish == dish.id and r.up_to is None for slot in event.slots for r in slot.ready_made)


def with_forerunners(recipe: Recipe, steps: set[StepId]) -> set[StepId]:
    """Those steps and all that they wait for, however far back."""
    found: set[StepId] = set()
    todo = list(steps)
    while todo:
        step_id = todo.pop()
        if step_id not in found:
            found.add(step_id)
            todo += [after.step for after in recipe.step(step_id).after]
    return found


def show_live(draft: Draft, made: dict[DishId, Made]) -> None:
    """Put every live step inside its slot, and the live steps of a slot in their order."""
    shown: dict[LiveStep, SlotId] = {}
    for slot in draft.event.slots:
        before: tuple[Span, ...] = ()
        for live in slot.live:
            if shown.setdefault(live, slot.id) != slot.id:
                draft.warn(live.dish, f"It shows {live.step} in two slots.", "Make a dish of its own for the second.")
                continue
            spans = made[live.dish].of_step(live.step)
            _put_in(draft, slot, spans)
            _in_order(draft, slot, before, spans)
            before = spans


def _put_in(draft: Draft, slot: DemoSlot, spans: tuple[Span, ...]) -> None:
    for task in (task for span in spans for task in span.shown):
        draft.hold_within(task, slot.starts_at, slot.ends_at)
        draft.show(task, slot.id)


def _in_order(draft: Draft, slot: DemoSlot, before: tuple[Span, ...], after: tuple[Span, ...]) -> None:
    for earlier in before:
        for later in after:
            draft.link(earlier.exit, later.shown[0], why=f"shown in this order at {slot.name}")


def stand_ready(draft: Draft, made: dict[DishId, Made]) -> dict[tuple[SlotId, DishId], tuple[TaskId, ...]]:
    """Have every ready-made done by its minute and, where it is finished food, no sooner than it keeps."""
    ready: dict[tuple[SlotId, DishId], tuple[TaskId, ...]] = {}
    for slot in draft.event.slots:
        for wanted in slot.ready_made:
            spans = _ready_spans(made[wanted.dish], wanted)
            _finish_by(draft, made[wanted.dish], wanted, spans)
            key = (slot.id, wanted.dish)
            ready[key] = ready.get(key, ()) + tuple(span.exit for span in spans)
    return ready


def _ready_spans(dish: Made, wanted: ReadyMade) -> tuple[Span, ...]:
    return dish.last() if wanted.up_to is None else dish.of_step(wanted.up_to)


def _finish_by(draft: Draft, dish: Made, wanted: ReadyMade, spans: tuple[Span, ...]) -> None:
    """Half-finished food waits as its recipe lets it; finished food waits as it would for a serving."""
    last = {step.id for step in dish.recipe.last_steps()}
    stand = standing(dish.recipe, warmest_before(draft.event, wanted.by), draft.event.food_rules)
    for span in spans:
        draft.hold_within(span.exit, latest=wanted.by)
        draft.freshness.append(Freshness(span.exit, by=wanted.by, free=free_minutes(dish.recipe)))
        if span.step.id in last and stand.most is not None:
            draft.hold_within(span.exit, earliest=wanted.by - stand.most - draft.tasks[span.exit].minutes)
