"""What to do about the known troubles of a bake over coals, as numbers and as words.

The remedies are common practice, no source; how much of each comes from the oven's heat balance, and is a start to look
in on, never a promise.
"""

from dataclasses import dataclass
from enum import StrEnum
from math import pi, sqrt

from cookout.core.fire.charcoal import BRIQUETTES, TENDING
from cookout.core.fire.coals import FEED, bare_gain, burn_rate
from cookout.core.fire.counts import caught_each, day_of
from cookout.core.fire.iron import IRON_CONDUCTIVITY
from cookout.core.fire.network import OVEN, Stand
from cookout.core.fire.oven import OvenHeat, oven_heat
from cookout.core.fire.weather import Weather


class Trouble(StrEnum):
    """What a look-in may show."""

    TOO_HOT = "too_hot"
    TOO_COLD = "too_cold"
    WET_CENTRE = "wet_centre"
    ONE_SIDE = "one_side"


@dataclass(frozen=True, slots=True)
class Advice:
    """`lid` and `under` are coals to add (below 0: to take off); `words` say what to do and why.

    `time_share` is what it does to the time that is still to go: 1.2 a fifth longer, 0.8 a fifth shorter, 1 nothing.
    `turn_every` is minutes between turns where that is the remedy.
    """

    trouble: Trouble
    lid: int
    under: int
    words: str
    time_share: float = 1.0
    turn_every: int | None = None


@dataclass(frozen=True, slots=True)
class AdviceParams:
    """Our own choices, no source.

    bears_k      an oven so many degrees off its temperature is left alone; 6 to 12
    food_c       temperature of food half-way through its bake, degrees Celsius, for the share of time; 50 to 75
    least_left   coals left on the lid and under, whatever is taken off; 2 to 4
    around_w_m2_k  heat that iron gives off on both sides, W/(m2 K), for how far it spreads a coal's heat; 15 to 30
    """

    bears_k: float = 8.0
    food_c: float = 60.0
    least_left: int = 2
    around_w_m2_k: float = 20.0


ADVICE = AdviceParams()
LEAST_K = 20.0  # keeps the share of time finite where an oven is hardly warmer than its food


def about_heat(  # noqa: PLR0917 - the oven as it stands, then what is wanted of it
    stand: Stand,
    lid: int,
    under: int,
    target_c: float,
    fuel: str = BRIQUETTES,
    is_c: float | None = None,
    params: AdviceParams = ADVICE,
) -> Advice | None:
    """What to take off or add where the oven is not at `target_c`; None where it is near enough.

    `is_c` is the temperature as somebody found it; None takes what the balance says of those coals. The hotter of
    above and below gives coals first, the cooler gets them first. Worked example: 12 inches, 17 and 8 coals, found at
    205 degrees where 177 are wanted: 3 off the lid and 1 from under it.
    """
    heat = oven_heat(stand, lid, under, fuel)
    found = heat.mean.usual if is_c is None else is_c
    if abs(found - target_c) <= params.bears_k:
        return None
    lid_off, under_off = _fitting(stand, (lid, under), fuel, found - target_c, params)
    share = (max(found, params.food_c) - params.food_c + LEAST_K) / (
        max(target_c, params.food_c) - params.food_c + LEAST_K
    )
    return _about_heat_words(lid_off, under_off, share)


def _fitting(stand: Stand, coals: tuple[int, int], fuel: str, excess_k: float, params: AdviceParams) -> tuple[int, int]:
    """Coals to take off lid and under (below 0: to add), one at a time, until the balance falls by `excess_k`."""
    lid, under = coals
    start = oven_heat(stand, lid, under, fuel)
    off, step = [0, 0], 1 if excess_k > 0 else -1
    for _ in range(lid + under):
        here = oven_heat(stand, lid - off[0], under - off[1], fuel)
        if abs(start.mean.usual - here.mean.usual) >= abs(excess_k):
            break
        side = _side(here, (lid - off[0], under - off[1]), step, params)
        if side is None:
            break
        off[side] += step
    return off[0], off[1]


def _side(heat: OvenHeat, coals: tuple[int, int], step: int, params: AdviceParams) -> int | None:
    """Which side gives or gets the next coal: 0 the lid, 1 under, None where none is left to give."""
    lid_first = (heat.above.usual >= heat.below.usual) == (step > 0)
    for side in (0, 1) if lid_first else (1, 0):
        if step < 0 or coals[side] > params.least_left:
            return side
    return None


def _about_heat_words(lid_off: int, under_off: int, share: float) -> Advice:
    hot = lid_off + under_off > 0
    lid_words, under_words = ("off the lid", "from under the oven") if hot else ("on the lid", "under the oven")
    parts = [f"{_coals(abs(n))} {where}" for n, where in ((lid_off, lid_words), (under_off, under_words)) if n]
    if hot:
        words = f"It runs hot. Take {' and '.join(parts)}, and look in early; {_longer(share)} than at this heat."
        return Advice(Trouble.TOO_HOT, -lid_off, -under_off, words, share)
    words = f"It runs cool. Add {' and '.join(parts)}, ashed over; {_longer(share)} than as it is."
    return Advice(Trouble.TOO_COLD, -lid_off, -under_off, words, share)


def _coals(count: int) -> str:
    return "1 coal" if count == 1 else f"{count} coals"


def _longer(share: float) -> str:
    return f"it then needs about {_percent(share - 1)} {'longer' if share > 1 else 'less time'}"


def _percent(share: float) -> str:
    return f"{round(abs(share) * 100)} %"


def about_wet_centre(stand: Stand, fuel: str = BRIQUETTES, params: AdviceParams = ADVICE) -> Advice:
    """What to do where the edges are set and the centre is wet: heat on the spot.

    One coal under the centre and two on the lid's centre (common practice, no source). The share of time is that of the
    centre's own heat: what a coal's caught heat adds on its spot beside a usual load's. The spot is as wide as iron
    spreads heat, the root of conductivity times thickness over what it gives off (the length of a fin).
    """
    columns = day_of(stand, fuel)
    on_lid, beneath = caught_each(stand, columns, fuel)
    reach = sqrt(IRON_CONDUCTIVITY * stand.oven.thick_m / params.around_w_m2_k)
    spot = min(pi * (FEED.coal_m / 2 + reach) ** 2, stand.oven.plate_m2)
    added = (2 * float(on_lid[0]) + float(beneath[0])) / (2 * spot)
    usual = OVEN.usual_food_w_m2 / 2
    share = usual / (usual + added)
    words = (
        "The edges are set and the middle is wet. Move one coal under the centre and two to the centre of the lid; "
        f"the middle then needs about {_percent(1 - share)} less of the time still to go. Look in after 3 to 5 min."
    )
    return Advice(Trouble.WET_CENTRE, 2, 1, words, share)


def about_one_side(weather: Weather) -> Advice:
    """What to do where one side browns more: turn oftener, the oftener the more wind feeds the coals on its side.

    The windward coals burn faster than those in the lee by the gain that wind brings; turns come so much sooner, never
    under 5 min. Worked example: calm 12 min, wind of 8 m/s about 8 min.
    """
    usual = TENDING.turn_interval(weather)
    wind = max(weather.wind_mps, (weather.wind_mps + weather.gust_mps) / 2) * OVEN.pot_wind
    windward, lee = burn_rate(wind, FEED.most), burn_rate(wind * 0.3, FEED.most)
    every = max(5, min(usual, round(TENDING.turn_every_minutes * float(lee / windward))))
    where = " The wind feeds the coals on one side." if float(bare_gain(wind)) > 1.2 else ""
    words = (
        f"One side browns more.{where} Turn the oven a quarter one way and the lid a quarter the other every {every} "
        "min, and put a screen to windward where you have one."
    )
    return Advice(Trouble.ONE_SIDE, 0, 0, words, turn_every=every)
