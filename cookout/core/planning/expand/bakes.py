"""A bake as tasks: coals laid, oven heated, food in, turns, look-in and top-ups while it bakes, food out."""

from collections.abc import Iterator
from dataclasses import dataclass
from math import ceil

from cookout.core.fire.charcoal import TENDING, firing_times
from cookout.core.fire.chart import CoalCount, coal_count
from cookout.core.kitchen.recipe import FIRE_SKILL, Bake, BakeMethod, Recipe, Step
from cookout.core.planning.event import Dish
from cookout.core.planning.expand import cautions
from cookout.core.planning.expand.copies import Copy, Span, Yield, copy_id
from cookout.core.planning.expand.draft import Draft
from cookout.core.planning.expand.gear import Hold, Kit
from cookout.core.planning.expanded import BakeRun, TaskInfo, TaskKind
from cookout.core.planning.problem import LinkKind, TaskId


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


@dataclass(frozen=True, slots=True)
class _Visit:
    """A short task at an oven in use: from `least` to `most` minutes after the bake began, wished for at `wish`."""

    info: TaskInfo
    minutes: int
    wish: float
    least: int
    most: int
    why: str
    coals: int = 0


@dataclass(frozen=True, slots=True)
class _Maker:
    """Everything about one bake that its tasks need to know."""

    draft: Draft
    dish: Dish
    recipe: Recipe
    step: Step
    bake: Bake
    copy: Copy
    label: str
    count: CoalCount

    def info(self, part: str, kind: TaskKind, verb: str, hands: int, detail: str = "", caution: str = "") -> TaskInfo:
        """The meaning of one part of the bake; hands-on parts are hot work, coals want the fire skill alone."""
        coals = kind in (TaskKind.LAY_COALS, TaskKind.TOP_UP)
        skills = frozenset({FIRE_SKILL}) if coals else self.step.skills
        return TaskInfo(
            TaskId(f"{copy_id(self.dish.id, self.step.id, self.copy)}.{part}" if part else self._own_id()),
            f"{verb}{self.step.name}{self.label}",
            kind,
            self.dish.id,
            self.step.id,
            hands=hands,
            skills=skills if hands else frozenset(),
            hot=hands > 0,
            detail=detail,
            caution=caution,
        )

    def _own_id(self) -> TaskId:
        return copy_id(self.dish.id, self.step.id, self.copy)

    def lay(self) -> TaskId:
        """Lay the coals."""
        detail = f"{cautions.coals_to_lay(self.count)} For {self._heat()}."
        info = self.info("lay", TaskKind.LAY_COALS, "Lay coals: ", 1, detail, cautions.COALS_CAUTION)
        return self.draft.add(info, TENDING.lay_minutes)

    def preheat(self) -> TaskId:
        """Let the empty oven heat."""
        info = self.info("preheat", TaskKind.PREHEAT, "Preheat: ", 0, f"To {self._heat()}.", cautions.ASH_OVER_CAUTION)
        return self.draft.add(info, self.bake.preheat_minutes)

    def load(self) -> TaskId:
        """Put the food in."""
        trivet = "On a trivet." if self.bake.trivet else ""
        info = self.info("load", TaskKind.LOAD, "Load: ", max(1, self.step.hands), trivet, cautions.IRON_CAUTION)
        return self.draft.add(info, TENDING.load_minutes)

    def stay(self) -> TaskId:
        """The bake itself, unattended."""
        minutes = self.step.minutes
        detail = f"{self._heat()}, {minutes.least} to {minutes.most} min."
        return self.draft.add(self.info("", TaskKind.BAKE, "", 0, detail), minutes.usual)

    def take_out(self) -> TaskId:
        """Take the food out."""
        detail = cautions.look_for(self.recipe.food.value, "")
        info = self.info(
            "out", TaskKind.TAKE_OUT, "Take out: ", max(1, self.step.hands), detail, cautions.STEAM_CAUTION
        )
        return self.draft.add(info, TENDING.take_out_minutes)

    def _heat(self) -> str:
        return f"about {cautions.heat(self.bake.temperature_c, self.draft.event.units)}"


def make_bake(
    draft: Draft, kit: Kit, dish: Dish, recipe: Recipe, step: Step, copy: Copy, amount: Yield
) -> tuple[Span, BakeDraft]:
    """Add the tasks of one bake. With preheating the coals come first, without it food and coals go on together."""
    bake = _bake_of(step)
    count = coal_count(bake.oven_inches, bake.temperature_c, bake.method.value, draft.event.weather)
    maker = _Maker(draft, dish, recipe, step, bake, copy, amount.label(copy), count)
    if bake.preheat_minutes > 0:
        lay, preheat, load = maker.lay(), maker.preheat(), maker.load()
        holds = [lay, preheat, load]
    else:
        load, lay = maker.load(), maker.lay()
        holds = [load, lay]
    stay = maker.stay()
    visits = _add_visits(maker, stay)
    out = maker.take_out()
    holds += [stay, out]
    for before, after in zip(holds, holds[1:], strict=False):
        draft.link(before, after, 0, 0, why="the oven is kept at work without a pause")
    run = BakeRun(
        dish.id, lay, load, stay, out, tuple(holds), bake.oven_inches, bake.temperature_c,
        count.lid, count.under, count.least, count.most,
        tuple((task, visit.coals) for task, visit in visits if visit.coals),
    )  # fmt: skip
    before_show = (lay, holds[1]) if bake.preheat_minutes > 0 else ()
    tasks = (*holds, *(task for task, _ in visits))
    shown = tuple(task for task in tasks if task not in before_show)
    label = f"{step.name}{maker.label}"
    return Span(step, copy, tasks, load, out, shown), BakeDraft(run, label, _wants(kit, step, bake))


def _bake_of(step: Step) -> Bake:
    if step.bake is None:
        raise ValueError(f"step {step.id} is no bake")
    return step.bake


def _wants(kit: Kit, step: Step, bake: Bake) -> tuple[Hold, ...]:
    spot = (kit.spots(bake.oven_inches),) if kit.has_tables else ()
    trivet = (kit.trivets(),) if bake.trivet else ()
    return (kit.ovens(bake.oven_inches), *spot, *trivet, *(kit.hold(use) for use in step.gear))


def _add_visits(maker: _Maker, stay: TaskId) -> list[tuple[TaskId, _Visit]]:
    """Add turns, look-in and top-ups in the order of their wished times, each done before the next begins."""
    visits = sorted([*_turns(maker), *_look_in(maker), *_top_ups(maker)], key=lambda visit: visit.wish)
    added: list[tuple[TaskId, _Visit]] = []
    free_from = 0
    for visit in visits:
        task = maker.draft.add(visit.info, visit.minutes)
        maker.draft.link(stay, task, visit.least, visit.most, kind=LinkKind.START_TO_START, why=visit.why)
        if added and free_from <= visit.most:
            maker.draft.link(added[-1][0], task, why="one thing at a time at an oven")
        free_from = max(free_from if free_from <= visit.most else 0, visit.least) + visit.minutes
        added.append((task, visit))
    return added


def _turns(maker: _Maker) -> Iterator[_Visit]:
    """Turns every so often, none within half an interval of the end. An oven that fries has no coals on its lid."""
    if maker.bake.method is BakeMethod.FRY:
        return
    interval = TENDING.turn_interval(maker.draft.event.weather)
    usual = maker.step.minutes.usual
    for number, wish in enumerate(range(interval, usual - interval // 2 + 1, interval), start=1):
        info = maker.info(f"turn{number}", TaskKind.TURN, "Turn: ", 1, cautions.TURN, cautions.IRON_CAUTION)
        latest = min(wish + TENDING.turn_play_minutes, usual - TENDING.turn_minutes)
        why = f"turned about every {interval} min, or one side browns more"
        yield _Visit(info, TENDING.turn_minutes, wish, wish - TENDING.turn_play_minutes, latest, why)


def _look_in(maker: _Maker) -> Iterator[_Visit]:
    minutes = maker.step.minutes
    least = min(maker.bake.look_in_from, minutes.least - 1)
    most = max(least, minutes.least - TENDING.look_in_minutes)
    detail = cautions.look_for(maker.recipe.food.value, maker.step.note)
    info = maker.info("look", TaskKind.LOOK_IN, "Look in: ", 1, detail, cautions.STEAM_CAUTION)
    why = f"looked at from {least} min on and before it could be done at {minutes.least}"
    yield _Visit(info, TENDING.look_in_minutes, (least + most) / 2, max(0, least), most, why)


def _top_ups(maker: _Maker) -> Iterator[_Visit]:
    """Fresh coals each time that those laid before are half spent, unless the food is nearly out by then.

    Time counts from the coals being laid, so a preheated oven gets its first top-up sooner after the food went in.
    """
    every = firing_times(maker.draft.event.fuel.kind).top_up_minutes
    usual, play = maker.step.minutes.usual, TENDING.top_up_play_minutes
    under_coals = maker.bake.preheat_minutes + TENDING.load_minutes if maker.bake.preheat_minutes > 0 else 0
    lid, under = (ceil(part * TENDING.top_up_share) for part in (maker.count.lid, maker.count.under))
    number, wish = 1, every - under_coals
    while usual - wish > TENDING.top_up_least_left:
        if wish >= play + 1:
            detail = cautions.coals_to_add(lid, under)
            info = maker.info(f"topup{number}", TaskKind.TOP_UP, "Top up: ", 1, detail, cautions.COALS_CAUTION)
            latest = min(wish + play, usual - TENDING.top_up_work_minutes)
            why = f"fresh coals about every {every} min"
            yield _Visit(info, TENDING.top_up_work_minutes, wish, wish - play, latest, why, lid + under)
            number += 1
        wish += every
