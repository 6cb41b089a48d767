"""How wide words come out, without asking a font: a careful estimate for a plain sans face."""

import unicodedata
from functools import lru_cache

# Widths in em of the broadest common sans faces, rounded up, so that a label that fits here fits on the page.
# Common practice, no source.
_NARROW = frozenset("iljtfrI.,:;'|!()[] ")
_BROAD = frozenset("mwMW@%—…¼½¾⅓⅔")
NARROW_EM, MIDDLE_EM, CAPITAL_EM, BROAD_EM, FULL_EM = 0.41, 0.64, 0.75, 1.0, 1.05


def cells(text: str) -> int:
    """Columns that text takes in a terminal: two for wide letters, none for marks that join the letter before."""
    return sum(_cells_of(letter) for letter in text)


@lru_cache(maxsize=4096)
def _cells_of(letter: str) -> int:
    if unicodedata.combining(letter) or unicodedata.category(letter) in {"Mn", "Me", "Cf", "Cc"}:
        return 0
    return 2 if unicodedata.east_asian_width(letter) in {"W", "F"} else 1


@lru_cache(maxsize=4096)
def _em_of(letter: str) -> float:
    if (columns := _cells_of(letter)) != 1:
        return FULL_EM if columns else 0.0
    if letter in _NARROW:
        return NARROW_EM
    if letter in _BROAD:
        return BROAD_EM
    return CAPITAL_EM if letter.isupper() else MIDDLE_EM


def text_width(text: str, size: float, *, bold: bool = False) -> float:
    """Estimated width in pixels at a type size in pixels."""
    return sum(_em_of(letter) for letter in text) * size * (1.12 if bold else 1.0)


def wrap(text: str, size: float, width: float, *, bold: bool = False) -> tuple[str, ...]:
    """Lines no wider than `width` pixels, broken between words, and inside a word only where it is too wide alone."""
    lines: list[str] = []
    for word in text.split():
        joined = f"{lines[-1]} {word}" if lines else word
        if lines and text_width(joined, size, bold=bold) <= width:
            lines[-1] = joined
        else:
            lines.extend(_pieces(word, size, width, bold=bold))
    return tuple(lines)


def _pieces(word: str, size: float, width: float, *, bold: bool) -> list[str]:
    pieces = [""]
    for letter in word:
        if pieces[-1] and text_width(pieces[-1] + letter, size, bold=bold) > width:
            pieces.append("")
        pieces[-1] += letter
    return pieces


def shortened(text: str, size: float, width: float) -> str:
    """The text cut off with three dots to what fits in `width` pixels; nothing where only the dots would be left."""
    if text_width(text, size) <= width:
        return text
    kept = text
    while kept and text_width(f"{kept.rstrip()}…", size) > width:
        kept = kept[:-1]
    return f"{kept.rstrip(' ,:;')}…" if len(kept) > 2 else ""
