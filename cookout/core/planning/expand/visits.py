"""Short tasks at an oven in use: turns, the look-in, fresh coals."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from cookout.core.fire.charcoal import TENDING
from cookout.core.fire.coals import TOP_UPS, TopUp
from cookout.core.fire.weather import Weather
from cookout.core.kitchen.recipe import Bake, BakeMethod, Recipe, Step
from cookout.core.planning.event import Event
from cookout.core.planning.expand import cautions
from cookout.core.planning.expanded import TaskKind
from cookout.core.planning.heat import Baking


@dataclass(frozen=True, slots=True)
class Visit:
    """A visit of `minutes` that starts `least` to `most` minutes after the bake began, best at `wish`.

    `coals` is how many fresh coals it brings.
    """

    part: str
    kind: TaskKind
    verb: str
    minutes: int
    wish: float
    least: int
    most: int
    why: str
    detail: str
    coals: int = 0


@dataclass(frozen=True, slots=True)
class BakeHeat:
    """A bake with its minutes, its weather, and the `fresh` coals on the way, counted from laying the first ones."""

    bake: Bake
    baking: Baking
    weather: Weather
    fresh: tuple[TopUp, ...]


def all_visits(event: Event, recipe: Recipe, step: Step, heat: BakeHeat) -> tuple[Visit, ...]:
    """Every visit to an oven with that bake."""
    usual = heat.baking.minutes.usual
    turns = () if heat.bake.method is BakeMethod.FRY else _turns(TENDING.turn_interval(heat.weather), usual)
    look = _look_in(heat.baking, cautions.look_for(event, recipe.food.value, step.note))
    return (*turns, look, *_top_ups(heat.fresh, heated(heat.bake), usual))


def heated(bake: Bake) -> int:
    """Minutes that the coals have burnt when the food is in, beyond the moment of laying them."""
    return bake.preheat_minutes + TENDING.load_minutes if bake.preheat_minutes > 0 else 0


def settled(visits: Iterable[Visit]) -> Iterator[tuple[Visit, bool]]:
    """Visits in the order of their wishes, and whether each can wait for the one before to be over."""
    free_from: int | None = None
    for visit in sorted(visits, key=lambda visit: visit.wish):
        waits = free_from is not None and free_from <= visit.most
        start = max(visit.least, free_from or 0) if waits else visit.least
        yield visit, waits
        free_from = start + visit.minutes


def _turns(interval: int, usual: int) -> Iterator[Visit]:
    """Turns every so often, none within half an interval of the end (a pot that fries has no lid coals to turn)."""
    for number, wish in enumerate(range(interval, usual - interval // 2 + 1, interval), start=1):
        yield Visit(
            f"turn{number}",
            TaskKind.TURN,
            "Turn: ",
            TENDING.turn_minutes,
            wish,
            wish - TENDING.turn_play_minutes,
            min(wish + TENDING.turn_play_minutes, usual - TENDING.turn_minutes),
            f"turned about every {interval} min, or one side browns more",
            cautions.TURN,
        )


def _look_in(baking: Baking, detail: str) -> Visit:
    """The first look-in, done before the least bake time is over."""
    most = max(0, baking.minutes.least - TENDING.look_in_minutes)
    least = max(0, min(baking.look_in_from, most))
    return Visit(
        "look",
        TaskKind.LOOK_IN,
        "Look in: ",
        TENDING.look_in_minutes,
        (least + most) / 2,
        least,
        most,
        f"looked at from {least} min on, before it could be done at {baking.minutes.least} min",
        detail,
    )


def _top_ups(fresh: tuple[TopUp, ...], before: int, usual: int) -> Iterator[Visit]:
    """Fresh coals when those laid before are spent; a preheated oven gets its first sooner after the food went in."""
    play = TENDING.top_up_play_minutes
    lots = [lot for lot in _gathered(fresh, before + play + 1) if lot.at_minute - before < usual - TOP_UPS.least_left]
    for number, lot in enumerate(lots, start=1):
        wish = lot.at_minute - before
        yield Visit(
            f"topup{number}",
            TaskKind.TOP_UP,
            "Top up: ",
            TENDING.top_up_work_minutes,
            wish,
            wish - play,
            min(wish + play, usual - TENDING.top_up_work_minutes),
            f"fresh coals {lot.at_minute} min after the first were laid",
            cautions.coals_to_add(lot.lid, lot.under),
            lot.total,
        )


def _gathered(fresh: tuple[TopUp, ...], first: int) -> tuple[TopUp, ...]:
    """The lots with those that would come before minute `first` put together at that minute."""
    early = [lot for lot in fresh if lot.at_minute < first]
    if not early:
        return fresh
    lid, under = sum(lot.lid for lot in early), sum(lot.under for lot in early)
    return (TopUp(early[-1].lit_minute, first, lid, under), *fresh[len(early) :])
