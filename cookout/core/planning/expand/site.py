"""The cooking place: set up before the first fire, every coal drowned after the last food."""

from cookout.core.fire.charcoal import TENDING
from cookout.core.kitchen.recipe import FIRE_SKILL
from cookout.core.planning.event import Event
from cookout.core.planning.expand import cautions
from cookout.core.planning.expand.bakes import BakeDraft
from cookout.core.planning.expand.draft import Draft
from cookout.core.planning.expanded import Firing, TaskInfo, TaskKind
from cookout.core.planning.problem import TaskId

# With so many helpers, two set up together.
_CREW_FOR_TWO = 3


def set_up(draft: Draft, firings: list[Firing]) -> None:
    """Set up before every fire; nothing where there is no fire or set-up takes no time."""
    minutes = draft.event.setup_minutes
    if not firings or minutes <= 0:
        return
    hands = 2 if len(draft.event.crew) >= _CREW_FOR_TWO else 1
    info = TaskInfo(TaskId("set_up"), "Set up the fire place", TaskKind.SET_UP, hands=hands, detail=cautions.SET_UP)
    task = draft.add(info, minutes)
    for firing in firings:
        draft.link(task, firing.lights, why="water and shovel stand ready before any fire is lit")


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
        caution=cautions.DROWN_CAUTION,
    )
    task = draft.add(info, TENDING.drown_minutes)
    for bake in bakes:
        draft.link(bake.run.takes_out, task, why="the fire is put out when all food is out")
    draft.hold_within(task, latest=last_deadline(draft.event) + TENDING.drown_within_minutes)


def last_deadline(event: Event) -> int:
    """The last minute at which anything is served or shown; 0 where nothing is."""
    return max([s.at + s.late for s in event.servings] + [slot.ends_at for slot in event.slots], default=0)


def day(event: Event) -> tuple[int, int]:
    """The minutes in which everything lies: from the first helper's coming to the last deadline or helper's going."""
    windows = [window for helper in event.crew for window in helper.windows]
    opens = min((window.start for window in windows), default=0)
    closes = max([last_deadline(event), *(window.end for window in windows)])
    return opens, max(closes, opens + 1)
