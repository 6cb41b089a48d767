"""Food safety, allergens and the place, for reading."""

from dataclasses import dataclass
from itertools import groupby

from cookout.core.planning.record import PlannedCheck, PlannedSafety, PlanRecord
from cookout.sheets.figures import STAGES


@dataclass(frozen=True, slots=True)
class FoodRow:
    """A dish's figures in words; `out` is how long it stands between cold and hot."""

    name: str
    centre: str
    out: str
    held: str
    allergens: str
    rules: str


def food_rows(record: PlanRecord) -> tuple[FoodRow, ...]:
    """Each dish's figures; dishes that are alike in all of them stand once."""
    allergens = {each.dish: each.text for each in record.allergens}
    rows = (
        FoodRow(
            each.dish_name,
            each.centre,
            _out(each),
            f"{each.held[:1].upper()}{each.held[1:]}.",
            allergens.get(each.dish, ""),
            each.rules,
        )
        for each in record.safety
    )
    return tuple(dict.fromkeys(rows))


def _out(figures: PlannedSafety) -> str:
    if figures.out_minutes is None or figures.most_out_minutes is None:
        return ""
    return f"Out between cold and hot at most {figures.out_minutes} min ({figures.most_out_minutes} min allowed)."


def check_rows(record: PlanRecord) -> tuple[tuple[str, tuple[PlannedCheck, ...]], ...]:
    """The checklist of the place by the stage of the day."""
    grouped = groupby(record.checklist, key=lambda check: check.stage)
    return tuple((STAGES.get(stage, stage), tuple(items)) for stage, items in grouped)
