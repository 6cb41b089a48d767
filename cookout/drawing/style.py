"""How the parts of a drawing look, as classes: a page has them in its stylesheet, a drawing for paper in itself.

A timeline has hundreds of parts of a dozen looks; written out at each part they would be most of its bytes.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType

from cookout.drawing.palette import PALETTES, Palette, Scheme

ROOT = "drawn"
"""The class of every drawing; all looks are told within it."""

TYPE = 11.5
SMALL = 10.0


@dataclass(frozen=True, slots=True)
class Lettering:
    """How words look: size in pixels, the palette's roles for the letters and what keeps them clear of lines."""

    size: float
    fill: str = "ink"
    bold: bool = False
    italic: bool = False
    halo: str = ""
    anchor: str = "start"

    def properties(self) -> dict[str, str]:
        """The same as CSS, with roles in braces."""
        found = {"font-size": f"{self.size:g}px", "fill": f"{{{self.fill}}}"}
        if self.bold:
            found["font-weight"] = "bold"
        if self.italic:
            found["font-style"] = "italic"
        if self.anchor != "start":
            found["text-anchor"] = self.anchor
        if self.halo:
            found |= {"paint-order": "stroke", "stroke": f"{{{self.halo}}}", "stroke-width": "3"}
            found |= {"stroke-linejoin": "round"}
        return found


TEXTS: Mapping[str, Lettering] = MappingProxyType(
    {
        "t": Lettering(TYPE, halo="paper"),
        "t-iron": Lettering(TYPE, "on_iron"),
        "t-pot": Lettering(TYPE, halo="smoke"),
        "t-row": Lettering(TYPE + 0.5, bold=True),
        "t-note": Lettering(SMALL, "soot"),
        "t-hour": Lettering(TYPE, bold=True, halo="paper", anchor="middle"),
        "t-part": Lettering(SMALL, "soot", halo="paper", anchor="middle"),
        "t-side": Lettering(TYPE, bold=True, anchor="end"),
        "t-quarter": Lettering(SMALL, "soot", anchor="end"),
        "t-notice": Lettering(TYPE, bold=True, halo="paper"),
        "t-listed": Lettering(SMALL + 1),
        "t-now": Lettering(SMALL + 1, "paper", bold=True),
        "t-fold": Lettering(SMALL, "soot", italic=True),
        "t-key": Lettering(SMALL + 0.5, "soot"),
        "t-say": Lettering(TYPE + 2),
    }
)

_LINE = {"fill": "none"}
SHAPES: Mapping[str, Mapping[str, str]] = MappingProxyType(
    {
        "iron": {"fill": "{iron}"},
        "teeth": _LINE | {"stroke": "{ember}", "stroke-width": "4", "stroke-dasharray": "2 2"},
        "wait": {"stroke": "{soot}", "stroke-dasharray": "4 2"},
        "pot": {"fill": "{smoke}", "stroke": "{ink}", "stroke-width": "1.4"},
        "lid": _LINE | {"stroke": "{ink}", "stroke-width": "3"},
        "nick": _LINE | {"stroke": "{ink}", "stroke-width": "1.5"},
        "coals": _LINE
        | {"stroke": "{ember}", "stroke-width": "4", "stroke-linecap": "round", "stroke-dasharray": "0 6"},
        "plate": {"fill": "{paper}", "stroke": "{ink}", "stroke-width": "1.6"},
        "load": {"fill": "{ash}", "fill-opacity": ".5", "stroke": "{ink}", "stroke-width": "1.2"},
        "rim": _LINE | {"stroke": "{ink}", "stroke-width": ".8"},
        "dark": {"fill": "{ink}"},
        "clear": {"fill": "transparent"},
        "paper": {"fill": "{paper}"},
        "lifted": {"fill": "{paper}", "stroke": "{ink}", "stroke-width": "1.2"},
        "hook": _LINE | {"stroke": "{ink}", "stroke-width": "2"},
        "coal": {"fill": "{ember}", "stroke": "{ink}", "stroke-width": ".8"},
        "rise": {"stroke": "{ink}"},
        "kindle": {"fill": "transparent", "stroke": "{ink}"},
        "glow": _LINE | {"stroke": "{ember}", "stroke-width": "3"},
        "fade": _LINE | {"stroke": "{ink}", "stroke-dasharray": "3 3"},
        "base": _LINE | {"stroke": "{ink}"},
        "hour": _LINE | {"stroke": "{ash}", "stroke-width": ".9"},
        "part": _LINE | {"stroke": "{ash}", "stroke-width": ".9", "stroke-dasharray": "1 4"},
        "parting": _LINE | {"stroke": "{ash}", "stroke-width": ".8"},
        "head": _LINE | {"stroke": "{ink}", "stroke-width": "2.5"},
        "band": {"fill": "{smoke}", "fill-opacity": ".6"},
        "due": _LINE | {"stroke": "{ink}"},
        "edge": _LINE | {"stroke": "{soot}", "stroke-width": "2", "stroke-dasharray": "0 5", "stroke-linecap": "round"},
        "stem": _LINE | {"stroke": "{soot}"},
        "crease": _LINE | {"stroke": "{soot}", "stroke-width": "1.2", "stroke-dasharray": "10 3 2 3"},
        "veil": {"fill": "{ash}", "fill-opacity": ".22"},
        "charred": _LINE | {"stroke": "{ink}", "stroke-width": "2", "stroke-linejoin": "round"},
        "onward": _LINE | {"stroke": "{ink}", "stroke-width": "1.6", "stroke-linejoin": "round"},
        "pin": {"fill": "{paper}", "stroke": "{ink}", "stroke-width": "1.4"},
        "ghost": {"fill": "{paper}", "stroke": "{ink}", "stroke-width": "1.2", "stroke-dasharray": "2.5 2"},
        "arrow": _LINE | {"stroke": "{ember}", "stroke-width": "2", "stroke-linejoin": "round"},
        "struck": _LINE | {"stroke": "{ink}", "stroke-width": "1.6"},
        "still": _LINE | {"stroke": "{ash}", "stroke-width": "3"},
        "hatching": _LINE | {"stroke": "{ash}", "stroke-width": ".9"},
        "speck": {"fill": "{soot}"},
        "burnt": {"pointer-events": "none"},
    }
)


def rules(palette: Palette) -> str:
    """All looks as CSS rules in one palette, one rule a line."""
    looks = {**SHAPES, **{name: lettering.properties() for name, lettering in TEXTS.items()}}
    roles = {role: getattr(palette, role) for role in Palette.__dataclass_fields__}
    lines = (
        f".{ROOT} .{name}{{{';'.join(f'{key}:{value.format(**roles)}' for key, value in look.items())}}}"
        for name, look in looks.items()
    )
    return "\n".join(lines) + "\n"


def page_rules() -> str:
    """The same for pages, whose colours are CSS variables; the stylesheet of the pages holds exactly this."""
    return rules(PALETTES[Scheme.PAGE])
