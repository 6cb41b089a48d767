"""Which coals are lit together: every lot of coals that a bake wants comes from a firing, shared where that works."""

from collections.abc import Iterable
from dataclasses import dataclass
from math import ceil

from cookout.core.fire.charcoal import TENDING, firing_times
from cookout.core.kitchen.recipe import FIRE_SKILL
from cookout.core.planning.expand import cautions
from cookout.core.planning.expand.bakes import BakeDraft
from cookout.core.planning.expand.draft import Draft
from cookout.core.planning.expand.gear import Busy, Chimneys, Hold, Kit
from cookout.core.planning.expanded import Firing, FiringId, TaskInfo, TaskKind
from cookout.core.planning.problem import Need, ResourceId, TaskId


@dataclass(frozen=True, slots=True)
class Wanted:
    """A lot of `coals` for a lay-coals or top-up task, nominally `at` a minute.

    `group` names the serving or slot for which the bake is; `pieces` are the oven and spot it takes.
    """

    task: TaskId
    coals: int
    at: int
    group: str
    pieces: tuple[Need, ...]
    label: str


@dataclass(frozen=True, slots=True)
class Sharing:
    """What bounds a shared firing: room in the chimneys, pieces of gear, hands to lay coals before they fade."""

    share: bool
    chimney_coals: int
    capacity: dict[ResourceId, int]
    most_lots: int

    def groups(self, lots: Iterable[Wanted]) -> list[list[Wanted]]:
        """Lots that may share a firing, in the order of their times; each by itself where sharing is off."""
        open_groups: dict[str, list[Wanted]] = {}
        groups: list[list[Wanted]] = []
        for lot in sorted(lots, key=lambda lot: lot.at):
            group = open_groups.get(lot.group)
            if group is not None and self._fits(group, lot):
                group.append(lot)
            else:
                open_groups[lot.group] = [lot]
                groups.append(open_groups[lot.group])
        return groups

    def _fits(self, group: list[Wanted], lot: Wanted) -> bool:
        lots = [*group, lot]
        return (
            self.share
            and lot.at - group[0].at <= TENDING.share_minutes
            and len(lots) <= self.most_lots
            and sum(each.coals for each in lots) <= self.chimney_coals
            and self._has_pieces(lots)
        )

    def _has_pieces(self, lots: list[Wanted]) -> bool:
        """Whether all their ovens can stand at once."""
        used: dict[ResourceId, int] = {}
        for need in (need for lot in lots for need in lot.pieces):
            for piece in need.options:
                used[piece] = used.get(piece, 0) + need.amount
        return all(amount <= self.capacity[piece] for piece, amount in used.items())


class Fire:
    """Adds firings to the draft and counts them."""

    def __init__(self, draft: Draft, kit: Kit, fire_tenders: int, *, share: bool) -> None:
        self._draft = draft
        self._kit = kit
        self._chimneys = kit.chimneys
        self._coals_at_once = kit.chimney_coals
        self._busy = Busy(kit.capacity)
        self._times = firing_times(draft.event.fuel.kind)
        most = max(1, fire_tenders) * (self._times.window_minutes // TENDING.lay_minutes)
        self._sharing = Sharing(share, kit.chimney_coals, kit.capacity, most)
        self._next = 1

    def feed(self, bakes: list[BakeDraft], pieces: list[tuple[Need, ...]], starts: dict[TaskId, int]) -> list[Firing]:
        """Add every firing that the bakes want; top-ups share where their bakes do and they fall together."""
        lays = [
            Wanted(bake.run.lays, bake.coals, starts[bake.run.lays], _group(self._draft, bake), gear, bake.label)
            for bake, gear in zip(bakes, pieces, strict=True)
        ]
        bake_of = {bake.run.lays: bake for bake in bakes}
        lots = self._sharing.groups(lays)
        for number, group in enumerate(list(lots)):
            lots += self._sharing.groups(_top_ups([bake_of[lot.task] for lot in group], starts, number))
        lots.sort(key=lambda group: group[0].at)
        return [firing for group in lots for firing in self._light(group)]

    def _light(self, lots: list[Wanted]) -> list[Firing]:
        """One firing, or as many as the chimneys force one big lot into."""
        coals = sum(lot.coals for lot in lots)
        parts = max(1, ceil(coals / self._coals_at_once)) if self._coals_at_once else 1
        if parts > 1:
            self._draft.warn(
                lots[0].label,
                f"It wants {coals} coals at once and all chimneys together light {self._coals_at_once}.",
                "Bring more or larger chimneys, or bake in a smaller oven.",
            )
        share, rest = divmod(coals, parts)
        return [self._fire(lots, part, share + (1 if part < rest else 0)) for part in range(parts)]

    def _fire(self, lots: list[Wanted], part: int, coals: int) -> Firing:
        name, title = _firing_id(lots, part), f"firing {self._next}"
        self._next += 1
        ready = lots[0].at
        chimneys = self._take_chimneys(name, coals, ready - self._times.ash_over_minutes, ready)
        lights, ashes = self._tasks(name, title, _light_detail(lots, coals), chimneys)
        for lot in lots:
            most = self._times.window_minutes
            self._draft.link(ashes, lot.task, 0, most, why=f"coals are at their best for {most} min once ashed over")
        count = sum(need.amount for need in chimneys)
        return Firing(name, lights, ashes, tuple(lot.task for lot in lots), coals, count, self._times.window_minutes)

    def _tasks(self, name: FiringId, title: str, detail: str, chimneys: tuple[Need, ...]) -> tuple[TaskId, TaskId]:
        lights = self._draft.add(_light_info(name, title, detail), self._times.light_minutes)
        ashes = self._draft.add(_ash_info(name, title), self._times.ashing_minutes)
        for task in (lights, ashes):
            self._draft.need(task, *chimneys)
        self._draft.link(lights, ashes, 0, 0, why="coals ash over from the moment they are lit")
        return lights, ashes

    def _take_chimneys(self, name: FiringId, coals: int, start: int, end: int) -> tuple[Need, ...]:
        """Chimneys of one kind where that is enough, else several kinds from the largest on; pinned ones first."""
        if not self._chimneys:
            return (Need(()),)
        lights, ashes = _task_ids(name)
        pinned = self._draft.pinning.settle_chimneys(lights, (lights, ashes), coals, self._kit)
        if pinned is not None:
            return (self._busy.take(pinned, start, end),)
        enough = [kind for kind in self._chimneys if kind.all_coals >= coals]
        if enough:
            fewest = min(ceil(coals / kind.coals) for kind in enough)
            alike = tuple(kind.resource for kind in enough if ceil(coals / kind.coals) == fewest)
            return (self._busy.take(Hold(alike, fewest), start, end),)
        return tuple(self._busy.take(hold, start, end) for hold in _gathered(self._chimneys, coals))


def _firing_id(lots: list[Wanted], part: int) -> FiringId:
    """An id that stays when other firings come, go or change their order: by the first, by name, of what is fed."""
    return FiringId(f"coals.{min(lot.task for lot in lots)}{f'.{part + 1}' if part else ''}")


def _task_ids(name: FiringId) -> tuple[TaskId, TaskId]:
    """The ids of the tasks that light it and let it ash over."""
    return TaskId(f"{name}.light"), TaskId(f"{name}.ash")


def _light_detail(lots: list[Wanted], coals: int) -> str:
    return f"{coals} coals, for: {'; '.join(lot.label for lot in lots)}."


def _gathered(chimneys: tuple[Chimneys, ...], coals: int) -> Iterable[Hold]:
    for kind in sorted(chimneys, key=lambda kind: -kind.all_coals):
        if coals > 0:
            count = min(kind.count, ceil(coals / kind.coals))
            coals -= count * kind.coals
            yield Hold((kind.resource,), count)


def _group(draft: Draft, bake: BakeDraft) -> str:
    """The serving or slot for which a bake is; only bakes for the same one share a fire."""
    dish = draft.event.dish(bake.run.dish)
    if dish.serving is not None:
        return f"serving {dish.serving}"
    slots = [slot.id for slot in draft.event.slots if dish.id in slot.dishes]
    return f"slot {slots[0]}" if slots else f"dish {dish.id}"


def _top_ups(bakes: list[BakeDraft], starts: dict[TaskId, int], group: int) -> Iterable[Wanted]:
    for bake in bakes:
        for number, (task, coals) in enumerate(bake.run.top_ups, start=1):
            yield Wanted(task, coals, starts[task], f"top-up {number} of group {group}", (), bake.label)


def _light_info(name: FiringId, title: str, detail: str) -> TaskInfo:
    return TaskInfo(
        _task_ids(name)[0],
        f"Light {title}",
        TaskKind.LIGHT,
        hands=1,
        skills=frozenset({FIRE_SKILL}),
        hot=True,
        detail=detail,
    )


def _ash_info(name: FiringId, title: str) -> TaskInfo:
    return TaskInfo(
        _task_ids(name)[1],
        f"Coals of {title} ash over",
        TaskKind.ASH_OVER,
        detail=cautions.ASH_OVER,
    )
