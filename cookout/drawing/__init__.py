"""Pictures of a plan as SVG text, made from the plan record alone: no clock, no fonts, no files."""

from cookout.drawing.before_after import comparison_svg
from cookout.drawing.coals import oven_picture
from cookout.drawing.palette import Scheme
from cookout.drawing.timeline import fire_svg, timeline_svg
from cookout.drawing.words import Links, Words
from cookout.drawing.zoom import Window, Zoom

__all__ = [
    "Links",
    "Scheme",
    "Window",
    "Words",
    "Zoom",
    "comparison_svg",
    "fire_svg",
    "oven_picture",
    "timeline_svg",
]
