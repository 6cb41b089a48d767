"""Where coals lie on a lid and under an oven, as a picture of the pattern that `fire.patterns` lays."""

from cookout.core.fire.patterns import Ring, lay
from cookout.drawing.markup import letters, tag
from cookout.drawing.palette import PALETTES, Palette, Scheme

COAL_RADIUS_INCHES = 0.68
PICTURE = 210.0  # pixels across one oven in the picture
FACE = "Libertinus Serif"


def oven_picture(lid: int, under: int, inches: int, scheme: Scheme = Scheme.GREY) -> str:
    """The lid and the ground under one oven, seen from above side by side, with their coals and counts, as SVG."""
    colours = PALETTES[scheme]
    name, pattern = f"{lid} coals on the lid, {under} under", lay(lid, under, inches)
    pictures = [
        _disc(pattern.lid, inches, f"{lid} on the lid", 0.0, colours, lid=True),
        _disc(pattern.under, inches, f"{under} under", PICTURE + 20, colours, lid=False),
    ]
    width, height = 2 * PICTURE + 20, PICTURE + 34
    return tag(
        "svg", tag("title", letters(name)), *pictures, xmlns="http://www.w3.org/2000/svg",
        viewBox=f"0 0 {width:.0f} {height:.0f}", width=width, height=height, role="img", aria_label=name,
        font_family=FACE,
    )  # fmt: skip


def _disc(rings: tuple[Ring, ...], inches: int, text: str, left: float, colours: Palette, *, lid: bool) -> str:
    """One circle: solid with a handle for a lid, dashed for the oven's place on the ground."""
    middle, radius = PICTURE / 2, (PICTURE - 8) / 2
    coal = COAL_RADIUS_INCHES * 2 * radius / inches
    dashes = None if lid else "7 5"
    rim = tag(
        "circle", cx=left + middle, cy=middle, r=middle - 3, fill=colours.smoke if lid else colours.paper,
        stroke=colours.ink, stroke_width=3, stroke_dasharray=dashes,
    )  # fmt: skip
    coals = (
        tag("circle", cx=left + middle + x * radius, cy=middle + y * radius, r=coal, fill=colours.ink)
        for ring in rings
        for x, y in ring.places
    )
    label = tag(
        "text", letters(text), x=left + middle, y=PICTURE + 26, font_size=24, fill=colours.ink, text_anchor="middle",
        font_weight="bold",
    )  # fmt: skip
    return tag("g", rim, *coals, label, class_="lid" if lid else "under")
