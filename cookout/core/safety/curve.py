"""How warm food is over time: pieces of a curve, each rising or falling all the way, with exact crossings.

A piece is straight between two measured or computed points, or follows Newton's law of cooling, dT/dt = (s - T) / tau
with the surroundings s held constant and the food lumped (alike all through). That law holds for Biot numbers below
about 0.1; a thick pot or cake cools from outside inwards and its middle lags, so its time constant must be that of the
middle. Example: 74 to 27 degrees Celsius surroundings, tau 60 min, passes 57.2 after 26.4 min.

Source: Newton's law and the lumped capacitance method, any undergraduate text on heat transfer (its chapter 5 in the
usual one, from memory).
"""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from itertools import pairwise
from math import exp, inf, log


@dataclass(frozen=True, slots=True)
class Piece:
    """From minute `start` for `minutes`: from `first_c` to `last_c`, straight, or bent towards `towards_c`.

    `towards_c` None is straight; `tau` (minutes) goes with it.
    """

    start: float
    minutes: float
    first_c: float
    last_c: float
    towards_c: float | None = None
    tau: float = inf

    @property
    def end(self) -> float:
        """The minute at which the piece ends."""
        return self.start + self.minutes

    def crossing(self, level_c: float) -> float | None:
        """The minute at which the food passes `level_c`, or None where it does not lie strictly between the ends."""
        low, high = sorted((self.first_c, self.last_c))
        if not low < level_c < high:
            return None
        if self.towards_c is None:
            return self.start + self.minutes * (level_c - self.first_c) / (self.last_c - self.first_c)
        return self.start + self.tau * log((self.first_c - self.towards_c) / (level_c - self.towards_c))

    def at(self, minute: float) -> float:
        """How warm the food is at `minute`, which lies in the piece."""
        if self.minutes <= 0:
            return self.last_c
        if self.towards_c is None:
            return self.first_c + (self.last_c - self.first_c) * (minute - self.start) / self.minutes
        return self.towards_c + (self.first_c - self.towards_c) * exp(-(minute - self.start) / self.tau)

    def cut(self, levels: Sequence[float]) -> list["Piece"]:
        """The same piece in parts that each lie wholly on one side of every level."""
        crossings = ((self.crossing(level), level) for level in levels)
        cuts = sorted({(minute, level) for minute, level in crossings if minute is not None})
        edges = [(self.start, self.first_c), *cuts, (self.end, self.last_c)]
        return [
            Piece(start, end - start, first, last, self.towards_c, self.tau)
            for (start, first), (end, last) in pairwise(edges)
        ]


Curve = tuple[Piece, ...]


def newton(start: float, minutes: float, first_c: float, towards_c: float, tau: float) -> Piece:
    """Cooling (or warming) towards `towards_c` degrees Celsius with the time constant `tau` in minutes (above 0)."""
    last_c = towards_c + (first_c - towards_c) * exp(-minutes / tau)
    return Piece(start, minutes, first_c, last_c, towards_c, tau)


def between(start: float, minutes: float, first_c: float, last_c: float, towards_c: float | None) -> Piece:
    """From one known temperature to another: by Newton's law where the surroundings allow it, otherwise straight."""
    if towards_c is not None and minutes > 0 and (first_c - last_c) * (last_c - towards_c) > 0:
        tau = minutes / log((first_c - towards_c) / (last_c - towards_c))
        return Piece(start, minutes, first_c, last_c, towards_c, tau)
    return Piece(start, minutes, first_c, last_c)


def sampled(start: float, samples: Sequence[tuple[float, float]]) -> Curve:
    """Straight lines through samples (minute from the start of the leg, degrees Celsius), in order of time."""
    return tuple(
        Piece(start + minute, later - minute, food_c, later_c)
        for (minute, food_c), (later, later_c) in pairwise(samples)
    )


def minutes_where(curve: Curve, levels: Sequence[float], holds: Callable[[float], bool]) -> float:
    """Minutes in which `holds` is true of the temperature; it may change its answer at `levels` only."""
    parts = (part for piece in curve for part in piece.cut(levels))
    return sum(part.minutes for part in parts if holds(_middle(part)))


def _middle(part: Piece) -> float:
    """A temperature from within the part, so that a level which the part only touches decides nothing."""
    return part.at(part.start + part.minutes / 2)


def longest_at_least(curve: Curve, level_c: float) -> tuple[float, float] | None:
    """The longest unbroken stretch at or above `level_c`: its minutes and when it began; None where it is never so.

    A food that only touches the level has it for 0 minutes.
    """
    best: tuple[float, float] | None = None
    began: float | None = None
    for part in (part for piece in curve for part in piece.cut((level_c,))):
        if min(part.first_c, part.last_c) >= level_c:
            began = part.start if began is None else began
            if best is None or part.end - began > best[0]:
                best = (part.end - began, began)
        elif max(part.first_c, part.last_c) >= level_c:
            touch = part.end if part.last_c >= level_c else part.start
            best = best or (0.0, touch)
            began = None
        else:
            began = None
    return best


def last_at_least(curve: Curve, level_c: float) -> float | None:
    """The last minute at which the food is at or above `level_c`; None where it never is."""
    for piece in reversed(curve):
        for part in reversed(piece.cut((level_c,))):
            if part.last_c >= level_c:
                return part.end
            if part.first_c >= level_c:
                return part.start
    return None


def first_at_most(curve: Curve, level_c: float, since: float = 0.0) -> float | None:
    """The first minute from `since` on at which the food is at or below `level_c`; None where it never is."""
    for piece in curve:
        for part in piece.cut((level_c,)):
            if part.end < since:
                continue
            if part.first_c <= level_c and part.start >= since:
                return part.start
            if part.last_c <= level_c:
                return part.end if part.first_c > level_c else max(since, part.start)
    return None
