"""Nominal times: when each task would stand at the latest if gear and hands were no matter."""

from cookout.core.planning.expand.draft import Draft
from cookout.core.planning.problem import Link, LinkKind, Task, TaskId

# Waits that contradict one another would push times down for ever; the solver finds them, not this pass.
_MOST_SWEEPS = 200


def latest_starts(draft: Draft, closes: int) -> dict[TaskId, int]:
    """The latest start of every task, in minutes, by its own window, its due time and all waits."""
    dues = {due.task: due.at for due in draft.dues}
    starts = {
        task.id: min([closes, *([task.latest] if task.latest is not None else []), dues.get(task.id, closes)])
        - task.minutes
        for task in draft.tasks.values()
    }
    for _ in range(_MOST_SWEEPS):
        if not _sweep(draft, starts):
            break
    return starts


def _sweep(draft: Draft, starts: dict[TaskId, int]) -> bool:
    """Pull every start down to what its links allow; whether any moved. Last links first, as deadlines come last."""
    moved = False
    for link in reversed(draft.links):
        before, after = draft.tasks[link.before], draft.tasks[link.after]
        gap = _gap(link, before, after)
        if link.least is not None and starts[link.after] - gap - link.least < starts[link.before]:
            starts[link.before] = starts[link.after] - gap - link.least
            moved = True
        if link.most is not None and starts[link.before] + gap + link.most < starts[link.after]:
            starts[link.after] = starts[link.before] + gap + link.most
            moved = True
    return moved


def _gap(link: Link, before: Task, after: Task) -> int:
    """Minutes from start to start when the wait between the linked ends is nil."""
    from_end = link.kind in (LinkKind.FINISH_TO_START, LinkKind.FINISH_TO_FINISH)
    to_end = link.kind in (LinkKind.START_TO_FINISH, LinkKind.FINISH_TO_FINISH)
    return (before.minutes if from_end else 0) - (after.minutes if to_end else 0)
