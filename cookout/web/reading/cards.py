"""The allergen card in the reader's language."""

from dataclasses import dataclass

from django.utils.functional import Promise
from django.utils.translation import gettext_lazy as _

from cookout.core.planning.lists.table_card import CHANGED, GONE, Card, CardDish, CardServing
from cookout.core.safety.allergen_words import Allergen

Words = str | Promise

ALLERGENS: dict[str, Words] = {
    Allergen.MILK.value: _("milk"),
    Allergen.EGGS.value: _("eggs"),
    Allergen.FISH.value: _("fish"),
    Allergen.CRUSTACEANS.value: _("crustacean shellfish"),
    Allergen.TREE_NUTS.value: _("tree nuts"),
    Allergen.PEANUTS.value: _("peanuts"),
    Allergen.WHEAT.value: _("wheat"),
    Allergen.SOYBEANS.value: _("soybeans"),
    Allergen.SESAME.value: _("sesame"),
}
_CHANGES: dict[str, Words] = {
    CHANGED: _("Its recipe or its swaps were changed since the plan was made; both are told here. Plan again."),
    GONE: _("It is in the plan and no longer in the event. Plan again, and until then take it for being served."),
}


@dataclass(frozen=True, slots=True)
class CardRow:
    """A dish with the words of its allergens; `nothing_found` where none of the nine was found or possible."""

    dish: CardDish
    contains: tuple[Words, ...]
    may_be: tuple[Words, ...]
    not_known: tuple[Words, ...]
    changed: Words

    @property
    def nothing_found(self) -> bool:
        """Whether the names of its ingredients tell of none of the nine."""
        return not (self.contains or self.may_be or self.not_known)


@dataclass(frozen=True, slots=True)
class CardSheet:
    """One serving's card."""

    serving: CardServing
    rows: tuple[CardRow, ...]


def card_page(card: Card) -> dict[str, object]:
    """The sheets of a card, one for each serving."""
    return {"sheets": [CardSheet(each, tuple(_row(dish) for dish in each.dishes)) for each in card.servings]}


def _row(dish: CardDish) -> CardRow:
    return CardRow(
        dish,
        _words(dish.contains),
        _words(dish.may_be),
        _words(dish.not_known),
        _CHANGES.get(dish.changed, dish.changed),
    )


def _words(names: tuple[str, ...]) -> tuple[Words, ...]:
    return tuple(ALLERGENS.get(name, name) for name in names)
