"""The organiser's local code laid over a published set: it may ask for more, never allow more.

Local codes come first. One that allows more than the published set is not needed here: the published set already keeps
to it, and a slip of the pen must not make food less safe.
"""

from dataclasses import dataclass, fields, replace

from cookout.core.errors import CookoutError
from cookout.core.safety.rules import (
    Cooling,
    HoldingRules,
    LeastCentre,
    LimitSet,
    Reheating,
    Rule,
    Standing,
    TimeControl,
)


class LimitError(CookoutError):
    """A local number that cannot be laid over a set of rules; the message says which and what to write."""


@dataclass(frozen=True, slots=True)
class LocalNumbers:
    """What the local code asks for; None where it says nothing. Degrees Celsius, minutes, seconds.

    hot_c, cold_c      hot food is at least, cold food at most so warm
    out_minutes        longest that food stands out of heat and cold
    warm_minutes       the same in air above `warm_air_c`; a local code may have this where the set has none
    warm_air_c         air from which `warm_minutes` counts
    cold_out_minutes   longest for cold food that stays below the set's limit for it
    first_minutes      first stage of cooling
    cooling_minutes    both stages of cooling
    reheating_c        centre when reheated
    reheating_minutes  time for it
    centres_c          centre by food kind
    centre_seconds     seconds that every centre is held
    """

    hot_c: float | None = None
    cold_c: float | None = None
    out_minutes: int | None = None
    warm_minutes: int | None = None
    warm_air_c: float | None = None
    cold_out_minutes: int | None = None
    first_minutes: int | None = None
    cooling_minutes: int | None = None
    reheating_c: float | None = None
    reheating_minutes: int | None = None
    centres_c: tuple[tuple[str, float], ...] = ()
    centre_seconds: float | None = None


def _least(name: str, local: float | None, published: float) -> float:
    """The local number where it is given; it may not lie above the published one."""
    if local is None:
        return published
    if not 0 <= local <= published:
        raise _allows_more(name, local, published, "lower")
    return local


def _most(name: str, local: float | None, published: float) -> float:
    """The local number where it is given; it may not lie below the published one."""
    if local is None:
        return published
    if local < published:
        raise _allows_more(name, local, published, "raise")
    return local


def _allows_more(name: str, local: float, published: float, remedy: str) -> LimitError:
    text = f"The local number for {name}, {local:g}, would allow more than the published {published:g}"
    return LimitError(f"{text}; {remedy} it or leave it out.")


def _least_minutes(name: str, local: int | None, published: int) -> int:
    return round(_least(name, local, published))


def stricter(base: LimitSet, numbers: LocalNumbers, code: str, section: str = "") -> LimitSet:
    """`base` with the stricter `numbers` of the local code named `code`; it is cited wherever it sets the number.

    Raises `LimitError` where a number would allow more than `base`, or speaks of a rule that `base` does not have.
    Example: out_minutes 60 over `HOME` makes 60 min of the 2-hour rule, cited as the local code.
    """
    rule = Rule(code, section, Standing.ORGANISER)
    _refuse_unknown(base, numbers)
    holding = _holding(base.holding, numbers, code, section)
    return replace(
        base,
        name=f"{code} over {base.name}",
        local=code,
        holding=holding,
        holding_rule=_cite(rule, base.holding_rule, numbers.hot_c, numbers.cold_c),
        hot_rule=_cite(rule, base.hot_rule, numbers.hot_c),
        cold_rule=_cite(rule, base.cold_rule, numbers.cold_c),
        out_rule=_cite(rule, base.out_rule, numbers.out_minutes, numbers.warm_minutes),
        centres=_centres(dict(base.centres), numbers, rule),
        reheating=_reheating(base.reheating, numbers, rule),
        cooling=None if base.cooling is None else _cooling(base.cooling, numbers, rule),
        time_control=None if base.time_control is None else _time_control(base.time_control, numbers, rule),
    )


def _cite(local: Rule, published: Rule, *numbers: float | None) -> Rule:
    return published if all(number is None for number in numbers) else local


def _refuse_unknown(base: LimitSet, numbers: LocalNumbers) -> None:
    needs = {"first_minutes": base.cooling, "cooling_minutes": base.cooling, "cold_out_minutes": base.time_control}
    for name, part in needs.items():
        if part is None and getattr(numbers, name) is not None:
            raise LimitError(f"{base.name} has no rule for {_words(name)}; lay this number over the food code instead.")
    if (numbers.warm_minutes is None) != (numbers.warm_air_c is None) and base.holding.warm_air_c is None:
        raise LimitError("A limit for warm air needs both its minutes and the air that it counts from; give both.")


def _words(name: str) -> str:
    return name.replace("_", " ")


def _holding(base: HoldingRules, numbers: LocalNumbers, code: str, section: str) -> HoldingRules:
    out = _least_minutes("out minutes", numbers.out_minutes, base.out_minutes)
    warm = numbers.warm_minutes if base.out_minutes_warm is None else base.out_minutes_warm
    if warm is not None:
        warm = min(out, _least_minutes("warm minutes", numbers.warm_minutes, min(warm, base.out_minutes)))
    air = numbers.warm_air_c
    if air is not None and base.warm_air_c is not None:
        air = _least("warm air", air, base.warm_air_c)
    named = any(getattr(numbers, field.name) is not None for field in fields(numbers) if field.name in _HOLDING)
    return replace(
        base,
        hot_c=_most("hot holding", numbers.hot_c, base.hot_c),
        cold_c=_least("cold holding", numbers.cold_c, base.cold_c),
        out_minutes=out,
        out_minutes_warm=warm,
        warm_air_c=base.warm_air_c if air is None else air,
        name=code if named else base.name,
        section=section if named else base.section,
        source=f"{code} {section}, set by the organiser; beneath it {base.source}" if named else base.source,
    )


_HOLDING = frozenset({"hot_c", "cold_c", "out_minutes", "warm_minutes", "warm_air_c"})


def _centres(base: dict[str, LeastCentre], numbers: LocalNumbers, rule: Rule) -> tuple[tuple[str, LeastCentre], ...]:
    """A local centre replaces the pairs of the set: those of less heat for longer would allow more."""
    centres = dict(base)
    for food, local_c in numbers.centres_c:
        known = base.get(food)
        seconds = known.usual_seconds if known else 0.0
        lowest = known.usual_c if known else local_c
        centre_c = _most(f"centre of {_words(food)}", local_c, lowest)
        centres[food] = LeastCentre(((centre_c, seconds),), rule, known.rest_minutes if known else 0.0)
    if numbers.centre_seconds is not None:
        for food, centre in centres.items():
            pairs = tuple((c, max(seconds, numbers.centre_seconds)) for c, seconds in centre.pairs)
            centres[food] = replace(centre, pairs=pairs, rule=rule)
    return tuple(centres.items())


def _reheating(base: Reheating, numbers: LocalNumbers, rule: Rule) -> Reheating:
    minutes = numbers.reheating_minutes
    if minutes is not None and base.minutes is not None:
        minutes = _least_minutes("reheating minutes", minutes, base.minutes)
    return replace(
        base,
        centre_c=_most("reheating", numbers.reheating_c, base.centre_c),
        minutes=base.minutes if minutes is None else minutes,
        rule=_cite(rule, base.rule, numbers.reheating_c, numbers.reheating_minutes),
    )


def _cooling(base: Cooling, numbers: LocalNumbers, rule: Rule) -> Cooling:
    """The stages keep their temperatures, except that they end no warmer than cold holding."""
    last = _least_minutes("cooling minutes", numbers.cooling_minutes, base.last_minutes)
    return replace(
        base,
        from_c=base.from_c if numbers.hot_c is None else numbers.hot_c,
        last_c=base.last_c if numbers.cold_c is None else numbers.cold_c,
        first_minutes=min(last, _least_minutes("first stage minutes", numbers.first_minutes, base.first_minutes)),
        last_minutes=last,
        ambient_minutes=min(last, base.ambient_minutes),
        first_rule=_cite(rule, base.first_rule, numbers.first_minutes),
        last_rule=_cite(rule, base.last_rule, numbers.cooling_minutes),
    )


def _time_control(base: TimeControl, numbers: LocalNumbers, rule: Rule) -> TimeControl:
    """A shorter time out counts for cold food too, unless the local code gives cold food a time of its own."""
    minutes = _least_minutes("out minutes", numbers.out_minutes, base.minutes)
    cold = _least_minutes("cold out minutes", numbers.cold_out_minutes, base.cold_minutes)
    if numbers.out_minutes is not None and numbers.cold_out_minutes is None:
        cold = minutes
    return replace(
        base,
        minutes=minutes,
        cold_minutes=cold,
        rule=_cite(rule, base.rule, numbers.out_minutes),
        cold_rule=_cite(rule, base.cold_rule, numbers.cold_out_minutes, numbers.out_minutes),
    )
