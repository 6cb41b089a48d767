"""Rules for people: hands, skills, windows, one place at a time, the fire, breaks."""

from collections.abc import Iterator

from cookout.core.kitchen.recipe import FIRE_SKILL, Skill
from cookout.core.planning.check.breach import Breach, Use, overfull, overlong_stretches
from cookout.core.planning.check.reading import AROUND_BAKE, Reading, clock
from cookout.core.planning.event import Helper
from cookout.core.planning.expanded import FIRE_KINDS, TaskInfo, TaskKind


def hands_and_skills(reading: Reading) -> Iterator[Breach]:
    """As many different helpers as the step wants, each with every skill that it asks for."""
    for info in reading.tasks:
        hands, skills = _wanted(reading, info)
        helpers = set(reading.helpers(info.id))
        if len(helpers) < hands:
            text = f"{reading.name(info.id)} wants {hands} helpers and has {len(helpers)}"
            yield Breach("hands_and_skills", (info.id,), text, reading.start(info.id))
        for helper in sorted(helpers):
            missing = skills - reading.crew[helper].skills
            if missing:
                text = f"{reading.crew[helper].name} lacks {', '.join(sorted(missing))} for {reading.name(info.id)}"
                yield Breach("hands_and_skills", (info.id,), text, reading.start(info.id))


def _wanted(reading: Reading, info: TaskInfo) -> tuple[int, frozenset[Skill]]:
    """Hands and skills by the task's own word and by the recipe, whichever asks more."""
    hands, skills = info.hands, info.skills
    if info.dish is None:
        return hands, skills
    recipe = reading.event.recipe(reading.dish(info.dish).recipe)
    if info.kind is TaskKind.SERVE:
        return max(hands, recipe.serve_hands), skills
    step = next((step for step in recipe.steps if step.id == info.step), None)
    if step is None or step.bake is not None or info.kind in AROUND_BAKE:
        return hands, skills
    return max(hands, step.hands), skills | step.skills


def within_windows(reading: Reading) -> Iterator[Breach]:
    """Whoever does a task is there from its start to its end."""
    for info in reading.tasks:
        start, end = reading.start(info.id), reading.end(info.id)
        for helper in sorted(set(reading.helpers(info.id))):
            if not _is_there(reading.crew[helper], start, end):
                when = f"from {clock(reading, start)} to {clock(reading, end)}"
                text = f"{reading.crew[helper].name} is not there {when} for {reading.name(info.id)}"
                yield Breach("within_windows", (info.id,), text, start)


def _is_there(helper: Helper, start: int, end: int) -> bool:
    """Whether one window, or several that touch, hold the whole time."""
    joined: list[tuple[int, int]] = []
    for window in sorted(helper.windows, key=lambda window: window.start):
        if joined and window.start <= joined[-1][1]:
            joined[-1] = (joined[-1][0], max(joined[-1][1], window.end))
        else:
            joined.append((window.start, window.end))
    return any(opens <= start and end <= closes for opens, closes in joined)


def nobody_in_two_places(reading: Reading) -> Iterator[Breach]:
    """One task at a time for everyone, once each."""
    for helper in reading.event.crew:
        found = overfull(_work(reading, helper), 1)
        if found is not None:
            minute, _, tasks = found
            text = f"{helper.name} would be at {' and '.join(map(reading.name, tasks))} at {clock(reading, minute)}"
            yield Breach("nobody_in_two_places", tasks, text, minute)


def fire_only_by_those_allowed(reading: Reading) -> Iterator[Breach]:
    """Lighting, laying, topping up and drowning by somebody who has the skill and is adult or named for it."""
    for info in reading.of_kind(*FIRE_KINDS):
        helpers = reading.helpers(info.id)
        if not helpers:
            text = f"nobody is given to {reading.name(info.id)}"
            yield Breach("fire_only_by_those_allowed", (info.id,), text, reading.start(info.id))
        for helper in (reading.crew[each] for each in helpers):
            if FIRE_SKILL not in helper.skills or not (helper.adult or helper.fire_allowed):
                text = f"{helper.name} may not tend the fire, as {reading.name(info.id)} asks"
                yield Breach("fire_only_by_those_allowed", (info.id,), text, reading.start(info.id))


def hot_iron_only_by_those_allowed(reading: Reading) -> Iterator[Breach]:
    """Hot work of any kind by an adult, or by somebody whom the organiser named."""
    for info in reading.tasks:
        for helper in (reading.crew[each] for each in reading.helpers(info.id)):
            if info.hot and not (helper.adult or helper.fire_allowed):
                text = f"{helper.name} may not handle hot iron, as {reading.name(info.id)} asks"
                yield Breach("hot_iron_only_by_those_allowed", (info.id,), text, reading.start(info.id))


def breaks_taken(reading: Reading) -> Iterator[Breach]:
    """Nobody is at the fire longer than their stretch without a break."""
    for helper in reading.event.crew:
        hot = [use for use in _work(reading, helper) if reading.expanded.info[use.task].hot]
        for stretch in overlong_stretches(hot, helper.hot_stretch_minutes, reading.event.break_minutes):
            lasts = max(use.end for use in stretch) - stretch[0].start
            since = clock(reading, stretch[0].start)
            text = f"{helper.name} is at the fire for {lasts} min from {since}, over {helper.hot_stretch_minutes}"
            yield Breach("breaks_taken", tuple(use.task for use in stretch), text, stretch[0].start)


def _work(reading: Reading, helper: Helper) -> list[Use]:
    return [
        Use(info.id, reading.start(info.id), reading.end(info.id))
        for info in reading.tasks
        for each in reading.helpers(info.id)
        if each == helper.id
    ]
