"""The lines of each list, as the core makes them, for a page to print."""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import datetime

from django.utils.functional import Promise
from django.utils.translation import gettext as _
from django.utils.translation import gettext_lazy, ngettext

from cookout.core.kitchen.measures import Amount
from cookout.core.planning.event import Event as CoreEvent
from cookout.core.planning.lists import leftovers, measure_out, packing, shopping
from cookout.core.planning.lists.aisles import AisleKind
from cookout.core.planning.lists.items import Item
from cookout.core.planning.lists.leftovers import Advice, Afterwards, LeftDish
from cookout.core.planning.lists.measuring import Bag, DishMeasures, Kept
from cookout.core.planning.lists.shopping import Line as ShoppingLine
from cookout.core.planning.lists.shopping import Want
from cookout.core.planning.record import PlanRecord

Words = str | Promise

MOST_TOLD = 100
FEW_WANTS = 2
"""So many dishes are named on the line itself; more of them are folded away."""


@dataclass(frozen=True, slots=True)
class Note:
    """A small line under a line: who wants how much of it, one measure of a bag, a piece of advice with its source."""

    name: str
    amount: str = ""
    more: str = ""


@dataclass(frozen=True, slots=True)
class Line:
    """One line to tick.

    `told` is its amount in figures that no unit of a reader changes, `fold` names what `notes` are where they are
    folded away, `by` is a time of day by which it is done.
    """

    key: str
    name: str
    amount: str = ""
    also: str = ""
    detail: str = ""
    source: str = ""
    told: str = ""
    notes: tuple[Note, ...] = ()
    fold: str = ""
    by: datetime | None = None


@dataclass(frozen=True, slots=True)
class Section:
    """Lines under a heading; `hint` and `notes` are what to do with all of them, `caution` what to mind."""

    key: str
    heading: Words
    lines: tuple[Line, ...]
    hint: Words = ""
    caution: str = ""
    notes: tuple[Note, ...] = ()


AISLES: dict[AisleKind, Words] = {
    AisleKind.CANS: gettext_lazy("Cans and jars"),
    AisleKind.BAKING: gettext_lazy("Flour, sugar and baking"),
    AisleKind.GRAINS: gettext_lazy("Rice, pasta and dry beans"),
    AisleKind.OILS: gettext_lazy("Oil, vinegar and sauces"),
    AisleKind.SPICES: gettext_lazy("Salt and spices"),
    AisleKind.BREAD: gettext_lazy("Bread"),
    AisleKind.DRINKS: gettext_lazy("Water and drinks"),
    AisleKind.PRODUCE: gettext_lazy("Vegetables, fruit and herbs"),
    AisleKind.DAIRY: gettext_lazy("Milk, cheese and eggs"),
    AisleKind.MEAT: gettext_lazy("Meat and fish"),
    AisleKind.OTHER: gettext_lazy("Other"),
}
KEPT: dict[Kept, tuple[Words, Words]] = {
    Kept.DRY: (
        gettext_lazy("Dry, in bags"),
        gettext_lazy("Each in a bag of its own; pour together only what goes in at the same step."),
    ),
    Kept.LIQUID: (
        gettext_lazy("In bottles and jars"),
        gettext_lazy("Lids tight. What says “keep cold once opened” goes into the cooler."),
    ),
    Kept.COLD: (
        gettext_lazy("Stays cold"),
        gettext_lazy("In closed boxes in the cooler until it is used; raw meat and fish below all else."),
    ),
    Kept.FRESH: (
        gettext_lazy("Fresh, on the day"),
        gettext_lazy("Washed before, cut on the day; what is cut stays in the cooler."),
    ),
    Kept.CLOSED: (gettext_lazy("Closed, as bought"), gettext_lazy("Opened when it is used; bring an opener.")),
    Kept.UNKNOWN: (
        gettext_lazy("Ask how it is kept"),
        gettext_lazy("Look on its label whether it must stay cold, and measure it then."),
    ),
}
AFTERWARDS: dict[Afterwards, Words] = {
    Afterwards.COOL: gettext_lazy("Cool it fast, or throw it away"),
    Afterwards.ICE: gettext_lazy("Onto ice, or throw it away"),
    Afterwards.TIMED: gettext_lazy("Throw it away in time"),
    Afterwards.WRAP: gettext_lazy("Wrap it"),
    Afterwards.RAW: gettext_lazy("Raw, made to be shown"),
    Afterwards.SHOWN: gettext_lazy("Made to be shown"),
}


def amounts_told(amounts: Iterable[tuple[Amount, str]]) -> str:
    """Exact amounts, each with the size of a piece, as a tick remembers them: ``g=650,can_14_oz=3``."""
    told = []
    for amount, each in amounts:
        unit = "_".join((amount.unit or "piece", *each.split()))
        told.append(f"{unit}={amount.number:.6g}")
    return ",".join(told)[:MOST_TOLD]


def shopping_sections(event: CoreEvent, record: PlanRecord, units: str) -> tuple[Section, ...]:
    """What to buy, aisle by aisle; the plan itself says nothing more about it than the event does."""
    del record
    return tuple(
        Section(aisle.kind.value, AISLES[aisle.kind], tuple(_to_buy(line) for line in aisle.lines))
        for aisle in shopping(event, units)
    )


def _to_buy(line: ShoppingLine) -> Line:
    several = len(line.wants) > FEW_WANTS
    return Line(
        key=line.key,
        name=line.name,
        amount=line.text,
        also=line.also,
        told=amounts_told((one.exact, one.each) for one in line.buys),
        notes=tuple(_want(want, alone=len(line.wants) == 1) for want in line.wants),
        fold=ngettext("for %(count)d dish", "for %(count)d dishes", len(line.wants)) % {"count": len(line.wants)}
        if several
        else "",
    )


def _want(want: Want, *, alone: bool) -> Note:
    up_to = _("made only up to “%(step)s”; less may do") % {"step": want.up_to} if want.up_to else ""
    return Note(want.dish_name, "" if alone else want.text, ", ".join(part for part in (want.note, up_to) if part))


def packing_sections(event: CoreEvent, record: PlanRecord, units: str) -> tuple[Section, ...]:
    """What to bring, group by group."""
    return tuple(
        Section(group.key, group.title, tuple(_item(item) for item in group.items), caution=group.caution)
        for group in packing(event, record, units)
    )


def _item(item: Item) -> Line:
    return Line(
        key=item.key,
        name=item.name,
        amount="" if item.count is None else f"× {item.count}",
        detail=item.detail,
        source=item.source,
        told="" if item.count is None else amounts_told([(Amount(item.count), "")]),
    )


def measuring_sections(event: CoreEvent, record: PlanRecord, units: str) -> tuple[Section, ...]:
    """What to measure out, dish by dish."""
    del record
    return tuple(
        Section(
            f"dish-{dish.dish}",
            dish.dish_name,
            tuple(_bag(dish, bag) for bag in dish.bags),
            hint=_("Made only up to “%(step)s”; what later steps take may be left out.") % {"step": dish.up_to}
            if dish.up_to
            else "",
        )
        for dish in measure_out(event, units)
    )


def _bag(dish: DishMeasures, bag: Bag) -> Line:
    heading = KEPT[bag.kept][0]
    times = ngettext("%(count)d batch", "%(count)d batches alike", dish.batches) % {"count": dish.batches}
    named = [str(heading), _("for the %(part)s") % {"part": bag.part} if bag.part else "", bag.step]
    return Line(
        key=bag.key,
        name=", ".join(word for word in named if word),
        amount=times,
        told=amounts_told([(Amount(dish.batches), "")]),
        notes=tuple(
            Note(each.name, each.text, ", ".join(part for part in (each.note, each.said) if part))
            for each in bag.measures
        ),
    )


def leftover_sections(event: CoreEvent, record: PlanRecord, units: str) -> tuple[Section, ...]:
    """Food by what becomes of it, then the fire."""
    left = leftovers(event, record, units)
    food = [
        Section(
            after.value,
            AFTERWARDS[after],
            tuple(_left(dish) for dish in alike),
            notes=tuple(_advice(advice) for advice in alike[0].advice),
        )
        for after in Afterwards
        if (alike := [dish for dish in left.dishes if dish.after is after])
    ]
    fire = Section("fire", gettext_lazy("Fire and ovens"), tuple(_item(item) for item in left.fire))
    return (*food, fire) if fire.lines else tuple(food)


def _left(dish: LeftDish) -> Line:
    spare = ngettext("%(count)d portion over", "%(count)d portions over", dish.spare) % {"count": dish.spare}
    eating = _("%(made)d portions made, %(eating)d eating") % {"made": dish.made, "eating": dish.eating or 0}
    return Line(
        key=f"dish.{dish.dish}",
        name=dish.name,
        amount=spare if dish.spare else "",
        detail=eating if dish.eating is not None else "",
        by=dish.by,
    )


def _advice(advice: Advice) -> Note:
    return Note(advice.text, more=advice.source)
