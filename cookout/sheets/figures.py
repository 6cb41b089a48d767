"""The figures of food safety, allergens, fuel and the place, as rows for paper."""

from collections.abc import Iterator

from cookout.core.planning.record import PlannedAllergens, PlannedSafety, PlanRecord
from cookout.sheets.typesetting import Data

STAGES = {
    "before": "Before the day",
    "set_up": "Setting up",
    "fire": "While there is fire",
    "after": "After the last food",
}


def foods(record: PlanRecord) -> Iterator[Data]:
    """Each dish's figures and allergens, dishes that are alike in both told once."""
    told: set[tuple[str, str, str]] = set()
    allergens = {each.dish: each for each in record.allergens}
    for figures in record.safety:
        row = (figures.dish_name, _figures(figures), _allergens(allergens.get(figures.dish)))
        if row not in told:
            told.add(row)
            yield {"dish": row[0], "figures": row[1], "allergens": row[2]}


def _figures(figures: PlannedSafety) -> str:
    out = ""
    if figures.out_minutes is not None and figures.most_out_minutes is not None:
        limit = f"{figures.most_out_minutes} min allowed, {figures.rules}"
        out = f"Out between cold and hot at most {figures.out_minutes} min ({limit})."
    held = f"{figures.held[:1].upper()}{figures.held[1:]}."
    return " ".join(part for part in (figures.centre, out, held) if part)


def _allergens(allergens: PlannedAllergens | None) -> str:
    return "Allergens: NOT KNOWN. Ask the cook." if allergens is None else f"Allergens. {allergens.text}"


def fuel_line(record: PlanRecord) -> str:
    """The fuel of the whole event in one line; empty where nothing burns."""
    fuel = record.fuel
    if fuel is None or not fuel.laid:
        return ""
    counts = f"{fuel.laid} laid at first, {fuel.added} as top-ups, {fuel.spare} to spare"
    loads = f"{fuel.chimney_loads} chimney load" + ("" if fuel.chimney_loads == 1 else "s")
    return f"{fuel.coals} coals ({fuel.mass} of {fuel.kind}): {counts}; {loads}."


def checks(record: PlanRecord) -> Iterator[Data]:
    """The checklist of the place, with the stage of the day where it changes."""
    before = ""
    for check in record.checklist:
        stage = "" if check.stage == before else STAGES.get(check.stage, check.stage)
        before = check.stage
        state = "" if check.state == "to do" else check.state.upper()
        yield {"stage": stage, "state": state, "text": check.text, "source": check.source}
