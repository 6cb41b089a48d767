"""Is food that is held hot really hot, and food on ice really cold; and does it cool in time, in both stages?"""

from cookout.core.safety.curve import first_at_most, last_at_least, minutes_where
from cookout.core.safety.finding import Severity, show_minutes
from cookout.core.safety.foodpath import HEATED, Held, Placed, joined
from cookout.core.safety.judging import EPSILON, Judging
from cookout.core.safety.rules import Cooling, Rule


def judge_holding(judging: Judging) -> None:
    """Judge every leg that is held hot or on ice; one whose temperature nobody knows is to be measured."""
    for here in judging.placed:
        if here.leg.minutes <= 0:
            continue
        if here.leg.held is Held.HOT:
            _judge_hot(judging, here)
        elif here.leg.held is Held.ICE:
            _judge_ice(judging, here)


def _judge_hot(judging: Judging, here: Placed) -> None:
    hot_c, rule = judging.code.hot_c, judging.code.hot_rule
    if here.curve is None:
        text = f"How hot {judging.path.name} is held is not known."
        judging.say(Severity.NOTE, text, f"Measure it: {judging.show(hot_c)} or hotter.", rule, here.start)
        return
    below = minutes_where(here.curve, (hot_c,), lambda food_c: food_c < hot_c)
    if below > EPSILON:
        coldest = min(min(piece.first_c, piece.last_c) for piece in here.curve)
        reheat = judging.code.reheating
        text = f"{judging.name}, held hot, is too cool for {show_minutes(below)}: down to {judging.show(coldest)}."
        remedy = f"Reheat it to {judging.show(reheat.centre_c)} ({reheat.rule}) and hold it at {judging.show(hot_c)}."
        judging.say(Severity.REFUSED, text, remedy, rule, here.start)


def _judge_ice(judging: Judging, here: Placed) -> None:
    cold_c, rule = judging.code.cold_c, judging.code.cold_rule
    remedy = f"More ice, a second cooler, smaller portions: {judging.show(cold_c)} or colder."
    if here.curve is None:
        text = f"How cold {judging.path.name} is held is not known."
        judging.say(Severity.NOTE, text, f"Measure it: {judging.show(cold_c)} or colder.", rule, here.start)
        return
    comes_c, leaves_c = here.curve[0].first_c, here.curve[-1].last_c
    above = minutes_where(here.curve, (cold_c,), lambda food_c: food_c > cold_c)
    if comes_c <= cold_c and above > EPSILON:
        warmest = max(max(piece.first_c, piece.last_c) for piece in here.curve)
        text = f"{judging.name}, held cold, is too warm for {show_minutes(above)}: up to {judging.show(warmest)}."
        judging.say(Severity.REFUSED, text, remedy, rule, here.start)
    elif comes_c > cold_c and leaves_c > cold_c:
        text = f"{judging.name} leaves the cooler at {judging.show(leaves_c)}, not yet cold."
        judging.say(Severity.WARNING, text, remedy, rule, here.end)


def judge_cooling(judging: Judging) -> None:
    """Judge every stretch in which the food is to become cold; nothing where the code knows no stages.

    The clock starts at the last minute at which the food is still hot; food that never was hot has the shorter limit
    of things made at air temperature.
    """
    if judging.code.cooling is None:
        return
    for run, before in _cooling_runs(judging):
        _judge_run(judging, judging.code.cooling, run, before)


def _cooling_runs(judging: Judging) -> list[tuple[tuple[Placed, ...], Placed | None]]:
    """Stretches without heat in which the food is to become cold, each with the heated leg before it."""
    runs: list[tuple[tuple[Placed, ...], Placed | None]] = []
    run: list[Placed] = []
    before: Placed | None = None
    for here in judging.placed:
        if here.leg.held in HEATED:
            runs.append((tuple(run), before))
            run, before = [], here
        else:
            run.append(here)
    runs.append((tuple(run), before))
    return [(legs, heated) for legs, heated in runs if any(_to_be_cold(judging, here) for here in legs)]


def _to_be_cold(judging: Judging, here: Placed) -> bool:
    """Set out to cool, or put warm into a cooler; a leg in a cooler that nobody knows is taken for cold holding."""
    if here.leg.held is Held.COOLING:
        return True
    return here.leg.held is Held.ICE and here.comes_c is not None and here.comes_c > judging.code.cold_c


def _judge_run(judging: Judging, rule: Cooling, run: tuple[Placed, ...], before: Placed | None) -> None:
    curve = joined(run)
    if curve is None:
        wanted = f"{judging.show(rule.first_c)} within {show_minutes(rule.first_minutes)} of"
        wanted += f" {judging.show(rule.from_c)}, {judging.show(rule.last_c)} within {show_minutes(rule.last_minutes)}"
        text = f"How fast {judging.path.name} cools is not known."
        judging.say(Severity.NOTE, text, f"Measure it: {wanted}.", rule.last_rule, run[0].start)
        return
    since = last_at_least(curve, rule.from_c)
    if since is None and before is not None and (before.leaves_c is None or before.leaves_c >= rule.from_c):
        since = before.end
    if since is None:
        if curve[0].first_c > rule.last_c:
            _judge_stage(judging, run, rule.last_c, run[0].start, rule.ambient_minutes, rule.ambient_rule)
        return
    first = _judge_stage(judging, run, rule.first_c, since, rule.first_minutes, rule.first_rule)
    last = _judge_stage(judging, run, rule.last_c, since, rule.last_minutes, rule.last_rule)
    judging.stages = (first, last)


def _judge_stage(
    judging: Judging, run: tuple[Placed, ...], level_c: float, since: float, within: float, rule: Rule
) -> float | None:
    """Minutes until the food is down to `level_c`; None where the run ends before that."""
    reached = first_at_most(joined(run) or (), level_c, since)
    took = (run[-1].end if reached is None else reached) - since
    limit, level, time = show_minutes(within), judging.show(level_c), show_minutes(took)
    if took > within + EPSILON:
        so_far = "is not down to" if reached is None else "comes down to"
        text = f"{judging.name} {so_far} {level} after {time}; {limit} are allowed."
        remedy = "Shallow pans, smaller portions, an ice bath, stirring; reheat it or throw it away where it was late."
        judging.say(Severity.REFUSED, text, remedy, rule, since)
    elif reached is None:
        text = f"{judging.name} must be down to {level} within {limit}; {time} are planned."
        judging.say(Severity.NOTE, text, "Go on cooling it and measure, or eat it before that.", rule, since)
    return None if reached is None else reached - since
