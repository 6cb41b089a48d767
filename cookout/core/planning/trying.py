"""Ways out of an impossible event: changes that are tried by really solving the changed event, cheapest kinds first."""

from collections.abc import Container, Iterable, Iterator
from dataclasses import replace
from time import perf_counter

from cookout.core.kitchen.recipe import FIRE_SKILL, Skill
from cookout.core.planning.change_words import describe
from cookout.core.planning.changes import Change, ChangeError
from cookout.core.planning.check import check, check_event
from cookout.core.planning.event import Event, GearId, HelperId, ServingId
from cookout.core.planning.expand import expand
from cookout.core.planning.expanded import Expanded
from cookout.core.planning.gear_wanted import missing_gear
from cookout.core.planning.problem import Aim, ResourceId
from cookout.core.planning.record import WayOut
from cookout.core.planning.refusals import refusals
from cookout.core.planning.result import Limits, Plan, Progress, Watch
from cookout.core.planning.solver import solve
from cookout.core.planning.ways_out import apply_change
from cookout.core.planning.wording import clock, span

SECONDS_FOR_ONE_TRY = 2.0
LATER_AT_MOST_MINUTES = 360
STEP_MINUTES = 5
HOURS_TRIED_MINUTES = (15, 30, 45, 60, 90, 120, 180, 240)
HELD_AT_LEAST_MINUTES = 120
SAFE_REST_MINUTES = 15
PLENTY = 20


def feasible(event: Event, limits: Limits, watch: Watch | None = None) -> bool:
    """Whether a plan of the event is found in short time, with shared firings or without."""
    for share in (True, False):
        expanded = expand(event, share_firings=share)
        plan = first_plan(expanded, limits, watch)
        if plan is not None and not check(expanded.problem, plan) and not check_event(expanded, plan):
            return True
    return False


def first_plan(expanded: Expanded, limits: Limits, watch: Watch | None = None) -> Plan | None:
    """Any plan at all, as soon as there is one."""
    found: list[Plan] = []
    outer = watch or Watch()

    def tell(progress: Progress) -> None:
        found.append(progress.plan)

    watching = Watch(tell, lambda: bool(found) or outer.stop())
    result = solve(replace(expanded.problem, aims=(Aim.LATENESS,)), limits, watching)
    return result.plan


class Trials:
    """Tries changes of one impossible event until the time for it is up."""

    def __init__(self, event: Event, deadline: float, limits: Limits, watch: Watch) -> None:
        self.event = event
        self.deadline = deadline
        self.limits = replace(limits, seconds=SECONDS_FOR_ONE_TRY)
        self.watch = watch
        self.expanded = expand(event)
        self.problem = self.expanded.problem

    def over(self) -> bool:
        """Whether the time for looking is up."""
        return perf_counter() > self.deadline or self.watch.stop()

    def works(self, change: Change) -> bool:
        """Whether the changed event has a plan that passes every check, and no food in it stands out too long."""
        if self.over():
            return False
        try:
            changed = apply_change(self.event, change)
        except ChangeError:
            # One more than can be planned with leads nowhere.
            return False
        return not refusals(changed) and feasible(changed, self.limits, self.watch)

    def way_out(self, change: Change) -> WayOut:
        """A change that works, in words."""
        return WayOut(describe(self.event, change), dict(change))

    def ways_out(self) -> Iterator[WayOut]:
        """Ways out that work: first longer slots and a later serving, then hours, gear, one more helper.

        Gear comes before all else where plenty of it would do, for the hours of many helpers take long to try.
        """
        hours = (self.longer_slots, self.later_servings, self.longer_hours, self.whole_crew_earlier)
        kinds = (self.more_gear, *hours) if self.plenty_would_do() else (*hours, self.more_gear)
        for kind in (*kinds, self.more_hands):
            for way in kind():
                yield way
                if self.over():
                    return

    def safer_waits(self, dishes: Container[str]) -> Iterator[WayOut]:
        """Food of those dishes that would stand out too long: hold it hot or cold, or let it rest a short while."""
        recipes = {dish.recipe: self.event.recipe(dish.recipe) for dish in self.event.dishes if dish.id in dishes}
        for recipe in recipes.values():
            minutes = max(recipe.rests_minutes, HELD_AT_LEAST_MINUTES)
            for held in ("hot", "cold"):
                change: Change = {"kind": "hold", "recipe": recipe.id, "held": held, "minutes": minutes}
                if self.works(change):
                    yield self.way_out(change)
            less: Change = {"kind": "rest_less", "recipe": recipe.id, "minutes": SAFE_REST_MINUTES}
            if self.works(less):
                yield self.way_out(less)

    def later_servings(self) -> Iterator[WayOut]:
        """Serve later: how much is found by letting every serving be late and looking how late it then is."""
        relaxed = replace(
            self.event, servings=tuple(replace(s, late=s.late + LATER_AT_MOST_MINUTES) for s in self.event.servings)
        )
        expanded = expand(relaxed)
        result = solve(
            replace(expanded.problem, aims=(Aim.LATENESS,)),
            replace(self.limits, seconds=min(4.0, max(0.1, self.deadline - perf_counter()))),
            Watch(stop=self.watch.stop),
        )
        if result.plan is None:
            return
        late: dict[ServingId, int] = {}
        for (serving_of, _), task in expanded.serves.items():
            minutes = result.plan.end(expanded.problem.task_by_id[task]) - self.event.serving(serving_of).at
            late[serving_of] = max(late.get(serving_of, 0), minutes)
        moved = [(name, rounded_up(minutes)) for name, minutes in late.items() if minutes > 0]
        alone = False
        for serving_id, minutes in moved:
            change: Change = {"kind": "move_serving", "serving": serving_id, "minutes": minutes}
            if self.works(change):
                alone = True
                yield self.way_out(change)
        if moved and not alone:
            most = max(minutes for _, minutes in moved)
            together: Change = {"kind": "all_servings_later", "minutes": most}
            if self.works(together):
                yield self.way_out(together)

    def longer_slots(self) -> Iterator[WayOut]:
        """A demo slot as long as what is shown in it, or a little longer than that."""
        for slot in self.event.slots:
            live = [t.minutes for t in self.problem.tasks if self.expanded.info[t.id].live_in == slot.id]
            for more in (0, 5, 15):
                minutes = sum(live) - slot.minutes + more
                change: Change = {"kind": "lengthen_slot", "slot": slot.id, "minutes": minutes}
                if minutes > 0 and self.works(change):
                    yield self.way_out(change)
                    break

    def longer_hours(self, only: Container[HelperId] | None = None) -> Iterator[WayOut]:
        """One of the crew (or of some of them) comes earlier, or stays longer."""
        for helper in self.event.crew:
            if not helper.windows or self.over() or (only is not None and helper.id not in only):
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
            for minutes in HOURS_TRIED_MINUTES:
                later: Change = {
                    "kind": "widen_window", "helper": helper.id, "start": last.start, "end": last.end + minutes,
                }  # fmt: skip
                if self.works(later):
                    yield WayOut(f"{helper.name} stays until {clock(self.event, last.end + minutes)}.", dict(later))
                    break

    def whole_crew_earlier(self) -> Iterator[WayOut]:
        """Everybody comes earlier."""
        for minutes in (*HOURS_TRIED_MINUTES, 360):
            change: Change = {"kind": "crew_earlier", "minutes": minutes}
            if self.works(change):
                yield self.way_out(change)
                return

    def plenty_would_do(self) -> bool:
        """Whether there is a plan with more than enough of all gear."""
        event = apply_change(self.event, {"kind": "bring_missing", "count": 3})
        plenty = replace(event, gear=tuple(replace(gear, count=gear.count + PLENTY) for gear in event.gear))
        return not self.over() and not refusals(plenty) and feasible(plenty, self.limits, self.watch)

    def more_gear(self) -> Iterator[WayOut]:
        """As many more as are lacking, or one to three more of gear that the dishes compete for."""
        missing = missing_gear(self.event)
        for wanted in missing:
            if all(not wanted.is_met_by(gear) for gear in self.event.gear):
                yield from self.first_that_works(
                    {"kind": "buy_gear", "gear_kind": wanted.kind, "inches": wanted.inches, "count": count}
                    for count in range(wanted.count, wanted.count + 3)
                )
        if len(missing) > 1:
            most = max(wanted.count for wanted in missing)
            yield from self.first_that_works({"kind": "bring_missing", "count": n} for n in range(1, max(4, most + 1)))
        for gear in self.event.gear:
            if gear.id in self.gear_in_use():
                yield from self.first_that_works(
                    {"kind": "add_gear", "gear": gear.id, "count": count} for count in (1, 2, 3)
                )

    def first_that_works(self, changes: Iterable[Change]) -> Iterator[WayOut]:
        """The first of several changes that works, if any does."""
        for change in changes:
            if self.works(change):
                yield self.way_out(change)
                return

    def gear_in_use(self) -> frozenset[GearId]:
        """Gear that any task could take, and gear that there is too little of for a task."""
        options = {o for task in self.problem.tasks for need in task.needs for o in need.options}
        short = {g.id for g in self.event.gear for wanted in missing_gear(self.event) if wanted.is_met_by(g)}
        return frozenset(self.expanded.gear_of[o] for o in options if o in self.expanded.gear_of) | short

    def more_hands(self) -> Iterator[WayOut]:
        """One more helper: with the skill that is short, for no longer than the plan then uses."""
        skills = {FIRE_SKILL: None} | {s: None for i in self.expanded.info.values() for s in sorted(i.skills)}
        for skill in skills:
            if self.over():
                return
            change = self.narrowed(skill)
            if change is not None:
                yield self.way_out(change)

    def narrowed(self, skill: Skill) -> Change | None:
        """The change that adds a helper for the least time that is found to do; None where even all day does not."""
        wanted = str(skill)
        change: Change = {
            "kind": "add_helper", "skills": wanted, "start": self.problem.opens, "end": self.problem.closes,
        }  # fmt: skip
        try:
            expanded = expand(apply_change(self.event, change))
        except ChangeError:
            # A day that goes on into another week is longer than one helper's hours may be.
            return None
        plan = first_plan(expanded, self.limits, self.watch)
        if plan is None:
            return None
        used = times_of_new_helper(expanded, plan, self.event, skill) or times_of_new_helper(expanded, plan, self.event)
        if used is None:
            return change
        return self.shortest_that_works(change, *used)

    def shortest_that_works(self, change: Change, start: int, end: int) -> Change:
        """The change with its hours cut to those, and then from either side for as long as that still works."""
        narrow: Change = {**change, "start": start, "end": end}
        if not self.works(narrow):
            return change
        for step in (60, 30, 15):
            for side, by in (("end", -step), ("start", step)):
                shorter: Change = {**narrow, side: int(narrow[side]) + by}
                if int(shorter["start"]) < int(shorter["end"]) and self.works(shorter):
                    narrow = shorter
        return narrow


def rounded_up(minutes: int) -> int:
    """To the next whole step of minutes."""
    return -(-minutes // STEP_MINUTES) * STEP_MINUTES


def times_of_new_helper(
    expanded: Expanded, plan: Plan, before: Event, skill: Skill | None = None
) -> tuple[int, int] | None:
    """From when until when a helper who was not there before is at work (at work that asks for the skill, if given)."""
    known = {helper.id for helper in before.crew}
    new: set[ResourceId] = {r.id for r in expanded.problem.resources if r.helper is not None and r.helper not in known}
    spans = [
        (plan.start(task.id), plan.end(task))
        for task in expanded.problem.tasks
        for group in plan.placed[task.id].picks
        if new.intersection(group) and (skill is None or skill in expanded.info[task.id].skills)
    ]
    return (min(s for s, _ in spans), max(e for _, e in spans)) if spans else None
