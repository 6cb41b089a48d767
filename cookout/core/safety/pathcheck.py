"""A food path judged by one code: danger zone, hot and cold holding, cooling in two stages, reheating, least centre.

Pure: temperatures come in with the path. Each answer cites the section that gives it. What is not known counts as the
worse case where food is out, and is said as "not known, measure" where it is held or heated.
"""

from dataclasses import dataclass

from cookout.core.safety.cooking import judge_centre, judge_reheating
from cookout.core.safety.finding import Finding, worst_first
from cookout.core.safety.foodpath import FoodPath, place
from cookout.core.safety.holding import judge_cooling, judge_holding
from cookout.core.safety.judging import Judging, Mark, danger
from cookout.core.safety.limits import HOME, needs_control
from cookout.core.safety.rules import LimitSet
from cookout.core.safety.standing import judge_out


@dataclass(frozen=True, slots=True)
class PathReport:
    """What a path comes to. Minutes from its start; None where it is not known or does not apply.

    `danger_minutes` between cold and hot in all, `longest_out` the longest stretch of them out of heat and cold,
    `unknown_minutes` legs whose temperature nobody knows; `hottest_c` of the cooking, `centre_reached` by the rule of
    its kind; `to_first` and `to_last` the two stages of the last cooling.
    """

    danger_minutes: float
    longest_out: float
    unknown_minutes: float
    hottest_c: float | None
    centre_reached: bool | None
    to_first: float | None
    to_last: float | None
    marks: tuple[Mark, ...]
    findings: tuple[Finding, ...]


def judge_path(path: FoodPath, code: LimitSet = HOME, *, units: str = "us") -> PathReport:
    """Judge the path by one code; texts in the user's `units` ("us" or "metric").

    Foods that need no control have their centre judged only (they have none in the tables). Example: poultry, one leg
    of 180 min out in air of 26.7 degrees Celsius at that temperature, is refused: 180 min in the danger zone.
    """
    judging = Judging(path, code, units, place(path))
    judging_centre = judge_centre(judging)
    longest = 0.0
    if needs_control(path.food):
        longest = judge_out(judging)
        judge_holding(judging)
        judge_reheating(judging)
        judge_cooling(judging)
    return PathReport(
        danger_minutes=sum(danger(judging, here) for here in judging.placed),
        longest_out=longest,
        unknown_minutes=sum(here.leg.minutes for here in judging.placed if here.curve is None),
        hottest_c=judging_centre[0],
        centre_reached=judging_centre[1],
        to_first=judging.stages[0],
        to_last=judging.stages[1],
        marks=tuple(judging.marks),
        findings=worst_first(judging.findings),
    )
