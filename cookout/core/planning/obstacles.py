"""What stands in the way of an impossible event, and the cheapest ways out, each of which was really solved."""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from time import perf_counter

from cookout.core.kitchen.recipe import FIRE_SKILL, Skill
from cookout.core.planning.event import Event, GearKind
from cookout.core.planning.expand import expand
from cookout.core.planning.expanded import FIRE_KINDS, Expanded
from cookout.core.planning.network import start_windows
from cookout.core.planning.problem import Aim, Need, Problem, ResourceId, Task
from cookout.core.planning.record import WayOut
from cookout.core.planning.result import Limits, Plan, Progress, Watch
from cookout.core.planning.solver import solve
from cookout.core.planning.ways_out import Change, apply_change
from cookout.core.planning.wording import clock, span

SECONDS_FOR_ONE_TRY = 2.0
LATER_AT_MOST_MINUTES = 360
STEP_MINUTES = 5


@dataclass(frozen=True, slots=True)
class Findings:
    """Sentences on what stands in the way, and changes that lead to a plan, cheapest first."""

    obstacles: tuple[str, ...]
    ways_out: tuple[WayOut, ...]


def find_obstacles(event: Event, *, seconds: float, seed: int = 1, watch: Watch | None = None) -> Findings:
    """Look for what stands in the way within the seconds; ways out come first from the cheapest kinds of change."""
    search = Search(event, perf_counter() + seconds, seed, watch or Watch())
    obstacles = tuple(dict.fromkeys(search.plain_obstacles()))
    ways_out = tuple(search.ways_out())
    return Findings(obstacles or search.guess(ways_out), ways_out)


def feasible(event: Event, *, seed: int = 1, seconds: float = SECONDS_FOR_ONE_TRY, watch: Watch | None = None) -> bool:
    """Whether a plan of the event is found in short time, with shared firings or without."""
    return any(first_plan(expand(event, share_firings=s), seed, seconds, watch) is not None for s in (True, False))


def first_plan(expanded: Expanded, seed: int, seconds: float, watch: Watch | None = None) -> Plan | None:
    """Any plan at all, as soon as there is one."""
    found: list[Plan] = []
    outer = watch or Watch()

    def tell(progress: Progress) -> None:
        found.append(progress.plan)

    watching = Watch(tell, lambda: bool(found) or outer.stop())
    result = solve(replace(expanded.problem, aims=(Aim.LATENESS,)), Limits(seconds, 2, seed), watching)
    return result.plan


class Search:
    """The search for ways out of one impossible event."""

    def __init__(self, event: Event, deadline: float, seed: int, watch: Watch) -> None:
        self.event = event
        self.deadline = deadline
        self.seed = seed
        self.watch = watch
        self.expanded = expand(event)
        self.problem = self.expanded.problem

    def over(self) -> bool:
        """Whether the time for looking is up."""
        return perf_counter() > self.deadline or self.watch.stop()

    def works(self, change: Change) -> bool:
        """Whether the changed event has a plan."""
        return not self.over() and feasible(apply_change(self.event, change), seed=self.seed, watch=self.watch)

    def ways_out(self) -> Iterator[WayOut]:
        """Ways out that work: first a later serving, then longer hours, gear, one more helper."""
        kinds = (self.later_servings, self.longer_hours, self.more_gear, self.more_hands)
        for kind in kinds:
            for way in kind():
                yield way
                if self.over():
                    return

    def plain_obstacles(self) -> Iterator[str]:
        """What can be seen without solving: needs that nothing meets, and chains longer than the time there is."""
        for task in self.problem.tasks:
            for number, need in enumerate(task.needs):
                if self.lacks(need):
                    yield self.say_lack(task, number)
        if start_windows(self.problem) is None:
            yield from self.chains_too_long()

    def lacks(self, need: Need) -> bool:
        """Whether a need can never be met."""
        able = [o for o in need.options if self.problem.resource_by_id[o].capacity >= need.amount]
        return len(able) < need.picks

    def say_lack(self, task: Task, number: int) -> str:
        """An unmet need in words."""
        info, need = self.expanded.info[task.id], task.needs[number]
        if any(self.problem.resource_by_id[o].helper is None for o in need.options):
            gear = self.expanded.gear_of[need.options[0]]
            have = self.problem.resource_by_id[need.options[0]].capacity
            return f"“{info.name}” takes {need.amount} of {gear} at once and there is {have}."
        if info.hands:
            who = "an adult (or someone the organiser names) " if info.kind in FIRE_KINDS or info.hot else "someone "
            skills = f"with {' and '.join(sorted(info.skills))} " if info.skills else ""
            return f"“{info.name}” needs {who}{skills}and nobody in the crew is that, at a time when it could be done."
        return f"“{info.name}” needs gear that the event does not have."

    def chains_too_long(self) -> Iterator[str]:
        """Servings and slots whose work does not fit between the crew's coming and their time."""
        for name, alone in self.parts():
            if start_windows(alone) is None:
                opens = min((w.start for h in self.event.crew for w in h.windows), default=self.problem.opens)
                yield (
                    f"{name} cannot be ready in time: its steps one after another take longer than there is "
                    f"from {clock(self.event, opens)}, when the first of the crew arrives."
                )

    def parts(self) -> Iterator[tuple[str, Problem]]:
        """The problem with the deadlines of one serving or slot alone."""
        own = {task: serving for (serving, _), task in self.expanded.serves.items()}
        live = {task: info.live_in for task, info in self.expanded.info.items() if info.live_in is not None}
        for serving in self.event.servings:
            tasks = tuple(t if own.get(t.id) == serving.id else released(t) for t in self.problem.tasks)
            yield f"{serving.name} at {clock(self.event, serving.at)}", replace(self.problem, tasks=tasks)
        for slot in self.event.slots:
            ready = {t for (s, _), ts in self.expanded.ready.items() if s == slot.id for t in ts}
            keep = ready | {t for t, s in live.items() if s == slot.id}
            tasks = tuple(t if t.id in keep else released(t) for t in self.problem.tasks)
            yield f"{slot.name} at {clock(self.event, slot.starts_at)}", replace(self.problem, tasks=tasks)

    def later_servings(self) -> Iterator[WayOut]:
        """Serve later: how much is found by letting every serving be late and looking how late it then is."""
        relaxed = replace(
            self.event, servings=tuple(replace(s, late=s.late + LATER_AT_MOST_MINUTES) for s in self.event.servings)
        )
        expanded = expand(relaxed)
        result = solve(
            replace(expanded.problem, aims=(Aim.LATENESS,)),
            Limits(min(4.0, max(0.1, self.deadline - perf_counter())), 2, self.seed),
            Watch(stop=self.watch.stop),
        )
        if result.plan is None:
            return
        late: dict[str, int] = {}
        for (serving, _), task in expanded.serves.items():
            minutes = result.plan.end(expanded.problem.task_by_id[task]) - self.event.serving(serving).at
            late[serving] = max(late.get(serving, 0), minutes)
        moved = [(serving, rounded_up(minutes)) for serving, minutes in late.items() if minutes > 0]
        for serving_id, minutes in moved:
            change: Change = {"kind": "move_serving", "serving": serving_id, "minutes": minutes}
            serving = next(s for s in self.event.servings if s.id == serving_id)
            if self.works(change):
                when = clock(self.event, serving.at + minutes)
                yield WayOut(f"Serve {serving.name} at {when}, {span(minutes)} later.", dict(change))

    def longer_hours(self) -> Iterator[WayOut]:
        """One of the crew comes earlier, or stays longer."""
        for helper in self.event.crew:
            if not helper.windows or self.over():
                continue
            first, last = helper.windows[0], helper.windows[-1]
            for minutes in (30, 60, 120, 240):
                earlier: Change = {
                    "kind": "widen_window", "helper": helper.id, "start": first.start - minutes, "end": first.end,
                }  # fmt: skip
                if self.works(earlier):
                    when = clock(self.event, first.start - minutes)
                    yield WayOut(f"{helper.name} comes at {when}, {span(minutes)} earlier.", dict(earlier))
                    break
            later: Change = {
                "kind": "widen_window", "helper": helper.id, "start": last.start, "end": last.end + 60,
            }  # fmt: skip
            if self.works(later):
                yield WayOut(f"{helper.name} stays until {clock(self.event, last.end + 60)}.", dict(later))

    def more_gear(self) -> Iterator[WayOut]:
        """One or two more of gear that bakes and firings compete for, or one of what is lacking."""
        scarce = {GearKind.OVEN, GearKind.CHIMNEY, GearKind.TABLE, GearKind.TRIVET, GearKind.MIXER, GearKind.RACK}
        for kind, inches in self.missing_gear():
            for count in (1, 2, 3):
                change: Change = {"kind": "buy_gear", "gear_kind": kind, "inches": inches, "count": count}
                if self.works(change):
                    yield WayOut(f"Bring {count} more: {f'{inches}-inch oven' if inches else kind}.", dict(change))
                    break
        for gear in self.event.gear:
            if gear.kind not in scarce or self.over():
                continue
            for count in (1, 2):
                more: Change = {"kind": "add_gear", "gear": gear.id, "count": count}
                if self.works(more):
                    yield WayOut(f"{'One' if count == 1 else 'Two'} more: {gear.name}.", dict(more))
                    break

    def missing_gear(self) -> Iterator[tuple[str, int]]:
        """Kinds and oven sizes that recipes ask for and the event has none of."""
        have = {(g.kind.value, g.inches or 0) for g in self.event.gear}
        wanted: dict[tuple[str, int], None] = {}
        for dish in self.event.dishes:
            for step in self.event.recipe(dish.recipe).steps:
                if step.bake is not None:
                    wanted[GearKind.OVEN.value, step.bake.oven_inches] = None
                for use in step.gear:
                    wanted[use.kind, 0] = None
        kinds = {kind for kind, _ in have}
        for kind, inches in wanted:
            known = kind in {k.value for k in GearKind}
            if known and (kind, inches) not in have and (inches or kind not in kinds):
                yield kind, inches

    def more_hands(self) -> Iterator[WayOut]:
        """One more helper: with the skill that is short, for no longer than the plan then uses."""
        skills = {FIRE_SKILL: None} | {s: None for i in self.expanded.info.values() for s in sorted(i.skills)}
        for skill in skills:
            if self.over():
                return
            change = self.narrowed(skill)
            if change is not None:
                start, end = (clock(self.event, int(change[k])) for k in ("start", "end"))
                yield WayOut(f"Someone with the {skill} skill from {start} to {end}.", dict(change))

    def narrowed(self, skill: Skill) -> Change | None:
        """The change that adds a helper for the least time that is found to do; None where even all day does not."""
        wanted = str(skill)
        change: Change = {
            "kind": "add_helper", "skills": wanted, "start": self.problem.opens, "end": self.problem.closes,
        }  # fmt: skip
        expanded = expand(apply_change(self.event, change))
        plan = first_plan(expanded, self.seed, SECONDS_FOR_ONE_TRY, self.watch)
        if plan is None:
            return None
        used = times_of_new_helper(expanded, plan, self.event)
        if used is None:
            return change
        narrow: Change = {**change, "start": used[0], "end": used[1]}
        return narrow if self.works(narrow) else change

    def guess(self, ways_out: tuple[WayOut, ...]) -> tuple[str, ...]:
        """Where nothing plain stands in the way, what the ways out have in common says what is short."""
        short = {
            "add_gear": "there is not enough gear at once",
            "add_helper": "there are not enough hands with the right skill at the right time",
            "widen_window": "the crew's hours are too short",
            "move_serving": "the time before the serving is too short",
        }
        kinds = dict.fromkeys(str(way.change["kind"]) for way in ways_out)
        said = [short[kind] for kind in kinds if kind in short]
        if not said:
            return ("The dishes do not fit together in the time, gear and hands that there are.",)
        return (f"The dishes do not all fit: {', and '.join(said[:2])}.",)


def released(task: Task) -> Task:
    """The task without a time of its own."""
    return replace(task, earliest=None, latest=None)


def rounded_up(minutes: int) -> int:
    """To the next whole step of minutes."""
    return -(-minutes // STEP_MINUTES) * STEP_MINUTES


def times_of_new_helper(expanded: Expanded, plan: Plan, before: Event) -> tuple[int, int] | None:
    """From when until when a helper who was not there before is at work."""
    known = {helper.id for helper in before.crew}
    new: set[ResourceId] = {
        r.id for r in expanded.problem.resources if r.helper is not None and r.helper not in known
    }
    spans = [
        (plan.start(task.id), plan.end(task))
        for task in expanded.problem.tasks
        for group in plan.placed[task.id].picks
        if new.intersection(group)
    ]
    return (min(s for s, _ in spans), max(e for _, e in spans)) if spans else None
