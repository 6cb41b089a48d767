"""Pictures for the terminal: where coals lie, and an oven's temperature over time."""

from collections.abc import Callable, Iterable

from cookout.core.fire.influences import band
from cookout.core.fire.oven import OvenCourse
from cookout.core.fire.patterns import Pattern

HALF = 6  # lines from the rim to the centre of a disc; a line is about two cells wide high
COAL, EDGE = "●", "·"
BETWEEN = 6
USUAL, WITHIN, EMPTY = "█", "░", " "
LINES, CELLS = 12, 60


def discs(pattern: Pattern, lid_name: str, under_name: str) -> str:
    """The lid and the ground under the oven, from above, side by side, each with its name below."""
    left, right = _disc(pattern.lid_places), _disc(pattern.under_places)
    wide = len(left[0])
    rows = [f"{a}{' ' * BETWEEN}{b}".rstrip() for a, b in zip(left, right, strict=True)]
    return "\n".join([*rows, f"{lid_name:^{wide}}{' ' * BETWEEN}{under_name:^{wide}}".rstrip()])


def _disc(places: Iterable[tuple[float, float]]) -> list[str]:
    size = 2 * HALF + 1
    cells = [[_edge(x, y) for x in range(2 * size - 1)] for y in range(size)]
    for x, y in places:
        row, column = _free(cells, HALF + y * (HALF - 0.3), 2 * HALF + x * (2 * HALF - 0.6))
        cells[row][column] = COAL
    return ["".join(row) for row in cells]


def _edge(x: int, y: int) -> str:
    away = ((x / 2 - HALF) ** 2 + (y - HALF) ** 2) ** 0.5
    return EDGE if abs(away - HALF) < 0.35 else EMPTY


def _free(cells: list[list[str]], row: float, column: float) -> tuple[int, int]:
    """The cell next to the place that has no coal yet, so that every coal is seen."""
    every = ((y, x) for y in range(len(cells)) for x in range(len(cells[0])) if cells[y][x] != COAL)
    return min(every, key=lambda cell: (cell[0] - row) ** 2 + ((cell[1] - column) / 2) ** 2)


def curve(course: OvenCourse, shown: Callable[[float], str], target_c: float) -> str:
    """The oven's temperature over time: the usual as a line, its band around it, the target marked at the side."""
    minutes = course.minutes
    least, usual, most = band(course.mean_c)
    low, high = float(least.min()), max(float(most.max()), target_c)
    step = (high - low) / (LINES - 1)
    columns = [int((minutes <= float(minutes[-1]) * cell / (CELLS - 1)).sum()) - 1 for cell in range(CELLS)]
    rows = []
    for line in range(LINES - 1, -1, -1):
        middle = low + line * step
        cells = "".join(_cell(middle, step, least[at], usual[at], most[at]) for at in columns)
        mark = ">" if abs(target_c - middle) <= step / 2 else " "
        rows.append(f"{shown(middle):>7} {mark}|{cells}".rstrip())
    end = f"{minutes[-1]:.0f} min"
    return "\n".join([*rows, f"{'':9}+{'-' * CELLS}", f"{'':10}0{end:>{CELLS - 1}}"])


def _cell(middle: float, step: float, least: float, usual: float, most: float) -> str:
    if abs(usual - middle) <= step / 2:
        return USUAL
    return WITHIN if least - step / 2 <= middle <= most + step / 2 else EMPTY
