"""SVG as text: elements, attributes and safe letters.

Only presentation attributes are written, no style element or attribute, so that a page may forbid inline styles.
"""

import re
from urllib.parse import quote
from xml.sax.saxutils import escape

_NOT_XML = re.compile("[^\t\n\r\x20-\ud7ff\ue000-\ufffd\U00010000-\U0010ffff]")

Attribute = str | float | int | None


def letters(text: str) -> str:
    """Text made safe between tags and in attributes; characters that XML cannot carry become a question mark."""
    return escape(_NOT_XML.sub("?", text), {'"': "&quot;", "'": "&#39;"})


def number(value: float) -> str:
    """A coordinate with at most one decimal."""
    return f"{value:.1f}".removesuffix(".0")


def _attribute(name: str, value: str | float) -> str:
    shown = letters(value) if isinstance(value, str) else number(value)
    return f' {name.rstrip("_").replace("_", "-")}="{shown}"'


def tag(name: str, *children: str, **attributes: Attribute) -> str:
    """An element; `children` are markup already, attributes are escaped here and left out where None."""
    listed = "".join(_attribute(key, value) for key, value in attributes.items() if value is not None)
    inner = "".join(children)
    return f"<{name}{listed}>{inner}</{name}>" if inner else f"<{name}{listed}/>"


def task_address(task_id: str) -> str:
    """The place on the page where a task stands."""
    return "#task-" + quote(task_id, safe="-._~:@!$*+,;=/")


def path(points: list[tuple[float, float]], *, closed: bool = True) -> str:
    """Path data through the points, in pixels."""
    steps = " L".join(f"{number(x)} {number(y)}" for x, y in points)
    return f"M{steps}Z" if closed else f"M{steps}"
