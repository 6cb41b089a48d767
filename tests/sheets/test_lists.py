"""Lists and allergen cards on paper."""

from dataclasses import replace

import pytest

from cookout.core.planning.lists.table_card import Card
from cookout.sheets import (
    Paper,
    Printing,
    allergen_cards_pdf,
    allergen_sheet_pdf,
    leftovers_pdf,
    measuring_pdf,
    packing_pdf,
    shopping_pdf,
)
from cookout.sheets.printing import USUAL
from tests.samples import sample_record
from tests.sheets.made_lists import a_card, some_aisles, some_groups, some_leftovers, some_measures
from tests.sheets.printed import drawn, pages_of, squeezed, text_of


def test_a_shopping_list_says_how_much_of_what_and_for_which_dish() -> None:
    text = text_of(shopping_pdf(sample_record(), some_aisles()))
    for words in (
        "Flour, sugar and baking",
        "1/4 cup (about 2 oz) sugar Apple crumble à la Brandão",
        "5 onions Smoky bean pot 3; Apple crumble à la Brandão 2",
        "1 cup sour cream Apple crumble à la Brandão, cold",
    ):
        assert squeezed(words) in text


def test_what_is_cold_is_bought_last() -> None:
    text = text_of(shopping_pdf(sample_record(), some_aisles()))
    cold = text.index(squeezed("Bought last, and straight into the cooler."))
    assert text.index("sourcream") > cold > text.index(squeezed("5 onions"))
    assert text.count(squeezed("Bought last")) == 1


def test_what_is_ticked_is_printed_ticked() -> None:
    """Drawn ink is counted: each tick adds some, and "on hand" is said in words besides."""
    open_, ticked = (
        shopping_pdf(sample_record(), some_aisles(), USUAL, ticks=ticks)
        for ticks in ({}, {"onion": "done", "sugar": "on_hand"})
    )
    assert squeezed("on hand") not in text_of(open_)
    assert text_of(ticked).count(squeezed("on hand")) == 1
    less, more = ((drawn(pdf, dpi=150, last=1)[0] < 128).sum() for pdf in (open_, ticked))
    assert more > less + 20


def test_a_packing_list_has_counts_cautions_and_who_says_so() -> None:
    text = text_of(packing_pdf(sample_record(), some_groups(), Printing(hours="12")))
    for words in (
        "Fire and fuel Never in a car while it is warm.",
        "2 × Long tongs",
        "at the fire by 4:15 pm",
        "common practice, no source",
    ):
        assert squeezed(words) in text


def test_what_is_measured_out_has_a_box_for_each_batch() -> None:
    text = text_of(measuring_pdf(sample_record(), some_measures()))
    for words in (
        "3 batches, each of this:",
        "Dry, in bags, for: topping",
        "1 1/2 cups flour sifted",
        "Stays cold 6 Tbsp butter",
        "In closed boxes in the cooler until it is used",
    ):
        assert squeezed(words) in text


def test_leftovers_say_by_when_and_tell_dishes_of_the_same_advice_together() -> None:
    text = text_of(leftovers_pdf(sample_record(), some_leftovers()))
    for words in (
        "9 portions made, 8 eating, 1 to spare. Cold, hot or thrown away by 20:05.",
        "Cold, hot or thrown away by 20:30.",
        "4 portions made, to be shown",
        "Drown the coals",
    ):
        assert squeezed(words) in text
    assert text.count(squeezed("Into shallow boxes, 40 °F or colder.")) == 1


def test_food_that_is_tasted_by_nobody_knows_how_many_is_not_called_a_show_piece() -> None:
    left = some_leftovers()
    tasted = replace(left.dishes[0], eating=None, spare=0)
    text = text_of(leftovers_pdf(sample_record(), replace(left, dishes=(tasted,))))
    assert squeezed(f"{tasted.made} portions made") in text
    assert squeezed("to be shown") not in text


def test_the_allergen_sheet_tells_what_is_known_what_is_not_and_whom_to_ask() -> None:
    text = text_of(allergen_sheet_pdf(sample_record(), a_card()))
    for words in (
        "No dish here is free of anything",
        "18:00 Supper",
        "Contains wheat",
        "May hold soybeans",
        "Not known sesame",
        "Not known what is in smoked sausage",
        "Ask Runa, who made it.",
        "None of the nine found in the names of its ingredients. Ask the cook.",
    ):
        assert squeezed(words) in text


@pytest.mark.parametrize(("may_be", "not_known"), [(("eggs",), ()), ((), ("milk",))])
def test_where_an_allergen_is_possible_or_not_known_no_sheet_says_that_none_was_found(
    may_be: tuple[str, ...], not_known: tuple[str, ...]
) -> None:
    (serving,) = a_card().servings
    crumble = replace(serving.dishes[1], may_be=may_be, not_known=not_known)
    text = text_of(allergen_sheet_pdf(sample_record(), Card((replace(serving, dishes=(crumble,)),))))
    assert squeezed("None of the nine found") not in text


@pytest.mark.parametrize("paper", ["a4", "letter"])
def test_a_table_card_can_be_read_from_both_sides(paper: Paper) -> None:
    """Each dish stands twice, once on its head: the letters of one of them run from right to left."""
    turned: dict[bool, int] = {True: 0, False: 0}

    def note(text: str, around: list[float], _matrix: object, _font: object, _size: float) -> None:
        if "Smoky" in text:
            turned[around[0] < 0] += 1

    pages = pages_of(allergen_cards_pdf(sample_record(), a_card(), Printing(paper=paper)))
    for page in pages:
        page.extract_text(visitor_text=note)
    assert turned == {True: 1, False: 1}
    assert len(pages) == 1


def test_every_table_card_says_that_nothing_is_free_of_anything() -> None:
    text = text_of(allergen_cards_pdf(sample_record(), a_card()))
    assert text.count(squeezed("No dish here is free of anything")) == 4  # two dishes, both sides
