"""Why one pin cannot be kept: the time that all else leaves to its task, and what that comes from."""

from cookout.core.planning.event import Helper, Pin
from cookout.core.planning.expanded import Expanded
from cookout.core.planning.network import chain_end, chain_start, own_window, start_windows
from cookout.core.planning.problem import Task, TaskId
from cookout.core.planning.wording import clock, span


def why_not(free: Expanded, timeless: Expanded, pin: Pin) -> str:
    """Why a pin cannot be kept, without a full stop.

    `free` is the event without pins, `timeless` the same with all of this pin but its time.
    """
    task = TaskId(pin.task)
    windows = start_windows(timeless.problem)
    if windows is None and task in free.info:
        return _Rules(free, task).away(pin)
    # Coals may be lit together in another way once nothing is pinned, and then the task is not there.
    window = (windows or {}).get(task)
    if window is not None and pin.at is not None and pin.at < window.earliest:
        return f"{_Rules(timeless, task).before()}: no earlier than {clock(free.event, window.earliest)}"
    if window is not None and pin.at is not None and pin.at > window.latest:
        return f"{_Rules(timeless, task).after()}: no later than {clock(free.event, window.latest)}"
    return "Gear and hands for all else leave no room for it"


class _Rules:
    """What bounds the start of one task of an event."""

    def __init__(self, expanded: Expanded, task: TaskId) -> None:
        self.expanded = expanded
        self.event = expanded.event
        self.problem = expanded.problem
        self.task = task
        windows = start_windows(expanded.problem)
        assert windows is not None, "an event that could be planned has windows"
        self.windows = windows

    def clock(self, minute: int) -> str:
        """A minute as the time of day."""
        return clock(self.event, minute)

    def away(self, pin: Pin) -> str:
        """That the pinned helpers, or the pinned gear, are not there when the task must be done."""
        window = self.windows[self.task]
        must = f"It must start from {self.clock(window.earliest)} to {self.clock(window.latest)}"
        if window.earliest == window.latest:
            must = f"It must start at {self.clock(window.earliest)}"
        there = " and ".join(self.hours(helper) for helper in self.event.crew if helper.id in pin.helpers)
        return f"{must}, and {there}" if there else f"{must}, which leaves no room for the rest of it"

    def hours(self, helper: Helper) -> str:
        """When one of the crew is there."""
        spans = [f"from {self.clock(w.start)} to {self.clock(w.end)}" for w in helper.windows]
        return f"{helper.name} is there {' and '.join(spans)}"

    def before(self) -> str:
        """What keeps the task from starting earlier, from whatever that comes from."""
        earliest = {task: window.earliest for task, window in self.windows.items()}
        root = chain_start(self.problem, self.task, earliest)
        cause = self.first(self.problem.task_by_id[root])
        if root == self.task:
            return f"For it {cause}"
        minutes, name = earliest[self.task] - earliest[root], f"“{self.expanded.full_name(root)}”"
        if minutes < 0:
            return f"{name} must start within {span(minutes)} of it; for that {cause}"
        passes = f", and from its start to this at least {span(minutes)} must pass" if minutes else ""
        return f"{name} comes before it; for that {cause}{passes}"

    def first(self, task: Task) -> str:
        """What keeps a task from starting earlier by itself."""
        own = own_window(self.problem, task)
        if task.earliest == own.earliest:
            return f"the earliest time is {self.clock(own.earliest)}{self.because(task)}"
        able = self.able(task)
        names = [h.name for h in able if any(w.start == own.earliest for w in h.windows)]
        if names:
            return f"{' or '.join(names[:2])} would be the first there, at {self.clock(own.earliest)}"
        return f"nobody is free before {self.clock(own.earliest)}"

    def after(self) -> str:
        """What keeps the task from starting later, from whatever that comes from."""
        latest = {task: window.latest for task, window in self.windows.items()}
        root = chain_end(self.problem, self.task, latest)
        cause = self.last(self.problem.task_by_id[root])
        if root == self.task:
            return f"For it {cause}"
        name = f"“{self.expanded.full_name(root)}”"
        if latest[root] < latest[self.task]:
            return f"It must start within {span(latest[self.task] - latest[root])} of {name}; for that {cause}"
        minutes = latest[root] + self.problem.task_by_id[root].minutes - latest[self.task]
        return f"{name} hangs on it; for that {cause}, at least {span(minutes)} after this starts"

    def last(self, task: Task) -> str:
        """What keeps a task from ending later by itself."""
        end = own_window(self.problem, task).latest + task.minutes
        if task.latest == end:
            return f"the latest time is {self.clock(end)}{self.because(task)}"
        names = [h.name for h in self.able(task) if any(w.end == end for w in h.windows)]
        if names:
            return f"{' or '.join(names[:2])} would be the last there, until {self.clock(end)}"
        return f"all is over at {self.clock(end)}"

    def because(self, task: Task) -> str:
        """What a task's own time comes from."""
        info = self.expanded.info[task.id]
        if info.live_in is not None:
            return f" ({next(s.name for s in self.event.slots if s.id == info.live_in)})"
        for (slot_id, _), tasks in self.expanded.ready.items():
            if task.id in tasks:
                return f" (ready for {next(s.name for s in self.event.slots if s.id == slot_id)})"
        for (serving_id, _), served in self.expanded.serves.items():
            if task.id == served:
                serving = self.event.serving(serving_id)
                return f" ({serving.name} at {self.clock(serving.at)}, with its tolerance)"
        return ""

    def able(self, task: Task) -> list[Helper]:
        """Those of the crew who could do a task."""
        ids = {self.problem.resource_by_id[option].helper for need in task.needs for option in need.options}
        return [helper for helper in self.event.crew if helper.id in ids]
