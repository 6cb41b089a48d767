"""Questions that tests of expansion ask of what was made."""

from cookout.core.planning.expanded import Expanded, TaskInfo, TaskKind
from cookout.core.planning.problem import Link, LinkKind, Need, Task, TaskId


def ids(made: Expanded, *kinds: TaskKind) -> list[str]:
    """The ids of all tasks, or of those kinds, in their order."""
    return [task.id for task in made.problem.tasks if not kinds or made.info[task.id].kind in kinds]


def task(made: Expanded, task_id: str) -> Task:
    """The task of that id."""
    return made.problem.task_by_id[TaskId(task_id)]


def info(made: Expanded, task_id: str) -> TaskInfo:
    """What the task of that id means."""
    return made.info[TaskId(task_id)]


def link(made: Expanded, before: str, after: str, kind: LinkKind = LinkKind.FINISH_TO_START) -> Link:
    """The one link between two tasks."""
    (found,) = (each for each in made.problem.links if (each.before, each.after, each.kind) == (before, after, kind))
    return found


def waits(made: Expanded, before: str, after: str) -> tuple[int | None, int | None]:
    """Least and most minutes from the end of one task to the start of the other."""
    found = link(made, before, after)
    return found.least, found.most


def after_bake_began(made: Expanded, bake: str, visit: str) -> tuple[int | None, int | None]:
    """Least and most minutes from the start of a bake to the start of a visit."""
    found = link(made, bake, visit, LinkKind.START_TO_START)
    return found.least, found.most


def linked(made: Expanded, before: str) -> set[str]:
    """The tasks that wait for the end of that one."""
    return {
        each.after for each in made.problem.links if each.before == before and each.kind is LinkKind.FINISH_TO_START
    }


def hands(made: Expanded, task_id: str) -> list[set[str]]:
    """For each need of helpers, the helpers who could do it."""
    return [_helpers(made, need) for need in task(made, task_id).needs if need not in gear_needs(made, task_id)]


def gear_needs(made: Expanded, task_id: str) -> list[Need]:
    """The needs of gear: all after those of helpers, of which an unattended task has none."""
    needs = task(made, task_id).needs
    asked = info(made, task_id)
    if asked.hands == 0:
        return list(needs)
    live = asked.live_in is not None and asked.hands > 1
    return list(needs[2 if live else 1 :])


def gear(made: Expanded, task_id: str) -> list[tuple[list[str], int]]:
    """For each need of gear, the gear that would do and how much of it."""
    return [([made.gear_of[option] for option in need.options], need.amount) for need in gear_needs(made, task_id)]


def _helpers(made: Expanded, need: Need) -> set[str]:
    return {made.problem.resource_by_id[option].helper or "" for option in need.options}
