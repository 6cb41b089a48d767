"""Transient conduction against the textbook's one-term table, the full series and each other.

The table is the standard one of undergraduate texts (Bi against zeta and C), recomputed with scipy's root finding.
"""

from math import exp

import numpy as np
import pytest
from scipy.optimize import brentq
from scipy.special import j0, j1

from cookout.core.fire.conduction import (
    Shape,
    first_term,
    first_term_theta,
    lumped_diameter_m,
    lumped_seconds,
    roots,
    series_theta,
    short_cylinder_theta,
)
from cookout.core.fire.until import Goal, StepParams, until
from tests.core.fire.plain_bodies import CONDUCTIVITY, HEAT, plain, still

WITHIN = 0.005

TABLE = {
    Shape.WALL: {
        0.1: (0.3111, 1.0161),
        0.5: (0.6533, 1.0701),
        1: (0.8603, 1.1191),
        2: (1.0769, 1.1785),
        5: (1.3138, 1.2402),
        10: (1.4289, 1.2620),
    },
    Shape.CYLINDER: {
        0.1: (0.4417, 1.0246),
        0.5: (0.9408, 1.1143),
        1: (1.2558, 1.2071),
        2: (1.5994, 1.3384),
        5: (1.9898, 1.5029),
        10: (2.1795, 1.5677),
    },
    Shape.SPHERE: {
        0.1: (0.5423, 1.0298),
        0.5: (1.1656, 1.1441),
        1: (1.5708, 1.2732),
        2: (2.0288, 1.4793),
        5: (2.5704, 1.7870),
        10: (2.8363, 1.9249),
    },
}
ROWS = [(shape, bi, *values) for shape, rows in TABLE.items() for bi, values in rows.items()]
FINE = StepParams(heights=21, radii=13, stages=9, share=0.5, longest_s=20.0)


@pytest.mark.parametrize(("shape", "bi", "zeta", "weight"), ROWS)
def test_the_first_term_meets_the_textbook_table(shape: Shape, bi: float, zeta: float, weight: float) -> None:
    assert first_term(shape, float(bi)) == pytest.approx((zeta, weight), rel=WITHIN)


@pytest.mark.parametrize(("fo", "theta"), [(0.05, 0.99975), (0.2, 0.95064), (0.5, 0.77253), (1.0, 0.53386)])
def test_the_full_series_of_the_wall_meets_values_computed_before(fo: float, theta: float) -> None:
    assert series_theta(Shape.WALL, 1.0, fo) == pytest.approx(theta, rel=WITHIN)


@pytest.mark.parametrize(("shape", "theta"), [(Shape.CYLINDER, 0.54866), (Shape.SPHERE, 0.37078)])
def test_cylinder_and_sphere_by_one_term_meet_values_computed_before(shape: Shape, theta: float) -> None:
    assert first_term_theta(shape, 1.0, 0.5) == pytest.approx(theta, rel=WITHIN)
    assert series_theta(shape, 1.0, 0.5) == pytest.approx(theta, rel=WITHIN)


def test_one_term_is_wrong_early_and_the_series_is_not() -> None:
    assert first_term_theta(Shape.WALL, 1.0, 0.05) == pytest.approx(1.0785, rel=WITHIN)
    assert series_theta(Shape.WALL, 1.0, 0.05) < 1


def test_a_short_cylinder_is_the_product_of_wall_and_cylinder() -> None:
    assert short_cylinder_theta((1.0, 1.0), (0.5, 0.5)) == pytest.approx(0.77253 * 0.54866, rel=WITHIN)


@pytest.mark.parametrize("shape", list(Shape))
def test_the_series_starts_at_one_and_cools_first_at_the_surface(shape: Shape) -> None:
    assert series_theta(shape, 2.0, 0.002, terms=200) == pytest.approx(1.0, abs=1e-6)
    assert series_theta(shape, 2.0, 0.1, place=1.0) < series_theta(shape, 2.0, 0.1, place=0.5)


def test_later_roots_of_the_cylinder_agree_with_root_finding_elsewhere() -> None:
    found = roots(Shape.CYLINDER, 3.0, 4)
    by_scan = [
        brentq(lambda z: z * j1(z) - 3.0 * j0(z), low, low + 0.01)
        for low in np.arange(0.005, found[-1] + 0.1, 0.01)
        if (low * j1(low) - 3.0 * j0(low)) * ((low + 0.01) * j1(low + 0.01) - 3.0 * j0(low + 0.01)) < 0
    ]
    assert found == pytest.approx(by_scan, rel=1e-9)


def test_no_film_has_no_roots() -> None:
    with pytest.raises(ValueError, match="above 0"):
        roots(Shape.WALL, 0.0, 1)


def test_the_lumped_thermocouple_of_the_textbook() -> None:
    """Undergraduate text, chapter 5 (data from memory): h 400, density 8500, heat capacity 400, time constant 1 s."""
    assert lumped_diameter_m(1.0, 400.0, 8500.0, 400.0) == pytest.approx(0.706e-3, rel=WITHIN)
    assert lumped_seconds(1.0, 25.0, 200.0, 199.0) == pytest.approx(5.16, rel=WITHIN)


def test_a_lumped_body_never_passes_its_surroundings() -> None:
    with pytest.raises(ValueError, match="never"):
        lumped_seconds(1.0, 25.0, 200.0, 201.0)


def minutes_to_cool(theta: float, *, height_m: float, radius_m: float, ends: float, side: float) -> float:
    """By the marched solution: 80 °C in 20 °C of air until theta at the middle."""
    bodies = plain(height_m=height_m, radius_m=radius_m, ends_w_m2k=ends, side_w_m2k=side)
    goal = Goal(np.array([20.0 + 60.0 * theta]), 1e6, warming=False, watched=slice(10, 11))
    return float(until(bodies, still(20.0), goal, FINE).seconds[0])


@pytest.mark.parametrize("bi", [0.5, 2.0, 10.0])
def test_the_marched_wall_meets_the_series(bi: float) -> None:
    half = 0.02
    theta = series_theta(Shape.WALL, bi, 0.6)
    seconds = minutes_to_cool(theta, height_m=2 * half, radius_m=0.3, ends=bi * CONDUCTIVITY / half, side=0.0)
    assert seconds * CONDUCTIVITY / (HEAT * half**2) == pytest.approx(0.6, rel=WITHIN)


@pytest.mark.parametrize("bi", [0.5, 2.0, 10.0])
def test_the_marched_long_cylinder_meets_the_series(bi: float) -> None:
    radius = 0.03
    theta = series_theta(Shape.CYLINDER, bi, 0.4)
    seconds = minutes_to_cool(theta, height_m=0.1, radius_m=radius, ends=0.0, side=bi * CONDUCTIVITY / radius)
    assert seconds * CONDUCTIVITY / (HEAT * radius**2) == pytest.approx(0.4, rel=WITHIN)


def test_the_marched_short_cylinder_meets_the_product_of_series() -> None:
    half, radius, film, seconds = 0.025, 0.04, 30.0, 1500.0
    fo = [CONDUCTIVITY * seconds / (HEAT * length**2) for length in (half, radius)]
    theta = short_cylinder_theta((film * half / CONDUCTIVITY, film * radius / CONDUCTIVITY), (fo[0], fo[1]))
    found = minutes_to_cool(theta, height_m=2 * half, radius_m=radius, ends=film, side=film)
    assert found == pytest.approx(seconds, rel=WITHIN)


def test_a_marched_body_of_tiny_biot_number_is_a_lumped_one() -> None:
    height, film = 0.004, 2.0
    tau = HEAT * height / (2 * film)
    seconds = minutes_to_cool(exp(-1.0), height_m=height, radius_m=0.3, ends=film, side=0.0)
    assert seconds == pytest.approx(tau, rel=0.01)
