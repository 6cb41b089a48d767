"""Pictures of a recipe: its strip of time, and the coals of its bakes on a calm, mild day."""

from dataclasses import dataclass

from cookout.core.fire.chart import CoalCount, coal_count
from cookout.core.fire.weather import Weather
from cookout.core.kitchen.course import Course, course_of
from cookout.core.kitchen.recipe import Bake, Recipe, Step
from cookout.drawing import Scheme, oven_picture
from cookout.drawing.strip import step_strip


@dataclass(frozen=True, slots=True)
class StripRow:
    """A step with its picture (SVG), and whether nobody is needed meanwhile."""

    step: Step
    number: int
    start: int
    picture: str
    waits: bool


@dataclass(frozen=True, slots=True)
class Coals:
    """A bake's coals, with their picture (SVG)."""

    step: Step
    bake: Bake
    count: CoalCount
    picture: str


def strip_of(*, recipe: Recipe) -> tuple[Course, list[StripRow]]:
    """How one batch runs, and each step's place in it."""
    course = course_of(recipe)
    rows = [
        StripRow(span.step, number, span.start, step_strip(span, course), span.is_waiting)
        for number, span in enumerate(course.spans, 1)
    ]
    return course, rows


def coals_of(*, recipe: Recipe) -> list[Coals]:
    """The coals of every bake, reckoned for a calm, mild day; a plan reckons for its own weather."""
    found = []
    for step in recipe.steps:
        if step.bake is not None:
            count = coal_count(step.bake.oven_inches, step.bake.temperature_c, step.bake.method.value, Weather())
            picture = oven_picture(count.lid, count.under, step.bake.oven_inches, Scheme.PAGE)
            found.append(Coals(step, step.bake, count, picture))
    return found
