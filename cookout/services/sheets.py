"""Drawings of a plan, all made from its record alone."""

from cookout.core.planning.record import PlannedBake, PlanRecord
from cookout.core.planning.wording import HourStyle
from cookout.drawing import Scheme, Words, fire_svg, oven_picture

WIDE, NARROW = 1180, 366
"""Pixels across: what a page of 1280 leaves beside its margins, and what a phone of 390 does."""


def fire_drawings(*, record: PlanRecord, hours: HourStyle, words: Words) -> tuple[str, str]:
    """Firings and ovens as SVG, time across the page, for wide screens and for phones."""
    wide, narrow = (
        fire_svg(record, width=width, scheme=Scheme.PAGE, prefix=prefix, hours=hours, words=words)
        for width, prefix in ((WIDE, "wide"), (NARROW, "narrow"))
    )
    return wide, narrow


def oven_drawing(*, bake: PlannedBake) -> str:
    """The coals on and under one oven as SVG, with their counts."""
    return oven_picture(bake.lid, bake.under, bake.inches, Scheme.PAGE)
