"""Which rules of food safety an event keeps: a published set, and the stricter numbers of the local code over it."""

from dataclasses import dataclass
from enum import StrEnum
from functools import cache

from cookout.core.safety.limits import CODES
from cookout.core.safety.local import LocalNumbers, stricter
from cookout.core.safety.rules import LimitSet

_NOTHING_LOCAL = LocalNumbers()


class FoodCode(StrEnum):
    """The published sets: guidance for homes and picnics, and the code for whoever serves the public."""

    HOME = "home"
    PUBLIC = "public"


@dataclass(frozen=True, slots=True)
class FoodRules:
    """The rules of an event. `marked`: food out of heat and cold bears its times in writing.

    `numbers` are those of the local code named `local`, at its `section`, where they are stricter.
    """

    code: FoodCode = FoodCode.HOME
    marked: bool = False
    local: str = ""
    section: str = ""
    numbers: LocalNumbers = _NOTHING_LOCAL

    @property
    def limits(self) -> LimitSet:
        """The set with the local numbers over it; `LimitError` where one of them would allow more than the set."""
        return _limits(self)


HOME_RULES = FoodRules()


@cache
def _limits(rules: FoodRules) -> LimitSet:
    published = CODES[rules.code.value]
    if rules.numbers == _NOTHING_LOCAL:
        return published
    return stricter(published, rules.numbers, rules.local or "local code", rules.section)
