"""Icing against the air. The temperatures are common practice, no source; the cases are the issue's own."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from cookout.core.quantities import fahrenheit_to_celsius as celsius
from cookout.core.safety.finding import Severity, rank_of
from cookout.core.safety.icing import BEARINGS, Icing, icing_holds, icing_of


def test_on_a_95_degree_afternoon_the_icing_does_not_hold_and_a_cooler_makes_it_hold() -> None:
    found = icing_holds(Icing.CREAM_CHEESE, celsius(95), sunny=True, about="show-cake")
    assert found is not None
    assert (found.severity, found.about) == (Severity.WARNING, "show-cake")
    assert "will not hold" in found.text
    assert "common practice, no source" in found.said
    for remedy in ("cooler with ice", "shade", "evening"):
        assert remedy in found.remedy
    assert icing_holds(Icing.CREAM_CHEESE, celsius(95), sunny=True, cooler=True, minutes_out=28) is None


def test_out_of_the_cooler_too_long_or_in_too_great_a_heat_it_fails_all_the_same() -> None:
    assert icing_holds(Icing.BUTTER, celsius(95), sunny=False, cooler=True, minutes_out=30) is None
    assert icing_holds(Icing.BUTTER, celsius(95), sunny=False, cooler=True, minutes_out=31) is not None
    assert icing_holds(Icing.BUTTER, celsius(112), sunny=False, cooler=True, minutes_out=10) is not None


@pytest.mark.parametrize(
    ("icing", "air_f", "severity"),
    [
        (Icing.BUTTER, 74, None),
        (Icing.BUTTER, 80, Severity.NOTE),
        (Icing.BUTTER, 90, Severity.WARNING),
        (Icing.SHORTENING, 88, None),
        (Icing.WHIPPED_CREAM, 80, Severity.WARNING),
        (Icing.SUGAR_GLAZE, 95, None),
    ],
)
def test_each_icing_has_its_own_limits(icing: Icing, air_f: float, severity: Severity | None) -> None:
    found = icing_holds(icing, celsius(air_f), sunny=False)
    assert (None if found is None else found.severity) == severity


def test_sun_makes_it_worse_and_the_remedy_is_shade() -> None:
    shade, sun = (icing_holds(Icing.BUTTER, celsius(82), sunny=sunny) for sunny in (False, True))
    assert rank_of(shade) < rank_of(sun)
    assert sun is not None
    assert "in the sun" in sun.text
    assert "in the shade" in sun.remedy


@given(
    icing=st.sampled_from(Icing),
    air=st.floats(0, 50),
    warmer=st.floats(0, 20),
    sunny=st.booleans(),
    cooler=st.booleans(),
    out=st.floats(0, 120),
    longer=st.floats(0, 60),
)
def test_warmer_sunnier_or_longer_is_never_judged_better_and_a_cooler_never_worse(
    icing: Icing, air: float, warmer: float, sunny: bool, cooler: bool, out: float, longer: float
) -> None:
    def rank(air_c: float, minutes: float, *, in_sun: bool = sunny, on_ice: bool = cooler) -> int:
        return rank_of(icing_holds(icing, air_c, sunny=in_sun, cooler=on_ice, minutes_out=minutes))

    assert rank(air, out) <= rank(air + warmer, out + longer)
    assert rank(air, out, in_sun=False) <= rank(air, out, in_sun=True)
    assert rank(air, out, on_ice=True) <= rank(air, out, on_ice=False)


def test_every_icing_softens_before_it_slides() -> None:
    assert BEARINGS.keys() == set(Icing)
    assert all(bearing.softens_c < bearing.slides_c for bearing in BEARINGS.values())


@pytest.mark.parametrize(
    ("food", "names", "icing"),
    [
        ("cream_icing", ("cream cheese", "butter", "powdered sugar"), Icing.CREAM_CHEESE),
        ("bread_and_cake", ("butter", "powdered sugar", "milk"), Icing.BUTTER),
        ("bread_and_cake", ("shortening", "icing sugar"), Icing.SHORTENING),
        ("cream_icing", ("dark chocolate", "heavy cream"), Icing.CHOCOLATE_AND_CREAM),
        ("cream_icing", ("whipping cream",), Icing.WHIPPED_CREAM),
        ("bread_and_cake", ("confectioners' sugar", "lemon juice"), Icing.SUGAR_GLAZE),
        ("cream_icing", (), Icing.CREAM_CHEESE),
        ("bread_and_cake", ("flour", "egg"), None),
    ],
)
def test_the_icing_is_read_off_the_ingredients(food: str, names: tuple[str, ...], icing: Icing | None) -> None:
    assert icing_of(food, names) == icing
