"""Whether an icing bears the air it stands in, and what helps.

The temperatures are common practice with no source: bakers differ by several degrees, and humidity matters too. Cream
cheese and whipped cream are foods that need time and temperature control besides: how long they may be out is judged
by `waits.judge_wait` (2 h, or 1 h above 90 °F; non-official for cream-cheese icing), whether they still stand or not.
"""

from collections.abc import Iterable
from dataclasses import dataclass
from enum import StrEnum

from cookout.core.quantities import fahrenheit_to_celsius as celsius
from cookout.core.quantities import show_temperature
from cookout.core.safety.finding import Finding, Severity, show_minutes
from cookout.core.safety.rules import Standing


class Icing(StrEnum):
    """Icings by what holds them up."""

    CREAM_CHEESE = "cream_cheese"
    BUTTER = "butter"
    SHORTENING = "shortening"
    WHIPPED_CREAM = "whipped_cream"
    CHOCOLATE_AND_CREAM = "chocolate_and_cream"
    SUGAR_GLAZE = "sugar_glaze"


@dataclass(frozen=True, slots=True)
class Bearing:
    """Degrees Celsius from which the icing softens and from which it slides; whether it needs time control."""

    softens_c: float
    slides_c: float
    controlled: bool
    standing: Standing = Standing.PRACTICE


BEARINGS: dict[Icing, Bearing] = {
    Icing.CREAM_CHEESE: Bearing(celsius(75), celsius(85), controlled=True),
    Icing.BUTTER: Bearing(celsius(78), celsius(88), controlled=False),
    Icing.SHORTENING: Bearing(celsius(90), celsius(98), controlled=False),
    Icing.WHIPPED_CREAM: Bearing(celsius(70), celsius(78), controlled=True),
    Icing.CHOCOLATE_AND_CREAM: Bearing(celsius(75), celsius(85), controlled=True),
    Icing.SUGAR_GLAZE: Bearing(celsius(100), celsius(115), controlled=False),
}


@dataclass(frozen=True, slots=True)
class IcingParams:
    """What sun and time do to it. Our own choice, no source.

    sun_c         air and icing in full sun count as so many degrees Celsius warmer; 3 to 8
    soon_minutes  chilled, it bears being out of the cooler so long, to be spread or served; 15 to 40
    most_c        in air (with sun) hotter than this even that goes wrong; 38 to 45
    """

    sun_c: float = 4.0
    soon_minutes: int = 30
    most_c: float = 43.0


ICING = IcingParams()


def icing_holds(
    icing: Icing,
    air_c: float,
    *,
    sunny: bool,
    cooler: bool = False,
    minutes_out: float = 0.0,
    params: IcingParams = ICING,
    about: str = "icing",
    units: str = "us",
) -> Finding | None:
    """Whether the icing bears air of `air_c` degrees Celsius; None where it does.

    `cooler`: the cake waits in a cooler with ice and is out for `minutes_out` only, which a chilled icing bears for
    `params.soon_minutes` in air up to `params.most_c`. A warning where it slides, a note where it only softens.
    Example: cream cheese at 35 degrees Celsius (95 °F) slides; with a cooler it holds.
    """
    bearing = BEARINGS[icing]
    felt_c = air_c + (params.sun_c if sunny else 0.0)
    if felt_c < bearing.softens_c:
        return None
    if cooler and minutes_out <= params.soon_minutes and felt_c <= params.most_c:
        return None
    slides = felt_c >= bearing.slides_c
    level = show_temperature(bearing.slides_c if slides else bearing.softens_c, units)
    what = f"The {icing.value.replace('_', ' ')} icing will not hold" if slides else "The icing will be soft"
    where = f"{show_temperature(air_c, units)}{' in the sun' if sunny else ''}"
    text = f"{what}: at about {level} it {'slides' if slides else 'softens'}, and the air is {where}."
    severity = Severity.WARNING if slides else Severity.NOTE
    return Finding(about, severity, text, _remedy(params, sunny=sunny, cooler=cooler), standing=bearing.standing)


def _remedy(params: IcingParams, *, sunny: bool, cooler: bool) -> str:
    soon = show_minutes(params.soon_minutes)
    ice = f"Take it out of the cooler for {soon} at most" if cooler else "Keep cake and icing in a cooler with ice"
    shade = "ice it in the shade" if sunny else "ice it at the coolest place"
    return f"{ice}; {shade}, cake layers cold to the touch; or ice it later, in the cool of the evening."


def icing_of(food: str, ingredients: Iterable[str]) -> Icing | None:
    """The icing that a recipe's `ingredients` make, by their names; None where none of them tells.

    Ask only for recipes that are iced: butter and sugar alone also make a cake. A food kind "cream_icing" with nothing
    to go by counts as cream cheese.
    """
    names = " | ".join(name.lower() for name in ingredients)
    for words, icing in _TELLS:
        if all(any(option in names for option in word.split("/")) for word in words):
            return icing
    return Icing.CREAM_CHEESE if food == "cream_icing" else None


# The first that fits, the tenderest first; "a/b" is either.
_TELLS: tuple[tuple[tuple[str, ...], Icing], ...] = (
    (("cream cheese/mascarpone",), Icing.CREAM_CHEESE),
    (("whipping cream/heavy cream/double cream", "chocolate"), Icing.CHOCOLATE_AND_CREAM),
    (("whipping cream/whipped cream/heavy cream/double cream",), Icing.WHIPPED_CREAM),
    (("butter", "powdered sugar/icing sugar/confectioners"), Icing.BUTTER),
    (("shortening", "powdered sugar/icing sugar/confectioners"), Icing.SHORTENING),
    (("powdered sugar/icing sugar/confectioners",), Icing.SUGAR_GLAZE),
)
