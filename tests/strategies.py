"""Random scheduling problems for hypothesis: small ones with everything in them, alone or with a plan that keeps all.

`problems_with_plans` draws the plan first and lays the rules around it, so the plan keeps every one by construction.
`small_problems` then moves some limits at random: some stay possible, some do not.
"""

from dataclasses import dataclass, replace

from hypothesis import strategies as st

from cookout.core.planning.problem import (
    EVENT_AIMS,
    Aim,
    BreakRule,
    Due,
    Freshness,
    Link,
    LinkKind,
    Need,
    Problem,
    Resource,
    ResourceId,
    Stood,
    Task,
    TaskId,
)
from cookout.core.planning.result import Placed, Plan

HELPERS = ("ada", "bo", "cy")
GEAR = (ResourceId("oven"), ResourceId("bowl"))
POTS = (ResourceId("pot one"), ResourceId("pot two"))
"""Pieces of which a task may keep one together with others."""
SPAN = 24
"""Drawn starts lie within so many minutes, before helpers who are busy push them later."""


@dataclass(frozen=True, slots=True)
class Work:
    """A task of the plan drawn: when, with which gear, and by whom."""

    id: TaskId
    start: int
    minutes: int
    gear: dict[ResourceId, int]
    helpers: tuple[str, ...]
    hot: bool
    keeps: tuple[str, ResourceId] | None = None

    @property
    def end(self) -> int:
        """The minute it ends."""
        return self.start + self.minutes


def small_problems(max_tasks: int = 8, span: int = SPAN) -> st.SearchStrategy[Problem]:
    """Small problems with counted gear, shifts, links of all kinds, windows and breaks; not all have a plan."""
    return problems_with_plans(max_tasks, span).map(lambda both: both[0]).flatmap(_moved)


@st.composite
def problems_with_plans(draw: st.DrawFn, max_tasks: int = 8, span: int = SPAN) -> tuple[Problem, Plan]:
    """A small problem and a plan that keeps all of its rules."""
    works = draw(_works(max_tasks, span))
    shifts = draw(_shifts(works))
    tasks = tuple(draw(_task(work, shifts)) for work in works)
    before = draw(_before(works))
    problem = Problem(
        tasks=tasks,
        links=draw(_links(works)),
        resources=(*draw(_gear(works)), *(shift for shift, _ in shifts)),
        opens=draw(st.integers(-3, 0)),
        closes=max((work.end for work in works), default=0) + draw(st.integers(0, 5)),
        aims=(*EVENT_AIMS, Aim.CHANGES) if before else draw(st.sampled_from([EVENT_AIMS, (Aim.MAKESPAN,)])),
        before=before,
        dues=tuple(Due(work.id, work.end + draw(st.integers(-3, 3))) for work in works[:2]),
        freshness=draw(_freshness(works)),
        breaks=draw(_breaks(works)),
    )
    return problem, _plan(works, tasks, shifts)


@st.composite
def _works(draw: st.DrawFn, max_tasks: int, span: int) -> list[Work]:
    free_at = dict.fromkeys(HELPERS, 0)
    jam = draw(st.sampled_from(POTS))
    works: list[Work] = []
    for number in range(draw(st.integers(1, max_tasks))):
        helpers = tuple(sorted(draw(st.sets(st.sampled_from(HELPERS), max_size=2))))
        minutes = draw(st.integers(1, max(1, span // 4)))
        start = max([draw(st.integers(0, span - minutes)), *(free_at[helper] for helper in helpers)])
        gear = draw(st.dictionaries(st.sampled_from(GEAR), st.integers(1, 2), max_size=2))
        hot = bool(helpers) and draw(st.booleans())
        # Of two things that are kept, each is one pot throughout; both may be the same one.
        keeps = draw(st.sampled_from([None, None, ("stew", POTS[0]), ("jam", jam)]))
        works.append(Work(TaskId(f"t{number}"), start, minutes, gear, helpers, hot, keeps))
        free_at |= dict.fromkeys(helpers, start + minutes)
    return works


Shift = tuple[Resource, frozenset[TaskId]]
"""A shift and the tasks that the plan gives to it."""


@st.composite
def _shifts(draw: st.DrawFn, works: list[Work]) -> list[Shift]:
    """One or two shifts a helper: the second begins where a task of theirs does."""
    return [shift for helper in HELPERS for shift in draw(_shifts_of(helper, works))]


@st.composite
def _shifts_of(draw: st.DrawFn, helper: str, works: list[Work]) -> list[Shift]:
    own = sorted((work for work in works if helper in work.helpers), key=lambda work: work.start)
    cut = draw(st.integers(0, len(own)))
    parts = [part for part in (own[:cut], own[cut:]) if part]
    shifts = []
    for number, part in enumerate(parts or [[]]):
        opens = part[0].start if part else 0
        closes = part[-1].end if part else SPAN
        if len(parts) < 2:
            opens, closes = opens - draw(st.integers(0, 4)), closes + draw(st.integers(0, 4))
        resource = Resource(ResourceId(f"{helper}.{number}"), 1, helper, opens, closes)
        shifts.append((resource, frozenset(work.id for work in part)))
    return shifts


@st.composite
def _task(draw: st.DrawFn, work: Work, shifts: list[Shift]) -> Task:
    needs = [Need((gear,), amount) for gear, amount in work.gear.items()]
    if work.keeps is not None:
        needs.append(Need(POTS, kept_as=work.keeps[0]))
    if work.helpers:
        taken = [shift.id for shift, given in shifts if work.id in given]
        others = [shift.id for shift, _ in shifts if shift.id not in taken]
        skilled = draw(st.sets(st.sampled_from(others))) if others else set()
        needs.append(Need(tuple(sorted({*taken, *skilled})), picks=len(work.helpers)))
    earliest = draw(st.none() | st.integers(0, 4).map(lambda play: work.start - play))
    latest = draw(st.none() | st.integers(0, 4).map(lambda play: work.end + play))
    return Task(work.id, work.minutes, tuple(needs), earliest, latest, work.hot)


@st.composite
def _gear(draw: st.DrawFn, works: list[Work]) -> tuple[Resource, ...]:
    """As much of each as the plan uses at its busiest minute, or some more."""
    gear = []
    for name in GEAR:
        busiest = max(
            (sum(w.gear.get(name, 0) for w in works if w.start <= work.start < w.end) for work in works), default=0
        )
        gear.append(Resource(name, max(1, busiest) + draw(st.integers(0, 1))))
    for pot in POTS:
        using = [work for work in works if work.keeps is not None and work.keeps[1] == pot]
        busiest = max((sum(w.start <= work.start < w.end for w in using) for work in using), default=1)
        gear.append(Resource(pot, busiest))
    return tuple(gear)


@st.composite
def _before(draw: st.DrawFn, works: list[Work]) -> tuple[Stood, ...]:
    """An earlier plan: some of the works where they stand, at another time or in other hands; often none."""
    some = draw(st.sets(st.sampled_from([work.id for work in works]))) if draw(st.booleans()) else set()
    others = st.sets(st.sampled_from(HELPERS), max_size=2).map(tuple)
    return tuple(
        Stood(
            work.id,
            work.start + draw(st.sampled_from([0, 0, -1, 2])),
            frozenset(draw(st.just(work.helpers) | others)),
        )
        for work in works
        if work.id in some
    )


@st.composite
def _links(draw: st.DrawFn, works: list[Work]) -> tuple[Link, ...]:
    links = []
    for _ in range(draw(st.integers(0, 2 * len(works)))) if len(works) > 1 else ():
        before, after = draw(st.permutations(works))[:2]
        kind = draw(st.sampled_from(LinkKind))
        wait = _wait(kind, before, after)
        least = draw(st.none() | st.integers(0, 3).map(lambda play, wait=wait: wait - play))  # type: ignore[misc]
        most = draw(st.none() | st.integers(0, 3).map(lambda play, wait=wait: wait + play))  # type: ignore[misc]
        links.append(Link(before.id, after.id, kind, least, most))
    return tuple(links)


def _wait(kind: LinkKind, before: Work, after: Work) -> int:
    ends = {
        LinkKind.START_TO_START: (before.start, after.start),
        LinkKind.FINISH_TO_START: (before.end, after.start),
        LinkKind.START_TO_FINISH: (before.start, after.end),
        LinkKind.FINISH_TO_FINISH: (before.end, after.end),
    }[kind]
    return ends[1] - ends[0]


@st.composite
def _freshness(draw: st.DrawFn, works: list[Work]) -> tuple[Freshness, ...]:
    if len(works) < 2:
        return (Freshness(works[0].id, by=works[0].end + draw(st.integers(0, 5))),)
    made, used = draw(st.permutations(works))[:2]
    return (Freshness(made.id, used.id, free=draw(st.integers(0, 3))),)


@st.composite
def _breaks(draw: st.DrawFn, works: list[Work]) -> tuple[BreakRule, ...]:
    """For each helper, a stretch no shorter than the longest that the plan asks of them."""
    rules = []
    for helper in HELPERS:
        pause = draw(st.integers(1, 4))
        hot = sorted((w.start, w.end) for w in works if w.hot and helper in w.helpers)
        longest, since, until = 0, 0, -SPAN
        for start, end in hot:
            since = start if start - until >= pause else since
            until = max(end, until) if start - until < pause else end
            longest = max(longest, until - since)
        rules.append(BreakRule(helper, max(1, longest) + draw(st.integers(0, 3)), pause))
    return tuple(rules)


def _plan(works: list[Work], tasks: tuple[Task, ...], shifts: list[Shift]) -> Plan:
    placed = {}
    for work, task in zip(works, tasks, strict=True):
        taken = tuple(sorted(shift.id for shift, given in shifts if work.id in given))
        picks = tuple(_picks(work, need, taken) for need in task.needs)
        placed[work.id] = Placed(work.id, work.start, picks)
    return Plan(placed)


def _picks(work: Work, need: Need, taken: tuple[ResourceId, ...]) -> tuple[ResourceId, ...]:
    """What the plan drawn picks for a need."""
    if need.kept_as and work.keeps is not None:
        return (work.keeps[1],)
    return need.options if need.options[0] in GEAR else taken


@st.composite
def _moved(draw: st.DrawFn, problem: Problem) -> Problem:
    """The problem with some windows, waits and counts tightened or loosened."""
    changes = st.sampled_from([0, 0, 0, 1, -1, 3])
    tasks = tuple(
        replace(task, latest=None if task.latest is None else task.latest - draw(changes)) for task in problem.tasks
    )
    links = tuple(
        replace(
            link,
            least=None if link.least is None else link.least + draw(changes),
            most=None if link.most is None else link.most - draw(changes),
        )
        for link in problem.links
    )
    resources = tuple(
        resource if resource.helper else replace(resource, capacity=max(1, resource.capacity - draw(st.integers(0, 1))))
        for resource in problem.resources
    )
    return replace(problem, tasks=tasks, links=links, resources=resources)
