"""One batch of a recipe through time, worked out by hand."""

from cookout.core.kitchen.course import course_of
from cookout.core.kitchen.recipe import After, FoodKind, Keeps, Minutes, Recipe, RecipeId, Scope, Step, StepId, StepKind


def step(name: str, kind: StepKind, minutes: int, *after: After, hands: int = 1) -> Step:
    """A step of so many minutes."""
    return Step(StepId(name), name, kind, Scope.BATCH, Minutes(minutes, minutes, minutes), hands, after=after)


def cake() -> Recipe:
    """Mixed 10, baked 30, cooled 40 after 5 more, iced 12; the icing is beaten for 8 by itself."""
    steps = (
        step("mix", StepKind.MIX, 10),
        step("bake", StepKind.BAKE, 30, After(StepId("mix")), hands=0),
        step("cool", StepKind.COOL, 40, After(StepId("bake"), 5), hands=0),
        step("icing", StepKind.MIX, 8),
        step("ice", StepKind.ICE, 12, After(StepId("cool")), After(StepId("icing"))),
    )
    return Recipe(RecipeId("cake"), "Cake", 12, steps, FoodKind.BREAD_AND_CAKE, Keeps(air=60))


def test_each_step_stands_as_late_as_the_end_lets_it_and_the_whole_is_as_short_as_it_can_be() -> None:
    course = course_of(cake())
    assert [(span.step.id, span.start, span.end) for span in course.spans] == [
        ("mix", 0, 10),
        ("bake", 10, 40),
        ("cool", 45, 85),
        ("icing", 77, 85),
        ("ice", 85, 97),
    ]
    assert (course.minutes, course.hands_on) == (97, 30)


def test_what_rests_and_cools_is_waiting_and_a_bake_is_not() -> None:
    assert [span.step.id for span in course_of(cake()).spans if span.is_waiting] == ["cool"]
