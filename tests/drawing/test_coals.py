"""The picture of the coals on a lid and under an oven."""

from itertools import combinations
from math import dist, hypot
from xml.etree.ElementTree import Element

import pytest

from cookout.drawing.coals import PICTURE, oven_picture
from tests.drawing.svg_reading import SVG, parse

# Counts from the chart of common practice: (inches, lid, under) from the weakest to the hottest of each oven.
CHART = [(8, 10, 5), (8, 14, 6), (10, 13, 6), (12, 17, 8), (12, 22, 11), (14, 26, 14), (16, 22, 12), (16, 30, 14)]


def circles(group: Element) -> list[tuple[float, float, float]]:
    """Middle and radius of every circle of a group, the rim first."""
    found = (each.attrib for each in group.findall(f"{SVG}circle"))
    return [(float(each["cx"]), float(each["cy"]), float(each["r"])) for each in found]


@pytest.mark.parametrize(("inches", "lid", "under"), CHART)
def test_every_coal_has_its_place_within_the_rim_and_lies_on_no_other(inches: int, lid: int, under: int) -> None:
    root = parse(oven_picture(lid, under, inches))
    for group, count in zip(root.iter(f"{SVG}g"), (lid, under), strict=True):
        (x, y, rim), *coals = circles(group)
        assert len(coals) == count
        assert all(hypot(cx - x, cy - y) + r <= rim + PICTURE / 40 for cx, cy, r in coals)
        assert all(dist(one[:2], other[:2]) >= one[2] for one, other in combinations(coals, 2))


def test_the_picture_shows_and_names_both_counts() -> None:
    root = parse(oven_picture(17, 8, 12))
    groups = {group.get("class"): group for group in root.iter(f"{SVG}g")}
    assert len(groups["lid"].findall(f"{SVG}circle")) == 1 + 17
    assert len(groups["under"].findall(f"{SVG}circle")) == 1 + 8
    assert root.attrib["aria-label"] == "17 coals on the lid, 8 under"
