"""How many coals an oven wants, and what it then does: the answer to one cook's question, without any event."""

from dataclasses import dataclass

from cookout.core.fire.advice import Advice, about_one_side, about_wet_centre
from cookout.core.fire.charcoal import BRIQUETTES
from cookout.core.fire.chart import CoalCount, coal_count
from cookout.core.fire.coals import TopUp, top_ups
from cookout.core.fire.counts import day_of
from cookout.core.fire.oven import Batch, OvenCase, OvenCourse, OvenHeat, Stand, oven_heat, simulate, usual_load
from cookout.core.fire.patterns import Pattern, lay
from cookout.core.fire.supply import BakeFuel, Supply, fuel_for


@dataclass(frozen=True, slots=True)
class CoalQuestion:
    """An oven on its `stand` that is to hold `target_c` for `minutes` from laying the coals.

    `method` is bake, roast, simmer or fry; the food goes in `preheat_minutes` after the coals are laid, on a `trivet`
    or straight on the iron.
    """

    stand: Stand
    target_c: float
    method: str = "bake"
    fuel: str = BRIQUETTES
    minutes: int = 60
    preheat_minutes: int = 10
    trivet: bool = False


@dataclass(frozen=True, slots=True)
class CoalAnswer:
    """Coals with their band and pattern, fresh coals on the way, and what the oven does."""

    count: CoalCount
    pattern: Pattern
    top_ups: tuple[TopUp, ...]
    heat: OvenHeat
    course: OvenCourse
    supply: Supply
    advice: tuple[Advice, ...]


def answer_coals(*, question: CoalQuestion) -> CoalAnswer:
    """The answer to a question. Raises `ValueError` for an oven or height outside of what the model bears."""
    stand, fuel = question.stand, question.fuel
    count = coal_count(
        stand.oven.inches,
        question.target_c,
        question.method,
        stand.weather,
        oven=stand.oven,
        surface=stand.surface,
        elevation_m=stand.elevation_m,
        fuel=fuel,
        stand_m=stand.stand_m,
    )
    rate = float(day_of(stand, fuel).rate[0])
    fresh = top_ups(count.lid, count.under, fuel, question.minutes, rate)
    return CoalAnswer(
        count,
        lay(count.lid, count.under, stand.oven.inches),
        fresh,
        oven_heat(stand, count.lid, count.under, fuel),
        _course(question, count, fresh),
        fuel_for([BakeFuel(count.lid, count.under, question.minutes, rate)], fuel),
        (about_one_side(stand.weather), about_wet_centre(stand, fuel)),
    )


def _course(question: CoalQuestion, count: CoalCount, fresh: tuple[TopUp, ...]) -> OvenCourse:
    first = Batch(count.lid, count.under)
    batches = (first, *(Batch(lot.lid, lot.under, laid_at=lot.at_minute) for lot in fresh))
    food = usual_load(question.stand.oven, trivet=question.trivet)
    food_at = min(question.preheat_minutes, question.minutes)
    return simulate(OvenCase(question.stand, batches, question.fuel, food, food_at), question.minutes)
