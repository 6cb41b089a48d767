"""Quantities in texts for people: found, and compared as closely as their rounding lets them agree."""

import re
from dataclasses import dataclass

# Unit, its factor and zero in SI, and half of the last digit that is shown, in SI. Factors: NIST SP 811 (2008), B.8.
_UNITS: dict[str, tuple[str, float, float, float]] = {
    "°F": ("heat", 1 / 1.8, 459.67 / 1.8, 0.5 / 1.8),
    "°C": ("heat", 1.0, 273.15, 0.5),
    "ft": ("length", 0.3048, 0.0, 0.5 * 0.3048),
    "m": ("length", 1.0, 0.0, 0.5),
    "mph": ("speed", 0.44704, 0.0, 0.5 * 0.44704),
    "m/s": ("speed", 1.0, 0.0, 0.05),
    "lb": ("mass", 0.45359237, 0.0, 0.05 * 0.45359237),
    "kg": ("mass", 1.0, 0.0, 0.05),
}
US, METRIC = frozenset({"°F", "ft", "mph", "lb"}), frozenset({"°C", "m", "m/s", "kg"})
_QUANTITY = re.compile(r"(?<![\w.])(-?\d[\d,]*(?:\.\d+)?) ?(°F|°C|ft|mph|m/s|m|lb|kg)(?![\w/])")


@dataclass(frozen=True, slots=True)
class Said:
    """A quantity as a text says it, in SI with half of its last digit."""

    unit: str
    kind: str
    value: float
    half: float

    def agrees_with(self, other: "Said") -> bool:
        """Whether both can be roundings of one quantity."""
        return self.kind == other.kind and abs(self.value - other.value) <= self.half + other.half + 1e-9


def said(text: str) -> list[Said]:
    """Every temperature, length, speed and mass that a text says, in its order."""
    return [_said(number, unit) for number, unit in _QUANTITY.findall(text)]


def _said(number: str, unit: str) -> Said:
    kind, factor, zero, half = _UNITS[unit]
    return Said(unit, kind, float(number.replace(",", "")) * factor + zero, half)


def without_quantities(text: str) -> str:
    """The words around the quantities, with a mark in place of each."""
    return _QUANTITY.sub("#", text)
