"""Which very piece of gear each task uses: counted gear becomes "12-inch oven B", kept through a whole bake."""

from collections import defaultdict
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import replace
from types import MappingProxyType

from cookout.core.planning.event import Gear, GearKind
from cookout.core.planning.expanded import Expanded
from cookout.core.planning.problem import ResourceId, TaskId
from cookout.core.planning.result import Plan

NAMED_KINDS = frozenset({GearKind.OVEN, GearKind.CHIMNEY, GearKind.TABLE})
"""Gear whose every piece has a name in the plan."""


def name_pieces(expanded: Expanded, plan: Plan) -> dict[TaskId, tuple[str, ...]]:
    """The names of the pieces that each task uses.

    Tasks that hold gear without a gap between them (an oven from cold iron to empty iron) are one occupation and keep
    their piece. Occupations are intervals and pieces are alike, so dealing them out by start always works. Pieces of an
    earlier plan stay with their tasks as far as that leaves enough for all.
    """
    names: dict[TaskId, list[str]] = defaultdict(list)
    for resource, spans in occupations(expanded, plan).items():
        for tasks, dealt in deal(spans, expanded.labels.get(resource, ()), expanded.near_units):
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


Dealt = list[tuple[tuple[TaskId, ...], tuple[str, ...]]]


def deal(
    spans: Sequence[Occupation], labels: Sequence[str], before: Mapping[TaskId, tuple[str, ...]] = MappingProxyType({})
) -> Dealt:
    """Give each occupation pieces that are free throughout: those it had before, else the first free ones by name.

    Where that leaves nothing for some occupation, what stands beside it loses its claim to the pieces it had.
    """
    spans = sorted(spans, key=lambda span: (span[0], span[3]))
    claims = _claims(spans, labels, before)
    while True:
        dealt: Dealt = []
        for place, span in enumerate(spans):
            free = claims.get(place) or _free(spans, dealt, claims, place, labels)
            if len(free) < span[2] and claims:
                break
            dealt.append((span[3], free))
        else:
            return dealt
        _give_up(claims, spans, len(dealt))


def _claims(
    spans: list[Occupation], labels: Sequence[str], before: Mapping[TaskId, tuple[str, ...]]
) -> dict[int, tuple[str, ...]]:
    """By an occupation's place, the pieces that it had before, where nothing earlier claims them for the same time."""
    claims: dict[int, tuple[str, ...]] = {}
    for place, (_, _, amount, tasks) in enumerate(spans):
        had = next((before[task] for task in tasks if task in before), ())
        mine = tuple(label for label in labels if label in had)[:amount]
        others = {label for other, theirs in claims.items() if _meet(spans, place, other) for label in theirs}
        if len(mine) == amount and not others.intersection(mine):
            claims[place] = mine
    return claims


def _free(
    spans: list[Occupation], dealt: Dealt, claims: dict[int, tuple[str, ...]], place: int, labels: Sequence[str]
) -> tuple[str, ...]:
    """The first pieces, as many as wanted, that nothing has or claims at the time of an occupation."""
    taken = {label for other, (_, theirs) in enumerate(dealt) if _meet(spans, place, other) for label in theirs}
    taken |= {label for other, theirs in claims.items() if _meet(spans, place, other) for label in theirs}
    return tuple(label for label in labels if label not in taken)[: spans[place][2]]


def _meet(spans: list[Occupation], one: int, other: int) -> bool:
    return spans[one][0] < spans[other][1] and spans[other][0] < spans[one][1]


def _give_up(claims: dict[int, tuple[str, ...]], spans: list[Occupation], place: int) -> None:
    """Take the latest claim beside an occupation away, or the last of all."""
    beside = [other for other in claims if _meet(spans, place, other)]
    del claims[max(beside or claims)]


def pieces_named(gear: Iterable[Gear], name: str) -> tuple[tuple[Gear, str], ...]:
    """The pieces that a plan calls by that name, as it calls them now, with their gear; none where there is none.

    Where more of a single piece were brought, its plain name is the first one's, and the first one's name is its where
    it is the only one left.
    """
    found = []
    for entry in gear:
        labels = piece_labels(entry, entry.pieces) if entry.kind in NAMED_KINDS and entry.pieces > 0 else []
        names = {label: label for label in labels}
        if labels and not entry.pooled and entry.kind is not GearKind.TABLE:
            names = {entry.name: labels[0], f"{entry.name} A": labels[0], f"{entry.name} 1": labels[0]} | names
        if name in names:
            found.append((entry, names[name]))
    return tuple(found)


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
