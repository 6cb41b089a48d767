"""The coal plan: what to light when, and where the coals go, on paper."""

from collections.abc import Iterator

from cookout.core.planning.record import PlannedBake, PlannedFiring, PlannedTask, PlanRecord
from cookout.drawing import Scheme, fire_svg, oven_picture
from cookout.sheets.pages import clock, frame, stamp_of
from cookout.sheets.typesetting import Data, Paper, typeset

DRAWING_WIDTH = 640
PATTERN_NOTE = (
    "The pictures show the usual pattern: a ring just inside the edge under the oven, a ring at the rim and a few at "
    "the centre on the lid. Wind, sun and the coals themselves make any count a start: look in, and add or take away "
    "in pairs. Turn oven and lid a quarter against each other, oftener in wind."
)


def coal_plan_pdf(
    record: PlanRecord, *, paper: Paper = "a4", address: str | None = None, revision: int | None = None
) -> bytes:
    """Firings, the coals on and under every oven with a picture, top-ups, the fire's day, and all the fuel, as PDF.

    As `run_sheet_pdf` otherwise.
    """
    tasks = {task.id: task for task in record.tasks}
    data = frame(record, address=address, revision=revision) | {
        "total": _total(record),
        "total_note": _total_note(record),
        "firings": tuple(_firing(firing, record, tasks) for firing in _in_order(record)),
        "ovens": tuple(_oven(b, record, tasks) for b in sorted(record.bakes, key=lambda b: (b.laid_at, b.unit))),
        "troubles": tuple(_troubles(record)),
        "pattern_note": PATTERN_NOTE,
        "drawing": fire_svg(record, width=DRAWING_WIDTH, scheme=Scheme.GREY) if record.bakes else None,
    }
    return typeset("coal_plan", data, paper=paper, stamp=stamp_of(record))


def _in_order(record: PlanRecord) -> list[PlannedFiring]:
    return sorted(record.firings, key=lambda firing: (firing.lit_at, firing.id))


def _total(record: PlanRecord) -> str:
    coals = sum(firing.coals for firing in record.firings)
    return f"{coals} coals in {_counted(len(record.firings), 'firing')}" if coals else ""


def _total_note(record: PlanRecord) -> str:
    laid = sum(bake.lid + bake.under for bake in record.bakes)
    added = sum(coals for bake in record.bakes for _, coals in bake.top_ups)
    used = f"{laid} laid at first, {added} added later, {_counted(len(record.bakes), 'bake')}."
    fuel = record.fuel
    if fuel is None:
        return f"{used} Have some more at hand."
    loads = _counted(fuel.chimney_loads, "chimney load")
    return f"{used} Bring {fuel.coals} ({fuel.spare} to spare), {fuel.mass} of {fuel.kind}; {loads}."


def _counted(count: int, word: str) -> str:
    return f"{count} {word}" if count == 1 else f"{count} {word}s"


def _firing(firing: PlannedFiring, record: PlanRecord, tasks: dict[str, PlannedTask]) -> Data:
    return {
        "lit": clock(firing.lit_at, record),
        "coals": str(firing.coals),
        "ready": f"{clock(firing.ready_from, record)} to {clock(firing.ready_until, record)}",
        "chimneys": _counted(firing.chimneys, "chimney"),
        "feeds": "; ".join(_feed(tasks[task], record) for task in firing.feeds if task in tasks),
    }


def _feed(task: PlannedTask, record: PlanRecord) -> str:
    dish = record.dishes.get(task.dish, "")
    return f"{dish}: {task.name}" if dish else task.name


def _oven(bake: PlannedBake, record: PlanRecord, tasks: dict[str, PlannedTask]) -> Data:
    return {
        "unit": bake.unit,
        "dish": bake.dish_name,
        "coals": f"{bake.lid} on the lid, {bake.under} under",
        "band": f"{bake.lid + bake.under} in all; {bake.least_coals} to {bake.most_coals} by the day",
        "laid": clock(bake.laid_at, record),
        "in_at": clock(bake.in_at, record),
        "out_at": clock(bake.out_at, record),
        "temperature": bake.temperature,
        "minutes": _minutes(bake),
        "pattern": bake.pattern,
        "picture": oven_picture(bake.lid, bake.under, bake.inches),
        "top_ups": tuple(_top_up(tasks[task], coals, record) for task, coals in bake.top_ups if task in tasks),
    }


def _troubles(record: PlanRecord) -> Iterator[Data]:
    """What to do where a look-in shows something amiss, each advice once, with the dishes that it is for."""
    dishes: dict[str, dict[str, None]] = {}
    for bake in record.bakes:
        for text in bake.troubles:
            dishes.setdefault(text, {})[bake.dish_name] = None
    for text, names in dishes.items():
        yield {"text": text, "dishes": ", ".join(names)}


def _minutes(bake: PlannedBake) -> str:
    """How long the food is in, and by what; empty in a plan of an earlier program."""
    if not bake.usual_minutes:
        return ""
    by = f", reckoned for {bake.weather}" if bake.modelled else ", as the recipe has it"
    return f"{bake.least_minutes} to {bake.most_minutes} min, usually {bake.usual_minutes}{by}"


def _top_up(task: PlannedTask, coals: int, record: PlanRecord) -> Data:
    detail = " ".join(task.detail.split())
    text = f"add {_counted(coals, 'fresh coal')}"
    return {"at": clock(task.starts_at, record), "text": f"{text}: {detail}" if detail else text}
