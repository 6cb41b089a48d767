"""Small drawings of plans that are weighed or still being made."""

from collections.abc import Sequence
from typing import Any

from cookout.core.planning.comparison import Comparison
from cookout.core.planning.outline import Bar, OutlineRow
from cookout.core.planning.record import PlanRecord
from cookout.core.planning.wording import HourStyle
from cookout.drawing import Words, comparison_svg
from cookout.drawing.outline import outline_svg
from cookout.drawing.rows import By

WIDE, NARROW = 1180, 366
OUTLINE_WIDTH = 720


def outline(*, stored: Sequence[Sequence[Any]] | None, title: str, whole: str) -> str:
    """The best plan so far of a run under way, as it put it down; empty where it has none yet."""
    rows = [OutlineRow(name, tuple(Bar(*bar) for bar in bars)) for name, bars in stored or ()]
    return outline_svg(rows, width=OUTLINE_WIDTH, title=title, whole=whole)


def before_and_after(
    *, before: PlanRecord, after: PlanRecord, comparison: Comparison, by: By, hours: HourStyle, words: Words
) -> tuple[str, str]:
    """What moves between two plans, drawn for wide screens and for phones; its tasks lead to lines of the same page."""
    wide, narrow = (
        comparison_svg(before, after, comparison, by=by, width=width, prefix=prefix, hours=hours, words=words)
        for width, prefix in ((WIDE, "wide"), (NARROW, "narrow"))
    )
    return wide, narrow
