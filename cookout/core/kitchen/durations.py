"""Spans of time as ISO 8601 durations (``PT1H30M``), in whole minutes."""

import math
import re

_DURATION = re.compile(
    r"P(?:(?P<weeks>\d{1,3}(?:\.\d+)?)W)?(?:(?P<days>\d{1,3}(?:\.\d+)?)D)?"
    r"(?:T(?:(?P<hours>\d{1,4}(?:\.\d+)?)H)?(?:(?P<minutes>\d{1,5}(?:\.\d+)?)M)?(?:(?P<seconds>\d{1,7}(?:\.\d+)?)S)?)?",
    re.IGNORECASE,
)
_MINUTES = {"weeks": 10080.0, "days": 1440.0, "hours": 60.0, "minutes": 1.0, "seconds": 1 / 60}


def read_duration(text: str) -> int | None:
    """Minutes of a duration, rounded up; None where it is none, or nothing long. Years and months have no set length.

    ``PT1H30M`` is 90, ``P1DT2H`` 1560, ``PT45S`` 1.
    """
    match = _DURATION.fullmatch(text.strip())
    if match is None:
        return None
    minutes = sum(float(match[part]) * length for part, length in _MINUTES.items() if match[part])
    return math.ceil(minutes - 1e-9) or None


def write_duration(minutes: int) -> str:
    """The duration of so many whole minutes, 0 or more: 90 is ``PT1H30M``."""
    hours, rest = divmod(minutes, 60)
    return f"PT{hours}H{rest}M" if hours and rest else f"PT{hours}H" if hours else f"PT{rest}M"
