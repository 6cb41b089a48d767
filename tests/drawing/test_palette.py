"""Colours that can be read, by the contrast formula of WCAG 2.2, success criterion 1.4.3 (4.5 to 1 for text)."""

import pytest

from cookout.drawing.palette import DAY, GREY, NIGHT, Palette, variable


def luminance(colour: str) -> float:
    """Relative luminance as WCAG 2.2 defines it."""
    parts = (int(colour[place : place + 2], 16) / 255 for place in (1, 3, 5))
    red, green, blue = (part / 12.92 if part <= 0.04045 else ((part + 0.055) / 1.055) ** 2.4 for part in parts)
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def contrast(one: str, other: str) -> float:
    """Contrast ratio as WCAG 2.2 defines it."""
    dark, light = sorted((luminance(one), luminance(other)))
    return (light + 0.05) / (dark + 0.05)


@pytest.mark.parametrize("palette", [DAY, NIGHT, GREY], ids=["day", "night", "grey"])
def test_text_stands_out_from_what_is_behind_it(palette: Palette) -> None:
    for text, ground in (
        (palette.ink, palette.paper),
        (palette.soot, palette.paper),
        (palette.ink, palette.smoke),
        (palette.on_iron, palette.iron),
    ):
        assert contrast(text, ground) >= 4.5


@pytest.mark.parametrize("palette", [DAY, NIGHT, GREY], ids=["day", "night", "grey"])
def test_shapes_stand_out_from_paper(palette: Palette) -> None:
    # WCAG 2.2, 1.4.11: 3 to 1 for graphics.
    for shape in (palette.iron, palette.ember, palette.soot):
        assert contrast(shape, palette.paper) >= 3


def test_black_on_white_is_21_to_1() -> None:
    # WCAG 2.2, definition of contrast ratio: it ranges from 1 to 21.
    assert contrast("#000000", "#ffffff") == pytest.approx(21)


def test_variables_are_named_for_their_roles() -> None:
    assert variable("on_iron") == "--drawing-on-iron"
