"""Everything at once: a whole event's facts reviewed by one code."""

from dataclasses import replace

from cookout.core.quantities import fahrenheit_to_celsius as celsius
from cookout.core.safety.finding import Severity
from cookout.core.safety.foodpath import FoodPath, Held, Leg
from cookout.core.safety.icing import Icing
from cookout.core.safety.limits import FOOD_CODE
from cookout.core.safety.review import DishFacts, IcedCake, PlannedWait, ReviewFacts, review, review_all
from cookout.core.safety.site import State
from tests.core.safety.test_site import GOOD

CHICKEN = DishFacts("chicken", "Roast chicken", "poultry", (("chicken thighs", "on ice"), ("salt", "")))
CAKE = DishFacts("cake", "Layer cake", "cream_icing", (("flour", ""), ("cream cheese", "")))
MILD = ReviewFacts((CHICKEN, CAKE), GOOD, celsius(70))


def test_a_good_event_has_nothing_to_say() -> None:
    assert review(MILD) == ()


def test_chicken_that_waits_three_hours_is_refused_in_front_of_everything_else() -> None:
    waiting = replace(CHICKEN, waits=(PlannedWait(180, "air", celsius(80)),))
    facts = replace(MILD, dishes=(CAKE, waiting), site=replace(GOOD, metal_can=None), code=FOOD_CODE)
    first, *rest = review(facts)
    assert (first.about, first.severity) == ("chicken", Severity.REFUSED)
    assert "FDA Food Code 3-501.16(A)" in first.said
    assert [found.about for found in rest] == ["site"]
    assert review_all(facts).refused == (first,)


def test_icing_on_a_hot_afternoon_is_warned_of_and_a_cooler_takes_the_warning_away() -> None:
    hot = IcedCake(Icing.CREAM_CHEESE, celsius(95), sunny=True)
    warned = replace(MILD, dishes=(replace(CAKE, iced=hot),), air_c=celsius(95))
    cooled = replace(MILD, dishes=(replace(CAKE, iced=replace(hot, cooler=True, minutes_out=25)),), air_c=celsius(95))
    assert [found.about for found in review(warned)] == ["heat", "cake"]
    assert [found.about for found in review(cooled)] == ["heat"]


def test_paths_are_judged_and_handed_on_whole() -> None:
    path = FoodPath("Roast chicken", "poultry", (Leg(40, Held.OVEN, 180, start_c=4, end_c=70),), about="chicken")
    found = review_all(replace(MILD, dishes=(replace(CHICKEN, path=path),)))
    assert found.paths["chicken"].centre_reached is False
    assert [finding.about for finding in found.refused] == ["chicken"]


def test_unknown_ingredients_and_lists_that_leave_something_out_are_told() -> None:
    dish = replace(CAKE, ingredients=(("flour", ""), ("house rub", "")), declared=("milk",))
    warning, note = review(replace(MILD, dishes=(dish,)))
    assert (warning.severity, "wheat" in warning.text) == (Severity.WARNING, True)
    assert (note.severity, "house rub" in note.text) == (Severity.NOTE, True)


def test_the_list_of_the_place_comes_along() -> None:
    found = review_all(replace(MILD, site=replace(GOOD, water=False)))
    assert [item.id for item in found.checklist if item.state is State.STOP] == ["water"]
    assert found.allergens["cake"].said.startswith("Contains: milk, wheat.")
