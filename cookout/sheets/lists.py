"""Lists on paper: shopping, packing, what to measure out, and what to do with what is left."""

from collections.abc import Collection, Iterator, Mapping
from types import MappingProxyType

from cookout.core.planning.lists.items import Group, Item
from cookout.core.planning.lists.leftovers import Advice, Afterwards, LeftDish, Leftovers
from cookout.core.planning.lists.measuring import Bag, DishMeasures, Measure
from cookout.core.planning.lists.shopping import Aisle, Line, Want
from cookout.core.planning.record import PlanRecord
from cookout.sheets.cautions import ASH, CARBON_MONOXIDE, FOOD
from cookout.sheets.job import Job
from cookout.sheets.pages import printed
from cookout.sheets.printing import USUAL, Printing, gettext_noop
from cookout.sheets.typesetting import Data

NO_TICKS: Mapping[str, str] = MappingProxyType({})
AFTERWARDS = {
    Afterwards.COOL: gettext_noop("Cool it fast, or throw it away"),
    Afterwards.ICE: gettext_noop("Onto ice, or throw it away"),
    Afterwards.TIMED: gettext_noop("Throw it away in time"),
    Afterwards.WRAP: gettext_noop("Wrap it"),
    Afterwards.RAW: gettext_noop("Raw, made to be shown"),
    Afterwards.SHOWN: gettext_noop("Made to be shown"),
}
NARROW, BROAD = 2, 1
"""Columns to a page: two for short lines, one for sentences."""


def shopping_pdf(
    record: PlanRecord, aisles: Collection[Aisle], printing: Printing = USUAL, *, ticks: Mapping[str, str] = NO_TICKS
) -> bytes:
    """What to buy, aisle by aisle, each line with the dishes that want it, as PDF.

    `ticks` says by key what is "on_hand" or "done"; both are printed ticked. As `run_sheet_pdf` otherwise.
    """
    job = Job(record, printing)
    _ = printing.gettext
    groups = tuple(
        _group(
            job.word(aisle.kind.heading),
            [_section([_bought(line, job, ticks) for line in aisle.lines])],
            note=_("Bought last, and straight into the cooler.") if aisle.kind.cold else "",
        )
        for aisle in aisles
    )
    return _list(job, _("Shopping list"), groups, columns=NARROW, cautions=(FOOD,))


def _bought(line: Line, job: Job, ticks: Mapping[str, str]) -> Data:
    _ = job.printing.gettext
    amount = _("{amount} (about {also})").format(amount=line.text, also=line.also) if line.also else line.text
    wants = "; ".join(_want(want, job, alone=len(line.wants) == 1) for want in line.wants)
    state = ticks.get(line.key, "")
    note = _("on hand") if state == "on_hand" else ""
    return _line(line.name, amount=amount, detail=wants, note=note, ticked=bool(state))


def _want(want: Want, job: Job, *, alone: bool) -> str:
    """What a dish wants, and as what; how much only where other dishes want some too."""
    _ = job.printing.gettext
    text = want.dish_name if alone else _("{dish} {amount}").format(dish=want.dish_name, amount=want.text)
    return _("{dish}, {note}").format(dish=text, note=want.note) if want.note else text


def packing_pdf(
    record: PlanRecord, groups: Collection[Group], printing: Printing = USUAL, *, ticks: Mapping[str, str] = NO_TICKS
) -> bytes:
    """What to bring, group by group, each with who says that it is wanted, as PDF. As `shopping_pdf` otherwise."""
    job = Job(record, printing)
    printed_groups = tuple(
        _group(
            job.word(group.title),
            [_section([_brought(item, job, ticks) for item in group.items])],
            caution=job.word(group.caution),
        )
        for group in groups
    )
    return _list(job, printing.gettext("Packing list"), printed_groups, columns=NARROW, cautions=())


def _brought(item: Item, job: Job, ticks: Mapping[str, str]) -> Data:
    amount = f"{item.count} ×" if item.count is not None else ""
    return _line(
        job.word(item.name),
        amount=amount,
        detail=job.told(item.detail),
        note=job.word(item.source),
        ticked=bool(ticks.get(item.key)),
    )


def measuring_pdf(record: PlanRecord, dishes: Collection[DishMeasures], printing: Printing = USUAL) -> bytes:
    """What to measure out before the day, a box to tick for each bag of each batch, as PDF. As `run_sheet_pdf`."""
    job = Job(record, printing)
    kept = dict.fromkeys(bag.kept for dish in dishes for bag in dish.bags)
    legend = tuple({"name": job.word(each.heading), "text": job.word(each.how)} for each in kept)
    groups = tuple(_measured_dish(dish, job) for dish in dishes)
    title = printing.gettext("To measure out")
    return _list(job, title, groups, columns=NARROW, cautions=(FOOD,), legend=legend)


def _measured_dish(dish: DishMeasures, job: Job) -> Data:
    _ = job.printing.gettext
    text = job.printing.ngettext("{count} batch", "{count} batches, each of this:", dish.batches)
    notes = [text.format(count=dish.batches)]
    if dish.up_to:
        notes.append(_("Made up to: {step}.").format(step=dish.up_to))
    return _group(dish.dish_name, [_bag(bag, dish.batches, job) for bag in dish.bags], note=" ".join(notes))


def _bag(bag: Bag, batches: int, job: Job) -> Data:
    _ = job.printing.gettext
    title = job.word(bag.kept.heading)
    if bag.part:
        title = _("{kept}, for: {part}").format(kept=title, part=bag.part)
    lines = [_measure(measure) for measure in bag.measures]
    return _section(lines, title=title, boxes=batches, note=bag.step)


def _measure(measure: Measure) -> Data:
    return _line(measure.name, amount=measure.text, detail=", ".join(filter(None, (measure.note, measure.said))))


def leftovers_pdf(record: PlanRecord, left: Leftovers, printing: Printing = USUAL) -> bytes:
    """What is left of each dish, of fuel and fire, and what is done with it, as PDF. As `run_sheet_pdf`."""
    job = Job(record, printing)
    _ = printing.gettext
    groups = list(_left_food(left, job))
    groups.append(_group(_("All food"), [_section([_advice(advice, job) for advice in left.general])]))
    if left.fire:
        groups.append(_group(_("Fire and fuel"), [_section([_brought(item, job, NO_TICKS) for item in left.fire])]))
    cautions = (FOOD, ASH, CARBON_MONOXIDE)
    return _list(job, _("What is left"), tuple(groups), columns=BROAD, cautions=cautions)


def _left_food(left: Leftovers, job: Job) -> Iterator[Data]:
    """The dishes, those of which the same is to be done told together."""
    for after, title in AFTERWARDS.items():
        alike: dict[tuple[Advice, ...], list[LeftDish]] = {}
        for dish in left.dishes:
            if dish.after is after:
                alike.setdefault(dish.advice, []).append(dish)
        for advice, dishes in alike.items():
            lines = [_left_dish(dish, job) for dish in dishes]
            yield _group(job.word(title), [_section(lines), _section([_advice(each, job) for each in advice])])


def _left_dish(dish: LeftDish, job: Job) -> Data:
    _ = job.printing.gettext
    if dish.after in (Afterwards.RAW, Afterwards.SHOWN):
        note = _("{made} portions made, to be shown").format(made=dish.made)
    elif dish.eating is None:
        note = _("{made} portions made").format(made=dish.made)
    else:
        note = _("{made} portions made, {eating} eating, {spare} to spare").format(
            made=dish.made, eating=dish.eating, spare=dish.spare
        )
    if dish.by is not None:
        note = _("{note}. Cold, hot or thrown away by {time}.").format(note=note, time=job.clock(dish.by))
    return _line(dish.name, detail=note)


def _advice(advice: Advice, job: Job) -> Data:
    return _line(job.told(job.word(advice.text)), note=job.word(advice.source), bold=False)


def _line(
    name: str, *, amount: str = "", detail: str = "", note: str = "", ticked: bool = False, bold: bool = True
) -> Data:
    return {"name": name, "amount": amount, "detail": detail, "note": note, "ticked": ticked, "bold": bold}


def _section(lines: Collection[Data], *, title: str = "", boxes: int = 0, note: str = "") -> Data:
    """Lines that belong together; with `boxes` they are ticked together, so often, and not each by itself."""
    return {"title": title, "boxes": boxes, "note": note, "lines": tuple(lines)}


def _group(title: str, sections: Collection[Data], *, note: str = "", caution: str = "") -> Data:
    return {"title": title, "note": note, "caution": caution, "sections": tuple(sections)}


def _list(
    job: Job,
    title: str,
    groups: Collection[Data],
    *,
    columns: int,
    cautions: tuple[str, ...],
    legend: Collection[Data] = (),
) -> bytes:
    data = {
        "groups": tuple(groups),
        "legend": tuple(legend),
        "columns": columns,
        "about": tuple(filter(None, (job.first_day(), job.record.place))),
        "none": job.printing.gettext("Nothing stands on this list."),
        "heads": {"sheet": title},
    }
    return printed("list", job, data, cautions=cautions)
