"""Which very piece of gear each task uses: counted gear becomes "12-inch oven B", kept through a whole bake."""

from collections import defaultdict
from dataclasses import replace

from cookout.core.planning.event import Gear, GearKind
from cookout.core.planning.expanded import Expanded
from cookout.core.planning.problem import ResourceId, TaskId
from cookout.core.planning.result import Plan

NAMED_KINDS = frozenset({GearKind.OVEN, GearKind.CHIMNEY, GearKind.TABLE})


def name_pieces(expanded: Expanded, plan: Plan) -> dict[TaskId, tuple[str, ...]]:
    """The names of the pieces that each task uses.

    Tasks that hold gear without a gap between them (an oven from cold iron to empty iron) are one occupation and keep
    their piece. Occupations are intervals and pieces are alike, so dealing them out by start always works.
    """
    gear = {g.id: g for g in expanded.event.gear}
    names: dict[TaskId, list[str]] = defaultdict(list)
    for resource, spans in occupations(expanded, plan).items():
        piece = gear[expanded.gear_of[resource]]
        if piece.kind in NAMED_KINDS:
            labels = piece_labels(piece, expanded.problem.resource_by_id[resource].capacity)
            for tasks, dealt in deal(spans, labels):
                for task in tasks:
                    names[task].extend(dealt)
    return {task: tuple(found) for task, found in names.items()}


Occupation = tuple[int, int, int, tuple[TaskId, ...]]


def occupations(expanded: Expanded, plan: Plan) -> dict[ResourceId, list[Occupation]]:
    """For each counted gear (start, end, amount, tasks) of each time that it is held."""
    group_of = {task: run.bakes for run in expanded.bake_runs for task in run.holds}
    group_of |= {task: firing.lights for firing in expanded.firings for task in (firing.lights, firing.ashes)}
    held: dict[tuple[ResourceId, TaskId], list[tuple[TaskId, int, int, int]]] = defaultdict(list)
    for task in expanded.problem.tasks:
        for need, group in zip(task.needs, plan.placed[task.id].picks, strict=True):
            for resource in group:
                if resource in expanded.gear_of:
                    key = (resource, group_of.get(task.id, task.id))
                    held[key].append((task.id, plan.start(task.id), plan.end(task), need.amount))
    found: dict[ResourceId, list[Occupation]] = defaultdict(list)
    for (resource, _), uses in held.items():
        start, end = min(u[1] for u in uses), max(u[2] for u in uses)
        found[resource].append((start, end, max(u[3] for u in uses), tuple(u[0] for u in uses)))
    return found


def deal(spans: list[Occupation], labels: list[str]) -> list[tuple[tuple[TaskId, ...], list[str]]]:
    """Give each occupation pieces that are free throughout, the first free ones by name."""
    free_from = dict.fromkeys(labels, -(10**9))
    dealt = []
    for start, end, amount, tasks in sorted(spans, key=lambda span: (span[0], span[3])):
        free = [label for label, minute in free_from.items() if minute <= start][:amount]
        for label in free:
            free_from[label] = end
        dealt.append((tasks, free))
    return dealt


def piece_labels(gear: Gear, count: int) -> list[str]:
    """Names for the pieces: the gear's own where there is one, with a letter for ovens and a number for the rest."""
    if gear.pooled:
        entries = [replace(gear, name=name, count=entry, pooled=()) for name, entry in gear.pooled]
        return [label for entry in entries for label in piece_labels(entry, entry.pieces)]
    if gear.kind is GearKind.TABLE:
        return [f"{gear.name}, spot {i + 1}" for i in range(count)]
    if count == 1:
        return [gear.name]
    if gear.kind is GearKind.OVEN and count <= 26:
        return [f"{gear.name} {chr(65 + i)}" for i in range(count)]
    return [f"{gear.name} {i + 1}" for i in range(count)]
