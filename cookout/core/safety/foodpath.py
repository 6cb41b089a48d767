"""A food's planned path: legs of time, each with how the food is held and how warm it is.

Temperatures are those of the food's middle in degrees Celsius, times in minutes. Where a thermal model gives samples
they are used; otherwise two known ends, or Newton's law with a stated time constant (`curve`). Where nothing is known
the leg says so, and the judging takes the worse case.
"""

from dataclasses import dataclass
from enum import StrEnum
from itertools import pairwise
from math import isfinite

from cookout.core.safety.curve import Curve, between, newton, sampled
from cookout.core.safety.local import LimitError

_SAME_MINUTE = 1e-6


class Held(StrEnum):
    """How the food is held on a leg: cooked, reheated, worked on, out, cooling down, hot, or in a cooler with ice."""

    OVEN = "oven"
    REHEAT = "reheat"
    WORK = "work"
    AIR = "air"
    COOLING = "cooling"
    HOT = "hot"
    ICE = "ice"


HEATED = frozenset({Held.OVEN, Held.REHEAT, Held.HOT})


@dataclass(frozen=True, slots=True)
class PathParams:
    """What is taken where a leg does not say.

    ice_c    surroundings in a cooler with ice, degrees Celsius; 0 to 4; ice melts at 0, the rest is our own choice
    """

    ice_c: float = 2.0


PARAMS = PathParams()


@dataclass(frozen=True, slots=True)
class Leg:
    """`minutes` held one way, in air of `air_c`.

    `samples` are (minute from the start of the leg, degrees Celsius), from 0 to the end. Without them `start_c` (or
    how the food came) and `end_c` are joined; without `end_c` the food follows Newton's law with the time constant
    `tau` towards `towards_c` (default: the air; in a cooler, ice). With none of these its temperature is not known.
    Raises `LimitError` for minutes below 0, a tau that is not above 0, or samples out of order or short of the leg.
    """

    minutes: float
    held: Held
    air_c: float
    start_c: float | None = None
    end_c: float | None = None
    samples: tuple[tuple[float, float], ...] = ()
    tau: float | None = None
    towards_c: float | None = None

    def __post_init__(self) -> None:
        if not (isfinite(self.minutes) and self.minutes >= 0):
            raise LimitError(f"A leg lasts 0 minutes or more, not {self.minutes:g}; give its length.")
        if self.tau is not None and self.tau <= 0:
            raise LimitError(f"A time constant is above 0 minutes, not {self.tau:g}; leave it out where none is known.")
        if self.samples:
            self._check_samples()

    def _check_samples(self) -> None:
        minutes = [minute for minute, _ in self.samples]
        rising = all(earlier < later for earlier, later in pairwise(minutes))
        whole = abs(minutes[0]) < _SAME_MINUTE and abs(minutes[-1] - self.minutes) < _SAME_MINUTE
        if len(minutes) < 2 or not rising or not whole:
            text = f"Samples must rise in time from 0 to the end of the leg at {self.minutes:g} min"
            raise LimitError(f"{text}, not from {minutes[0]:g} to {minutes[-1]:g}; sample the whole leg.")

    @property
    def surroundings_c(self) -> float:
        """What the food tends to: as given, the ice in a cooler, otherwise the air."""
        if self.towards_c is not None:
            return self.towards_c
        return PARAMS.ice_c if self.held is Held.ICE else self.air_c


@dataclass(frozen=True, slots=True)
class FoodPath:
    """A food from the first leg to the last. `cooks`: it starts raw and this path is to cook it.

    `marked`: out of heat and cold it bears its times in writing (time as the control, in codes that know it).
    """

    name: str
    food: str
    legs: tuple[Leg, ...]
    cooks: bool = True
    marked: bool = False
    about: str = ""


@dataclass(frozen=True, slots=True)
class Placed:
    """A leg at its place in the path: from minute `start`, with its curve (None: not known)."""

    leg: Leg
    start: float
    curve: Curve | None

    @property
    def end(self) -> float:
        """The minute at which the leg ends."""
        return self.start + self.leg.minutes

    @property
    def comes_c(self) -> float | None:
        """How warm the food is as the leg begins; None where that is not known."""
        if self.curve:
            return self.curve[0].first_c
        return self.leg.start_c

    @property
    def leaves_c(self) -> float | None:
        """How warm it is as the leg ends; None where that is not known."""
        return self.curve[-1].last_c if self.curve else self.leg.end_c


def place(path: FoodPath) -> tuple[Placed, ...]:
    """Every leg with its start and its curve; each goes on from where the one before it ended."""
    placed: list[Placed] = []
    start, came_c = 0.0, None
    for leg in path.legs:
        here = Placed(leg, start, _curve(leg, start, came_c))
        placed.append(here)
        start, came_c = here.end, here.leaves_c
    return tuple(placed)


def _curve(leg: Leg, start: float, came_c: float | None) -> Curve | None:
    if leg.samples:
        return sampled(start, leg.samples)
    first_c = came_c if leg.start_c is None else leg.start_c
    if first_c is None:
        return None
    if leg.end_c is not None:
        # An oven heats by more than Newton's law of the air around it, so its two ends are joined straight.
        towards_c = None if leg.held in HEATED and leg.towards_c is None else leg.surroundings_c
        return (between(start, leg.minutes, first_c, leg.end_c, towards_c),)
    if leg.tau is not None and not (leg.held in HEATED and leg.towards_c is None):
        return (newton(start, leg.minutes, first_c, leg.surroundings_c, leg.tau),)
    return None


def joined(placed: tuple[Placed, ...]) -> Curve | None:
    """One curve of all these legs; None where any of them is not known."""
    pieces = [piece for here in placed for piece in (here.curve or ())]
    return tuple(pieces) if all(here.curve is not None for here in placed) else None
