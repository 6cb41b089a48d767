"""The firings of an event as a row of hills, with the tasks that light them."""

from cookout.core.planning.record import PlannedFiring, PlannedTask
from cookout.drawing.geometry import Slab, Span, TimeScale, pack
from cookout.drawing.hills import Heat, draw_firing, draw_kindling, heat_of
from cookout.drawing.job import Job, kindled
from cookout.drawing.labels import draw_label, label_of
from cookout.drawing.lettering import text_width
from cookout.drawing.markup import letters, tag
from cookout.drawing.shapes import rectangle, words
from cookout.drawing.style import TYPE

HILL, HILL_GAP = 26.0, 5.0
SHORT_HILL = 16.0  # height of a hill seen from afar
PAD = 5.0
GAP = 7.0


def across_fires(job: Job, scale: TimeScale, top: float, hill: float = HILL) -> tuple[str, float]:
    """The firings in lanes of their own, and where the next row begins."""
    if not job.record.firings:
        return "", top
    label = label_of("", job.voice.words.coals, job.voice.words.coals_note, job.width)
    hills = top if label.beside else top + label.height - PAD
    heats = [heat_of(firing, scale) for firing in job.record.firings]
    lanes = pack([heat.within(scale.room) for heat in heats], gap=GAP)
    on_hills, drawn = kindled(job), []
    for firing, heat, lane in zip(job.record.firings, heats, lanes, strict=True):
        base = hills + PAD + lane * (hill + HILL_GAP)
        text = _lettering(firing, heat, base + hill / 2 + 5, scale, job)
        tasks = on_hills.get(firing.id, ())
        drawn.append(draw_hill(firing, tasks, Span(base, base + hill), scale, job, text))
    bottom = hills + 2 * PAD + (max(lanes) + 1) * (hill + HILL_GAP)
    bottom = max(bottom, top + label.height)
    return draw_label(label, Span(top, bottom), job) + "".join(drawn), bottom


def draw_hill(
    firing: PlannedFiring, tasks: tuple[PlannedTask, ...], across: Span, scale: TimeScale, job: Job, lettering: str
) -> str:
    """A firing's hill with its lettering, and the tasks that light it as links on its rising side."""
    heat = heat_of(firing, scale)
    title = f"<title>{letters(job.voice.firing_in_full(firing))}</title>"
    hill = tag("g", title, draw_firing(heat, across, scale.room, job.brush), lettering)
    links = []
    for task in tasks:
        slab = Slab(scale.span(task.starts_at, task.ends_at), across)
        kindling = draw_kindling(slab, heat, job.brush, hands_on=task.hands_on)
        links.append(job.linked(task, rectangle(slab, "clear"), kindling))
    return tag("g", hill, *links, class_="firing")


def _lettering(firing: PlannedFiring, heat: Heat, baseline: float, scale: TimeScale, job: Job) -> str:
    """The longest words about a firing that fit on its table."""
    table = Span(heat.ready, heat.fading).within(scale.room)
    count = job.voice.words.coal_count.format(coals=firing.coals)
    texts = (job.voice.firing(firing), count, str(firing.coals))
    fitting = next((text for text in texts if text_width(text, TYPE) + 8 <= table.length), "")
    return words(fitting, table.begins + 4, baseline) if fitting else ""
