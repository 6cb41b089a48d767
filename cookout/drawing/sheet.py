"""What every drawing with rows shares: axis, notices, firings, rows below one another, the charred edge, the key."""

from collections.abc import Callable, Iterable, Sequence
from typing import Protocol, TypeVar

from cookout.drawing.backdrop import across_axis, across_notices, backdrop, creases, now_edge, now_veil
from cookout.drawing.fires import across_fires
from cookout.drawing.geometry import Fold, Span, TimeScale
from cookout.drawing.job import Job
from cookout.drawing.key import Sign, key
from cookout.drawing.labels import EDGE, GUTTER
from cookout.drawing.zoom import Window, has_gutter

AXIS = 18.0
AXIS_AGAIN = 620.0  # after so many pixels of rows the hours are written again
NARROW_EDGE = 4.0
KEY_GAP = 12.0


class Band(Protocol):
    """A row laid out: all that the sheet asks is its stretch down the page."""

    @property
    def across(self) -> Span:
        """From its top to its foot."""


RowT = TypeVar("RowT")
BandT = TypeVar("BandT", bound=Band)


def scale_of(job: Job, shown: Window, folds: tuple[Fold, ...] = ()) -> TimeScale:
    """Time across the page, beside the names of the rows or below them."""
    room = Span(GUTTER, job.width - EDGE) if has_gutter(job.width) else Span(NARROW_EDGE, job.width - NARROW_EDGE)
    return TimeScale.fitted(shown.begins, shown.ends, room, folds)


def laid_out(
    job: Job,
    rows: Iterable[RowT],
    scale: TimeScale,
    *,
    hill: float,
    lay: Callable[[RowT, float], BandT],
    draw: Callable[[BandT], str],
    signs: Sequence[Sign],
) -> tuple[str, float]:
    """The drawing's content and its height in pixels.

    `lay` lays a row out from a height on, `draw` draws it; `hill` is the height of a firing, nought for none.
    """
    head, top = across_notices(job, scale)
    fires, below = across_fires(job, scale, top + AXIS, hill) if hill else ("", top + AXIS)
    bands, axes, bottom = _stacked(rows, lay, below)
    plot = Span(top, bottom)
    meanings, height = key(job, bottom + KEY_GAP, signs)
    content = [
        backdrop(job, scale, plot),
        creases(job, scale, plot),
        head,
        *(across_axis(job, scale, y) for y in (top, *axes)),
        now_edge(job, scale, plot),
        fires,
        *(draw(band) for band in bands),
        now_veil(job, scale, plot),
        meanings,
    ]
    return "".join(content), height


def _stacked(
    rows: Iterable[RowT], lay: Callable[[RowT, float], BandT], top: float
) -> tuple[list[BandT], list[float], float]:  # fmt: skip
    """The rows below one another, where the hours are written again, and where it all ends."""
    bands: list[BandT] = []
    axes: list[float] = []
    axis_at = top
    for row in rows:
        if top - axis_at > AXIS_AGAIN:
            axes.append(top)
            axis_at, top = top, top + AXIS
        bands.append(lay(row, top))
        top = bands[-1].across.ends
    return bands, axes, top
