"""Serial schedule generation with least and most waits.

Tasks are placed one by one, each at its first possible start. Where a most-wait to a task already placed makes that
impossible, that task and all that lean on it are taken out again and may then start no earlier than helps (the
unscheduling step of Franck, Neumann and Schwindt, 2001), a bounded number of times.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from heapq import heapify, heappop, heappush
from random import Random

from cookout.core.planning.quick.booking import Booking, first_clear
from cookout.core.planning.quick.frame import Frame, FrameNeed

# What calling one more helper is worth in minutes of idling.
NEW_CALL_MINUTES = 160.0
# What a wished helper is worth: more than any idling.
WISHED_MINUTES = 10_000.0

Picks = tuple[tuple[int, ...], ...]


@dataclass(frozen=True, slots=True)
class Wish:
    """Where a task would best stand: its start, and the shifts of those who would best do it."""

    start: int
    shifts: frozenset[int] = frozenset()


class Generation:
    """One pass over a frame. `rank` orders the tasks that are free to be placed, lowest first.

    A task with a wish gets it where it can, else the first start beyond it, else the first there is.
    """

    def __init__(
        self,
        frame: Frame,
        rank: Sequence[float],
        *,
        chance: Random | None = None,
        wishes: Mapping[int, Wish] | None = None,
    ) -> None:
        self.frame = frame
        self.rank = rank
        self.chance = chance
        self.wishes = wishes or {}
        self.booking = Booking(frame)
        count = len(frame.tasks)
        self.start: list[int] = [-1] * count
        self.picks: list[Picks] = [()] * count
        self.at_least = list(frame.earliest)
        self.waits_for = [len({tail for tail, wait in arcs if wait > 0}) for arcs in frame.arriving]
        self.removals_left = 60 + 12 * count
        self.ready = [(rank[i], i) for i in range(count) if self.waits_for[i] == 0]
        self.rarity = rarity(frame)
        self.keepers: list[list[int]] = [[] for _ in frame.kept_minutes]
        self.keeps: list[tuple[int, ...]] = [() for _ in frame.kept_minutes]

    def run(self, only: frozenset[int] | None = None) -> bool:
        """Place all tasks (or `only` those); whether that was possible within the bounded effort."""
        if only is not None:
            self.ready = [(rank, i) for rank, i in self.ready if i in only]
        heapify(self.ready)
        wanted = len(self.frame.tasks) if only is None else len(only)
        while self.ready:
            _, task = heappop(self.ready)
            if self.start[task] < 0 and self.waits_for[task] == 0 and not self.place(task):
                return False
        return sum(start >= 0 for start in self.start) >= wanted

    def preset(self, task: int, start: int, picks: Picks) -> None:
        """Hold a task where it stands."""
        self.start[task] = start
        self.picks[task] = picks
        self.book(task)
        for head in self.heads(task):
            self.waits_for[head] -= 1
            if self.waits_for[head] == 0:
                self.ready.append((self.rank[head], head))

    def place(self, task: int) -> bool:
        """Place a task at its first possible start, moving out what stands in its way if a most-wait demands it."""
        lowest, highest = self.bounds(task)
        found = self.wished_start(task, lowest, highest) or self.first_start(task, lowest)
        if found is None:
            return False
        start, picks = found
        if start > highest:
            return self.make_room(task, start)
        self.start[task] = start
        self.picks[task] = picks
        self.book(task)
        for head in self.heads(task):
            self.waits_for[head] -= 1
            if self.waits_for[head] == 0:
                heappush(self.ready, (self.urgency(head), head))
        return True

    def heads(self, task: int) -> set[int]:
        """The tasks that wait for this one."""
        return {head for head, wait in self.frame.leaving[task] if wait > 0}

    def urgency(self, task: int) -> float:
        """Tasks bound by a most-wait to one that is placed come before all others."""
        starts = self.start
        bound = [starts[head] - wait for head, wait in self.frame.leaving[task] if starts[head] >= 0]
        return min(bound) - 1e6 if bound else self.rank[task]

    def bounds(self, task: int) -> tuple[int, int]:
        """The starts that placed tasks leave."""
        starts = self.start
        lowest, highest = self.at_least[task], self.frame.latest[task]
        for tail, wait in self.frame.arriving[task]:
            if starts[tail] >= 0 and starts[tail] + wait > lowest:
                lowest = starts[tail] + wait
        for head, wait in self.frame.leaving[task]:
            if starts[head] >= 0 and starts[head] - wait < highest:
                highest = starts[head] - wait
        return lowest, highest

    def wished_start(self, task: int, lowest: int, highest: int) -> tuple[int, Picks] | None:
        """The first start from the wished one on, if that lies within what placed tasks leave."""
        wish = self.wishes.get(task)
        if wish is None or not lowest <= wish.start <= highest:
            return None
        found = self.first_start(task, wish.start)
        return found if found is not None and found[0] <= highest else None

    def first_start(self, task: int, lowest: int) -> tuple[int, Picks] | None:
        """The first start from `lowest` at which all needs are met, with what is picked; None where there is none."""
        needs, minutes = self.needs(task), self.frame.minutes[task]
        blocked = 0
        for need in needs:
            blocked |= self.booking.blocked_for(need, minutes)
        while lowest <= self.frame.latest[task]:
            start = first_clear(blocked, lowest)
            if start > self.frame.latest[task]:
                return None
            picks = self.pick(task, start)
            if picks is not None:
                return start, picks
            lowest = start + 1
        return None

    def needs(self, task: int) -> tuple[FrameNeed, ...]:
        """What a task needs; of what is kept by a task that is placed already, that alone."""
        needs = self.frame.needs[task]
        if not self.keepers:
            return needs
        return tuple(
            replace(need, options=self.keeps[need.kept]) if need.kept >= 0 and self.keepers[need.kept] else need
            for need in needs
        )

    def pick(self, task: int, start: int) -> Picks | None:
        """Resources for each need at this start; None where the needs compete or a break would be missed."""
        taken: set[int] = set()
        groups: list[tuple[int, ...]] = []
        minutes = self.frame.minutes[task]
        for need in self.needs(task):
            if len(need.options) == 1 and self.frame.shift_of[need.options[0]] < 0:
                groups.append(need.options)
                continue
            group = self.choose(need, task, start, minutes, taken)
            if group is None:
                return None
            taken.update(group)
            groups.append(group)
        return tuple(groups)

    def choose(self, need: FrameNeed, task: int, start: int, minutes: int, taken: set[int]) -> tuple[int, ...] | None:
        """The best free options of a need: on duty already, little booked, and not needed for rarer work."""
        booking, hot = self.booking, self.frame.hot[task]
        free = [
            option
            for option in need.options
            if option not in taken
            and booking.free(option, need.amount, start, minutes)
            and not (hot and booking.too_hot(option, start, start + minutes))
        ]
        if len(free) < need.picks:
            return None
        costs = {option: self.cost(option, start, start + minutes) for option in free}
        if need.kept >= 0:
            costs = {option: self.shortfall(need, option, start) for option in free}
        if task in self.wishes:
            wished = self.wishes[task].shifts
            costs = {option: cost - WISHED_MINUTES * (option in wished) for option, cost in costs.items()}
        free.sort(key=costs.__getitem__)
        return tuple(free[: need.picks])

    def shortfall(self, need: FrameNeed, option: int, start: int) -> float:
        """Minutes for which the tasks that keep an option would lack it, the rest of them following on this one."""
        ahead = self.booking.taken(option, need.amount) >> start
        free = (ahead & -ahead).bit_length() - 1 if ahead else self.frame.length
        return float(max(0, self.frame.kept_minutes[need.kept] - free))

    def cost(self, resource: int, start: int, end: int) -> float:
        """What giving work to this shift costs, in minutes of idling or so: calling someone anew costs a little."""
        booking = self.booking
        if self.frame.shift_of[resource] < 0:
            return 0.0
        added = booking.idle_added(resource, start, end) if booking.work[resource] else NEW_CALL_MINUTES
        cost = added + 4.0 * self.rarity[resource] + 0.05 * booking.work[resource]
        return cost + (self.chance.random() * 6.0 if self.chance else 0.0)

    def book(self, task: int) -> None:
        """Put what the task picked in use."""
        start, end, hot = self.start[task], self.start[task] + self.frame.minutes[task], self.frame.hot[task]
        for need, group in zip(self.frame.needs[task], self.picks[task], strict=True):
            for resource in group:
                self.booking.take(resource, need.amount, start, end, hot=hot)
            if need.kept >= 0:
                self.keepers[need.kept].append(task)
                self.keeps[need.kept] = group

    def remove(self, task: int) -> None:
        """Take a placed task out again."""
        start, end, hot = self.start[task], self.start[task] + self.frame.minutes[task], self.frame.hot[task]
        for need, group in zip(self.frame.needs[task], self.picks[task], strict=True):
            for resource in group:
                self.booking.give_back(resource, need.amount, start, end, hot=hot)
            if need.kept >= 0:
                self.keepers[need.kept].remove(task)
        self.start[task] = -1
        self.picks[task] = ()
        for head in self.heads(task):
            self.waits_for[head] += 1

    def make_room(self, task: int, start: int) -> bool:
        """Move what holds `task` before `start`: take it out, with all that leans on it, to come back later."""
        pushed = {
            head: start + wait
            for head, wait in self.frame.leaving[task]
            if self.start[head] >= 0 and self.start[head] - wait < start
        }
        if not pushed:
            return False
        removed = []
        while pushed:
            moved, lowest = pushed.popitem()
            if lowest > self.frame.latest[moved] or self.removals_left <= 0:
                return False
            self.at_least[moved] = max(self.at_least[moved], lowest)
            if self.start[moved] >= 0:
                self.removals_left -= 1
                self.remove(moved)
                removed.append(moved)
            for head, wait in self.frame.leaving[moved]:
                if (self.start[head] >= 0 or head in removed) and self.at_least[moved] + wait > max(
                    self.start[head], self.at_least[head] if head in removed else -1
                ):
                    pushed[head] = max(self.at_least[moved] + wait, pushed.get(head, 0))
        for moved in [*self.dependents(removed), *removed, task]:
            if self.waits_for[moved] == 0 and self.start[moved] < 0:
                heappush(self.ready, (self.urgency(moved), moved))
        return True

    def dependents(self, removed: list[int]) -> list[int]:
        """Take out every placed task that waits for one taken out, for it must be placed after it."""
        found, queue = [], list(removed)
        while queue:
            for head in self.heads(queue.pop()):
                if self.start[head] >= 0:
                    self.removals_left -= 1
                    self.remove(head)
                    found.append(head)
                    queue.append(head)
        return found


def rarity(frame: Frame) -> tuple[float, ...]:
    """How much of the work each resource could do, 0 to 1; whoever can do everything is kept for what few can."""
    asked = [0] * len(frame.resources)
    for needs in frame.needs:
        for need in needs:
            for option in need.options:
                asked[option] += 1
    top = max(asked, default=0) or 1
    return tuple(count / top for count in asked)
