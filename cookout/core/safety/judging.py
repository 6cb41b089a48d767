"""A path while it is judged: the food, the code, the user's units, and what was found so far."""

from dataclasses import dataclass, field

from cookout.core.quantities import show_temperature
from cookout.core.safety.curve import minutes_where
from cookout.core.safety.finding import Finding, Severity
from cookout.core.safety.foodpath import FoodPath, Held, Placed
from cookout.core.safety.rules import LimitSet, Rule

EPSILON = 1e-6
"""A ten-thousandth of a second decides nothing; it is what rounding makes of a limit that is met exactly."""

OUT = frozenset({Held.AIR, Held.WORK, Held.COOLING})
"""Held neither hot nor cold."""


@dataclass(frozen=True, slots=True)
class Mark:
    """What is written on food under time as the control: minutes of the path at which it went out and must be gone."""

    out_at: float
    gone_by: float
    text: str
    rule: Rule


@dataclass(slots=True)
class Judging:
    """All that the parts of a judgement share; `stages` are the minutes of the last cooling, where they are known."""

    path: FoodPath
    code: LimitSet
    units: str
    placed: tuple[Placed, ...]
    findings: list[Finding] = field(default_factory=list)
    marks: list[Mark] = field(default_factory=list)
    stages: tuple[float | None, float | None] = (None, None)

    @property
    def name(self) -> str:
        """The food's name as a sentence begins with it."""
        return self.path.name[:1].upper() + self.path.name[1:]

    def show(self, food_c: float) -> str:
        """A temperature in the user's units."""
        return show_temperature(food_c, self.units)

    def say(self, severity: Severity, text: str, remedy: str, rule: Rule | None, minute: float | None = None) -> None:
        """Note a finding about this path."""
        self.findings.append(
            Finding(self.path.about or self.path.name, severity, text, remedy, rule=rule, minute=minute)
        )


def danger(judging: Judging, here: Placed) -> float:
    """Minutes of the leg in the danger zone; of a leg that nobody knows, all while it is out and none otherwise."""
    if here.curve is None:
        return here.leg.minutes if here.leg.held in OUT else 0.0
    return minutes_where(here.curve, (judging.code.cold_c, judging.code.hot_c), judging.code.in_danger)
