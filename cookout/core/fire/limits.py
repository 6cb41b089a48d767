"""What baking and cooling share: the sizes they stand for, and how independent doubts add."""

from math import exp, hypot, isinf, log

DIAMETERS_M = (0.05, 0.6)
DEPTHS_M = (0.005, 0.3)


def within(what: str, value: float, limits: tuple[float, float], unit: str) -> None:
    """`ValueError`, in words, for a value outside of its limits (or none at all)."""
    if not limits[0] <= value <= limits[1]:
        raise ValueError(f"{what} must lie from {limits[0]:g} to {limits[1]:g} {unit}, not {value:g}")


def spread_of(usual: float, ends: tuple[float, ...], sign: int) -> float:
    """A usual time moved down (`sign` -1) or up (1) by what each of several independent doubts makes of it.

    The logarithms of the ratios add as the root of their squares. Example: 30 with ends 27 and 25 downward: 24.3.
    Where a time is 0 or infinite no ratio exists, and the outermost is taken.
    """
    if usual <= 0 or isinf(usual) or any(isinf(end) or end <= 0 for end in ends):
        return min(usual, *ends) if sign < 0 else max(usual, *ends)
    return usual * exp(sign * hypot(*(max(0.0, sign * log(end / usual)) for end in ends)))
