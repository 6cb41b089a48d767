"""Short tasks at an oven in use: turns, the look-in, fresh coals."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from math import ceil

from cookout.core.fire.charcoal import TENDING, firing_times
from cookout.core.fire.chart import CoalCount
from cookout.core.kitchen.recipe import Bake, BakeMethod, Minutes, Recipe, Step
from cookout.core.planning.event import Event
from cookout.core.planning.expand import cautions
from cookout.core.planning.expanded import TaskKind


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
    caution: str
    coals: int = 0


def all_visits(event: Event, recipe: Recipe, step: Step, bake: Bake, count: CoalCount) -> tuple[Visit, ...]:
    """Every visit to an oven with that bake."""
    turns = () if bake.method is BakeMethod.FRY else _turns(TENDING.turn_interval(event.weather), step.minutes.usual)
    look = _look_in(bake, step.minutes, cautions.look_for(recipe.food.value, step.note))
    return (*turns, look, *_top_ups(firing_times(event.fuel.kind).top_up_minutes, bake, step.minutes.usual, count))


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
            cautions.IRON_CAUTION,
        )


def _look_in(bake: Bake, minutes: Minutes, detail: str) -> Visit:
    """The first look-in, done before the least bake time is over."""
    most = minutes.least - TENDING.look_in_minutes
    least = max(0, min(bake.look_in_from, most))
    return Visit(
        "look",
        TaskKind.LOOK_IN,
        "Look in: ",
        TENDING.look_in_minutes,
        (least + most) / 2,
        least,
        most,
        f"looked at from {least} min on, before it could be done at {minutes.least} min",
        detail,
        cautions.STEAM_CAUTION,
    )


def _top_ups(every: int, bake: Bake, usual: int, count: CoalCount) -> Iterator[Visit]:
    """Fresh coals each time that those laid before are half spent, unless the food is nearly out by then.

    Time counts from the coals being laid, so a preheated oven gets its first top-up sooner after the food went in.
    """
    heated = bake.preheat_minutes + TENDING.load_minutes if bake.preheat_minutes > 0 else 0
    lid, under = (ceil(part * TENDING.top_up_share) for part in (count.lid, count.under))
    play = TENDING.top_up_play_minutes
    first = max(every - heated, play + 1)
    for number, wish in enumerate(range(first, usual - TENDING.top_up_least_left, every), start=1):
        yield Visit(
            f"topup{number}",
            TaskKind.TOP_UP,
            "Top up: ",
            TENDING.top_up_work_minutes,
            wish,
            wish - play,
            min(wish + play, usual - TENDING.top_up_work_minutes),
            f"fresh coals about every {every} min",
            cautions.coals_to_add(lid, under),
            cautions.COALS_CAUTION,
            lid + under,
        )
