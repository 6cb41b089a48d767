"""How one batch of a recipe runs through time, each step as early as those before it let it: for a picture of it."""

from dataclasses import dataclass

from cookout.core.kitchen.recipe import Recipe, Step, StepId, StepKind


@dataclass(frozen=True, slots=True)
class Span:
    """A step from `start` to `end`, minutes from the beginning of the recipe, with its usual minutes."""

    step: Step
    start: int
    end: int

    @property
    def is_waiting(self) -> bool:
        """Whether nobody works on it and no oven is hot: it rests, rises or cools."""
        return self.step.hands == 0 and self.step.kind is not StepKind.BAKE


@dataclass(frozen=True, slots=True)
class Course:
    """The steps in the order of the recipe; `minutes` from the first to the end of the last, `hands_on` of them work.

    A step that nothing waits for until later is drawn as late as its follower lets it.
    """

    spans: tuple[Span, ...]
    minutes: int
    hands_on: int


def course_of(recipe: Recipe) -> Course:
    """One batch as it runs: usual minutes, least waits; steps before the last one as late as they may stand.

    Mixing of 10, a bake of 30 and an icing of 12 that waits for both and for a cooling of 40 after the bake: 92 minutes
    in all, where an icing beaten apart from them begins so late that it is just ready.
    """
    starts = _early(recipe)
    total = max((starts[step.id] + step.minutes.usual for step in recipe.steps), default=0)
    starts = _late(recipe, starts, total)
    first = min(starts.values(), default=0)
    spans = tuple(
        Span(step, starts[step.id] - first, starts[step.id] - first + step.minutes.usual) for step in recipe.steps
    )
    hands_on = sum(step.minutes.usual for step in recipe.steps if step.hands and step.kind is not StepKind.BAKE)
    return Course(spans, total - first, hands_on)


def _early(recipe: Recipe) -> dict[StepId, int]:
    """The earliest start of each step; the steps of a sound recipe wait in no circle."""
    starts: dict[StepId, int] = {step.id: 0 for step in recipe.steps}
    for _ in recipe.steps:
        for step in recipe.steps:
            for after in step.after:
                ready = starts[after.step] + recipe.step(after.step).minutes.usual + after.least
                starts[step.id] = max(starts[step.id], ready)
    return starts


def _late(recipe: Recipe, early: dict[StepId, int], total: int) -> dict[StepId, int]:
    """The latest start of each step at which the whole is over as soon."""
    starts = {step.id: total - step.minutes.usual for step in recipe.steps}
    for _ in recipe.steps:
        for step in recipe.steps:
            for after in step.after:
                latest = starts[step.id] - after.least - recipe.step(after.step).minutes.usual
                starts[after.step] = min(starts[after.step], latest)
    return {name: max(early[name], start) for name, start in starts.items()}
