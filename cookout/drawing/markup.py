"""SVG as text: elements, attributes and safe letters.

A page may forbid inline styles, so no style attribute is ever written; looks are classes, see `style`.
"""

import re
from collections.abc import Sequence
from xml.sax.saxutils import escape

_NOT_XML = re.compile("[^\t\n\r\x20-\ud7ff\ue000-\ufffd\U00010000-\U0010ffff]")

Attribute = str | float | int | None


def letters(text: str) -> str:
    """Text made safe between tags and in attributes; characters that XML cannot carry become a question mark."""
    return escape(_NOT_XML.sub("?", text), {'"': "&quot;", "'": "&#39;"})


def number(value: float) -> str:
    """A coordinate with at most one decimal, and no nought that could be left out."""
    return _tenths(round(value * 10))


def _tenths(tenths: int) -> str:
    whole, part = divmod(abs(tenths), 10)
    sign = "-" if tenths < 0 else ""
    if not part:
        return f"{sign}{whole}"
    return f"{sign}{whole}.{part}" if whole else f"{sign}.{part}"


def _attribute(name: str, value: str | float) -> str:
    shown = letters(value) if isinstance(value, str) else number(value)
    return f' {name.rstrip("_").replace("_", "-")}="{shown}"'


def tag(name: str, *children: str, **attributes: Attribute) -> str:
    """An element; `children` are markup already, attributes are escaped here and left out where None."""
    listed = "".join(_attribute(key, value) for key, value in attributes.items() if value is not None)
    inner = "".join(children)
    return f"<{name}{listed}>{inner}</{name}>" if inner else f"<{name}{listed}/>"


def path(points: Sequence[tuple[float, float]], *, closed: bool = True) -> str:
    """Path data through the points, in pixels, as short as it can be written: steps from point to point."""
    (x, y), *others = [(round(x * 10), round(y * 10)) for x, y in points]
    steps = [f"M{_pair(x, y)}"]
    for next_x, next_y in others:
        steps.append(_step(next_x - x, next_y - y))
        x, y = next_x, next_y
    return "".join(steps) + ("z" if closed else "")


def _step(dx: int, dy: int) -> str:
    if not dy:
        return f"h{_tenths(dx)}"
    return f"l{_pair(dx, dy)}" if dx else f"v{_tenths(dy)}"


def _pair(x: int, y: int) -> str:
    second = _tenths(y)
    return f"{_tenths(x)}{'' if second.startswith('-') else ' '}{second}"
