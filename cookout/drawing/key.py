"""The key under a timeline: each shape once, with what it means."""

from cookout.drawing.backdrop import notice_sign
from cookout.drawing.geometry import Slab, Span, across_page
from cookout.drawing.lettering import text_width
from cookout.drawing.looks import Look, TickLook
from cookout.drawing.markup import tag
from cookout.drawing.parts import SMALL, Job
from cookout.drawing.shapes import Brush, Heat, charred_edge, draw, draw_firing, draw_lamp, draw_tick, words

LINE = 26.0
SIGN = 34.0


def key(job: Job, top: float) -> tuple[str, float]:
    """The key from `top` on, in as many lines as the width asks for, and where it ends."""
    brush = Brush(job.brush.colours, across_page, job.brush.prefix)
    x, y, drawn = 2.0, top, []
    for text, sign in _signs(job, brush):
        width = SIGN + 6 + text_width(text, SMALL + 0.5) + 14
        if x > 2.0 and x + width > job.width:
            x, y = 2.0, y + LINE
        label = words(text, SIGN + 6, 16, size=SMALL + 0.5, fill=job.brush.colours.soot)
        drawn.append(tag("g", sign, label, transform=f"translate({x:.1f} {y:.1f})"))
        x += width
    return tag("g", *drawn, class_="key", aria_hidden="true"), y + LINE + 4


def _signs(job: Job, brush: Brush) -> list[tuple[str, str]]:
    slab = Slab(Span(2, SIGN), Span(5, 20))
    oven = Slab(Span(3, SIGN - 1), Span(9, 22))
    found = [
        ("hands-on", draw(Look.HANDS, slab, brush)),
        ("hands-on at the fire", draw(Look.FIRE, slab, brush)),
        ("waiting", draw(Look.WAIT, slab, brush)),
        ("oven on coals", draw(Look.OVEN, oven, brush)),
        ("turn", draw_tick(TickLook.TURN, 18, 18, brush)),
        ("look in", draw_tick(TickLook.LOOK_IN, 18, 18, brush)),
        ("top-up", draw_tick(TickLook.TOP_UP, 18, 16, brush)),
        ("on the table", draw(Look.PLATE, slab, brush)),
        ("before the audience", draw(Look.HANDS, slab, brush) + draw_lamp(slab, brush)),
        ("coals lighting, ashed over, fading", draw_firing(Heat(2, 10, 24, SIGN), Span(5, 21), brush)),
        ("serving", notice_sign(18, 12, job, is_slot=False)),
        ("demo slot", notice_sign(18, 12, job, is_slot=True)),
    ]
    if job.now is not None:
        found.append(("the day so far", charred_edge(18, Span(2, 22), brush)))
    return found
