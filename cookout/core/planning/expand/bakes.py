"""A bake as tasks: coals laid, oven heated, food in, the bake itself with its visits, food out."""

from collections.abc import Iterable
from dataclasses import dataclass
from itertools import pairwise

from cookout.core.fire.charcoal import TENDING
from cookout.core.fire.chart import CoalCount
from cookout.core.kitchen.recipe import FIRE_SKILL, Bake, Step
from cookout.core.planning.expand import cautions
from cookout.core.planning.expand.copies import Copy, Order, Span, copy_id
from cookout.core.planning.expand.draft import Draft
from cookout.core.planning.expand.gear import Hold, Kit
from cookout.core.planning.expand.visits import BakeHeat, Visit, all_visits, heated, settled
from cookout.core.planning.expanded import BakeRun, TaskInfo, TaskKind
from cookout.core.planning.heat import Baking, baking_for, coals_for, top_ups_for
from cookout.core.planning.problem import LinkKind, TaskId

_COAL_WORK = frozenset({TaskKind.LAY_COALS, TaskKind.TOP_UP})


@dataclass(frozen=True, slots=True)
class BakeOrder:
    """One oven's worth of a step that bakes."""

    order: Order
    step: Step
    bake: Bake
    copy: Copy

    @property
    def id(self) -> TaskId:
        """The id of the bake itself."""
        return copy_id(self.order.dish.id, self.step.id, self.copy)

    @property
    def label(self) -> str:
        """The step and its copy in words."""
        return self.step.name + self.order.amount.label(self.copy)


@dataclass(frozen=True, slots=True)
class BakeDraft:
    """A bake whose very oven and spot (`wants`) and whose firings are not settled yet."""

    run: BakeRun
    label: str
    wants: tuple[Hold, ...]

    @property
    def coals(self) -> int:
        """Coals to lay at the start."""
        return self.run.lid + self.run.under


def make_bake(draft: Draft, kit: Kit, wanted: BakeOrder) -> tuple[Span, BakeDraft]:
    """Add the tasks of one bake. With preheating the coals come first, without it food and coals go on together."""
    event, bake = draft.event, wanted.bake
    weather = draft.weather_for(wanted.id, wanted.order.dish.id)
    count = coals_for(event, bake, weather)
    baking = baking_for(event, bake, wanted.step.minutes, weather, count)
    _warn_of_heat(draft, wanted, baking, count)
    parts = _Parts(draft, wanted, count, baking)
    before, loads, lays = _begin(parts)
    holds = (*before, parts.stay(), parts.take_out())
    for earlier, later in pairwise(holds):
        draft.link(earlier, later, 0, 0, why="the oven is kept at work without a pause")
    bakes, out = holds[-2:]
    fresh = top_ups_for(event, bake, weather, count, baking.minutes.usual + heated(bake))
    visits = _add_visits(
        parts, bakes, all_visits(event, wanted.order.recipe, wanted.step, BakeHeat(bake, baking, weather, fresh))
    )
    top_ups = tuple((task, visit.coals) for task, visit in visits if visit.coals)
    run = BakeRun(
        wanted.order.dish.id, lays, loads, bakes, out, holds, bake.oven_inches, bake.temperature_c,
        count.lid, count.under, count.least, count.most, baking.minutes, baking.modelled, top_ups,
    )  # fmt: skip
    tasks = (*holds, *(task for task, _ in visits))
    span = Span(wanted.step, wanted.copy, tasks, loads, out, tasks[holds.index(loads) :])
    return span, BakeDraft(run, wanted.label, _wants(kit, wanted.step, bake))


def _warn_of_heat(draft: Draft, wanted: BakeOrder, baking: Baking, count: CoalCount) -> None:
    if baking.never:
        heat = cautions.heat(wanted.bake.temperature_c, draft.event.units)
        text = f"{wanted.step.name}: {count.total} coals for about {heat} would not bring it to its centre temperature."
        remedy = "Ask for a hotter oven, or shelter it from the wind."
        draft.warn(wanted.order.dish.id, text, remedy, wanted.step.id, count.total)


def _wants(kit: Kit, step: Step, bake: Bake) -> tuple[Hold, ...]:
    spot = (kit.spots(bake.oven_inches),) if kit.has_tables else ()
    trivets = int(bake.trivet) + int(bake.stand)
    trivet = (kit.trivets(trivets),) if trivets else ()
    return (kit.ovens(bake.oven_inches), *spot, *trivet, *kit.holds(step.gear))


def _begin(parts: "_Parts") -> tuple[tuple[TaskId, ...], TaskId, TaskId]:
    """The tasks before the bake in order, and which of them load the food and lay the coals."""
    if parts.wanted.bake.preheat_minutes > 0:
        lays, heats, loads = parts.lay(), parts.preheat(), parts.load()
        return (lays, heats, loads), loads, lays
    loads, lays = parts.load(), parts.lay()
    return (loads, lays), loads, lays


def _add_visits(parts: "_Parts", bakes: TaskId, visits: Iterable[Visit]) -> list[tuple[TaskId, Visit]]:
    """Add turns, look-in and top-ups in their order, each done before the next begins."""
    added: list[tuple[TaskId, Visit]] = []
    for visit, waits in settled(visits):
        task = parts.add(visit.part, visit.kind, visit.verb, visit.minutes, 1, visit.detail)
        parts.draft.link(bakes, task, visit.least, visit.most, kind=LinkKind.START_TO_START, why=visit.why)
        if waits:
            parts.draft.link(added[-1][0], task, why="one thing at a time at an oven")
        added.append((task, visit))
    return added


@dataclass(frozen=True, slots=True)
class _Parts:
    """Adds the parts of one bake. Hands-on parts are hot; coals want the fire skill, food the step's own skills."""

    draft: Draft
    wanted: BakeOrder
    count: CoalCount
    baking: Baking

    def lay(self) -> TaskId:
        """Lay the coals."""
        detail = f"{cautions.coals_to_lay(self.count)} For {self._heat()}."
        return self.add("lay", TaskKind.LAY_COALS, "Lay coals: ", TENDING.lay_minutes, 1, detail)

    def preheat(self) -> TaskId:
        """Let the empty oven heat."""
        minutes, detail = self.wanted.bake.preheat_minutes, f"To {self._heat()}."
        return self.add("preheat", TaskKind.PREHEAT, "Preheat: ", minutes, 0, detail)

    def load(self) -> TaskId:
        """Put the food in."""
        detail = "On a trivet." if self.wanted.bake.trivet else ""
        minutes, hands = TENDING.load_minutes, max(1, self.wanted.step.hands)
        return self.add("load", TaskKind.LOAD, "Load: ", minutes, hands, detail)

    def stay(self) -> TaskId:
        """The bake itself, unattended."""
        minutes = self.baking.minutes
        by = " (reckoned for this weather)" if self.baking.modelled else ""
        detail = f"At {self._heat()}, {minutes.least} to {minutes.most} min{by}."
        return self.add("", TaskKind.BAKE, "", minutes.usual, 0, detail)

    def take_out(self) -> TaskId:
        """Take the food out."""
        detail = cautions.look_for(self.draft.event, self.wanted.order.recipe.food.value, "")
        minutes, hands = TENDING.take_out_minutes, max(1, self.wanted.step.hands)
        return self.add("out", TaskKind.TAKE_OUT, "Take out: ", minutes, hands, detail)

    def add(self, part: str, kind: TaskKind, verb: str, minutes: int, hands: int, detail: str) -> TaskId:
        """Add a part; an empty `part` is the bake itself and bears the step's own id."""
        step, dish = self.wanted.step, self.wanted.order.dish.id
        own_id = self.wanted.id
        skills = frozenset({FIRE_SKILL}) if kind in _COAL_WORK else step.skills
        info = TaskInfo(
            TaskId(f"{own_id}.{part}") if part else own_id,
            f"{verb}{self.wanted.label}",
            kind,
            dish,
            step.id,
            hands=hands,
            skills=skills if hands else frozenset(),
            hot=hands > 0,
            detail=detail,
        )
        return self.draft.add(info, minutes)

    def _heat(self) -> str:
        return f"about {cautions.heat(self.wanted.bake.temperature_c, self.draft.event.units)}"
