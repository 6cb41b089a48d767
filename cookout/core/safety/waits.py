"""A wait that a plan intends, judged by one code: is the food hot, cold, or out too long?"""

from cookout.core.quantities import show_temperature
from cookout.core.safety.finding import Finding, Severity, show_minutes
from cookout.core.safety.limits import CODES, HANDLING, HOME, needs_control
from cookout.core.safety.rules import LimitSet, Rule, TimeControl


def judge_wait(
    food: str,
    held: str,
    air_c: float,
    minutes: float,
    *,
    code: LimitSet = HOME,
    marked: bool = False,
    from_cold: bool = False,
    holder_c: float | None = None,
    name: str = "",
    about: str = "",
    units: str = "us",
) -> Finding | None:
    """Whether `food` may wait `minutes` held "hot", "cold" or at "air" of `air_c` degrees Celsius; None where it may.

    `marked`: food out of heat and cold bears its times in writing (time as the control, in codes that know it);
    `from_cold`: it comes out of cold holding; `holder_c`: how warm the food is in its hot or cold place, where that is
    known. The whole wait is counted, also the minutes in which hot food is still hot: on the safe side.
    A finding cites the rule of `code`, and beside it the other published codes that forbid the same by their own
    numbers. Example: poultry at air, 26.7 degrees Celsius, 180 min is refused by USDA-FSIS (2 hours) and by the FDA
    Food Code 3-501.16(A), which wants it hot or cold.
    """
    if not needs_control(food):
        return None
    called = name or food.replace("_", " ")
    broken = _broken(held, air_c, minutes, code, holder_c, marked=marked, from_cold=from_cold)
    if broken is None:
        return None
    rule, most = broken
    allowed = (
        "it must be held hot or cold" if rule == code.holding_rule else f"at most {show_minutes(most)} are allowed"
    )
    return Finding(
        about or called,
        Severity.REFUSED,
        _text(called, held, air_c if holder_c is None else holder_c, minutes, allowed, units),
        _remedy(code, minutes, most, units),
        rule,
        _also(code, held, air_c, minutes, holder_c, marked=marked, from_cold=from_cold),
    )


def most_minutes(
    code: LimitSet, air_c: float, *, marked: bool = False, from_cold: bool = False, warmest_c: float | None = None
) -> tuple[float, Rule]:
    """The longest that controlled food may be out of heat and cold, in minutes, and the rule that says so.

    `warmest_c` is how warm cold food gets meanwhile; without it, as warm as the air.
    """
    control = code.time_control
    out = code.holding.minutes_out(air_c)
    if control is None:
        return out, code.out_rule
    if not marked:
        return min(HANDLING.minutes, out), code.holding_rule
    warmest = air_c if warmest_c is None else warmest_c
    if from_cold and warmest <= control.cold_most_c and out == code.holding.out_minutes:
        return control.cold_minutes, control.cold_rule
    return min(control.minutes, out), control.rule


def _broken(
    held: str, air_c: float, minutes: float, code: LimitSet, holder_c: float | None, *, marked: bool, from_cold: bool
) -> tuple[Rule, float] | None:
    """The rule that the wait breaks and the minutes that it allows, or None."""
    if held in ("hot", "cold"):
        if holder_c is None or minutes <= 0:
            return None
        if held == "hot" and holder_c < code.hot_c:
            return code.hot_rule, 0
        return (code.cold_rule, 0) if held == "cold" and holder_c > code.cold_c else None
    most, rule = most_minutes(code, air_c, marked=marked, from_cold=from_cold)
    return (rule, most) if minutes > most else None


def _also(
    code: LimitSet, held: str, air_c: float, minutes: float, holder_c: float | None, *, marked: bool, from_cold: bool
) -> tuple[Rule, ...]:
    others = [other for other in CODES.values() if other.name != code.name]
    found = [_broken(held, air_c, minutes, other, holder_c, marked=marked, from_cold=from_cold) for other in others]
    return tuple(broken[0] for broken in found if broken is not None)


def _text(called: str, held: str, warm_c: float, minutes: float, allowed: str, units: str) -> str:
    start = called[:1].upper() + called[1:]
    warm, time = show_temperature(warm_c, units), show_minutes(minutes)
    if held in ("hot", "cold"):
        return f"{start} is to be held {held} for {time} at {warm}, which is not {held} enough."
    return f"{start} is to wait {time} out in air of {warm}; {allowed}."


def _remedy(code: LimitSet, minutes: float, most: float, units: str) -> str:
    control = code.time_control
    marks = control if control is not None and most < minutes <= control.minutes else None
    within = "at once" if marks else f"within {show_minutes(most)}"
    return hold_or_serve(code, within if most > 0 else "", marks, units)


def hold_or_serve(code: LimitSet, serve: str, marks: TimeControl | None, units: str) -> str:
    """What to do with food that is out too long: hold it hot or cold, serve it (when), or mark it with its times."""
    hot, cold = show_temperature(code.hot_c, units), show_temperature(code.cold_c, units)
    remedy = f"Hold it at {hot} or hotter, or on ice at {cold} or colder"
    if serve:
        remedy += f", or serve it {serve}"
    if marks is not None:
        remedy += f"; or mark it when it leaves heat or cold and throw it away {show_minutes(marks.minutes)} later"
        remedy += f" ({marks.rule})"
    return f"{remedy}. The code of the place comes first."
