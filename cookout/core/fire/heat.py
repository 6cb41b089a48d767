"""Heat from a surface to air and to its surroundings, in SI units; numbers or numpy arrays alike.

Nusselt numbers are those of textbooks; each names its source:
[1] Churchill, Chu: Correlating equations for laminar and turbulent free convection from a vertical plate.
    Int. J. Heat Mass Transfer 18 (1975) 1323-1329.
[2] McAdams: Heat Transmission, 3rd ed. (1954), ch. 7; the same in Bergman et al. [5], equations 9.30 to 9.32.
[3] Churchill, Bernstein: A correlating equation for forced convection from gases and liquids to a circular cylinder in
    crossflow. J. Heat Transfer 99 (1977) 300-306.
[4] Schlichting: Boundary-Layer Theory, 7th ed. (1979): laminar flat plate 0.664 Re^1/2 Pr^1/3, and the turbulent one
    0.037 Re^4/5 Pr^1/3.
[5] Bergman, Lavine, Incropera, DeWitt: Fundamentals of Heat and Mass Transfer, 7th ed. (2011), sections 7.2 and 9.9.
[6] Sutherland's law with the constants of the U.S. Standard Atmosphere, 1976, equations 51 and 53.
"""

from dataclasses import dataclass
from typing import Any

import numpy as np
import numpy.typing as npt

from cookout.core.air import AIR_GAS_CONSTANT, GRAVITY, SEA_LEVEL_PA

STEFAN_BOLTZMANN = 5.670374419e-8  # W/(m2 K4); CODATA 2018, exact
# Heat of dry air, J/(kg K), at 300 K and its rise for each kelvin; within 2 in 100 to 1,000 K. Textbook, from memory.
AIR_CP, AIR_CP_RISE = 1007.0, 0.16

Number = float | npt.NDArray[np.float64]


@dataclass(frozen=True, slots=True)
class Film:
    """Air in the layer next to a surface: `conductivity` W/(m K), `viscosity` kinematic in m2/s, `prandtl`."""

    kelvin: Any
    conductivity: Any
    viscosity: Any
    prandtl: Any


def film(kelvin: Number, pressure: float = SEA_LEVEL_PA) -> Film:
    """Dry air at `kelvin` and `pressure` pascals; within 3 in 100 from 200 to 1,000 K.

    Worked example: 300 K at the sea, k 0.0264 W/(m K), nu 1.57e-5 m2/s, Pr 0.70. Source: [6].
    """
    dynamic = 1.458e-6 * kelvin**1.5 / (kelvin + 110.4)
    conductivity = 2.64638e-3 * kelvin**1.5 / (kelvin + 245.4 * 10 ** (-12 / kelvin))
    heat = AIR_CP + AIR_CP_RISE * (kelvin - 300)
    viscosity = dynamic * AIR_GAS_CONSTANT * kelvin / pressure
    return Film(kelvin, conductivity, viscosity, dynamic * heat / conductivity)


def rayleigh(air: Film, difference_k: Number, length_m: Number) -> Any:
    """Rayleigh number of a surface warmer than the air by `difference_k`, `length_m` long, in a film of ideal gas.

    Worked example: a film at 300 K, 10 K, 0.1 m: about 9.4e5. Source: [5], equation 9.25 with expansion 1/T.
    """
    return GRAVITY * np.abs(difference_k) * length_m**3 / air.kelvin * air.prandtl / air.viscosity**2


def reynolds(air: Film, speed_mps: Number, length_m: Number) -> Any:
    """Reynolds number at `speed_mps` along or across `length_m`. Worked example: 300 K, 5 m/s, 0.3 m: about 9.6e4."""
    return speed_mps * length_m / air.viscosity


def nusselt_free_vertical(prandtl: Number, rayleigh_number: Number) -> Any:
    """Mean Nusselt number of an upright plate over its height, in still air.

    Valid for Rayleigh numbers of 0.1 to 1e12 and any Prandtl number.
    Worked example: Pr 0.69, Gr 2.63e9 (Ra 1.815e9): 147.16. Source: [1].
    """
    spread = (1 + (0.492 / prandtl) ** (9 / 16)) ** (8 / 27)
    return (0.825 + 0.387 * rayleigh_number ** (1 / 6) / spread) ** 2


def nusselt_free_up(rayleigh_number: Number) -> Any:
    """Mean Nusselt number of a level plate, hot side up, in still air, over the Rayleigh number's length.

    Valid for Rayleigh numbers of 1e4 to 1e11, used below as well. Worked example: Ra 1e6, 17.08. Source: [2].
    """
    return np.where(np.asarray(rayleigh_number) <= 1e7, 0.54 * rayleigh_number**0.25, 0.15 * rayleigh_number ** (1 / 3))


def nusselt_free_down(rayleigh_number: Number) -> Any:
    """Mean Nusselt number of a level plate, hot side down, in still air.

    Valid for Rayleigh numbers of 1e5 to 1e10. Worked example: Ra 1e6, 8.54. Source: [2].
    """
    return 0.27 * rayleigh_number**0.25


def nusselt_plate(prandtl: Number, reynolds_number: Number) -> Any:
    """Mean Nusselt number of a flat plate along which air streams, over its length: laminar to Re 5e5, then turbulent.

    Valid for Pr 0.6 to 60 and Re up to 1e7. Worked example: Pr 0.7, Re 1e5: 186.4. Sources: [4], joined as in [5] 7.38.
    """
    laminar = 0.664 * reynolds_number**0.5
    turbulent = 0.037 * reynolds_number**0.8 - 871
    return np.where(np.asarray(reynolds_number) <= 5e5, laminar, turbulent) * prandtl ** (1 / 3)


def nusselt_cylinder(prandtl: Number, reynolds_number: Number) -> Any:
    """Mean Nusselt number of a cylinder that air streams across, over its diameter.

    Valid where Re Pr is 0.2 or more, to Re 1e7. Worked example: Re 6071, Pr 0.7: 40.64. Source: [3].
    """
    laminar = 0.62 * reynolds_number**0.5 * prandtl ** (1 / 3) / (1 + (0.4 / prandtl) ** (2 / 3)) ** 0.25
    return 0.3 + laminar * (1 + (reynolds_number / 282_000) ** 0.625) ** 0.8


def combined(forced: Number, free: Number, power: float = 3.0) -> Any:
    """Nusselt number (or coefficient) of forced and free convection together, helping or crossing each other.

    Worked example: 3 and 4 give 4.498. Source: [5], equation 9.64; `power` 3, or 3.5 for level plates.
    """
    return (forced**power + free**power) ** (1 / power)


def radiated(emissivity: float, kelvin: Number, around_kelvin: Number) -> Any:
    """Heat, in W/m2, that a grey surface radiates to large surroundings.

    Worked example: 0.85, 400 K, 305 K: 816.78 W/m2. Source: Stefan-Boltzmann law, [5] equation 1.7.
    """
    return emissivity * STEFAN_BOLTZMANN * (kelvin**4 - around_kelvin**4)


def lid_coefficient(kelvin: Number, air_kelvin: float, wide_m: float, wind: Number, pressure: float) -> Any:
    """Convective coefficient, in W/(m2 K), of a level round plate `wide_m` across, hot side up, in `wind` m/s.

    The free part takes area over girth (a quarter of the width) as its length, the forced part the width.
    Worked example: 0.305 m at 450 K in still air of 293 K at the sea, about 9 W/(m2 K).
    """
    air = film((kelvin + air_kelvin) / 2, pressure)
    free = nusselt_free_up(rayleigh(air, kelvin - air_kelvin, wide_m / 4)) / (wide_m / 4)
    forced = nusselt_plate(air.prandtl, reynolds(air, wind, wide_m)) / wide_m
    return combined(forced, free) * air.conductivity


def base_coefficient(kelvin: Number, air_kelvin: float, wide_m: float, wind: Number, pressure: float) -> Any:
    """As `lid_coefficient`, for the plate's hot side down. Worked example: as there, about 4.4 W/(m2 K)."""
    air = film((kelvin + air_kelvin) / 2, pressure)
    free = nusselt_free_down(rayleigh(air, kelvin - air_kelvin, wide_m / 4)) / (wide_m / 4)
    forced = nusselt_plate(air.prandtl, reynolds(air, wind, wide_m)) / wide_m
    return combined(forced, free) * air.conductivity


def wall_coefficient(
    kelvin: Number, air_kelvin: float, wide_m: float, wind: Number, pressure: float, high_m: float
) -> Any:
    """As `lid_coefficient`, for the upright wall of a pot `high_m` high. Worked example: 0.1 m high, about 8."""
    air = film((kelvin + air_kelvin) / 2, pressure)
    free = nusselt_free_vertical(air.prandtl, rayleigh(air, kelvin - air_kelvin, high_m)) / high_m
    forced = nusselt_cylinder(air.prandtl, reynolds(air, wind, wide_m)) / wide_m
    return combined(forced, free) * air.conductivity
