"""Who and what is in use at which minute, kept as bit sets so that the first free start is a few shifts away."""

from bisect import insort

from cookout.core.planning.quick.frame import Frame, FrameNeed, bits
from cookout.core.planning.values import PRESENCE_PER_WORK


class Booking:
    """Use of every resource. `used[r][k]` has a bit for each minute in which at least k + 1 of r are in use."""

    def __init__(self, frame: Frame) -> None:
        self.frame = frame
        self.used = [[0] * max(capacity, 1) for capacity in frame.capacity]
        self.work = [0] * len(frame.resources)
        self.spans: list[list[tuple[int, int]]] = [[] for _ in frame.resources]
        self.hot: list[list[tuple[int, int]]] = [[] for _ in frame.stretch]

    def blocked(self, resource: int, amount: int, minutes: int) -> int:
        """A bit for each start at which `amount` of the resource is not free for all of `minutes`."""
        capacity = self.frame.capacity[resource]
        if amount > capacity:
            return (1 << self.frame.length) - 1
        return spread(self.used[resource][capacity - amount] | self.frame.closed[resource], minutes)

    def blocked_for(self, need: FrameNeed, minutes: int) -> int:
        """A bit for each start at which fewer than the wanted options are free."""
        if len(need.options) == 1:
            return self.blocked(need.options[0], need.amount, minutes)
        everything = (1 << self.frame.length) - 1
        at_least = [everything] + [0] * need.picks
        for option in need.options:
            free = everything & ~self.blocked(option, need.amount, minutes)
            for k in range(need.picks, 0, -1):
                at_least[k] |= at_least[k - 1] & free
        return everything & ~at_least[need.picks]

    def free(self, resource: int, amount: int, start: int, minutes: int) -> bool:
        """Whether `amount` of the resource is free from `start` for `minutes`."""
        if amount > self.frame.capacity[resource]:
            return False
        return (self.taken(resource, amount) >> start) & ((1 << minutes) - 1) == 0

    def taken(self, resource: int, amount: int) -> int:
        """A bit for each minute in which `amount` of the resource is not free."""
        return self.used[resource][self.frame.capacity[resource] - amount] | self.frame.closed[resource]

    def too_hot(self, resource: int, start: int, end: int) -> bool:
        """Whether hot work from `start` to `end` would make this helper's stretch without a break too long."""
        helper = self.frame.shift_of[resource]
        rule = self.frame.stretch[helper] if helper >= 0 else None
        if rule is None:
            return False
        longest, pause = rule
        return longest_run([*self.hot[helper], (start, end)], pause) > longest

    def idle_added(self, shift: int, start: int, end: int) -> int:
        """Minutes of idle presence beyond what the work allows that this work would add to a shift with work."""
        spans, work = self.spans[shift], self.work[shift]
        first, last = spans[0][0], spans[-1][1]
        before = max(0, last - first - PRESENCE_PER_WORK * work)
        longer = max(last, end) - min(first, start)
        return max(0, longer - PRESENCE_PER_WORK * (work + end - start)) - before

    def take(self, resource: int, amount: int, start: int, end: int, *, hot: bool) -> None:
        """Put `amount` of the resource in use."""
        levels, span = self.used[resource], bits(start, end)
        for k in range(len(levels) - 1, amount - 1, -1):
            levels[k] |= levels[k - amount] & span
        for k in range(min(amount, len(levels))):
            levels[k] |= span
        if self.frame.shift_of[resource] >= 0:
            self.work[resource] += end - start
            insort(self.spans[resource], (start, end))
            self._note_hot(resource, start, end, hot=hot, taken=True)

    def give_back(self, resource: int, amount: int, start: int, end: int, *, hot: bool) -> None:
        """Take it out of use again."""
        levels, span = self.used[resource], bits(start, end)
        for k in range(len(levels)):
            still = levels[k + amount] & span if k + amount < len(levels) else 0
            levels[k] = (levels[k] & ~span) | still
        if self.frame.shift_of[resource] >= 0:
            self.work[resource] -= end - start
            self.spans[resource].remove((start, end))
            self._note_hot(resource, start, end, hot=hot, taken=False)

    def _note_hot(self, resource: int, start: int, end: int, *, hot: bool, taken: bool) -> None:
        helper = self.frame.shift_of[resource]
        if hot:
            if taken:
                self.hot[helper].append((start, end))
            else:
                self.hot[helper].remove((start, end))


def longest_run(spans: list[tuple[int, int]], pause: int) -> int:
    """The longest stretch of work in which no gap reaches `pause`, from its first start to its last end."""
    longest = run_start = 0
    run_end = -(10**9)
    for start, end in sorted(spans):
        if start >= run_end + pause:
            run_start = start
            run_end = end
        run_end = max(run_end, end)
        longest = max(longest, run_end - run_start)
    return longest


def spread(taken: int, minutes: int) -> int:
    """Bits for each start from which `minutes` minutes meet a taken one."""
    if minutes == 0:
        return 0
    covered = 1
    while covered < minutes:
        step = min(covered, minutes - covered)
        taken |= taken >> step
        covered += step
    return taken


def first_clear(blocked: int, at_least: int) -> int:
    """The first minute from `at_least` on whose bit is clear."""
    ahead = blocked >> at_least
    return at_least + (~ahead & (ahead + 1)).bit_length() - 1
