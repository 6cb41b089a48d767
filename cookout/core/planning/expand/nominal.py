"""Nominal times: when each task would stand at the latest if gear and hands were no matter."""

from cookout.core.planning.expand.draft import Draft
from cookout.core.planning.network import Arc, arcs_of
from cookout.core.planning.problem import TaskId

# Waits that contradict one another would push times down for ever; the solver finds them, not this pass.
_MOST_SWEEPS = 200


def latest_starts(draft: Draft, closes: int) -> dict[TaskId, int]:
    """The latest start of every task, in minutes, by its own window, its due time and all waits."""
    ends = {task.id: closes if task.latest is None else min(closes, task.latest) for task in draft.tasks.values()}
    for due in draft.dues:
        ends[due.task] = min(ends[due.task], due.at)
    starts = {task_id: end - draft.tasks[task_id].minutes for task_id, end in ends.items()}
    # Last links first, for deadlines come last.
    arcs = [
        arc
        for link in reversed(draft.links)
        for arc in arcs_of(link, draft.tasks[link.before], draft.tasks[link.after])
    ]
    for _ in range(_MOST_SWEEPS):
        if not _pull_down(arcs, starts):
            break
    return starts


def _pull_down(arcs: list[Arc], starts: dict[TaskId, int]) -> bool:
    """Pull every start down to what the arcs allow; whether any moved."""
    moved = False
    for arc in arcs:
        if starts[arc.head] - arc.minutes < starts[arc.tail]:
            starts[arc.tail] = starts[arc.head] - arc.minutes
            moved = True
    return moved
