"""The aims of a problem as expressions of its model, each with the least value that can be seen without solving."""

from ortools.sat.python import cp_model

from cookout.core.planning.network import StartWindow
from cookout.core.planning.problem import HANDED_OVER, Aim, Problem, ResourceId, Stood, TaskId
from cookout.core.planning.solver.rules import Rules
from cookout.core.planning.values import PRESENCE_PER_WORK, even_share

Expression = cp_model.LinearExpr | cp_model.IntVar | int


def expression(aim: Aim, rules: Rules) -> Expression:
    """The aim's value in the model, with what the model needs to reckon it."""
    return EXPRESSIONS[aim](rules)


def makespan(rules: Rules) -> Expression:
    """Minutes to the last end."""
    problem, model = rules.problem, rules.model
    last = model.new_int_var(problem.opens, problem.closes, "last end")
    leads = {link.before for link in problem.links if (link.least or 0) >= 0}
    for task in problem.tasks:
        if task.id not in leads or task.minutes:
            model.add(last >= rules.start[task.id] + task.minutes)
    return last - problem.opens


def lateness(rules: Rules) -> Expression:
    """Minutes by which dues are missed."""
    problem, model = rules.problem, rules.model
    late: list[cp_model.IntVar] = []
    for due in problem.dues:
        task = problem.task_by_id[due.task]
        worst = max(0, rules.windows[task.id].latest + task.minutes - due.at)
        if worst:
            minutes = model.new_int_var(0, worst, f"{task.id} late")
            model.add(minutes >= rules.start[task.id] + task.minutes - due.at)
            late.append(minutes)
    return cp_model.LinearExpr.sum(late)


def freshness(rules: Rules) -> Expression:
    """Minutes that finished food waits beyond what it wants."""
    problem, model = rules.problem, rules.model
    waits: list[cp_model.IntVar] = []
    for wish in problem.freshness:
        made = problem.task_by_id[wish.made]
        used = rules.start[wish.used] if wish.used is not None else (wish.by or 0)
        longest = max(problem.closes, wish.by or 0) - problem.opens
        stale = model.new_int_var(0, longest, f"{wish.made} waits")
        model.add(stale >= used - rules.start[made.id] - made.minutes - wish.free)
        waits.append(stale)
    return cp_model.LinearExpr.sum(waits)


def crew_day(rules: Rules) -> Expression:
    """Minutes from the earliest call to the horizon's end, and idle presence beyond as much again as the work."""
    problem, model = rules.problem, rules.model
    working = [task for task in problem.tasks if is_hands_on(problem, task.id)]
    if not working:
        return 0
    called = model.new_int_var(problem.opens, problem.closes, "earliest call")
    for task in working:
        model.add(called <= rules.start[task.id])
    idle = [idle_presence(rules, shift) for shift in shifts_in_use(rules)]
    return problem.closes - called + cp_model.LinearExpr.sum(idle)


def idle_presence(rules: Rules, shift: ResourceId) -> Expression:
    """Minutes by which a shift's presence exceeds twice its work, 0 without work."""
    problem, model = rules.problem, rules.model
    resource = problem.resource_by_id[shift]
    opens = problem.opens if resource.opens is None else resource.opens
    closes = problem.closes if resource.closes is None else resource.closes
    first = model.new_int_var(opens, closes, f"{shift} from")
    last = model.new_int_var(opens, closes, f"{shift} until")
    idle = model.new_int_var(0, max(0, closes - opens), f"{shift} idle")
    work = []
    for task, literal, _ in rules.on[shift]:
        minutes = problem.task_by_id[task].minutes
        begins = model.add(first <= rules.start[task])
        ends = model.add(last >= rules.start[task] + minutes)
        if not isinstance(literal, int):
            begins.only_enforce_if(literal)
            ends.only_enforce_if(literal)
        work.append(minutes * literal)
    model.add(idle >= last - first - PRESENCE_PER_WORK * sum(work))
    return idle


def fair_shares(rules: Rules) -> Expression:
    """Minutes of work above an even share, summed."""
    problem, model = rules.problem, rules.model
    total = total_work(problem)
    share = even_share(total, len(problem.shifts_by_helper))
    above: list[cp_model.IntVar] = []
    for helper, shifts in problem.shifts_by_helper.items():
        work = [
            problem.task_by_id[task].minutes * literal
            for shift in shifts
            for task, literal, _ in rules.on.get(shift, ())
        ]
        if work:
            extra = model.new_int_var(0, total, f"{helper} above share")
            model.add(extra >= sum(work) - share)
            above.append(extra)
    return cp_model.LinearExpr.sum(above)


def changes(rules: Rules) -> Expression:
    """Tasks that start at another minute than before, and those that others do, each by its weight."""
    terms: list[Expression] = []
    for stood in rules.problem.before:
        terms.append(_moved(rules, stood))
        terms.append(HANDED_OVER * _handed_over(rules, stood))
    return cp_model.LinearExpr.sum(terms)


def _moved(rules: Rules, stood: Stood) -> Expression:
    start, window = rules.start[stood.task], rules.windows[stood.task]
    if isinstance(start, int):
        return int(start != stood.start)
    if not window.earliest <= stood.start <= window.latest:
        return 1
    moved = rules.model.new_bool_var(f"{stood.task} moved")
    rules.model.add(start == stood.start).only_enforce_if(moved.negated())
    return moved


def _handed_over(rules: Rules, stood: Stood) -> Expression:
    """Whether others do a task. As many do it in every plan, so it is enough that all are there who did it before."""
    if not can_keep_hands(rules.problem, stood):
        return 1
    picked: dict[str, list[cp_model.IntVar | int]] = {helper: [] for helper in stood.helpers}
    for number, need in enumerate(rules.problem.task_by_id[stood.task].needs):
        for option in need.options:
            helper = rules.problem.resource_by_id[option].helper
            if helper in picked:
                picked[helper].append(rules.picked.get((stood.task, number, option), 0))
    if not picked:
        return 0
    handed = rules.model.new_bool_var(f"{stood.task} handed over")
    for literals in picked.values():
        rules.model.add(sum(literals) + handed >= 1)
    return handed


def can_keep_hands(problem: Problem, stood: Stood) -> bool:
    """Whether those who did a task before could do it again, and no others with them."""
    hands, able = 0, set()
    for need in problem.task_by_id[stood.task].needs:
        owners = {problem.resource_by_id[option].helper for option in need.options} - {None}
        hands += need.picks if owners else 0
        able |= owners
    return hands == len(stood.helpers) and stood.helpers <= able


def _least_changes(problem: Problem, windows: dict[TaskId, StartWindow]) -> int:
    """Changes that no plan can spare: starts out of their windows, and hands that are not there."""
    return sum(
        (not windows[stood.task].earliest <= stood.start <= windows[stood.task].latest)
        + HANDED_OVER * (not can_keep_hands(problem, stood))
        for stood in problem.before
    )


def shifts_in_use(rules: Rules) -> list[ResourceId]:
    """The shifts that could get work."""
    return [r.id for r in rules.problem.resources if r.helper is not None and rules.on.get(r.id)]


def is_hands_on(problem: Problem, task: TaskId) -> bool:
    """Whether a task needs a helper."""
    return any(
        problem.resource_by_id[option].helper is not None
        for need in problem.task_by_id[task].needs
        for option in need.options
    )


def total_work(problem: Problem) -> int:
    """All minutes of all helpers' work, which no plan changes."""
    return sum(
        task.minutes * need.picks
        for task in problem.tasks
        for need in task.needs
        if need.options and problem.resource_by_id[need.options[0]].helper is not None
    )


def floor(aim: Aim, problem: Problem, windows: dict[TaskId, StartWindow]) -> int:
    """A value that no plan can beat, from windows alone."""
    if aim is Aim.MAKESPAN:
        return max((windows[t.id].earliest + t.minutes for t in problem.tasks), default=problem.opens) - problem.opens
    if aim is Aim.LATENESS:
        ends = {due.task: windows[due.task].earliest + problem.task_by_id[due.task].minutes for due in problem.dues}
        return sum(max(0, ends[due.task] - due.at) for due in problem.dues)
    if aim is Aim.CREW_DAY:
        working = [t.id for t in problem.tasks if is_hands_on(problem, t.id)]
        return problem.closes - min((windows[t].latest for t in working), default=problem.closes)
    return _least_changes(problem, windows) if aim is Aim.CHANGES else 0


EXPRESSIONS = {
    Aim.MAKESPAN: makespan,
    Aim.LATENESS: lateness,
    Aim.FRESHNESS: freshness,
    Aim.CREW_DAY: crew_day,
    Aim.FAIR_SHARES: fair_shares,
    Aim.CHANGES: changes,
}
