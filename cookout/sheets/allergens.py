"""What is known of allergens, on paper: one sheet for the counter, and folded cards that stand by the dishes."""

from cookout.core.planning.lists.table_card import Card, CardDish, CardServing
from cookout.core.planning.record import PlanRecord
from cookout.sheets.job import Job
from cookout.sheets.pages import printed
from cookout.sheets.printing import USUAL, Printing
from cookout.sheets.typesetting import Data


def allergen_sheet_pdf(record: PlanRecord, card: Card, printing: Printing = USUAL) -> bytes:
    """Every dish by serving: what it contains, may hold, what is not known, and whom to ask, as PDF.

    As `run_sheet_pdf` otherwise.
    """
    return _printed("allergen_sheet", record, card, printing, printing.gettext("Allergens"))


def allergen_cards_pdf(record: PlanRecord, card: Card, printing: Printing = USUAL) -> bytes:
    """A card for each dish, to be cut out and folded so that both sides can be read, as PDF.

    As `run_sheet_pdf` otherwise.
    """
    return _printed("allergen_cards", record, card, printing, printing.gettext("Table cards"))


def _printed(template: str, record: PlanRecord, card: Card, printing: Printing, title: str) -> bytes:
    job = Job(record, printing)
    _ = printing.gettext
    data = {
        "servings": tuple(_serving(serving, job) for serving in card.servings),
        "note": job.word(card.note),
        "about": tuple(filter(None, (job.first_day(), record.place))),
        "none": _("No dish is served."),
        "heads": {"sheet": title, "fold": _("fold"), "cut": _("cut")},
    }
    return printed(template, job, data, cautions=())


def _serving(serving: CardServing, job: Job) -> Data:
    return {
        "name": serving.name,
        "at": job.clock(serving.at),
        "dishes": tuple(_dish(dish, job) for dish in serving.dishes),
    }


def _dish(dish: CardDish, job: Job) -> Data:
    _ = job.printing.gettext
    known = [
        (_("Contains"), (*_named(dish.contains, job), *dish.others), "strong"),
        (_("May hold"), _named(dish.may_be, job), "strong"),
        (_("Not known"), _named(dish.not_known, job), "weak"),
        (_("Not known what is in"), dish.unknown_ingredients, "weak"),
        (_("Shares an oven with"), dish.same_oven, "weak"),
    ]
    facts = tuple({"name": name, "text": ", ".join(words), "weight": weight} for name, words, weight in known if words)
    ask = _("Ask {names}, who made it.").format(names=", ".join(dish.cooks)) if dish.cooks else _("Ask the cook.")
    # What is possible or not known is never covered by "none found".
    told = dish.contains or dish.may_be or dish.not_known or dish.unknown_ingredients or dish.others
    found = "" if told else _("None of the nine found in the names of its ingredients.")
    return {"name": dish.name, "facts": facts, "found": found, "ask": ask, "changed": job.word(dish.changed)}


def _named(allergens: tuple[str, ...], job: Job) -> tuple[str, ...]:
    return tuple(map(job.word, allergens))
