"""From a plan that is still being worked on to its outline."""

from cookout.core.planning.event import DishId, Event
from cookout.core.planning.expanded import Expanded, TaskKind
from cookout.core.planning.outline import Bar, OutlineRow
from cookout.core.planning.result import Plan

WAITING = frozenset({TaskKind.REST, TaskKind.ASH_OVER, TaskKind.PREHEAT, TaskKind.COOL})


def outline_of(expanded: Expanded, plan: Plan) -> tuple[OutlineRow, ...]:
    """The outline of a plan, a row a dish in the order of their first task."""
    rows: dict[DishId | None, list[Bar]] = {}
    for task in expanded.problem.tasks:
        info = expanded.info[task.id]
        start = plan.placed[task.id].start
        rows.setdefault(info.dish, []).append(Bar(start, start + task.minutes, _kind(info.kind)))
    drawn = [OutlineRow(_name(expanded.event, dish), _joined(bars)) for dish, bars in rows.items()]
    return tuple(sorted(drawn, key=lambda row: (row.bars[0].start, row.name)))


def _name(event: Event, dish: DishId | None) -> str:
    return "" if dish is None else event.recipe(event.dish(dish).recipe).name


def _kind(kind: TaskKind) -> str:
    return "heat" if kind is TaskKind.BAKE else "wait" if kind in WAITING else "work"


def _joined(bars: list[Bar]) -> tuple[Bar, ...]:
    joined: list[Bar] = []
    for bar in sorted(bars, key=lambda each: (each.kind, each.start)):
        last = joined[-1] if joined else None
        if last is not None and last.kind == bar.kind and bar.start <= last.end:
            joined[-1] = Bar(last.start, max(last.end, bar.end), bar.kind)
        else:
            joined.append(bar)
    return tuple(sorted(joined, key=lambda each: (each.start, each.end)))
