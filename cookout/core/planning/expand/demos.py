"""Demo slots: which steps a dish is made for, what is shown in which order, what stands ready."""

from dataclasses import dataclass

from cookout.core.kitchen.recipe import Recipe, Step, StepId
from cookout.core.planning.event import DemoSlot, Dish, DishId, Event, LiveStep, ReadyMade, SlotId, Talk, Taste
from cookout.core.planning.expand.copies import Made, Span
from cookout.core.planning.expand.draft import Draft
from cookout.core.planning.expand.hours import warmest_before
from cookout.core.planning.expand.servings import allergens
from cookout.core.planning.expand.waits import free_minutes, standing
from cookout.core.planning.expanded import TaskInfo, TaskKind
from cookout.core.planning.problem import Freshness, TaskId


def wanted_steps(event: Event, dish: Dish) -> tuple[Step, ...]:
    """The steps that are made: all of a dish that is eaten, else those shown or made ready and all they wait for."""
    recipe = event.recipe(dish.recipe)
    if dish.serving is not None or _is_wholly_ready(event, dish) or any(dish.id in slot.tasted for slot in event.slots):
        return recipe.steps
    shown = {live.step for slot in event.slots for live in slot.live_steps if live.dish == dish.id}
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


def item_id(slot: DemoSlot, position: int) -> TaskId:
    """The task of a talk or tasting at that position of a running order, as ``show.talk.2`` for the second talk."""
    kind = type(slot.live[position])
    number = sum(isinstance(item, kind) for item in slot.live[: position + 1])
    return TaskId(f"{slot.id}.{kind.__name__.lower()}.{number}")


@dataclass(frozen=True, slots=True)
class _Part:
    """A part of a running order as tasks: `starts` wait for the part before it, and the next one waits for `ends`."""

    starts: tuple[TaskId, ...]
    ends: tuple[TaskId, ...]


def show_live(draft: Draft, made: dict[DishId, Made]) -> None:
    """Put all that a slot shows inside it, in its order."""
    shown: dict[LiveStep, SlotId] = {}
    for slot in draft.event.slots:
        before = _Part((), ())
        for position, item in enumerate(slot.live):
            if isinstance(item, LiveStep) and shown.setdefault(item, slot.id) != slot.id:
                draft.warn(item.dish, f"It shows {item.step} in two slots.", "Make a dish of its own for the second.")
                continue
            part = (
                _show_step(draft, slot, made[item.dish].of_step(item.step))
                if isinstance(item, LiveStep)
                else (_show_item(draft, slot, position, item, made))
            )
            _in_order(draft, slot, before, part)
            before = part if part.ends else before


def _show_step(draft: Draft, slot: DemoSlot, spans: tuple[Span, ...]) -> _Part:
    for task in (task for span in spans for task in span.shown):
        _put_in(draft, slot, task)
    return _Part(tuple(span.shown[0] for span in spans), tuple(_shown_last(span) for span in spans))


def _shown_last(span: Span) -> TaskId:
    """What the audience waits for: the food being done, but not its minutes in the cooler behind the scene."""
    return span.exit if span.exit in span.shown else span.shown[-1]


def _show_item(draft: Draft, slot: DemoSlot, position: int, item: Talk | Taste, made: dict[DishId, Made]) -> _Part:
    """A talk or a tasting: a task of the presenter alone."""
    food = made[item.dish] if isinstance(item, Taste) and item.dish is not None else None
    kind, verb = (TaskKind.TASTE, "Taste") if isinstance(item, Taste) else (TaskKind.TALK, "Talk")
    info = TaskInfo(
        item_id(slot, position),
        f"{verb}: {item.text}",
        kind,
        None if food is None else food.dish.id,
        hands=1,
        detail="" if food is None else allergens(draft.event.recipe_of(food.dish)),
    )
    task = draft.add(info, item.minutes)
    _put_in(draft, slot, task)
    if food is not None:
        _be_done(draft, food, slot, task)
    return _Part((task,), (task,))


def _be_done(draft: Draft, food: Made, slot: DemoSlot, task: TaskId) -> None:
    """Food that is tasted is done by then and waits as it would for a serving, fresh where nothing else wants it."""
    stand = standing(food.recipe, warmest_before(draft.event, slot.ends_at), draft.event.food_rules)
    for span in food.last():
        draft.link(span.exit, task, stand.least, stand.most, why=stand.why)
        if food.dish.serving is None and not _is_wholly_ready(draft.event, food.dish):
            draft.freshness.append(Freshness(span.exit, task, free=free_minutes(food.recipe)))


def _put_in(draft: Draft, slot: DemoSlot, task: TaskId) -> None:
    draft.hold_within(task, slot.starts_at, slot.ends_at)
    draft.show(task, slot.id)


def _in_order(draft: Draft, slot: DemoSlot, before: _Part, after: _Part) -> None:
    for earlier in before.ends:
        for later in after.starts:
            draft.link(earlier, later, why=f"shown in this order at {slot.name}")


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
