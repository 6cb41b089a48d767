"""Where the words of a bar go: in it, after it, before it, or nowhere."""

from collections.abc import Sequence
from dataclasses import dataclass

from cookout.drawing.geometry import Span
from cookout.drawing.lettering import shortened, text_width
from cookout.drawing.style import TYPE

BESIDE = 6.0  # pixels between a bar and the words beside it
INSET = 5.0
LEAST_CUT = 70.0  # in a bar of so many pixels a beginning of its words is worth writing


@dataclass(frozen=True, slots=True)
class Placing:
    """A bar, what it and its words take up, the words and where they begin ("": none)."""

    bar: Span
    footprint: Span
    text: str = ""
    words_from: float = 0.0

    @property
    def inside(self) -> bool:
        """Whether the words stand in the bar."""
        return self.bar.begins < self.words_from < self.bar.ends


def place(
    bar: Span, texts: Sequence[str], room: Span, *, longest: float, may_cut: bool, inside: bool = True
) -> Placing:  # fmt: skip
    """The longest of the texts that fits in the bar; else beside it, after or before, if no longer than `longest`.

    Where none fits whole, the shortest cut off if that may be, else none. `inside` False keeps words out of the bar.
    """
    for text in texts if inside else ():
        if text_width(text, TYPE) + 2 * INSET <= bar.length:
            return Placing(bar, bar, text, bar.begins + INSET)
    for text in texts:
        if text_width(text, TYPE) <= longest and (found := _beside(bar, text, room)):
            return found
    return _cut(bar, texts[-1], room, longest, inside=inside) if may_cut and texts else Placing(bar, bar)


def _beside(bar: Span, text: str, room: Span) -> Placing | None:
    width = text_width(text, TYPE)
    if (ends := bar.ends + BESIDE + width) <= room.ends:
        return Placing(bar, Span(bar.begins, ends), text, bar.ends + BESIDE)
    if (begins := bar.begins - BESIDE - width) >= room.begins:
        return Placing(bar, Span(begins, bar.ends), text, begins)
    return None


def _cut(bar: Span, text: str, room: Span, longest: float, *, inside: bool) -> Placing:
    if inside and bar.length >= LEAST_CUT:
        return Placing(bar, bar, shortened(text, TYPE, bar.length - 2 * INSET), bar.begins + INSET)
    free = max(room.ends - bar.ends, bar.begins - room.begins) - BESIDE
    short = shortened(text, TYPE, min(free, longest))
    return (_beside(bar, short, room) if short else None) or Placing(bar, bar)
