"""Scaling by people, pans and ovens. Pan areas: geometry, as facts of arithmetic; a cup is 14.4375 cubic inches."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from cookout.core.errors import QuantityError
from cookout.core.kitchen.measures import Amount
from cookout.core.kitchen.pans import Pan, baking_time_factor, fit, same_depth, same_fill
from cookout.core.kitchen.recipe import (
    FoodKind,
    Ingredient,
    Keeps,
    Minutes,
    Recipe,
    RecipeId,
    Scope,
    Step,
    StepId,
    StepKind,
)
from cookout.core.kitchen.scaling import (
    Eggs,
    batches_for,
    batter_grams,
    factor_for_ovens,
    factor_for_people,
    scale,
    scaled_ingredients,
    share_batter,
    time_notes,
)

BATTER = (
    Ingredient("all-purpose flour", 3, "cup"),
    Ingredient("sugar", 2, "cup"),
    Ingredient("baking soda", 2, "tsp"),
    Ingredient("egg", 5),
    Ingredient("oil", 1.25, "cup"),
    Ingredient("carrot", 4, "cup", "grated"),
    Ingredient("salt"),
)
STEP = Step(StepId("mix"), "Mix", StepKind.MIX, Scope.BATCH, Minutes(5, 6, 8))
CAKE = Recipe(RecipeId("cake"), "Cake", 12, (STEP,), FoodKind.BREAD_AND_CAKE, Keeps(air=600), ingredients=BATTER)


@pytest.mark.parametrize(
    ("pan", "square_inches"),
    [(Pan(8), 50.27), (Pan(9), 63.62), (Pan(10), 78.54), (Pan(12), 113.10), (Pan(14), 153.94), (Pan(9, 13), 117.0)],
)
def test_pans_have_the_area_of_their_floor(pan: Pan, square_inches: float) -> None:
    assert pan.area == pytest.approx(square_inches, abs=0.005)


def test_a_round_pan_of_nine_by_two_inches_holds_nearly_nine_cups() -> None:
    assert Pan(9, deep_inches=2).cups == pytest.approx(127.23 / 14.4375, rel=1e-4)


def test_equal_depth_scales_by_area_and_count() -> None:
    assert same_depth(Pan(8), Pan(9), have_count=2, want_count=3) == pytest.approx(3 * 81 / (2 * 64))
    assert same_depth(Pan(9, 13), Pan(9)) == pytest.approx(63.617 / 117, rel=1e-4)
    assert factor_for_ovens(10, 12) == pytest.approx(1.44)


def test_equal_filling_scales_by_volume_and_needs_both_depths() -> None:
    assert same_fill(Pan(9, deep_inches=2), Pan(9, deep_inches=3)) == pytest.approx(1.5)
    with pytest.raises(QuantityError, match="depth of both"):
        same_fill(Pan(9), Pan(9, deep_inches=3))


def test_deeper_batter_takes_longer_and_more_of_it_may_run_over() -> None:
    assert fit(Pan(9), Pan(9), 1).note.startswith("As deep as before")
    deeper = fit(Pan(9), Pan(8), 1)
    assert deeper.depth_factor == pytest.approx(81 / 64)
    assert deeper.note.startswith("Deeper, so longer")
    assert fit(Pan(10), Pan(12), 1).note.startswith("Shallower")
    assert "run over" in fit(Pan(9, deep_inches=2), Pan(8, deep_inches=2), 1).note


def test_time_lies_between_depth_and_its_square() -> None:
    assert baking_time_factor(2) == (2, 4)
    assert baking_time_factor(0.5) == (0.25, 0.5)
    with pytest.raises(QuantityError, match="another dish"):
        baking_time_factor(9)


@pytest.mark.parametrize("sizes", [(0.0,), (-9.0,), (9.0, 0.0), (float("nan"),)])
def test_a_pan_without_size_is_refused(sizes: tuple[float, ...]) -> None:
    with pytest.raises(QuantityError, match="above 0"):
        Pan(*sizes)


def test_people_make_a_factor_and_whole_batches() -> None:
    assert factor_for_people(CAKE, 30) == pytest.approx(2.5)
    batches = batches_for(CAKE, 30)
    assert (batches.count, batches.serves, batches.spare) == (3, 36, 6)
    assert batches_for(CAKE, 12).count == 1
    with pytest.raises(QuantityError, match="one person"):
        factor_for_people(CAKE, 0)


def test_half_a_recipe_says_what_its_eggs_and_cups_were_rounded_to() -> None:
    flour, _, _, eggs, oil, _, salt = scale(BATTER, 0.5, units="us")
    assert flour.measured is not None
    assert flour.measured.text == "1 1/2 cups"
    assert flour.said == ""
    assert eggs.exact == Amount(2.5)
    assert eggs.measured is not None
    assert eggs.measured.amount == Amount(3)
    assert "0.5 egg more than exact (some 25 g, about 2 Tbsp" in eggs.said
    assert oil.measured is not None
    assert oil.measured.text == "1/2 cup plus 2 Tbsp"
    assert salt.measured is None
    assert salt.said == "to taste"


@pytest.mark.parametrize(
    ("choice", "number", "unit", "words"),
    [
        (Eggs.UP, 3, "", "more than exact"),
        (Eggs.DOWN, 2, "", "less than exact"),
        (Eggs.BY_WEIGHT, 125, "g", "Beat 3 and weigh out 125 g"),
    ],
)
def test_a_part_of_an_egg_is_dealt_with_as_chosen(choice: Eggs, number: float, unit: str, words: str) -> None:
    (eggs,) = scale((Ingredient("egg", 5),), 0.5, units="metric", eggs=choice)
    assert eggs.measured is not None
    assert eggs.measured.amount.number == pytest.approx(number)
    assert eggs.measured.amount.unit == unit
    assert words in eggs.said


def test_whole_eggs_need_no_word() -> None:
    (eggs,) = scale((Ingredient("eggs", 4),), 1.5, units="us")
    assert eggs.said == ""
    assert eggs.measured is not None
    assert eggs.measured.amount.number == 6


def test_a_scaled_recipe_in_metric_units_is_weighed() -> None:
    scaled = scaled_ingredients(scale(BATTER, 2, units="metric"))
    assert (scaled[0].amount, scaled[0].unit) == (750, "g")
    assert (scaled[2].amount, scaled[2].unit) == (20, "mL")
    assert scaled[6] == BATTER[6]


@pytest.mark.parametrize("factor", [0.0, -1.0, 1001.0, float("nan")])
def test_no_recipe_scales_by_nothing_or_without_end(factor: float) -> None:
    with pytest.raises(QuantityError, match="scales by"):
        scale(BATTER, factor, units="us")


def test_the_weight_of_a_batter_names_what_could_not_be_weighed() -> None:
    mass, unknown = batter_grams((*BATTER, Ingredient("salsa", 1, "cup"), Ingredient("beans", 2, "can")))
    assert mass == pytest.approx(3 * 125 + 2 * 200 + 2 * 4.6 + 250 + 1.25 * 218 + 4 * 110)
    assert unknown == ("salsa", "beans")


def test_batter_is_shared_by_area_and_the_rest_is_told() -> None:
    share = share_batter(2000, (Pan(9),) * 3)
    assert list(share.each) == [665.0] * 3
    assert share.rest == pytest.approx(5)
    uneven = share_batter(1000, (Pan(8), Pan(10)), step=1)
    assert uneven.each[1] / uneven.each[0] == pytest.approx(100 / 64, rel=0.01)
    with pytest.raises(QuantityError, match="at least one pan"):
        share_batter(1000, ())


@settings(deadline=None)
@given(st.floats(100, 20_000), st.lists(st.floats(6, 16), min_size=1, max_size=12))
def test_shared_batter_is_all_there_and_never_short(total: float, inches: list[float]) -> None:
    share = share_batter(total, tuple(Pan(size) for size in inches))
    assert sum(share.each) + share.rest == pytest.approx(total)
    assert -1e-6 <= share.rest < 5 * len(inches) + 1e-6


def test_times_grow_with_depth_and_not_with_batches() -> None:
    notes = {note.about: note.text for note in time_notes(2)}
    assert "bake as long as before" in notes["bake"]
    assert "mix" in notes
    assert "longer" in {note.about: note.text for note in time_notes(1, 1.5)}["bake"]
