"""The figures of food safety, allergens, fuel and the place, as rows for paper."""

from collections.abc import Iterator

from cookout.core.planning.record import PlannedAllergens, PlannedSafety
from cookout.sheets.job import Job
from cookout.sheets.printing import gettext_noop
from cookout.sheets.typesetting import Data

STAGES = {
    "before": gettext_noop("Before the day"),
    "set_up": gettext_noop("Setting up"),
    "fire": gettext_noop("While there is fire"),
    "after": gettext_noop("After the last food"),
}


def foods(job: Job) -> Iterator[Data]:
    """Each dish's figures and allergens, dishes that are alike in both told once."""
    told: set[tuple[str, str, str]] = set()
    allergens = {each.dish: each for each in job.record.allergens}
    for figures in job.record.safety:
        row = (figures.dish_name, _figures(figures, job), _allergens(allergens.get(figures.dish), job))
        if row not in told:
            told.add(row)
            yield {"dish": row[0], "figures": row[1], "allergens": row[2]}


def _figures(figures: PlannedSafety, job: Job) -> str:
    out = ""
    if figures.out_minutes is not None and figures.most_out_minutes is not None:
        out = job.printing.gettext(
            "Out between cold and hot at most {minutes} min ({limit} min allowed, {rules})."
        ).format(minutes=figures.out_minutes, limit=figures.most_out_minutes, rules=figures.rules)
    held = f"{figures.held[:1].upper()}{figures.held[1:]}."
    return " ".join(part for part in (figures.centre, out, held) if part)


def _allergens(allergens: PlannedAllergens | None, job: Job) -> str:
    _ = job.printing.gettext
    if allergens is None:
        return _("Allergens: NOT KNOWN. Ask the cook.")
    return _("Allergens. {text}").format(text=allergens.text)


def fuel_line(job: Job) -> str:
    """The fuel of the whole event in one line; empty where nothing burns."""
    fuel, _ = job.record.fuel, job.printing.gettext
    if fuel is None or not fuel.laid:
        return ""
    return _(
        "{coals} coals ({mass} of {kind}): {laid} laid at first, {added} as top-ups, {spare} to spare; {loads}."
    ).format(
        coals=fuel.coals,
        mass=fuel.mass,
        kind=fuel.kind,
        laid=fuel.laid,
        added=fuel.added,
        spare=fuel.spare,
        loads=chimney_loads(fuel.chimney_loads, job),
    )


def chimney_loads(count: int, job: Job) -> str:
    """How often a chimney is filled."""
    text = job.printing.ngettext("{count} chimney load", "{count} chimney loads", count)
    return text.format(count=count)


def checks(job: Job) -> Iterator[Data]:
    """The checklist of the place, with the stage of the day where it changes."""
    before, _ = "", job.printing.gettext
    for check in job.record.checklist:
        stage = "" if check.stage == before else _(STAGES.get(check.stage, check.stage))
        before = check.stage
        state = "" if check.state == "to do" else check.state.upper()
        yield {"stage": stage, "state": state, "text": job.told(check.text), "source": check.source}
