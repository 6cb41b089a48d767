"""How long food may stand, and how hot its centre must get.

Two sets of rules stand side by side and are never mixed: USDA-FSIS guidance for homes and picnics (`HOME`, the default)
and the FDA Food Code as adopted by states (`FOOD_CODE`), for those who sell or serve the public. The organiser's local
code comes before both; `local.stricter` lays its numbers over either. Food kinds are named by the plain words of
`kitchen.recipe.FoodKind`, which this layer does not import.

Sources:
1. FDA Food Code, chapter 3, read in state adoptions and inspection texts: 3-401.11 (A)(1) to (3) cooking, 3-401.13
   plants for hot holding, 3-403.11 reheating (its letters A and D from memory), 3-501.14 (A) and (B) cooling, 3-501.16
   (A) holding, 3-501.19 (B) and (C) time as the control.
2. USDA-FSIS, safe minimum internal temperatures and the danger zone, read in mirrors.
"""

from dataclasses import dataclass

from cookout.core.quantities import fahrenheit_to_celsius as celsius
from cookout.core.safety.rules import (
    Cooling,
    HoldingRules,
    LeastCentre,
    LimitSet,
    Reheating,
    Rule,
    TimeControl,
)

USDA_FSIS = HoldingRules(
    name="USDA-FSIS",
    hot_c=celsius(140),
    cold_c=celsius(40),
    out_minutes=120,
    out_minutes_warm=60,
    warm_air_c=celsius(90),
    source="USDA-FSIS guidance: left out at most 2 hours, 1 hour above 90 °F (read in mirrors)",
)
FDA_FOOD_CODE = HoldingRules(
    name="FDA Food Code",
    section="3-501.19",
    hot_c=celsius(135),
    cold_c=celsius(41),
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

_HOME_CENTRE = Rule("USDA-FSIS", "safe minimum internal temperatures")
_HOME_ZONE = Rule("USDA-FSIS", "danger zone, 40 to 140 °F")
_HOME_REST_MINUTES = {"whole_meat": 3.0}

HOME = LimitSet(
    name="USDA-FSIS",
    about="Guidance for homes and picnics. Who sells or serves the public needs the code of the place.",
    holding=USDA_FSIS,
    holding_rule=_HOME_ZONE,
    hot_rule=_HOME_ZONE,
    cold_rule=_HOME_ZONE,
    out_rule=Rule("USDA-FSIS", "danger zone, the 2-hour rule"),
    centres=tuple(
        (food, LeastCentre(((celsius(degrees), 0.0),), _HOME_CENTRE, rest_minutes=_HOME_REST_MINUTES.get(food, 0.0)))
        for food, degrees in LEAST_CENTRE_F.items()
    ),
    reheating=Reheating(celsius(165), 0.0, None, _HOME_CENTRE),
)


def _code(section: str) -> Rule:
    return Rule("FDA Food Code", section)


_INTACT = LeastCentre(((celsius(145), 15.0),), _code("3-401.11(A)(1)"))
# 155 °F for 17 s is the newer edition, 15 s the older; the equal pairs stand in the same paragraph.
_GROUND = LeastCentre(
    ((celsius(155), 17.0), (celsius(158), 0.0), (celsius(150), 60.0), (celsius(145), 180.0)),
    _code("3-401.11(A)(2)"),
)
_POULTRY = LeastCentre(((celsius(165), 0.0),), _code("3-401.11(A)(3)"), note="older editions: held for 15 seconds")

FOOD_CODE = LimitSet(
    name="FDA Food Code as adopted by states",
    about="For who sells or serves the public; each state adopts it with changes of its own.",
    holding=FDA_FOOD_CODE,
    holding_rule=_code("3-501.16(A)"),
    hot_rule=_code("3-501.16(A)(1)"),
    cold_rule=_code("3-501.16(A)(2)"),
    out_rule=_code("3-501.19(B)"),
    centres=(
        ("poultry", _POULTRY),
        ("ground_meat", _GROUND),
        ("whole_meat", _INTACT),
        # Many eggs are broken together for a dish, which is the case of the higher figure.
        ("eggs", _GROUND),
        ("fish", _INTACT),
        # The kind of meat in it is not told, so the highest that any meat asks for.
        ("stew_and_beans", _POULTRY),
        ("cooked_vegetables", LeastCentre(((celsius(135), 0.0),), _code("3-401.13"))),
    ),
    reheating=Reheating(celsius(165), 15.0, 120, _code("3-403.11(A), (D)")),
    cooling=Cooling(
        from_c=celsius(135),
        first_c=celsius(70),
        first_minutes=120,
        last_c=celsius(41),
        last_minutes=360,
        first_rule=_code("3-501.14(A)(1)"),
        last_rule=_code("3-501.14(A)(2)"),
        ambient_minutes=240,
        ambient_rule=_code("3-501.14(B)"),
    ),
    time_control=TimeControl(
        minutes=240,
        rule=_code("3-501.19(B)"),
        cold_minutes=360,
        cold_most_c=celsius(70),
        cold_rule=_code("3-501.19(C)"),
    ),
)

CODES = {"home": HOME, "public": FOOD_CODE}
"""The published sets by the word that an event names them with."""


@dataclass(frozen=True, slots=True)
class Wait:
    """The longest that food may wait, in minutes, and the rule that says so."""

    minutes: int
    reason: str


@dataclass(frozen=True, slots=True)
class HandlingParams:
    """What we allow where a code gives no number.

    minutes    in the food code, food on its way between cooking, holding and serving is no wait; we call it one after
               so many minutes; 0 to 30; our own choice (one state's code gives carrying to the table under 30; read)
    """

    minutes: int = 30


HANDLING = HandlingParams()


def needs_control(food: str) -> bool:
    """Whether the food needs time and temperature control; a kind that no table knows is treated as if it did."""
    return food not in STABLE_FOODS


def longest_wait(
    food: str,
    held: str,
    air_c: float,
    rules: HoldingRules = USDA_FSIS,
    *,
    code: LimitSet | None = None,
    marked: bool = True,
) -> Wait | None:
    """How long finished `food` may wait `held` "hot", "cold" or at "air" of `air_c` degrees Celsius.

    None where safety sets no limit: foods that need no control, and food that really is held hot or cold (at or
    beyond `rules.hot_c` and `rules.cold_c`). A food kind that no table knows is treated as needing control.
    `code` takes the place of `rules`; in a code with time as the control, food that is not `marked` with its times
    has only the minutes of `HANDLING`.
    Example: poultry at air, 21 degrees Celsius, 120 minutes; at 33 degrees Celsius 60 minutes.
    """
    if not needs_control(food) or held in ("hot", "cold"):
        return None
    if code is not None and code.time_control is not None and not marked:
        minutes = min(HANDLING.minutes, code.holding.minutes_out(air_c))
        reason = f"with no times written on it, it must be held hot or cold ({code.holding_rule})"
        return Wait(minutes, f"{reason}; {minutes} min to hand it on are our own choice")
    holding = rules if code is None else code.holding
    minutes = holding.minutes_out(air_c)
    warm = " in such warm air" if minutes < holding.out_minutes else ""
    rule = f"{holding.name} {holding.section}".strip() if code is None else str(code.out_rule)
    return Wait(minutes, f"it may stand out at most {minutes} min{warm} ({rule})")


def is_warm_air(air_c: float, rules: HoldingRules = USDA_FSIS) -> bool:
    """Whether the air is so warm that the rules shorten the time that food may stand out."""
    return rules.minutes_out(air_c) < rules.out_minutes


def least_centre(food: str, code: LimitSet = HOME) -> LeastCentre | None:
    """How hot the middle of this kind of food must get; None where the set asks for nothing."""
    return code.centre(food)
