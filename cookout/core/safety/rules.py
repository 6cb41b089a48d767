"""What a set of food rules is made of: holding, least centre temperatures, reheating, cooling, time as the control.

Temperatures in degrees Celsius, times in minutes or (where a centre is held) in seconds. The sets themselves stand in
`limits`; a local code that asks for more is laid over one of them by `local.stricter`.
"""

from dataclasses import dataclass
from enum import StrEnum


class Standing(StrEnum):
    """How well a figure is founded; it is shown beside the figure."""

    READ = "read in a copy"
    MEMORY = "from memory, not confirmed"
    PRACTICE = "common practice, no source"
    OWN = "our own choice, no source"
    ORGANISER = "set by the organiser"


@dataclass(frozen=True, slots=True)
class Rule:
    """Where a rule stands: the set's name, its section (empty where it has none), and how we know."""

    code: str
    section: str
    standing: Standing = Standing.READ

    def __str__(self) -> str:
        """The rule as it is cited: ``FDA Food Code 3-501.16(A)``."""
        return f"{self.code} {self.section}".strip()


@dataclass(frozen=True, slots=True)
class HoldingRules:
    """One set of rules for holding food; temperatures in degrees Celsius, times in minutes.

    `out_minutes` is the longest that food needing time and temperature control may stand out of it, and
    `out_minutes_warm` the same in air above `warm_air_c` (None: the set knows no such rule). `section` is where the set
    says so, where it has sections.
    """

    name: str
    hot_c: float
    cold_c: float
    out_minutes: int
    out_minutes_warm: int | None
    warm_air_c: float | None
    source: str
    section: str = ""

    def minutes_out(self, air_c: float) -> int:
        """Minutes that the food may stand out in air of `air_c` degrees Celsius."""
        if self.warm_air_c is not None and self.out_minutes_warm is not None and air_c > self.warm_air_c:
            return self.out_minutes_warm
        return self.out_minutes


@dataclass(frozen=True, slots=True)
class LeastCentre:
    """How hot the middle of a food must get: any one of `pairs` of degrees Celsius and seconds held is enough.

    `rest_minutes` is how long it must stand afterwards before it is cut or eaten; `note` says what else is to know.
    """

    pairs: tuple[tuple[float, float], ...]
    rule: Rule
    rest_minutes: float = 0.0
    note: str = ""

    @property
    def usual_c(self) -> float:
        """The temperature that is told to people: that of the first pair."""
        return self.pairs[0][0]

    @property
    def usual_seconds(self) -> float:
        """Seconds that it is held there."""
        return self.pairs[0][1]


@dataclass(frozen=True, slots=True)
class Reheating:
    """Food that was cooked and cooled must reach `centre_c` for `seconds`, within `minutes` (None: the set is silent).

    `minutes` count from the start of the reheating.
    """

    centre_c: float
    seconds: float
    minutes: int | None
    rule: Rule


@dataclass(frozen=True, slots=True)
class Cooling:
    """Two stages from `from_c`: down to `first_c` within `first_minutes`, to `last_c` within `last_minutes` in all.

    Food made from things at air temperature, that never was hot, has `ambient_minutes` down to `last_c`.
    """

    from_c: float
    first_c: float
    first_minutes: int
    last_c: float
    last_minutes: int
    first_rule: Rule
    last_rule: Rule
    ambient_minutes: int
    ambient_rule: Rule


@dataclass(frozen=True, slots=True)
class TimeControl:
    """Time alone as the control: `minutes` from hot or cold holding, or `cold_minutes` from cold while never warm.

    "Never warm" is at most `cold_most_c`. The food bears its times in writing and is thrown away when they are over.
    """

    minutes: int
    rule: Rule
    cold_minutes: int
    cold_most_c: float
    cold_rule: Rule


@dataclass(frozen=True, slots=True)
class LimitSet:
    """One code, whole: never mixed with another. It can be hashed, and compares by its numbers.

    `cooling` and `time_control` are None where the set knows no such rule; then `out_rule` limits how long food may be
    out of the cold or the heat. `cold_rule` and `hot_rule` forbid to hold it warmer or cooler, `holding_rule` both.
    """

    name: str
    holding: HoldingRules
    holding_rule: Rule
    hot_rule: Rule
    cold_rule: Rule
    out_rule: Rule
    centres: tuple[tuple[str, LeastCentre], ...]
    reheating: Reheating
    cooling: Cooling | None = None
    time_control: TimeControl | None = None
    local: str = ""
    about: str = ""

    @property
    def hot_c(self) -> float:
        """Food held hot is at least as hot as this."""
        return self.holding.hot_c

    @property
    def cold_c(self) -> float:
        """Food held cold is at most as warm as this."""
        return self.holding.cold_c

    def centre(self, food: str) -> LeastCentre | None:
        """How hot the middle of this kind of food must get; None where the set asks for nothing."""
        return dict(self.centres).get(food)

    def in_danger(self, food_c: float) -> bool:
        """Whether food of this temperature lies in the danger zone: neither hot nor cold."""
        return self.cold_c < food_c < self.hot_c
