"""Convection and radiation against the independent library `ht`, its published examples, and textbook air."""

from typing import Any

import ht
import numpy as np
import pytest
from scipy import constants

from cookout.core.air import SEA_LEVEL_PA
from cookout.core.fire import heat

WITHIN = 0.01


def test_the_stefan_boltzmann_constant_is_the_published_one() -> None:
    assert constants.sigma == pytest.approx(heat.STEFAN_BOLTZMANN, rel=1e-9)


def test_published_examples_are_met() -> None:
    # The examples that `ht` prints beside Churchill-Chu, Churchill-Bernstein and grey radiation.
    assert heat.nusselt_free_vertical(0.69, 0.69 * 2.63e9) == pytest.approx(147.1619, rel=1e-6)
    assert heat.nusselt_cylinder(0.7, 6071) == pytest.approx(40.6371, rel=1e-6)
    assert heat.radiated(0.85, 400.0, 305.0) == pytest.approx(816.782, rel=1e-5)


@pytest.mark.parametrize("grashof", [1e3, 1e5, 1e7, 1e9, 1e11])
def test_free_convection_agrees_with_the_library(grashof: float) -> None:
    prandtl = 0.7
    free = ht.conv_free_immersed
    assert heat.nusselt_free_vertical(prandtl, prandtl * grashof) == pytest.approx(
        free.Nu_vertical_plate_Churchill(prandtl, grashof), rel=WITHIN
    )
    assert heat.nusselt_free_up(prandtl * grashof) == pytest.approx(
        free.Nu_horizontal_plate_McAdams(prandtl, grashof, buoyancy=True), rel=WITHIN
    )


@pytest.mark.parametrize("grashof", [1e5, 1e7, 1e9])
def test_a_plate_hot_side_down_agrees_with_the_library(grashof: float) -> None:
    theirs = ht.conv_free_immersed.Nu_horizontal_plate_McAdams(0.7, grashof, buoyancy=False)
    assert heat.nusselt_free_down(0.7 * grashof) == pytest.approx(theirs, rel=WITHIN)


@pytest.mark.parametrize("reynolds", [1e2, 1e4, 1e5, 1e6])
def test_forced_convection_agrees_with_the_library(reynolds: float) -> None:
    outside = ht.conv_external
    cylinder = outside.Nu_cylinder_Churchill_Bernstein(reynolds, 0.7)
    assert heat.nusselt_cylinder(0.7, reynolds) == pytest.approx(cylinder, rel=WITHIN)
    if reynolds <= 5e5:
        plate = outside.Nu_horizontal_plate_laminar_Baehr(reynolds, 0.7)
        assert heat.nusselt_plate(0.7, reynolds) == pytest.approx(plate, rel=WITHIN)


@pytest.mark.parametrize(("kelvin", "around"), [(300.0, 290.0), (450.0, 293.0), (900.0, 293.0)])
def test_radiation_agrees_with_the_library(kelvin: float, around: float) -> None:
    theirs: Any = ht.radiation.q_rad
    assert heat.radiated(0.9, kelvin, around) == pytest.approx(theirs(0.9, T=kelvin, T2=around), rel=WITHIN)


# K, W/(m K), m2/s, Pr: textbook table of air at one atmosphere (Bergman et al., 7th ed., table A.4), from memory.
@pytest.mark.parametrize(
    ("kelvin", "conductivity", "viscosity", "prandtl"),
    [(300.0, 0.0263, 15.89e-6, 0.707), (400.0, 0.0338, 26.41e-6, 0.690), (600.0, 0.0469, 52.69e-6, 0.685)],
)
def test_air_is_that_of_the_textbook(kelvin: float, conductivity: float, viscosity: float, prandtl: float) -> None:
    air = heat.film(kelvin)
    assert air.conductivity == pytest.approx(conductivity, rel=0.03)
    assert air.viscosity == pytest.approx(viscosity, rel=0.03)
    assert air.prandtl == pytest.approx(prandtl, rel=0.04)


def test_a_lid_in_still_air_loses_what_was_derived_beforehand() -> None:
    # 12-inch lid at 450 K in 293 K: free convection about 8.8, radiation at 0.9 about 10.9 W/(m2 K).
    free = heat.lid_coefficient(450.0, 293.0, 0.3048, 0.0, SEA_LEVEL_PA)
    assert free == pytest.approx(8.8, abs=0.2)
    assert heat.radiated(0.9, 450.0, 293.0) / 157 == pytest.approx(10.9, abs=0.1)


@pytest.mark.parametrize(("wind", "derived"), [(1.0, 7.0), (3.0, 12.2), (5.0, 15.7), (8.0, 19.9)])
def test_wind_alone_on_a_lid_gives_what_was_derived_beforehand(wind: float, derived: float) -> None:
    # Laminar flat plate, 0.3048 m; with free convection left out. Derived, not published.
    air = heat.film(371.5)
    forced = heat.nusselt_plate(air.prandtl, heat.reynolds(air, wind, 0.3048)) * air.conductivity / 0.3048
    assert forced == pytest.approx(derived, rel=0.03)


def test_free_and_forced_together_are_more_than_either_and_less_than_both() -> None:
    # (3^3 + 4^3)^(1/3) = 4.498, worked by hand.
    assert heat.combined(3.0, 4.0) == pytest.approx(4.498, abs=0.001)


def test_arrays_go_through_as_numbers_do() -> None:
    kelvin = np.array([350.0, 450.0, 600.0])
    for one in (heat.lid_coefficient, heat.base_coefficient):
        together = one(kelvin, 293.0, 0.3, 2.0, SEA_LEVEL_PA)
        assert together == pytest.approx([float(one(each, 293.0, 0.3, 2.0, SEA_LEVEL_PA)) for each in kelvin])
    walls = heat.wall_coefficient(kelvin, 293.0, 0.3, 2.0, SEA_LEVEL_PA, 0.1)
    assert np.all(np.diff(walls) != 0)
