"""Colours of the drawings, named for what they stand for: paper, ink, iron, ember, ash.

Nothing is told by colour alone; each kind of task also has a shape and a pattern of its own, so grey paper will do.
"""

from dataclasses import dataclass, fields
from enum import StrEnum


@dataclass(frozen=True, slots=True)
class Palette:
    """One colour a role, as CSS values.

    `paper` is the ground, `ink` text and outlines, `iron` the body of hands-on work with `on_iron` text upon it,
    `ember` heat, `soot` lesser text, `ash` thin lines, `smoke` bands behind the rows.
    """

    paper: str
    ink: str
    iron: str
    on_iron: str
    ember: str
    soot: str
    ash: str
    smoke: str


DAY = Palette(
    paper="#f7f2e8",
    ink="#211e1b",
    iron="#3a3632",
    on_iron="#fdfaf4",
    ember="#b3400d",
    soot="#5a544c",
    ash="#a39b8e",
    smoke="#e6decf",
)
NIGHT = Palette(
    paper="#171513",
    ink="#f0e8db",
    iron="#cfc5b5",
    on_iron="#171513",
    ember="#ff9552",
    soot="#b9afa0",
    ash="#6d665d",
    smoke="#2b2723",
)
GREY = Palette(
    paper="#ffffff",
    ink="#000000",
    iron="#2e2e2e",
    on_iron="#ffffff",
    ember="#000000",
    soot="#3c3c3c",
    ash="#8c8c8c",
    smoke="#e4e4e4",
)


class Scheme(StrEnum):
    """Where colours come from: the page's own CSS variables (falling back to day), or fixed ones."""

    PAGE = "page"
    DAY = "day"
    NIGHT = "night"
    GREY = "grey"


def variable(role: str) -> str:
    """The CSS variable that a page sets for a role, such as ``--drawing-on-iron``."""
    return f"--drawing-{role.replace('_', '-')}"


def _from_page(fallback: Palette) -> Palette:
    roles = (field.name for field in fields(Palette))
    return Palette(**{role: f"var({variable(role)}, {getattr(fallback, role)})" for role in roles})


PALETTES = {Scheme.PAGE: _from_page(DAY), Scheme.DAY: DAY, Scheme.NIGHT: NIGHT, Scheme.GREY: GREY}
