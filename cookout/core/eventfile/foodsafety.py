"""The table [food_safety]."""

from cookout.core.eventfile.fields import DAY_MINUTES, Fields
from cookout.core.kitchen.recipe import FoodKind
from cookout.core.planning.foodrules import FoodCode, FoodRules
from cookout.core.quantities import parse_temperature
from cookout.core.safety.local import LimitError, LocalNumbers

FREEZING_C, BOILING_C = 0.0, 100.0


def read_food_rules(fields: Fields) -> FoodRules:
    """The rules of food safety that the event keeps."""
    rules = FoodRules(
        code=fields.choice("code", FoodCode, FoodCode.HOME) or FoodCode.HOME,
        marked=fields.flag("marked", default=False),
        local=fields.text("local_code", ""),
        section=fields.text("section", ""),
        numbers=_read_numbers(fields),
    )
    if fields.sound("code", "marked", *NUMBER_KEYS):
        _refuse_laxer(fields, rules)
    return rules


NUMBER_KEYS = (
    "hot",
    "cold",
    "out_minutes",
    "warm_minutes",
    "warm_air",
    "cold_out_minutes",
    "first_minutes",
    "cooling_minutes",
    "reheating",
    "reheating_minutes",
    "centres",
)


def _read_numbers(fields: Fields) -> LocalNumbers:
    centres = fields.table("centres", "food_safety.centres")
    return LocalNumbers(
        hot_c=_temperature(fields, "hot"),
        cold_c=_temperature(fields, "cold"),
        out_minutes=fields.maybe_whole("out_minutes", most=DAY_MINUTES),
        warm_minutes=fields.maybe_whole("warm_minutes", most=DAY_MINUTES),
        warm_air_c=_temperature(fields, "warm_air"),
        cold_out_minutes=fields.maybe_whole("cold_out_minutes", most=DAY_MINUTES),
        first_minutes=fields.maybe_whole("first_minutes", most=DAY_MINUTES),
        cooling_minutes=fields.maybe_whole("cooling_minutes", most=DAY_MINUTES),
        reheating_c=_temperature(fields, "reheating"),
        reheating_minutes=fields.maybe_whole("reheating_minutes", most=DAY_MINUTES),
        centres_c=() if centres is None else _read_centres(centres),
    )


def _read_centres(fields: Fields) -> tuple[tuple[str, float], ...]:
    found = ((kind.value, _temperature(fields, kind.value)) for kind in FoodKind)
    return tuple((kind, centre_c) for kind, centre_c in found if centre_c is not None)


def _temperature(fields: Fields, key: str) -> float | None:
    if not fields.has(key):
        return None
    return fields.quantity(key, parse_temperature, '"140 F"', least=FREEZING_C, most=BOILING_C)


def _refuse_laxer(fields: Fields, rules: FoodRules) -> None:
    try:
        _ = rules.limits
    except LimitError as error:
        fields.fault("", "A local number does not go with the published code.", str(error))
