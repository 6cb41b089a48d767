"""The difference between two plans in plain words, what matters most first."""

from collections import Counter
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from datetime import date, datetime, timedelta

from cookout.core.planning.comparison import (
    ChangeKind,
    Comparison,
    FuelChange,
    HelperChange,
    LevelChange,
    ServingChange,
    TaskChange,
)
from cookout.core.planning.problem import Aim
from cookout.core.planning.record import PlanRecord, Warning
from cookout.core.planning.wording import span

NOTHING = "Nothing changes."
# So many of a kind are told one by one, the rest as a number.
_FEW = 3


def sentences(before: PlanRecord, after: PlanRecord, found: Comparison) -> tuple[str, ...]:
    """All that is said of what was found between two plans; one sentence at the least."""
    if not after.tasks:
        return tuple(_no_plan(before, after))
    words = _Words(before, after)
    if not before.tasks:
        return ("There was no plan before, and now there is one.", *words.food(found.servings))
    said = (
        *words.food(found.servings),
        *_warned(after, found.new_warnings),
        *words.calls(found.helpers),
        *words.work(found.tasks),
        *_coals(found.fuel),
        *_freshness(found.levels),
    )
    return (NOTHING, *said) if found.unchanged else said


def _no_plan(before: PlanRecord, after: PlanRecord) -> Iterator[str]:
    yield "There is no plan for this." if before.tasks else "There is no plan, before or after."
    yield from after.obstacles[:_FEW]


def _was_late(change: ServingChange | None, minutes: int) -> str:
    """How late a dish was before, behind how late it is; nothing for a new dish."""
    if change is None:
        return ", as before"
    if change.before is None:
        return ""
    before = change.before.late_minutes
    if before == minutes:
        return ", as before"
    return f", {span(before)} before" if before else ", on time before"


def _caught_up(change: ServingChange) -> bool:
    was, becomes = change.before, change.after
    return was is not None and becomes is not None and was.late_minutes > 0 and not becomes.late_minutes


def _other_people(change: ServingChange) -> str:
    if change.before is None or change.after is None:
        return ""
    more = change.after.people - change.before.people
    if not more:
        return ""
    return f"{change.dish_name} is for {change.after.people} people, {_more(more)}."


def _warned(after: PlanRecord, warnings: tuple[Warning, ...]) -> Iterator[str]:
    """What is newly to be minded, but for what is late, which was said before."""
    late = {served.dish: f"{served.dish_name} is on the table" for served in after.servings if served.late_minutes}
    warnings = tuple(w for w in warnings if w.about not in late or not w.text.startswith(late[w.about]))
    for warning in warnings[:_FEW]:
        yield f"New to mind: {warning.text}"
    if len(warnings) > _FEW:
        yield f"And {len(warnings) - _FEW} more to mind."


def _coals(fuel: FuelChange) -> Iterator[str]:
    more = fuel.after - fuel.before
    if more:
        yield f"{_more(more).capitalize()} {'coal' if abs(more) == 1 else 'coals'}."


def _freshness(levels: Iterable[LevelChange]) -> Iterator[str]:
    for level in levels:
        if level.name == Aim.FRESHNESS and level.before is not None and level.after is not None:
            longer = level.after - level.before
            if longer:
                yield f"Finished food waits {span(longer)} {'longer' if longer > 0 else 'less'} in all."


@dataclass(frozen=True, slots=True)
class _Words:
    """Sentences that name helpers and times of the two plans."""

    before: PlanRecord
    after: PlanRecord

    @property
    def first_day(self) -> date:
        """The day on which the later plan begins, whose times are told without it."""
        return min(task.starts_at for task in self.after.tasks).date()

    def clock(self, at: datetime) -> str:
        """A time of day, with the weekday where it is not the first day."""
        return f"{at:%H:%M}" if at.date() == self.first_day else f"{at:%a %H:%M}"

    def name(self, helper: str) -> str:
        """The name of one of the crew."""
        known = {each.id: each.name for each in (*self.before.helpers, *self.after.helpers)}
        return known.get(helper, helper)

    def food(self, servings: tuple[ServingChange, ...]) -> Iterator[str]:
        """What guests notice: what is late, then other times, other numbers, and dishes that come or go."""
        yield from self.late(servings)
        yield from dict.fromkeys(said for said in map(self.other_time, servings) if said)
        yield from (said for said in map(_other_people, servings) if said)
        for change in servings:
            if change.before is None:
                yield f"{change.dish_name} is new at {change.serving_name}."
            elif change.after is None:
                yield f"{change.dish_name} is no longer served at {change.serving_name}."

    def late(self, servings: tuple[ServingChange, ...]) -> Iterator[str]:
        """Each dish that is late, each that no longer is, or that all is on time."""
        late = [served for served in self.after.servings if served.late_minutes]
        changes = {(change.serving, change.dish): change for change in servings}
        for served in late:
            was = _was_late(changes.get((served.serving, served.dish)), served.late_minutes)
            yield f"{served.dish_name} is {span(served.late_minutes)} late at {served.serving_name}{was}."
        caught_up = [change for change in servings if _caught_up(change)]
        yield from (f"{change.dish_name} is on time at {change.serving_name} now." for change in caught_up)
        if not late and not caught_up and self.after.servings:
            still = self.before.servings and not any(served.late_minutes for served in self.before.servings)
            yield f"Everything is {'still ' if still else ''}on time."

    def other_time(self, change: ServingChange) -> str:
        """When a serving is, where that differs."""
        if change.before is None or change.after is None:
            return ""
        moved = _minutes(change.before.due_at, change.after.due_at)
        return f"{change.serving_name} is at {self.clock(change.after.due_at)}, {_sooner(moved)}." if moved else ""

    def calls(self, helpers: tuple[HelperChange, ...]) -> Iterator[str]:
        """Who is needed or not, called at another time, or free at another time."""
        for change in helpers:
            if change.called_after is None and change.called_before is not None:
                yield f"{change.name} is not needed any more."
            elif change.called_after is not None and change.called_before is None:
                free = change.free_after or change.called_after
                yield f"{change.name} is needed from {self.clock(change.called_after)} to {self.clock(free)}."
            elif said := self.hours(change):
                yield f"{change.name} is {said}."

    def hours(self, change: HelperChange) -> str:
        """When one of the crew must come and may go, where that differs."""
        parts = [
            self.other_hour("called", change.called_before, change.called_after),
            self.other_hour("free", change.free_before, change.free_after),
        ]
        return ", and ".join(part for part in parts if part)

    def other_hour(self, what: str, before: datetime | None, after: datetime | None) -> str:
        """One of these times with the difference; nothing where there is none."""
        if before is None or after is None or before == after:
            return ""
        return f"{what} at {self.clock(after)}, {_sooner(_minutes(before, after))}"

    def work(self, tasks: tuple[TaskChange, ...]) -> Iterator[str]:
        """How many tasks move or change hands, and whose; what is new, what falls away; gear and other work."""
        moves = [change for change in tasks if change.kind in _MOVING]
        parts = [self.moved(moves)] if moves else []
        parts += self.handed_over(tasks)
        if parts:
            yield f"{'; '.join(parts)}."
        yield from _counted(tasks)

    def moved(self, moves: list[TaskChange]) -> str:
        """How many tasks move, and by how much where it is the same for all."""
        by = {_shift(change) for change in moves}
        how = f", all {_sooner(by.pop())}" if len(by) == 1 and len(moves) > 1 else ""
        verb = "moves" if len(moves) == 1 else "move"
        return f"{len(moves)} of {_tasks(len(self.after.tasks))} {verb}{how}"

    def handed_over(self, tasks: tuple[TaskChange, ...]) -> list[str]:
        """Who gets how many of whose tasks, the most first."""
        passed = Counter(pair for change in tasks if change.kind in _PASSING for pair in _passed(change))
        ranked = sorted(passed.items(), key=lambda item: (-item[1], item[0]))
        said = [self.handed(*pair, count) for pair, count in ranked[:_FEW]]
        rest = sum(count for _, count in ranked[_FEW:])
        return [*said, f"{_tasks(rest)} more {'changes' if rest == 1 else 'change'} hands"] if rest else said

    def handed(self, giver: str, taker: str, count: int) -> str:
        """That a helper gets so many tasks of another; either may be nobody."""
        if not taker:
            return f"{self.name(giver)} is spared {_tasks(count)}"
        return f"{self.name(taker)} gets {count} of {self.name(giver)}'s" if giver else self.helps(taker, count)

    def helps(self, taker: str, count: int) -> str:
        """That a helper joins in tasks which nobody gives away."""
        return f"{self.name(taker)} joins in {_tasks(count)}"


_MOVING = frozenset({ChangeKind.MOVED, ChangeKind.MOVED_AND_HANDED_OVER})
_PASSING = frozenset({ChangeKind.HANDED_OVER, ChangeKind.MOVED_AND_HANDED_OVER})


def _counted(tasks: tuple[TaskChange, ...]) -> Iterator[str]:
    """The other kinds of change, each as a number."""
    counts = Counter(change.kind for change in tasks)
    if other := counts[ChangeKind.OTHER_GEAR]:
        yield f"{_tasks(other)} {'takes' if other == 1 else 'take'} another piece of gear."
    if other := counts[ChangeKind.OTHER_WORK]:
        verbs = "lasts another time or asks" if other == 1 else "last another time or ask"
        yield f"{_tasks(other)} {verbs} for something else."
    if added := counts[ChangeKind.ADDED]:
        yield f"{_tasks(added)} {'is' if added == 1 else 'are'} new."
    if removed := counts[ChangeKind.REMOVED]:
        yield f"{_tasks(removed)} {'falls' if removed == 1 else 'fall'} away."


def _passed(change: TaskChange) -> list[tuple[str, str]]:
    """Who gave the task to whom; an empty id where hands become more or fewer."""
    assert change.before is not None
    assert change.after is not None
    givers = [each for each in change.before.helpers if each not in change.after.helpers]
    takers = [each for each in change.after.helpers if each not in change.before.helpers]
    length = max(len(givers), len(takers))
    givers, takers = ([*each, *[""] * (length - len(each))] for each in (givers, takers))
    return list(zip(givers, takers, strict=True))


def _shift(change: TaskChange) -> int:
    assert change.before is not None
    assert change.after is not None
    return _minutes(change.before.starts_at, change.after.starts_at)


def _minutes(before: datetime, after: datetime) -> int:
    """Minutes that really pass from one to the other, across clock changes too."""
    return round((after.timestamp() - before.timestamp()) / timedelta(minutes=1).total_seconds())


def _sooner(minutes: int) -> str:
    return f"{span(minutes)} {'earlier' if minutes < 0 else 'later'}"


def _more(count: int) -> str:
    return f"{abs(count)} {'more' if count > 0 else 'fewer'}"


def _tasks(count: int) -> str:
    return f"{count} {'task' if count == 1 else 'tasks'}"
