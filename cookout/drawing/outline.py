"""The best plan so far in a few strokes, while a better one is looked for."""

from collections.abc import Sequence

from cookout.core.planning.outline import OutlineRow
from cookout.drawing.markup import letters, tag
from cookout.drawing.palette import PALETTES, Scheme

ROW, BAR, NAMES, LEAST_SPAN = 18, 10, 150, 60
HEIGHTS = {"work": BAR, "heat": BAR, "wait": 2}


def outline_svg(rows: Sequence[OutlineRow], *, width: int, title: str, whole: str, scheme: Scheme = Scheme.PAGE) -> str:
    """Rows of bars as SVG, `width` pixels across: solid for work, outlined for ovens over coals, a thin line for waits.

    `title` is what a screen reader says; `whole` names the row of tasks that belong to no dish.
    """
    bars = [bar for row in rows for bar in row.bars]
    if not bars:
        return ""
    first, last = min(bar.start for bar in bars), max(bar.end for bar in bars)
    across = (width - NAMES - 4) / max(last - first, LEAST_SPAN)
    drawn = [_row(row, place, first, across, whole, scheme) for place, row in enumerate(rows)]
    height = ROW * len(rows) + 4
    return tag(
        "svg",
        tag("title", letters(title)),
        *drawn,
        xmlns="http://www.w3.org/2000/svg",
        viewBox=f"0 0 {width} {height}",
        role="img",
        class_="outline",
    )


def _row(row: OutlineRow, place: int, first: int, across: float, whole: str, scheme: Scheme) -> str:
    middle = ROW * place + ROW / 2 + 2
    colours = PALETTES[scheme]
    name = row.name or whole
    shown = name if len(name) <= 22 else name[:21].rstrip() + "…"
    words = tag("text", letters(shown), x=0, y=middle + 4, fill=colours.ink, font_size=12, font_family="inherit")
    bars = [
        tag(
            "rect",
            x=NAMES + (bar.start - first) * across,
            y=middle - HEIGHTS[bar.kind] / 2,
            width=max(1.5, (bar.end - bar.start) * across),
            height=HEIGHTS[bar.kind],
            fill="none" if bar.kind == "heat" else colours.soot if bar.kind == "wait" else colours.iron,
            stroke=colours.ember if bar.kind == "heat" else None,
            stroke_width=2 if bar.kind == "heat" else None,
        )
        for bar in row.bars
    ]
    return words + "".join(bars)
