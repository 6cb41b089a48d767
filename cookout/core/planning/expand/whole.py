"""Expansion as a whole: its parts in the order in which they need one another."""

from collections.abc import Mapping

from cookout.core.planning.event import DishId, Event
from cookout.core.planning.expand.bakes import BakeDraft
from cookout.core.planning.expand.copies import Made
from cookout.core.planning.expand.crew import Crew
from cookout.core.planning.expand.demos import show_live, stand_ready, wanted_steps
from cookout.core.planning.expand.dishes import make_dish
from cookout.core.planning.expand.doubts import note_all
from cookout.core.planning.expand.draft import Draft
from cookout.core.planning.expand.firings import Fire
from cookout.core.planning.expand.gear import Busy, Kit, pooled
from cookout.core.planning.expand.hours import day
from cookout.core.planning.expand.nominal import latest_starts
from cookout.core.planning.expand.servings import serve
from cookout.core.planning.expand.site import drown, set_up
from cookout.core.planning.expanded import Expanded
from cookout.core.planning.problem import EVENT_AIMS, Need, Problem, Task, TaskId


def expand(event: Event, *, share_firings: bool = True, expected: Mapping[TaskId, int] | None = None) -> Expanded:
    """Make the scheduling problem of an event; minutes of the problem are minutes of the event.

    `share_firings` False lights a firing for every bake and top-up by itself. `expected` gives starts of an earlier
    plan, so that bakes and coolings are reckoned for the weather of their hour; without it the hour is guessed. Gear or
    skills that nobody has leave a need without options, for the search for obstacles to name. Raises `KeyError` where
    the event names a dish, recipe, step, serving or helper that it does not have.
    """
    event = pooled(event)
    draft, kit, crew = Draft(event, expected or {}), Kit(event), Crew(event)
    made, bakes = _make_dishes(draft, kit)
    serves = serve(draft, list(made.values()))
    show_live(draft, made)
    ready = stand_ready(draft, made)
    starts = latest_starts(draft, day(event)[1])
    pieces = _settle_pieces(draft, kit, bakes, starts)
    firings = Fire(draft, kit, crew.fire_tenders, share=share_firings).feed(bakes, pieces, starts)
    set_up(draft, firings)
    drown(draft, bakes)
    note_all(draft, kit, bakes, firings)
    return Expanded(
        event, _problem(draft, kit, crew), draft.info, tuple(firings), tuple(bake.run for bake in bakes),
        serves, ready, kit.gear_of, tuple(draft.warnings), draft.weather_of, frozenset(draft.on_ice),
    )  # fmt: skip


def _make_dishes(draft: Draft, kit: Kit) -> tuple[dict[DishId, Made], list[BakeDraft]]:
    made: dict[DishId, Made] = {}
    bakes: list[BakeDraft] = []
    for dish in draft.event.dishes:
        steps = wanted_steps(draft.event, dish)
        if not steps:
            draft.warn(dish.id, "It is neither served nor shown.", "Give it a serving or a part in a demo slot.")
        made[dish.id], its_bakes = make_dish(draft, kit, dish, steps)
        bakes += its_bakes
    return made, bakes


def _settle_pieces(draft: Draft, kit: Kit, bakes: list[BakeDraft], starts: dict[TaskId, int]) -> list[tuple[Need, ...]]:
    """Give each bake its very oven, spot and other gear; the largest ovens choose first, as fewest spots take them."""
    busy = Busy(kit.capacity)
    pieces: dict[TaskId, tuple[Need, ...]] = {}
    for bake in sorted(bakes, key=lambda bake: (-bake.run.inches, starts[bake.run.holds[0]])):
        first, last = bake.run.holds[0], bake.run.takes_out
        end = starts[last] + draft.tasks[last].minutes
        pieces[bake.run.lays] = tuple(busy.take(hold, starts[first], end) for hold in bake.wants)
        for task in bake.run.holds:
            draft.need(task, *pieces[bake.run.lays])
    return [pieces[bake.run.lays] for bake in bakes]


def _problem(draft: Draft, kit: Kit, crew: Crew) -> Problem:
    opens, closes = day(draft.event)
    return Problem(
        tuple(_with_hands(draft, crew, task) for task in draft.tasks.values()),
        tuple(draft.links),
        kit.resources + crew.resources,
        opens,
        closes,
        EVENT_AIMS,
        tuple(draft.dues),
        tuple(draft.freshness),
        crew.breaks,
    )


def _with_hands(draft: Draft, crew: Crew, task: Task) -> Task:
    """The task with the hands it asks for, before its gear."""
    needs = crew.needs(draft.info[task.id], task) + task.needs
    return Task(task.id, task.minutes, needs, task.earliest, task.latest, task.hot)
