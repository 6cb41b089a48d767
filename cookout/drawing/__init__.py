"""Pictures of a plan as SVG text, made from the plan record alone: no clock, no fonts, no files."""

from cookout.drawing.coals import oven_picture
from cookout.drawing.palette import Scheme
from cookout.drawing.timeline import fire_svg, timeline_svg

__all__ = ["Scheme", "fire_svg", "oven_picture", "timeline_svg"]
