"""Short tasks that follow one another in a row drawn as one bar: what a look from afar can still tell apart."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from cookout.core.planning.record import PlannedTask
from cookout.drawing.geometry import Span, TimeScale
from cookout.drawing.looks import Look, look_of
from cookout.drawing.rows import Mark

LEAST_BAR = 4.0  # a bout is never drawn shorter
NEAR = 3.0  # pixels between two bars up to which they are drawn as one
SHARE_OF_WIDTH = 30.0  # a bar longer than this part of the axis is a bar of its own
SHORTEST_ALONE, LONGEST_MERGED = 14.0, 34.0  # and limits to that, in pixels


MOSTLY = 0.7  # share of both that two long bars must have in common to be drawn as one
SIDE_BY_SIDE = frozenset({Look.OVEN, Look.WAIT})
"""What is drawn as one bar, with a number, where several go on at the same time."""


@dataclass(frozen=True, slots=True)
class Bout:
    """Marks of one look drawn as one bar; `hot` are the stretches of it that are work at the fire."""

    look: Look
    marks: tuple[Mark, ...]
    span: Span
    hot: tuple[Span, ...]

    @property
    def tasks(self) -> tuple[PlannedTask, ...]:
        """All its tasks, those on the lid of a bake among them."""
        return tuple(task for mark in self.marks for task in (mark.task, *mark.ticks))

    @property
    def texts(self) -> tuple[str, ...]:
        """What may be written by it, longest first: as many of its names as there are, fewer, the shortest of one."""
        names = list(dict.fromkeys(mark.texts[-1] for mark in self.marks if mark.texts))
        if len(self.marks) == 1:
            return self.marks[0].texts
        if self.look in SIDE_BY_SIDE and names:
            return (f"{_common(names)} ×{len(self.marks)}", f"×{len(self.marks)}")
        return tuple(
            ", ".join(names[:count]) + (" …" if count < len(names) else "") for count in range(len(names), 0, -1)
        )


def _common(names: list[str]) -> str:
    """What all say before their last comma, where that is the same; else the first."""
    heads = {name.rpartition(",")[0] for name in names}
    alike = heads.pop() if len(heads) == 1 else ""
    return alike if alike and len(names) > 1 else names[0]


def look_from_afar(task: PlannedTask) -> Look:
    """Work at the fire and elsewhere is the same bar, with teeth where it is at the fire."""
    look = look_of(task)
    return Look.HANDS if look is Look.FIRE else look


def bouts_of(marks: Sequence[Mark], scale: TimeScale) -> list[Bout]:
    """The marks of a row as bouts, in order of their beginnings.

    Short bars are merged with those of the same look that they touch or nearly touch; a long one keeps its own name,
    but for ovens and waits that go on together.
    """
    most = min(LONGEST_MERGED, max(SHORTEST_ALONE, scale.room.length / SHARE_OF_WIDTH))
    groups: list[list[Mark]] = []
    for mark in sorted(marks, key=lambda mark: (mark.task.starts_at, mark.task.ends_at)):
        group = next((group for group in reversed(groups) if _joins(mark, group, scale, most)), None)
        if group is None:
            groups.append([mark])
        else:
            group.append(mark)
    found = [_bout(group, scale) for group in groups]
    return sorted(found, key=lambda bout: (bout.span.begins, bout.span.ends))


def _joins(mark: Mark, group: Sequence[Mark], scale: TimeScale, most: float) -> bool:
    look = look_from_afar(mark.task)
    if look is not look_from_afar(group[0].task):
        return False
    span, first = _span(mark, scale), _span(group[0], scale)
    if look in SIDE_BY_SIDE:
        return _is_mostly_shared(span, first)
    return max(span.length, first.length) <= most and span.begins <= _end(group, scale) + NEAR


def _is_mostly_shared(one: Span, other: Span) -> bool:
    shared = min(one.ends, other.ends) - max(one.begins, other.begins)
    return shared >= MOSTLY * max(one.length, other.length)


def _bout(marks: Sequence[Mark], scale: TimeScale) -> Bout:
    look = look_from_afar(marks[0].task)
    spans = [_span(mark, scale) for mark in marks]
    hot = [span for mark, span in zip(marks, spans, strict=True) if look_of(mark.task) is Look.FIRE]
    whole = Span(min(span.begins for span in spans), max(span.ends for span in spans))
    return Bout(look, tuple(marks), whole, tuple(_joined(hot)))


def _span(mark: Mark, scale: TimeScale) -> Span:
    return scale.span(mark.task.starts_at, mark.task.ends_at, LEAST_BAR)


def _end(marks: Iterable[Mark], scale: TimeScale) -> float:
    return max(_span(mark, scale).ends for mark in marks)


def _joined(spans: Iterable[Span]) -> list[Span]:
    joined: list[Span] = []
    for span in sorted(spans, key=lambda span: span.begins):
        if joined and span.begins <= joined[-1].ends + 1:
            joined[-1] = Span(joined[-1].begins, max(joined[-1].ends, span.ends))
        else:
            joined.append(span)
    return joined
