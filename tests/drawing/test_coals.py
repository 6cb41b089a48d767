"""Where coals lie."""

from itertools import combinations
from math import dist, hypot

import pytest

from cookout.drawing.coals import oven_picture, rings_on_lid, rings_under
from tests.drawing.svg_reading import SVG, parse

# Counts from the chart of common practice: (inches, lid, under) from the weakest to the hottest of each oven.
CHART = [(8, 10, 5), (8, 14, 6), (10, 13, 6), (12, 17, 8), (12, 22, 11), (14, 26, 14), (16, 22, 12), (16, 30, 14)]


@pytest.mark.parametrize(("inches", "lid", "under"), CHART)
def test_every_coal_has_its_place_within_the_oven(inches: int, lid: int, under: int) -> None:
    for rings, count in ((rings_on_lid(lid, inches), lid), (rings_under(under, inches), under)):
        points = [point for ring in rings for point in ring.points()]
        assert len(points) == count
        assert all(hypot(*point) <= inches / 2 - 0.7 for point in points)


@pytest.mark.parametrize(("inches", "lid", "under"), CHART)
def test_coals_do_not_lie_on_one_another(inches: int, lid: int, under: int) -> None:
    for rings in (rings_on_lid(lid, inches), rings_under(under, inches)):
        points = [point for ring in rings for point in ring.points()]
        assert min(dist(one, other) for one, other in combinations(points, 2)) > 1.36


def test_a_lid_has_a_fifth_at_its_centre_and_the_ground_has_none() -> None:
    centre = [point for ring in rings_on_lid(17, 12) for point in ring.points() if hypot(*point) < 2]
    assert len(centre) == 3
    assert all(ring.radius > 2 for ring in rings_under(8, 12))


def test_no_coals_make_no_rings_and_few_go_to_the_rim() -> None:
    assert rings_on_lid(0, 12) == []
    assert [ring.count for ring in rings_on_lid(4, 12)] == [4]


def test_the_picture_shows_and_names_both_counts() -> None:
    root = parse(oven_picture(17, 8, 12))
    groups = {group.get("class"): group for group in root.iter(f"{SVG}g")}
    assert len(groups["lid"].findall(f"{SVG}circle")) == 1 + 17
    assert len(groups["under"].findall(f"{SVG}circle")) == 1 + 8
    assert root.attrib["aria-label"] == "17 coals on the lid, 8 under"
