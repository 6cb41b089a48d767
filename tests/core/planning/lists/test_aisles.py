"""Where foods stand in a shop: common practice, no source."""

from collections import Counter

import pytest
from hypothesis import given
from hypothesis import strategies as st

from cookout.core.planning.lists import shopping
from cookout.core.planning.lists.aisles import _WORDS, AisleKind, aisle_of
from tests.core.planning.lists.conftest import shipped


@pytest.mark.parametrize(
    ("food", "aisle"),
    [
        ("peanut butter", AisleKind.CANS),
        ("butter lettuce", AisleKind.PRODUCE),
        ("butter", AisleKind.DAIRY),
        ("chicken stock", AisleKind.CANS),
        ("ground pork", AisleKind.MEAT),
        ("ground cinnamon", AisleKind.SPICES),
        ("tomato paste", AisleKind.CANS),
        ("cider vinegar", AisleKind.OILS),
        ("garlic powder", AisleKind.SPICES),
        ("garlic cloves", AisleKind.PRODUCE),
        ("sweet peppers", AisleKind.PRODUCE),
        ("black pepper", AisleKind.SPICES),
        ("coconut milk", AisleKind.CANS),
        ("rolled oats", AisleKind.GRAINS),
        ("snap peas", AisleKind.PRODUCE),
        ("green beans", AisleKind.PRODUCE),
        ("cream of tartar", AisleKind.BAKING),
        ("water", AisleKind.DRINKS),
        ("moon dust", AisleKind.OTHER),
        ("", AisleKind.OTHER),
    ],
)
def test_the_last_words_that_are_known_decide(food: str, aisle: AisleKind) -> None:
    assert aisle_of(food) is aisle


def test_what_comes_in_a_can_or_jar_stands_with_cans_and_jars() -> None:
    assert aisle_of("tomato", "can") is AisleKind.CANS
    assert aisle_of("tomato", "kg") is AisleKind.PRODUCE


def test_no_food_stands_in_two_aisles() -> None:
    phrases = [part.strip() for text in _WORDS.values() for part in text.split(";")]
    assert [phrase for phrase, times in Counter(phrases).items() if times > 1] == []


@given(st.text())
def test_any_name_has_an_aisle_and_people_words_for_it(food: str) -> None:
    assert aisle_of(food).heading


@pytest.mark.parametrize("name", ["supper", "demonstration", "festival"])
def test_the_shipped_events_have_nothing_that_no_aisle_knows(name: str) -> None:
    assert AisleKind.OTHER not in {aisle.kind for aisle in shopping(shipped(name), "us")}


@pytest.mark.parametrize(
    ("food", "unit", "kind"),
    [
        ("sage", "tsp", AisleKind.SPICES),
        ("thyme", "tsp", AisleKind.SPICES),
        ("fresh thyme", "tsp", AisleKind.PRODUCE),
        ("sage", "", AisleKind.PRODUCE),
        ("parsley", "tsp", AisleKind.PRODUCE),
    ],
)
def test_herbs_by_the_teaspoon_are_dried_ones(food: str, unit: str, kind: AisleKind) -> None:
    """Common practice, no source."""
    assert aisle_of(food, unit) is kind
