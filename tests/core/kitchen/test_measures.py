"""Kitchen measures against NIST Handbook 44, Appendix C, and USDA SR28.

Handbook 44 (2024 edition), Appendix C: 1 gallon = 3.785 411 784 L, 1 quart = 946.352 946 mL, 1 cup = 236.588 236 5 mL,
1 fluid ounce = 29.573 529 56 mL, 1 tablespoon = 14.786 764 78 mL, 1 teaspoon = 4.928 921 59 mL, 1 pound = 453.592 37 g,
1 ounce = 28.349 523 125 g. Grams in a cup: USDA SR28 (2015). Stick, dash and pinch: common practice, no source.
"""

import math

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from cookout.core.errors import QuantityError
from cookout.core.kitchen.densities import density_of, every_density, piece_mass_of
from cookout.core.kitchen.measures import Amount, Kind, can_weigh, convert, grams, in_units, kind_of

VOLUMES = ("tsp", "Tbsp", "fl oz", "cup", "pt", "qt", "gal", "mL", "cL", "dL", "L", "pinch", "dash")
MASSES = ("oz", "lb", "g", "kg", "stick")


@pytest.mark.parametrize(
    ("unit", "millilitres"),
    [
        ("gal", 3785.411784),
        ("qt", 946.352946),
        ("pt", 473.176473),
        ("cup", 236.5882365),
        ("fl oz", 29.57352956),
        ("Tbsp", 14.78676478),
        ("tsp", 4.92892159),
        ("dL", 100.0),
        ("L", 1000.0),
    ],
)
def test_volumes_have_the_factors_of_the_handbook(unit: str, millilitres: float) -> None:
    assert convert(Amount(1, unit), "mL").number == pytest.approx(millilitres, rel=1e-9)


@pytest.mark.parametrize(("unit", "mass"), [("lb", 453.59237), ("oz", 28.349523125), ("kg", 1000.0)])
def test_masses_have_the_factors_of_the_handbook(unit: str, mass: float) -> None:
    assert convert(Amount(1, unit), "g").number == pytest.approx(mass, rel=1e-12)


def test_sticks_dashes_and_pinches_are_what_cooks_take_them_for() -> None:
    assert convert(Amount(4, "stick"), "lb").number == pytest.approx(1)
    assert convert(Amount(8, "dash"), "tsp").number == pytest.approx(1)
    assert convert(Amount(16, "pinch"), "tsp").number == pytest.approx(1)


@pytest.mark.parametrize(
    ("amount", "food", "mass"),
    [
        (Amount(1, "cup"), "all-purpose flour", 125),
        (Amount(2, "cup"), "flour", 250),
        (Amount(1, "cup"), "brown sugar", 220),
        (Amount(1, "cup"), "Chopped Pecans", 109),
        (Amount(0.5, "cup"), "unsalted butter", 113.5),
        (Amount(1, "tsp"), "salt", 6.0),
        (Amount(2, "tsp"), "baking powder", 9.2),
        (Amount(3), "large eggs", 150),
        (Amount(2, "cup"), "grated carrots", 220),
    ],
)
def test_a_cup_weighs_what_the_table_says(amount: Amount, food: str, mass: float) -> None:
    assert grams(amount, food) == pytest.approx(mass, rel=1e-9)


@pytest.mark.parametrize(
    "food", ["peanut butter", "coconut milk", "almond flour", "butter beans", "condensed milk", "dry milk", "corn", ""]
)
def test_a_name_that_only_contains_a_known_food_has_no_weight(food: str) -> None:
    assert density_of(food) is None
    with pytest.raises(QuantityError, match="weigh it"):
        grams(Amount(1, "cup"), food)


def test_every_row_of_the_table_is_found_by_its_name_and_names_its_source() -> None:
    for row in every_density():
        assert density_of(row.food) == row
        assert row.source
        assert 50 < row.grams_a_cup < 400


def test_only_large_eggs_have_a_weight_by_the_piece() -> None:
    assert piece_mass_of("eggs") is not None
    assert piece_mass_of("small eggs") is None
    assert piece_mass_of("egg whites") is None


@pytest.mark.parametrize(
    ("amount", "unit"), [(Amount(2, "clove"), "g"), (Amount(2, "can"), "head"), (Amount(1, "g"), "can")]
)
def test_counts_turn_into_nothing_else(amount: Amount, unit: str) -> None:
    with pytest.raises(QuantityError):
        convert(amount, unit, "tomatoes")


@pytest.mark.parametrize("number", [-1.0, math.inf, math.nan])
def test_an_amount_below_nothing_or_without_end_is_refused(number: float) -> None:
    with pytest.raises(QuantityError, match="is no amount"):
        Amount(number)


def test_kinds_follow_the_unit() -> None:
    assert {kind_of(unit) for unit in VOLUMES} == {Kind.VOLUME}
    assert {kind_of(unit) for unit in MASSES} == {Kind.MASS}
    assert kind_of("") is kind_of("clove") is Kind.COUNT
    assert can_weigh(Amount(3), "eggs")
    assert not can_weigh(Amount(3, "can"), "tomatoes")
    assert not can_weigh(Amount(1, "cup"), "salsa")


@settings(deadline=None)
@given(st.floats(1e-3, 1e4), st.sampled_from(VOLUMES), st.sampled_from(MASSES), st.sampled_from(every_density()))
def test_volume_to_mass_and_back_is_the_same(number: float, volume: str, mass: str, food: object) -> None:
    name = getattr(food, "food", "")
    weighed = convert(Amount(number, volume), mass, name)
    assert convert(weighed, volume, name).number == pytest.approx(number, rel=1e-12)


@pytest.mark.parametrize(
    ("amount", "units", "food", "unit", "number"),
    [
        (Amount(2, "cup"), "metric", "flour", "g", 250),
        (Amount(2, "cup"), "metric", "milk", "mL", 473.176),
        (Amount(2, "cup"), "metric", "salsa", "mL", 473.176),
        (Amount(2, "tsp"), "metric", "salt", "mL", 9.858),
        (Amount(2, "lb"), "metric", "beef", "g", 907.185),
        (Amount(2, "stick"), "metric", "butter", "g", 226.796),
        (Amount(250, "g"), "us", "flour", "cup", 2),
        (Amount(1, "kg"), "us", "beef", "lb", 2.205),
        (Amount(100, "g"), "us", "beef", "oz", 3.527),
        (Amount(5, "mL"), "us", "oil", "tsp", 1.0144),
        (Amount(20, "mL"), "us", "oil", "Tbsp", 1.3526),
        (Amount(3), "metric", "eggs", "", 3),
        (Amount(1, "pinch"), "metric", "salt", "pinch", 1),
        (Amount(1, "cup"), "us", "flour", "cup", 1),
        (Amount(1, "kg"), "metric", "flour", "kg", 1),
    ],
)
def test_an_amount_turns_into_what_a_person_measures_with(
    amount: Amount, units: str, food: str, unit: str, number: float
) -> None:
    turned = in_units(amount, units, food)
    assert turned.unit == unit
    assert turned.number == pytest.approx(number, rel=2e-4)
