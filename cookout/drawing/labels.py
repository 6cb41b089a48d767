"""The names of rows: in the gutter at their left, or above them where the page is too narrow for a gutter."""

from dataclasses import dataclass

from cookout.drawing.geometry import Span
from cookout.drawing.job import Job
from cookout.drawing.lettering import text_width, wrap
from cookout.drawing.markup import letters, tag
from cookout.drawing.shapes import words
from cookout.drawing.style import SMALL, TEXTS
from cookout.drawing.zoom import has_gutter

GUTTER = 150.0  # room for the names at the left
EDGE = 12.0
NAME_LINE, NOTE_LINE = 14.0, 12.0


@dataclass(frozen=True, slots=True)
class Label:
    """A row's name and what is said of it, broken into lines; `key` is the row's, "" for one that is no row.

    `beside` is a label in the gutter; `shares_line` where the note stands behind the name in one line.
    """

    key: str
    name: tuple[str, ...]
    note: tuple[str, ...]
    beside: bool
    shares_line: bool = False

    @property
    def height(self) -> float:
        """Pixels that it needs: at least so high is a row with a gutter, so far above its bars is one without."""
        if self.beside:
            return 10 + NAME_LINE * len(self.name) + NOTE_LINE * len(self.note)
        return 5 + NAME_LINE * len(self.name) + NOTE_LINE * (0 if self.shares_line else len(self.note))

    @property
    def above(self) -> float:
        """Pixels that it takes above the bars of its row."""
        return 0.0 if self.beside else self.height


def label_of(key: str, name: str, note: str, width: float) -> Label:
    """The name laid out for a page of that width."""
    size = TEXTS["t-row"].size
    if has_gutter(width):
        room = GUTTER - 14
        return Label(key, wrap(name, size, room, bold=True), wrap(note, SMALL, room), beside=True)
    lines = wrap(name, size, width - 6, bold=True)
    if len(lines) == 1 and text_width(lines[0], size, bold=True) + 12 + text_width(note, SMALL) <= width - 6:
        return Label(key, lines, (note,) if note else (), beside=False, shares_line=True)
    return Label(key, lines, wrap(note, SMALL, width - 6), beside=False)


def draw_label(label: Label, across: Span, job: Job) -> str:
    """The name and the note under the line that parts the row from the one above, as a link where it leads anywhere."""
    line = job.brush.line("parting", (0, across.begins), (job.width, across.begins))
    y = across.begins + 15
    names, notes = [], []
    for text in label.name:
        names.append(words(text, 2, y, "t-row"))
        y += NAME_LINE
    x = 2.0
    if label.shares_line:
        x, y = 2 + text_width(label.name[0], TEXTS["t-row"].size, bold=True) + 8, y - NAME_LINE + 1
    for text in label.note:
        notes.append(words(text, x, y - 1, "t-note"))
        y += NOTE_LINE
    return line + _link(label, job, *names) + "".join(notes)


def _link(label: Label, job: Job, *names: str) -> str:
    address = job.links.to_row(label.key) if label.key else None
    if address is None:
        return "".join(names)
    said = f"<title>{letters(' '.join(label.name))}</title>"
    return tag("a", said, *names, href=address, class_="go")
