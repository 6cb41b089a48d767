"""How much of each dish is really made: whole batches, as planning expands them, and for whom."""

from collections import Counter
from dataclasses import dataclass

from cookout.core.kitchen.recipe import Recipe, Step
from cookout.core.planning.event import Dish, Event
from cookout.core.planning.expand.copies import order_of, people_for
from cookout.core.planning.expand.demos import wanted_steps


@dataclass(frozen=True, slots=True)
class Portion:
    """A dish as it is made: its recipe with the swaps made, in so many whole `batches`, by those of its `steps`.

    `name` is its recipe's, with the dish's own id where two dishes are of one recipe. `is_eaten` where it is served or
    tasted, and `people` how many eat of it; None where nobody does, or nobody said.
    """

    dish: Dish
    name: str
    recipe: Recipe
    batches: int
    is_eaten: bool
    people: int | None
    steps: tuple[Step, ...]

    @property
    def up_to(self) -> str:
        """The last step that is made of a dish that is not finished; empty where it is finished.

        Nobody says which ingredients the later steps take, so all are counted, and this is told beside them.
        """
        return self.steps[-1].name if 0 < len(self.steps) < len(self.recipe.steps) else ""

    @property
    def is_raw(self) -> bool:
        """Whether a bake of the recipe is not made."""
        made = {step.id for step in self.steps}
        return any(step.bake is not None and step.id not in made for step in self.recipe.steps)

    @property
    def made(self) -> int:
        """Portions that the batches give."""
        return self.batches * self.recipe.serves

    @property
    def spare(self) -> int:
        """Portions beyond those eating; 0 for a dish that nobody eats of."""
        return 0 if self.people is None else max(0, self.made - self.people)


def portions(event: Event) -> tuple[Portion, ...]:
    """Every dish of the event as it is made, in the event's order."""
    names = {dish.id: event.recipe(dish.recipe).name for dish in event.dishes}
    times = Counter(names.values())
    return tuple(
        _portion(event, dish, name if times[name] == 1 else f"{name} ({dish.id})")
        for dish, name in zip(event.dishes, names.values(), strict=True)
    )


def _portion(event: Event, dish: Dish, name: str) -> Portion:
    is_eaten = dish.serving is not None or any(dish.id in slot.tasted for slot in event.slots)
    return Portion(
        dish=dish,
        name=name,
        recipe=event.recipe_of(dish),
        batches=order_of(event, dish).amount.batches,
        is_eaten=is_eaten,
        people=people_for(event, dish) if is_eaten else None,
        steps=wanted_steps(event, dish),
    )
