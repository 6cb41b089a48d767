"""The fire plan: what to light when, where the coals go, when fresh ones are added, and all the fuel, on paper."""

from collections.abc import Iterator

from cookout.core.planning.record import PlannedBake, PlannedFiring, PlannedTask, PlanRecord
from cookout.drawing import oven_picture
from cookout.sheets.figures import chimney_loads
from cookout.sheets.fire_pictures import fire_pictures
from cookout.sheets.job import Job
from cookout.sheets.pages import printed
from cookout.sheets.printing import USUAL, Printing, gettext_noop
from cookout.sheets.typesetting import Data

PATTERN_NOTE = gettext_noop(
    "The pictures show the usual pattern: a ring just inside the edge under the oven, a ring at the rim and a few at "
    "the centre on the lid. Wind, sun and the coals themselves make any count a start: look in, and add or take away "
    "in pairs. Turn oven and lid a quarter against each other, oftener in wind."
)


def coal_plan_pdf(record: PlanRecord, printing: Printing = USUAL) -> bytes:
    """Firings, the coals on and under every oven with a picture, top-ups, the fire's day, and all the fuel, as PDF.

    As `run_sheet_pdf` otherwise.
    """
    job = Job(record, printing)
    tasks = {task.id: task for task in record.tasks}
    return printed(
        "coal_plan",
        job,
        {
            "total": _total(job),
            "total_note": _total_note(job),
            "firings": tuple(_firing(firing, job, tasks) for firing in _in_order(record)),
            "top_ups": tuple(_top_ups(job, tasks)),
            "lays": tuple(_lays(job, tasks)),
            "troubles": tuple(_troubles(record)),
            "pattern_note": printing.gettext(PATTERN_NOTE),
            "drawings": tuple(fire_pictures(job)),
            "heads": _heads(job),
        },
    )


def _heads(job: Job) -> Data:
    _ = job.printing.gettext
    return {
        "sheet": _("Fire plan"),
        "light": _("Light"),
        "light_at": _("light at"),
        "coals": _("coals"),
        "ashed": _("ashed over"),
        "for": _("for"),
        "top_ups": _("Add fresh coals"),
        "add_at": _("add at"),
        "oven": _("oven"),
        "lay": _("Lay"),
        "troubles": _("If a look-in shows something amiss"),
        "drawing": _("Fire through the day"),
        "drawing_name": _("Firings and ovens over the day"),
    }


def _in_order(record: PlanRecord) -> list[PlannedFiring]:
    return sorted(record.firings, key=lambda firing: (firing.lit_at, firing.id))


def _total(job: Job) -> str:
    coals = sum(firing.coals for firing in job.record.firings)
    if not coals:
        return ""
    count = len(job.record.firings)
    text = job.printing.ngettext("{coals} coals in {count} firing", "{coals} coals in {count} firings", count)
    return text.format(coals=coals, count=count)


def _total_note(job: Job) -> str:
    record, _ = job.record, job.printing.gettext
    bakes, fuel = len(record.bakes), record.fuel
    used = job.printing.ngettext(
        "{laid} laid at first, {added} added later, {count} bake.",
        "{laid} laid at first, {added} added later, {count} bakes.",
        bakes,
    ).format(
        laid=sum(bake.lid + bake.under for bake in record.bakes),
        added=sum(coals for bake in record.bakes for _task, coals in bake.top_ups),
        count=bakes,
    )
    if fuel is None:
        return f"{used} {_('Have some more at hand.')}"
    bring = _("Bring {coals} ({spare} to spare), {mass} of {kind}; {loads}.").format(
        coals=fuel.coals, spare=fuel.spare, mass=fuel.mass, kind=fuel.kind, loads=chimney_loads(fuel.chimney_loads, job)
    )
    return f"{used} {bring}"


def _firing(firing: PlannedFiring, job: Job, tasks: dict[str, PlannedTask]) -> Data:
    _ = job.printing.gettext
    chimneys = job.printing.ngettext("{count} chimney", "{count} chimneys", firing.chimneys)
    return {
        "lit": job.clock(firing.lit_at),
        "coals": str(firing.coals),
        "ready": _("{first} to {last}").format(first=job.clock(firing.ready_from), last=job.clock(firing.ready_until)),
        "chimneys": chimneys.format(count=firing.chimneys),
        "feeds": "; ".join(_feeds([tasks[task] for task in firing.feeds if task in tasks], job)),
    }


def _feeds(tasks: list[PlannedTask], job: Job) -> Iterator[str]:
    """What a firing feeds, dish by dish, with the ovens that its coals go to."""
    _ = job.printing.gettext
    ovens = _oven_by_task(job.record)
    wanted: dict[tuple[str, bool], list[str]] = {}
    for task in tasks:
        wanted.setdefault((task.dish, task.kind == "top_up"), []).append(ovens.get(task.id, task.name))
    for (dish, is_top_up), units in wanted.items():
        text = _("{dish}, top-up: {ovens}") if is_top_up else _("{dish}: {ovens}")
        yield text.format(dish=job.dish(dish), ovens=", ".join(units))


def _oven_by_task(record: PlanRecord) -> dict[str, str]:
    """The oven of each task that brings coals to one."""
    ovens = {bake.unit for bake in record.bakes}
    found = {task.id: unit for task in record.tasks for unit in task.units if unit in ovens}
    return found | {task: bake.unit for bake in record.bakes for task, _coals in bake.top_ups}


def _lays(job: Job, tasks: dict[str, PlannedTask]) -> Iterator[Data]:
    """The ovens by when their coals are laid, those that are laid alike for the same dish told together."""
    groups: dict[tuple[object, ...], list[PlannedBake]] = {}
    for bake in sorted(job.record.bakes, key=lambda bake: (bake.laid_at, bake.unit)):
        alike = (bake.dish_name, bake.inches, bake.lid, bake.under, bake.temperature, bake.pattern, _minutes(bake, job))
        groups.setdefault(alike, []).append(bake)
    for bakes in groups.values():
        yield _lay(bakes, job, tasks)


def _lay(bakes: list[PlannedBake], job: Job, tasks: dict[str, PlannedTask]) -> Data:
    _, bake = job.printing.gettext, bakes[0]
    band = _("{count} in all; {least} to {most} by the day; about {temperature}")
    return {
        "dish": bake.dish_name,
        "coals": _("{lid} on the lid, {under} under").format(lid=bake.lid, under=bake.under),
        "band": band.format(
            count=bake.lid + bake.under,
            least=min(bake.least_coals for bake in bakes),
            most=max(bake.most_coals for bake in bakes),
            temperature=bake.temperature,
        ),
        "minutes": _minutes(bake, job),
        "pattern": bake.pattern,
        "picture": oven_picture(bake.lid, bake.under, bake.inches),
        "ovens": tuple(_oven(bake, job, tasks) for bake in bakes),
    }


def _oven(bake: PlannedBake, job: Job, tasks: dict[str, PlannedTask]) -> Data:
    _ = job.printing.gettext
    return {
        "unit": bake.unit,
        "laid": job.clock(bake.laid_at),
        "times": _("in at {start}, out at {end}").format(start=job.clock(bake.in_at), end=job.clock(bake.out_at)),
        "top_ups": tuple(_top_up(tasks[task], coals, job) for task, coals in bake.top_ups if task in tasks),
    }


def _minutes(bake: PlannedBake, job: Job) -> str:
    """How long the food is in, and by what; empty in a plan of an earlier program."""
    if not bake.usual_minutes:
        return ""
    _ = job.printing.gettext
    minutes = _("{least} to {most} min, usually {usual}").format(
        least=bake.least_minutes, most=bake.most_minutes, usual=bake.usual_minutes
    )
    if not bake.modelled:
        return _("{minutes}, as the recipe has it").format(minutes=minutes)
    return _("{minutes}, reckoned for {weather}").format(minutes=minutes, weather=job.told(bake.weather))


def _top_up(task: PlannedTask, coals: int, job: Job) -> Data:
    text = job.printing.ngettext("add {count} fresh coal", "add {count} fresh coals", coals).format(count=coals)
    return {"at": job.clock(task.starts_at), "text": text}


def _top_ups(job: Job, tasks: dict[str, PlannedTask]) -> Iterator[Data]:
    """All top-ups of the day, oven by oven as their time comes."""
    found = [(tasks[task], coals, bake) for bake in job.record.bakes for task, coals in bake.top_ups if task in tasks]
    for task, coals, bake in sorted(found, key=lambda entry: (entry[0].starts_at, entry[2].unit)):
        yield {
            "at": job.clock(task.starts_at),
            "coals": str(coals),
            "unit": bake.unit,
            "dish": bake.dish_name,
            "detail": job.told(task.detail),
        }


def _troubles(record: PlanRecord) -> Iterator[Data]:
    """What to do where a look-in shows something amiss, each advice once, with the dishes that it is for."""
    dishes: dict[str, dict[str, None]] = {}
    for bake in record.bakes:
        for text in bake.troubles:
            dishes.setdefault(text, {})[bake.dish_name] = None
    for text, names in dishes.items():
        yield {"text": text, "dishes": ", ".join(names)}
