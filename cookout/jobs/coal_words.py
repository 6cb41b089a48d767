"""An answer about coals, as text and as JSON."""

import json
from dataclasses import asdict
from typing import Any

from cookout.core.fire.influences import band
from cookout.core.fire.oven import Band
from cookout.core.quantities import Units, celsius_to_fahrenheit, show_temperature
from cookout.jobs.coal_pictures import curve, discs
from cookout.services.fire import CoalAnswer, CoalQuestion

STANDING = (
    "Counts are computed from the oven's heat balance, set to meet the chart of common practice (which has no source). "
    "Your own log of your own ovens comes before it."
)
CAUTION = (
    "Coals burn, and give off carbon monoxide: open ground only, 10 ft (3 m) from anything that burns, water and a "
    "shovel at hand, gloves and long tongs. Local fire rules come first."
)


def text(question: CoalQuestion, answer: CoalAnswer, units: str) -> str:
    """Counts, pattern, top-ups, temperatures and the curve, for people."""
    count = answer.count
    parts = [
        _count(answer, show_temperature(question.target_c, units)),
        discs(answer.pattern, f"{count.lid} on the lid", f"{count.under} under"),
        answer.pattern.words,
        _fresh(answer, question.minutes),
        _temperatures(answer, units),
        _curve(question, answer, units),
        f"Bring {answer.supply.coals} coals ({answer.supply.kg:.1f} kg), some to spare among them.",
        "\n".join(advice.words for advice in answer.advice),
        STANDING,
        CAUTION,
    ]
    return "\n\n".join(parts)


def _count(answer: CoalAnswer, target: str) -> str:
    count = answer.count
    return (
        f"{count.lid} coals on the lid and {count.under} under for about {target}: {count.total} in all, "
        f"{count.least} to {count.most} by the day."
    )


def _fresh(answer: CoalAnswer, minutes: int) -> str:
    if not answer.top_ups:
        return f"No fresh coals are wanted in {minutes} min."
    return "\n".join(
        f"{lot.at_minute} min after laying: add {lot.lid} on the lid and {lot.under} under, "
        f"lit {_when(lot.lit_minute)}."
        for lot in answer.top_ups
    )


def _when(minute: int) -> str:
    if minute == 0:
        return "as the first are laid"
    return f"{abs(minute)} min {'after' if minute > 0 else 'before'} the first are laid"


def _temperatures(answer: CoalAnswer, units: str) -> str:
    above, below = (_between(band_, units) for band_ in (answer.heat.above, answer.heat.below))
    return f"The food then meets, on the mean of one lot of coals:\n  from above {above}\n  from below {below}"


def _between(one: Band, units: str) -> str:
    least, usual, most = (show_temperature(value, units) for value in (one.least, one.usual, one.most))
    return f"{usual}, by the day {least} to {most}"


def _curve(question: CoalQuestion, answer: CoalAnswer, units: str) -> str:
    head = (
        f"From laying the coals on cold iron, food in after {question.preheat_minutes} min "
        "(mean of above and below; shaded: by the day; >: what is wanted):"
    )
    return f"{head}\n{curve(answer.course, lambda value: show_temperature(value, units), question.target_c)}"


def json_text(answer: CoalAnswer, units: str) -> str:
    """The answer for programs; temperatures in the units asked for, with a line break at the end."""
    return json.dumps(_json(answer, units), ensure_ascii=False, indent=2) + "\n"


def _json(answer: CoalAnswer, units: str) -> dict[str, Any]:
    count = answer.count
    return {
        "lid": count.lid,
        "under": count.under,
        "least": count.least,
        "most": count.most,
        "top_ups": [asdict(lot) for lot in answer.top_ups],
        "pattern": {
            "lid": [_rounded(place) for place in answer.pattern.lid_places],
            "under": [_rounded(place) for place in answer.pattern.under_places],
            "words": answer.pattern.words,
        },
        "temperature_unit": "F" if Units(units) is Units.US else "C",
        "above": _band_json(answer.heat.above, units),
        "below": _band_json(answer.heat.below, units),
        "curve": _curve_json(answer, units),
        "supply": {"coals": answer.supply.coals, "kg": answer.supply.kg, "chimney_loads": answer.supply.chimney_loads},
        "turn_every": next((advice.turn_every for advice in answer.advice if advice.turn_every), None),
        "advice": [advice.words for advice in answer.advice],
        "standing": STANDING,
        "caution": CAUTION,
    }


def _rounded(place: tuple[float, float]) -> list[float]:
    return [round(part, 3) for part in place]


def _band_json(one: Band, units: str) -> dict[str, float]:
    return {name: _degrees(value, units) for name, value in asdict(one).items()}


def _curve_json(answer: CoalAnswer, units: str) -> list[dict[str, float]]:
    bands = zip(answer.course.minutes, *band(answer.course.mean_c), strict=True)
    return [
        {"minute": round(float(minute), 2), **_band_json(Band(*map(float, ends)), units)} for minute, *ends in bands
    ]


def _degrees(celsius: float, units: str) -> float:
    return round(celsius_to_fahrenheit(celsius) if Units(units) is Units.US else celsius, 1)
