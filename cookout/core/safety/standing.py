"""How long food is out of heat and cold, each stretch by itself, and the times that are written on it."""

from dataclasses import dataclass

from cookout.core.safety.cooking import cooks_through
from cookout.core.safety.finding import Severity, show_minutes
from cookout.core.safety.foodpath import Held, Placed
from cookout.core.safety.judging import EPSILON, OUT, Judging, Mark, danger
from cookout.core.safety.rules import LimitSet
from cookout.core.safety.waits import hold_or_serve, most_minutes


@dataclass(slots=True)
class _Stretch:
    """Time out of heat and cold since the food was last cooked through or, at first, since the start."""

    start: float | None = None
    from_cold: bool = False
    waited: float = 0.0
    worked: float = 0.0
    warmest_c: float | None = None
    air_c: float = -273.15

    @property
    def minutes(self) -> float:
        return self.waited + self.worked

    def add(self, here: Placed, minutes: float, *, cold_c: float) -> None:
        """Count `minutes` in the danger zone; what the food came with decides whether it came out of the cold."""
        if self.start is None:
            self.start = here.start
            self.from_cold = here.comes_c is not None and here.comes_c <= cold_c
        if here.leg.held is Held.WORK:
            self.worked += minutes
        else:
            self.waited += minutes
        self.air_c = max(self.air_c, here.leg.air_c)
        warm = [here.leg.air_c] if here.curve is None else [max(p.first_c, p.last_c) for p in here.curve]
        self.warmest_c = max([*warm, *([] if self.warmest_c is None else [self.warmest_c])])


def judge_out(judging: Judging) -> float:
    """Judge every stretch out of heat and cold; the longest, in minutes.

    Neither cold nor heat wipes out the minutes before them: only cooking through begins a new count.
    """
    stretches = [_Stretch()]
    for here in judging.placed:
        if here.leg.held is Held.OVEN and cooks_through(judging, here):
            stretches.append(_Stretch())
        elif here.leg.held in _counted(judging.code):
            minutes = danger(judging, here)
            if minutes > 0:
                stretches[-1].add(here, minutes, cold_c=judging.code.cold_c)
    for stretch in stretches:
        _judge_stretch(judging, stretch)
    return max(stretch.minutes for stretch in stretches)


def _counted(code: LimitSet) -> frozenset[Held]:
    """A code with stages of cooling judges cooling by them; one without counts it as time out."""
    return OUT if code.cooling is None else OUT - {Held.COOLING}


def _judge_stretch(judging: Judging, stretch: _Stretch) -> None:
    if stretch.start is None:
        return
    code, marked, control = judging.code, judging.path.marked, judging.code.time_control
    most, rule = most_minutes(
        code, stretch.air_c, marked=marked, from_cold=stretch.from_cold, warmest_c=stretch.warmest_c
    )
    # Preparing is no holding, so unmarked food is judged by its waits, and all of it by the time that marks allow.
    minutes = stretch.waited if control is not None and not marked else stretch.minutes
    if control is not None and not marked and minutes <= most + EPSILON:
        most, rule, minutes = control.minutes, control.rule, stretch.minutes
    if minutes > most + EPSILON:
        marks = control if control is not None and not marked and minutes <= control.minutes else None
        allowed = "it must be held hot or cold" if rule == code.holding_rule else f"{show_minutes(most)} are allowed"
        text = f"{judging.name} is {show_minutes(minutes)} out between cold and hot; {allowed}."
        remedy = hold_or_serve(code, "sooner", marks, judging.units)
        judging.say(Severity.REFUSED, text, remedy, rule, stretch.start)
    elif control is not None and marked:
        text = f"Write on it when it went out and when it must be gone, {show_minutes(most)} later; then throw it away."
        judging.marks.append(Mark(stretch.start, stretch.start + most, text, rule))
