"""Who may do a task: helpers become shifts, and each hands-on task asks for those who can and may."""

from collections.abc import Iterable
from dataclasses import dataclass
from itertools import pairwise

from cookout.core.planning.event import DemoSlot, Event, Helper, HelperId, SlotId, Window
from cookout.core.planning.expanded import FIRE_KINDS, TaskInfo, TaskKind
from cookout.core.planning.problem import BreakRule, Need, Resource, ResourceId, Task

# Parts of a live step that another helper may do beside the presenter: the audience came for the food, not the coals.
_BESIDE_PRESENTER = frozenset({TaskKind.LAY_COALS, TaskKind.TOP_UP, TaskKind.TURN, TaskKind.LOOK_IN})


@dataclass(frozen=True, slots=True)
class Shift:
    """A helper for one unbroken window. Within one of their demo `slots` a presenter does nothing but present."""

    id: ResourceId
    helper: Helper
    opens: int
    closes: int
    slots: frozenset[SlotId]

    @property
    def resource(self) -> Resource:
        """The shift as the problem knows it."""
        return Resource(self.id, 1, self.helper.id, self.opens, self.closes)

    def can_do(self, info: TaskInfo, task: Task) -> bool:
        """Whether this helper has the skills and leave for the task, and this window room for it."""
        return may_do(self.helper, info, task.minutes) and self.has_room_for(task)

    def has_room_for(self, task: Task) -> bool:
        """Whether some part of the task's own window that is long enough for it lies in this one."""
        opens = self.opens if task.earliest is None else max(self.opens, task.earliest)
        closes = self.closes if task.latest is None else min(self.closes, task.latest)
        return closes - opens >= task.minutes


def may_do(helper: Helper, info: TaskInfo, minutes: int) -> bool:
    """Whether the helper has every skill of the task and, where it is fire or hot iron, leave to do it.

    Fire tasks want the fire skill and an adult or someone the organiser named. Hot iron (load, turn, look in, take out,
    hot steps) wants an adult or someone named too, and the work must fit into the helper's longest hot stretch.
    """
    if not info.skills <= helper.skills or (info.kind in FIRE_KINDS and not helper.may_tend_fire):
        return False
    return not info.hot or ((helper.adult or helper.fire_allowed) and minutes <= helper.hot_stretch_minutes)


def merged(windows: Iterable[Window]) -> tuple[Window, ...]:
    """The same time without overlaps, in order; empty windows fall out."""
    joined: list[Window] = []
    for window in sorted((w for w in windows if w.end > w.start), key=lambda w: (w.start, w.end)):
        if joined and window.start <= joined[-1].end:
            joined[-1] = Window(joined[-1].start, max(joined[-1].end, window.end))
        else:
            joined.append(window)
    return tuple(joined)


def shifts_of(helper: Helper, slots: Iterable[DemoSlot]) -> tuple[Shift, ...]:
    """The helper's windows, cut at the edges of the demo slots that they present."""
    own = [slot for slot in slots if slot.presenter == helper.id and slot.minutes > 0]
    return tuple(shift for window in merged(helper.windows) for shift in _cut(helper, window, own))


def _cut(helper: Helper, window: Window, slots: list[DemoSlot]) -> list[Shift]:
    edges = {edge for slot in slots for edge in (slot.starts_at, slot.ends_at) if window.start < edge < window.end}
    marks = sorted({window.start, window.end} | edges)
    return [
        Shift(
            ResourceId(f"shift.{helper.id}@{opens}"),
            helper,
            opens,
            closes,
            frozenset(slot.id for slot in slots if slot.starts_at <= opens and closes <= slot.ends_at),
        )
        for opens, closes in pairwise(marks)
    ]


class Crew:
    """All shifts of an event's helpers."""

    def __init__(self, event: Event) -> None:
        self.shifts = tuple(shift for helper in event.crew for shift in shifts_of(helper, event.slots))
        self._fire_tenders = sum(helper.may_tend_fire for helper in event.crew)
        self._helpers = event.crew
        self._break_minutes = event.break_minutes

    @property
    def resources(self) -> tuple[Resource, ...]:
        """One resource a shift."""
        return tuple(shift.resource for shift in self.shifts)

    def shifts_of(self, helper: HelperId) -> tuple[Shift, ...]:
        """The shifts of one helper."""
        return tuple(shift for shift in self.shifts if shift.helper.id == helper)

    @property
    def fire_tenders(self) -> int:
        """How many helpers may tend the fire."""
        return self._fire_tenders

    @property
    def breaks(self) -> tuple[BreakRule, ...]:
        """Each helper's rule for breaks from hot work."""
        return tuple(BreakRule(h.id, h.hot_stretch_minutes, self._break_minutes) for h in self._helpers)

    def needs(self, info: TaskInfo, task: Task) -> tuple[Need, ...]:
        """The hands that the task asks for. Options stay empty where nobody can or may do it."""
        if info.hands == 0:
            return ()
        able = [shift for shift in self.shifts if shift.can_do(info, task)]
        free = tuple(shift.id for shift in able if not shift.slots)
        if info.live_in is None:
            return (Need(free, picks=info.hands),)
        presenting = tuple(shift.id for shift in able if info.live_in in shift.slots)
        if info.kind in _BESIDE_PRESENTER:
            return (Need(presenting + free, picks=info.hands),)
        beside = (Need(free, picks=info.hands - 1),) if info.hands > 1 else ()
        return (Need(presenting), *beside)
