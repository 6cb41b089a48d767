"""Ways out of an impossible event: changes that are tried by really solving the changed event, cheapest kinds first."""

from collections.abc import Iterator
from dataclasses import replace
from time import perf_counter

from cookout.core.kitchen.recipe import FIRE_SKILL, Skill
from cookout.core.planning.event import Event, GearKind, ServingId
from cookout.core.planning.expand import expand
from cookout.core.planning.expanded import Expanded
from cookout.core.planning.problem import Aim, ResourceId
from cookout.core.planning.record import WayOut
from cookout.core.planning.result import Limits, Plan, Progress, Watch
from cookout.core.planning.solver import solve
from cookout.core.planning.ways_out import Change, apply_change
from cookout.core.planning.wording import clock, span

SECONDS_FOR_ONE_TRY = 2.0
LATER_AT_MOST_MINUTES = 360
STEP_MINUTES = 5
HOURS_TRIED_MINUTES = (15, 30, 45, 60, 90, 120, 180, 240)
SCARCE_KINDS = frozenset(
    {GearKind.OVEN, GearKind.CHIMNEY, GearKind.TABLE, GearKind.TRIVET, GearKind.MIXER, GearKind.RACK}
)


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


class Trials:
    """Tries changes of one impossible event until the time for it is up."""

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
        kinds = (self.later_servings, self.longer_hours, self.whole_crew_earlier, self.more_gear, self.more_hands)
        for kind in kinds:
            for way in kind():
                yield way
                if self.over():
                    return

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
        late: dict[ServingId, int] = {}
        for (serving_of, _), task in expanded.serves.items():
            minutes = result.plan.end(expanded.problem.task_by_id[task]) - self.event.serving(serving_of).at
            late[serving_of] = max(late.get(serving_of, 0), minutes)
        moved = [(name, rounded_up(minutes)) for name, minutes in late.items() if minutes > 0]
        for serving_id, minutes in moved:
            change: Change = {"kind": "move_serving", "serving": serving_id, "minutes": minutes}
            serving = self.event.serving(serving_id)
            if self.works(change):
                when = clock(self.event, serving.at + minutes)
                yield WayOut(f"Serve {serving.name} at {when}, {span(minutes)} later.", dict(change))

    def longer_hours(self) -> Iterator[WayOut]:
        """One of the crew comes earlier, or stays longer."""
        for helper in self.event.crew:
            if not helper.windows or self.over():
                continue
            first, last = helper.windows[0], helper.windows[-1]
            for minutes in HOURS_TRIED_MINUTES:
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

    def whole_crew_earlier(self) -> Iterator[WayOut]:
        """Everybody comes earlier."""
        for minutes in (*HOURS_TRIED_MINUTES, 360):
            change: Change = {"kind": "crew_earlier", "minutes": minutes}
            if self.works(change):
                yield WayOut(f"The whole crew comes {span(minutes)} earlier.", dict(change))
                return

    def more_gear(self) -> Iterator[WayOut]:
        """One or two more of gear that bakes and firings compete for, or one of what is lacking."""
        for kind, inches in self.missing_gear():
            for count in (1, 2, 3):
                change: Change = {"kind": "buy_gear", "gear_kind": kind, "inches": inches, "count": count}
                if self.works(change):
                    yield WayOut(f"Bring {count} more: {f'{inches}-inch oven' if inches else kind}.", dict(change))
                    break
        for gear in self.event.gear:
            if gear.kind not in SCARCE_KINDS or self.over():
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


def rounded_up(minutes: int) -> int:
    """To the next whole step of minutes."""
    return -(-minutes // STEP_MINUTES) * STEP_MINUTES


def times_of_new_helper(expanded: Expanded, plan: Plan, before: Event) -> tuple[int, int] | None:
    """From when until when a helper who was not there before is at work."""
    known = {helper.id for helper in before.crew}
    new: set[ResourceId] = {r.id for r in expanded.problem.resources if r.helper is not None and r.helper not in known}
    spans = [
        (plan.start(task.id), plan.end(task))
        for task in expanded.problem.tasks
        for group in plan.placed[task.id].picks
        if new.intersection(group)
    ]
    return (min(s for s, _ in spans), max(e for _, e in spans)) if spans else None
