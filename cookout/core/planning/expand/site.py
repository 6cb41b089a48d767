"""The cooking place: set up before the first fire, every coal drowned after the last food."""

from cookout.core.fire.charcoal import TENDING
from cookout.core.kitchen.recipe import FIRE_SKILL
from cookout.core.planning.expand import cautions
from cookout.core.planning.expand.bakes import BakeDraft
from cookout.core.planning.expand.draft import Draft
from cookout.core.planning.expand.hours import last_deadline
from cookout.core.planning.expanded import Firing, TaskInfo, TaskKind
from cookout.core.planning.problem import TaskId
from cookout.core.safety.site import SiteFacts, checklist

# With so many helpers, two set up together.
_CREW_FOR_TWO = 3
_GROUND_WORK = {"ground": "Rake the ground bare", "soak": "Wet the grass around it"}


def set_up(draft: Draft, firings: list[Firing]) -> None:
    """Set up before every fire; nothing where there is no fire or set-up takes no time."""
    minutes = draft.event.setup_minutes
    if not firings or minutes <= 0:
        return
    hands = 2 if len(draft.event.crew) >= _CREW_FOR_TWO else 1
    info = TaskInfo(
        TaskId("set_up"),
        "Set up the fire place",
        TaskKind.SET_UP,
        hands=hands,
        detail=cautions.set_up(draft.event.units),
    )
    task = draft.add(info, minutes)
    for firing in firings:
        draft.link(task, firing.lights, why="water and shovel stand ready before any fire is lit")
    _bare_ground(draft, firings, hands)


def _bare_ground(draft: Draft, firings: list[Firing], hands: int) -> None:
    """Work on dry grass before every fire, one thing after the other; nothing where there is none."""
    before: TaskId | None = None
    for item in checklist(SiteFacts(dry_grass=draft.event.place.dry_grass), units=draft.event.units):
        if item.id not in _GROUND_WORK or not item.is_task:
            continue
        info = TaskInfo(TaskId(item.id), _GROUND_WORK[item.id], TaskKind.SET_UP, hands=hands, detail=item.text)
        task = draft.add(info, item.minutes)
        if before is not None:
            draft.link(before, task, why="wet around what was raked bare")
        for firing in firings:
            draft.link(task, firing.lights, why="no fire stands on dry grass")
        before = task


def drown(draft: Draft, bakes: list[BakeDraft]) -> None:
    """Drown the coals once all food is out, within an hour after the last food is due.

    Which bake ends last is the solver's to choose, so the limit counts from the last serving or slot, not from a bake.
    """
    if not bakes:
        return
    info = TaskInfo(
        TaskId("drown"),
        "Drown the coals",
        TaskKind.DROWN,
        hands=1,
        skills=frozenset({FIRE_SKILL}),
        hot=True,
        detail=cautions.DROWN,
    )
    task = draft.add(info, TENDING.drown_minutes)
    for bake in bakes:
        draft.link(bake.run.takes_out, task, why="the fire is put out when all food is out")
    draft.hold_within(task, latest=last_deadline(draft.event) + TENDING.drown_within_minutes)
