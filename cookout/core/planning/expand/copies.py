"""How often a step is done: once for the dish, for each batch, or for each pan of each batch."""

from dataclasses import dataclass
from math import ceil

from cookout.core.kitchen.recipe import Recipe, Scope, Step, StepId
from cookout.core.planning.event import Dish, DishId, Event
from cookout.core.planning.problem import TaskId


@dataclass(frozen=True, slots=True)
class Copy:
    """Which batch and pan a task is for, counted from 1; None is all of them."""

    batch: int | None = None
    pan: int | None = None

    def goes_with(self, other: "Copy") -> bool:
        """Whether both are about some pan in common."""
        same_batch = self.batch is None or other.batch is None or self.batch == other.batch
        return same_batch and (self.pan is None or other.pan is None or self.pan == other.pan)


@dataclass(frozen=True, slots=True)
class Yield:
    """How much of a dish is made."""

    batches: int
    pans: int

    def copies(self, scope: Scope) -> tuple[Copy, ...]:
        """The copies of a step of that scope."""
        batches = range(1, self.batches + 1)
        if scope is Scope.DISH:
            return (Copy(),)
        if scope is Scope.BATCH:
            return tuple(Copy(batch) for batch in batches)
        return tuple(Copy(batch, pan) for batch in batches for pan in range(1, self.pans + 1))

    def label(self, copy: Copy) -> str:
        """The copy in words, such as ``, batch 2 pan 1``; empty where there is but one."""
        batch = f"batch {copy.batch}" if copy.batch is not None and self.batches > 1 else ""
        pan = f"pan {copy.pan}" if copy.pan is not None and self.pans > 1 else ""
        words = " ".join(part for part in (batch, pan) if part)
        return f", {words}" if words else ""


@dataclass(frozen=True, slots=True)
class Span:
    """One copy of a step as tasks, in order. Waits of the recipe end at `entry` and begin at `exit`.

    `shown` are the tasks that stand before the audience when the step is live.
    """

    step: Step
    copy: Copy
    tasks: tuple[TaskId, ...]
    entry: TaskId
    exit: TaskId
    shown: tuple[TaskId, ...]


@dataclass(frozen=True, slots=True)
class Order:
    """A dish, its recipe as it is made here, and how much of it; what step `chilled` makes goes on ice."""

    dish: Dish
    recipe: Recipe
    amount: Yield
    chilled: StepId | None = None


@dataclass(frozen=True, slots=True)
class Made:
    """A dish with all its steps as tasks."""

    dish: Dish
    recipe: Recipe
    spans: tuple[Span, ...]

    def of_step(self, step_id: StepId) -> tuple[Span, ...]:
        """All copies of a step; none where the dish does not get that far."""
        return tuple(span for span in self.spans if span.step.id == step_id)

    def last(self) -> tuple[Span, ...]:
        """All copies of the steps that nothing else in the recipe waits for."""
        return tuple(span for step in self.recipe.last_steps() for span in self.of_step(step.id))


def people_for(event: Event, dish: Dish) -> int | None:
    """How many people the dish is for: its own number or else all of its serving's; None where nobody said."""
    if dish.people is not None or dish.serving is None:
        return dish.people
    return event.serving(dish.serving).people


def order_of(event: Event, dish: Dish) -> Order:
    """The dish in batches enough for all; one where nobody said how many people."""
    recipe, people = event.recipe(dish.recipe), people_for(event, dish)
    batches = 1 if people is None else max(1, ceil(people / recipe.serves))
    return Order(dish, recipe, Yield(batches, max(1, recipe.pans)))


def copy_id(dish: DishId, step: StepId, copy: Copy) -> TaskId:
    """The id of a step's copy, such as ``carrot-cake.b1.p2.cool``."""
    batch = "" if copy.batch is None else f".b{copy.batch}"
    pan = "" if copy.pan is None else f".p{copy.pan}"
    return TaskId(f"{dish}{batch}{pan}.{step}")
