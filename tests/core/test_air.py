"""Air pressure and boiling points against independent libraries and published tables."""

import fluids
import iapws  # type: ignore[import-untyped]
import pytest

from cookout.core.air import air_density, boiling_at_pressure_c, boiling_c, pressure_pa, vapour_pressure_pa

METRES_IN_FOOT = 0.3048

# Feet, kPa, degrees Celsius: US Standard Atmosphere 1976 and IAPWS-97, computed with `fluids` and `iapws`.
TABLE = [
    (0, 101.325, 99.974),
    (1000, 97.717, 98.962),
    (2000, 94.214, 97.948),
    (3000, 90.813, 96.934),
    (5000, 84.311, 94.904),
    (7000, 78.192, 92.871),
    (8000, 75.271, 91.854),
    (10000, 69.695, 89.816),
]


@pytest.mark.parametrize(("feet", "kilopascals", "boils"), TABLE)
def test_pressure_and_boiling_point_meet_the_table(feet: int, kilopascals: float, boils: float) -> None:
    metres = feet * METRES_IN_FOOT
    assert pressure_pa(metres) / 1000 == pytest.approx(kilopascals, abs=0.001)
    assert boiling_c(metres) == pytest.approx(boils, abs=0.001)


@pytest.mark.parametrize("feet", range(0, 10_001, 500))
def test_every_500_feet_the_independent_libraries_agree_within_a_tenth_of_a_degree(feet: int) -> None:
    metres = feet * METRES_IN_FOOT
    theirs = fluids.ATMOSPHERE_1976(metres)
    assert pressure_pa(metres) == pytest.approx(theirs.P, rel=1e-5)
    assert boiling_c(metres) == pytest.approx(iapws.IAPWS97(P=theirs.P / 1e6, x=0).T - 273.15, abs=0.1)
    density = air_density(theirs.T - 273.15, metres)
    assert density == pytest.approx(theirs.rho, rel=1e-4)


@pytest.mark.parametrize(("feet", "fahrenheit"), [(0, 212), (2000, 208), (5000, 203), (7500, 198), (10000, 194)])
def test_an_extension_service_prints_the_same_whole_degrees(feet: int, fahrenheit: int) -> None:
    # Colorado State University Extension, high altitude food preparation.
    assert round(boiling_c(feet * METRES_IN_FOOT) * 1.8 + 32) == fahrenheit


@pytest.mark.parametrize(("megapascals", "kelvin"), [(0.1, 372.755919), (1.0, 453.035632), (10.0, 584.149488)])
def test_saturation_temperatures_are_those_of_the_release(megapascals: float, kelvin: float) -> None:
    # IAPWS R7-97(2012), table 36.
    assert boiling_at_pressure_c(megapascals * 1e6) + 273.15 == pytest.approx(kelvin, abs=1e-6)


@pytest.mark.parametrize(("kelvin", "megapascals"), [(300, 0.00353658941), (500, 2.63889776), (600, 12.3443146)])
def test_saturation_pressures_are_those_of_the_release(kelvin: float, megapascals: float) -> None:
    # IAPWS R7-97(2012), table 35.
    assert vapour_pressure_pa(kelvin - 273.15) == pytest.approx(megapascals * 1e6, rel=1e-8)


def test_what_lies_outside_of_the_range_is_refused() -> None:
    for elevation in (-6000, 12_000):
        with pytest.raises(ValueError, match="elevation must lie"):
            pressure_pa(elevation)
    with pytest.raises(ValueError, match="pressure must lie"):
        boiling_at_pressure_c(100)
    with pytest.raises(ValueError, match="temperature must lie"):
        vapour_pressure_pa(400)
    with pytest.raises(ValueError, match="absolute zero"):
        air_density(-300)
