"""How long food may stand, and how hot its centre must get.

Two sets of rules stand side by side and are never mixed: USDA-FSIS guidance for homes and picnics (the default here)
and the FDA Food Code as adopted by states, for those who sell or serve the public. The organiser's local code comes
before both. Food kinds are named by the plain words of `kitchen.recipe.FoodKind`, which this layer does not import.
"""

from dataclasses import dataclass


def _celsius(fahrenheit: float) -> float:
    return (fahrenheit - 32) / 1.8


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


USDA_FSIS = HoldingRules(
    name="USDA-FSIS",
    hot_c=_celsius(140),
    cold_c=_celsius(40),
    out_minutes=120,
    out_minutes_warm=60,
    warm_air_c=_celsius(90),
    source="USDA-FSIS guidance: left out at most 2 hours, 1 hour above 90 °F (read in mirrors)",
)
FDA_FOOD_CODE = HoldingRules(
    name="FDA Food Code",
    section="3-501.19",
    hot_c=_celsius(135),
    cold_c=_celsius(41),
    out_minutes=240,
    out_minutes_warm=None,
    warm_air_c=None,
    source="FDA Food Code 3-501.19, as adopted by states: 4 hours with time alone as the control, then thrown away",
)

# Foods that need no time and temperature control once made. Breads and cakes without a moist filling: from memory.
STABLE_FOODS = frozenset({"bread_and_cake"})

# Cream-cheese icing counts as controlled (non-official); cut produce counts as perishable (USDA-FSIS, from memory).
CONTROLLED_FOODS = frozenset(
    {
        "cream_icing",
        "eggs",
        "fish",
        "whole_meat",
        "ground_meat",
        "poultry",
        "stew_and_beans",
        "cooked_vegetables",
        "raw_vegetables",
        "fruit",
        "dairy",
    }
)

# Least centre temperature, degrees Fahrenheit. USDA-FSIS safe minimum internal temperatures (read in mirrors);
# stews and beans as its "leftovers and casseroles". Foods that are not listed have none.
LEAST_CENTRE_F: dict[str, int] = {
    "poultry": 165,
    "ground_meat": 160,
    "whole_meat": 145,
    "eggs": 160,
    "fish": 145,
    "stew_and_beans": 165,
}


@dataclass(frozen=True, slots=True)
class Wait:
    """The longest that food may wait, in minutes, and the rule that says so."""

    minutes: int
    reason: str


def longest_wait(food: str, held: str, air_c: float, rules: HoldingRules = USDA_FSIS) -> Wait | None:
    """How long finished `food` may wait `held` "hot", "cold" or at "air" of `air_c` degrees Celsius.

    None where safety sets no limit: foods that need no control, and food that really is held hot or cold (at or
    beyond `rules.hot_c` and `rules.cold_c`). A food kind that no table knows is treated as needing control.
    Example: poultry at air, 21 degrees Celsius, 120 minutes; at 33 degrees Celsius 60 minutes.
    """
    if food in STABLE_FOODS or held in ("hot", "cold"):
        return None
    minutes = rules.minutes_out(air_c)
    warm = " in such warm air" if minutes < rules.out_minutes else ""
    rule = f"{rules.name} {rules.section}".strip()
    return Wait(minutes, f"it may stand out at most {minutes} min{warm} ({rule})")


def is_warm_air(air_c: float, rules: HoldingRules = USDA_FSIS) -> bool:
    """Whether the air is so warm that the rules shorten the time that food may stand out."""
    return rules.minutes_out(air_c) < rules.out_minutes
