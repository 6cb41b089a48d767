"""Is the middle hot enough, by the food's kind and the code; and is what was cooked before reheated as it must be?"""

from cookout.core.safety.curve import longest_at_least
from cookout.core.safety.finding import Severity, show_minutes
from cookout.core.safety.foodpath import Held, Placed, joined
from cookout.core.safety.judging import EPSILON, Judging
from cookout.core.safety.limits import least_centre
from cookout.core.safety.rules import LeastCentre


def judge_centre(judging: Judging) -> tuple[float | None, bool | None]:
    """The hottest that the middle gets while cooked, and whether that is enough (None: not known, or no rule)."""
    cooked = [here for here in judging.placed if here.leg.held is Held.OVEN]
    centre = least_centre(judging.path.food, judging.code)
    curves = [here.curve for here in cooked if here.curve is not None]
    hottest = max((max(p.first_c, p.last_c) for curve in curves for p in curve), default=None)
    if centre is None or not judging.path.cooks:
        return hottest, None
    wanted = f"at least {judging.show(centre.usual_c)}{_held(centre)}"
    if not cooked:
        judging.say(Severity.REFUSED, f"{judging.name} is never cooked.", f"Cook its middle to {wanted}.", centre.rule)
        return None, False
    reached = any(reaches(judging, here, centre) for here in cooked)
    if not reached and len(curves) < len(cooked):
        text = f"How hot the middle of {judging.path.name} gets is not known."
        judging.say(Severity.NOTE, text, f"Measure it: {wanted}.", centre.rule, cooked[-1].end)
        return hottest, None
    if not reached:
        text = f"{judging.name} gets {judging.show(hottest or 0.0)} in the middle; {wanted} is wanted."
        judging.say(Severity.REFUSED, text, "Leave it in longer, measure, and only then serve.", centre.rule)
        return hottest, False
    _judge_rest(judging, centre, cooked[-1].end)
    return hottest, True


def _held(centre: LeastCentre) -> str:
    return f" for {centre.usual_seconds:g} s" if centre.usual_seconds else ""


def reaches(judging: Judging, here: Placed, centre: LeastCentre) -> bool:
    """Whether the leg, with what follows it, holds any pair of the rule; heat carries on after the oven."""
    first = judging.placed.index(here)
    known = []
    for later in judging.placed[first:]:
        if later.curve is None:
            break
        known.append(later)
    curve = joined(tuple(known)) or ()
    stretches = ((longest_at_least(curve, least_c), seconds) for least_c, seconds in centre.pairs)
    return any(found is not None and found[0] * 60 + EPSILON >= seconds for found, seconds in stretches)


def _judge_rest(judging: Judging, centre: LeastCentre, out_at: float) -> None:
    rests = judging.placed[-1].end - out_at
    if rests + EPSILON < centre.rest_minutes:
        text = f"{judging.name} rests {show_minutes(rests)} after cooking; {centre.rest_minutes:g} min are wanted."
        judging.say(Severity.WARNING, text, "Let it stand before it is cut.", centre.rule, out_at)


def cooks_through(judging: Judging, here: Placed) -> bool:
    """Whether this leg makes the food safe anew: by the rule of its kind or, where there is none, hot all through.

    A leg that nobody knows is taken at its word; that it must be measured is said by `judge_centre`.
    """
    if here.curve is None:
        return True
    centre = least_centre(judging.path.food, judging.code)
    if centre is not None:
        return reaches(judging, here, centre)
    return longest_at_least(here.curve, judging.code.hot_c) is not None


def judge_reheating(judging: Judging) -> None:
    """Judge every leg that reheats: hot enough, held long enough, soon enough."""
    rule = judging.code.reheating
    wanted = f"{judging.show(rule.centre_c)}{f' for {rule.seconds:g} s' if rule.seconds else ''}"
    within = "" if rule.minutes is None else f" within {show_minutes(rule.minutes)}"
    for here in judging.placed:
        if here.leg.held is not Held.REHEAT:
            continue
        if here.curve is None:
            text = f"How hot {judging.path.name} gets when reheated is not known."
            judging.say(Severity.NOTE, text, f"Measure it: {wanted}{within}.", rule.rule, here.start)
            continue
        found = longest_at_least(here.curve, rule.centre_c)
        hot_enough = found is not None and found[0] * 60 + EPSILON >= rule.seconds
        late = found is not None and rule.minutes is not None and found[1] - here.start > rule.minutes + EPSILON
        if not hot_enough or late:
            text = f"{judging.name}, reheated, does not reach {wanted}{within}."
            judging.say(Severity.REFUSED, text, "Reheat it faster and hotter, in smaller pots.", rule.rule, here.start)
