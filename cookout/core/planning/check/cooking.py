"""Rules for the food and its gear: counts, ovens, the recipe's order, look-ins, safe holding."""

from collections.abc import Iterator

from cookout.core.kitchen.recipe import After, FoodKind, Recipe, Scope, Step, StepKind
from cookout.core.planning.check.breach import Breach, Use, overfull
from cookout.core.planning.check.reading import Reading, clock
from cookout.core.planning.event import Dish, DishId, Gear, GearId, GearKind
from cookout.core.planning.expanded import BakeRun, TaskKind
from cookout.core.planning.foodrules import FoodCode
from cookout.core.planning.heat import cooling_for
from cookout.core.planning.problem import TaskId

STANDING = frozenset({GearKind.OVEN, GearKind.TABLE})
"""Gear that a bake keeps from its first task to its last, waits between them as well."""

PERISHABLE = frozenset(FoodKind) - {FoodKind.BREAD_AND_CAKE}
"""Food that must not stand in the air for long."""

STANDS_MINUTES = 120
STANDS_MINUTES_IN_HEAT = 60
HEAT_C = (90 - 32) / 1.8
"""At most 2 h in the air, 1 h above 90 °F (USDA-FSIS safe handling). The organiser's local code may ask for less."""

STANDS_MINUTES_MARKED = 240
STANDS_MINUTES_UNMARKED = 30
"""FDA Food Code 3-501.19 with written times: 4 h. Without them no time is allowed; half an hour of handling is ours."""


def gear_counts(reading: Reading) -> Iterator[Breach]:
    """No more pieces of any gear in use at any minute than there are; a cooking table counts by its spots."""
    uses = _uses(reading)
    for gear in reading.event.gear:
        each = {GearKind.TABLE: gear.spots or 1, GearKind.COOLER: gear.places}.get(gear.kind, 1)
        room = gear.count * each
        found = overfull(uses.get(gear.id, []), room)
        if found is not None:
            minute, taken, tasks = found
            text = f"{taken} of {gear.name} are in use at {clock(reading, minute)}, and there are {room}"
            yield Breach("gear_counts", tasks, text, minute)


def _uses(reading: Reading) -> dict[GearId, list[Use]]:
    uses: dict[GearId, list[Use]] = {}
    held = {task: run for run in reading.expanded.bake_runs for task in run.holds}
    for info in reading.tasks:
        for gear, amount in reading.gear_used(info.id).items():
            if info.id not in held or reading.gear[gear].kind not in STANDING:
                uses.setdefault(gear, []).append(Use(info.id, reading.start(info.id), reading.end(info.id), amount))
    for run in reading.expanded.bake_runs:
        start, end = min(map(reading.start, run.holds)), max(map(reading.end, run.holds))
        for gear, amount in _standing(reading, run).items():
            uses.setdefault(gear, []).append(Use(run.bakes, start, end, amount))
    return uses


def _standing(reading: Reading, run: BakeRun) -> dict[GearId, int]:
    """Ovens and table spots of the run: the most of each that any of its tasks uses."""
    standing: dict[GearId, int] = {}
    for task in run.holds:
        for gear, amount in reading.gear_used(task).items():
            if reading.gear[gear].kind in STANDING:
                standing[gear] = max(amount, standing.get(gear, 0))
    return standing


def ovens_fit(reading: Reading) -> Iterator[Breach]:
    """Each bake has one oven of its size, on one spot that is wide enough, and keeps both until the food is out."""
    for run in reading.expanded.bake_runs:
        standing = {reading.gear[gear]: amount for gear, amount in _standing(reading, run).items()}
        ovens = {gear: amount for gear, amount in standing.items() if gear.kind is GearKind.OVEN}
        tables = {gear: amount for gear, amount in standing.items() if gear.kind is GearKind.TABLE}
        yield from _one_oven(reading, run, ovens)
        yield from _one_spot(reading, run, tables)
        if not {run.lays, run.loads, run.bakes, run.takes_out} <= set(run.holds):
            text = f"{reading.name(run.bakes)} does not keep its oven from the coals to taking out"
            yield Breach("ovens_fit", (run.bakes,), text, reading.start(run.bakes))


def _one_oven(reading: Reading, run: BakeRun, ovens: dict[Gear, int]) -> Iterator[Breach]:
    if sum(ovens.values()) != 1:
        text = f"{reading.name(run.bakes)} uses {sum(ovens.values())} ovens, not 1"
        yield Breach("ovens_fit", (run.bakes,), text, reading.start(run.bakes))
    step = reading.bake_step(run)
    wanted = step[1].oven_inches if step is not None else run.inches
    for oven in ovens:
        if oven.inches != run.inches or (oven.inches or 0) < wanted:
            text = f"{reading.name(run.bakes)} wants an oven of {wanted} inches and gets {oven.name}"
            yield Breach("ovens_fit", (run.bakes,), text, reading.start(run.bakes))


def _one_spot(reading: Reading, run: BakeRun, tables: dict[Gear, int]) -> Iterator[Breach]:
    has_tables = any(gear.kind is GearKind.TABLE for gear in reading.event.gear)
    if has_tables and sum(tables.values()) != 1:
        text = f"{reading.name(run.bakes)} takes {sum(tables.values())} spots of the tables, not 1"
        yield Breach("ovens_fit", (run.bakes,), text, reading.start(run.bakes))
    for table in tables:
        if table.spot_inches is not None and table.spot_inches < run.inches:
            text = f"an oven of {run.inches} inches touches its neighbour on {table.name}"
            yield Breach("ovens_fit", (run.bakes,), text, reading.start(run.bakes))


def enough_ovens_for_all(reading: Reading) -> Iterator[Breach]:
    """As many batches, or pans, are baked as the people to be served ask for, each in its own oven."""
    for dish, recipe, step in _steps(reading):
        if step.bake is None or dish.serving is None:
            continue
        wanted, runs = _wanted_runs(reading, dish, recipe, step), reading.runs_of(dish.id, step.id)
        if len(runs) < wanted:
            text = f"{recipe.name} wants {wanted} ovens for {step.name} and has {len(runs)}"
            yield Breach("enough_ovens_for_all", tuple(run.bakes for run in runs), text)


def _wanted_runs(reading: Reading, dish: Dish, recipe: Recipe, step: Step) -> int:
    people = dish.people
    if people is None:
        people = reading.event.serving(dish.serving).people if dish.serving is not None else recipe.serves
    pans = recipe.pans if step.scope is Scope.PAN else 1
    return 1 if step.scope is Scope.DISH else -(-people * pans // recipe.serves)


def _steps(reading: Reading) -> Iterator[tuple[Dish, Recipe, Step]]:
    for dish in reading.event.dishes:
        recipe = reading.event.recipe(dish.recipe)
        for step in recipe.steps:
            yield dish, recipe, step


def steps_in_order(reading: Reading) -> Iterator[Breach]:
    """Each step comes after those it waits for, neither sooner nor later than the recipe says."""
    for dish, recipe, step in _steps(reading):
        starts = _starts(reading, dish.id, step)
        for after in step.after:
            yield from _waits(reading, after, _ends(reading, dish.id, recipe.step(after.step)), starts)


Span = tuple[TaskId, int, int]
"""A task with the first and the last minute that may be meant by its start or end."""


def _starts(reading: Reading, dish: DishId, step: Step) -> list[Span]:
    """When the step starts; a bake starts with its loading, or when the food is in."""
    if step.bake is not None:
        runs = reading.runs_of(dish, step.id)
        return sorted(((run.loads, reading.start(run.loads), reading.start(run.bakes)) for run in runs), key=_by_first)
    spans = [(info.id, reading.start(info.id)) for info in reading.of_step(dish, step.id)]
    return sorted(((task, minute, minute) for task, minute in spans), key=_by_first)


def _ends(reading: Reading, dish: DishId, step: Step) -> list[Span]:
    """When the step ends; a bake ends when its time is up, or when the food is out."""
    if step.bake is not None:
        runs = reading.runs_of(dish, step.id)
        spans = ((run.takes_out, reading.end(run.bakes), reading.end(run.takes_out)) for run in runs)
        return sorted(spans, key=_by_first)
    tasks = [(info.id, reading.end(info.id)) for info in reading.of_step(dish, step.id)]
    return sorted(((task, minute, minute) for task, minute in tasks), key=_by_first)


def _by_first(span: Span) -> int:
    return span[1]


def _waits(
    reading: Reading, after: After, ends: list[Span], starts: list[Span], rule: str = "steps_in_order"
) -> Iterator[Breach]:
    """Batches bear no number here, so the earliest ends are matched with the earliest starts.

    If any matching keeps the waits, this one does: both sides are sorted and the limits are the same for all.
    """
    if not ends or not starts or max(len(ends), len(starts)) % min(len(ends), len(starts)):
        return
    share_ends, share_starts = max(1, len(ends) // len(starts)), max(1, len(starts) // len(ends))
    for place in range(max(len(ends), len(starts))):
        before, end_from, end_until = ends[place if share_ends > 1 else place // share_starts]
        task, start_from, start_until = starts[place // share_ends]
        if start_until - end_from < after.least:
            text = f"{reading.name(task)} comes sooner than {after.least} min after {reading.name(before)}"
            yield Breach(rule, (before, task), text, start_until)
        if after.most is not None and start_from - end_until > after.most:
            text = f"{reading.name(task)} comes later than {after.most} min after {reading.name(before)}"
            yield Breach(rule, (before, task), text, start_from)


def bakes_long_enough(reading: Reading) -> Iterator[Breach]:
    """Food is over the coals for at least its least time, after coals are laid and the oven is hot if it is to be."""
    for run in reading.expanded.bake_runs:
        step = reading.bake_step(run)
        if step is None:
            yield Breach("bakes_long_enough", (run.bakes,), f"{reading.name(run.bakes)} is no bake of its recipe")
            continue
        minutes = reading.start(run.takes_out) - reading.start(run.bakes)
        least = reading.baking(run, *step).minutes.least
        if minutes < least:
            text = f"{reading.name(run.bakes)} lasts {minutes} min, at least {least} are wanted"
            yield Breach("bakes_long_enough", (run.bakes,), text, reading.start(run.bakes))
        hot_from = reading.end(run.lays) + step[1].preheat_minutes
        if step[1].preheat_minutes and reading.start(run.bakes) < hot_from:
            text = f"the oven for {reading.name(run.bakes)} is hot at {clock(reading, hot_from)} only"
            yield Breach("bakes_long_enough", (run.lays, run.bakes), text, reading.start(run.bakes))


def cooled_enough(reading: Reading) -> Iterator[Breach]:
    """What a recipe wants cooled to a temperature stands for at least the model's least minutes, in air or on ice."""
    if not reading.event.switches.use_models:
        return
    for dish, recipe, step in _steps(reading):
        bakes = [recipe.step(after.step).bake for after in step.after]
        load = next((bake.load for bake in bakes if bake is not None and bake.load is not None), None)
        if step.cool is None or load is None:
            continue
        for info in reading.of_step(dish.id, step.id):
            weather = reading.expanded.weather_of.get(info.id, reading.event.weather)
            cooling = cooling_for(reading.event, step.cool, load, weather)
            iced = any(reading.gear[gear].kind is GearKind.COOLER for gear in reading.gear_used(info.id))
            wanted = cooling.in_air or (cooling.on_ice if iced else None)
            minutes = reading.end(info.id) - reading.start(info.id)
            if wanted is not None and minutes < wanted.least:
                text = f"{reading.name(info.id)} lasts {minutes} min, at least {wanted.least} are wanted"
                yield Breach("cooled_enough", (info.id,), text, reading.start(info.id))


def look_ins_in_time(reading: Reading) -> Iterator[Breach]:
    """Every bake has a look-in from when the recipe says and before its least time is over."""
    for dish, recipe, step in _steps(reading):
        if step.bake is None:
            continue
        looks = [info for info in reading.of_kind(TaskKind.LOOK_IN) if (info.dish, info.step) == (dish.id, step.id)]
        minutes = sorted(reading.start(info.id) for info in looks)
        for run in reading.runs_of(dish.id, step.id):
            start, baking = reading.start(run.bakes), reading.baking(run, step, step.bake)
            last = start + baking.minutes.least - 1
            first = min(start + baking.look_in_from, last)
            found = next((minute for minute in minutes if first <= minute <= last), None)
            if found is None:
                text = f"nobody looks into {recipe.name} from {clock(reading, first)} to {clock(reading, last)}"
                yield Breach("look_ins_in_time", (run.bakes,), text, first)
            else:
                minutes.remove(found)


def inside_the_bake(reading: Reading) -> Iterator[Breach]:
    """Turning, looking in and topping up are done while something bakes in that oven."""
    owner = {task: run for run in reading.expanded.bake_runs for task, _ in run.top_ups}
    for info in reading.of_kind(TaskKind.TURN, TaskKind.LOOK_IN, TaskKind.TOP_UP):
        runs = [owner[info.id]] if info.id in owner else _runs_of_dish(reading, info.dish)
        start, end = reading.start(info.id), reading.end(info.id)
        if not any(reading.start(run.bakes) <= start and end <= reading.end(run.bakes) for run in runs):
            text = f"{reading.name(info.id)} is not within its bake"
            yield Breach("inside_the_bake", (info.id,), text, start)


def _runs_of_dish(reading: Reading, dish: DishId | None) -> list[BakeRun]:
    return [run for run in reading.expanded.bake_runs if run.dish == dish]


def food_kept_safe(reading: Reading) -> Iterator[Breach]:
    """From finished to served, food rests as it should, and stands no longer than it keeps or is safe."""
    for (_, dish), serve in reading.expanded.serves.items():
        yield from eaten_in_time(reading, dish, serve, "food_kept_safe")


def eaten_in_time(reading: Reading, dish: DishId, eaten: TaskId, rule: str) -> Iterator[Breach]:
    """A finished dish rests as it should before the task in which it is served or tasted, and waits no longer."""
    recipe, start = reading.event.recipe(reading.dish(dish).recipe), reading.start(eaten)
    for step in recipe.last_steps():
        for task, minute in reading.finished(dish, step):
            waited = start - minute
            most = _most_minutes(reading, recipe, reading.held(dish), minute, start)
            if waited < recipe.rests_minutes:
                text = f"{recipe.name} rests {waited} min, {recipe.rests_minutes} are wanted"
                yield Breach(rule, (task, eaten), text, start)
            if most is not None and waited > most:
                text = f"{recipe.name} waits {waited} min to be eaten, at most {most} are safe or good"
                yield Breach(rule, (task, eaten), text, start)


def _most_minutes(reading: Reading, recipe: Recipe, held: str, start: int, end: int) -> int | None:
    """How long the finished dish may wait; held hot or cold it is bound by what it keeps."""
    kept = {"hot": recipe.keeps.hot, "cold": recipe.keeps.cold, "air": recipe.keeps.air}.get(held)
    if held != "air" or recipe.food not in PERISHABLE:
        return kept
    stands = _stands_minutes(reading, start, end)
    return stands if kept is None else min(kept, stands)


def _stands_minutes(reading: Reading, start: int, end: int) -> int:
    """How long food may stand in that time's air, by the published rules of the event and its own stricter numbers."""
    rules = reading.event.food_rules
    air_c = reading.air_between(start, end)
    minutes = STANDS_MINUTES_IN_HEAT if air_c > HEAT_C else STANDS_MINUTES
    if rules.code is FoodCode.PUBLIC:
        minutes = STANDS_MINUTES_MARKED if rules.marked else STANDS_MINUTES_UNMARKED
    if rules.numbers.out_minutes is not None:
        minutes = min(minutes, rules.numbers.out_minutes)
    warm_c = HEAT_C if rules.numbers.warm_air_c is None else rules.numbers.warm_air_c
    if rules.numbers.warm_minutes is not None and air_c > warm_c:
        minutes = min(minutes, rules.numbers.warm_minutes)
    return minutes


def food_safe_on_the_way(reading: Reading) -> Iterator[Breach]:
    """Perishable food stands no longer between two steps than is safe, where nothing says that it is kept cold."""
    for dish, recipe, step in _steps(reading):
        if recipe.food not in PERISHABLE or _in_cooler(step):
            continue
        for after in step.after:
            before = recipe.step(after.step)
            if not _in_cooler(before) and not _still_plain(recipe, before):
                ends, starts = _ends(reading, dish.id, before), _starts(reading, dish.id, step)
                if not ends or not starts:
                    continue
                stands = _stands_minutes(reading, min(end for _, end, _ in ends), max(start for _, _, start in starts))
                limit = After(after.step, 0, stands if after.most is None else min(after.most, stands))
                yield from _waits(reading, limit, ends, starts, "food_safe_on_the_way")


def _in_cooler(step: Step) -> bool:
    return any(use.kind == GearKind.COOLER for use in step.gear)


def _still_plain(recipe: Recipe, step: Step) -> bool:
    """Whether a cake that will bear cream icing is still without it."""
    return recipe.food is FoodKind.CREAM_ICING and step.kind not in (StepKind.ICE, StepKind.FINISH)
