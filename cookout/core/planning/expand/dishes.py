"""Dishes become tasks: every copy of every step that is wanted, with the waits between them."""

from cookout.core.kitchen.recipe import After, Step
from cookout.core.planning.event import Dish
from cookout.core.planning.expand.bakes import BakeDraft, BakeOrder, make_bake
from cookout.core.planning.expand.coolings import chill, cool_down, on_ice
from cookout.core.planning.expand.copies import Copy, Made, Order, Span, copy_id, order_of
from cookout.core.planning.expand.draft import Draft
from cookout.core.planning.expand.gear import Kit
from cookout.core.planning.expand.hours import warmest_of_day
from cookout.core.planning.expand.waits import limit_between
from cookout.core.planning.expanded import TaskInfo, TaskKind


def make_dish(draft: Draft, kit: Kit, dish: Dish, steps: tuple[Step, ...]) -> tuple[Made, list[BakeDraft]]:
    """Add the tasks of a dish for those steps, and the waits between them. Its bakes still want coals and an oven."""
    order = on_ice(draft, kit, order_of(draft.event, dish), steps)
    spans: list[Span] = []
    bakes: list[BakeDraft] = []
    for step in steps:
        for copy in order.amount.copies(step.scope):
            if step.bake is None:
                spans.append(_plain(draft, kit, order, step, copy))
            else:
                span, bake = make_bake(draft, kit, BakeOrder(order, step, step.bake, copy))
                spans.append(span)
                bakes.append(bake)
    made = Made(dish, order.recipe, tuple(spans))
    _link_steps(draft, made)
    return made, bakes


def _plain(draft: Draft, kit: Kit, order: Order, step: Step, copy: Copy) -> Span:
    cooled = cool_down(draft, kit, order, step, copy)
    info = TaskInfo(
        copy_id(order.dish.id, step.id, copy),
        step.name + order.amount.label(copy),
        TaskKind(step.kind.value),
        order.dish.id,
        step.id,
        hands=step.hands,
        skills=step.skills,
        hot=step.hot and step.hands > 0,
        detail=step.note if cooled is None else cooled.detail,
    )
    minutes, needs = (step.minutes, kit.needs(step.gear)) if cooled is None else (cooled.minutes, cooled.needs)
    task = draft.add(info, minutes.usual, needs)
    if order.chilled != step.id:
        return Span(step, copy, (task,), task, task, (task,))
    cold = chill(draft, kit, order, copy, task)
    return Span(step, copy, (task, cold), task, cold, (task,))


def _link_steps(draft: Draft, made: Made) -> None:
    for later in made.spans:
        for after in later.step.after:
            for earlier in made.of_step(after.step):
                if earlier.copy.goes_with(later.copy):
                    _link_copies(draft, made, earlier, later, after)


def _link_copies(draft: Draft, made: Made, earlier: Span, later: Span, after: After) -> None:
    air_c, rules = warmest_of_day(draft.event), draft.event.food_rules
    limit = limit_between(made.recipe, earlier.step, later.step, after, air_c, rules)
    most, why = after.most, wait_in_words(earlier.step.name, later.step.name, after)
    if limit is not None:
        most, why = limit.minutes, f"{why}; {limit.reason}"
    draft.link(earlier.exit, later.entry, after.least, most, why=why)


def wait_in_words(earlier: str, later: str, after: After) -> str:
    """The wait of a recipe as a phrase, such as ``Ice the cake: at least 40 min after Cool the layers``."""
    if after.most is None:
        return f"{later}: at least {after.least} min after {earlier}" if after.least else f"{later}: after {earlier}"
    if after.least == after.most:
        return f"{later}: {after.least} min after {earlier}" if after.least else f"{later}: right after {earlier}"
    if after.least:
        return f"{later}: {after.least} to {after.most} min after {earlier}"
    return f"{later}: at most {after.most} min after {earlier}"
