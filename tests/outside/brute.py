"""The best plan of a tiny problem, found by trying every start and every pick; for up to about five tasks.

Shares no code with solver or check: starts and picks are tried one task after another, and every rule is worked out
here minute by minute.
"""

from collections.abc import Iterator
from itertools import combinations, product

from cookout.core.planning.problem import Aim, Link, LinkKind, Problem, ResourceId, Task, TaskId

Choice = tuple[int, tuple[tuple[ResourceId, ...], ...]]
"""A task's start and its picks, need by need."""

Whole = dict[TaskId, Choice]


def best(problem: Problem) -> tuple[int, ...] | None:
    """The least values of the problem's aims, first aim first; None where no plan keeps the rules."""
    return min(
        (tuple(value(problem, aim, whole) for aim in problem.aims) for whole in every_plan(problem)), default=None
    )


def keeps(problem: Problem, whole: Whole) -> bool:
    """Whether the plan keeps all rules."""
    return all(whole[task.id] in set(_choices(problem, task)) and _fits(problem, whole, task) for task in problem.tasks)


def every_plan(problem: Problem) -> Iterator[Whole]:
    """Every plan that keeps all rules."""
    return _grow(problem, {}, list(problem.tasks))


def _grow(problem: Problem, whole: Whole, rest: list[Task]) -> Iterator[Whole]:
    if not rest:
        yield dict(whole)
        return
    task = rest[0]
    for choice in _choices(problem, task):
        whole[task.id] = choice
        if _fits(problem, whole, task):
            yield from _grow(problem, whole, rest[1:])
        del whole[task.id]


def _choices(problem: Problem, task: Task) -> Iterator[Choice]:
    first = problem.opens if task.earliest is None else max(problem.opens, task.earliest)
    last = problem.closes if task.latest is None else min(problem.closes, task.latest)
    ways = [list(combinations(need.options, need.picks)) for need in task.needs]
    for start in range(first, last - task.minutes + 1):
        for picks in product(*ways):
            yield start, picks


def _fits(problem: Problem, whole: Whole, task: Task) -> bool:
    """Whether the task just added breaks nothing; more tasks never mend what is broken."""
    return (
        all(_link_kept(problem, whole, link) for link in problem.links if task.id in (link.before, link.after))
        and _in_shift(problem, whole[task.id], task)
        and _has_room(problem, whole, task)
        and _kept(problem, whole)
        and _rested(problem, whole)
    )


def _link_kept(problem: Problem, whole: Whole, link: Link) -> bool:
    if link.before not in whole or link.after not in whole:
        return True
    before, after = whole[link.before][0], whole[link.after][0]
    if link.kind.value.startswith("finish"):
        before += problem.task_by_id[link.before].minutes
    if link.kind in (LinkKind.START_TO_FINISH, LinkKind.FINISH_TO_FINISH):
        after += problem.task_by_id[link.after].minutes
    return not (
        (link.least is not None and after < before + link.least)
        or (link.most is not None and after > before + link.most)
    )


def _in_shift(problem: Problem, choice: Choice, task: Task) -> bool:
    resources = [problem.resource_by_id[picked] for picks in choice[1] for picked in picks]
    opens = max((each.opens for each in resources if each.opens is not None), default=choice[0])
    closes = min((each.closes for each in resources if each.closes is not None), default=choice[0] + task.minutes)
    return opens <= choice[0] and choice[0] + task.minutes <= closes


def _has_room(problem: Problem, whole: Whole, added: Task) -> bool:
    start = whole[added.id][0]
    return all(_room_at(problem, whole, minute) for minute in range(start, start + added.minutes))


def _room_at(problem: Problem, whole: Whole, minute: int) -> bool:
    taken: dict[str, int] = {}
    for task_id, (start, picks) in whole.items():
        task = problem.task_by_id[task_id]
        if not start <= minute < start + task.minutes:
            continue
        for need, picked in zip(task.needs, picks, strict=True):
            for resource in picked:
                taken[resource] = taken.get(resource, 0) + need.amount
                helper = problem.resource_by_id[resource].helper
                if helper is not None:
                    taken[f"helper {helper}"] = taken.get(f"helper {helper}", 0) + 1
    room = {resource.id: resource.capacity for resource in problem.resources}
    return all(amount <= room.get(ResourceId(name), 1) for name, amount in taken.items())


def _kept(problem: Problem, whole: Whole) -> bool:
    """Whether tasks whose needs are kept as one have the same picks for them."""
    picks: dict[str, set[frozenset[ResourceId]]] = {}
    for task_id, (_, picked) in whole.items():
        for need, group in zip(problem.task_by_id[task_id].needs, picked, strict=True):
            if need.kept_as:
                picks.setdefault(need.kept_as, set()).add(frozenset(group))
    return all(len(found) == 1 for found in picks.values())


def _rested(problem: Problem, whole: Whole) -> bool:
    return all(
        _longest_stretch(_hot_minutes(problem, whole, rule.helper), rule.break_minutes) <= rule.stretch_minutes
        for rule in problem.breaks
    )


def _hot_minutes(problem: Problem, whole: Whole, helper: str) -> list[int]:
    minutes: set[int] = set()
    for task_id, (start, picks) in whole.items():
        task = problem.task_by_id[task_id]
        owners = {problem.resource_by_id[picked].helper for picked_all in picks for picked in picked_all}
        if task.hot and helper in owners:
            minutes |= set(range(start, start + task.minutes))
    return sorted(minutes)


def _longest_stretch(minutes: list[int], pause: int) -> int:
    longest = since = 0
    for place, minute in enumerate(minutes):
        if place == 0 or minute - minutes[place - 1] - 1 >= pause:
            since = minute
        longest = max(longest, minute + 1 - since)
    return longest


def value(problem: Problem, aim: Aim, whole: Whole) -> int:
    """What a plan costs on an aim, in minutes."""
    ends = {task.id: whole[task.id][0] + task.minutes for task in problem.tasks}
    if aim is Aim.MAKESPAN:
        return max(ends.values(), default=problem.opens) - problem.opens
    if aim is Aim.LATENESS:
        return sum(max(0, ends[due.task] - due.at) for due in problem.dues)
    if aim is Aim.FRESHNESS:
        return sum(_stale(problem, whole, ends))
    if aim is Aim.CREW_DAY:
        return _crew_day(problem, whole)
    return _unfair(problem, whole) if aim is Aim.FAIR_SHARES else _changes(problem, whole)


def _stale(problem: Problem, whole: Whole, ends: dict[TaskId, int]) -> Iterator[int]:
    for rule in problem.freshness:
        until = rule.by if rule.used is None else whole[rule.used][0]
        assert until is not None
        yield max(0, until - ends[rule.made] - rule.free)


def _changes(problem: Problem, whole: Whole) -> int:
    """One for each task that starts elsewhere than before, two for each that others do."""
    count = 0
    for stood in problem.before:
        start, picks = whole[stood.task]
        owners = {problem.resource_by_id[picked].helper for group in picks for picked in group}
        count += 1 if start != stood.start else 0
        count += 2 if owners - {None} != set(stood.helpers) else 0
    return count


def _crew_day(problem: Problem, whole: Whole) -> int:
    persons = {resource.id for resource in problem.resources if resource.helper is not None}
    called = problem.closes
    for task in problem.tasks:
        if any(option in persons for need in task.needs for option in need.options):
            called = min(called, whole[task.id][0])
    idle = 0
    for person in persons:
        busy = _busy_minutes(problem, whole, person)
        idle += max(0, max(busy) + 1 - min(busy) - 2 * len(busy)) if busy else 0
    return problem.closes - called + idle


def _busy_minutes(problem: Problem, whole: Whole, shift: ResourceId) -> set[int]:
    return {
        minute
        for task in problem.tasks
        if any(shift in picks for picks in whole[task.id][1])
        for minute in range(whole[task.id][0], whole[task.id][0] + task.minutes)
    }


def _unfair(problem: Problem, whole: Whole) -> int:
    work: dict[str, int] = {each.helper: 0 for each in problem.resources if each.helper is not None}
    for resource in problem.resources:
        if resource.helper is not None:
            work[resource.helper] += len(_busy_minutes(problem, whole, resource.id))
    if not work:
        return 0
    share, over = divmod(sum(work.values()), len(work))
    share += 1 if over else 0
    return sum(max(0, minutes - share) for minutes in work.values())
