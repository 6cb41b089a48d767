"""The rules of a problem as a CP-SAT model: one method a rule, and `apply` lists them all."""

from collections import defaultdict
from dataclasses import dataclass
from itertools import combinations

from ortools.sat.python import cp_model

from cookout.core.planning.network import StartWindow, all_arcs
from cookout.core.planning.problem import Need, Problem, ResourceId, TaskId
from cookout.core.planning.result import Placed, Plan

Pick = tuple[TaskId, int, ResourceId]


@dataclass(frozen=True, slots=True)
class Around:
    """A plan of which most is held: `free` tasks may move and change hands, `loose` ones only change hands."""

    plan: Plan
    free: frozenset[TaskId]
    loose: frozenset[TaskId] = frozenset()


class Rules:
    """A model of a problem. `start` and `picked` are its decisions; with `around` most of a plan is held."""

    def __init__(
        self,
        problem: Problem,
        windows: dict[TaskId, StartWindow],
        around: Around | None = None,
    ) -> None:
        self.problem = problem
        self.windows = windows
        self.around = around
        self.model = cp_model.CpModel()
        self.start: dict[TaskId, cp_model.IntVar | int] = {}
        self.picked: dict[Pick, cp_model.IntVar | int] = {}
        self.on: dict[ResourceId, list[tuple[TaskId, cp_model.IntVar | int, int]]] = defaultdict(list)
        self.kept: dict[str, list[cp_model.IntVar]] = {}

    def apply(self) -> None:
        """Every rule."""
        self.tasks_stay_in_their_windows()
        self.needs_are_met()
        self.waits_are_kept()
        self.gear_is_not_overbooked()
        self.shifts_do_one_thing_at_a_time()
        if self.around is None:
            self.skilled_hands_are_not_overbooked()

    def held_start(self, task: TaskId) -> int | None:
        """Where a task is held, or None if it may move."""
        if self.around is None or task in self.around.free:
            return None
        return self.around.plan.start(task)

    def held_picks(self, task: TaskId) -> tuple[tuple[ResourceId, ...], ...] | None:
        """The hands in which a task is held, or None if it may change them."""
        if self.around is None or task in self.around.free or task in self.around.loose:
            return None
        return self.around.plan.placed[task].picks

    def tasks_stay_in_their_windows(self) -> None:
        """Each task starts within what its own times, its waits and its possible helpers' shifts leave."""
        for task in self.problem.tasks:
            held, window = self.held_start(task.id), self.windows[task.id]
            if held is not None:
                self.start[task.id] = held
            else:
                self.start[task.id] = self.model.new_int_var(window.earliest, window.latest, task.id)

    def needs_are_met(self) -> None:
        """As many different options are picked for each need as it wants, the same for all that are kept as one."""
        held_as = self._held_as()
        for task in self.problem.tasks:
            held = self.held_picks(task.id)
            for number, need in enumerate(task.needs):
                picked = held_as.get(need.kept_as) if held is None else held[number]
                if picked is not None:
                    for option in picked:
                        self._pick(task.id, number, option, need.amount, 1)
                elif len(need.options) <= need.picks:
                    self._all_options(task.id, number, need)
                else:
                    self._some_options(task.id, number, need)

    def _held_as(self) -> dict[str, tuple[ResourceId, ...]]:
        """What is kept by tasks of which one is held, and so by all of them."""
        found: dict[str, tuple[ResourceId, ...]] = {}
        for name, uses in self.problem.kept.items():
            for task, number in uses:
                picks = self.held_picks(task)
                if picks is not None:
                    found[name] = picks[number]
        return found

    def _all_options(self, task: TaskId, number: int, need: Need) -> None:
        if len(need.options) < need.picks:
            self.model.add_bool_or([])
        for option in need.options:
            self._pick(task, number, option, need.amount, 1)

    def _some_options(self, task: TaskId, number: int, need: Need) -> None:
        literals = self.kept.get(need.kept_as) or self._choice(task, need)
        if need.kept_as:
            self.kept[need.kept_as] = literals
        for option, literal in zip(need.options, literals, strict=True):
            self._pick(task, number, option, need.amount, literal)

    def _choice(self, task: TaskId, need: Need) -> list[cp_model.IntVar]:
        """A literal for each option, of which as many are true as the need picks."""
        literals = [self.model.new_bool_var(f"{task} by {option}") for option in need.options]
        if need.picks == 1:
            self.model.add_exactly_one(literals)
        else:
            self.model.add(sum(literals) == need.picks)
        return literals

    def _pick(self, task: TaskId, number: int, option: ResourceId, amount: int, literal: cp_model.IntVar | int) -> None:
        self.picked[task, number, option] = literal
        self.on[option].append((task, literal, amount))

    def waits_are_kept(self) -> None:
        """Least and most waits between starts, whichever ends the link names."""
        for arc in all_arcs(self.problem):
            if self.held_start(arc.tail) is None or self.held_start(arc.head) is None:
                self.model.add(self.start[arc.head] >= self.start[arc.tail] + arc.minutes)

    def gear_is_not_overbooked(self) -> None:
        """At no minute is more gear in use than there is."""
        for resource in self.problem.resources:
            uses = self.on.get(resource.id, ())
            if resource.helper is not None or not uses:
                continue
            if resource.capacity == 1 and all(amount == 1 for _, _, amount in uses):
                self.model.add_no_overlap([self.interval(task, literal) for task, literal, _ in uses])
            else:
                self.model.add_cumulative(
                    [self.interval(task, literal) for task, literal, _ in uses],
                    [amount for _, _, amount in uses],
                    resource.capacity,
                )

    def shifts_do_one_thing_at_a_time(self) -> None:
        """A helper is in one place at a time, and only within the shift."""
        for resource in self.problem.resources:
            uses = self.on.get(resource.id, ())
            if resource.helper is None or not uses:
                continue
            self.model.add_no_overlap([self.interval(task, literal) for task, literal, _ in uses])
            for task, literal, _ in uses:
                self._within_shift(task, literal, resource.id)

    def _within_shift(self, task: TaskId, literal: cp_model.IntVar | int, shift: ResourceId) -> None:
        resource, minutes = self.problem.resource_by_id[shift], self.problem.task_by_id[task].minutes
        window = self.windows[task]
        if self.held_picks(task) is not None:
            return
        if resource.opens is not None and resource.opens > window.earliest:
            self._if(literal, self.model.add(self.start[task] >= resource.opens))
        if resource.closes is not None and resource.closes - minutes < window.latest:
            self._if(literal, self.model.add(self.start[task] <= resource.closes - minutes))

    def skilled_hands_are_not_overbooked(self) -> None:
        """Work that only a few helpers can do never needs more of them at once (implied; it tightens bounds)."""
        groups = {need.options for task in self.problem.tasks for need in task.needs if len(need.options) > 1}
        groups = {group for group in groups if self.problem.resource_by_id[group[0]].helper is not None}
        for group in groups:
            members = frozenset(group)
            intervals, hands = [], []
            for task in self.problem.tasks:
                wanted = sum(need.picks for need in task.needs if need.options and members.issuperset(need.options))
                if wanted and task.minutes:
                    intervals.append(self.interval(task.id, 1))
                    hands.append(wanted)
            if len(intervals) > 1:
                self.model.add_cumulative(intervals, hands, self._most_on_duty(members))

    def _most_on_duty(self, shifts: frozenset[ResourceId]) -> int:
        resources = [self.problem.resource_by_id[shift] for shift in shifts]
        opens = [self.problem.opens if r.opens is None else r.opens for r in resources]
        closes = [self.problem.closes if r.closes is None else r.closes for r in resources]
        return max(sum(o <= minute < c for o, c in zip(opens, closes, strict=True)) for minute in opens)

    def breaks_are_kept(self, helper: str) -> None:
        """A helper's hot tasks with gaps shorter than a break form no stretch longer than the helper bears.

        Quadratic in the hot tasks, so it is added only for helpers whose breaks a plan has missed.
        """
        rule = next(r for r in self.problem.breaks if r.helper == helper)
        mine = self._hot_picks(helper)
        begun: dict[TaskId, cp_model.IntVar] = {}
        for task, literal in mine.items():
            begun[task] = self.model.new_int_var(self.problem.opens, self.problem.closes, f"stretch of {task}")
            minutes = self.problem.task_by_id[task].minutes
            self.model.add(begun[task] <= self.start[task])
            self._if(literal, self.model.add(self.start[task] + minutes - begun[task] <= rule.stretch_minutes))
        for one, other in combinations(mine, 2):
            self._stretch_pair(one, other, (mine[one], mine[other]), begun, rule.break_minutes)

    def _hot_picks(self, helper: str) -> dict[TaskId, cp_model.IntVar | int]:
        """Whether the helper does each hot task that is open to one of the helper's shifts."""
        picks: dict[TaskId, list[cp_model.IntVar | int]] = defaultdict(list)
        for shift in self.problem.shifts_by_helper.get(helper, ()):
            for task, literal, _ in self.on.get(shift, ()):
                if self.problem.task_by_id[task].hot:
                    picks[task].append(literal)
        return {task: self._any_of(f"{task} by {helper}", literals) for task, literals in picks.items()}

    def _any_of(self, name: str, literals: list[cp_model.IntVar | int]) -> cp_model.IntVar | int:
        """One literal for several of which at most one can be true, for shifts of one helper never overlap."""
        if len(literals) == 1:
            return literals[0]
        either = self.model.new_bool_var(name)
        self.model.add(sum(literals) == either)
        return either

    def _stretch_pair(
        self,
        one: TaskId,
        other: TaskId,
        both: tuple[cp_model.IntVar | int, cp_model.IntVar | int],
        begun: dict[TaskId, cp_model.IntVar],
        pause: int,
    ) -> None:
        """Either a break lies between the two, or the later belongs to a stretch begun no later than the earlier's."""
        model = self.model
        one_end = self.start[one] + self.problem.task_by_id[one].minutes
        other_end = self.start[other] + self.problem.task_by_id[other].minutes
        far_after = model.new_bool_var(f"break between {one} and {other}")
        far_before = model.new_bool_var(f"break between {other} and {one}")
        near_after = model.new_bool_var(f"{other} soon after {one}")
        near_before = model.new_bool_var(f"{one} soon after {other}")
        model.add(self.start[other] >= one_end + pause).only_enforce_if(far_after)
        model.add(self.start[one] >= other_end + pause).only_enforce_if(far_before)
        model.add(begun[other] <= begun[one]).only_enforce_if(near_after)
        model.add(begun[one] <= begun[other]).only_enforce_if(near_before)
        model.add(self.start[other] >= one_end).only_enforce_if(near_after)
        model.add(self.start[one] >= other_end).only_enforce_if(near_before)
        choice = [far_after, far_before, near_after, near_before]
        held = [literal for literal in both if not isinstance(literal, int)]
        model.add_bool_or([*choice, *(literal.negated() for literal in held)])

    def _if(self, literal: cp_model.IntVar | int, constraint: cp_model.Constraint) -> None:
        if not isinstance(literal, int):
            constraint.only_enforce_if(literal)

    def interval(self, task: TaskId, literal: cp_model.IntVar | int) -> cp_model.IntervalVar:
        """The task's minutes, there only if the literal is true."""
        minutes = self.problem.task_by_id[task].minutes
        if isinstance(literal, int):
            return self.model.new_fixed_size_interval_var(self.start[task], minutes, task)
        return self.model.new_optional_fixed_size_interval_var(self.start[task], minutes, literal, task)

    def hint(self, plan: Plan) -> None:
        """Tell the solver where a known plan puts everything."""
        for task, start in self.start.items():
            if not isinstance(start, int):
                self.model.add_hint(start, plan.start(task))
        # Needs kept as one share their literals, and the solver takes each hint but once.
        hinted: set[int] = set()
        for (task, number, option), literal in self.picked.items():
            if not isinstance(literal, int) and literal.index not in hinted:
                hinted.add(literal.index)
                self.model.add_hint(literal, option in plan.placed[task].picks[number])

    def read(self, value: "cp_model.CpSolver | cp_model.CpSolverSolutionCallback") -> Plan:
        """The plan of a solution."""
        placed = {}
        for task in self.problem.tasks:
            picks = tuple(
                tuple(option for option in need.options if self._is_picked(value, (task.id, number, option)))
                for number, need in enumerate(task.needs)
            )
            placed[task.id] = Placed(task.id, self._value(value, self.start[task.id]), picks)
        return Plan(placed)

    def _is_picked(self, value: "cp_model.CpSolver | cp_model.CpSolverSolutionCallback", pick: Pick) -> bool:
        literal = self.picked.get(pick, 0)
        return bool(self._value(value, literal))

    def _value(
        self, value: "cp_model.CpSolver | cp_model.CpSolverSolutionCallback", variable: cp_model.IntVar | int
    ) -> int:
        return variable if isinstance(variable, int) else int(value.value(variable))
