"""Patterns of coals that a person can lay; common practice, no source."""

from itertools import combinations
from math import hypot

import pytest
from hypothesis import given
from hypothesis import strategies as st

from cookout.core.fire.patterns import COAL_INCHES, lay


def test_the_usual_oven_has_a_ring_under_and_a_ring_and_centre_on_its_lid() -> None:
    pattern = lay(17, 8, 12)
    assert [ring.count for ring in pattern.lid] == [14, 3]
    assert [ring.count for ring in pattern.under] == [8]
    assert pattern.words == (
        "On the lid 14 at the rim and 3 at the centre; under the oven 8 in a ring just inside the edge."
    )


def test_a_pot_that_fries_has_none_on_its_lid() -> None:
    pattern = lay(0, 25, 12)
    assert pattern.lid_places == ()
    assert pattern.words.startswith("On the lid none; ")


@given(st.integers(0, 40), st.integers(0, 40), st.floats(8, 24))
def test_every_coal_has_its_own_place_within_the_oven(lid: int, under: int, inches: float) -> None:
    pattern = lay(lid, under, inches)
    assert len(set(pattern.lid_places)) == lid
    assert len(set(pattern.under_places)) == under
    assert all(hypot(*place) < 1 for place in (*pattern.lid_places, *pattern.under_places))


@pytest.mark.parametrize(
    ("inches", "lid", "under"), [(8, 11, 5), (10, 14, 7), (12, 22, 11), (14, 26, 14), (16, 30, 14)]
)
def test_the_coals_of_the_chart_lie_side_by_side_without_touching(inches: int, lid: int, under: int) -> None:
    pattern = lay(lid, under, inches)
    for places in (pattern.lid_places, pattern.under_places):
        nearest = min(hypot(a[0] - b[0], a[1] - b[1]) for a, b in combinations(places, 2)) * inches / 2
        assert nearest > 0.8 * COAL_INCHES


def test_a_ring_is_even_all_around() -> None:
    (ring,) = lay(0, 8, 12).under
    assert sum(x for x, _ in ring.places) == pytest.approx(0, abs=1e-12)
    assert sum(y for _, y in ring.places) == pytest.approx(0, abs=1e-12)
    assert ring.places[0] == (0.0, -ring.radius)


def test_fewer_than_none_is_refused() -> None:
    with pytest.raises(ValueError, match="none"):
        lay(-1, 4, 12)
