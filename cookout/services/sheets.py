"""Drawings of a plan, all made from its record alone."""

from cookout.core.planning.record import PlannedBake, PlanRecord
from cookout.drawing import Scheme, fire_svg, oven_picture

WIDE = 1180
"""Pixels across: what a page of 1280 leaves beside its margins."""


def fire_drawing(*, record: PlanRecord) -> str:
    """Firings and ovens as SVG, time across the page."""
    return fire_svg(record, width=WIDE, scheme=Scheme.PAGE)


def oven_drawing(*, bake: PlannedBake) -> str:
    """The coals on and under one oven as SVG, with their counts."""
    return oven_picture(bake.lid, bake.under, bake.inches, Scheme.PAGE)
