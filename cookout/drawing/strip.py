"""One step of a recipe on the strip of the recipe's time, as a small SVG that stretches with the page.

Kinds of work differ by shape, not by colour alone: work is a tall block, a bake a block with a line along its foot,
waiting a thin line. The looks are classes; the page's stylesheet has their colours.
"""

from cookout.core.kitchen.course import Course, Span
from cookout.core.kitchen.recipe import StepKind
from cookout.drawing.markup import tag

HEIGHT = 12.0
WIDTH = 600.0
HOUR = 60
LEAST_WIDTH = 4.0


def step_strip(span: Span, course: Course) -> str:
    """The step's block between the beginning and the end of the whole, with a line at each full hour."""
    scale = WIDTH / max(course.minutes, 1)
    left = span.start * scale
    width = max((span.end - span.start) * scale, LEAST_WIDTH)
    hours = [
        tag("rect", x=hour * scale - 0.5, y=0, width=1, height=HEIGHT, class_="strip-hour")
        for hour in range(HOUR, course.minutes, HOUR)
    ]
    ground = tag("rect", x=0, y=0, width=WIDTH, height=HEIGHT, class_="strip-ground")
    return tag(
        "svg", ground, *hours, _block(span, left, min(width, WIDTH - left)), class_="strip", aria_hidden="true",
        viewBox=f"0 0 {WIDTH:.0f} {HEIGHT:.0f}", preserveAspectRatio="none", focusable="false",
    )  # fmt: skip


def _block(span: Span, left: float, width: float) -> str:
    if span.step.kind is StepKind.BAKE:
        hot = tag("rect", x=left, y=0, width=width, height=HEIGHT, class_="strip-bake")
        return hot + tag("rect", x=left, y=HEIGHT - 3, width=width, height=1, class_="strip-ground")
    if span.is_waiting:
        return tag("rect", x=left, y=HEIGHT / 2 - 1, width=width, height=2, class_="strip-wait")
    return tag("rect", x=left, y=1, width=width, height=HEIGHT - 2, class_="strip-work")
