"""Changes to an event that would let it be planned: their data, their words, and how each is applied.

A change is a flat mapping, so that it travels in JSON and through a form:

    {"kind": "add_gear", "gear": ID, "count": N}
    {"kind": "add_helper", "skills": "fire, baking", "start": MINUTE, "end": MINUTE}
    {"kind": "widen_window", "helper": ID, "start": MINUTE, "end": MINUTE}
    {"kind": "crew_earlier", "minutes": N}
    {"kind": "move_serving", "serving": ID, "minutes": N}
    {"kind": "all_servings_later", "minutes": N}
    {"kind": "lengthen_slot", "slot": ID, "minutes": N}
    {"kind": "bring_missing", "count": N}
    {"kind": "move_slot", "slot": ID, "minutes": N}
    {"kind": "buy_gear", "gear_kind": "oven", "inches": 14, "count": N}
    {"kind": "hold", "recipe": ID, "held": "hot", "minutes": N}
    {"kind": "rest_less", "recipe": ID, "minutes": N}
    {"kind": "remove_helper", "helper": ID}

and those of `changes` and `pins`.
"""

from dataclasses import replace

from cookout.core.errors import QuantityError
from cookout.core.kitchen.recipe import Keeps, Recipe, RecipeId, Skill
from cookout.core.planning.changes import (
    Change,
    ChangeError,
    helper_hours,
    more_people,
    move_servings,
    refuse_unwritable,
    remove_gear,
    set_air,
    set_wind,
)
from cookout.core.planning.event import Event, Gear, GearId, GearKind, Helper, HelperId, Window
from cookout.core.planning.gear_wanted import missing_gear
from cookout.core.planning.pins import pin_task, unpin_tasks, without_helper


def apply_change(event: Event, change: Change) -> Event:
    """The event with one change made; `ChangeError` where it does not fit, or no event file could say what it makes."""
    changed = _changed(event, change)
    refuse_unwritable(event, changed)
    return changed


def _changed(event: Event, change: Change) -> Event:
    try:
        return APPLY[str(change["kind"])](event, change)
    except QuantityError as error:
        raise ChangeError(str(error)) from error
    except (KeyError, ValueError) as error:
        raise ChangeError(
            f"the change {change} does not fit this event ({error}); plan again and take a change from the new list"
        ) from error


def add_gear(event: Event, change: Change) -> Event:
    """More of some gear that the event has."""
    if all(gear.id != change["gear"] for gear in event.gear):
        raise KeyError(change["gear"])
    more = int(change["count"])
    gear = tuple(replace(g, count=g.count + more) if g.id == change["gear"] else g for g in event.gear)
    return replace(event, gear=gear)


def buy_gear(event: Event, change: Change) -> Event:
    """Gear of a kind or size that the event has none of."""
    kind = GearKind(str(change["gear_kind"]))
    inches = int(change["inches"]) if change.get("inches") else None
    name = f"{inches}-inch oven" if inches else kind.value
    new = Gear(
        id=GearId(unused_id(f"more-{kind.value}-{inches or 1}", {g.id for g in event.gear})),
        kind=kind,
        name=name,
        count=int(change["count"]),
        inches=inches,
        coals=100 if kind is GearKind.CHIMNEY else None,
        spots=4 if kind is GearKind.TABLE else None,
    )
    return replace(event, gear=(*event.gear, new))


def add_helper(event: Event, change: Change) -> Event:
    """One adult more, with certain skills, for a certain time."""
    skills = frozenset(Skill(skill) for skill in str(change["skills"]).split(", ") if skill)
    helper = Helper(
        id=HelperId(unused_id("one-more-helper", {h.id for h in event.crew})),
        name="One more helper",
        skills=skills,
        windows=(Window(int(change["start"]), int(change["end"])),),
    )
    return replace(event, crew=(*event.crew, helper))


def widen_window(event: Event, change: Change) -> Event:
    """A helper who comes earlier or stays longer."""
    helper = event.helper(HelperId(str(change["helper"])))
    wider = Window(int(change["start"]), int(change["end"]))
    apart = [w for w in helper.windows if w.end < wider.start or w.start > wider.end]
    touching = [w for w in helper.windows if w not in apart]
    joined = Window(min([wider.start, *(w.start for w in touching)]), max([wider.end, *(w.end for w in touching)]))
    windows = tuple(sorted([*apart, joined], key=lambda w: w.start))
    crew = tuple(replace(h, windows=windows) if h.id == helper.id else h for h in event.crew)
    return replace(event, crew=crew)


def crew_earlier(event: Event, change: Change) -> Event:
    """Everybody's first hours begin earlier."""
    minutes = int(change["minutes"])
    return replace(event, crew=tuple(_earlier(helper, minutes) for helper in event.crew))


def _earlier(helper: Helper, minutes: int) -> Helper:
    first = min(helper.windows, key=lambda window: window.start, default=None)
    windows = (Window(w.start - minutes, w.end) if w == first else w for w in helper.windows)
    return replace(helper, windows=tuple(windows))


def move_serving(event: Event, change: Change) -> Event:
    """A serving at another time."""
    moved = event.serving(next(s.id for s in event.servings if s.id == change["serving"]))
    servings = tuple(replace(s, at=s.at + int(change["minutes"])) if s.id == moved.id else s for s in event.servings)
    return replace(event, servings=servings)


def all_servings_later(event: Event, change: Change) -> Event:
    """Every serving later by as much."""
    minutes = int(change["minutes"])
    return replace(event, servings=tuple(replace(s, at=s.at + minutes) for s in event.servings))


def lengthen_slot(event: Event, change: Change) -> Event:
    """A demo slot that goes on for longer."""
    if all(slot.id != change["slot"] for slot in event.slots):
        raise KeyError(change["slot"])
    more = int(change["minutes"])
    slots = tuple(replace(s, minutes=s.minutes + more) if s.id == change["slot"] else s for s in event.slots)
    return replace(event, slots=slots)


def bring_missing(event: Event, change: Change) -> Event:
    """So many more of all that the recipes ask for and the event has too few of."""
    count = int(change["count"])
    for wanted in missing_gear(event):
        have = next((gear for gear in event.gear if wanted.is_met_by(gear)), None)
        if have is not None:
            event = add_gear(event, {"kind": "add_gear", "gear": have.id, "count": count})
        elif wanted.kind in {kind.value for kind in GearKind}:
            more: Change = {"kind": "buy_gear", "gear_kind": wanted.kind, "inches": wanted.inches, "count": count}
            event = buy_gear(event, more)
    return event


def move_slot(event: Event, change: Change) -> Event:
    """A demo slot, and what must stand ready for it, at another time."""
    minutes = int(change["minutes"])
    if all(slot.id != change["slot"] for slot in event.slots):
        raise KeyError(change["slot"])
    slots = tuple(
        replace(
            slot,
            starts_at=slot.starts_at + minutes,
            ready_made=tuple(replace(ready, by=ready.by + minutes) for ready in slot.ready_made),
        )
        if slot.id == change["slot"]
        else slot
        for slot in event.slots
    )
    return replace(event, slots=slots)


def hold(event: Event, change: Change) -> Event:
    """A dish that is held hot or cold until it is served, for at least so many minutes if need be."""
    recipe = event.recipe(RecipeId(str(change["recipe"])))
    held, minutes = str(change["held"]), int(change["minutes"])
    if held not in ("hot", "cold"):
        raise ValueError(held)
    keeps = {"hot": recipe.keeps.hot, "cold": recipe.keeps.cold, "air": recipe.keeps.air}
    keeps[held] = max(minutes, keeps[held] or 0)
    return with_recipe(event, replace(recipe, held=held, keeps=Keeps(**keeps)))


def rest_less(event: Event, change: Change) -> Event:
    """A dish that rests for fewer minutes."""
    recipe = event.recipe(RecipeId(str(change["recipe"])))
    return with_recipe(event, replace(recipe, rests_minutes=min(recipe.rests_minutes, int(change["minutes"]))))


def remove_helper(event: Event, change: Change) -> Event:
    """One of the crew stays away; nobody who presents may, for a demo slot has no other presenter."""
    helper = event.helper(HelperId(str(change["helper"])))
    for slot in event.slots:
        if slot.presenter == helper.id:
            raise ChangeError(f"{helper.name} presents {slot.name}; name another presenter for it first.")
    freed = without_helper(event, helper.id)
    return replace(freed, crew=tuple(h for h in freed.crew if h.id != helper.id))


def with_recipe(event: Event, changed: Recipe) -> Event:
    """The event with one of its recipes changed."""
    return replace(event, recipes=tuple(changed if r.id == changed.id else r for r in event.recipes))


def unused_id(wanted: str, taken: set[GearId] | set[HelperId]) -> str:
    """The wanted id, with a number where it is taken."""
    if wanted not in taken:
        return wanted
    return next(f"{wanted}-{n}" for n in range(2, len(taken) + 3) if f"{wanted}-{n}" not in taken)


APPLY = {
    "add_gear": add_gear,
    "buy_gear": buy_gear,
    "add_helper": add_helper,
    "widen_window": widen_window,
    "crew_earlier": crew_earlier,
    "move_serving": move_serving,
    "all_servings_later": all_servings_later,
    "lengthen_slot": lengthen_slot,
    "bring_missing": bring_missing,
    "move_slot": move_slot,
    "hold": hold,
    "rest_less": rest_less,
    "remove_helper": remove_helper,
    "helper_hours": helper_hours,
    "remove_gear": remove_gear,
    "more_people": more_people,
    "move_servings": move_servings,
    "set_wind": set_wind,
    "set_air": set_air,
    "pin": pin_task,
    "unpin": unpin_tasks,
}
