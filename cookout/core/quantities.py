"""Temperatures, lengths, speeds and elevations: read from what a person wrote, shown in that person's units.

Inside the program everything is in degrees Celsius, metres and metres a second. Factors are exact: NIST Special
Publication 811 (2008), Appendix B (inch 25.4 mm, foot 0.3048 m, mile 1609.344 m, knot 1852 m an hour, pound
0.45359237 kg, and
t(C) = (t(F) - 32) / 1.8); the same lengths stand in NIST Handbook 44, Appendix C.
"""

import math
import re
from collections.abc import Callable
from decimal import Decimal
from enum import StrEnum

from cookout.core.errors import QuantityError

METRES_IN_INCH = 0.0254
METRES_IN_FOOT = 0.3048
METRES_IN_MILE = 1609.344
METRES_IN_NAUTICAL_MILE = 1852.0
SECONDS_IN_HOUR = 3600.0
KILOGRAMS_IN_POUND = 0.45359237
ABSOLUTE_ZERO_C = -273.15

# A comma parts thousands and nothing else: "1,5" could mean two things, so it is refused.
_QUANTITY = re.compile(r"([-+]?(?:[0-9]{1,3}(?:,[0-9]{3})+|[0-9]+)(?:\.[0-9]+)?)\s*([^0-9\s.,+-][^0-9]*)")
_LONGEST_TEXT = 400


class Units(StrEnum):
    """The units a person reads: US customary or metric."""

    US = "us"
    METRIC = "metric"


_TO_METRES: dict[str, float] = {
    "in": METRES_IN_INCH,
    "inch": METRES_IN_INCH,
    "inches": METRES_IN_INCH,
    '"': METRES_IN_INCH,
    "ft": METRES_IN_FOOT,
    "foot": METRES_IN_FOOT,
    "feet": METRES_IN_FOOT,
    "mm": 0.001,
    "cm": 0.01,
    "m": 1.0,
}

_TO_METRES_A_SECOND: dict[str, float] = {
    "mph": METRES_IN_MILE / SECONDS_IN_HOUR,
    "km/h": 1000.0 / SECONDS_IN_HOUR,
    "kn": METRES_IN_NAUTICAL_MILE / SECONDS_IN_HOUR,
    "m/s": 1.0,
}

_TO_KILOGRAMS: dict[str, float] = {"lb": KILOGRAMS_IN_POUND, "kg": 1.0, "g": 0.001}

_CELSIUS = ("c", "°c")
_FAHRENHEIT = ("f", "°f")


def parse_temperature(text: str) -> float:
    """Degrees Celsius of a text such as ``350 F`` or ``180 °C``.

    Raises `QuantityError` where number or scale is missing, or the temperature lies below absolute zero.
    """
    number, unit = _split(text, "a temperature", '"350 F" or "180 C"')
    if unit in _CELSIUS:
        celsius = number
    elif unit in _FAHRENHEIT:
        celsius = fahrenheit_to_celsius(number)
    else:
        raise QuantityError(f'"{text}" is no temperature: the scale is not known; write F or C, as in "350 F".')
    if celsius < ABSOLUTE_ZERO_C:
        raise QuantityError(f'"{text}" is colder than anything can be; check the number and its scale.')
    return celsius


def parse_length(text: str) -> float:
    """Metres of a text such as ``12 in``, ``30 cm`` or ``2 ft``; `QuantityError` for anything else or below 0."""
    return _not_negative(text, _scaled(text, _TO_METRES, "a length", '"12 in" or "30 cm"'))


def parse_inches(text: str) -> int:
    """Whole inches of a length, as ovens are named by them: ``12 in`` and ``30 cm`` are both 12."""
    return round(parse_length(text) / METRES_IN_INCH)


def parse_speed(text: str) -> float:
    """Metres a second of a text such as ``8 mph``, ``5 m/s``, ``20 km/h`` or ``10 kn``; never below 0."""
    return _not_negative(text, _scaled(text, _TO_METRES_A_SECOND, "a speed", '"8 mph" or "5 m/s"'))


def parse_elevation(text: str) -> float:
    """Metres above the sea of a text such as ``1,200 ft`` or ``366 m``; below the sea is negative."""
    return _scaled(text, _TO_METRES, "an elevation", '"1,200 ft" or "366 m"')


def parse_mass(text: str) -> float:
    """Kilograms of a text such as ``20 lb`` or ``9 kg``; never below 0."""
    return _not_negative(text, _scaled(text, _TO_KILOGRAMS, "a mass", '"20 lb" or "9 kg"'))


def show_temperature(celsius: float, units: str) -> str:
    """A temperature to the whole degree: ``350 °F`` or ``177 °C``."""
    if Units(units) is Units.US:
        return f"{round(celsius_to_fahrenheit(celsius))} °F"
    return f"{round(celsius)} °C"


def show_inches(inches: int, units: str) -> str:
    """The size of an oven to the inch or to the centimetre: ``12 in`` or ``30 cm``."""
    return show_length(inches * METRES_IN_INCH, units)


def show_length(metres: float, units: str) -> str:
    """A length of gear to the inch or to the centimetre: ``12 in`` or ``30 cm``."""
    if Units(units) is Units.US:
        return f"{metres / METRES_IN_INCH:.0f} in"
    return f"{metres * 100:.0f} cm"


def show_speed(metres_a_second: float, units: str) -> str:
    """A speed of wind: whole miles an hour, or metres a second to one decimal."""
    if Units(units) is Units.US:
        return f"{metres_a_second / _TO_METRES_A_SECOND['mph']:.0f} mph"
    return f"{metres_a_second:.1f} m/s"


def show_elevation(metres: float, units: str) -> str:
    """An elevation to the foot or to the metre: ``1,200 ft`` or ``366 m``."""
    if Units(units) is Units.US:
        return f"{round(metres / METRES_IN_FOOT):,} ft"
    return f"{round(metres):,} m"


def show_mass(kilograms: float, units: str) -> str:
    """A mass of fuel or iron to one decimal: ``11.0 lb`` or ``5.0 kg``."""
    if Units(units) is Units.US:
        return f"{kilograms / KILOGRAMS_IN_POUND:.1f} lb"
    return f"{kilograms:.1f} kg"


def fahrenheit_to_celsius(fahrenheit: float) -> float:
    """Degrees Celsius; 350 F is 176.67 C."""
    return (fahrenheit - 32.0) / 1.8


def celsius_to_fahrenheit(celsius: float) -> float:
    """Degrees Fahrenheit; 180 C is 356 F."""
    return celsius * 1.8 + 32.0


def write_temperature(celsius: float, units: str) -> str:
    """A text that `parse_temperature` reads as exactly this value, in the person's units where they can say it."""
    return _write_exactly(celsius, celsius_to_fahrenheit(celsius), ("F", "C"), units, parse_temperature)


def write_speed(metres_a_second: float, units: str) -> str:
    """A text that `parse_speed` reads as exactly this value, in the person's units where they can say it."""
    mph = metres_a_second / _TO_METRES_A_SECOND["mph"]
    return _write_exactly(metres_a_second, mph, ("mph", "m/s"), units, parse_speed)


def write_elevation(metres: float, units: str) -> str:
    """A text that `parse_elevation` reads as exactly this value, in the person's units where they can say it."""
    return _write_exactly(metres, metres / METRES_IN_FOOT, ("ft", "m"), units, parse_elevation)


def write_length(metres: float, units: str) -> str:
    """A text that `parse_length` reads as exactly this length, in inches or centimetres where they can say it."""
    for scale, unit in ((METRES_IN_INCH, "in"), (0.01, "cm"))[:: 1 if Units(units) is Units.US else -1]:
        for digits in range(4):
            text = f"{metres / scale:.{digits}f} {unit}"
            if parse_length(text) == metres:
                return text
    return f"{_plain(metres)} m"


def write_mass(kilograms: float, units: str) -> str:
    """A text that `parse_mass` reads as exactly this value, in the person's units where they can say it."""
    return _write_exactly(kilograms, kilograms / KILOGRAMS_IN_POUND, ("lb", "kg"), units, parse_mass)


def _write_exactly(
    value: float, in_us: float, names: tuple[str, str], units: str, parse: Callable[[str], float]
) -> str:
    if Units(units) is Units.US:
        for digits in range(4):
            text = f"{in_us:.{digits}f} {names[0]}"
            if parse(text) == value:
                return text
    return f"{_plain(value)} {names[1]}"


def _plain(value: float) -> str:
    """The shortest digits that read back as the same number, never with an exponent."""
    text = format(Decimal(repr(value)), "f")
    return text.removesuffix(".0")


def _split(text: str, what: str, example: str) -> tuple[float, str]:
    match = _QUANTITY.fullmatch(text.strip()) if len(text) <= _LONGEST_TEXT else None
    number = float(match[1].replace(",", "")) if match else math.inf
    if match is None or not math.isfinite(number):
        raise QuantityError(f'"{text[:60]}" is not {what}; write a number and its unit, as in {example}.')
    return number, match[2].lower().replace(" ", "")


def _scaled(text: str, factors: dict[str, float], what: str, example: str) -> float:
    number, unit = _split(text, what, example)
    if unit not in factors:
        raise QuantityError(
            f'"{text}" is not {what}: its unit is not known; use {", ".join(factors)}, as in {example}.'
        )
    return number * factors[unit]


def _not_negative(text: str, value: float) -> float:
    if value < 0:
        raise QuantityError(f'"{text}" is below 0; write it without the minus sign.')
    return value
