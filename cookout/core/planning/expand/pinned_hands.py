"""Hands for a task that is pinned to helpers: those, each by name, and others for what hands are left."""

from collections.abc import Iterator

from cookout.core.planning.event import Helper, HelperId
from cookout.core.planning.expand.crew import Crew, Shift, may_do
from cookout.core.planning.expand.pinning import Pinning
from cookout.core.planning.expanded import FIRE_KINDS, TaskInfo
from cookout.core.planning.problem import Need, ResourceId, Task
from cookout.core.planning.wording import clock, span


def pinned_hands(crew: Crew, pinning: Pinning, info: TaskInfo, task: Task) -> tuple[Need, ...]:
    """The hands that a task asks for. Where its pin cannot be kept a need has no options, and why is noted."""
    wanted, usual = pinning.helpers(task.id), crew.needs(info, task)
    if not wanted:
        return usual
    if len(wanted) > info.hands:
        pinning.fault(_too_many(info, len(wanted)), task.id)
        return (Need(()),)
    needs = _needs_for(crew, wanted, usual)
    for helper, need in needs.items():
        if not need.options:
            shifts = crew.shifts_of(helper)
            why = " and ".join(_reasons(pinning, shifts, info, task))
            hours = any(may_do(shift.helper, info, task.minutes) for shift in shifts) and bool(why)
            pinning.fault(why or f"It is shown live by {_presenter(pinning, info)}", task.id, hours=hours)
    return (*needs.values(), *_rest(crew, wanted, usual))


def _needs_for(crew: Crew, wanted: tuple[HelperId, ...], usual: tuple[Need, ...]) -> dict[HelperId, Need]:
    """A need for each of the helpers, with those shifts of theirs that could do it."""
    open_to_all = {option for need in usual for option in need.options}
    return {helper: Need(_own(crew, helper, open_to_all)) for helper in wanted}


def _own(crew: Crew, helper: HelperId, options: set[ResourceId]) -> tuple[ResourceId, ...]:
    return tuple(shift.id for shift in crew.shifts_of(helper) if shift.id in options)


def _rest(crew: Crew, wanted: tuple[HelperId, ...], usual: tuple[Need, ...]) -> Iterator[Need]:
    """The usual needs less what the pinned helpers do of them; a presenter's own need is met by nobody else."""
    left = list(wanted)
    for need in usual:
        mine = [helper for helper in left if _own(crew, helper, set(need.options))][: need.picks]
        left = [helper for helper in left if helper not in mine]
        taken = {shift.id for helper in wanted for shift in crew.shifts_of(helper)}
        others = tuple(option for option in need.options if option not in taken)
        if need.picks > len(mine):
            yield Need(others, picks=need.picks - len(mine))
    if left:
        yield Need(())


def _too_many(info: TaskInfo, pinned: int) -> str:
    if info.hands == 0:
        return "Nobody is needed for it: it is waiting"
    hands = "one helper" if info.hands == 1 else f"{info.hands} helpers"
    return f"It takes {hands}, and {pinned} are pinned to it"


def _reasons(pinning: Pinning, shifts: tuple[Shift, ...], info: TaskInfo, task: Task) -> Iterator[str]:
    """Why none of a helper's shifts can do a task."""
    helper = shifts[0].helper if shifts else None
    if helper is None:
        yield "whoever is pinned to it is there at no time"
        return
    yield from _unable(helper, info, task)
    if not any(shift.has_room_for(task) for shift in shifts):
        hours = [f"from {clock(pinning.event, w.start)} to {clock(pinning.event, w.end)}" for w in helper.windows]
        yield f"{helper.name} is there {' and '.join(hours)}"
    elif all(shift.slots for shift in shifts if shift.has_room_for(task)) and info.live_in is None:
        slots = {slot for shift in shifts if shift.has_room_for(task) for slot in shift.slots}
        names = " and ".join(slot.name for slot in pinning.event.slots if slot.id in slots)
        yield f"{helper.name} presents {names} then, and does nothing else"


def _unable(helper: Helper, info: TaskInfo, task: Task) -> Iterator[str]:
    """What a helper lacks for a task: skills, leave to be at the fire, or staying power at it."""
    missing = sorted(info.skills - helper.skills)
    if missing:
        yield f"{helper.name} lacks the {' and '.join(missing)} skill"
    grown = helper.adult or helper.fire_allowed
    if info.kind in FIRE_KINDS and not grown:
        yield f"{helper.name} is a minor whom nobody has allowed to tend the fire"
    elif info.hot and not grown:
        yield f"{helper.name} is a minor whom nobody has allowed to handle hot iron"
    if info.hot and task.minutes > helper.hot_stretch_minutes:
        stretch = span(helper.hot_stretch_minutes)
        yield f"{helper.name} stays at the fire for {stretch} at most, and it takes {span(task.minutes)}"


def _presenter(pinning: Pinning, info: TaskInfo) -> str:
    slot = next((slot for slot in pinning.event.slots if slot.id == info.live_in), None)
    return pinning.event.helper(slot.presenter).name if slot is not None else "somebody else"
