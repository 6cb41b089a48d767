"""The key under a timeline: each shape once, with what it means."""

from collections.abc import Iterable

from cookout.drawing.backdrop import notice_sign
from cookout.drawing.geometry import Slab, Span
from cookout.drawing.hills import Heat, draw_firing
from cookout.drawing.job import Job
from cookout.drawing.lettering import text_width
from cookout.drawing.looks import Look, TickLook
from cookout.drawing.markup import number, tag
from cookout.drawing.shapes import Brush, charred_edge, draw, draw_lamp, draw_nicks, draw_pin, draw_tick, words
from cookout.drawing.style import TEXTS

LINE = 26.0
SIGN = 34.0
ROOM = Span(0, SIGN)

Sign = tuple[str, str]
"""What a sign means, and the sign."""


def key(job: Job, top: float, signs: Iterable[Sign]) -> tuple[str, float]:
    """The key from `top` on, in as many lines as the width asks for, and where it ends."""
    x, y, drawn = 2.0, top, []
    for text, sign in signs:
        width = SIGN + 6 + text_width(text, TEXTS["t-key"].size) + 14
        if x > 2.0 and x + width > job.width:
            x, y = 2.0, y + LINE
        label = words(text, SIGN + 6, 16, "t-key")
        drawn.append(tag("g", sign, label, transform=f"translate({number(x)} {number(y)})"))
        x += width
    return tag("g", *drawn, class_="key", aria_hidden="true"), y + LINE + 4


def signs_of(job: Job, *, afar: bool = False) -> list[Sign]:
    """The signs of a timeline; from afar turns, look-ins and top-ups are all the same stroke."""
    brush, words_ = job.brush, job.voice.words
    slab = Slab(Span(2, SIGN), Span(5, 20))
    oven = Slab(Span(3, SIGN - 1), Span(9, 22))
    found = [
        (words_.key_hands, draw(Look.HANDS, slab, brush)),
        (words_.key_fire, draw(Look.FIRE, slab, brush)),
        (words_.key_wait, draw(Look.WAIT, slab, brush)),
        (words_.key_oven, draw(Look.OVEN, oven, brush)),
        *(_lid_signs_afar(job, oven, brush) if afar else _lid_signs(job, brush)),
        (words_.key_table, draw(Look.PLATE, slab, brush)),
    ]
    if afar and job.by == "gear":
        found.append((words_.key_in_use, _load_sign(brush)))
    if any(task.live_in for task in job.record.tasks):
        found.append((words_.key_live, draw(Look.HANDS, slab, brush) + draw_lamp(slab, brush)))
    if any(task.pinned for task in job.record.tasks):
        found.append((words_.key_pinned, draw(Look.HANDS, slab, brush) + draw_pin(slab, brush)))
    return found + _signs_of_day(job, brush)


def _lid_signs(job: Job, brush: Brush) -> list[Sign]:
    words_ = job.voice.words
    return [
        (words_.key_turn, draw_tick(TickLook.TURN, 18, 18, brush)),
        (words_.key_look_in, draw_tick(TickLook.LOOK_IN, 18, 18, brush)),
        (words_.key_top_up, draw_tick(TickLook.TOP_UP, 18, 16, brush)),
    ]


def _lid_signs_afar(job: Job, oven: Slab, brush: Brush) -> list[Sign]:
    nicks = draw_nicks((10, 18, 26), oven.across.begins, brush)
    return [(job.voice.words.key_on_lid, draw(Look.OVEN, oven, brush) + nicks)]


def _load_sign(brush: Brush) -> str:
    steps = [(2, 20), (2, 15), (10, 15), (10, 8), (20, 8), (20, 12), (SIGN, 12), (SIGN, 20)]
    return brush.shape(steps, "load") + brush.line("part", (2, 5), (SIGN, 5))


def _signs_of_day(job: Job, brush: Brush) -> list[Sign]:
    words_, found = job.voice.words, []
    if job.record.firings:
        found.append((words_.key_firing, draw_firing(Heat(2, 10, 24, SIGN), Span(5, 21), ROOM, brush)))
    if job.record.servings:
        found.append((words_.key_serving, notice_sign(18, 12, is_slot=False)))
    if job.record.slots:
        found.append((words_.key_slot, notice_sign(18, 12, is_slot=True)))
    if job.now is not None:
        found.append((words_.key_now, charred_edge(18, Span(2, 22), brush)))
    return found
