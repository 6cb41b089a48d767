"""Adding up what dishes ask for. Grams of a cup: USDA SR28; a stick is a quarter pound, common practice, no source."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from cookout.core.kitchen.measures import GRAM, MILLILITRE, Amount, convert
from cookout.core.kitchen.recipe import Ingredient
from cookout.core.planning.lists.sums import Asked, Sum, add_up, asked_of

FLOUR, ONION = "all-purpose flour", "onion"
VOLUMES, MASSES, PIECES = ("tsp", "Tbsp", "cup", "mL", "L", "pinch"), ("oz", "lb", "g", "kg"), ("", "can", "clove")
numbers = st.floats(0.01, 1000)


def test_cups_and_grams_of_flour_are_added_by_its_density() -> None:
    (total,) = add_up((Asked(Amount(2, "cup"), FLOUR), Asked(Amount(400, "g"), FLOUR)))
    assert (total.total.unit, total.food) == ("g", FLOUR)
    assert total.total.number == pytest.approx(2 * 125 + 400)


def test_carrot_noted_as_grated_is_added_to_carrots_by_weight() -> None:
    grated = asked_of(Ingredient("carrot", 3, "cup", "grated"), 2)
    whole = asked_of(Ingredient("carrots", 1, "kg"), 1)
    assert grated is not None
    assert whole is not None
    (total,) = add_up((grated, whole))
    assert total.total.number == pytest.approx(2 * 3 * 110 + 1000)


def test_pieces_and_weight_of_onions_stand_side_by_side() -> None:
    totals = add_up((Asked(Amount(4), ONION), Asked(Amount(600, "g"), ONION), Asked(Amount(1), ONION)))
    assert [total.total for total in totals] == [Amount(600, "g"), Amount(5)]


def test_cups_of_what_nobody_weighed_are_not_added_to_its_grams() -> None:
    totals = add_up((Asked(Amount(2, "cup"), "chard"), Asked(Amount(500, "g"), "chard")))
    assert [total.total.unit for total in totals] == ["g", "mL"]


def test_eggs_by_weight_are_eggs() -> None:
    (total,) = add_up((Asked(Amount(3), "egg"), Asked(Amount(100, "g"), "eggs")))
    assert total.total == Amount(5)


def test_cans_of_two_sizes_are_two_sorts_of_cans() -> None:
    small, large = Asked(Amount(2, "can"), "tomato", "14 oz"), Asked(Amount(1, "can"), "tomato", "28 oz")
    assert add_up((small, large, small)) == (
        Sum(Amount(4, "can"), "tomato", "14 oz"),
        Sum(Amount(1, "can"), "tomato", "28 oz"),
    )


def test_a_few_pinches_stay_pinches_and_many_are_a_spoonful() -> None:
    pinch = Asked(Amount(1, "pinch"), "salt")
    assert add_up((pinch, pinch))[0].total == Amount(2, "pinch")
    assert add_up((pinch,) * 16)[0].total.number == pytest.approx(convert(Amount(1, "tsp"), "mL").number)


def test_what_is_to_taste_asks_for_nothing() -> None:
    assert asked_of(Ingredient("salt"), 3) is None


@given(st.lists(st.tuples(numbers, st.sampled_from(VOLUMES + MASSES)), min_size=1))
def test_the_total_of_a_food_with_a_density_is_the_sum_of_its_grams(parts: list[tuple[float, str]]) -> None:
    totals = add_up(tuple(Asked(Amount(number, unit), FLOUR) for number, unit in parts))
    wanted = sum(convert(Amount(number, unit), GRAM, FLOUR).number for number, unit in parts)
    assert len(totals) == 1
    assert convert(totals[0].total, GRAM, FLOUR).number == pytest.approx(wanted)


@given(st.lists(st.tuples(numbers, st.sampled_from(VOLUMES + MASSES + PIECES)), min_size=1))
def test_nothing_is_lost_where_not_all_can_be_added(parts: list[tuple[float, str]]) -> None:
    totals = add_up(tuple(Asked(Amount(number, unit), "chard") for number, unit in parts))

    def told(amounts: list[Amount], units: tuple[str, ...], base: str) -> float:
        return sum(convert(each, base).number for each in amounts if each.unit in units)

    asked, found = [Amount(number, unit) for number, unit in parts], [each.total for each in totals]
    assert told(found, VOLUMES, MILLILITRE) == pytest.approx(told(asked, VOLUMES, MILLILITRE))
    assert told(found, MASSES, GRAM) == pytest.approx(told(asked, MASSES, GRAM))
    for piece in PIECES:
        assert told(found, (piece,), piece) == pytest.approx(told(asked, (piece,), piece))


@given(st.lists(st.tuples(numbers, st.sampled_from(MASSES + PIECES)), min_size=1), st.integers(1, 50))
def test_so_many_times_the_parts_are_so_many_times_the_totals(parts: list[tuple[float, str]], times: int) -> None:
    once = add_up(tuple(Asked(Amount(number, unit), "chard") for number, unit in parts))
    often = add_up(tuple(Asked(Amount(number * times, unit), "chard") for number, unit in parts))
    assert [each.total.number * times for each in once] == pytest.approx([each.total.number for each in often])
