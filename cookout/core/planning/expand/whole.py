"""Expansion as a whole: its parts in the order in which they need one another."""

from collections.abc import Mapping
from dataclasses import replace

from cookout.core.planning.event import DishId, Event
from cookout.core.planning.expand.apart import Apart, take_apart
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
from cookout.core.planning.expand.pinned_hands import pinned_hands
from cookout.core.planning.expand.servings import serve
from cookout.core.planning.expand.site import drown, set_up
from cookout.core.planning.expanded import Expanded, Firing
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
    holders = _holders(bakes, firings)
    pinning = draft.pinning
    pinning.refuse_unused(draft.tasks, holders)
    apart = take_apart(kit, pinning.taken)
    problem = _blocked(_problem(draft, apart, crew, holders), {t for fault in pinning.faults for t in fault.tasks})
    warnings = (*draft.warnings, *pinning.warnings({task: info.name for task, info in draft.info.items()}))
    return Expanded(
        event, problem, draft.info, tuple(firings), tuple(bake.run for bake in bakes),
        serves, ready, apart.gear_of, warnings, draft.weather_of, frozenset(draft.on_ice),
        share_firings, draft.expected, apart.labels, pinning.parts(draft.tasks), tuple(pinning.faults),
    )  # fmt: skip


def _holders(bakes: list[BakeDraft], firings: list[Firing]) -> dict[TaskId, TaskId]:
    """For each task that holds an oven or chimneys, the bake or the lighting that holds it with others."""
    held = {task: bake.run.bakes for bake in bakes for task in bake.run.holds}
    return held | {task: firing.lights for firing in firings for task in (firing.lights, firing.ashes)}


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
        wants = draft.pinning.settle(bake.run.bakes, bake.run.holds, bake.wants, kit)
        pieces[bake.run.lays] = tuple(busy.take(hold, starts[first], end) for hold in wants)
        for task in bake.run.holds:
            draft.need(task, *pieces[bake.run.lays])
    return [pieces[bake.run.lays] for bake in bakes]


def _problem(draft: Draft, apart: Apart, crew: Crew, holders: Mapping[TaskId, TaskId]) -> Problem:
    opens, closes = day(draft.event)
    return Problem(
        tuple(_with_hands(draft, apart, crew, task, holders.get(task.id, task.id)) for task in draft.tasks.values()),
        tuple(draft.links),
        apart.resources + crew.resources,
        opens,
        closes,
        EVENT_AIMS,
        tuple(draft.dues),
        tuple(draft.freshness),
        crew.breaks,
    )


def _blocked(problem: Problem, tasks: set[TaskId]) -> Problem:
    """The problem with nobody and nothing that could do some tasks, for their pins cannot be kept."""
    if not tasks:
        return problem
    stuck = (replace(task, needs=(*task.needs, Need(()))) if task.id in tasks else task for task in problem.tasks)
    return replace(problem, tasks=tuple(stuck))


def _with_hands(draft: Draft, apart: Apart, crew: Crew, task: Task, holder: TaskId) -> Task:
    """The task with the hands it asks for, before its gear, pinned pieces apart."""
    geared = apart.task(task, holder, draft.pinning.taken.get(holder, ()))
    hands = pinned_hands(crew, draft.pinning, draft.info[task.id], task)
    return replace(geared, needs=hands + geared.needs)
